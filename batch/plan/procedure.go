package plan

import (
	"cmp"
	"fmt"
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/tables"
)

// unmet is the code of a joint that its procedure does not cover.
const unmet = "procedure-unmet"

// bindProcedure puts a named procedure of the shop's table into force: its process,
// wire and gas become the joint's, and what the list itself says otherwise, or a
// thickness or position outside the procedure, keeps the joint without settings.
// A procedure binds or it does not: there is no compromise.
func (c *catalog) bindProcedure(t *task) {
	p, ok := c.set.Procedure(t.j.WPS)
	if !ok {
		return
	}
	t.proc = p
	own := t.wish
	wire := p.Filler
	if p.Dia > 0 && wire != "" {
		wire += " " + number(float64(p.Dia), 2)
	}
	t.wish = c.readWish(&joint.Joint{Detail: &joint.Detail{Process: p.Process, Wire: wire, Gas: p.Gas, Machine: t.j.Machine}})
	t.wish.named = true
	if text := wrongRange(p); text != "" {
		t.refuse("its row in the table of procedures has %s", text)
	}
	c.narrowWish(t)
	t.refuseConflicts(c, own)
	switch thin := t.thinner(); {
	case p.TLow > 0 && thin > 0 && thin < p.TLow-0.005, p.THigh > 0 && thin > p.THigh+0.005:
		of := limitRange{"thickness", float64(p.TLow), float64(p.THigh), "mm"}
		t.refuse("the thinner part is %s; the procedure is for %s", mmText(float64(thin)), of.allowed())
	}
	if at := t.position(); at != "" && p.Positions != "" && !hasWord(p.Positions, at) {
		t.refuse("the position is %s; the procedure is for %s", at, p.Positions)
	}
}

// position is the joint's own position: of a pipe too, which is planned as the plate
// position it comes down to, but qualified by its own name.
func (t *task) position() string {
	if t.j.Position == "" && t.pos >= 0 {
		return positions[t.pos]
	}
	return t.j.Position
}

// wrongRange says which range of a procedure's row cannot be meant; empty: none.
func wrongRange(p *tables.Procedure) string {
	for _, r := range []struct {
		what      string
		low, high float64
	}{{"thickness", float64(p.TLow), float64(p.THigh)}, {"current", float64(p.CurrentLow), float64(p.CurrentHigh)},
		{"voltage", float64(p.VoltageLow), float64(p.VoltageHigh)}, {"travel", float64(p.TravelLow), float64(p.TravelHigh)},
		{"heat", float64(p.HeatLow), float64(p.HeatHigh)}} {
		if r.low < 0 || r.high < 0 || r.high > 0 && r.low > r.high {
			return fmt.Sprintf("a range of %s from %g to %g", r.what, r.low, r.high)
		}
	}
	return ""
}

// refuseConflicts compares what the list asks for with the procedure.
func (t *task) refuseConflicts(c *catalog, own wish) {
	j := t.j
	if own.problem != "" {
		t.wish.refuse(own.code, own.problem)
	}
	if own.processes != "" && t.wish.processes != "" && own.processes != t.wish.processes && !shareWord(own.processes, t.wish.processes) {
		t.refuse("the list asks for process %q; the procedure is for %s", j.Process, t.proc.Process)
	}
	if own.gas != "" && t.wish.gas != "" && own.gas != t.wish.gas {
		t.refuse("the list asks for gas %q; the procedure is for %s", j.Gas, t.proc.Gas)
	}
	if len(own.wires) == 0 || len(t.wish.wires) == 0 {
		return
	}
	var both []*tables.Wire
	for _, w := range t.wish.wires {
		for _, o := range own.wires {
			if o == w {
				both = append(both, w)
			}
		}
	}
	if len(both) == 0 {
		t.refuse("the list asks for wire %q; the procedure is for %s %s", j.Wire, t.proc.Filler, mmText(float64(t.proc.Dia)))
		return
	}
	t.wish.wires = both
}

func shareWord(a, b string) bool { return hasWord(a, b) || hasWord(b, a) }

// refuse keeps the joint without settings because its procedure does not cover it;
// every reason is told.
func (t *task) refuse(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if t.wish.problem != "" && t.wish.code == unmet {
		t.wish.problem += "; " + text
		return
	}
	t.wish.refuse(unmet, "procedure "+t.proc.Number+": "+text)
}

