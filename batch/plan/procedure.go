package plan

import (
	"cmp"
	"fmt"
	"math"
	"strings"

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
	t.wish = c.readWish(&joint.Joint{Process: p.Process, Wire: wire, Gas: p.Gas, Machine: t.j.Machine})
	t.wish.named = true
	if text := wrongRange(p); text != "" {
		t.refuse("its row in the table of procedures has %s", text)
	}
	c.narrowWish(t)
	t.refuseConflicts(c, own)
	switch thin := t.thinner(); {
	case p.TLow > 0 && thin > 0 && thin < p.TLow-0.005, p.THigh > 0 && thin > p.THigh+0.005:
		t.refuse("the thinner part is %s; the procedure is for %s to %s", mmText(float64(thin)), mmText(float64(p.TLow)), mmText(float64(p.THigh)))
	}
	if t.pos >= 0 && p.Positions != "" && !hasWord(p.Positions, positions[t.pos]) {
		t.refuse("the position is %s; the procedure is for %s", positions[t.pos], p.Positions)
	}
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

// refuse keeps the joint without settings because its procedure does not cover it.
func (t *task) refuse(format string, args ...any) {
	t.wish.refuse(unmet, fmt.Sprintf("procedure %s: ", t.j.WPS)+fmt.Sprintf(format, args...))
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
	if t.proc == nil || t.holeDepth > 0 {
		return false
	}
	if o.stands&(tooFast|tooSlow) != 0 {
		return true
	}
	if c.tooFarFromVolts(o) {
		return true
	}
	low, high := float64(t.proc.HeatLow), cmp.Or(float64(t.proc.HeatHigh), math.Inf(1))
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		if heat := g.way.k * g.volts * g.current * 60 / 1000 / g.travel; heat < low*(1-1e-9) || heat > high*(1+1e-9) {
			return true
		}
	}
	return false
}

// tooFarFromVolts tells whether a pass would have to run far off its mode's line.
func (c *catalog) tooFarFromVolts(o *outcome) bool {
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		free := *g.way
		free.voltLow, free.voltHigh = 0, 0
		if math.Abs(free.voltage(g.current)-g.volts) > c.rules.procedureVolts {
			return true
		}
	}
	return false
}

// bindingText says what the procedure binds, for the note on the joint.
func bindingText(p *tables.Procedure) string {
	text := "planned inside its ranges"
	for _, r := range rangesOf(p) {
		if limit := limits(r.low, r.high, r.unit); limit != "" {
			text += ", " + limit
		}
	}
	return text
}

// limitRange is one range of a procedure.
type limitRange struct {
	what      string
	low, high float64
	unit      string
}

// rangesOf are the ranges that the arc must keep to.
func rangesOf(p *tables.Procedure) []limitRange {
	return []limitRange{
		{"current", float64(p.CurrentLow), float64(p.CurrentHigh), "A"}, {"voltage", float64(p.VoltageLow), float64(p.VoltageHigh), "V"},
		{"travel", float64(p.TravelLow), float64(p.TravelHigh), "mm/min"}, {"heat", float64(p.HeatLow), float64(p.HeatHigh), "kJ/mm"},
	}
}

// limits words a range; an open end is no figure. Empty: open at both ends.
func limits(low, high float64, unit string) string {
	switch {
	case low > 0 && high > 0:
		return fmt.Sprintf("%s to %s %s", plainly(low), plainly(high), unit)
	case high > 0:
		return fmt.Sprintf("up to %s %s", plainly(high), unit)
	case low > 0:
		return fmt.Sprintf("from %s %s", plainly(low), unit)
	}
	return ""
}

// plainly writes a figure of a procedure without needless digits.
func plainly(v float64) string { return fmt.Sprintf("%g", math.Round(v*1000)/1000) }

// ProcedureText words a procedure on one line.
func ProcedureText(p *tables.Procedure) string {
	wire := p.Filler
	if p.Dia > 0 {
		wire = strings.TrimSpace(wire + " " + mmText(float64(p.Dia)))
	}
	text := ""
	add := func(s string) {
		if s != "" && text != "" {
			text += ", "
		}
		text += s
	}
	add(p.Process)
	add(wire)
	add(p.Gas)
	add(p.Positions)
	add(limits(float64(p.TLow), float64(p.THigh), "mm"))
	for _, r := range rangesOf(p) {
		add(limits(r.low, r.high, r.unit))
	}
	if p.Preheat > 0 {
		add(fmt.Sprintf("preheat %g °C", float64(p.Preheat)))
	}
	return text
}

// procedure says whether a named procedure binds the joint.
func (k *checker) procedure(t *task) {
	if t.proc == nil {
		k.sayf("wps-governs", finding.Note, "procedure %s is named", t.j.WPS)
		return
	}
	k.sayFrom("procedure-binds", finding.Note, t.proc.Source, cmp.Or(t.proc.Basis, "shop"), "procedure %s: %s", t.proc.Number, bindingText(t.proc))
}

// whyOutside says which limit of the procedure stands in the way.
func (c *catalog) whyOutside(t *task) string {
	head, volts := fmt.Sprintf("procedure %s: ", t.proc.Number), ""
	for _, n := range c.waysOf(t) {
		o := c.try(n, t)
		if o.count == 0 {
			continue
		}
		g := &o.groups[o.governed]
		name := fmt.Sprintf("%s %s mm %s, a run of %s mm² at %s A", n.wire.Filler, number(n.dia, 1), n.mode, number(g.area, 1), number(g.current, 0))
		heat := n.k * g.volts * g.current * 60 / 1000 / g.travel
		switch {
		case o.stands&noMachine != 0:
			return head + fmt.Sprintf("no machine of the shop gives %s A and %s m/min", number(g.current, 0), number(g.feed, 1))
		case o.stands&tooFast != 0:
			return head + name + fmt.Sprintf(" travels at %s mm/min; the procedure and a steady hand allow up to %s", number(g.travel, 0), number(float64(n.travel[0].High), 0))
		case o.stands&tooSlow != 0:
			return head + name + fmt.Sprintf(" travels at %s mm/min; the procedure and the position ask for %s and more", number(g.travel, 0), number(float64(n.travel[0].Low), 0))
		case c.tooFarFromVolts(&o):
			volts = head + name + fmt.Sprintf(" wants other volts than the %g to %g of the procedure", float64(t.proc.VoltageLow), float64(t.proc.VoltageHigh))
		case c.outside(&o, t):
			return head + name + fmt.Sprintf(" takes %s kJ/mm; the procedure allows %s to %s", number(heat, 2), number(float64(t.proc.HeatLow), 2), number(float64(t.proc.HeatHigh), 2))
		case o.stands != 0:
			if list := c.obstacleChecks(&o, t); len(list) > 0 {
				return head + list[len(list)-1].text
			}
		}
	}
	if volts != "" { // said last: another mode of the same wire may have come nearer
		return volts
	}
	return head + "its wire, gas and position leave no current and travel that the tables know"
}
