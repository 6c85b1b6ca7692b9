package plan

import (
	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// flare judges a flare whose size the list states: the throat that the code allows is
// less than the metal is deep.
func (k *checker) flare(t *task) {
	p, size := &t.prep, float64(t.j.Size.A)
	if size <= 0 {
		return
	}
	flush := k.c.throatShare(t) * float64(p.Radius)
	left := flush - float64(p.Radius-p.Throat)
	switch {
	case t.j.Size.Means == joint.Leg && left <= slackSize:
		k.sayf("flare-low", finding.Warning, "the weld fills %s of a corner of radius %s: %s mm² where flush is %s mm², too little for a throat that counts",
			mmText(float64(p.Throat)), mmText(float64(p.Radius)), number(t.drawn, 1), number(k.c.flushArea(t), 1))
	case t.j.Size.Means != joint.Leg && size > flush+slackSize:
		k.sayf("flare-throat", finding.Warning, "throat %s in a flare of radius %s: filled flush it has %s", mmText(size), mmText(float64(p.Radius)), mmText(flush))
	}
	k.flareSmall(p)
}

// flareSmall tells of a radius too small for the throat of a flare to count. The code says
// it of the flare bevel; a groove between two such edges is no wider at its root.
func (k *checker) flareSmall(p *Prep) {
	r := k.c.book.first("flare-small")
	if r == nil || float64(p.Radius) >= r.To-slackEdge {
		return
	}
	source, basis := r.Source, r.Basis
	if p.Kind == joint.FlareV {
		source, basis = "taken over from the flare bevel, of which alone "+r.Source+" says it", "derived"
	}
	k.sayFrom(r.Code, finding.Warning, source, basis, "in a corner of radius %s, less than %s, only a fillet on top of the flush weld counts as throat", mmText(float64(p.Radius)), mmText(r.To))
}
