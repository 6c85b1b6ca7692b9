package plan

import (
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// plugShape takes a filled hole: its plan is the section, and the depth filled is
// the seam, so that area times seam is its volume. A hole is filled to the face of
// the upper part unless the list gives a depth.
func (c *catalog) plugShape(t *task) (shape, coded) {
	upper := cmpOr(t.prep.T1, t.prep.T2)
	depth := cmpOr(t.j.Depth, upper)
	if t.j.Size.A <= 0 || depth <= 0 {
		return shape{}, coded{"size-blank", "a plug or slot needs the diameter or width of its hole under size, and the thickness of the upper part under t1"}
	}
	var section weld.Section = weld.Plug{Diameter: t.j.Size.A}
	if t.prep.Kind == joint.Slot {
		section = weld.Slot{Width: t.j.Size.A, Length: cmpOr(t.j.Length, t.j.Size.B)}
	}
	if _, err := section.Drawn(); err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	if upper > 0 && depth > upper {
		return shape{}, coded{"size-bad", "the hole is to be filled " + mm(depth) + " deep, and the part that it goes through is " + mm(upper) + " thick"}
	}
	if t.j.Depth == 0 {
		t.assume("depth", mm(depth), "blank: the hole is filled to the face of the upper part", "common-practice")
	}
	t.holeDepth = float64(depth)
	t.prep.Depth, t.prep.Throat = depth, units.MM(depth)
	return shape{section: section, family: fillet, shares: [2]float64{1, 0}, depths: [2]float64{float64(depth), 0}}, coded{}
}

// layHole fills a plug or slot on the spot, layer on layer, the slag or silica
// taken off between them. The torch goes round in the hole: there is no travel
// along a seam and no heat input per length, unless a procedure limits them.
func (c *catalog) layHole(o *outcome, t *task) {
	n := max(1, ceil(t.holeDepth/c.rules.holeLayer))
	g := group{n: n, side: 1, kind: Fill, way: o.way, area: t.sides[0].made / float64(n)}
	g.wanted, g.borne = o.wanted, math.Inf(1)
	g.current = o.way.clamp(o.wanted)
	g.feed = o.way.feed(g.current)
	g.deposit = o.way.deposit(g.feed)
	g.volts = o.way.voltage(g.current)
	g.width = o.way.pass.Width
	o.groups[0], o.count = g, 1
	if n == 1 {
		o.groups[0].kind = Single
	}
	if t.proc != nil {
		o.stands |= o.groups[0].goRound(t, c.rules.holeRoom)
	}
}

// goRound finds the travel, round in the hole, that keeps a layer inside the
// procedure's travel and heat: a bead as wide as the wire lays where that fits,
// else one as near to it as the limits leave. A bead wider than the hole would be
// none. Where the current that the parts call for finds no such travel a lower one
// may. Without a limit the torch stays on the spot and there is no travel.
func (g *group) goRound(t *task, room float64) obstacle {
	p := t.proc
	if p.TravelLow <= 0 && p.TravelHigh <= 0 && p.HeatLow <= 0 && p.HeatHigh <= 0 {
		return 0
	}
	n, layer, wanted := g.way, t.holeDepth/float64(g.n), g.current
	hand := travelOf(n)
	for step := 0; step <= holeSteps; step++ {
		g.current = wanted - (wanted-n.start)*float64(step)/holeSteps
		g.feed = n.feed(g.current)
		g.deposit = n.deposit(g.feed)
		g.volts = n.voltage(g.current)
		power := n.k * g.volts * g.current * 60 / 1000 // kJ/mm at 1 mm/min
		low := max(hand.low, travelAt(g.deposit, layer*float64(t.j.Size.A), t.density))
		high := hand.high
		if p.HeatHigh > 0 {
			low = max(low, power/float64(p.HeatHigh))
		}
		if p.HeatLow > 0 {
			high = min(high, power/float64(p.HeatLow))
		}
		if low <= high {
			usual := travelAt(g.deposit, layer*min(n.pass.Width, float64(t.j.Size.A)), t.density)
			g.travel = min(max(low*room, usual), high)
			return 0
		}
	}
	return tooSlow
}

// holeSteps is how many currents below the wanted one are tried in a hole.
const holeSteps = 10

// holeLayers are the layers of a hole: one round each.
func holeLayers(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = 1
	}
	return out
}

// hole says how a plug or slot is filled, and judges its width: the codes want
// room for the torch down to the lower part.
func (k *checker) hole(t *task) {
	k.say(k.c.book.first("hole-fill"), finding.Note, "hole of %s, filled %s deep on the spot", mmText(float64(t.j.Size.A)), mmText(t.holeDepth))
	upper := float64(cmpOr(t.prep.T1, t.prep.T2))
	if r := k.c.book.first("hole-small"); r != nil && upper > 0 && float64(t.j.Size.A) < upper+r.Value-0.3 {
		k.say(r, finding.Warning, "hole of %s in a part of %s; so that the torch reaches the bottom it should have %s or more", mmText(float64(t.j.Size.A)), mmText(upper), mmText(upper+r.Value))
	}
}
