package traveller

import (
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// The lines from the passes to their numbers do not cross one another in plates of 8 to
// 60 mm, nor do they run through any text of the picture; and of every layer at least
// every fourth is numbered.
func TestLinesToPassNumbersDoNotCross(t *testing.T) {
	var joints []joint.Joint
	add := func(kind joint.Kind, thick units.MM, positions ...string) {
		for _, position := range positions {
			joints = append(joints, butt("V", kind, thick, 600, position))
		}
	}
	for _, thick := range []units.MM{8, 12, 16, 20, 25} {
		add(joint.DoubleV, thick, "PA", "PF")
		add(joint.DoubleBevel, thick, "PA", "PF")
		add(joint.SingleV, thick, "PA", "PF")
		add(joint.SingleBevel, thick, "PA", "PF")
		joints = append(joints, leg("V", thick/2, thick, thick, 600, "PB"))
	}
	for _, thick := range []units.MM{25, 30, 40, 50, 60} {
		for _, kind := range []joint.Kind{joint.SingleV, joint.SingleBevel, joint.SingleU, joint.SingleJ, joint.DoubleV} {
			add(kind, thick, "PA", "PC")
		}
	}
	tight := butt("V", joint.DoubleV, 25, 600, "PA") // with a procedure and a quality its sheet has less room
	tight.Gap, tight.RootFace, tight.WPS, tight.Quality, tight.Wire = 2, 2, "SP-02", "C", "T 46 2 P"
	joints = append(joints, tight)
	lines, pictures := 0, 0
	for lang, names := range map[string][]string{"en": {"metric a4", "us letter"}, "uk": {"metric letter"}} {
		for _, name := range names {
			look := looks()[name]
			look.Lang = lang
			for _, j := range joints {
				job := jobOf(t, []joint.Joint{j}, look)
				doc := faultless(t, job)
				for _, p := range doc.Pages {
					all := leads(p)
					if lines += len(all); len(all) > 0 {
						pictures++
					}
					what := string(j.Kind) + " of " + strconv.Itoa(int(j.T1)) + " in " + j.Position + ", " + look.Paper + ", " + lang
					if n := crossings(all); n > 0 {
						t.Errorf("%s: %d crossings", what, n)
					}
					for _, text := range throughTexts(p, all) {
						t.Errorf("%s: a line runs through %q", what, text)
					}
				}
				numbersHold(t, job, doc)
			}
		}
	}
	if pictures < 100 || lines < 1000 {
		t.Errorf("only %d lines in %d pictures were looked at", lines, pictures)
	}
}

// throughTexts are the texts of the picture that a line runs through.
func throughTexts(p *page.Page, all [][]page.Point) (out []string) {
	for _, text := range p.Texts {
		if p.Boxes[text.Box].Name != "picture" {
			continue
		}
		low, high := page.Point{X: text.X, Y: text.Y - text.Ascent()*0.9}, page.Point{X: text.X + text.W, Y: text.Y}
		for _, l := range all {
			for k := range 101 {
				share := float64(k) / 100
				q := page.Point{X: l[0].X + (l[1].X-l[0].X)*share, Y: l[0].Y + (l[1].Y-l[0].Y)*share}
				if q.X > low.X && q.X < high.X && q.Y > low.Y && q.Y < high.Y {
					out = append(out, text.S)
					break
				}
			}
		}
	}
	return out
}

// numbersHold fails where the picture of a joint leaves out more numbers of layers than it
// must: with every fourth the passes can be counted.
func numbersHold(t *testing.T, job *price.Job, doc *page.Document) {
	t.Helper()
	for _, p := range doc.Pages {
		named := map[int]bool{}
		drawn := false
		for _, text := range p.Texts {
			if p.Boxes[text.Box].Name != "picture" {
				continue
			}
			first, last, many := strings.Cut(text.S, "–")
			from, err := strconv.Atoi(first)
			if err != nil {
				continue
			}
			to := from
			if many {
				to, _ = strconv.Atoi(last)
			}
			for n := from; n <= to; n++ {
				named[n], drawn = true, true
			}
		}
		if !drawn || said(p, "title") == "" {
			continue
		}
		missing, layer := 0, -1
		for _, r := range job.Plans[0].Runs {
			if named[r.Number] {
				missing = 0
			} else if r.Layer != layer {
				missing++
			}
			if layer = r.Layer; missing > 3 {
				t.Errorf("%s of %g in %s: pass %d and three layers before it have no number", job.Plans[0].Joint.Kind, float64(job.Plans[0].Joint.T1), job.Plans[0].Joint.Position, r.Number)
				return
			}
		}
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
