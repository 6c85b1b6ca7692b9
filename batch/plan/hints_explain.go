package plan

import (
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// Hint is one altered form that a joint was planned in, beside the form called for:
// how a saving that the checks tell of was found, or why none is told.
type Hint struct {
	Code  string
	Form  string      // "position PB", "leg 7 mm"
	Saved units.Money // by the altered form; for one size over: what it would cost more
	Share float64     // of the joint's cost
	Least float64     // share from which it is told
	Told  bool        // on the joint, by the checks
	// Called is the joint as the list has it, Altered in the other form.
	Called, Altered  HintSide
	Rule, Do         string
	Basis, Source    string
	Costlier, Ranked bool // one size over; reached its share, but others of the list save more
}

// HintSide is what a joint takes in one form, all copies.
type HintSide struct {
	Cost      units.Money
	Labour    units.Minute
	WeldMetal units.Kg
	Passes    int
	Way       string // wire, gas and mode
}

// ExplainHints adds to a traced plan which altered forms its joint was tried in and
// what each would have saved. The plans are those of the whole list, with hints.
func ExplainHints(p *Plan, plans []Plan, index int, set *tables.Set, shop *rates.Shop, opt Options) {
	if index < 0 || index >= len(plans) {
		return
	}
	told := map[string]bool{}
	for _, c := range plans[index].Checks {
		if !strings.HasPrefix(c.Code, "hint-") {
			continue
		}
		told[c.Code] = true
		p.Checks = append(p.Checks, c)
	}
	if told[hintDouble] {
		p.Checks = without(p.Checks, "double-saves") // the hint says the same with figures
	}
	h := newHinter(plans, newCatalog(set, shop, opt))
	if h == nil || !h.open(&plans[index]) {
		return
	}
	h.trace = true
	h.look(index, &plans[index])
	for i := range h.tried {
		t := &h.tried[i]
		t.Told = told[t.Code]
		t.Ranked = !t.Told && t.Share >= t.Least
	}
	p.Hints = h.tried
}

func without(checks []finding.Check, code string) []finding.Check {
	var out []finding.Check
	for _, c := range checks {
		if c.Code != code {
			out = append(out, c)
		}
	}
	return out
}

// note keeps what was tried, where somebody asks for it.
func (h *hinter) note(code string, p *Plan, a altered, form string, saved float64) {
	r := h.c.book.first(code)
	if !h.trace || r == nil {
		return
	}
	h.tried = append(h.tried, Hint{
		Code: code, Form: form, Saved: units.Money(saved), Share: saved / float64(p.Cost.Total), Least: r.Value,
		Called: HintSide{p.Cost.Total, p.Cost.Labour.Total, p.WeldMetal, p.Passes(), strings.Join([]string{p.Filler, mmText(float64(p.Dia)), orNoGas(p.Gas), string(p.Transfer)}, ", ")},
		Altered: HintSide{units.Money(a.cost), units.Minute(a.minutes), units.Kg(a.kg), a.passes,
			strings.Join([]string{a.way.wire.Filler, mmText(a.way.dia), orNoGas(a.way.gas.Gas), string(a.way.mode)}, ", ")},
		Rule: r.Rule, Do: r.Do, Basis: r.Basis, Source: r.Source, Costlier: code == hintOneOver,
	})
}

func orNoGas(gas string) string {
	if gas == "" {
		return "no gas"
	}
	return gas
}
