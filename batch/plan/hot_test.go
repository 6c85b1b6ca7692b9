package plan

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// TestThinSheetHotterThanCalled: a shop without 0.6 mm wire welds sheet of 0.8 and 0.9 mm all
// the same; it is told that the wire begins too hot. What no hand holds stays refused, and
// where there is a cooler wire nothing is too hot.
func TestThinSheetHotterThanCalled(t *testing.T) {
	set, shop := world(t)
	own := *shop
	own.Wires = nil
	for _, w := range shop.Wires {
		if w.Filler == "G3Si1" && w.Dia >= 0.75 {
			own.Wires = append(own.Wires, w)
		}
	}
	for _, c := range []struct {
		thick         units.MM
		planned, told bool
	}{{0.5, false, true}, {0.8, true, true}, {0.9, true, true}, {1.0, true, false}} {
		j := buttJoint(joint.SquareButt, float64(c.thick), "PA")
		j.Material, j.Length = "S235", 1000
		p := Joints([]joint.Joint{j}, set, &own, Options{})[0]
		if p.Settings != c.planned || hasCode(p.Checks, "too-hot") != c.told {
			t.Errorf("%g mm with 0.8 mm wire: settings %v, %q, %v", float64(c.thick), p.Settings, p.NoSettings, p.Checks)
		}
		if all := Joints([]joint.Joint{j}, set, shop, Options{})[0]; c.planned && (!all.Settings || hasCode(all.Checks, "too-hot")) {
			t.Errorf("%g mm with all wires: %q, %v", float64(c.thick), all.NoSettings, all.Checks)
		}
	}
}
