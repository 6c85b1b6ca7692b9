package plan

import "seamtally/tables"

// point is one anchor of a target current.
type point struct{ t, i float64 }

// targetKey names the wires and gases that share target currents.
type targetKey struct {
	metal, construction string
	dia                 float64
	gas                 string
}

// targets are the target currents of a wire in a gas over thickness, thin to thick,
// for each joint family.
type targets struct{ family [2]familyTargets }

// familyTargets are the points of one joint family, the row that stands behind
// those of any gas, and the row behind those of this gas, which reach to gasTo.
type familyTargets struct {
	points  []point
	any, of *tables.Anchor
	gasTo   float64
}

// row returns the row behind the target at a thickness.
func (f *familyTargets) row(t float64) *tables.Anchor {
	if f.of != nil && t <= f.gasTo {
		return f.of
	}
	return f.any
}

// targetsOf returns the target currents of a way's wire in its gas.
func (c *catalog) targetsOf(n *way) *targets {
	key := targetKey{n.wire.Metal, n.wire.Construction, n.dia, n.gas.Gas}
	if known := c.targets[key]; known != nil {
		return known
	}
	out := &targets{}
	out.family[butt], out.family[fillet] = c.familyTargets(key, "butt"), c.familyTargets(key, "fillet")
	c.targets[key] = out
	return out
}

// familyTargets collects the points of one joint family: those that name the gas,
// and beyond them those that name none.
func (c *catalog) familyTargets(key targetKey, family string) (out familyTargets) {
	var common []point
	for i := range c.set.Anchors {
		r := &c.set.Anchors[i]
		if r.Metal != key.metal || r.Construction != key.construction || r.Family != family || !within(r.DiaFrom, key.dia, r.DiaTo) {
			continue
		}
		p := point{r.Thickness, r.Current}
		switch {
		case r.In(key.gas):
			out.points, out.of, out.gasTo = append(out.points, p), r, r.Thickness
		case r.GasList == "":
			common, out.any = append(common, p), r
		}
	}
	for _, p := range common {
		if out.of == nil || p.t > out.gasTo {
			out.points = append(out.points, p)
		}
	}
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
