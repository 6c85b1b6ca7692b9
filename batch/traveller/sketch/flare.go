package sketch

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// flare draws the rounded corner of a part against a flat one or another round one.
func (s *Sketch) flare(p *plan.Plan) weld {
	r := float64(p.Prep.Radius)
	if r <= 0 {
		r = 2 * float64(p.Prep.T1)
	}
	if r <= 0 || p.Area <= 0 {
		return weld{}
	}
	both := p.Prep.Kind == joint.FlareV
	depth := fillDepth(float64(p.Area), r, both)
	reach := max(r*0.6, 3)
	s.round("t1", -1, r, reach)
	if both {
		s.round("t2", 1, r, reach)
	} else {
		_, t2 := bothThick(p, r*0.6)
		s.plate("t2", []int{0, 2}, Point{0, -r - reach}, Point{t2, -r - reach}, Point{t2, reach * 0.5}, Point{0, reach * 0.5})
		s.dim("t2", float64(p.Prep.T2), Point{0, reach * 0.5}, Point{t2, reach * 0.5}, Point{0, 1})
	}
	s.dim("r", r, Point{-r, -r}, Point{-r, 0}, Point{-1, 0})
	region := valley(r, depth, both)
	if over := float64(p.Area) - region.Area(); depth >= r*0.999 && over > 0 {
		region = crown(region, r, both, over)
	}
	return weld{region: region, up: Point{0, 1}, along: Point{1, 0}}
}

// round draws the rounded part; side is -1 for left, 1 for right. The round
// touches the middle line at y = -r and is level with it at y = 0.
func (s *Sketch) round(name string, side, r, reach float64) {
	var outline []Point
	const n = 18
	outline = append(outline, Point{0, -r - reach})
	for i := range n + 1 {
		t := math.Pi / 2 * float64(i) / n
		outline = append(outline, Point{side * (r - r*math.Cos(t)), -r + r*math.Sin(t)})
	}
	far := side * (r + reach)
	outline = append(outline, Point{far, 0}, Point{far, -r - reach})
	last := len(outline) - 1
	s.plate(name, []int{last - 1, last}, outline...)
}

// valley returns the space between the round and the middle line (or the other
// round) from the level where the weld begins up to y = 0.
func valley(r, depth float64, both bool) Polygon {
	var left []Point
	const n = 24
	from := math.Asin(max(0, min(1, 1-depth/r)))
	for i := range n + 1 {
		t := from + (math.Pi/2-from)*float64(i)/n
		left = append(left, Point{-(r - r*math.Cos(t)), -r + r*math.Sin(t)})
	}
	g := Polygon(left)
	if !both {
		return append(g, Point{0, 0}, Point{0, left[0].Y})
	}
	for i := len(left) - 1; i >= 0; i-- {
		g = append(g, Point{-left[i].X, left[i].Y})
	}
	return g
}

// crown puts what is more than the whole valley on top of it as a cap that
// stands 1 mm over the mouth, up to a flat part on the other side.
func crown(g Polygon, r float64, both bool, over float64) Polygon {
	a, b := Point{-r - 1, 0}, Point{}
	if both {
		b = Point{r + 1, 0}
	}
	cap := append(append([]Point{a}, bow(a, b, over)...), b)
	// The valley runs along its left side up to the mouth, then back down: the
	// cap goes between.
	for i, q := range g {
		if q.Y > -1e-9 {
			return append(append(append(Polygon{}, g[:i+1]...), cap...), g[i+1:]...)
		}
	}
	return g
}

// fillDepth returns the depth from the surface at which the weld must begin to
// have the area, or the whole radius.
func fillDepth(area, r float64, both bool) float64 {
	low, high := 0.0, r
	for range 50 {
		mid := (low + high) / 2
		if valley(r, mid, both).Area() < area {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// plug draws a hole in the upper plate, filled. The plan's area is that of the
// section; the width follows from it and the plate.
func (s *Sketch) plug(p *plan.Plan) weld {
	t1 := float64(p.Prep.T1)
	if t1 <= 0 || p.Area <= 0 {
		return weld{}
	}
	depth := t1
	if d := float64(p.Prep.Depth); d > 0 && d < t1 {
		depth = d
	}
	w := float64(p.Area) / depth / 2
	_, t2 := bothThick(p, t1)
	half := w + max(t1*1.2, 4)
	s.plate("t2", []int{1, 3}, Point{-half, -t1 - t2}, Point{half, -t1 - t2}, Point{half, -t1}, Point{-half, -t1})
	s.plate("t1", []int{3}, Point{-half, -t1}, Point{-w, -t1}, Point{-w, 0}, Point{-half, 0})
	s.plate("t1", []int{1}, Point{w, -t1}, Point{half, -t1}, Point{half, 0}, Point{w, 0})
	s.dim("t1", t1, Point{-half, -t1}, Point{-half, 0}, Point{-1, 0})
	s.dim("t2", float64(p.Prep.T2), Point{half, -t1 - t2}, Point{half, -t1}, Point{1, 0})
	return weld{region: Polygon{{-w, -t1}, {w, -t1}, {w, -t1 + depth}, {-w, -t1 + depth}}, up: Point{0, 1}, along: Point{1, 0}}
}
