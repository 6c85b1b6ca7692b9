package plan

import "seamtally/tables"

// point is one anchor of a target current.
type point struct{ t, i float64 }

// targetKey names the wires that share target currents.
type targetKey struct {
	metal, construction string
	dia                 float64
}

// targets are the target currents of a wire over thickness, thin to thick, for
// each joint family, with the last row behind each.
type targets struct {
	points [2][]point
	rows   [2]*tables.Anchor
}

// targetsOf returns the target currents of a way's wire.
func (c *catalog) targetsOf(n *way) *targets {
	key := targetKey{n.wire.Metal, n.wire.Construction, n.dia}
	if known := c.targets[key]; known != nil {
		return known
	}
	out := &targets{}
	for i := range c.set.Anchors {
		r := &c.set.Anchors[i]
		if r.Metal != key.metal || r.Construction != key.construction || !within(r.DiaFrom, n.dia, r.DiaTo) {
			continue
		}
		family := butt
		if r.Family == "fillet" {
			family = fillet
		}
		out.points[family], out.rows[family] = append(out.points[family], point{r.Thickness, r.Current}), r
	}
	c.targets[key] = out
	return out
}

// target returns the current in A that metal, joint family and thickness call
// for: straight lines between the anchors, the last one beyond them, and in
// proportion to the thickness below the first.
func target(anchors []point, t float64) float64 {
	first := anchors[0]
	if t <= first.t {
		return first.i * t / first.t
	}
	for k := 1; k < len(anchors); k++ {
		if p, q := anchors[k-1], anchors[k]; t <= q.t {
			return p.i + (q.i-p.i)*(t-p.t)/(q.t-p.t)
		}
	}
	return anchors[len(anchors)-1].i
}

// sinkThickness returns the thickness in mm that sets the current where two parts
// meet: the mean of both, but no more than the sink factor times the thinner one,
// which must not burn through.
func sinkThickness(t1, t2, factor float64) float64 {
	thin := min(t1, t2)
	return min((t1+t2)/2, factor*thin)
}
