package picture

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
)

// numbers writes the number of each pass where it lies, clear of the throat and of
// the pass's own edges, or, where the pass is too thin for that, beside the weld
// with a line to the pass.
func (f *drawing) numbers(s sketch.Sketch) {
	var later []int
	for i, b := range s.Beads {
		if b.Number > 0 && !f.numberInside(s, i) {
			later = append(later, i)
		}
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, b := range s.Beads {
		for _, q := range f.outline(b.Outline) {
			left, right = min(left, q.X), max(right, q.X)
		}
	}
	for _, i := range later {
		f.numberBeside(s, i, left, right)
	}
}

// covered tells whether a later pass lies over an area of paper, as the back run lies
// over the root that was gouged away for it.
func (f *drawing) covered(s sketch.Sketch, i int, r page.Rect) bool {
	middle := page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2}
	for _, b := range s.Beads[i+1:] {
		pts := f.outline(b.Outline)
		if around(pts, middle) {
			return true
		}
		for k, q := range pts {
			if through(r, stroke{q, pts[(k+1)%len(pts)]}) {
				return true
			}
		}
	}
	return false
}

// numberInside writes a pass number inside the pass, the larger type first, as near
// to its middle as it stands free. It tells whether there was room.
func (f *drawing) numberInside(s sketch.Sketch, i int) bool {
	b := s.Beads[i]
	pts := f.outline(b.Outline)
	text := strconv.Itoa(b.Number)
	for _, size := range []float64{11, page.MinSize} {
		style := page.Style{Face: page.Bold, Size: size}
		for _, c := range f.inner(pts, f.at(b.Outline.Centre())) {
			r := f.labelArea(style, text, c)
			if holds(pts, r) && f.free(r) && !crossed(r, f.lines) && !f.covered(s, i, r) {
				f.write(style, text, c)
				return true
			}
		}
	}
	return false
}

// inner returns places inside an outline's bounds, those nearest its middle first.
func (f *drawing) inner(pts []page.Point, middle page.Point) []page.Point {
	low, high := pts[0], pts[0]
	for _, q := range pts {
		low = page.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}
		high = page.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	out := []page.Point{middle}
	const n = 9
	for i := 1; i < n; i++ {
		for k := 1; k < n; k++ {
			out = append(out, page.Point{X: low.X + (high.X-low.X)*float64(i)/n, Y: low.Y + (high.Y-low.Y)*float64(k)/n})
		}
	}
	far := func(q page.Point) float64 { return math.Hypot(q.X-middle.X, q.Y-middle.Y) }
	slices.SortStableFunc(out, func(a, b page.Point) int { return cmp.Compare(far(a), far(b)) })
	return out
}

// holds tells whether an area lies wholly inside an outline.
func holds(pts []page.Point, r page.Rect) bool {
	for i, q := range pts {
		if through(r, stroke{q, pts[(i+1)%len(pts)]}) {
			return false
		}
	}
	return around(pts, page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2})
}

// around tells whether an outline runs around a point.
func around(pts []page.Point, c page.Point) bool {
	in := false
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y > c.Y) != (b.Y > c.Y) && c.X < a.X+(c.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// shown returns a place on a pass where it is seen, at best its middle.
func (f *drawing) shown(s sketch.Sketch, i int) page.Point {
	pts, middle := f.outline(s.Beads[i].Outline), f.at(s.Beads[i].Outline.Centre())
	for _, c := range f.inner(pts, middle) {
		if around(pts, c) && !f.covered(s, i, page.Rect{X: c.X - 0.4, Y: c.Y - 0.4, W: 0.8, H: 0.8}) {
			return c
		}
	}
	return middle
}

// numberBeside writes a pass number to the left or right of the weld, odd numbers
// on one side and even ones on the other, with a line to the pass.
func (f *drawing) numberBeside(s sketch.Sketch, i int, left, right float64) {
	b := s.Beads[i]
	c := f.shown(s, i)
	edges := [2]float64{right, left}
	twins := slices.ContainsFunc(s.Beads, func(b sketch.Bead) bool { return b.Mirror }) // then each stays on its own side
	if b.Mirror || !twins && b.Number%2 == 0 {
		edges = [2]float64{left, right}
	}
	var places []page.Point
	for _, edge := range edges {
		way := math.Copysign(1, edge-c.X)
		for _, dx := range []float64{3, 5, 7, 9, 12, 16} {
			for _, dy := range []float64{0, -2, 2, -4, 4, -6, 6} {
				places = append(places, page.Point{X: edge + way*dx, Y: c.Y + dy})
			}
		}
	}
	style, text := page.Style{Face: page.Bold, Size: page.MinSize}, strconv.Itoa(b.Number)
	clear := slices.DeleteFunc(slices.Clone(places), func(at page.Point) bool { return f.overLabel(leader(c, at)) })
	apart := slices.DeleteFunc(slices.Clone(clear), func(at page.Point) bool { return f.overLeader(leader(c, at)) })
	var at page.Point
	ok := false
	for _, allowed := range [][]page.Point{apart, clear, places} { // better a line over a line or a word than no number
		if at, ok = f.label(style, text, allowed); ok {
			break
		}
	}
	if !ok {
		return
	}
	l := leader(c, at)
	f.p.Line(f.box, l.a.X, l.a.Y, l.b.X, l.b.Y, 0.12, 0)
	f.lines, f.leaders = append(f.lines, l), append(f.leaders, l)
	f.p.Circle(f.box, c, 0.35, 0, 0)
}

// leader is the line from a place on a pass to the side of its number.
func leader(from, number page.Point) stroke {
	end := 1.6
	if number.X > from.X {
		end = -1.6
	}
	return stroke{from, page.Point{X: number.X + end, Y: number.Y}}
}

// overLabel tells whether a line would run through a label that is already set.
func (f *drawing) overLabel(l stroke) bool {
	return slices.ContainsFunc(f.taken, func(r page.Rect) bool { return through(r, l) })
}

// overLeader tells whether a line to a number would cross another such line.
func (f *drawing) overLeader(l stroke) bool {
	return slices.ContainsFunc(f.leaders, func(o stroke) bool {
		return l.side(o.a)*l.side(o.b) < 0 && o.side(l.a)*o.side(l.b) < 0
	})
}

// side is above, below or at zero as a point lies on one side of a line, on the other or on it.
func (l stroke) side(q page.Point) float64 {
	return (l.b.X-l.a.X)*(q.Y-l.a.Y) - (l.b.Y-l.a.Y)*(q.X-l.a.X)
}