// waysOf returns the ways open in the joint's position, inside its procedure where
// one binds it.
func (c *catalog) waysOf(t *task) []*way {
	if t.proc == nil {
		return c.all[t.pos]
	}
	if t.bound == nil {
		t.bound = []*way{}
		for _, n := range c.all[t.pos] {
			if c.mayTry(n, t) {
				if m := n.inside(t.proc); m != nil {
					t.bound = append(t.bound, m)
				}
			}
		}
	}
	return t.bound
}

// inside returns the way with its window, travel and voltage cut to a procedure's
// ranges; nil where nothing is left of one. The procedure's range is used whole: it
// is qualified to its ends.
func (n *way) inside(p *tables.Procedure) *way {
	m := *n
	m.low, m.high = n.low, min(n.high, max(n.top, n.low))
	if p.CurrentLow > 0 {
		m.low = max(m.low, float64(p.CurrentLow))
		m.high = n.high
	}
	if p.CurrentHigh > 0 {
		m.high = min(n.high, float64(p.CurrentHigh))
	}
	if m.high < m.low {
		return nil
	}
	m.start, m.top, m.boundary = m.low, m.high, 0
	m.voltLow, m.voltHigh = float64(p.VoltageLow), float64(p.VoltageHigh)
	m.travel = nil
	for _, r := range n.travel {
		cut := *r
		cut.Low = max(r.Low, float64(p.TravelLow))
		if p.TravelHigh > 0 {
			cut.High = min(r.High, float64(p.TravelHigh))
		}
		if cut.Low <= cut.High {
			m.travel = append(m.travel, &cut)
		}
	}
	if len(m.travel) == 0 {
		return nil
	}
	m.rootWay = &m
	if n.rootWay != nil && n.rootWay != n {
		if root := n.rootWay.inside(p); root != nil {
			m.rootWay = root
		}
	}
	return &m
}

// inside returns the window cut to a procedure's range; 0 binds nothing.
func (w Window) inside(low, high float64) Window {
	if low > 0 {
		w.Low = max(w.Low, low)
	}
	if high > 0 {
		w.High = min(w.High, high)
	}
	return w
}

// within cuts a voltage to the procedure's range, where one binds the way.
func (n *way) within(volts float64) float64 {
	if n.voltLow > 0 {
		volts = max(volts, n.voltLow)
	}
	if n.voltHigh > 0 {
		volts = min(volts, n.voltHigh)
	}
	return volts
}

// outside tells whether an outcome leaves the procedure's travel or heat.
func (c *catalog) outside(o *outcome, t *task) bool {
	if t.proc == nil {
		return false
	}
	if o.stands&(tooFast|tooSlow) != 0 {
		return true
	}
	for i := range o.groups[:o.count] {
		if g := &o.groups[i]; c.offVolts(g) || !g.heatInside(t.proc) {
			return true
		}
	}
	return false
}

// offVolts tells whether a pass would have to run far off its mode's line.
func (c *catalog) offVolts(g *group) bool {
	free := *g.way
	free.voltLow, free.voltHigh = 0, 0
	return math.Abs(free.voltage(g.current)-g.volts) > c.rules.procedureVolts
}

// heat is the heat input of a pass in kJ/mm, with k; 0 where it has no travel.
func (g *group) heat() float64 {
	if g.travel <= 0 {
		return 0
	}
	return g.way.k * g.volts * g.current * 60 / 1000 / g.travel
}

func (g *group) heatInside(p *tables.Procedure) bool {
	heat := g.heat()
	low, high := float64(p.HeatLow), cmp.Or(float64(p.HeatHigh), math.Inf(1))
	return g.travel <= 0 || heat >= low*(1-1e-9) && heat <= high*(1+1e-9)
}

// procedure says whether a named procedure binds the joint.
func (k *checker) procedure(t *task) {
	if t.proc == nil && len(k.c.set.Procedures) > 0 {
		k.sayf("procedure-unknown", finding.Warning, "procedure %s is named and is not among the shop's procedures%s", t.j.WPS, k.c.nearProcedure(t.j.WPS))
		return
	}
	if t.proc == nil {
		k.sayf("wps-governs", finding.Note, "the row names procedure %s, and no procedures with their ranges are in the shop file", t.j.WPS)
		return
	}
	k.sayFrom("procedure-binds", finding.Note, t.proc.Source, cmp.Or(t.proc.Basis, "shop"), "procedure %s: %s", t.proc.Number, bindingText(t.proc))
}

// nearProcedure names the procedure that a slip of the pen most likely meant.
func (c *catalog) nearProcedure(number string) string {
	var known []string
	for i := range c.set.Procedures {
		known = append(known, c.set.Procedures[i].Number)
	}
	if near := finding.Nearest(number, known); near != "" {
		return "; the nearest is " + near
	}
	return ""
}
