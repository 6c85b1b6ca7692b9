package plan

import (
	"testing"
)

// The unit of the list reaches the parts that a row names: .375 in a list of inches is
// 9.5 mm of plate, not 0.4 mm of which nothing can be planned.
func TestPartsInTheUnitOfTheList(t *testing.T) {
	for _, c := range []struct {
		part   string
		inches bool
		t1     float64 // mm
		length float64 // mm, of a seam all round; 0: not asked
	}{
		{"PL .375", true, 9.525, 0},
		{"FL 4 x .25", true, 6.35, 2 * (101.6 + 6.35)},
		{"FL 100x10", true, 10, 220},
		{"FL 100x10", false, 10, 220},
		{"IPE 200", true, 5.6, 0},
	} {
		j := filletJoint(5, 12, "PB")
		j.Part1, j.T1, j.T2, j.PartsInch = c.part, 0, 12, c.inches
		if c.length > 0 {
			j.AllRound, j.Length = true, 0
		}
		p := plannedAs(t, j)
		if got := float64(p.Joint.T1); got < c.t1-0.01 || got > c.t1+0.01 {
			t.Errorf("%s, inches %v: t1 %g, not %g", c.part, c.inches, got, c.t1)
		}
		if got := float64(p.Joint.Length); c.length > 0 && (got < c.length-0.1 || got > c.length+0.1) {
			t.Errorf("%s, inches %v: a seam of %g, not %g", c.part, c.inches, got, c.length)
		}
		if !p.Settings {
			t.Errorf("%s, inches %v: no settings: %+v", c.part, c.inches, p.Checks)
		}
	}
}
