package page

import "fmt"

// slack is the rounding that a measurement may be off, in millimetres.
const slack = 0.05

// Faults returns what is wrong with the layout: a text or shape that leaves its
// box, a box that leaves the page, two texts that overlap, type that is too
// small, a rune without a glyph. An empty result is a page that can be printed.
func (p *Page) Faults() []string {
	var out []string
	for _, b := range p.Boxes {
		if !inside(b.Rect, Rect{0, 0, p.W, p.H}) {
			out = append(out, fmt.Sprintf("box %s leaves the page: %v", b.Name, b.Rect))
		}
	}
	for _, t := range p.Texts {
		box := p.Boxes[t.Box]
		if !inside(t.extent(), box.Rect) {
			out = append(out, fmt.Sprintf("text %q %v leaves box %s %v", t.S, t.extent(), box.Name, box.Rect))
		}
		if t.Size < MinSize {
			out = append(out, fmt.Sprintf("text %q is set in %g pt", t.S, t.Size))
		}
		for _, r := range t.S {
			if !t.Face.Has(r) {
				out = append(out, fmt.Sprintf("text %q: no glyph for %U", t.S, r))
			}
		}
	}
	for _, s := range p.Shapes {
		box := p.Boxes[s.Box]
		for _, pt := range s.Points {
			if !inside(Rect{pt.X, pt.Y, 0, 0}, box.Rect) {
				out = append(out, fmt.Sprintf("shape %q at %v leaves box %s %v", s.Name, pt, box.Name, box.Rect))
				break
			}
		}
	}
	return append(out, p.overlaps()...)
}

func (p *Page) overlaps() []string {
	var out []string
	for i, a := range p.Texts {
		for _, b := range p.Texts[i+1:] {
			if overlap(a.extent(), b.extent()) {
				out = append(out, fmt.Sprintf("texts overlap: %q %v and %q %v", a.S, a.extent(), b.S, b.extent()))
			}
		}
	}
	return out
}

// extent is the area a text covers.
func (t Text) extent() Rect {
	return Rect{t.X, t.Y - t.Ascent(), t.W, t.Ascent() + t.Descent()}
}

func inside(in, out Rect) bool {
	return in.X >= out.X-slack && in.Y >= out.Y-slack && in.Right() <= out.Right()+slack && in.Bottom() <= out.Bottom()+slack
}

func overlap(a, b Rect) bool {
	return a.X+slack < b.Right() && b.X+slack < a.Right() && a.Y+slack < b.Bottom() && b.Y+slack < a.Bottom()
}
