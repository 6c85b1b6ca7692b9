package plan

import (
	"fmt"
	"slices"

	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/section"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// otherShape covers edges, flares, plugs and slots.
func (c *catalog) otherShape(t *task) (shape, coded) {
	switch t.prep.Kind {
	case joint.Edge:
		return c.edgeShape(t)
	case joint.FlareBevel, joint.FlareV:
		return c.flareShape(t)
	case joint.Plug, joint.Slot:
		return c.plugShape(t)
	}
	return shape{}, coded{"kind-outside", fmt.Sprintf("the area of a joint of the kind %q is not known here", string(t.prep.Kind))}
}

// edgeShape is a bead over the flush edges of two parts.
func (c *catalog) edgeShape(t *task) (shape, coded) {
	p := &t.prep
	thin := t.thinner()
	if thin <= 0 {
		return shape{}, coded{"thickness-blank", "no thickness is given: the bead over two edges needs one"}
	}
	throat := t.j.Size.A
	if throat <= 0 {
		throat = thin
		t.assume("size", mm(throat), "blank: the bead over the edges is taken as high as the thinner part", "common-practice")
	}
	p.Throat = throat
	e := weld.Edge{T1: cmpOr(p.T1, p.T2), T2: cmpOr(p.T2, p.T1), Throat: throat}
	if _, err := e.Drawn(); err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	return shape{section: e, family: butt, shares: [2]float64{1, 0}, depths: [2]float64{float64(throat), 0}}, coded{}
}

// flareFill returns how deep a flare is filled: flush where nothing is said, so deep
// that the stated throat is left, or, where the size is called a leg, to that depth.
func (c *catalog) flareFill(t *task) (units.MM, error) {
	p, size := &t.prep, t.j.Size
	if size.A > 0 && size.Means == joint.Leg {
		return min(size.A, p.Radius), nil
	}
	p.ThroatShare = c.throatShare(t)
	if size.A <= 0 {
		t.assume("size", mm(p.Radius), "blank: a flare is taken as filled flush, as deep as its radius", "common-practice")
		return p.Radius, nil
	}
	return weld.FlareFill(p.Radius, size.A, p.ThroatShare)
}

// flushArea is the area in mm² of the joint's flare as drawn, were it filled flush.
func (c *catalog) flushArea(t *task) float64 {
	p := &t.prep
	area, err := weld.Flare{Radius: p.Radius, Gap: max(0, p.Gap), V: p.Kind == joint.FlareV}.Drawn()
	if err != nil {
		return 0
	}
	return float64(area)
}

// throatShare is the throat of a flare filled flush as a share of its radius: that of
// self-shielded wire is smaller.
func (c *catalog) throatShare(t *task) float64 {
	shares := c.rules.flareBevel
	if t.prep.Kind == joint.FlareV {
		shares = c.rules.flareV
	}
	if c.selfShielded(t) {
		return shares.self
	}
	return shares.gas
}

// selfShielded tells whether the joint is welded with a wire that shields itself,
// because the row asks for it or the shop has no other.
func (c *catalog) selfShielded(t *task) bool {
	w := c.readWish(t.j)
	gasless := func(i *tables.Wire) bool { return i.Gasless() }
	switch {
	case len(w.wires) > 0:
		return !slices.ContainsFunc(w.wires, func(i *tables.Wire) bool { return !gasless(i) })
	case w.gas != "" || w.processes != "":
		return w.gas == noGas || w.processes == "114"
	}
	return len(c.shop.Wires) > 0 && !slices.ContainsFunc(c.shop.Wires, func(s rates.WirePrice) bool {
		return !slices.ContainsFunc(c.set.Wires, func(i tables.Wire) bool { return i.Filler == s.Filler && gasless(&i) })
	})
}

// flareShape is the flare beside a round edge; its radius is a multiple of the
// wall where the list is silent.
func (c *catalog) flareShape(t *task) (shape, coded) {
	p := &t.prep
	if round := c.sectionOf(partText(t.j.Part1, t.j.Lent1)); t.j.Part1 != "" && round.err == nil && p.Radius <= 0 && round.Shape == section.Round {
		p.Radius = round.H / 2
		t.assume("radius", mm(p.Radius), "blank: half the diameter of "+t.j.Part1, "derived")
	}
	if p.Radius <= 0 {
		wall := cmpOr(p.T1, p.T2)
		row, ok := c.set.Prep(string(p.Kind), "", t.metal, wall)
		if wall <= 0 || !ok {
			return shape{}, coded{"thickness-blank", "no radius and no thickness is given: the flare needs one of them"}
		}
		p.Radius = units.MM(row.RadiusT) * wall
		t.assume("radius", mm(p.Radius), fmt.Sprintf("blank: outside radius of a hollow section taken as %g times its wall", row.RadiusT), row.Basis)
	}
	f := weld.Flare{Radius: p.Radius, Gap: max(0, p.Gap), V: p.Kind == joint.FlareV}
	fill, err := c.flareFill(t)
	if err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	f.Fill, p.Throat = fill, fill
	if _, err := f.Drawn(); err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	return shape{section: f, family: butt, shares: [2]float64{1, 0}, depths: [2]float64{float64(p.Throat), 0}}, coded{}
}
