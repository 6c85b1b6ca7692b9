package picture

import (
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
)

// edgeAir is how far a label keeps off the edges of parts and passes where it can, in
// millimetres: the tall letters of a word touch a line that only clears their area.
const edgeAir = 0.5

// label writes a text centred on the first of the places where it is free of
// everything, with some air to the edges or else without, and else on the first where
// it only lies over an edge, which then gives way to it. It returns that place, and
// whether there was one.
func (f *drawing) label(s page.Style, text string, places []page.Point) (page.Point, bool) {
	text = page.Clean(text)
	for _, keep := range []struct {
		off bool
		air float64
	}{{true, edgeAir}, {true, 0}, {}} {
		for _, c := range places {
			r := f.labelArea(s, text, c)
			if !f.free(r) || crossed(r, f.lines) || keep.off && (crossed(r.Inset(-keep.air, -keep.air), f.edges) || crossed(r, f.dashes)) {
				continue
			}
			if !keep.off {
				f.p.Frame(f.box, r.Inset(0.2, 0.2), 0, 1)
			}
			f.write(s, text, c)
			return c, true
		}
	}
	return page.Point{}, false
}

// write sets a clean text centred on a place.
func (f *drawing) write(s page.Style, text string, c page.Point) {
	w := s.Width(text)
	f.taken = append(f.taken, f.labelArea(s, text, c))
	f.p.Write(f.box, c.X-w/2, c.Y+s.Ascent()/2-0.3, w+0.01, page.Left, s, text)
}

// labelArea is what a text centred on a place covers, with a little air.
func (f *drawing) labelArea(s page.Style, text string, c page.Point) page.Rect {
	w, cap := s.Width(text), s.Ascent()
	return page.Rect{X: c.X - w/2 - 0.4, Y: c.Y - cap/2 - 0.4, W: w + 0.8, H: cap + s.Descent() + 0.6}
}

// crossed tells whether one of the lines runs through an area.
func crossed(r page.Rect, lines []stroke) bool {
	for _, l := range lines {
		if max(l.a.X, l.b.X) < r.X || min(l.a.X, l.b.X) > r.Right() || max(l.a.Y, l.b.Y) < r.Y || min(l.a.Y, l.b.Y) > r.Bottom() {
			continue // most lie elsewhere
		}
		if through(r, l) {
			return true
		}
	}
	return false
}

// through clips a line against the four sides of an area: what is left of it lies
// inside.
func through(r page.Rect, l stroke) bool {
	from, to := 0.0, 1.0
	dx, dy := l.b.X-l.a.X, l.b.Y-l.a.Y
	for _, side := range [4][2]float64{
		{-dx, l.a.X - r.X}, {dx, r.Right() - l.a.X}, {-dy, l.a.Y - r.Y}, {dy, r.Bottom() - l.a.Y},
	} {
		switch rate, room := side[0], side[1]; {
		case rate == 0 && room < 0:
			return false
		case rate < 0:
			from = max(from, room/rate)
		case rate > 0:
			to = min(to, room/rate)
		}
	}
	return from < to
}

func (f *drawing) free(r page.Rect) bool {
	in := f.frame.Inset(0.5, 0.5)
	if r.X < in.X || r.Y < in.Y || r.Right() > in.Right() || r.Bottom() > in.Bottom() {
		return false
	}
	for _, t := range f.taken {
		if r.X < t.Right() && t.X < r.Right() && r.Y < t.Bottom() && t.Y < r.Bottom() {
			return false
		}
	}
	return true
}

// caption says scale and what the picture shows, at its foot.
func (f *drawing) caption(pl *plan.Plan) {
	text := f.Words.Say("picture.scale", f.text)
	if len(pl.Runs) > 1 {
		text = f.Words.Say("picture.order") + " · " + text
	}
	switch t1, t2 := pl.Prep.T1, pl.Prep.T2; {
	case t1 == 0 && t2 == 0:
		text += " · " + f.Words.Say("picture.thickness")
	case t1 == 0 || t2 == 0: // the planner takes them to be alike, as the picture does
		text += " · " + f.Words.Say("picture.alike")
	}
	if pl.Joint.Sides == 2 && (pl.Prep.Kind == joint.Fillet || pl.Prep.Kind == joint.Lap) {
		text += " · " + f.Words.Say("picture.both")
	}
	if sketch.Undersides(pl) {
		text += " · " + f.Words.Say("picture.under")
	}
	y := f.frame.Bottom() - 1.6
	w := f.frame.W - 4
	f.p.Write(f.box, f.frame.X+2, y, w, page.Left, small, text)
	f.taken = append(f.taken, page.Rect{X: f.frame.X, Y: y - 3.4, W: f.frame.W, H: 5})
}
