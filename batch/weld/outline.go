package weld

import "math"

// arcSteps is how many straight pieces an arc is drawn with.
const arcSteps = 24

// points returns the flank from the root face up to the surface as offsets from
// the square cut: X outwards, Y up.
func (f flank) points() []Point {
	out := []Point{{0, 0}}
	if f.depth <= 0 {
		return out
	}
	if f.arc > 0 {
		for i := 1; i <= arcSteps; i++ {
			phi := f.arc * float64(i) / arcSteps
			out = append(out, Point{f.radius * math.Sin(phi), f.radius * (1 - math.Cos(phi))})
		}
	}
	return append(out, Point{f.top(), f.depth})
}

// Outline returns the corners of the filled groove: X from the middle of the gap,
// Y up from the back surface.
func (g Groove) Outline() []Point {
	if g.check() != nil {
		return nil
	}
	t, half := float64(g.Thickness), float64(g.Gap)/2
	bottom := t - g.filled()
	if g.Back.Depth > 0 || g.BackWelded {
		bottom = 0
	}
	var right, left []Point // both from the bottom up
	side := func(bevelB bool) []Point {
		front, back := flankOf(g.Front.Depth, g.Front.BevelA, g.Front.RadiusA), flankOf(g.Back.Depth, g.Back.BevelA, g.Back.RadiusA)
		if bevelB {
			front, back = flankOf(g.Front.Depth, g.Front.BevelB, g.Front.RadiusB), flankOf(g.Back.Depth, g.Back.BevelB, g.Back.RadiusB)
		}
		var out []Point
		if g.Back.Depth > 0 {
			down := back.points()
			for i := len(down) - 1; i >= 0; i-- {
				out = append(out, Point{half + down[i].X, float64(g.Back.Depth) - down[i].Y})
			}
		} else {
			out = append(out, Point{half, bottom})
		}
		for _, p := range front.points() {
			out = append(out, Point{half + p.X, t - float64(g.Front.Depth) + p.Y})
		}
		return out
	}
	right, left = side(false), side(true)
	right, left = g.parted(right), g.parted(left)
	out := right
	for i := len(left) - 1; i >= 0; i-- {
		out = append(out, Point{-left[i].X, left[i].Y})
	}
	return out
}

// parted takes out the middle that a partial weld from both sides leaves: the two
// welds then hang together by a line of no width.
func (g Groove) parted(side []Point) []Point {
	left := float64(g.Thickness) - g.filled()
	if !g.twoSided() || left <= 1e-9 {
		return side
	}
	extra := (g.filled() - float64(g.Front.Depth+g.Back.Depth)) / 2
	low, half := float64(g.Back.Depth)+extra, float64(g.Gap)/2
	var out []Point
	for i, p := range side {
		if i > 0 && side[i-1].Y <= low+1e-9 && p.Y >= low+left-1e-9 && p.Y > side[i-1].Y {
			out = append(out, Point{half, low}, Point{0, low}, Point{0, low + left}, Point{half, low + left})
		}
		out = append(out, p)
	}
	return out
}
