// Package wrap makes the paper that is wrapped round a tube to mark the cut at its
// end, in true size: which templates a job needs, the lines on each, and how they
// are spread over sheets. It draws into rectangles; what else stands on the pages
// is the caller's.
//
// The order to read: template.go (what is cut alike), tile.go (the paper and its
// sheets), draw.go (the lines), figure.go (the tube seen from the side).
package wrap

import (
	"math"
	"slices"

	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// Template is one cut and the joints whose tubes are cut so.
type Template struct {
	plan.Branch
	Ons    []string // designations of what the tubes sit on
	Marks  []string // of the joints
	Pieces int      // tubes with this cut

	Assemblies, Drawings, Revs []string

	Line weld.Wrap
	// Base is how far the base line of the paper lies from the square end of the
	// tube, its longest point: a length that is easy to measure.
	Base units.MM
	// Proud is what the inner edge stands proud by after a cut square to the wall,
	// at ProudAt round the tube.
	Proud, ProudAt units.MM
}

// band is the least paper between the base line and the cut: room for the names of
// the lines, and enough to hold on to.
const band = 26.0 // mm

// Of returns the templates of a job by their numbers.
func Of(job *price.Job) []Template {
	var out []Template
	for i, n := range plan.Templates(job.Plans) {
		if n == 0 {
			continue
		}
		p := &job.Plans[i]
		if n > len(out) {
			out = append(out, newTemplate(*p.Branch, job.Opts.US))
		}
		out[n-1].add(p)
	}
	return out
}

// newTemplate works out the line of a branch.
func newTemplate(b plan.Branch, us bool) Template {
	t := Template{Branch: b}
	t.Line, _ = b.Wrap() // what has no line has no number
	step := 10.0
	if us {
		step = units.MMPerInch / 2
	}
	t.Base = units.MM(math.Ceil((float64(t.Line.Depth())+band)/step-1e-9) * step)
	if b.Wall > 0 {
		t.Proud, t.ProudAt, _ = t.Line.Proud(b.Wall)
	}
	return t
}

func (t *Template) add(p *plan.Plan) {
	j := p.Joint
	n := max(j.Qty, 1)
	if p.Branch.Mitre > 0 {
		n *= 2 // both tubes are cut so
	}
	t.Pieces += n
	t.AngleGiven = t.AngleGiven && p.Branch.AngleGiven
	for _, e := range []struct {
		to   *[]string
		text string
	}{{&t.Marks, j.Mark}, {&t.Ons, p.Branch.On}, {&t.Assemblies, j.Assembly}, {&t.Drawings, j.Drawing}, {&t.Revs, j.Rev}} {
		if e.text != "" && !slices.Contains(*e.to, e.text) {
			*e.to = append(*e.to, e.text)
		}
	}
}

// Height returns how far the cut lies from the base line at a way round the tube.
func (t *Template) Height(x float64) float64 { return float64(t.Base - t.Line.At(units.MM(x))) }

// Round returns the way round the tube.
func (t *Template) Round() float64 { return float64(t.Line.Round()) }

// Square tells whether the tube stands square on its chord, so that it has no heel
// and no toe but two crowns.
func (t *Template) Square() bool { return t.Angle == 90 }

// Station is a place round the tube and the height of the cut there.
type Station struct {
	Number, Mirror int // Mirror lies as far on the other side of the middle; the same: none
	X, Height      float64
}

// Stations returns the places of one half of the template at which the line is told
// in figures: sixteenths of the way round, eighths of a thin tube.
func (t *Template) Stations() []Station {
	n := t.parts()
	out := make([]Station, 0, n/2+1)
	for i := range n/2 + 1 {
		x := t.Round() * float64(i) / float64(n)
		out = append(out, Station{i, (n - i) % n, x, t.Height(x)})
	}
	return out
}

// parts is how many stations there are round the tube.
func (t *Template) parts() int {
	switch r := t.Round(); {
	case r < 80:
		return 8
	case r < 1200:
		return 16
	}
	return 32
}
