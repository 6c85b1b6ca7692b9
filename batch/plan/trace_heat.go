package plan

import (
	"fmt"

	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// warmth shows preheat, cooling and shrinkage.
func (w *working) warmth(n *way) {
	t, p := w.t, w.p
	if t.metal == "carbon steel" && t.mat != nil && t.mat.Group == "carbon steel" && len(p.Runs) > 0 {
		f := w.c.findPreheat(t, n, p)
		w.preheat(&f)
		w.cooling()
	}
	for _, s := range shrinkage(t, p.Area) {
		w.step(s.id, "shrinkage across one seam, free plates", s.formula, s.numbers, n2(s.value)+" mm", s.source, s.basis)
	}
}

// preheat shows the method's numbers and what it gives.
func (w *working) preheat(f *preheat) {
	switch f.method {
	case "none":
		w.step("PREHEAT", "preheat", "none asked for", "preheat_method none", f.words, "shop value", "common-practice")
		return
	case "category":
		w.step("PREHEAT-C", "preheat by category", "row of the thickness", fmt.Sprintf("category %s, %s", f.row.Category, mmText(f.thick)), f.words, f.row.Source, f.row.Basis)
		return
	}
	if f.steel.cet > 0 {
		w.step("CARBON-4", "CET that preheat is reckoned with: "+f.steel.from, "highest CET within the limits, or the certificate's", f.steel.formula, number(f.steel.cet, 4)+" %", f.steel.source, f.steel.basis)
	}
	if f.hydrogen.HD > 0 {
		w.step("HYDROGEN", "diffusible hydrogen of the weld metal", "by the wire's class or construction", f.filler, number(f.hydrogen.HD, 1)+" ml/100 g", f.hydrogen.Source, f.hydrogen.Basis)
	}
	result := f.words
	numbers := "outside its limits"
	if f.clear != 0 {
		numbers = fmt.Sprintf("%g x %s + 160 tanh(%s/35) + 62 x %s^0.35 + (53 x %s − 32) x %s + (%g)", f.set.Slope, number(max(f.steel.cet, weld.PreheatLean), 4), number(f.thick, 1),
			number(f.hydrogen.HD, 1), number(max(f.steel.cet, weld.PreheatLean), 4), number(f.heat, 3), f.set.Offset)
		result = fmt.Sprintf("%s °C: %s", number(f.raw, 1), f.words)
		w.step("PREHEAT-2", "highest CET without preheat", "PREHEAT-1 solved for CET at 20 °C", fmt.Sprintf("%s, %s ml/100 g, %s kJ/mm", mmText(f.thick), number(f.hydrogen.HD, 1), number(f.heat, 3)), number(f.clear, 3)+" %", f.set.Name, "derived")
	}
	w.step("PREHEAT-1", "preheat", "Tp = s CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET − 32) Q + o", numbers, result, f.set.Name, "published")
	if m := &f.combined; m.holds {
		verdict := "preheat"
		if m.none() {
			verdict = "no preheat"
		}
		w.step("PREHEAT-T", "combined thickness, the standard's other method", "t1 + t2, or t1 + 2 t2 where a plate runs through", fmt.Sprintf("%s at a CEV of %s %%, up to %s", mmText(float64(m.thick)), number(m.cev, 3), mmText(float64(m.limit))), verdict, m.row.Source, m.row.Basis)
	}
}

// cooling shows the first pass and, where there are more, the hottest later one.
func (w *working) cooling() {
	t, p := w.t, w.p
	shape, ok := w.c.set.ShapeFactor(shapeKey(t.prep.Kind))
	if !ok || t.thin <= 0 {
		return
	}
	w.passCooling(&p.Runs[0], &shape)
	later := -1
	for i := 1; i < len(p.Runs); i++ {
		if later < 0 || p.Runs[i].Heat > p.Runs[later].Heat {
			later = i
		}
	}
	if later > 0 {
		w.passCooling(&p.Runs[later], &shape)
	}
}

// passCooling shows the transition thickness and the time of one pass.
func (w *working) passCooling(r *Run, shape *tables.ShapeFactor) {
	t := w.t
	pass, ok := coolingOf(t, w.p, r, shape)
	dt, err := weld.TransitionThickness(pass.from, r.Heat, shape.F2High, shape.F3)
	if !ok || err != nil {
		return
	}
	what := fmt.Sprintf("pass %d, from %.0f °C: ", r.Number, float64(pass.from))
	w.step("COOL-3", what+"thickness where thin turns to thick", "dt = √((4300 − 4.3 T0) 10⁵ / (6700 − 5 T0) Q (1/(500 − T0) + 1/(800 − T0)) F2/F3)",
		fmt.Sprintf("Q %s kJ/mm, F2 %g, F3 %g", number(float64(r.Heat), 3), shape.F2High, shape.F3), n2(dt)+" mm", "EN 1011-2 Annex D, recalled; COOL-1 equal to COOL-2", "derived")
	formula, flow := "t = (6700 − 5 T0) Q (1/(500 − T0) − 1/(800 − T0)) F3", "thick"
	if pass.thin {
		formula, flow = "t = (4300 − 4.3 T0) 10⁵ (Q/d)² (1/(500 − T0)² − 1/(800 − T0)²) F2", "thin"
	}
	w.step("COOL-4", what+"time from 800 to 500 °C, "+flow+" plate", formula, fmt.Sprintf("T0 %.0f °C, Q %s kJ/mm, d %s, F2 %s, F3 %g", float64(pass.from), number(float64(r.Heat), 3), mmText(t.thin), factorText(shape), shape.F3),
		secondsText(pass.fast, pass.slow), "SSAB Welding Handbook ed.2 p.17; shape factors: "+shape.Source, shape.Basis)
}

func factorText(s *tables.ShapeFactor) string {
	if s.F2Low == s.F2High {
		return fmt.Sprintf("%g", s.F2Low)
	}
	return fmt.Sprintf("%g to %g", s.F2Low, s.F2High)
}

func secondsText(fast, slow units.Second) string {
	if number(float64(fast), 1) == number(float64(slow), 1) {
		return number(float64(slow), 1) + " s"
	}
	return number(float64(fast), 1) + " to " + number(float64(slow), 1) + " s"
}
