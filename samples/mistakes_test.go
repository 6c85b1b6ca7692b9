package samples

import (
	"slices"
	"testing"
)

// mistakes says by row of the list of mistakes which code must be told there: of
// a problem of the list, or of a check of the joint's plan. Rows not named here
// are good rows.
var mistakes = map[int]string{
	4: "bad-length", 5: "bad-length", 6: "bad-length", 7: "bad-length", 8: "no-length", 9: "bad-length", 10: "cell-error", 11: "bad-length",
	12: "date", 13: "date", 14: "implausible", 15: "implausible", 16: "bad-number",
	17: "bad-quantity", 18: "bad-quantity", 19: "bad-sides",
	20: "unknown-kind", 21: "unknown-kind",
	22: "no-size", 23: "implausible", 24: "implausible", 25: "bad-size", 26: "bad-size", 27: "leg-edge", 28: "leg-unlikely",
	29: "no-thickness", 30: "unknown-position", 31: "position-family",
	32: "stitch-too-long", 33: "bad-stitch", 34: "bad-stitch", 35: "implausible",
	36: "material-unknown", 37: "not-weldable", 38: "gas-aluminium", 39: "gas-stainless", 40: "wire-metal",
	41: "short-arc-thick", 42: "word-unknown", 43: "wish-position",
	44: "unknown-quality", 45: "no-mark", 47: "mark-twice", 48: "mark-twice", 49: "throat-min",
}

// TestEveryMistakeIsTold: each row with a mistake is told by the code of that
// mistake, and the good rows are told nothing.
func TestEveryMistakeIsTold(t *testing.T) {
	set := allTables(t)
	l := sample(t, set, "mistakes/mistakes.csv")
	told := map[int][]string{}
	for _, p := range l.Problems {
		if p.Place.Col > 0 {
			told[p.Place.Row] = append(told[p.Place.Row], p.Code)
		}
	}
	for _, p := range planned(t, set, l) {
		for _, c := range p.Checks {
			told[p.Joint.Place.Row] = append(told[p.Joint.Place.Row], c.Code)
		}
	}
	for row := 3; row <= l.LastRow; row++ {
		want, bad := mistakes[row]
		switch {
		case bad && !slices.Contains(told[row], want):
			t.Errorf("row %d: told %v, want %s", row, told[row], want)
		case !bad && len(told[row]) > 0:
			t.Errorf("row %d is good but is told %v", row, told[row])
		}
	}
}
