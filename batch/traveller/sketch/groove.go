package sketch

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// shape of one face of a groove.
type face uint8

const (
	square face = iota
	bevelled
	rounded
)

// faces returns the shape of the left and the right face, and whether the groove
// is prepared from both sides.
func faces(k joint.Kind) (left, right face, double bool) {
	switch k {
	case joint.SingleV:
		return bevelled, bevelled, false
	case joint.DoubleV:
		return bevelled, bevelled, true
	case joint.SingleBevel:
		return bevelled, square, false
	case joint.DoubleBevel:
		return bevelled, square, true
	case joint.SingleU:
		return rounded, rounded, false
	case joint.DoubleU:
		return rounded, rounded, true
	case joint.SingleJ:
		return rounded, square, false
	case joint.DoubleJ:
		return rounded, square, true
	}
	return square, square, false
}

// cut is the measures of a groove, all in millimetres and radians.
type cut struct {
	t, gap, land float64 // thickness, gap, root face
	top, bottom  float64 // depth of the preparation from above and below
	slope        float64 // angle of one prepared face from the upright
	radius       float64
	left, right  face
	double       bool
}

// steepest is the largest angle of one face from the upright that is drawn.
const steepest = 80 * math.Pi / 180

func measures(p *plan.Plan) cut {
	r := p.Prep
	c := cut{gap: float64(r.Gap), land: float64(r.RootFace), radius: float64(r.Radius)}
	c.t = thinner(float64(r.T1), float64(r.T2))
	if c.t == 0 {
		c.t = max(float64(r.Depth)+float64(r.Depth2)+c.land, 3)
	}
	c.left, c.right, c.double = faces(r.Kind)
	prepared := 2.0
	if c.right == square {
		prepared = 1
	}
	if c.left != square {
		c.slope = min(radians(float64(r.Angle), 60)/prepared, steepest)
	}
	c.depths(float64(r.Depth), float64(r.Depth2))
	return c
}

func thinner(a, b float64) float64 {
	if a == 0 || b == 0 {
		return max(a, b)
	}
	return min(a, b)
}

// depths settles how deep the preparation goes; what the plan leaves open is
// shared between the sides.
func (c *cut) depths(top, bottom float64) {
	c.top, c.bottom = top, bottom
	rest := max(c.t-c.land, 0)
	switch {
	case c.double && top <= 0 && bottom <= 0:
		c.top, c.bottom = rest/2, rest/2
	case c.double && bottom <= 0:
		c.bottom = max(rest-top, 0)
	case c.double && top <= 0:
		c.top = max(rest-bottom, 0)
	case !c.double:
		c.bottom = 0
		if top <= 0 {
			c.top = rest
		}
	}
	if over := c.top + c.bottom - c.t; over > 0 {
		k := c.t / (c.top + c.bottom)
		c.top, c.bottom = c.top*k, c.bottom*k
	}
	if c.left == square {
		c.land = min(max(c.top, 0), c.t)
		if top <= 0 {
			c.land = c.t
		}
		c.top = 0
		return
	}
	c.land = min(c.land, c.t-c.top-c.bottom)
}

// profile returns one face from the bottom of the weld to the top plate surface,
// as distances from the middle line, y downward from 0 at the top.
func (c cut) profile(f face) []Point {
	x := c.gap / 2
	floor := -(c.top + c.land + c.bottom)
	if f == square {
		return []Point{{x, floor}, {x, 0}}
	}
	var out []Point
	if c.bottom > 0 {
		for i := len(c.rise(f, c.bottom)) - 1; i >= 0; i-- {
			q := c.rise(f, c.bottom)[i]
			out = append(out, Point{x + q.X, floor + c.bottom - q.Y})
		}
	} else if c.land > 0 {
		out = append(out, Point{x, floor})
	}
	for _, q := range c.rise(f, c.top) {
		out = append(out, Point{x + q.X, -c.top + q.Y})
	}
	return out
}

// rise returns a prepared face from its root: sideways and height.
func (c cut) rise(f face, depth float64) []Point {
	tan := math.Tan(c.slope)
	if f != rounded || c.radius <= 0 {
		return []Point{{0, 0}, {depth * tan, depth}}
	}
	r := min(c.radius, depth/(1-math.Sin(c.slope)+1e-9))
	var out []Point
	const n = 8
	for i := range n + 1 {
		t := (math.Pi/2 - c.slope) * float64(i) / n
		out = append(out, Point{r * math.Sin(t), r * (1 - math.Cos(t))})
	}
	last := out[n]
	return append(out, Point{last.X + (depth-last.Y)*tan, depth})
}

// groove draws a butt joint, prepared or square.
func (s *Sketch) groove(p *plan.Plan) weld {
	c := measures(p)
	left, right := c.profile(c.left), c.profile(c.right)
	mouth := left[len(left)-1].X + right[len(right)-1].X
	reach := max(c.t*0.55, mouth*0.35, 3)
	tops := c.tops(p)
	outerLeft, outerRight := c.raised(c.left, left, tops[0]), c.raised(c.right, right, tops[1])
	half := max(outerLeft[len(outerLeft)-1].X, outerRight[len(outerRight)-1].X, left[0].X, right[0].X) + reach
	s.buttPlates(c, p, outerLeft, outerRight, half)
	s.grooveDims(c, p, left, right, half)
	w := weld{region: c.region(left, right, p), up: Point{0, 1}, along: Point{1, 0}, twoWay: true}
	if region, gouged, ok := c.gouge(left, right, p); ok {
		w.region, w.gouged = region, gouged
	}
	return w
}

