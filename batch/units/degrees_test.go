package units

import "testing"

// Which way a temperature is rounded is read in the English sentence, whatever language it
// is said in; a range has its unit for both of its figures.
func TestUSUnitsInOtherLanguages(t *testing.T) {
	for _, one := range []struct{ text, english, want string }{
		{"podgrzać najwyżej do 115 °C", "warm them to 115 °C at most", "podgrzać najwyżej do 230 °F"}, // 239
		{"підігріти до 90 °C, міряти за 75 mm від шва", "preheat 90 °C, measured 75 mm from the seam", "підігріти до 200 °F, міряти за 3 in від шва"},
		{"1110 °C, Teile mindestens 110 °C", "parts at least 110 °C", "2030 °F, Teile mindestens 230 °F"},
		{"podgrzanie 120 °C zostawia 50 °C do granicy 170 °C", "preheat 120 °C leaves 50 °C to the interpass limit of 170 °C", "podgrzanie 250 °F zostawia 80 °F do granicy 330 °F"},
		{"od 115 °C to 0.8 do 1.2 kJ/mm", "from 115 °C that takes 0.8 to 1.2 kJ/mm", "od 240 °F to 20.3 do 30.5 kJ/in"},
		{"üblich 2 bis 50 mm", "usually 2 to 50 mm", "üblich 0.079 bis 2 in"},
		{"lo usual 2 a 50 mm", "usually 2 to 50 mm", "lo usual 0.079 a 2 in"},
		{"звичайно 2 до 50 mm", "usually 2 to 50 mm", "звичайно 0.079 до 2 in"},
	} {
		if got := ImperialAs(one.text, one.english); got != one.want {
			t.Errorf("%q: got %q, want %q", one.text, got, one.want)
		}
	}
}
