package plan

import (
	"fmt"
	"math"
	"strings"
)

// whyOutside says which limits of the procedure stand in the way, of every pass
// that leaves one: of the way of welding that comes nearest.
func (c *catalog) whyOutside(t *task) string {
	head, best, least := "procedure "+t.proc.Number+": ", "", math.MaxInt
	for _, n := range c.waysOf(t) {
		o := c.try(n, t)
		if o.count == 0 {
			continue
		}
		text, faults := c.leaves(&o, t)
		if text != "" && faults < least {
			best, least = text, faults
		}
	}
	if best == "" {
		best = "its wire, gas and position leave no current and travel that the tables know"
	}
	return head + best
}

// Ranks of what an outcome lacks, besides the number of passes outside: another
// mode of the same wire may come nearer than one that wants other volts.
const (
	faultOther = 100
	faultVolts = 1000
)

// leaves words what keeps an outcome from the procedure, and counts it.
func (c *catalog) leaves(o *outcome, t *task) (text string, faults int) {
	n, g := o.way, &o.groups[o.governed]
	if o.stands&noMachine != 0 {
		return fmt.Sprintf("no machine of the shop gives %s A and %s m/min", number(g.current, 0), number(g.feed, 1)), faultOther / 2
	}
	var parts []string
	add := func(out []string, rank int, tail string) {
		if len(out) > 0 {
			parts, faults = append(parts, strings.Join(out, ", ")+tail), faults+rank*len(out)
		}
	}
	travel := travelOf(n)
	if t.proc.TravelLow <= 0 && t.proc.TravelHigh <= 0 {
		add(c.travelOutside(o, t), 1, "; a steady hand and the position ask for "+travel.allowed())
	} else {
		add(c.travelOutside(o, t), 1, "; the procedure, a steady hand and the position ask for "+travel.allowed())
	}
	ranges := rangesOf(t.proc)
	add(o.runsWhere(t, func(g *group) bool { return !g.heatInside(t.proc) }, func(g *group) string { return "takes " + number(g.heat(), 2) + " kJ/mm" }), 1,
		"; the procedure allows "+ranges[3].allowed())
	add(o.runsWhere(t, c.offVolts, func(g *group) string { return "wants other volts than " + number(g.volts, 1) }), faultVolts, "; the procedure allows "+ranges[1].allowed())
	if len(parts) == 0 && o.stands != 0 {
		if list := c.obstacleChecks(o, t); len(list) > 0 {
			return list[len(list)-1].text, faultOther
		}
	}
	if len(parts) == 0 {
		return "", 0
	}
	return fmt.Sprintf("%s %s mm %s: %s", n.wire.Filler, number(n.dia, 1), n.mode, strings.Join(parts, ". ")), faults
}

// travelOf is the travel that a way allows over all its techniques.
func travelOf(n *way) limitRange {
	r := limitRange{"travel", math.Inf(1), 0, "mm/min"}
	for _, row := range n.travel {
		r.low, r.high = min(r.low, row.Low), max(r.high, row.High)
	}
	return r
}

// travelOutside words the passes whose travel leaves what their way allows.
func (c *catalog) travelOutside(o *outcome, t *task) []string {
	if t.holeDepth > 0 {
		if o.stands&(tooSlow|tooFast) == 0 {
			return nil
		}
		g := &o.groups[0]
		return []string{g.named(t) + " finds no travel that keeps to the procedure's travel and heat together"}
	}
	return o.runsWhere(t, func(g *group) bool {
		r := travelOf(g.way)
		return g.travel > r.high*(1+1e-9) || g.travel < r.low*(1-1e-9)
	}, func(g *group) string { return "travels at " + number(g.travel, 0) + " mm/min" })
}

// runsWhere words every pass, equal ones together, of which something holds.
func (o *outcome) runsWhere(t *task, holds func(*group) bool, what func(*group) string) []string {
	var out []string
	for i := range o.groups[:o.count] {
		if g := &o.groups[i]; holds(g) {
			out = append(out, g.named(t)+" "+what(g))
		}
	}
	return out
}

// named names the passes of a group by what they are, with area and current.
func (g *group) named(t *task) string {
	name := map[RunKind]string{Single: "the one run", Root: "the root", Fill: "each fill or cap run", Cap: "the cap", Back: "the back run"}[g.kind]
	if t.holeDepth > 0 {
		name = "each layer in the hole"
	} else if t.leg > 0 && !t.openRoot && g.kind == Fill {
		name = "each run"
	}
	if g.side == 2 && g.kind != Back {
		name += " of the second side"
	}
	return fmt.Sprintf("%s, %s mm² at %s A,", name, number(g.area, 1), number(g.current, 0))
}
