package plan

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// thickTee is a fillet between two parts of one grade, welded in the shop with
// the solid wire so that hydrogen is known.
func thickTee(material string, thick float64) joint.Joint {
	j := filletJoint(6, thick, "PB")
	j.Material, j.Where, j.Wire = material, joint.Shop, "G3Si1 1.2"
	return j
}

func heatPlan(t testing.TB, j joint.Joint, set *tables.Set, shop *rates.Shop, codes string) Plan {
	t.Helper()
	p := Joints([]joint.Joint{j}, set, shop, Options{Codes: codes})[0]
	if !p.Settings {
		t.Fatalf("no settings: %s", p.NoSettings)
	}
	return p
}

func heatCheck(p *Plan, code string) (finding.Check, bool) {
	for _, c := range p.Checks {
		if c.Code == code {
			return c, true
		}
	}
	return finding.Check{}, false
}

// The highest carbon equivalents, each by hand from the limits of its standard:
// CEV spent on carbon, copper, then manganese.
func TestHighestCarbonEquivalentByStandard(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	for _, x := range []struct {
		words     string
		thick     float64
		cet, cev  float64
		certainly string // in the sentence
	}{
		{"S355J2+N", 20, 0.20 + 0.0275 + (0.45-0.20-0.55/15)*0.6, 0.45, "S355J2"},
		{"S355J2", 35, 0.20 + 0.0275 + (0.47-0.20-0.55/15)*0.6, 0.47, "S355J2"},
		{"S355JR", 20, 0.24 + 0.0275 + (0.45-0.24-0.55/15)*0.6, 0.45, "S355JR"},
		{"S235JR", 12, 0.17 + 0.0275 + (0.35-0.17-0.55/15)*0.6, 0.35, "S235JR"},
		{"S355M", 20, 0.14 + 0.0275 + (0.39-0.14-0.55/15)*0.6, 0.39, "S355M"},
		{"A572-50", 25, 0.365, 0.455, "A572"},
		{"A36", 20, 0.36, 0.4267, "A36"},
	} {
		m := c.material(x.words)
		if m == nil {
			t.Fatalf("%s is not known", x.words)
		}
		s := c.steelOf(x.words, m, x.thick, true)
		if math.Abs(s.cet-x.cet) > 1e-9 || math.Abs(s.cev-x.cev) > 0.0001 || !strings.Contains(s.from, x.certainly) || s.certificate {
			t.Errorf("%s, %g mm: CET %.4f CEV %.4f from %q, by hand %.4f and %.4f", x.words, x.thick, s.cet, s.cev, s.from, x.cet, x.cev)
		}
	}
}

// The table of grades holds the same highest values as the limits give to 20 mm.
func TestGradesHoldTheHighestOfTheirStandards(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	n := 0
	for i := range set.Materials {
		m := &set.Materials[i]
		most, cev := 0.0, 0.0
		for _, l := range c.steelFacts(strings.Repeat("·", i+1), m, true).limits {
			if l.row.At(20) {
				most, cev = max(most, l.cet), max(cev, l.cev)
			}
		}
		if most == 0 {
			continue
		}
		n++
		if m.CETMax < most-1e-9 || m.CETMax > most+0.01 || math.Abs(m.CEVMax-cev) > 0.01 {
			t.Errorf("%s: the table has CET %.3f CEV %.3f, the limits give %.4f and %.4f", m.Grade, m.CETMax, m.CEVMax, most, cev)
		}
		if m.CETTypical > most {
			t.Errorf("%s: typical %.3f lies above the highest %.3f", m.Grade, m.CETTypical, most)
		}
	}
	if n < 12 {
		t.Errorf("only %d grades have limits", n)
	}
}

