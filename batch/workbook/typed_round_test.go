package workbook

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// TestALengthTypedBesideASeamAllRound: where the list gives a length it may be typed
// anew; where the section says how long it is not taken.
func TestALengthTypedBesideASeamAllRound(t *testing.T) {
	for _, c := range []struct {
		round bool
		list  float64
		taken bool
	}{{false, 500, true}, {true, 500, true}, {true, 0, false}} {
		j := joint.Joint{Detail: &joint.Detail{AllRound: c.round}}
		j.Length = units.MM(c.list)
		if got := takeLength(&j, 600); got != c.taken || got != (j.Length == 600) {
			t.Errorf("%+v: taken %v, length %g", c, got, float64(j.Length))
		}
	}
}
