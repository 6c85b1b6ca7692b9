package plan

import (
	"math"

	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// beadKey is what the table of beads is asked by.
type beadKey struct {
	metal string
	pos   int
	dia   float64
}

// beadsOf returns the current that beads of a way call for, from the smallest to
// the largest; empty where the table has no limit.
func (c *catalog) beadsOf(n *way) []bead {
	key := beadKey{n.wire.Metal, n.pos, n.dia}
	if known, ok := c.beads[key]; ok {
		return known
	}
	var out []bead
	metal := ""
	for i := range c.set.Beads {
		r := &c.set.Beads[i]
		if !fits(r.Metal, n.wire.Metal) || !hasWord(r.Positions, positions[n.pos]) || n.dia > r.DiaTo {
			continue
		}
		if len(out) > 0 && r.Metal != metal {
			break // rows of the metal itself stand before those for every metal
		}
		metal = r.Metal
		out = append(out, bead{leg: r.Leg, current: r.Current})
	}
	c.beads[key] = eased(out)
	return c.beads[key]
}

// bears returns the largest current in A that a bead of the group's size is laid
// with. A root, or a butt in one pass, takes what melting through needs. The passes
// over a root are as many as the groove takes and so as large as it happens: its walls
// carry the pool, and all are laid with what the largest of the way bears, smaller ones
// faster; so is a back run that others follow. The fill passes of a thicker plate then never
// ask for less. On an open corner, which has no walls, the bead's own area counts.
func (g *group) bears() float64 {
	switch {
	case len(g.way.beads) == 0 || g.kind != Fill && g.full == 0:
		return math.Inf(1)
	case g.full > 0:
		return g.way.bears(g.full)
	}
	return g.way.bears(g.area)
}

// beadPower is the least that the current of a bead grows with its area, as a
// power of it. In proportion to the area a wire, which melts the faster the more it
// is heated on its way, would lay a larger bead at a faster travel than a smaller
// one; with this power it does not up to a tenth of the melting from that heat.
const beadPower = 0.9

// bead is a point of the table: the leg in mm of a bead, the current in A that it
// bears, and the power of the leg by which the current falls towards the next
// smaller one.
type bead struct{ leg, current, power float64 }

// bears returns the current in A that a bead of an area in mm² calls for: between
// the points of the table as a power of its size, the same for all wires; above
// the last point that of the point.
func (n *way) bears(area float64) float64 {
	leg := math.Sqrt(2 * area)
	for k := range n.beads {
		if b := &n.beads[k]; leg <= b.leg {
			return b.current * math.Pow(leg/b.leg, b.power)
		}
	}
	return n.beads[len(n.beads)-1].current
}

// fullBead returns the area in mm², as made, of the largest pass over a root: that of a
// fillet which is drawn as large as the table of passes says, with the shop's allowances,
// which is how the table of beads counts a bead.
func (c *catalog) fullBead(n *way) float64 {
	leg := units.MM(math.Sqrt(2 * n.pass.Fill))
	made, err := weld.Fillet{LegA: leg, LegB: leg, Angle: 90}.Made(weld.Allowances{Overweld: c.shop.Overweld, Convexity: c.shop.Convexity})
	if err != nil {
		return 0 // no size that a bead can have: its own area counts
	}
	return float64(made)
}

// eased raises the points of small beads so that the current falls no faster than
// the power allows, and works the powers out.
func eased(beads []bead) []bead {
	for k := len(beads) - 1; k > 0; k-- {
		b, below := &beads[k], &beads[k-1]
		below.current = max(below.current, b.current*math.Pow(below.leg/b.leg, 2*beadPower))
		b.power = math.Log(b.current/below.current) / math.Log(b.leg/below.leg)
	}
	if len(beads) > 0 {
		beads[0].power = 2 * beadPower
	}
	return beads
}

// most returns the current in A that the largest bead of the position bears.
func (n *way) most() float64 {
	if len(n.beads) == 0 {
		return math.Inf(1)
	}
	return n.beads[len(n.beads)-1].current
}
