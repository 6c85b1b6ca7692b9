package plan

import (
	"seamtally/batch/finding"
	"seamtally/batch/units"
	"seamtally/tables"
)

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
	if t.mat != nil && len(p.Runs) > 0 {
		k.warmth(t, p)
	}
	k.plausible(p)
}

// warmth judges preheat, interpass, heat and cooling. Preheat and cooling are for
// ferritic steel, parents and weld metal.
func (k *checker) warmth(t *task, p *Plan) {
	ferritic := t.metal == "carbon steel" && t.mat.Group == "carbon steel"
	switch {
	case ferritic:
		k.preheat(t, p)
	case t.mat.Group == "carbon steel" || t.mat2 != nil && t.mat2.Group == "carbon steel":
		p.PreheatWords = "not worked out: the weld metal is not ferritic steel; the procedure decides"
	}
	k.interpass(t, p)
	k.heatLimits(t, p)
	if ferritic {
		k.cooling(t, p)
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
		if m != nil && m.Coated != "" && !t.brazed() { // brazing leaves the coating on
			out = append(out, "coated:"+m.Coated)
		}
	}
	if spokenOf(t.j, painted) {
		out = append(out, "coated:paint")
	}
	if spokenOf(t.j, narrow) {
		out = append(out, "where:confined")
	}
	if t.site && !t.gasless {
		out = append(out, "where:site with gas")
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
