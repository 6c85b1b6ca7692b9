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

// A flare is filled so deep that the stated throat is left, and of a fill that a wire
// without gas lays less counts as throat. So the metal of a flare hangs on the wire, and
// each way of welding it is tried with its own: see filledBy.

// isFlare tells whether a kind is a groove beside a round edge.
func isFlare(k joint.Kind) bool { return k == joint.FlareBevel || k == joint.FlareV }

// flareShape is the flare beside a round edge; its radius is a multiple of the
// wall where the list is silent.
func (c *catalog) flareShape(t *task) (shape, coded) {
	p := &t.prep
	if round := c.sectionOf(t.j.Part1, t.j.Lent1, t.j.PartsInch); t.j.Part1 != "" && round.err == nil && p.Radius <= 0 && round.Shape == section.Round {
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
	if t.j.Size.A <= 0 {
		t.assume("size", mm(p.Radius), "blank: a flare is taken as filled flush, as deep as its radius", "common-practice")
	}
	t.noGas = c.selfShielded(t)
	return c.flareFilled(t)
}

// flareFilled is the shape of a flare of which the radius and the kind of wire are known.
func (c *catalog) flareFilled(t *task) (shape, coded) {
	p := &t.prep
	fill, err := c.flareFill(t)
	if err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	p.Throat = fill
	f := weld.Flare{Radius: p.Radius, Gap: max(0, p.Gap), V: p.Kind == joint.FlareV, Fill: fill}
	if _, err := f.Drawn(); err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	return shape{section: f, family: butt, shares: [2]float64{1, 0}, depths: [2]float64{float64(p.Throat), 0}}, coded{}
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
		return p.Radius, nil
	}
	return weld.FlareFill(p.Radius, size.A, p.ThroatShare)
}

// filledBy returns the task as a way of welding fills the joint: itself, or a copy in
// which a flare has the metal that the way's kind of wire asks for.
func (c *catalog) filledBy(n *way, t *task) *task {
	if t.noArea != "" || !isFlare(t.prep.Kind) || n.gas.Gasless() == t.noGas {
		return t
	}
	own := *t
	own.noGas = n.gas.Gasless()
	s, why := c.flareFilled(&own)
	c.takeShape(&own, s, why)
	return &own
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
	if t.noGas {
		return shares.self
	}
	return shares.gas
}

// selfShielded tells whether the joint is to be welded with a wire that shields itself,
// because the row asks for it or the shop has no other: what is taken where no way is
// chosen in the end.
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
