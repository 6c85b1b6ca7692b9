package sketch

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// A groove that is asked for only 8 mm deep leaves its root face unmelted: no bead stands out
// on the far side, whatever the cap takes.
func TestPartialPenetrationHasNoRootBead(t *testing.T) {
	for _, c := range []struct {
		deep units.MM
		root bool
	}{{8, false}, {16, true}} {
		p := &plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: joint.SingleBevel, T1: 16, T2: 16, Angle: 45, RootFace: 8, Depth: 8}},
			Joint: &joint.Joint{Detail: &joint.Detail{Size: joint.Size{A: c.deep, Means: joint.Penetration}}}}
		p.Area = 32 * 1.3 // 8² / 2 tan 45° and the cap
		p.Runs = runsOf(float64(p.Area), 2, 1, 1)
		s, ok := Build(p)
		if !ok {
			t.Fatal("not drawn")
		}
		low := 0.0
		for _, b := range s.Beads {
			for _, q := range b.Outline {
				low = min(low, q.Y)
			}
		}
		if under := low < -16-1e-6; under != c.root {
			t.Errorf("s%v of 16 mm: the metal reaches down to %.2f", c.deep, low)
		}
	}
}