func (s *Sketch) grooveDims(c cut, p *plan.Plan, left, right []Point, half float64) {
	t1, t2 := float64(p.Prep.T1), float64(p.Prep.T2)
	tops := c.tops(p)
	s.dim("t1", t1, Point{-half, tops[0] - t1}, Point{-half, tops[0]}, Point{-1, 0})
	if t1 == 0 || t2 != t1 {
		s.dim("t2", t2, Point{half, tops[1] - t2}, Point{half, tops[1]}, Point{1, 0})
	}
	floor := -(c.top + c.land + c.bottom)
	s.dim("g", c.gap, Point{-c.gap / 2, -c.t}, Point{c.gap / 2, -c.t}, Point{0, -1})
	if c.left == square {
		if c.land < c.t {
			s.dim("s", c.land, Point{half * 0.7, -c.land}, Point{half * 0.7, 0}, Point{1, 0})
		}
		return
	}
	if u := p.Prep.Gouge; u.Depth > 0 { // the root face is gone where it would be measured
		rim := floor + c.bottom
		s.dim("u", float64(u.Depth), Point{float64(u.Width) / 2, rim}, Point{float64(u.Width) / 2, rim + float64(u.Depth)}, Point{1, 0})
		if c.double {
			s.dim("h", c.top, Point{half, -c.top}, Point{half, 0}, Point{1, 0})
			s.dim("h", c.bottom, Point{half, floor}, Point{half, floor + c.bottom}, Point{1, 0})
		}
		s.grooveAngle(c)
		return
	}
	s.dim("c", c.land, Point{c.gap / 2, floor + c.bottom}, Point{c.gap / 2, -c.top}, Point{1, 0})
	if c.top+c.land+c.bottom < c.t-1e-6 || c.double {
		s.dim("h", c.top, Point{half, -c.top}, Point{half, 0}, Point{1, 0})
	}
	if c.double {
		s.dim("h", c.bottom, Point{half, floor}, Point{half, floor + c.bottom}, Point{1, 0})
	}
	s.grooveAngle(c)
}

// grooveAngle marks the included angle where the prepared faces would meet.
func (s *Sketch) grooveAngle(c cut) {
	to := math.Pi/2 + c.slope
	from := math.Pi / 2
	at := Point{-c.gap / 2, -c.top}
	if c.right != square {
		from -= c.slope
		at = Point{0, -c.top - c.gap/2/math.Tan(c.slope)}
	}
	s.Corners = append(s.Corners, Corner{At: at, From: from, To: to, Degrees: (to - from) * 180 / math.Pi})
}

// region returns the weld metal of the groove. What the plan's area has beyond
// the groove itself is shared between the cap and the root bead in the
// proportion of their usual sizes: 1.5 mm over mouth + 2 mm, 1 mm over gap + 2 mm.
func (c cut) region(left, right []Point, p *plan.Plan) Polygon {
	var g Polygon
	for _, q := range right {
		g = append(g, q)
	}
	groove := append(Polygon{}, g...)
	for i := len(left) - 1; i >= 0; i-- {
		groove = append(groove, Point{-left[i].X, left[i].Y})
	}
	over := 0.0
	if p.Area > 0 {
		over = float64(p.Area) - groove.Area()
	}
	topW := left[len(left)-1].X + right[len(right)-1].X + 2
	bottomW := left[0].X + right[0].X + 2
	top, bottom := over, 0.0
	if c.rootOpen(p) {
		root := bottomW
		if c.double {
			root *= 1.5
		}
		bottom = over * root / (root + 1.5*topW)
		top = over - bottom
	}
	a, b := Point{right[len(right)-1].X + 1, 0}, Point{-left[len(left)-1].X - 1, 0}
	g = append(g, a)
	g = append(g, reverse(bow(b, a, top))...)
	g = append(g, b)
	for i := len(left) - 1; i >= 0; i-- {
		g = append(g, Point{-left[i].X, left[i].Y})
	}
	if bottom != 0 {
		y := left[0].Y
		a, b = Point{-left[0].X - 1, y}, Point{right[0].X + 1, y}
		g = append(append(append(g, a), reverse(bow(b, a, bottom))...), b)
	}
	return g
}

// rootOpen tells whether weld metal can stand out on the far side.
func (c cut) rootOpen(p *plan.Plan) bool {
	if backed(p) && !p.Prep.FormsRoot() {
		return false
	}
	return c.double || !c.partial(p) && c.top+c.land+c.bottom >= c.t-1e-6
}

// partial tells whether the weld is to reach less deep than the part is thick: what is
// left below stays closed, with no root to stand out.
func (c cut) partial(p *plan.Plan) bool {
	size := p.Joint.Size
	return size.Means == joint.Penetration && size.A > 0 && float64(size.A) < c.t-1e-6
}

func reverse(ps []Point) []Point {
	out := make([]Point, 0, len(ps))
	for i := len(ps) - 1; i >= 0; i-- {
		out = append(out, ps[i])
	}
	return out
}
