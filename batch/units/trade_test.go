package units

import "testing"

// Wires and nozzles have their usual names in inches; a preheat is rounded up, a limit down,
// other temperatures to the nearest ten, those near room temperature not at all.
func TestTradeNamesInInches(t *testing.T) {
	for text, want := range map[string]string{
		"2 passes of ER70S-6 1 mm in 4F":                          "2 passes of ER70S-6 .040 in in 4F",
		"G3Si1 1.2 mm spray":                                      "G3Si1 .045 in spray",
		"T 46 2 P 1.6 mm is not in stock":                         "T 46 2 P 1/16 in is not in stock",
		"S Al 5356 of 1.2 mm":                                     "S Al 5356 of 3/64 in",
		"E71T-1M/-1C 1.2 mm":                                      "E71T-1M/-1C .045 in",
		"a nozzle of 12 mm":                                       "a nozzle of 1/2 in",
		"preheat 90 °C":                                           "preheat 200 °F",
		"as is typical (cet.S355): preheat 100 °C":                "as is typical (cet.S355): preheat 220 °F", // 212
		"about 1.3 kg of weld metal instead of 2 kg; turning not": "about 2.87 lb of weld metal instead of 4.41 lb; turning not",
		"parts at least 10 °C":                                    "parts at least 50 °F",
		"from 20 °C in":                                           "from 68 °F in",
		"interpass 250 °C":                                        "interpass 480 °F",
		"an interpass limit of 225 °C":                            "an interpass limit of 430 °F", // 437, never above
		"interpass at most 175 °C":                                "interpass at most 340 °F",
		"warm them to 115 °C at most":                             "warm them to 230 °F at most", // 239
		// what is left is the difference of the two that are said, not a temperature
		"preheat 120 °C leaves 50 °C to the interpass limit of 170 °C": "preheat 250 °F leaves 80 °F to the interpass limit of 330 °F", // 248 and 338
		"preheat 172 °C leaves 3 °C to the interpass limit of 175 °C":  "preheat 342 °F leaves 5 °F to the interpass limit of 347 °F",  // by tens nothing is left
		"it cools from 800 to 500 °C in 5 s":                           "it cools from 1470 to 930 °F in 5 s",
		"ER4043 1.2 mm":                                                "ER4043 3/64 in",
		"ER70S-6 1.2 mm":                                               "ER70S-6 .045 in",
		"T 42 3 Y N 2.0 mm":                                            "T 42 3 Y N 5/64 in",
		"a part of 1 mm":                                               "a part of 0.039 in",
	} {
		if got := Imperial(text); got != want {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
	}
}
