package picture

import (
	"math"
	"strconv"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
)

// Greys of a picture.
const (
	plateGrey = 0.87
	beadGrey  = 1
)

// plates draws the parts: grey, a firm outline, a broken line where they go on.
func (f *drawing) plates(s sketch.Sketch) {
	for _, pl := range s.Plates {
		pts := f.outline(pl.Outline)
		fill := plateGrey
		if pl.Name == "backing" {
			fill = 0.7
		}
		f.p.Draw(f.box, page.Shape{Name: "plate " + pl.Name, Points: pts, Closed: true, Fill: fill})
		for i, q := range pts {
			next := pts[(i+1)%len(pts)]
			if pl.Cut[i] {
				f.p.Draw(f.box, page.Shape{Points: ragged(q, next), Line: 0.15, Fill: page.None})
				f.edges = append(f.edges, stroke{q, next})
				continue
			}
			f.p.Line(f.box, q.X, q.Y, next.X, next.Y, 0.35, 0)
			f.edges = append(f.edges, stroke{q, next})
		}
	}
}

// parts returns the areas on paper that plates, beads and dimensions take.
func (f *drawing) parts(s sketch.Sketch) []page.Rect {
	var out []page.Rect
	add := func(g []sketch.Point, margin float64) {
		r := page.Rect{X: math.Inf(1), Y: math.Inf(1)}
		right, bottom := math.Inf(-1), math.Inf(-1)
		for _, q := range f.outline(g) {
			r.X, r.Y = min(r.X, q.X-margin), min(r.Y, q.Y-margin)
			right, bottom = max(right, q.X+margin), max(bottom, q.Y+margin)
		}
		r.W, r.H = right-r.X, bottom-r.Y
		out = append(out, r)
	}
	for _, p := range s.Plates {
		add(p.Outline, 1)
	}
	for _, b := range s.Beads {
		add(b.Outline, 1)
	}
	for _, d := range s.Dims {
		off := sketch.Point{X: d.Away.X, Y: d.Away.Y}.Times(9 / f.scale)
		if d.Name == "z" || d.Inside {
			off = sketch.Point{X: d.Away.X, Y: d.Away.Y}.Times(28 / f.scale)
		}
		add([]sketch.Point{d.From, d.To, d.From.Add(off), d.To.Add(off)}, 3)
	}
	for _, c := range s.Corners {
		if c.At.Y < 0 {
			add([]sketch.Point{{X: 0, Y: 0}}, 18)
		}
	}
	return out
}

// ragged returns a line with two kinks in the middle, the sign of a break.
func ragged(a, b page.Point) []page.Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	l := math.Hypot(dx, dy)
	if l < 3 {
		return []page.Point{a, b}
	}
	ux, uy := dx/l, dy/l
	mid := page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	k := min(1.2, l/6)
	along := func(t, side float64) page.Point {
		return page.Point{X: mid.X + ux*t - uy*side, Y: mid.Y + uy*t + ux*side}
	}
	return []page.Point{a, along(-k, 0), along(-k/3, k), along(k/3, -k), along(k, 0), b}
}

func (f *drawing) beads(s sketch.Sketch) {
	for _, b := range s.Beads {
		pts := f.outline(b.Outline)
		f.p.Draw(f.box, page.Shape{
			Name: "pass " + strconv.Itoa(b.Number), Points: pts, Closed: true, Line: 0.35, Fill: beadGrey,
		})
		for i, q := range pts {
			f.edges = append(f.edges, stroke{q, pts[(i+1)%len(pts)]})
		}
	}
}
