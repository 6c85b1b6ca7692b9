package picture

import (
	"math"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
	"seamtally/batch/units"
)

// dimName returns how a dimension is marked: z6, a4.2, t 10.
func (f *drawing) dimName(d sketch.Dim) string {
	v := f.Show.Size(units.MM(d.Value)).Num
	switch d.Name {
	case "z", "a", "s":
		return d.Name + " " + v
	case "g":
		return f.Words.Say("dim.gap") + " " + v
	case "c":
		return f.Words.Say("dim.face") + " " + v
	case "h":
		return f.Words.Say("dim.depth") + " " + v
	case "u":
		return f.Words.Say("dim.gouge", v)
	case "r":
		return "R " + v
	}
	return v
}

// dimension draws a dimension line beside the points it measures.
func (f *drawing) dimension(d sketch.Dim) {
	from, to := f.at(d.From), f.at(d.To)
	away := page.Point{X: d.Away.X, Y: -d.Away.Y}
	if d.Inside {
		f.throat(d, from, to, away)
		return
	}
	off := 4.5
	if d.Name == "z" && away.X > 0 {
		off = f.clearOf(from, to, away)
	}
	a, b := shift(from, away, off), shift(to, away, off)
	f.p.Line(f.box, from.X, from.Y, shift(from, away, off+1).X, shift(from, away, off+1).Y, 0.12, 0.3)
	f.p.Line(f.box, to.X, to.Y, shift(to, away, off+1).X, shift(to, away, off+1).Y, 0.12, 0.3)
	f.span(a, b)
	f.lines = append(f.lines, stroke{a, b}, stroke{from, a}, stroke{to, b})
	s := page.Style{Face: page.Bold, Size: 9.5}
	w := s.Width(page.Clean(f.dimName(d)))
	mid := page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	gapX, gapY := w/2+1.4, 3.2
	var places []page.Point
	for k := range 7 {
		more := float64(k) * 3.5
		places = append(places,
			page.Point{X: mid.X + away.X*(gapX+more), Y: mid.Y + away.Y*(gapY+more)},
			page.Point{X: mid.X + away.X*gapX - away.Y*(gapX+more), Y: mid.Y + away.Y*gapY + away.X*(gapY+more)},
			page.Point{X: mid.X + away.X*gapX + away.Y*(gapX+more), Y: mid.Y + away.Y*gapY - away.X*(gapY+more)})
	}
	if d.Away.X == 0 { // beside its arrows, where there is no room below them
		for _, more := range []float64{0, 3, 6, 10} {
			beside := math.Abs(b.X-a.X)/2 + 4.5 + w/2 + more
			places = append(places, page.Point{X: mid.X - beside, Y: mid.Y}, page.Point{X: mid.X + beside, Y: mid.Y})
		}
	}
	for _, back := range []float64{0, 3, 6} { // else on the part itself, before its edge
		places = append(places, page.Point{X: mid.X - away.X*(off+gapX+back), Y: mid.Y - away.Y*(off+gapY+back)})
	}
	f.later = append(f.later, func() {
		if at, ok := f.label(s, f.dimName(d), places); ok {
			f.lead(mid, at, s)
		}
	})
}

// farLabel is how far from its dimension line a label may stand without a line to it.
const farLabel = 9

// lead draws a thin line from a label that stands above or below to its dimension.
func (f *drawing) lead(mid, at page.Point, s page.Style) {
	if math.Abs(at.Y-mid.Y) < 5 || math.Hypot(at.X-mid.X, at.Y-mid.Y) < farLabel {
		return
	}
	from := page.Point{X: at.X, Y: at.Y + math.Copysign(s.Ascent()/2+0.6, mid.Y-at.Y)}
	f.p.Line(f.box, from.X, from.Y, mid.X, mid.Y, 0.12, 0.3)
	f.lines = append(f.lines, stroke{from, mid})
}

// clearOf keeps the leg's dimension line beyond the toe of an equal fillet.
func (f *drawing) clearOf(from, to, away page.Point) float64 {
	return math.Hypot(to.X-from.X, to.Y-from.Y)*1.1 + 13
}

func shift(p, dir page.Point, by float64) page.Point {
	return page.Point{X: p.X + dir.X*by, Y: p.Y + dir.Y*by}
}

// span draws a dimension line with its arrows: inside where there is room, else
// from outside.
func (f *drawing) span(a, b page.Point) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l >= 5 {
		mid := page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
		f.p.Arrow(f.box, mid, a, 0.18, 1.8)
		f.p.Arrow(f.box, mid, b, 0.18, 1.8)
		return
	}
	if l == 0 {
		return
	}
	u := page.Point{X: (b.X - a.X) / l, Y: (b.Y - a.Y) / l}
	f.p.Line(f.box, a.X, a.Y, b.X, b.Y, 0.18, 0)
	before, behind := f.held(shift(a, u, -3.5)), f.held(shift(b, u, 3.5))
	f.p.Arrow(f.box, before, a, 0.18, 1.6)
	f.p.Arrow(f.box, behind, b, 0.18, 1.6)
	f.lines = append(f.lines, stroke{before, behind})
}

