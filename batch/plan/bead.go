package plan

import "math"

// beadsOf returns the current that beads of a way call for, from the smallest to
// the largest; empty where the table has no limit.
func (c *catalog) beadsOf(n *way) []point {
	var out []point
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
		out = append(out, point{r.Leg, r.Current})
	}
	return out
}

// bears returns the largest current in A that a bead of the group's size is laid
// with. A root, or a butt in one pass, takes what melting through needs.
func (g *group) bears() float64 {
	if g.kind != Fill || len(g.way.beads) == 0 {
		return math.Inf(1)
	}
	return g.way.bears(g.area)
}

// bears returns the current in A that a bead of an area in mm² calls for; below
// the first point in proportion to the area, which leaves the travel as it is.
func (n *way) bears(area float64) float64 {
	leg := math.Sqrt(2 * area)
	if first := n.beads[0]; leg < first.t {
		return first.i * leg * leg / (first.t * first.t)
	}
	return along(n.beads, leg)
}

// most returns the current in A that the largest bead of the position bears.
func (n *way) most() float64 {
	if len(n.beads) == 0 {
		return math.Inf(1)
	}
	return n.beads[len(n.beads)-1].i
}

// along returns the value at x on straight lines between points, the nearest
// point's beyond them.
func along(points []point, x float64) float64 {
	if x <= points[0].t {
		return points[0].i
	}
	for k := 1; k < len(points); k++ {
		if p, q := points[k-1], points[k]; x <= q.t {
			return p.i + (q.i-p.i)*(x-p.t)/(q.t-p.t)
		}
	}
	return points[len(points)-1].i
}
