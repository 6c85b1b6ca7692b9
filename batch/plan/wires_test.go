package plan

import (
	"fmt"
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// Every wire of the table, asked for in every position on sheet and plate of its
// metal: the plan is finite and inside the wire's window, or says why not.
func TestEveryWireEverywhereIsPlannedOrExplained(t *testing.T) {
	set, shop := world(t)
	shop.Choose = "joint"
	metals := map[string]string{"carbon steel": "S235", "stainless": "304L", "aluminium": "5754", bronze: "galvanised"}
	var list []joint.Joint
	for i := range set.Wires {
		w := &set.Wires[i]
		for _, pos := range positions {
			for _, thick := range []float64{0.8, 1.5, 3, 6, 12, 30} {
				for _, j := range []joint.Joint{filletJoint(min(12, max(1, 0.7*thick)), thick, pos), buttJoint(joint.SingleV, thick, pos)} {
					j.Material, j.Wire = metals[w.Metal], fmt.Sprintf("%s %.1f", w.Filler, float64(w.Dia))
					list = append(list, j)
				}
			}
		}
	}
	planned := map[string]int{}
	for _, p := range Joints(list, set, shop, Options{}) {
		name := fmt.Sprintf("%s %s %s %v", p.Joint.Wire, p.Joint.Kind, p.Joint.Position, p.Joint.T1)
		if !p.Settings {
			if p.NoSettings == "" || len(p.Checks) == 0 {
				t.Errorf("%s: neither settings nor a reason", name)
			}
			continue
		}
		planned[p.Filler]++
		if got := p.Filler + fmt.Sprintf(" %.1f", float64(p.Dia)); got != p.Joint.Wire {
			t.Errorf("%s: planned with %s", name, got)
		}
		for _, v := range []float64{p.Current.Start, p.Voltage.Start, p.WireFeed.Start, p.Travel.Start, p.Stickout.Start, float64(p.WireKg), float64(p.Arc), float64(p.Cost.Total)} {
			if !(v > 0) || math.IsInf(v, 0) {
				t.Errorf("%s: a figure of %v", name, v)
			}
		}
		if none := p.Gas == ""; none != (p.GasL == units.Litre(0)) || none != (p.Process == "114") {
			t.Errorf("%s: process %s, gas %q, %v l", name, p.Process, p.Gas, p.GasL)
		}
	}
	for _, w := range set.Wires {
		if planned[w.Filler] == 0 {
			t.Errorf("%s is never planned", w.Filler)
		}
	}
	t.Logf("planned of %d: %v", len(list), planned)
}