// Thickness, certificate and method move the preheat as they must.
func TestPreheatFollowsCertificateAndMethod(t *testing.T) {
	set, shop := world(t)
	with := func(f func(*rates.Shop)) *rates.Shop {
		s := shop.Clone()
		f(&s)
		return &s
	}
	j := thickTee("S355J2", 30)
	high := heatPlan(t, j, set, shop, "iso")
	if high.Preheat == nil {
		t.Fatal("30 mm of S355J2 at the highest that its standard allows needs preheat by the formula")
	}
	if math.Mod(float64(*high.Preheat), 10) != 0 {
		t.Errorf("%g °C is no round ten", float64(*high.Preheat))
	}
	lean := heatPlan(t, j, set, with(func(s *rates.Shop) { s.CET = map[string]float64{"S355J2": 0.20} }), "iso")
	if lean.Preheat != nil || !strings.HasPrefix(lean.PreheatWords, "none:") {
		t.Errorf("a certificate of 0.20 %% leaves %v, %q", lean.Preheat, lean.PreheatWords)
	}
	other := heatPlan(t, j, set, with(func(s *rates.Shop) { s.CET = map[string]float64{"S355J0": 0.20} }), "iso")
	if other.Preheat == nil || *other.Preheat != *high.Preheat {
		t.Error("a certificate of S355J0 must not speak for S355J2")
	}
	cev := heatPlan(t, j, set, with(func(s *rates.Shop) { s.CEV = map[string]float64{"S355": 0.40} }), "iso")
	if cev.Preheat == nil || *cev.Preheat >= *high.Preheat {
		t.Errorf("a certificate's CEV of 0.40 lowers the preheat: %v against %g", cev.Preheat, float64(*high.Preheat))
	}
	none := heatPlan(t, j, set, with(func(s *rates.Shop) { s.PreheatMethod = "none" }), "iso")
	if none.Preheat != nil || none.PreheatWords == "" {
		t.Errorf("method none: %v %q", none.Preheat, none.PreheatWords)
	}
	// AWS D1.1 category B: 20 to 38 mm 10 °C, 38 to 65 mm 65 °C, by method or by codes.
	for thick, want := range map[float64]units.Celsius{30: 10, 50: 65} {
		a := heatPlan(t, thickTee("A36", thick), set, shop, "aws")
		b := heatPlan(t, thickTee("A36", thick), set, with(func(s *rates.Shop) { s.PreheatMethod = "category" }), "iso")
		for _, p := range []Plan{a, b} {
			if p.Preheat == nil || *p.Preheat != want {
				t.Errorf("A36 %g mm: %v, want %g", thick, p.Preheat, float64(want))
			}
		}
	}
}

// Outside its limits the formula is not drawn on; the sheet says so.
func TestPreheatOutsideItsLimitsIsSaid(t *testing.T) {
	set, shop := world(t)
	thin := heatPlan(t, thickTee("S355J2", 8), set, shop, "iso")
	if thin.Preheat != nil || !strings.Contains(thin.PreheatWords, "thinner than the 10 mm") {
		t.Errorf("8 mm: %v %q", thin.Preheat, thin.PreheatWords)
	}
	if _, ok := heatCheck(&thin, "preheat-unknown"); ok {
		t.Error("thin plate is no cause for alarm")
	}
	thick := heatPlan(t, thickTee("S355J2", 100), set, shop, "iso")
	c, ok := heatCheck(&thick, "preheat-unknown")
	if thick.Preheat != nil || !ok || c.Level != finding.Warning || c.Do == "" || c.Source == "" {
		t.Errorf("100 mm: %v %+v", thick.Preheat, c)
	}
}

// The standard's two methods disagree on 20 mm of S355J2 with a wire of H5:
// Table C.1 allows 50 mm combined at a CE of 0.49 and 1 kJ/mm, 100 at 0.43.
func TestTableOfCombinedThickness(t *testing.T) {
	set, _ := world(t)
	for _, x := range []struct {
		ce, hd float64
		q      units.KJMM
		want   float64
		ok     bool
	}{
		{0.49, 5, 1, 50, true}, {0.43, 5, 1, 100, true}, {0.49, 10, 1, 35, true}, {0.49, 10, 2, 65, true}, {0.43, 16, 1, 40, true},
		{0.46, 10, 1, 47.5, true}, {0.46, 10, 1.5, 63.75 + 1.25, true}, {0.35, 10, 1, 60, true}, {0.49, 10, 5, 65, true},
		{0.50, 10, 1, 0, false}, {0.45, 10, 0.9, 0, false},
	} {
		got, row, ok := set.CombinedThickness(x.ce, x.hd, x.q)
		if ok != x.ok || ok && (math.Abs(float64(got)-x.want) > 1e-9 || row.Source == "") {
			t.Errorf("CE %g HD %g Q %g: %g %v, want %g %v", x.ce, x.hd, float64(x.q), float64(got), ok, x.want, x.ok)
		}
	}
}

