package plan

import (
	"fmt"
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// ambient is the temperature of parts that nobody heats; a preheat that a warm
// shop gives by itself is none.
const ambient = 20.0 // °C

// preheat is what was found out about preheating a joint.
type preheat struct {
	method   string // "cet", "cet-sew", "combined", "category" or "none"
	steel    steel
	thick    float64 // the thicker part, mm
	hydrogen tables.Hydrogen
	filler   string
	label    bool    // the hydrogen is that of the wire's label
	coolest  float64 // heat of the coolest pass, kJ/mm
	heat     float64 // the same, held inside the method's limits
	set      weld.PreheatSet
	raw      float64           // as the formula gives it, °C
	clear    float64           // highest CET that needs none, %
	row      tables.PreheatRow // of the category table
	combined combined

	temp    *units.Celsius // rounded up; nil: none
	words   string         // what the sheet says of it
	outside bool           // the method does not hold and the reader must ask
}

// findPreheat works out the preheat of a joint by the shop's method.
func (c *catalog) findPreheat(t *task, n *way, p *Plan) preheat {
	f := preheat{method: c.shop.PreheatMethod, thick: max(float64(t.prep.T1), float64(t.prep.T2))}
	if f.method == "" || f.method == "codes" {
		f.method = "cet"
		if c.aws {
			f.method = "category"
		}
	}
	f.steel = c.richest(t, f.thick)
	switch f.method {
	case "none":
		f.words = "not worked out: preheat_method is none"
	case "category":
		c.preheatByCategory(t, &f)
	default:
		c.preheatByFormula(n, p, &f)
		f.combined = c.findCombined(t, &f)
		if f.method == "combined" && f.combined.none() {
			f.temp, f.outside, f.words = nil, false, f.combined.words()
		}
	}
	return f
}

// preheatByCategory takes the higher row of the two parent metals.
func (c *catalog) preheatByCategory(t *task, f *preheat) {
	found := false
	for _, m := range []*tables.Material{t.mat, t.mat2} {
		if m == nil || m.Group != "carbon steel" {
			continue
		}
		row, ok := c.set.Preheat(m.Category, units.MM(f.thick))
		switch {
		case ok && (!found || row.Min > f.row.Min):
			f.row, found = row, true
		case !ok && m.Category == "":
			f.outside, f.words = true, "not worked out: "+m.Grade+" has no category in the table"
			return
		}
	}
	switch {
	case !found:
		f.words = "none: " + mmText(f.thick) + " is below the 3 mm at which the category table begins"
	case f.row.Min <= 0:
		f.words = fmt.Sprintf("none: category %s to %s; parts not below 0 °C", f.row.Category, upTo(f.row.To))
	default:
		least := f.row.Min
		f.temp = &least
		f.words = fmt.Sprintf("at least %.0f °C by category %s over %s", float64(f.row.Min), f.row.Category, mmText(float64(f.row.Over)))
	}
}

func upTo(t units.MM) string {
	if t == 0 {
		return "any thickness"
	}
	return mmText(float64(t))
}

// preheatByFormula works the carbon equivalent formula for the thicker part and
// the coolest pass, and says so where it does not hold.
func (c *catalog) preheatByFormula(n *way, p *Plan, f *preheat) {
	f.set = weld.EN1011
	if f.method == "cet-sew" {
		f.set = weld.SEW088
	}
	f.filler, f.hydrogen = p.Filler, n.hydrogen
	if label := c.shop.Hydrogen[p.Filler]; label > 0 && f.hydrogen.HD > 0 {
		f.hydrogen.HD, f.hydrogen.Basis, f.hydrogen.Source = label, "shop", "shop value hydrogen."+p.Filler
		f.label = true
	}
	f.coolest = coolest(p)
	f.heat = min(max(f.coolest, weld.PreheatCool), weld.PreheatHot)
	if f.words = f.whyNotFormula(); f.words != "" {
		return
	}
	cet := max(f.steel.cet, weld.PreheatLean)
	raw, err := weld.Preheat(cet, units.MM(f.thick), f.hydrogen.HD, units.KJMM(f.heat), f.set)
	if err != nil {
		f.outside, f.words = true, err.Error()
		return
	}
	f.raw = float64(raw)
	f.clear, _ = weld.PreheatCET(ambient, units.MM(f.thick), f.hydrogen.HD, units.KJMM(f.heat), f.set)
	if f.raw <= ambient {
		l := make(line, 0, usualLine)
		l = l.say("none: ", f.set.Name, " gives ").whole(f.raw).say(" °C with a CET of ").num(cet, 3).say(" %; parts dry and at ").short(ambient).say(" °C")
		f.words = string(l)
		return
	}
	up := roundUp(f.raw)
	f.temp = &up
	l := make(line, 0, usualLine)
	l = l.whole(float64(up)).say(" °C by ", f.set.Name, " with a CET of ").num(cet, 3).say(" %, ", f.steel.from)
	f.words = string(l)
}

// coolest returns the least heat of any pass in kJ/mm; 0 where none has a heat
// along a seam, as in a hole filled on the spot.
func coolest(p *Plan) float64 {
	least := math.Inf(1)
	for _, r := range p.Runs {
		if r.Heat > 0 {
			least = min(least, float64(r.Heat))
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// hardened is the family of steels that carbon equivalents alone do not speak for.
const hardened = "quenched and tempered"

// whyNotFormula says why the formula does not hold; empty if it does. Thin parts
// are outside it without harm, the rest has to be asked for.
func (f *preheat) whyNotFormula() string {
	switch {
	case f.hydrogen.HD == 0:
		return "not worked out: the weld metal is not ferritic steel"
	case f.thick < weld.PreheatThin && f.steel.row.Family == hardened:
		f.outside = true
		return fmt.Sprintf("not worked out: %s is thinner than the %g mm at which %s begins, and this steel is hardened: the plate maker says", mmText(f.thick), weld.PreheatThin, f.set.Name)
	case f.thick < weld.PreheatThin:
		l := make(line, 0, usualLine)
		l = l.say("none asked for: ").num(f.thick, 1).say(" mm is thinner than the ").short(weld.PreheatThin).say(" mm at which ", f.set.Name, " begins; parts dry and free of frost")
		return string(l)
	}
	f.outside = true
	switch {
	case f.steel.cet == 0:
		return "not worked out: the table knows no carbon equivalent of " + f.steel.row.Grade + "; state the certificate's as cet." + f.steel.row.Grade
	case f.thick > weld.PreheatThick:
		return fmt.Sprintf("not worked out: %s is thicker than the %g mm at which %s ends", mmText(f.thick), weld.PreheatThick, f.set.Name)
	case f.steel.cet > weld.PreheatRich:
		return fmt.Sprintf("not worked out: a CET of %s %% is above the %g %% at which %s ends", number(f.steel.cet, 3), weld.PreheatRich, f.set.Name)
	case f.hydrogen.HD > weld.PreheatWet:
		return fmt.Sprintf("not worked out: hydrogen of %g ml/100 g is above the %g of %s", f.hydrogen.HD, weld.PreheatWet, f.set.Name)
	}
	f.outside = false
	return ""
}

// roundUp rounds a temperature up to the next 10 °C.
func roundUp(t float64) units.Celsius { return units.Celsius(10 * math.Ceil(t/10-1e-9)) }

// preheat fills in what the welder is told of preheat and says why.
func (k *checker) preheat(t *task, n *way, p *Plan) {
	if t.proc != nil && t.proc.Preheat > 0 {
		p.Preheat = &t.proc.Preheat
		p.PreheatWords = fmt.Sprintf("procedure %s asks for it", t.proc.Number)
		return
	}
	f := k.c.findPreheat(t, n, p)
	p.Preheat, p.PreheatWords = f.temp, f.words
	switch {
	case f.outside:
		k.sayf("preheat-unknown", finding.Warning, "%s: preheat %s", f.steel.row.Grade, f.words)
	case f.temp == nil:
	case f.method == "category":
		level := needed(t)
		if *f.temp <= ambient { // what a warm shop gives by itself
			level = finding.Note
		}
		k.warm("preheat", level, f.row.Source, f.row.Basis, &f, fmt.Sprintf("Category %s: %s; the part has %s", f.row.Category, f.row.Steels, mmText(f.thick)))
	default:
		code, level := f.loudness(t)
		k.warm(code, level, f.set.Name+"; CET: "+f.steel.source, f.steel.basis, &f, f.sentence())
	}
}

// loudness is how a preheat is told. Where a procedure is named, that governs.
// Where the standard's other method finds none, or where the standard's highest
// alone calls for it and ordinary deliveries of the grade would not, paper most
// likely makes it needless: a note. The temperature is the same either way; the
// typical value only sets the tone.
func (f *preheat) loudness(t *task) (code string, level finding.Level) {
	typical := f.steel.row.CETTypical
	switch {
	case f.combined.none():
		return "preheat-methods", finding.Note
	case !f.steel.certificate && typical > 0 && typical <= f.clear:
		return "preheat-certificate", finding.Note
	}
	return "preheat", needed(t)
}

// short is what the welder acts on: how warm, how far from the seam it is
// measured, and whether paper may lower it, as a sentence and its figures.
func (f *preheat) short(r *tables.CheckRule) (format string, args []any) {
	warm := number(float64(*f.temp), 0)
	if f.method == "category" && *f.temp <= ambient {
		return "parts at least %s °C before the first run, by category %s", []any{warm, f.row.Category}
	}
	format, args = "preheat %s °C, measured %s from the seam", []any{warm, mmText(r.Value)}
	switch {
	case f.method == "category":
		return format + ", by category %s", append(args, f.row.Category)
	case f.combined.none():
		return format + ". By the standard's other method none is needed; the welding coordinator chooses", args
	case f.steel.certificate:
		return format + ", by the certificate", args
	}
	return format + ". By the highest carbon equivalent that the standard allows; a mill certificate usually lowers it", args
}

// sentence says what a preheat rests on, and what would change it.
func (f *preheat) sentence() string {
	l := make(line, 0, usualLine)
	l = l.say(f.steel.row.Grade, " at a CET of ").num(f.steel.cet, 3).say(" %, ", f.steel.from, "; ").num(f.thick, 1).say(" mm, hydrogen ")
	l = l.short(f.hydrogen.HD).say(" ml/100 g, ").num(f.heat, 2).say(" kJ/mm")
	if f.coolest > 0 && f.coolest < weld.PreheatCool {
		l = l.say(" (the coolest pass has ").num(f.coolest, 2).say(" kJ/mm, below the method's ").short(weld.PreheatCool).say(" kJ/mm: at least this)")
	}
	if f.combined.none() {
		l = l.say(". ", f.combined.contrast())
	}
	return string(f.wireHint(f.certificateHint(l)))
}

// certificateHint says what the mill certificate would change.
func (f *preheat) certificateHint(l line) line {
	grade, typical := f.steel.row.Grade, f.steel.row.CETTypical
	clear := math.Floor(f.clear*100) / 100
	switch {
	case f.steel.certificate:
		return l
	case clear >= weld.PreheatLean && clear >= typical:
		return l.say(". None is needed with at most ").num(clear, 2).say(" % on the certificate (cet.", grade, "); typical is ").num(typical, 2).say(" %")
	case typical >= weld.PreheatLean && typical < f.steel.cet:
		return f.with(l.say(". A certificate of ").num(typical, 2).say(" %, as is typical (cet.", grade, "): "), typical, f.hydrogen.HD)
	}
	return l
}

// wireHint says what a wire with less hydrogen would change.
func (f *preheat) wireHint(l line) line {
	if f.label || f.hydrogen.HD <= lowHydrogen {
		return l
	}
	return f.with(l.say(". A wire labelled H").short(lowHydrogen).say(" (hydrogen.", f.filler, "): "), f.steel.cet, lowHydrogen)
}

// lowHydrogen is the class that wires for structural steel are commonly sold in.
const lowHydrogen = 5.0 // ml/100 g

// with says what the preheat would be with another CET or hydrogen.
func (f *preheat) with(l line, cet, hd float64) line {
	got, err := weld.Preheat(max(cet, weld.PreheatLean), units.MM(f.thick), hd, units.KJMM(f.heat), f.set)
	if err != nil || float64(got) <= ambient {
		return l.say("no preheat")
	}
	return l.say("preheat ").whole(float64(roundUp(float64(got)))).say(" °C")
}

// needed is how loud a preheat is told: where a procedure is named it governs.
func needed(t *task) finding.Level {
	if t.j.WPS != "" {
		return finding.Note
	}
	return finding.Warning
}
