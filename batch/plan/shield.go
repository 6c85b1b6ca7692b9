package plan

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// noFlow is the gas of a wire that shields itself.
var noFlow = tables.Flow{Origin: tables.NoGas.Origin}

// shield returns the gas flow of a way: none for a wire that shields itself, and
// never more than the nozzle usual for the wire bears.
func (c *catalog) shield(n *way) *tables.Flow {
	if n.gas.Gasless() {
		return &noFlow
	}
	flow := c.flow(n)
	nozzle, ok := c.set.Nozzle(n.wire, n.gas)
	if flow == nil || !ok || flow.High <= nozzle.Most {
		return flow
	}
	capped := *flow
	capped.Low, capped.Start, capped.High = min(flow.Low, nozzle.Most), min(flow.Start, nozzle.Most), nozzle.Most
	return &capped
}

// narrowWish keeps, of a wish that names several wires, such as a bare diameter or
// a class, those that suit the materials and the process asked for, and of these
// the shop's own; a filler that the table names third, brazing wire among them,
// only where nothing else is left. Where none suits, the wish stands as it is and
// a check says so.
func (c *catalog) narrowWish(t *task) {
	suiting := keepWires(t.wish.wires, func(w *tables.Wire) bool {
		return t.fillerMask&(1<<min(c.fillers[w.Filler], 63)) != 0 &&
			(t.wish.processes == "" || hasWord(t.wish.processes, w.ProcessActive) || hasWord(t.wish.processes, w.ProcessInert))
	})
	for _, better := range []func(*tables.Wire) bool{
		func(w *tables.Wire) bool { return w.Metal != bronze && c.stocks(w) },
		func(w *tables.Wire) bool { return t.rankOf(w) < 3 },
		c.stocks,
	} {
		if kept := keepWires(suiting, better); len(kept) > 0 {
			suiting = kept
			break
		}
	}
	if len(suiting) > 0 {
		t.wish.wires = suiting
	}
}

// rankOf returns the place of a filler in the table's choice for the materials.
func (t *task) rankOf(w *tables.Wire) int {
	for _, f := range t.pair {
		if f.Filler == w.Filler {
			return f.Rank
		}
	}
	return 0
}

func keepWires(wires []*tables.Wire, good func(*tables.Wire) bool) []*tables.Wire {
	var out []*tables.Wire
	for _, w := range wires {
		if good(w) {
			out = append(out, w)
		}
	}
	return out
}

// widenWish takes, for a process that the list asks for and the shop has no wire
// of, every wire of the table that suits the materials.
func (c *catalog) widenWish(t *task) {
	w := &t.wish
	if w.processes == "" || len(w.wires) > 0 || w.problem != "" {
		return
	}
	var wires []*tables.Wire
	for _, s := range c.setups {
		if !hasWord(w.processes, s.wire.Process(*s.gas)) || t.fillerMask&(1<<min(c.fillers[s.wire.Filler], 63)) == 0 {
			continue
		}
		if s.wire.Metal != bronze && c.stocks(s.wire) {
			return
		}
		if !slices.Contains(wires, s.wire) {
			wires = append(wires, s.wire)
		}
	}
	w.wires = wires
}

// stocks tells whether the shop names the wire.
func (c *catalog) stocks(w *tables.Wire) bool {
	for _, p := range c.shop.Wires {
		if p.Filler == w.Filler && sameDia(p.Dia, w.Dia) {
			return true
		}
	}
	return false
}

// settleWish drops a gas asked for with wires that need none, and takes brazing
// for what it is: the metal of the seam is the wire's own.
func (c *catalog) settleWish(t *task) {
	w := &t.wish
	if len(w.wires) > 0 && w.gas != "" && w.gas != noGas && !slices.ContainsFunc(w.wires, func(r *tables.Wire) bool { return !r.Gasless() }) {
		w.gasLeft, w.gas = w.gas, ""
	}
	t.gasless = len(w.wires) > 0 && !slices.ContainsFunc(w.wires, func(r *tables.Wire) bool { return !r.Gasless() })
	if t.brazed() && t.mat != nil {
		t.metal, t.density = bronze, c.density[bronze]
	}
}

