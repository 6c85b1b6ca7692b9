package sketch

import (
	"cmp"
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// guess is the share of the weld's size that stands for a thickness nobody stated.
const guess = 1.2

// legs returns the legs that a gauge must find: those of the drawing, longer by the
// fit-up gap where the plan says that they grow with it.
func legs(p *plan.Plan) (a, b float64) {
	a, b = float64(p.Prep.LegA), float64(p.Prep.LegB)
	if b == 0 {
		b = a
	}
	grow := float64(Growth(p))
	return a + grow*boolTo(a > 0), b + grow*boolTo(b > 0)
}

// Growth returns by how much each leg of a plan is welded longer than drawn to
// bridge a wide fit-up gap, mm.
func Growth(p *plan.Plan) units.MM {
	for _, c := range p.Checks {
		if c.Code == "gap-wide" && p.Joint != nil {
			return p.Joint.Gap
		}
	}
	return 0
}

func boolTo(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

func radians(deg, blank float64) float64 {
	if deg <= 0 || deg >= 180 {
		deg = blank
	}
	return deg * math.Pi / 180
}

// triangle returns the weld in a corner at the origin between the x axis and the
// direction at angle theta, with a flat face: what is to be welded, not what usually
// comes out of it.
func triangle(a, b, theta float64) weld {
	toeA := Point{math.Cos(theta), math.Sin(theta)}.Times(a)
	toeB := Point{b, 0}
	face := toeA.Sub(toeB)
	return weld{region: Polygon{{0, 0}, toeB, toeA}, up: Point{face.Y, -face.X}.Unit(), along: face.Unit()}
}

// fillet draws a plate standing on another, at an angle.
func (s *Sketch) fillet(p *plan.Plan) weld {
	a, b := legs(p)
	if a <= 0 {
		return weld{}
	}
	theta := radians(float64(p.Prep.Angle), 90)
	size := max(a, b)
	t1, t2 := bothThick(p, size)
	dir := Point{math.Cos(theta), math.Sin(theta)}
	left := Point{-dir.Y, dir.X} // from the welded face into the plate
	both := p.Joint != nil && p.Joint.Sides == 2
	wide, deep := t1, cutShort(t2, size)
	if !both {
		wide = cutShort(t1, size)
	}
	// The foot of the plate lies on the x axis: its far face meets it at -foot.
	foot := wide / math.Sin(theta)
	high := (size*1.6 + 1.5) / math.Sin(theta)
	reach := size*0.8 + 2
	x0, x1 := -foot-b*boolTo(both)-reach, b+reach
	bottom := []int{1, 3}
	if deep < t2 {
		bottom = []int{0, 1, 3}
	}
	s.plate("t2", bottom, Point{x0, -deep}, Point{x1, -deep}, Point{x1, 0}, Point{x0, 0})
	gap := float64(p.Prep.Gap)
	top, farTop := dir.Times(high), dir.Times(high).Add(left.Times(wide))
	sides := []int{1}
	if wide < t1 {
		sides = []int{1, 2}
	}
	s.plate("t1", sides, Point{gap / math.Tan(theta), gap}, top, farTop, Point{-foot + gap/math.Tan(theta), gap})
	s.thickness("t1", float64(p.Prep.T1), wide, farTop, top, dir, dir.Times(high*0.7).Add(left.Times(wide/2)))
	s.thickness("t2", float64(p.Prep.T2), deep, Point{x0, -deep}, Point{x0, 0}, Point{-1, 0}, Point{x0 * 0.6, -deep * 0.55})
	s.filletDims(p, a, b, theta)
	s.gap(gap, x1)
	return triangle(a, b, theta)
}

// cutShort returns how much of a thickness is drawn: a plate much thicker than
// the weld would only make the picture small.
func cutShort(t, size float64) float64 {
	if most := size*1.7 + 2; t > most {
		return size*1.3 + 1.5
	}
	return t
}

// thickness marks a part's thickness: as a dimension where it is drawn whole, as
// a note inside where it is cut short.
func (s *Sketch) thickness(name string, t, drawn float64, from, to, away, inside Point) {
	switch {
	case t <= 0:
	case drawn < t:
		s.Notes = append(s.Notes, Note{inside, t})
	default:
		s.dim(name, t, from, to, away)
	}
}

// throatOf returns the height of the triangle of two legs over its face.
func throatOf(a, b, theta float64) float64 {
	face := math.Sqrt(max(a*a+b*b-2*a*b*math.Cos(theta), 1e-12))
	return a * b * math.Sin(theta) / face
}

// filletDims marks the legs and the throat as drawn: what the gauge must find.
//
// Through a weld of several passes the throat is drawn only where it is the size
// asked for: the line would hide the passes.
func (s *Sketch) filletDims(p *plan.Plan, a, b, theta float64) {
	throat := throatOf(a, b, theta)
	if len(p.Runs) > 1 && (p.Joint == nil || p.Joint.Size.Means != joint.Throat) {
		throat = 0
	}
	dir := Point{math.Cos(theta), math.Sin(theta)}
	normal := Point{dir.Y, -dir.X}
	skew := math.Abs(theta-math.Pi/2) > 1e-6
	if !skew || math.Abs(a-b) > 1e-6 {
		s.dim("z", a, Point{}, dir.Times(a), normal)
	}
	if skew || math.Abs(a-b) > 1e-6 {
		s.dim("z", b, Point{}, Point{b, 0}, Point{0, -1})
	}
	if throat > 0 {
		face := dir.Times(a).Sub(Point{b, 0})
		out := Point{face.Y, -face.X}.Unit()
		s.Dims = append(s.Dims, Dim{Name: "a", To: out.Times(throat), Away: out, Value: throat, Inside: true})
	}
	if skew {
		s.Corners = append(s.Corners, Corner{From: 0, To: theta, Degrees: theta * 180 / math.Pi})
	}
}

func (s *Sketch) gap(gap, x float64) {
	s.dim("g", gap, Point{x * 0.75, 0}, Point{x * 0.75, gap}, Point{1, 0})
}

func thick(t, size float64) float64 {
	if t > 0 {
		return t
	}
	return size * guess
}

// bothThick are the thicknesses both parts are drawn with: a part of which the list says
// nothing is as thick as the other, as the planner takes it.
func bothThick(p *plan.Plan, size float64) (t1, t2 float64) {
	t1, t2 = float64(p.Prep.T1), float64(p.Prep.T2)
	return thick(cmp.Or(t1, t2), size), thick(cmp.Or(t2, t1), size)
}

// lap draws a plate lying on another.
func (s *Sketch) lap(p *plan.Plan) weld {
	a, b := legs(p)
	if a <= 0 {
		return weld{}
	}
	size := max(a, b)
	t1, t2 := bothThick(p, size)
	gap := float64(p.Prep.Gap)
	reach := size*0.9 + 2
	over := max(size*2.2, t1*1.2)
	x0 := -over
	if p.Joint != nil && p.Joint.Sides == 2 {
		x0 = -over - b - reach
		s.plate("t2", []int{1}, Point{-over, -t2}, Point{b + reach, -t2}, Point{b + reach, 0}, Point{-over, 0})
	} else {
		s.plate("t2", []int{1, 3}, Point{x0, -t2}, Point{b + reach, -t2}, Point{b + reach, 0}, Point{x0, 0})
	}
	s.plate("t1", []int{3}, Point{x0, gap}, Point{0, gap}, Point{0, gap + t1}, Point{x0, gap + t1})
	if p.Prep.T1 > 0 {
		s.dim("t1", t1, Point{x0, gap}, Point{x0, gap + t1}, Point{-1, 0})
	}
	if p.Prep.T2 > 0 {
		s.dim("t2", t2, Point{b + reach, -t2}, Point{b + reach, 0}, Point{1, 0})
	}
	s.filletDims(p, a, b, math.Pi/2)
	return triangle(a, b, math.Pi/2)
}

// corner draws two plates that meet with their inner edges; the weld fills the
// open quarter outside.
func (s *Sketch) corner(p *plan.Plan) weld {
	a, b := legs(p)
	if a <= 0 {
		return weld{}
	}
	size := max(a, b)
	t1, t2 := bothThick(p, size)
	gap := float64(p.Prep.Gap)
	reach := size*1.2 + 2
	s.plate("t2", []int{3}, Point{-reach, 0}, Point{0, 0}, Point{0, t2}, Point{-reach, t2})
	s.plate("t1", []int{0}, Point{gap, -reach}, Point{gap + t1, -reach}, Point{gap + t1, 0}, Point{gap, 0})
	if p.Prep.T1 > 0 {
		s.dim("t1", t1, Point{gap, -reach}, Point{gap + t1, -reach}, Point{0, -1})
	}
	if p.Prep.T2 > 0 {
		s.dim("t2", t2, Point{-reach, 0}, Point{-reach, t2}, Point{-1, 0})
	}
	s.filletDims(p, a, b, math.Pi/2)
	return triangle(a, b, math.Pi/2)
}

// edge draws two plates face to face with a bead over their edges.
func (s *Sketch) edge(p *plan.Plan) weld {
	area := float64(p.Area)
	size := max(float64(p.Prep.LegA), float64(p.Prep.Throat), math.Sqrt(max(area, 0)))
	if size <= 0 {
		return weld{}
	}
	t1, t2 := bothThick(p, size)
	deep := max(t1+t2, size) * 1.5
	s.plate("t1", []int{0}, Point{-t1, -deep}, Point{0, -deep}, Point{0, 0}, Point{-t1, 0})
	s.plate("t2", []int{0}, Point{0, -deep}, Point{t2, -deep}, Point{t2, 0}, Point{0, 0})
	if p.Prep.T1 > 0 {
		s.dim("t1", t1, Point{-t1, -deep}, Point{0, -deep}, Point{0, -1})
	}
	if p.Prep.T2 > 0 {
		s.dim("t2", t2, Point{0, -deep}, Point{t2, -deep}, Point{0, -1})
	}
	left, right := Point{-t1, 0}, Point{t2, 0}
	region := append(Polygon{left}, bow(left, right, area)...)
	region = append(region, right)
	return weld{region: region, up: Point{0, 1}, along: Point{1, 0}}
}

// secondSeam adds the weld on the other side of a joint welded on both.
func (s *Sketch) secondSeam(p *plan.Plan) {
	if p.Joint == nil || p.Joint.Sides != 2 {
		return
	}
	var copies []Bead
	for _, b := range s.Beads {
		switch p.Prep.Kind {
		case joint.Fillet:
			copies = append(copies, Bead{b.Number, b.Layer, b.Side, s.acrossWeb(b.Outline, p), true})
		case joint.Lap:
			over := s.Plates[0].Outline[0].X
			copies = append(copies, Bead{b.Number, b.Layer, b.Side, b.Outline.turned(Point{over / 2, 0}), true})
		}
	}
	s.Beads = append(s.Beads, copies...)
}

// acrossWeb carries an outline to the far side of the standing plate. On a plate
// that leans, the corner there is the supplement; the outline is sheared so that
// its legs keep their lengths.
func (s *Sketch) acrossWeb(g Polygon, p *plan.Plan) Polygon {
	theta := radians(float64(p.Prep.Angle), 90)
	a, b := legs(p)
	t1, _ := bothThick(p, max(a, b))
	foot := t1 / math.Sin(theta)
	out := make(Polygon, len(g))
	for i, q := range g {
		up := q.Y / math.Sin(theta)
		flat := q.X - up*math.Cos(theta)
		out[i] = Point{-foot - flat + up*math.Cos(theta), q.Y}
	}
	return out
}
