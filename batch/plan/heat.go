package plan

import (
	"slices"

	"seamtally/batch/finding"
	"seamtally/batch/units"
	"seamtally/tables"
)

// heat judges preheat, cooling and the root's back, and fills in what the welder
// is told of them. Preheat and cooling are for ferritic steel only.
func (k *checker) heat(t *task, o *outcome, p *Plan) {
	if shade, ok := k.c.set.Shade(p.Process, units.Amp(p.Current.Start)); ok {
		p.FilterShade = max(shade.Recommended, shade.Minimum)
	}
	p.CleanWidth = k.c.care(t, nil).clean
	if t.metal == "stainless" && t.openRoot {
		k.sayf("backing-purge", finding.Note, "open root in stainless: its back burns to scale without gas")
	}
	if t.mat != nil && len(p.Runs) > 0 {
		k.warmth(t, o.way, p)
	}
	k.plausible(p)
}

// judgeWarmth judges preheat, interpass, heat and cooling. Preheat and cooling are
// for ferritic steel, parents and weld metal.
func (k *checker) judgeWarmth(t *task, n *way, p *Plan) {
	ferritic := t.metal == "carbon steel" && t.mat.Group == "carbon steel"
	switch {
	case ferritic:
		k.preheat(t, n, p)
	case t.mat.Group == "carbon steel" || t.mat2 != nil && t.mat2.Group == "carbon steel":
		p.PreheatWords = "not worked out: the weld metal is not ferritic steel; the procedure decides"
	}
	k.interpass(t, p)
	k.heatLimits(t, p)
	if ferritic {
		k.cooling(t, p)
	}
	k.heatRange(t, p)
}

// warm tells a preheat: short for the sheet, with the figures behind it.
func (k *checker) warm(code string, level finding.Level, source, basis string, f *preheat, more string) {
	if r := k.c.book.first(code); r != nil {
		format, args := f.short(r)
		k.sayFrom(code, level, source, basis, format, args...)
		k.out[len(k.out)-1].More = more
	}
}

// likely is one figure of a plan with the range it usually lies in.
type likely struct {
	of  func(*Plan) float64
	row tables.Plausible
}

// readLikely compiles the table of plausible ranges.
func (c *catalog) readLikely() {
	for _, f := range []struct {
		key string
		of  func(*Plan) float64
	}{
		{"area_mm2", func(p *Plan) float64 { return float64(p.Area) }}, {"weld_kg", func(p *Plan) float64 { return float64(p.WeldMetal) }},
		{"seam_m", func(p *Plan) float64 { return float64(p.Seam) }}, {"current_a", func(p *Plan) float64 { return p.Current.Start }},
		{"voltage_v", func(p *Plan) float64 { return p.Voltage.Start }}, {"wfs_m_min", func(p *Plan) float64 { return p.WireFeed.Start }},
		{"travel_mm_min", func(p *Plan) float64 { return p.Travel.Start }}, {"gas_l_min", func(p *Plan) float64 { return p.GasFlow.Start }},
		{"stickout_mm", func(p *Plan) float64 { return p.Stickout.Start }}, {"deposit_kg_h", func(p *Plan) float64 { return float64(p.Deposit) }},
		{"heat_kj_mm", func(p *Plan) float64 { return float64(p.HeatMax) }}, {"passes", func(p *Plan) float64 { return float64(len(p.Runs)) }},
	} {
		if r, ok := c.set.PlausibleRange(f.key); ok {
			c.likely = append(c.likely, likely{of: f.of, row: r})
		}
	}
}

// plausible looks twice at figures that leave their usual range.
func (k *checker) plausible(p *Plan) {
	for i := range k.c.likely {
		r := &k.c.likely[i].row
		if v := k.c.likely[i].of(p); v != 0 && (v < r.Low || v > r.High) {
			k.sayf("figure-unlikely", finding.Warning, "%s is %.4g %s, usually %g to %g %s", r.Key, v, r.Unit, r.Low, r.High, r.Unit)
		}
	}
}

// condition is what the tables of cautions and cleaning ask after.
type condition struct {
	metal, where, coat, coat2, construction string
	paint, narrow, draught                  bool
}

// care is what follows from a condition.
type care struct {
	clean    units.MM // to be cleaned each side
	cautions []string // keys
}

// care looks up what the joint's condition calls for, each condition once.
func (c *catalog) care(t *task, wire *tables.Wire) care {
	key := condition{metal: t.metal, where: string(t.j.Where), paint: c.spoken(t.j, "paint"), narrow: c.spoken(t.j, "confined"), draught: t.site && !t.gasless}
	if !t.brazed() { // brazing leaves the coating on
		key.coat, key.coat2 = coating(t.mat), coating(t.mat2)
	}
	if wire != nil {
		key.construction = wire.Construction
	}
	found, known := c.careOf[key]
	if !known {
		found = care{clean: c.set.CleanWidth(key.words()...)}
		for _, caution := range c.set.CautionsFor(key.words()...) {
			found.cautions = append(found.cautions, caution.Key)
		}
		c.careOf[key] = found
	}
	return found
}

func coating(m *tables.Material) string {
	if m == nil {
		return ""
	}
	return m.Coated
}

// words are the conditions as the tables spell them.
func (k condition) words() []string {
	out := []string{"metal:" + k.metal, "where:" + k.where}
	for _, coat := range []string{k.coat, k.coat2} {
		if coat != "" {
			out = append(out, "coated:"+coat)
		}
	}
	for _, c := range []struct {
		met  bool
		word string
	}{{k.paint, "coated:paint"}, {k.narrow, "where:confined"}, {k.draught, "where:site with gas"}, {k.construction != "", "construction:" + k.construction}} {
		if c.met {
			out = append(out, c.word)
		}
	}
	return out
}

// cautions returns the keys of the cautions that the conditions call for, with the wire
// of the joint where it has one. The list is shared between joints.
func (c *catalog) cautions(t *task, wire *tables.Wire) []string {
	return slices.Clip(c.care(t, wire).cautions)
}
