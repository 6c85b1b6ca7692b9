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
	f.numbersBeside(s, later)
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

// numberInside writes a pass number inside the pass, as near to its middle as it stands
// free: clear of the legs of an angle even in small type before it stands on one, and the
// larger type first. It tells whether there was room.
func (f *drawing) numberInside(s sketch.Sketch, i int) bool {
	b := s.Beads[i]
	pts := f.outline(b.Outline)
	text := strconv.Itoa(b.Number)
	places := f.inner(pts, f.at(b.Outline.Centre()))
	for _, off := range [][]stroke{f.dashes, nil} {
		for _, size := range []float64{11, page.MinSize} {
			style := page.Style{Face: page.Bold, Size: size}
			for _, c := range places {
				r := f.labelArea(style, text, c)
				if holds(pts, r) && f.free(r) && !crossed(r, f.lines) && !crossed(r, off) && !f.covered(s, i, r) {
					f.write(style, text, c)
					return true
				}
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
