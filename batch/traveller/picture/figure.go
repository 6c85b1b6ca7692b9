// Package picture draws what a welder sees: the cross-section of a joint to scale
// with its passes and sizes, its welding symbol, how it lies and how the torch is
// held.
package picture

import (
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
	"seamtally/batch/traveller/sketch"
	"seamtally/templates"
)

// Type of a picture's words: one who reads the scale must come close anyway.
var (
	words = page.Style{Face: page.Regular, Size: 9.5}
	small = page.Style{Face: page.Regular, Size: 8, Grey: 0.25}
)

// Pen is what every picture of a document is drawn with.
type Pen struct {
	Words templates.Words
	Show  show.Figures
	AWS   bool // welding symbols by AWS A2.4 instead of ISO 2553
}

// drawing is a cross-section being drawn: true millimetres to paper.
type drawing struct {
	Pen
	p       *page.Page
	box     page.BoxID
	frame   page.Rect
	origin  page.Point // paper place of the sketch's origin
	scale   float64
	text    string      // the scale, in words
	taken   []page.Rect // areas of labels already set
	lines   []stroke    // dimension lines and the like: no label crosses them
	leaders []stroke    // from passes to their numbers
	edges   []stroke    // edges of parts and passes: labels keep off where they can
	dashes  []stroke    // legs of angles: labels and numbers keep off where they can
	later   []func()    // labels, set when all lines are known
}

// stroke is a straight line on paper.
type stroke struct{ a, b page.Point }

// CrossSection draws the joint into a frame. What the plan does not know well
// enough to draw is said in words.
func (b Pen) CrossSection(p *page.Page, frame page.Rect, pl *plan.Plan) {
	box := p.Box("picture", frame)
	p.Frame(box, frame, 0.25, page.None)
	s, ok := sketch.Build(pl)
	if !ok {
		lines := page.Wrap(words, b.Words.Say("picture.none"), frame.W-10, 3)
		p.Lines(box, frame.X+5, frame.Y+frame.H/2, frame.W-10, words, lines)
		return
	}
	f, spot := b.placeWithSymbol(p, box, frame, s, pl)
	f.plates(s)
	f.beads(s)
	f.caption(pl)
	if spot.W > 0 {
		f.symbol(pl, spot.Rect, spot.tail)
		f.taken = append(f.taken, spot.Rect)
	}
	for _, d := range s.Dims {
		f.dimension(d)
	}
	for _, c := range s.Corners {
		f.corner(c, s)
	}
	for _, set := range f.later {
		set()
	}
	for _, n := range s.Notes {
		f.note(n)
	}
	f.sides(s, pl)
	f.numbers(s)
}
