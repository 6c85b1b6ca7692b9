package plan

import (
	"testing"

	"seamtally/batch/joint"
)

// corner is an outside corner of two plates, blank of size, flat.
func corner(thick float64, open joint.Opening, backing string) joint.Joint {
	j := buttJoint(joint.Corner, thick, "PA")
	j.Open, j.Backing = open, backing
	return j
}

// The edges of an open corner meet in a line: a V of 90 degrees without a root face.
// The first run lies on it no hotter than on the open root of a V of the same plate,
// and no run of 290 A falls through it. With half an edge or a bar behind it the run
// is that of a fillet.
func TestOpenCornerTakesARootRun(t *testing.T) {
	set, shop := world(t)
	for _, thick := range []float64{2, 3, 4, 6, 8, 12, 20} {
		vee := buttJoint(joint.SingleV, thick, "PA")
		vee.Gap, vee.GapGiven = 2, true
		plans := Joints([]joint.Joint{corner(thick, joint.FullOpen, ""), corner(thick, "", ""), vee}, set, shop, Options{})
		for i, p := range plans[:2] {
			if !p.Settings || len(p.Runs) == 0 {
				t.Fatalf("%g mm, corner %d: no settings: %s", thick, i, p.NoSettings)
			}
			first, bound := float64(p.Runs[0].Current), float64(plans[2].Runs[0].Current)
			if first > bound+0.5 {
				t.Errorf("%g mm, corner %d: the first run is laid at %.0f A, the open root of a V at %.0f A", thick, i, first, bound)
			}
			if thick >= 6 && len(p.Runs) < 2 {
				t.Errorf("%g mm, corner %d: one run fills an open corner with nothing behind it", thick, i)
			}
		}
	}
	for name, j := range map[string]joint.Joint{"half open": corner(8, joint.HalfOpen, ""), "on a bar": corner(8, joint.FullOpen, "bar")} {
		if p := Joints([]joint.Joint{j}, set, shop, Options{})[0]; len(p.Runs) != 1 {
			t.Errorf("%s: %d runs, want one: something stands behind it", name, len(p.Runs))
		}
	}
}