// held keeps a point inside the frame.
func (f *drawing) held(q page.Point) page.Point {
	return page.Point{
		X: max(f.frame.X, min(f.frame.Right(), q.X)),
		Y: max(f.frame.Y, min(f.frame.Bottom(), q.Y)),
	}
}

// throat draws the throat through the weld and carries its label outside.
func (f *drawing) throat(d sketch.Dim, from, to, away page.Point) {
	s := page.Style{Face: page.Bold, Size: 9.5}
	w := s.Width(page.Clean(f.dimName(d)))
	var places []page.Point
	for k := range 26 { // in small steps: between the leg's line and the frame there may be little room
		places = append(places, shift(to, away, 6+w/2+float64(k)*0.5))
	}
	for near := 5.5 + w/2; near > 3+w*0.36; near -= 0.5 { // else closer to the weld
		places = append(places, shift(to, away, near))
	}
	f.lines = append(f.lines, stroke{from, to})
	f.later = append(f.later, func() {
		end := shift(to, away, 3)
		if c, ok := f.label(s, f.dimName(d), f.belowLines(s, f.dimName(d), places)); ok {
			end = shift(c, away, -w/2-1)
		}
		f.p.Line(f.box, to.X, to.Y, end.X, end.Y, 0.12, 0.3)
	})
	if math.Hypot(to.X-from.X, to.Y-from.Y) < 4 {
		f.p.Line(f.box, from.X, from.Y, to.X, to.Y, 0.18, 0)
		return
	}
	mid := page.Point{X: (from.X + to.X) / 2, Y: (from.Y + to.Y) / 2}
	f.p.Arrow(f.box, mid, from, 0.18, 1.6)
	f.p.Arrow(f.box, mid, to, 0.18, 1.6)
}

// belowLines puts last the places where a text would touch the line above it, as the throat's
// that of the leg.
func (f *drawing) belowLines(s page.Style, text string, places []page.Point) []page.Point {
	var first, last []page.Point
	for _, c := range places {
		r := f.labelArea(s, page.Clean(text), c)
		if crossed(page.Rect{X: r.X, Y: r.Y - 0.5, W: r.W, H: r.H}, f.lines) {
			last = append(last, c)
		} else {
			first = append(first, c)
		}
	}
	return append(first, last...)
}

// note writes the size of a plate that is cut short inside it.
func (f *drawing) note(n sketch.Note) {
	f.label(page.Style{Face: page.Bold, Size: 9.5}, f.Show.Size(units.MM(n.Value)).Num, []page.Point{f.at(n.At)})
}

// corner draws an included angle: an arc and the degrees.
func (f *drawing) corner(c sketch.Corner, s sketch.Sketch) {
	at := f.held(f.at(c.At))
	r := f.reach(c, s)
	arc := page.Arc(at, r, -c.To, -c.From)
	inside := arc[:0:0]
	for _, q := range arc {
		inside = append(inside, f.held(q))
	}
	f.p.Draw(f.box, page.Shape{Points: inside, Line: 0.18, Fill: page.None})
	for i := range inside[1:] {
		f.lines = append(f.lines, stroke{inside[i], inside[i+1]})
	}
	for _, t := range []float64{c.From, c.To} {
		end := page.Point{X: at.X + (r+1)*math.Cos(t), Y: at.Y - (r+1)*math.Sin(t)}
		f.p.Draw(f.box, page.Shape{Points: []page.Point{at, f.held(end)}, Line: 0.12, Grey: 0.3, Fill: page.None, Dash: 0.8})
		f.dashes = append(f.dashes, stroke{at, f.held(end)})
	}
	var places []page.Point
	for k := range 9 {
		d := r + 4 + float64(k/3)*2.5
		t := c.From + (c.To-c.From)*[3]float64{0.5, 0.3, 0.7}[k%3]
		places = append(places, page.Point{X: at.X + d*math.Cos(t), Y: at.Y - d*math.Sin(t)})
	}
	f.later = append(f.later, func() { f.label(page.Style{Face: page.Bold, Size: 9.5}, f.Show.Num(c.Degrees, 1)+"°", places) })
}

// flattest is the least sine of an arc's end that still lifts it off the plates: of a very
// wide groove it would stand far above.
const flattest = 0.7

// reach returns the radius of an angle's arc: beyond the plates' surface, at its ends too,
// and above the cap, inside the frame.
func (f *drawing) reach(c sketch.Corner, s sketch.Sketch) float64 {
	depth := -c.At.Y * f.scale
	if c.At.Y == 0 {
		far := 0.0
		for _, b := range s.Beads {
			if b.Mirror {
				continue
			}
			for _, q := range b.Outline {
				far = max(far, q.Sub(c.At).Len()*f.scale)
			}
		}
		return min(far+12, f.frame.W)
	}
	slope := max(math.Sin((c.From+c.To)/2), 0.3)
	ends := max(min(math.Sin(c.From), math.Sin(c.To)), flattest)
	top := 0.0
	for _, b := range s.Beads {
		for _, q := range b.Outline {
			top = max(top, q.Y*f.scale)
		}
	}
	return min(max((depth+4.5)/slope, (depth+1.5)/ends, (depth+top+2)/slope), f.at(c.At).Y-f.frame.Y-6)
}
