package sketch

import (
	"math"

	"seamtally/batch/plan"
)

// gouge returns what each side fills where the root is gouged out from the back:
// side 1 its part of the groove as it was before, side 2 the groove at the back with
// the gouge at its root. Metal of side 1 that is gouged away is in both, because it is
// laid once and laid again. It is false where nothing is gouged or a side has no pass.
func (c cut) gouge(left, right []Point, p *plan.Plan) (front, back Polygon, ok bool) {
	var areas [2]float64
	for _, r := range p.Runs {
		areas[boolInt(r.Side == 2)] += float64(r.Area)
	}
	if p.Prep.Gouge.Depth <= 0 || areas[0] <= 0 || areas[1] <= 0 {
		return nil, nil, false
	}
	floor := -(c.top + c.land + c.bottom)
	rim := floor + c.bottom // the root face ends here, seen from the back
	front = closed(upTo(left, rim), upTo(right, rim), areas[0])
	back = c.backOf(left, right, rim, float64(p.Prep.Gouge.Depth), float64(p.Prep.Gouge.Width), areas[1])
	return front, back, len(front) > 2 && len(back) > 2
}

func boolInt(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// upTo returns the part of a face from a height to the top surface.
func upTo(face []Point, from float64) []Point {
	var out []Point
	for _, q := range face {
		if q.Y >= from-1e-9 {
			out = append(out, q)
		}
	}
	return out
}

// closed is the area between two faces, bowed out at the top to an area given.
func closed(left, right []Point, area float64) Polygon {
	if len(left) == 0 || len(right) == 0 {
		return nil
	}
	var g Polygon
	g = append(g, right...)
	a, b := right[len(right)-1].Add(Point{1, 0}), Point{-left[len(left)-1].X - 1, left[len(left)-1].Y}
	inner := append(Polygon{}, right...)
	for i := len(left) - 1; i >= 0; i-- {
		inner = append(inner, Point{-left[i].X, left[i].Y})
	}
	g = append(g, a)
	g = append(g, reverse(bow(b, a, area-inner.Area()))...)
	g = append(g, b)
	for i := len(left) - 1; i >= 0; i-- {
		g = append(g, Point{-left[i].X, left[i].Y})
	}
	return g
}

// backOf is the groove at the back up to its rim, with a rounded gouge of a width at
// its root that reaches a depth above the rim, bowed out at the surface to an area
// given. The gouge begins where the groove is as wide as it, or at the surface.
func (c cut) backOf(left, right []Point, rim, depth, width, area float64) Polygon {
	floor := left[0].Y
	from, l, r := floor, left[0].X, right[0].X
	const steps = 40
	for i := range steps + 1 {
		y := rim - (rim-floor)*float64(i)/steps
		if wl, wr := widthAt(left, y), widthAt(right, y); wl+wr >= width || i == steps {
			from, l, r = y, wl, wr
			break
		}
	}
	if less := width - l - r; less > 0 { // never so wide: the gouge takes some of both parts
		l, r = l+less/2, r+less/2
	}
	inner := Polygon{{-l, from}}
	if from > floor {
		inner = append(inner, Point{-left[0].X, floor}, Point{right[0].X, floor})
	}
	inner = append(inner, Point{r, from})
	const n = 16
	for i := 1; i < n; i++ {
		t := math.Pi * float64(i) / n
		inner = append(inner, Point{(r-l)/2 + (r+l)/2*math.Cos(t), from + (rim+depth-from)*math.Sin(t)})
	}
	at := 1 // of the first point of the surface on the left
	if from > floor {
		at = 2
	}
	a, b := inner[at-1].Add(Point{-1, 0}), inner[at].Add(Point{1, 0})
	g := append(Polygon{}, inner[:at]...)
	g = append(g, a)
	g = append(g, reverse(bow(b, a, area-inner.Area()))...)
	g = append(g, b)
	return append(g, inner[at:]...)
}

// widthAt returns how far a face lies from the middle line at a height.
func widthAt(face []Point, y float64) float64 {
	for i := 1; i < len(face); i++ {
		a, b := face[i-1], face[i]
		if y >= a.Y && y <= b.Y && b.Y > a.Y {
			return a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
		}
	}
	return face[0].X
}
