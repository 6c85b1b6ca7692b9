package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
)

// TestHintsAreExplained: what a hint says was saved is the difference of two plans,
// each of which can be had by asking for that joint alone with the same wire.
func TestHintsAreExplained(t *testing.T) {
	set, shop := world(t)
	list := []joint.Joint{filletJoint(8, 12, "PF"), buttJoint(joint.SingleV, 25, "PA"), filletJoint(6, 12, "PB")}
	plans := Joints(list, set, shop, Options{})
	Hints(plans, set, shop, Options{})
	seen := 0
	for i := range list {
		p := Explain(list, i, set, shop, Options{})
		ExplainHints(&p, plans, i, set, shop, Options{})
		for _, c := range plans[i].Checks {
			if c.Code[:4] == "hint" && !saysCode(&p, c.Code) {
				t.Errorf("joint %d: %s is told by run and not by explain", i, c.Code)
			}
		}
		for _, h := range p.Hints {
			seen++
			saved := float64(h.Called.Cost - h.Altered.Cost)
			if h.Costlier {
				saved = -saved
			}
			if math.Abs(saved-float64(h.Saved)) > 1e-9 || math.Abs(h.Share-saved/float64(plans[i].Cost.Total)) > 1e-9 {
				t.Errorf("joint %d %s: saved %g, the sides differ by %g", i, h.Code, h.Saved, saved)
			}
			if h.Called.Cost != plans[i].Cost.Total || h.Told != saysCode(&plans[i], h.Code) || h.Told && h.Share < h.Least {
				t.Errorf("joint %d: %+v", i, h)
			}
			if h.Code == hintTurn {
				j := list[i].Apart()
				j.Position, j.Wire, j.Gas = "PB", plans[i].Filler+" "+number(float64(plans[i].Dia), 1), plans[i].Gas
				if alone := Joints([]joint.Joint{j}, set, shop, Options{})[0]; math.Abs(float64(alone.Cost.Total-h.Altered.Cost)) > 1e-6*float64(alone.Cost.Total) {
					t.Errorf("turned it costs %g; planned so it costs %g", h.Altered.Cost, alone.Cost.Total)
				}
			}
		}
	}
	if seen < 4 {
		t.Errorf("%d forms tried", seen)
	}
}
