// Package sketch works out the cross-section of a joint in true millimetres:
// plates, weld, and the area that each pass fills. It knows shapes only; paper,
// scale and type are the caller's. The x axis points right, the y axis up.
package sketch

import "math"

// Point is a place in the cross-section, millimetres.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns p scaled.
func (p Point) Times(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Len returns the distance from the origin.
func (p Point) Len() float64 { return math.Hypot(p.X, p.Y) }

// Unit returns the direction of p; the x axis for the zero point.
func (p Point) Unit() Point {
	if l := p.Len(); l > 0 {
		return p.Times(1 / l)
	}
	return Point{1, 0}
}

// Polygon is a closed outline. It may touch itself.
type Polygon []Point

// Area returns the enclosed area in mm², whatever the direction of the outline.
func (g Polygon) Area() float64 { return math.Abs(g.twice()) / 2 }

func (g Polygon) twice() float64 {
	sum := 0.0
	for i, p := range g {
		q := g[(i+1)%len(g)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum
}

// Centre returns the centroid.
func (g Polygon) Centre() Point {
	var c Point
	twice := g.twice()
	for i, p := range g {
		q := g[(i+1)%len(g)]
		c = c.Add(p.Add(q).Times(p.X*q.Y - q.X*p.Y))
	}
	if math.Abs(twice) < 1e-9 {
		return g.middle()
	}
	return c.Times(1 / (3 * twice))
}

func (g Polygon) middle() Point {
	var c Point
	for _, p := range g {
		c = c.Add(p.Times(1 / float64(len(g))))
	}
	return c
}

// below returns the part of the polygon on the near side of the line dir·p = at.
func (g Polygon) below(dir Point, at float64) Polygon {
	var out Polygon
	for i, p := range g {
		q := g[(i+1)%len(g)]
		dp, dq := p.Dot(dir)-at, q.Dot(dir)-at
		if dp <= 0 {
			out = append(out, p)
		}
		if dp < 0 && dq > 0 || dp > 0 && dq < 0 {
			out = append(out, p.Add(q.Sub(p).Times(dp/(dp-dq))))
		}
	}
	return out
}

// span returns the smallest and largest dir·p.
func (g Polygon) span(dir Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range g {
		d := p.Dot(dir)
		low, high = min(low, d), max(high, d)
	}
	return low, high
}

// split cuts the polygon across dir so that the near part has the given area.
func (g Polygon) split(dir Point, area float64) (near, far Polygon) {
	low, high := g.span(dir)
	for range 60 {
		mid := (low + high) / 2
		if g.below(dir, mid).Area() < area {
			low = mid
		} else {
			high = mid
		}
	}
	return g.below(dir, high), g.below(dir.Times(-1), -high)
}

// shares cuts the polygon across dir into parts whose areas are in the
// proportions given.
func (g Polygon) shares(dir Point, parts []float64) []Polygon {
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	if sum <= 0 {
		return nil
	}
	total, rest := g.Area(), g
	out := make([]Polygon, len(parts))
	for i, p := range parts[:len(parts)-1] {
		out[i], rest = rest.split(dir, total*p/sum)
	}
	out[len(parts)-1] = rest
	return out
}

// moved returns the polygon turned by half a circle about c.
func (g Polygon) turned(c Point) Polygon {
	out := make(Polygon, len(g))
	for i, p := range g {
		out[i] = c.Times(2).Sub(p)
	}
	return out
}

// bow returns the points between a and b of a parabola that bulges to the left
// of the way from a to b and encloses the given area with the straight line.
// The area is that of the drawn polygon, not of the ideal curve.
func bow(a, b Point, area float64) []Point {
	const n = 16
	way := b.Sub(a)
	if way.Len() == 0 {
		return nil
	}
	out := Point{-way.Y, way.X}.Unit()
	height := area / (way.Len() * 2 / 3 * (1 - 1.0/(n*n)))
	var points []Point
	for i := 1; i < n; i++ {
		t := float64(i) / n
		points = append(points, a.Add(way.Times(t)).Add(out.Times(4*height*t*(1-t))))
	}
	return points
}
