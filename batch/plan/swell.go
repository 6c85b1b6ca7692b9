package plan

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// A bead can be laid no smaller than the lowest current of a wire gives at the fastest
// travel of a hand. A way that is asked for a smaller one lays the smallest it can, as long
// as that is not much more metal than called for. One that is only a little more counts as
// called; the others are taken where no way lays the bead as called.

// swollen is a demerit beyond those of wire and mode, which it takes the place of: they
// ask for the mode that suits the thickness, and for a wire that is not too weak for it,
// while a bead laid larger than called runs at its wire's lowest current whatever the
// plate. Of such beads the cheapest is laid, needless metal being paid for.
const swollen = 50

// swell makes the only bead of a joint as large as the way must lay it, where that is
// what stands in the way. A procedure says itself what may be laid.
func (c *catalog) swell(o *outcome, t *task) {
	if o.stands&(tooFast|beadSmall) == 0 || o.count != 1 || o.groups[0].n != 1 || t.holeDepth > 0 || t.proc != nil {
		return
	}
	g := o.groups[0]
	least := g.way.smallestBead(t.density)
	if t.leg > 0 {
		least = max(least, g.way.smallestBearing())
	}
	growth := least / g.area
	if growth > c.rules.beadGrowth {
		return
	}
	called, kind := g.area, g.kind
	g.area, g.technique = least, ""
	if t.leg > 0 {
		g.kind = Fill // its size limits its current
	}
	stands := g.lay(g.wanted, t.density)
	if stands != 0 {
		return
	}
	g.kind = kind
	o.groups[0], o.called = g, called
	o.stands &^= tooFast | tooSlow | beadSmall
	if growth > c.rules.asCalled {
		o.demerit = swollen + t.rank(c, o.way) + o.demerit/lastResort*lastResort
	}
}

// melt makes the beads of a square butt that is welded through as large as the current that
// its thickness calls for lays them at the fastest travel of a hand: welders do not run
// colder for a small gap, as printed conditions show, but pile up more metal. Larger than
// the rule's share it does not grow; what then stays too cold is told.
func (c *catalog) melt(o *outcome, t *task) {
	if t.prep.Kind != joint.SquareButt || t.openRoot || t.prep.Throat < t.thinner() || t.proc != nil || o.stands != 0 || o.called > 0 {
		return
	}
	growth := c.rules.buttGrowth
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		if g.n != 1 || g.kind == Fill || !g.hurried() || i > 0 && g.side == o.groups[i-1].side {
			return // several passes on a side are laid as the groove is
		}
		growth = min(growth, g.way.hurriedBead(g.wanted*c.upward(t), t.density)/g.area)
	}
	if growth <= 1+1e-9 {
		return
	}
	was := *o
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		g.area, g.technique = g.area*growth, ""
		if g.lay(g.wanted, t.density) != 0 {
			*o = was
			return
		}
	}
	o.called, o.melted = was.groups[0].area, true
}

// hurriedBead returns the area in mm² that a current, as far as the start settings reach,
// lays at the way's fastest travel (ARC-2).
func (n *way) hurriedBead(current, density float64) float64 {
	fastest := 0.0
	for _, r := range n.travel {
		fastest = max(fastest, r.High)
	}
	return n.deposit(n.feed(n.clamp(current))) / 60 / (density * 1e-9 * fastest)
}

// smallestBead returns the area in mm² that a way's lowest current lays at its fastest
// travel (ARC-2).
func (n *way) smallestBead(density float64) float64 {
	return n.hurriedBead(n.start, density) * (1 + 1e-9)
}

// smallestBearing returns the area in mm² of the fillet bead that bears the way's lowest
// current; none where the table has no limit or all are smaller.
func (n *way) smallestBearing() float64 {
	for k := range n.beads {
		if b := &n.beads[k]; n.start <= b.current {
			leg := b.leg * math.Pow(n.start/b.current, 1/b.power)
			return leg * leg / 2 * (1 + 1e-9)
		}
	}
	return 0
}

// growth is how many times as large as called the joint's metal is laid.
func (o *outcome) growth() float64 {
	if o.called <= 0 {
		return 1
	}
	return o.groups[0].area / o.called
}

// grown takes the larger bead into the plan: its area, and what it draws together.
func (o *outcome) grown(p *Plan, t *task) {
	if o.called <= 0 {
		return
	}
	p.AreaCalled = p.Area
	laid := 0.0
	for i := range o.groups[:o.count] {
		laid += float64(o.groups[i].n) * o.groups[i].area
	}
	p.Area = units.MM2(math.Max(laid, float64(p.Area)))
	p.Shrink = shrinkRange(t, p.Area)
}