// shielding judges gas, nozzle and what a wire is meant for.
func (k *checker) shielding(t *task, o *outcome) {
	n := o.way
	if t.wish.gasLeft != "" {
		k.sayf("gas-not-needed", finding.Warning, "%s is asked for with %s, which shields itself: planned without gas", t.wish.gasLeft, n.wire.Filler)
	}
	if n.wire.Metal == bronze {
		k.sayf("braze", finding.Warning, "brazed, not welded: %s, process %s", n.wire.Filler, n.process)
		if !t.coated("zinc") {
			k.sayf("braze-uncoated", finding.Note, "no zinc coating is stated, and the list asks for brazing")
		}
	}
	if o.passes > 1 && strings.HasPrefix(n.wire.Filler, "T 3T") {
		k.sayf("wire-single-run", finding.Error, "%s is for one run only; this joint takes %d", n.wire.Filler, o.passes)
	}
	if nozzle, ok := k.c.set.Nozzle(n.wire, n.gas); ok && t.site {
		k.sayf(k.c.outdoors(t, "site-flow", "site-flow-screens"), finding.Note, "wind on site blows the gas away: it flows at %s to %s l/min, and a nozzle of %s bears %s l/min at most",
			number(n.flow.Low, 0), number(n.flow.High, 0), mmText(float64(nozzle.Bore)), number(nozzle.Most, 0))
	}
}

// never judges a filler that one of the materials is not welded with at all.
func (k *checker) never(t *task, n *way) {
	families := []string{t.mat.Family, t.mat.Grade}
	if t.mat2 != nil {
		families = append(families, t.mat2.Family, t.mat2.Grade)
	}
	if r, ok := k.c.set.Never(n.wire.Filler, families...); ok {
		k.sayf("filler-never", finding.Error, "%s on %s: %s", n.wire.Filler, r.Family, r.Why)
	}
}

// coated tells whether either part has the coating.
func (t *task) coated(with string) bool {
	for _, m := range []*tables.Material{t.mat, t.mat2} {
		if m != nil && m.Coated == with {
			return true
		}
	}
	return false
}

// gasRule names the rule that stands between a process, a gas, a mode and the materials
// where nothing is open; an empty code says that none does.
func (c *catalog) gasRule(t *task) reason {
	w := &t.wish
	gas, known := c.set.Gas(w.gas)
	if len(w.wires) > 0 && w.processes != "" {
		if r := w.wires[0]; !hasWord(w.processes, r.ProcessActive) && !hasWord(w.processes, r.ProcessInert) {
			return because("wish-not-met", "%s is not a wire of process %s; it is welded by %s", r.Filler, w.processes, strings.TrimSpace(r.ProcessActive+" "+r.ProcessInert))
		}
	}
	cored := len(w.wires) > 0 && w.wires[0].Construction != "solid"
	switch {
	case w.gas == noGas && (len(w.wires) > 0 || w.processes != ""):
		return because("wire-gas", "the row asks for no gas, and for a wire or process that needs one")
	case !known:
		return reason{}
	case t.metal == "aluminium" && gas.Kind != "inert":
		return because("gas-aluminium", "%s is asked for on aluminium, which takes I1 to I3 only", w.gas)
	case cored && !hasWord(w.wires[0].GasList, w.gas):
		return because("gas-cored", "%s is not welded with %s; its class takes %s", w.wires[0].Filler, w.gas, strings.Join(w.wires[0].Gases(), ", "))
	case t.metal == "stainless" && gas.CO2 > c.book.value("gas-stainless"):
		return because("gas-stainless", "%s is asked for with solid stainless wire, which takes M12 or M13", w.gas)
	case gas.CO2 > c.book.value("gas-transfer") && (w.mode == Spray || w.mode == Pulse):
		return because("gas-transfer", "%s is asked for under %s, which gives short arc and globular only", w.mode, w.gas)
	}
	return reason{}
}

// shield shows which gas was taken and why.
func (w *working) shield(n *way) {
	if r, ok := w.c.set.GasReason(n.wire, n.gas.Gas, string(n.mode)); ok {
		name := n.gas.Gas + " " + n.gas.Mix
		if n.gas.Gasless() {
			name = "none"
		}
		w.step("GAS-3", "shielding gas", "by metal, wire and mode", r.Reason, name, r.Source, r.Basis)
	}
	if z, ok := w.c.set.Nozzle(n.wire, n.gas); ok {
		w.step("GAS-4", "gas flow", "by wire and mode, never more than the nozzle bears",
			fmt.Sprintf("%s to %s l/min; nozzle %s mm bears %s l/min", number(n.flow.Low, 0), number(n.flow.High, 0), number(float64(z.Bore), 0), number(z.Most, 0)),
			number(n.flow.Start, 0)+" l/min", n.flow.Source, n.flow.Basis)
	}
}