// Where no hydrogen is known it is 10 ml/100 g; a class in the designation wins.
func TestHydrogenByWire(t *testing.T) {
	set, _ := world(t)
	for _, x := range []struct {
		wire tables.Wire
		want float64
	}{
		{tables.Wire{Metal: "carbon steel", Construction: "never heard of"}, 10},
		{tables.Wire{Metal: "carbon steel", Construction: "solid"}, 5},
		{tables.Wire{Metal: "carbon steel", Construction: "rutile cored"}, 10},
		{tables.Wire{Metal: "carbon steel", Construction: "rutile cored", ISO: "ISO 17632-A T 46 2 P M 1 H5"}, 5},
	} {
		if h, ok := set.HydrogenOf(x.wire); !ok || h.HD != x.want {
			t.Errorf("%+v: %g, want %g", x.wire, h.HD, x.want)
		}
	}
	if _, ok := set.HydrogenOf(tables.Wire{Metal: "stainless", Construction: "solid"}); ok {
		t.Error("hydrogen cracking is for ferritic weld metal")
	}
}

// Later passes start at the interpass limit, so the longest time of a joint in
// many passes is longer than that of its first pass.
func TestLaterPassesCoolFromInterpass(t *testing.T) {
	set, shop := world(t)
	j := filletJoint(12, 25, "PB")
	j.Where = joint.Shop
	p := heatPlan(t, j, set, shop, "iso")
	if len(p.Runs) < 2 || p.Interpass == nil || p.T85 == nil {
		t.Fatalf("%d passes, interpass %v, t8/5 %v", len(p.Runs), p.Interpass, p.T85)
	}
	if startOf(&p, false) >= startOf(&p, true) || startOf(&p, true) != *p.Interpass {
		t.Errorf("first from %g, later from %g, interpass %g", float64(startOf(&p, false)), float64(startOf(&p, true)), float64(*p.Interpass))
	}
	shape, _ := set.ShapeFactor("tee")
	first, _ := coolingOf(&task{thin: 25}, &p, &p.Runs[0], &shape)
	if p.T85[1] <= first.slow {
		t.Errorf("longest %g s is not longer than the first pass's %g s", float64(p.T85[1]), float64(first.slow))
	}
}

// Interpass limits are told for every metal, preheat and cooling for ferritic alone.
func TestInterpassByMetal(t *testing.T) {
	set, shop := world(t)
	for material, want := range map[string]units.Celsius{"304L": 150, "5083": 120, "6082": 100} {
		j := filletJoint(10, 12, "PB")
		j.Material, j.Where = material, joint.Shop
		p := heatPlan(t, j, set, shop, "iso")
		if len(p.Runs) < 2 {
			t.Fatalf("%s in one pass", material)
		}
		if p.Interpass == nil || *p.Interpass != want {
			t.Errorf("%s: interpass %v, want %g", material, p.Interpass, float64(want))
		}
		if p.Preheat != nil || p.T85 != nil || p.PreheatWords != "" {
			t.Errorf("%s: preheat %v t8/5 %v %q", material, p.Preheat, p.T85, p.PreheatWords)
		}
	}
}

// Thicker parts and richer steel never need less preheat at the same heat.
func TestPreheatIsMonotone(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	m := c.material("S355J2")
	wire, _ := set.Wire("G3Si1", 1.2)
	n := &way{}
	n.hydrogen, _ = set.HydrogenOf(wire)
	rapid.Check(t, func(t *rapid.T) {
		thin := rapid.Float64Range(10, 80).Draw(t, "thin")
		thick := rapid.Float64Range(thin, 90).Draw(t, "thick")
		q := units.KJMM(rapid.Float64Range(0.5, 4).Draw(t, "q"))
		temp := func(d float64) float64 {
			p := &Plan{Manner: &Manner{Filler: "G3Si1", Dia: 1.2, Runs: []Run{{Number: 1, Heat: q}}}}
			f := preheat{method: "cet", thick: d, steel: c.steelOf("S355J2", m, d, true)}
			c.preheatByFormula(n, p, &f)
			if f.outside {
				t.Fatalf("%g mm %g kJ/mm: %s", d, float64(q), f.words)
			}
			return f.raw
		}
		if a, b := temp(thin), temp(thick); b < a-1e-9 {
			t.Fatalf("%g mm needs %g °C, %g mm %g °C", thin, a, thick, b)
		}
	})
}

