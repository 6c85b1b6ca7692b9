package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
)

// Heat input for a pass area is nearly fixed by the wire and its mode: volts and
// melting rise together with the current. So heat is lowered by smaller passes,
// not by fewer amps. The band of about 12 % either side of the middle is wide enough for
// the slope of the voltage line over a pulse window from 70 A up and narrow enough
// to catch a slip in either.
func TestHeatForAPassAreaIsNearlyFixedByTheWire(t *testing.T) {
	set, shop := world(t)
	type manner struct {
		filler   string
		dia      float64
		transfer Transfer
	}
	low, high := map[manner]float64{}, map[manner]float64{}
	for _, material := range []string{"S235", "304L", "5083"} {
		for _, wire := range []string{"1.0", "1.2"} {
			for leg := 3.0; leg <= 12; leg++ {
				for _, thick := range []float64{4, 6, 8, 10, 15, 20} {
					j := filletJoint(leg, thick, "PB")
					j.Material, j.Wire, j.Where = material, wire, joint.Shop
					p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
					for _, r := range p.Runs {
						m := manner{p.Filler, float64(p.Dia), r.Transfer}
						x := float64(r.Heat) / float64(r.Area)
						if _, ok := low[m]; !ok {
							low[m], high[m] = x, x
						}
						low[m], high[m] = math.Min(low[m], x), math.Max(high[m], x)
					}
				}
			}
		}
	}
	if len(low) < 5 {
		t.Fatalf("only %d manners were planned", len(low))
	}
	for m, x := range low {
		t.Logf("%v: %.4f to %.4f kJ/mm per mm²", m, x, high[m])
		if high[m]/x > 1.25 {
			t.Errorf("%v: %.4f to %.4f kJ/mm per mm²", m, x, high[m])
		}
	}
}
