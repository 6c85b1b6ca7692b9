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
	var later []sketch.Bead
	for _, b := range s.Beads {
		if b.Number > 0 && !f.numberInside(b) {
			later = append(later, b)
		}
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, b := range s.Beads {
		for _, q := range f.outline(b.Outline) {
			left, right = min(left, q.X), max(right, q.X)
		}
	}
	for _, b := range later {
		f.numberBeside(b, left, right)
	}
}

// numberInside writes a pass number inside the pass, the larger type first, as near
// to its middle as it stands free. It tells whether there was room.
func (f *drawing) numberInside(b sketch.Bead) bool {
	pts := f.outline(b.Outline)
	text := strconv.Itoa(b.Number)
	for _, size := range []float64{11, page.MinSize} {
		s := page.Style{Face: page.Bold, Size: size}
		for _, c := range f.inner(pts, f.at(b.Outline.Centre())) {
			r := f.labelArea(s, text, c)
			if holds(pts, r) && f.free(r) && !crossed(r, f.lines) {
				f.write(s, text, c)
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

// numberBeside writes a pass number to the left or right of the weld, odd numbers
// on one side and even ones on the other, with a line to the pass.
func (f *drawing) numberBeside(b sketch.Bead, left, right float64) {
	c := f.at(b.Outline.Centre())
	edges := [2]float64{right, left}
	if b.Number%2 == 0 {
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
	at, ok := f.label(page.Style{Face: page.Bold, Size: page.MinSize}, strconv.Itoa(b.Number), places)
	if !ok {
		return
	}
	end := 1.6
	if at.X > c.X {
		end = -1.6
	}
	f.p.Line(f.box, c.X, c.Y, at.X+end, at.Y, 0.12, 0)
	f.p.Circle(f.box, c, 0.35, 0, 0)
}