// Shrinkage is a range, grows with the weld, and stitches shrink by their share.
func TestShrinkageOfPlans(t *testing.T) {
	set, shop := world(t)
	fillet := heatPlan(t, filletJoint(6, 10, "PB"), set, shop, "iso")
	// one fillet of 6 on 10: 1.02 x 0.6 / 2 = 0.306; rule of thumb 0.8
	if fillet.Shrink == nil || math.Abs(float64(fillet.Shrink[0])-0.306) > 1e-9 || math.Abs(float64(fillet.Shrink[1])-0.8) > 1e-9 {
		t.Errorf("fillet: %v", fillet.Shrink)
	}
	butt := heatPlan(t, buttJoint(joint.SingleV, 12, "PA"), set, shop, "iso")
	if butt.Shrink == nil || butt.Shrink[0] <= 0 || butt.Shrink[1] < 2*butt.Shrink[0]-1e-9 {
		t.Errorf("butt: %v", butt.Shrink)
	}
	j := filletJoint(6, 10, "PB")
	j.Material = "5083"
	if p := heatPlan(t, j, set, shop, "iso"); p.Shrink != nil {
		t.Errorf("the formulas are for steel: %v", p.Shrink)
	}
}

// Explain shows how a preheat came about, with source and basis in every step.
func TestExplainShowsTheHeatSteps(t *testing.T) {
	set, shop := world(t)
	j := thickTee("S355J2", 25)
	j.Size.A = 12
	p := Explain([]joint.Joint{j}, 0, set, shop, Options{Codes: "iso"})
	seen := map[string]bool{}
	for _, s := range p.Steps {
		seen[s.ID] = true
		if s.Source == "" || s.Basis == "" || s.Result == "" || s.Numbers == "" {
			t.Errorf("%s has a gap: %+v", s.ID, s)
		}
	}
	for _, id := range []string{"HEAT-1", "HEAT-2", "CARBON-4", "HYDROGEN", "PREHEAT-1", "PREHEAT-2", "COOL-3", "COOL-4", "SHRINK-2"} {
		if !seen[id] {
			t.Errorf("explain shows no %s", id)
		}
	}
}

// Stainless has a ceiling of heat, duplex a floor too, and quenched and tempered
// steel a window; each check names source, basis and what to do.
func TestHeatLimitsAreChecked(t *testing.T) {
	set, shop := world(t)
	k := &checker{c: newCatalog(set, shop, Options{})}
	duplex := k.c.material("duplex")
	p := &Plan{Manner: &Manner{HeatMax: 3, Runs: []Run{{Number: 1, Heat: 0.4}, {Number: 2, Heat: 3}}}}
	k.heatLimits(&task{mat: duplex}, p)
	hard := k.c.material("S690QL")
	q := &Plan{Manner: &Manner{HeatMax: 0.3, Runs: []Run{{Number: 1, Heat: 0.3}}}}
	tee := &task{j: &joint.Joint{Detail: &joint.Detail{Material: "S690QL"}}, mat: hard, metal: "carbon steel", thin: 20, prep: Prep{Kind: joint.Fillet, T1: 20, T2: 20}}
	k.cooling(tee, q)
	hot := &Plan{Manner: &Manner{HeatMax: 3, Runs: []Run{{Number: 1, Heat: 3}}}}
	tee.thin = 6
	k.cooling(tee, hot)
	for _, code := range []string{"heat-high", "heat-low", "cooling-fast", "cooling-slow"} {
		c, ok := heatCheck(&Plan{Manner: &Manner{}, Checks: k.out}, code)
		if !ok || c.Level != finding.Warning || c.Source == "" || c.Basis == "" || c.Do == "" || c.Rule == "" {
			t.Errorf("%s: %+v", code, c)
		}
	}
}
