package plan

import (
	"fmt"

	"seamtally/batch/joint"
	"seamtally/batch/weld"
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
