package units

import "testing"

// Lengths by the inch of 25.4 mm, 1 ft³ = 28.3168 l, °F = 1.8 °C + 32.
func TestImperialWordsEveryFigureOfASentence(t *testing.T) {
	for _, c := range []struct{ metric, us string }{
		{"leg 6.4 mm is below 8 mm, the least for 12 mm", "leg 1/4 in is below 5/16 in, the least for 0.472 in"},
		{"preheat 80 °C, measured 75 mm from the seam", "preheat 180 °F, measured 3 in from the seam"},
		{"S355 likes 3 to 40 s: from 20 °C in 8 mm that is 0.61 to 1.83 kJ/mm; more", "S355 likes 3 to 40 s: from 68 °F in 5/16 in that is 15.5 to 46.5 kJ/in; more"},
		{"15 to 20 l/min; a nozzle of 18 mm bears 26 l/min at most", "32 to 42 ft³/h; a nozzle of 3/4 in bears 55 ft³/h at most"},
		{"runs at 150 mm/min even at 210 A and 10 m/min", "runs at 5.9 in/min even at 210 A and 394 in/min"},
		{"stays 2 mm (1/16 in) below", "stays 1/16 in below"},
		{"above about 2 m/s (8 km/h)", "above about 5 mph"},
		{"a run of 40.5 mm² bears", "a run of 0.063 in² bears"},
		{"between 800 and 500 °C", "between 1470 and 930 °F"},
		{"ends at 2920 mm of 2850 mm", "ends at 115 in of 112.2 in"},
		{"one run takes 10.7 min; 8 min in ten", "one run takes 10.7 min; 8 min in ten"},
		{"G3Si1 M21 1.2 mm", "G3Si1 M21 0.047 in"},
		{"2.1 m a side", "6.89 ft a side"},
		{"clear 11 m around; 100 mm each side", "clear 36 ft around; 4 in each side"},
		{"hydrogen 5 ml/100 g", "hydrogen 5 ml/100 g"},
	} {
		if got := Imperial(c.metric); got != c.us {
			t.Errorf("%q:\n got %q\nwant %q", c.metric, got, c.us)
		}
		if got := Imperial(c.us); got != c.us {
			t.Errorf("%q is not left alone: %q", c.us, got)
		}
	}
}
