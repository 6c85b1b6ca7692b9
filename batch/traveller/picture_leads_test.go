package traveller

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// The lines from the passes to their numbers do not cross one another in plates to 20 mm,
// in double grooves to 25 mm. In a single groove of 25 mm and more some still do: the
// numbers of its twelve passes and more are set one after the other.
func TestLinesToPassNumbersDoNotCross(t *testing.T) {
	var joints []joint.Joint
	for _, thick := range []units.MM{8, 12, 16, 20, 25} {
		for _, position := range []string{"PA", "PF"} {
			joints = append(joints, butt("V", joint.DoubleV, thick, 600, position), butt("V", joint.DoubleBevel, thick, 600, position))
			if thick <= 20 {
				joints = append(joints, butt("V", joint.SingleV, thick, 600, position), butt("V", joint.SingleBevel, thick, 600, position))
			}
		}
		joints = append(joints, leg("V", thick/2, thick, thick, 600, "PB"))
	}
	tight := butt("V", joint.DoubleV, 25, 600, "PA") // with a procedure and a quality its sheet has less room
	tight.Gap, tight.RootFace, tight.WPS, tight.Quality, tight.Wire = 2, 2, "SP-02", "C", "T 46 2 P"
	joints = append(joints, tight)
	lines, pictures := 0, 0
	for _, lang := range []string{"en", "uk"} {
		for _, look := range looks() {
			look.Lang = lang
			for _, j := range joints {
				doc := faultless(t, jobOf(t, []joint.Joint{j}, look))
				for _, p := range doc.Pages {
					all := leads(p)
					if lines += len(all); len(all) > 0 {
						pictures++
					}
					if n := crossings(all); n > 0 {
						t.Errorf("%s of %g in %s, %s, %s: %d crossings", j.Kind, float64(j.T1), j.Position, look.Paper, lang, n)
					}
				}
			}
		}
	}
	if pictures < 50 || lines < 200 {
		t.Errorf("only %d lines in %d pictures were looked at", lines, pictures)
	}
}

func crossings(all [][]page.Point) (n int) {
	for i, a := range all {
		for _, b := range all[:i] {
			if cross(a, b) {
				n++
			}
		}
	}
	return n
}

// leads are the lines of a page that end in the dot on a pass.
func leads(p *page.Page) (out [][]page.Point) {
	for i, s := range p.Shapes[1:] {
		if line := p.Shapes[i]; p.Boxes[s.Box].Name == "picture" && s.Closed && s.Fill == 0 && len(s.Points) > 30 && len(line.Points) == 2 {
			out = append(out, line.Points)
		}
	}
	return out
}

// cross tells whether two lines have a point in common that ends neither.
func cross(a, b []page.Point) bool {
	side := func(l []page.Point, q page.Point) float64 {
		return (l[1].X-l[0].X)*(q.Y-l[0].Y) - (l[1].Y-l[0].Y)*(q.X-l[0].X)
	}
	return side(a, b[0])*side(a, b[1]) < 0 && side(b, a[0])*side(b, a[1]) < 0
}
