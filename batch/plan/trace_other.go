package plan

import (
	"fmt"

	"seamtally/batch/joint"
	"seamtally/batch/weld"
)

// otherAreas shows the areas of edges, flares, plugs and slots.
func (w *working) otherAreas(drawn string) {
	p, t := w.p, w.t
	r, made := &p.Prep, number(t.made, 2)+" mm²"
	flush := func(id string) {
		w.step(id, "area of one seam as it will be made", "as drawn: no allowance", "", made, geometry, "derived")
	}
	switch s := t.shape.section.(type) {
	case weld.Edge:
		w.step("AREA-15", "area of one seam as drawn", "A = 2/3 (t1 + t2) a", fmt.Sprintf("2/3 x (%s + %s) x %s", n2(s.T1), n2(s.T2), n2(s.Throat)), drawn, geometry, "derived")
		flush("AREA-15")
	case weld.Plug:
		w.step("AREA-13", "plan of the hole", "A = π d² / 4", fmt.Sprintf("π x %s² / 4, filled %s mm deep", n2(s.Diameter), number(t.holeDepth, 2)), drawn, geometry, "derived")
		flush("AREA-13")
	case weld.Slot:
		w.step("AREA-14", "plan of the slot", "A = w (l − w) + π w² / 4",
			fmt.Sprintf("%s x (%s − %s) + π x %s² / 4, filled %s mm deep", n2(s.Width), n2(s.Length), n2(s.Width), n2(s.Width), number(t.holeDepth, 2)), drawn, geometry, "derived")
		flush("AREA-14")
	default:
		edges := 1
		if r.Kind == joint.FlareV {
			edges = 2
		}
		if r.ThroatShare > 0 && t.j.Size.A > 0 {
			w.step("AREA-18", "depth filled for the throat", "h = min(R, R − (f R − E))", fmt.Sprintf("R %s, f %s, E %s", n2(r.Radius), number(r.ThroatShare, 4), n2(t.j.Size.A)),
				n2(r.Throat)+" mm", "AISC 360 Table J2.2 and J2.1, solved for the depth filled", "derived")
		}
		w.step("AREA-11", "area of one seam as drawn", "A = n (R h − h √(R² − h²)/2 − R² asin(h/R)/2) + g h",
			fmt.Sprintf("n %d, R %s, h %s, g %s", edges, n2(r.Radius), n2(r.Throat), n2(r.Gap)), drawn, geometry, "derived")
		w.step("AREA-12", "area of one seam as it will be made", "A = drawn + 2/3 (mouth + 2 mm) cap", w.capWords(), made, geometry, "derived")
	}
}

// voltage shows the arc voltage of a kind of pass.
func (w *working) voltage(g *group, what string) {
	v := g.way.volts
	w.step("ARC-3", what+"voltage", "line between two points",
		fmt.Sprintf("%g V at %g A, %g V at %g A", v.Volt1, v.Amp1, v.Volt2, v.Amp2), number(g.volts, 1)+" V", v.Source, v.Basis)
}
