package sketch

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// Undersides tells whether the parts of a groove lie level below, on a bar or strip, and
// not above: seen where one is thicker.
func Undersides(p *plan.Plan) bool {
	r := &p.Prep
	return backed(p) && r.Kind.IsButt() && r.Kind != joint.FlareBevel && r.Kind != joint.FlareV && r.T1 > 0 && r.T2 > 0 && r.T1 != r.T2
}

// backed tells whether something lies under the root that both parts lie on.
func backed(p *plan.Plan) bool { return p.Prep.Under() }

// tops are the heights of the upper surfaces of both parts above the face of the weld,
// which fills the thickness of the thinner. Parts on a bar lie level below; others above,
// where they are welded from.
func (c cut) tops(p *plan.Plan) [2]float64 {
	var out [2]float64
	if !backed(p) {
		return out
	}
	for i, t := range []float64{float64(p.Prep.T1), float64(p.Prep.T2)} {
		out[i] = max(0, t-c.t)
	}
	return out
}

// raised is a face that goes on, as it is cut, to an upper surface above the weld.
func (c cut) raised(f face, side []Point, top float64) []Point {
	if top <= 0 {
		return side
	}
	last := side[len(side)-1]
	if f != square {
		last.X += top * math.Tan(c.slope)
	}
	return append(side[:len(side):len(side)], Point{last.X, last.Y + top})
}

func (s *Sketch) buttPlates(c cut, p *plan.Plan, left, right []Point, half float64) {
	tops := c.tops(p)
	for i, side := range [][]Point{left, right} {
		t := [2]float64{float64(p.Prep.T1), float64(p.Prep.T2)}[i]
		if t == 0 {
			t = c.t
		}
		sign := float64(2*i - 1)
		outline := []Point{{half * sign, tops[i] - t}, {side[0].X * sign, tops[i] - t}}
		for _, q := range side {
			outline = append(outline, Point{q.X * sign, q.Y})
		}
		outline = append(outline, Point{half * sign, tops[i]})
		s.plate([2]string{"t1", "t2"}[i], []int{len(outline) - 1}, outline...)
	}
	if backed(p) {
		w, h := max(c.gap*1.5+c.t*0.4, 6), max(c.t*0.25, 3)
		s.plate("backing", nil, Point{-w, -c.t - h}, Point{w, -c.t - h}, Point{w, -c.t}, Point{-w, -c.t})
	}
}
