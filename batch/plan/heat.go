package plan

import (
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// ambient is the temperature of parts that nobody heats; a preheat that a warm
// shop gives by itself is none.
const ambient = 20.0 // °C

// formulaAccuracy is what the preheat formula is good for: a result that close to
// ambient is no preheat.
const formulaAccuracy = 20.0 // °C

// heat judges preheat, cooling and the root's back, and fills in what the welder
// is told of them. Preheat and cooling are for ferritic steel only.
func (k *checker) heat(t *task, p *Plan) {
	if shade, ok := k.c.set.Shade(p.Process, units.Amp(p.Current.Start)); ok {
		p.FilterShade = max(shade.Recommended, shade.Minimum)
	}
	p.CleanWidth = k.c.set.CleanWidth(conditions(t, nil)...)
	if t.metal == "stainless" && t.openRoot {
		k.sayf("backing-purge", finding.Note, "open root in stainless")
	}
	if t.metal == "carbon steel" && t.mat != nil && len(p.Runs) > 0 {
		k.preheat(t, p)
		k.cooling(t, p)
	}
	k.plausible(p)
}

// richer returns the parent metal with the higher carbon equivalent.
func (t *task) richer() *tables.Material {
	if t.mat2 != nil && t.mat2.CETTypical > t.mat.CETTypical {
		return t.mat2
	}
	return t.mat
}

// preheat works out the preheat of the thicker part for its typical analysis and
// the coolest pass; the AWS codes take it from their table instead.
func (k *checker) preheat(t *task, p *Plan) {
	m, thick := t.richer(), max(float64(t.prep.T1), float64(t.prep.T2))
	limit, hasLimit := k.c.set.HeatLimit(m.Family)
	if k.c.aws {
		row, ok := k.c.set.Preheat(m.Category, units.MM(thick))
		if ok && float64(row.Min) > 0 {
			p.Preheat = &row.Min
			level := needed(t)
			if float64(row.Min) <= ambient { // what a warm shop gives by itself
				level = finding.Note
			}
			k.sayf("preheat", level, "preheat %.0f °C: %s, %s, category %s (%s, %s)", float64(row.Min), m.Grade, mmText(thick), row.Category, row.Basis, row.Source)
		}
	} else {
		k.preheatISO(t, p, m, thick)
	}
	if hasLimit && limit.Interpass > 0 && (p.Preheat != nil || len(p.Runs) > 1) {
		p.Interpass = &limit.Interpass
	}
}

// preheatISO works out the preheat by the carbon equivalent. Below the least
// thickness of the formula hydrogen is no reason to preheat.
func (k *checker) preheatISO(t *task, p *Plan, m *tables.Material, thick float64) {
	wire, okWire := k.c.set.Wire(p.Filler, p.Dia)
	h, okH := k.c.set.HydrogenOf(wire)
	if thick < weld.PreheatThin || m.CETTypical == 0 || !okWire || !okH {
		return
	}
	q := math.Inf(1)
	for _, r := range p.Runs {
		q = min(q, float64(r.Heat))
	}
	// The formula takes 0.5 to 4 kJ/mm: a cooler pass is no better than its limit.
	q = min(max(q, weld.PreheatCool), weld.PreheatHot)
	got, err := weld.Preheat(max(m.CETTypical, weld.PreheatLean), units.MM(thick), h.HD, units.KJMM(q), weld.EN1011)
	if err != nil {
		k.sayf("preheat-unknown", finding.Warning, "%s: %v", m.Grade, err)
		return
	}
	if up := units.Celsius(5 * math.Ceil(float64(got)/5)); float64(got) > ambient+formulaAccuracy {
		p.Preheat = &up
		k.sayf("preheat", needed(t), "preheat %.0f °C: %s with a typical CET of %.2f %% (the certificate may say otherwise), %s, hydrogen %g ml/100 g, %.1f kJ/mm", float64(up), m.Grade, m.CETTypical, mmText(thick), h.HD, q)
	}
}

// needed is how loud a preheat is told: where a procedure is named it governs.
func needed(t *task) finding.Level {
	if t.j.WPS != "" {
		return finding.Note
	}
	return finding.Warning
}

// shapeKey names the joint in the table of shape factors.
func shapeKey(kind joint.Kind) string {
	switch kind {
	case joint.Fillet:
		return "tee"
	case joint.Lap:
		return "lap"
	case joint.Corner:
		return "corner"
	}
	return "butt"
}

// cooling works out the time from 800 to 500 °C of every pass: the shortest and
// the longest that the shape factors and the passes give, in the thinner part.
func (k *checker) cooling(t *task, p *Plan) {
	shape, ok := k.c.set.ShapeFactor(shapeKey(t.prep.Kind))
	if !ok || t.thin <= 0 {
		return
	}
	t0 := units.Celsius(ambient)
	if p.Preheat != nil {
		t0 = max(t0, *p.Preheat)
	}
	low, high := math.Inf(1), 0.0
	for _, r := range p.Runs {
		fast, _, err1 := weld.Cooling(t0, r.Heat, units.MM(t.thin), shape.F2Low, shape.F3)
		slow, _, err2 := weld.Cooling(t0, r.Heat, units.MM(t.thin), shape.F2High, shape.F3)
		if err1 != nil || err2 != nil {
			return
		}
		low, high = min(low, float64(fast)), max(high, float64(slow))
	}
	p.T85 = &[2]units.Second{units.Second(low), units.Second(high)}
	limit, ok := k.c.set.HeatLimit(t.richer().Family)
	if !ok || limit.T85High == 0 {
		return
	}
	if high < float64(limit.T85Low) {
		k.sayf("cooling-fast", finding.Note, "t8/5 of %.1f to %.1f s; %s likes %g to %g s (%s, %s)", low, high, t.richer().Grade, float64(limit.T85Low), float64(limit.T85High), limit.Basis, limit.Source)
	}
	if low > float64(limit.T85High) {
		k.sayf("cooling-slow", finding.Warning, "t8/5 of %.1f to %.1f s; %s likes %g to %g s (%s, %s)", low, high, t.richer().Grade, float64(limit.T85Low), float64(limit.T85High), limit.Basis, limit.Source)
	}
}

// plausible looks twice at figures that leave their usual range.
func (k *checker) plausible(p *Plan) {
	for _, f := range []struct {
		key   string
		value float64
	}{
		{"area_mm2", float64(p.Area)}, {"weld_kg", float64(p.WeldMetal)}, {"seam_m", float64(p.Seam)},
		{"current_a", p.Current.Start}, {"voltage_v", p.Voltage.Start}, {"wfs_m_min", p.WireFeed.Start},
		{"travel_mm_min", p.Travel.Start}, {"gas_l_min", p.GasFlow.Start}, {"stickout_mm", p.Stickout.Start},
		{"deposit_kg_h", float64(p.Deposit)}, {"heat_kj_mm", float64(p.HeatMax)}, {"passes", float64(len(p.Runs))},
	} {
		r, ok := k.c.set.PlausibleRange(f.key)
		if ok && f.value != 0 && (f.value < r.Low || f.value > r.High) {
			k.sayf("figure-unlikely", finding.Warning, "%s is %.4g %s, usually %g to %g", f.key, f.value, r.Unit, r.Low, r.High)
		}
	}
}

// conditions are what the tables of cautions and cleaning ask after.
func conditions(t *task, wire *tables.Wire) []string {
	out := []string{"metal:" + t.metal, "where:" + string(t.j.Where)}
	for _, m := range []*tables.Material{t.mat, t.mat2} {
		if m != nil && m.Coated != "" {
			out = append(out, "coated:"+m.Coated)
		}
	}
	if wire != nil {
		out = append(out, "construction:"+wire.Construction)
	}
	return out
}

// cautions returns the keys of the cautions that the conditions call for.
func (c *catalog) cautions(t *task, p *Plan) []string {
	var wire *tables.Wire
	if w, ok := c.set.Wire(p.Filler, p.Dia); ok {
		wire = &w
	}
	var keys []string
	for _, caution := range c.set.CautionsFor(conditions(t, wire)...) {
		keys = append(keys, caution.Key)
	}
	return keys
}
