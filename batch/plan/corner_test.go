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

// bearsOf returns what the table of beads gives for a run's own area in the way of a plan;
// never less than the way's lowest current.
func bearsOf(t *testing.T, c *catalog, p *Plan, r *Run) float64 {
	t.Helper()
	for _, n := range c.all[0] {
		if n.wire.Filler == p.Filler && n.wire.Dia == p.Dia && n.gas.Gas == p.Gas && n.mode == r.Transfer {
			return max(n.start, n.bears(float64(r.Area)))
		}
	}
	t.Fatalf("no way of %s %v in %s", p.Filler, p.Dia, r.Transfer)
	return 0
}

// The edges of an open corner meet in a line: a V of 90 degrees without a root face.
// The first run lies on it no hotter than on the open root of a V of the same plate,
// and no run of 290 A falls through it. With half an edge or a bar behind it the run
// is that of a fillet.
func TestOpenCornerTakesARootRun(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
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
			for _, r := range p.Runs[1:] {
				if most := bearsOf(t, c, &p, &r); float64(r.Current) > most*(1+1e-9) {
					t.Errorf("%g mm, corner %d: run %d of %.1f mm² is laid at %.0f A, on two edges its own area bears %.0f A", thick, i, r.Number, float64(r.Area), float64(r.Current), most)
				}
			}
			if thick >= 6 && len(p.Runs) < 2 {
				t.Errorf("%g mm, corner %d: one run fills an open corner with nothing behind it", thick, i)
			}
		}
	}
	inside := corner(8, joint.FullOpen, "")
	inside.Sides = 2
	for name, j := range map[string]joint.Joint{"half open": corner(8, joint.HalfOpen, ""), "on a bar": corner(8, joint.FullOpen, "bar"), "welded inside too": inside} {
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if len(p.Runs) != 1 {
			t.Errorf("%s: %d runs, want one: something stands behind it", name, len(p.Runs))
		}
		if text := textOf(&p, "root-corner"); text != "" {
			t.Errorf("%s: it says %q", name, text)
		}
	}
}
