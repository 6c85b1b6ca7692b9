package sketch

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// The back run lies in the gouge: from its depth above the lower surface down to the
// cap below it, as wide as the gouge opens; each side has the area of its passes.
func TestTheBackRunFillsTheGouge(t *testing.T) {
	for kind, bottom := range map[joint.Kind]float64{joint.SingleV: 0, joint.DoubleV: 8} {
		p := &plan.Plan{Joint: &joint.Joint{Detail: &joint.Detail{Sides: 1}}, Manner: &plan.Manner{Area: 240, Prep: plan.Prep{
			Kind: kind, T1: 20, T2: 20, Angle: 60, Gap: 2, RootFace: 2, Depth: 10, Gouge: plan.Gouge{Depth: 4, Width: 8}}}}
		back := 60.0
		if bottom > 0 {
			p.Prep.Depth2, back = 8, 100
		} else {
			p.Prep.Depth = 18
		}
		p.Runs = append(runsOf(240-back, 3, 1, 1), runsOf(back, 1, 2, 4)...)
		s, ok := Build(p)
		if !ok || len(s.Beads) != 4 {
			t.Fatalf("%s: %d beads, %v", kind, len(s.Beads), ok)
		}
		near(t, "both sides", s.Seam(), 240)
		near(t, "the back run", s.Beads[3].Outline.Area(), back)
		low, high := bounds(s.Beads[3].Outline)
		if want := -20 + bottom + 4; math.Abs(high.Y-want) > 0.05 || low.Y >= -20 {
			t.Errorf("%s: the back run lies from %.2f to %.2f, want from below -20 to %.2f", kind, low.Y, high.Y, want)
		}
		if bottom == 0 && math.Abs(high.X-low.X-10) > 0.01 { // 8 mm and 1 mm of cap on each side
			t.Errorf("%s: the back run is %.2f mm wide, want 10", kind, high.X-low.X)
		}
	}
}
