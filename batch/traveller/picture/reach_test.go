package picture

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
	"seamtally/batch/units"
)

// The arc of an angle stands above plates and cap however wide the gap is: with a deep
// apex it lay in the topmost pass.
func TestArcStandsAboveTheWeld(t *testing.T) {
	for _, kind := range []joint.Kind{joint.SingleV, joint.SingleBevel} {
		for _, gap := range []units.MM{1, 3, 4.8, 6.4} {
			p := &plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: kind, T1: 9.5, T2: 9.5, Angle: 50, Gap: gap, Depth: 9.5, Backing: "bar"}, Area: units.MM2(80 + 9.5*float64(gap))},
				Joint: &joint.Joint{Detail: &joint.Detail{}}}
			p.Runs = []plan.Run{{Number: 1, Layer: 1, Bead: 1, Side: 1, Area: p.Area}}
			s, ok := sketch.Build(p)
			if !ok {
				t.Fatal("not drawn")
			}
			f := &drawing{scale: 2.5, frame: page.Rect{W: 120, H: 90}, origin: page.Point{X: 60, Y: 45}}
			c := s.Corners[0]
			r, depth := f.reach(c, s), -c.At.Y*f.scale
			_, high := s.Bounds()
			for _, end := range []float64{c.From, c.To} {
				if up := r*math.Sin(end) - depth; up < 1 && math.Sin(end) > flattest {
					t.Errorf("%s, gap %g: the arc ends %.1f mm above the plates", kind, float64(gap), up)
				}
			}
			if up := r*math.Sin((c.From+c.To)/2) - depth - high.Y*f.scale; up < 1.5 {
				t.Errorf("%s, gap %g: %.1f mm between arc and cap", kind, float64(gap), up)
			}
		}
	}
}
