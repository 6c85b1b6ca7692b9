package settle

import (
	"math"
)

// Planned returns what the plan reckoned for the copies done: minutes of arc and
// of labour, kilograms of wire.
func (j *Joint) Planned() (arc, labour, wire float64) {
	p := j.Plan
	return float64(p.Arc) * j.Done, float64(p.Cost.Labour.Total) * j.Done, float64(p.WireKg) * j.Done
}

// apart returns the labour in minutes that does not go by the arc: handling,
// fit-up, cleaning and the waits between passes, with the site factor.
func (j *Joint) apart() float64 {
	l := j.Plan.Cost.Labour
	return float64(l.Joint+l.Fitup+l.Clean+l.BetweenPass) * l.SiteFactor * j.Done
}

// atWeld returns the minutes that the record leaves for the time at the weld,
// and the arc minutes that they go with, rework and site factor counted.
//
//	labour = site (apart + arc (1/f + rework/f)), so f = site (1 + rework) arc / (labour - apart)
func (j *Joint) atWeld(rework float64) (arc, rest float64) {
	l := j.Plan.Cost.Labour
	return float64(j.Record.Arc) * l.SiteFactor * (1 + rework/100), float64(j.Record.Labour) - j.apart()
}

// melted returns the wire in kg that ran through while the arc burned.
//
//	m = w q T / 1000   (SETTLE-1)
//
// w: wire feed in m/min, the recorded one, else that of the plan; q: linear mass
// in g/m; T: recorded arc time in min. Basis: derived, definition of linear mass.
func (j *Joint) melted() float64 {
	p := j.Plan
	if j.Record.Feed > 0 {
		return float64(j.Record.Feed) * float64(p.LinearMass) * float64(j.Record.Arc) / 1000
	}
	return float64(p.Deposit) / 60 * float64(j.Record.Arc) / p.Efficiency
}

// metal returns the weld metal in kg that the arc laid.
func (j *Joint) metal() float64 { return j.melted() * j.Plan.Efficiency }

// isFillet tells whether the joint grows with the shop's overweld.
func (j *Joint) isFillet() bool {
	p := j.Plan
	return p.Prep.LegA > 0 && p.Prep.LegB > 0 && p.Area > 0 && p.WeldMetal > 0
}

// made returns the weld metal in kg of the copies done, with an overweld in mm.
//
//	m = m_plan (z1 + x)(z2 + x) / ((z1 + x0)(z2 + x0))   (SETTLE-2)
//
// x0: overweld of the plan. The cap of a fillet goes with its face, which for
// equal legs grows as the legs do; unequal ones miss by less than a hundredth.
// Basis: derived.
func (j *Joint) made(x, planned float64) float64 {
	p := j.Plan
	a, b := float64(p.Prep.LegA), float64(p.Prep.LegB)
	grown := func(x float64) float64 { return math.Max(a+x, 0) * math.Max(b+x, 0) }
	return float64(p.WeldMetal) * j.Done * grown(x) / grown(planned)
}

// share returns the share of a row's copies that a record covers, 0..1; a record
// that names no copies covers them all.
func share(done, qty int) float64 {
	if done <= 0 || qty <= 0 || done >= qty {
		return 1
	}
	return float64(done) / float64(qty)
}
