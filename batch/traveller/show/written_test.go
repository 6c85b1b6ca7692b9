package show

import "testing"

// With a comma before the decimals measures change and names do not: a material's number,
// a wire's class, a mark, a date or a text with points stays as it is written.
func TestMeasuresGetTheComma(t *testing.T) {
	comma := Figures{Comma: true}
	for in, want := range map[string]string{
		"a-Maß 1.4 mm (Schenkel 2 mm) liegt unter 3 mm": "a-Maß 1,4 mm (Schenkel 2 mm) liegt unter 3 mm",
		"Wärme 1.49 kJ/mm; 1.4301 verträgt 1.5 kJ/mm":   "Wärme 1,49 kJ/mm; 1.4301 verträgt 1,5 kJ/mm",
		"t8/5 von 4.5 s; S355 verlangt 8.5 bis 20 s":    "t8/5 von 4,5 s; S355 verlangt 8,5 bis 20 s",
		"0.8–1.2 mm":                             "0,8–1,2 mm",
		"0.8-1.2 mm":                             "0,8-1,2 mm",
		"Ar + 2.5 % CO2":                         "Ar + 2,5 % CO2",
		"1.5":                                    "1,5",
		"1.4301":                                 "1.4301",
		"AlMg4.5Mn0.7, 1.4571 nach EN 10088":     "AlMg4.5Mn0.7, 1.4571 nach EN 10088",
		"W1.2 steht auch in Zeile 4.":            "W1.2 steht auch in Zeile 4.",
		"AWS A5.18 ER70S-6, 2026.11.26, 0.1.0 m": "AWS A5.18 ER70S-6, 2026.11.26, 0.1.0 m",
		"ist 2.5 mm dick.":                       "ist 2,5 mm dick.",
		"":                                       "",
	} {
		if got := comma.Written(in); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
		if got := (Figures{}).Written(in); got != in {
			t.Errorf("with a point %q becomes %q", in, got)
		}
	}
	if got := comma.Size(4.5).String() + " " + comma.Seam(1.25).String() + " " + comma.Minutes(4.25).String() + " " + comma.Dia(1.2, "G3Si1"); got != "4,5 mm 1,25 m 4,2 min 1,2 mm" {
		t.Errorf("figures: %q", got)
	}
	if got := comma.List("0,5", "≤ 1"); got != "0,5; ≤ 1" {
		t.Errorf("a list: %q", got)
	}
}
