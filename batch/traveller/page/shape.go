package page

import "math"

// None is the fill of a shape that is only a line.
const None = -1

// Line draws a straight line.
func (p *Page) Line(box BoxID, x1, y1, x2, y2, width, grey float64) {
	p.Shapes = append(p.Shapes, Shape{Box: box, Points: []Point{{x1, y1}, {x2, y2}}, Line: width, Grey: grey, Fill: None})
}

// Frame draws the outline of a rectangle, filled with a grey or None.
func (p *Page) Frame(box BoxID, r Rect, width, fill float64) {
	p.Shapes = append(p.Shapes, Shape{Box: box, Points: []Point{
		{r.X, r.Y}, {r.Right(), r.Y}, {r.Right(), r.Bottom()}, {r.X, r.Bottom()},
	}, Closed: true, Line: width, Fill: fill})
}

// Draw adds a shape under a box.
func (p *Page) Draw(box BoxID, s Shape) {
	s.Box = box
	p.Shapes = append(p.Shapes, s)
}

// Circle draws a circle as a fine polygon.
func (p *Page) Circle(box BoxID, c Point, r, width, fill float64) {
	p.Shapes = append(p.Shapes, Shape{Box: box, Points: Arc(c, r, 0, 2*math.Pi)[1:], Closed: true, Line: width, Fill: fill})
}

// Arc returns the points of an arc from angle a to b in radians, counted from
// the right, clockwise on the page.
func Arc(c Point, r, a, b float64) []Point {
	n := max(6, int(math.Ceil(math.Abs(b-a)/(2*math.Pi)*36)))
	out := make([]Point, 0, n+1)
	for i := range n + 1 {
		t := a + (b-a)*float64(i)/float64(n)
		out = append(out, Point{c.X + r*math.Cos(t), c.Y + r*math.Sin(t)})
	}
	return out
}

// Arrow draws a line with a filled head at its end.
func (p *Page) Arrow(box BoxID, from, to Point, width, head float64) {
	dx, dy := to.X-from.X, to.Y-from.Y
	l := math.Hypot(dx, dy)
	if l == 0 {
		return
	}
	dx, dy = dx/l, dy/l
	base := Point{to.X - dx*head, to.Y - dy*head}
	half := head * 0.3
	p.Line(box, from.X, from.Y, base.X, base.Y, width, 0)
	p.Draw(box, Shape{Points: []Point{to, {base.X - dy*half, base.Y + dx*half}, {base.X + dy*half, base.Y - dx*half}}, Closed: true, Fill: 0})
}
