package plan

import (
	"cmp"
	"fmt"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// trace fills in the working of a plan: each formula with the numbers put in, and
// the options that were considered with the reason why they won or lost.
func (c *catalog) trace(p *Plan, t *task, of *offer, n *way) {
	own := t
	if n != nil {
		own = c.filledBy(n, t)
	}
	w := &working{p: p, t: own, c: c}
	w.geometry()
	w.metal()
	if p.Settings {
		o := c.try(n, t)
		w.smallest(&o)
		w.arc(&o)
		w.warmth(n)
		w.quality()
		w.use(&o)
		w.money(&o)
	}
	manner := *p.Manner // others share it
	p.Manner = &manner
	p.Steps = w.steps
	p.Options = c.considered(t, n)
}

// working collects the steps of one joint.
type working struct {
	p     *Plan
	t     *task
	c     *catalog
	steps []Step
}

func (w *working) step(id, what, formula, numbers, result, source, basis string) {
	w.steps = append(w.steps, Step{id, what, formula, numbers, result, source, basis})
}

const geometry = "geometry"

// geometry shows the areas.
func (w *working) geometry() {
	p, t := w.p, w.t
	if t.noArea != "" {
		return
	}
	drawn := number(t.drawn, 2) + " mm²"
	switch p.Prep.Kind {
	case joint.Fillet, joint.Lap:
		if w.skewAreas(drawn) {
			return
		}
		w.step("AREA-1", "area of one seam as drawn", "A = zA zB sin ψ / 2",
			fmt.Sprintf("%s x %s x sin %s° / 2", n2(p.Prep.LegA), n2(p.Prep.LegB), n2(p.Prep.Angle)), drawn, geometry, "derived")
		w.step("AREA-6", "area of one seam as it will be made", "A = zA' zB' sin ψ / 2 + 2/3 c w'²,  z' = z + overweld + gap",
			fmt.Sprintf("z' = %s + %s + %s; c = %s", n2(p.Prep.LegA), n2(w.c.shop.Overweld), number(t.fitGap, 2), number(w.c.shop.Convexity, 3)),
			number(t.made, 2)+" mm²", "geometry; allowances: shop values", "derived")
	case joint.Corner:
		w.step("AREA-7", "area of one seam as drawn", "A = zA zB sin(180° − ψ) / 2",
			fmt.Sprintf("%s x %s x sin(180° − %s°) / 2", n2(p.Prep.LegA), n2(p.Prep.LegB), n2(p.Prep.Angle)), drawn, geometry, "derived")
		w.step("AREA-8", "area of one seam as it will be made", "as AREA-6 without the gap",
			fmt.Sprintf("overweld %s, c = %s", n2(w.c.shop.Overweld), number(w.c.shop.Convexity, 3)), number(t.made, 2)+" mm²", "geometry; allowances: shop values", "derived")
	case joint.Edge, joint.FlareBevel, joint.FlareV, joint.Plug, joint.Slot:
		w.otherAreas(drawn)
	default:
		w.step("AREA-9", "area of one seam as drawn", "A = g s + Σ flanks (d² tan β / 2 for a straight one)", sizesOf(p), drawn, geometry, "derived")
		w.step("AREA-10", "area of one seam as it will be made", "A = drawn + Σ 2/3 (mouth + 2 mm) cap + 2/3 (g + 2 mm) root",
			w.capWords()+", "+w.rootWords(), number(t.made, 2)+" mm²",
			"Filler Metal Data Handbook sec. 8, reinforcement elements; the 2 mm are a shop rule", "derived")
	}
}

func sizesOf(p *Plan) string {
	r := &p.Prep
	return fmt.Sprintf("t %s, g %s, face %s, depths %s and %s, angle %s°, R %s", n2(cmpOr(r.T1, r.T2)), n2(r.Gap), n2(r.RootFace), n2(r.Depth), n2(r.Depth2), n2(r.Angle), n2(r.Radius))
}

// n2 writes any typed figure with up to two decimals.
func n2[T ~float64](v T) string { return number(float64(v), 2) }

// metal shows metres and weld metal.
func (w *working) metal() {
	p, t := w.p, w.t
	if p.Seam <= 0 || t.noArea != "" {
		return
	}
	if t.holeDepth > 0 {
		w.step("SEAM-1", "depth filled in all holes", "L = copies x depth",
			fmt.Sprintf("%s x %s mm", number(t.seams, 0), number(t.holeDepth, 2)), number(float64(p.Seam), 4)+" m", "definition", "derived")
	} else if t.stitch.count > 0 {
		w.step("SEAM-1", "metres welded", "L = copies x sides x segments x length",
			fmt.Sprintf("%s x %d x %s mm", number(t.seams, 0), t.stitch.count, number(t.stitch.segment, 1)), n2(p.Seam)+" m", "ISO 2553 and AWS A2.4 notes", "derived")
	} else {
		w.step("SEAM-1", "metres welded", "L = copies x sides x length",
			fmt.Sprintf("%s x %s mm", number(t.seams, 0), n2(t.j.Length)), n2(p.Seam)+" m", "definition", "derived")
	}
	w.step("METAL-1", "weld metal", "m = A L ρ", fmt.Sprintf("%s mm² x %s m x %s kg/m³", number(float64(p.Area), 2), number(float64(p.Seam), 4), number(t.density, 0)),
		number(float64(p.WeldMetal), 4)+" kg", "density table", "published")
}

// smallest shows the bead that is laid where the one called for is too small for the wire.
func (w *working) smallest(o *outcome) {
	p := w.p
	if p.AreaCalled <= 0 {
		return
	}
	r := &p.Runs[p.Governing]
	if o.melted {
		w.step("ARC-2", "bead that the called current lays", "A = D / (60 ρ v) at the current that the parts call for and the fastest travel",
			fmt.Sprintf("%s / (60 x %s x 10⁻⁹ x %s) = %s mm² a run; %s mm² called for in all", n2(r.Deposit), number(w.t.density, 0), number(float64(r.Travel), 0), n2(r.Area), n2(p.AreaCalled)), n2(p.Area)+" mm²", "definition", "derived")
		return
	}
	if float64(r.Travel) < o.groups[0].hand().High*(1-1e-6) {
		w.step("AMPERES-1", "smallest bead that the wire lays", "the bead that bears the lowest current of the window",
			fmt.Sprintf("%s A; %s mm² called for", number(float64(r.Current), 0), n2(p.AreaCalled)), n2(p.Area)+" mm²", "table of beads", "derived")
		return
	}
	w.step("ARC-2", "smallest bead that the wire lays", "A = D / (60 ρ v) at the lowest current and the fastest travel",
		fmt.Sprintf("%s / (60 x %s x 10⁻⁹ x %s), %s mm² called for", n2(r.Deposit), number(w.t.density, 0), number(float64(r.Travel), 0), n2(p.AreaCalled)), n2(p.Area)+" mm²", "definition", "derived")
}

// arc shows target, window and every kind of pass.
func (w *working) arc(o *outcome) {
	t, n := w.t, o.way
	a := n.targets.family[t.family].row(t.heatT)
	w.step("TARGET-1", "current that the parts call for", "between the anchors of metal, joint family and thickness",
		fmt.Sprintf("thickness %s mm", number(t.heatT, 2)), number(o.wanted, 1)+" A", a.Source, a.Basis)
	w.step("WINDOW-1", "where start settings lie", fmt.Sprintf("%s in %s, %s, %s", n.wire.Filler, cmp.Or(n.gas.Gas, "no gas"), n.mode, positions[n.pos]),
		fmt.Sprintf("window %s to %s A", number(n.low, 0), number(n.high, 0)), fmt.Sprintf("%s to %s A", number(n.start, 0), number(n.top, 0)), n.window.Source, n.window.Basis)
	w.shield(n)
	w.passes(o)
	for i := range o.groups[:o.count] {
		w.pass(&o.groups[i])
	}
}

// pass shows one kind of pass.
func (w *working) pass(g *group) {
	n, t := g.way, w.t
	what := fmt.Sprintf("%s, %d of %s mm²: ", g.kind, g.n, number(g.area, 2))
	w.amperes(g, what)
	w.step("MELT-1", what+"wire feed", "w = 0.06 (a I + b l I²)",
		fmt.Sprintf("0.06 (%g x %s + %g x %s x %s²)", n.a, number(g.current, 0), n.b, number(n.ext, 1), number(g.current, 0)),
		number(g.feed, 2)+" m/min", n.melting.Source, n.melting.Basis)
	w.step("MELT-3", what+"deposition", "D = w q η 60 / 1000",
		fmt.Sprintf("%s x %s x %s x 60 / 1000", number(g.feed, 2), number(n.q, 3), number(n.eff, 3)), number(g.deposit, 3)+" kg/h", n.effRow.Source, n.effRow.Basis)
	if g.travel <= 0 { // a hole filled on the spot
		w.voltage(g, what)
		return
	}
	area, formula := g.area, "v = D / (60 ρ A)"
	if t.holeDepth > 0 { // round in the hole, in a bead of its own area
		area, formula = g.deposit/60/(t.density*1e-9*g.travel), "v = D / (60 ρ A) of a bead round in the hole, inside the procedure's travel and heat"
	}
	w.step("ARC-1", what+"travel", formula,
		fmt.Sprintf("%s / (60 x %s x 10⁻⁹ x %s)", number(g.deposit, 3), number(t.density, 0), number(area, 2)), number(g.travel, 0)+" mm/min", "definition", "derived")
	w.voltage(g, what)
	energy := 60 * g.volts * g.current / (1000 * g.travel)
	w.step("HEAT-1", what+"arc energy", "E = 60 U I / (1000 v)",
		fmt.Sprintf("60 x %s x %s / (1000 x %s)", number(g.volts, 1), number(g.current, 0), number(g.travel, 1)), number(energy, 3)+" kJ/mm", "definition (ISO/TR 18491)", "published")
	w.step("HEAT-2", what+"heat input", "Q = k E", fmt.Sprintf("%g x %s", n.k, number(energy, 3)), number(n.k*energy, 3)+" kJ/mm", "EN 1011-1", "published")
}

// use shows time, wire, gas and energy.
func (w *working) use(o *outcome) {
	p, n, shop := w.p, o.way, w.c.shop
	w.step("MELT-4", "arc time", "T = Σ 60 m / D over the passes", fmt.Sprintf("60 x %s / %s", number(float64(p.WeldMetal), 4), number(float64(p.Deposit), 3)),
		n2(p.Arc)+" min", "definition", "derived")
	w.step("WIRE-1", "wire bought", "m / η x (1 + waste)", fmt.Sprintf("%s / %s x (1 + %g/100)", number(float64(p.WeldMetal), 4), number(p.Efficiency, 3), shop.WastePct),
		number(float64(p.WireKg), 4)+" kg", n.effRow.Source, n.effRow.Basis)
	if !n.gas.Gasless() {
		w.step("GAS-1", "gas", "flow x (arc time + starts x (pre-flow + post-flow))",
			fmt.Sprintf("%s x (%s + %s x %s/60)", number(n.flow.Start, 1), n2(p.Arc), number(o.starts, 1), number(float64(shop.Preflow+shop.Postflow), 2)),
			number(float64(p.GasL), 1)+" l", n.flow.Source, n.flow.Basis)
	}
	w.step("POWER-1", "energy while the arc burns", "Σ U I t / efficiency", fmt.Sprintf("efficiency %g", shop.SourceEfficiency),
		number(o.kwh, 3)+" kWh", "definition", "derived")
	if o.machine != nil {
		w.step("DUTY-2", "arc time that the machine bears", "duty = rated duty x (rated current / I)²", o.machine.row.Name,
			number(100*o.duty, 0)+" %", "Power-source manual 0-2510 p.21 sec.2.06", "published")
	}
}

// money shows labour and cost.
func (w *working) money(o *outcome) {
	l, s := o.cost.Labour, w.c.shop
	w.step("COST-1", "labour", "joint + fit-up + cleaning + between passes + arc + idle + rework, times the site factor",
		fmt.Sprintf("(%s + %s + %s + %s + %s + %s + %s) x %s", n2(l.Joint), n2(l.Fitup), n2(l.Clean), n2(l.BetweenPass), n2(l.Arc), n2(l.Idle), n2(l.Rework), number(l.SiteFactor, 2)),
		n2(l.Total)+" min", "shop values", "derived")
	k := o.cost
	w.step("COST-8", "cost", "labour + wire + gas + power + other",
		fmt.Sprintf("%s + %s + %s + %s + %s", n2(k.LabourCost), n2(k.Wire), n2(k.Gas), n2(k.Power), n2(k.Other)), n2(k.Total)+" "+s.Currency, "shop values", "derived")
	w.step("COST-9", "price", "cost / (1 - margin / 100)", fmt.Sprintf("%s / (1 - %g/100)", n2(k.Total), s.MarginPct), n2(k.Price)+" "+s.Currency, "shop values", "derived")
}

// considered tries every way open to the joint and says why each won or lost.
func (c *catalog) considered(t *task, chosen *way) []Option {
	if t.noSettings != "" {
		return nil
	}
	var out []Option
	var own *outcome
	var all []outcome
	for _, n := range c.waysOf(t) {
		if !c.mayTry(n, t) {
			continue
		}
		all = append(all, c.try(n, t))
		o := &all[len(all)-1]
		if o.stands == 0 && (own == nil || o.demerit < own.demerit || o.demerit == own.demerit && o.cost.Total < own.cost.Total) {
			best := *o
			own = &best
		}
	}
	for i := range all {
		out = append(out, c.option(&all[i], c.filledBy(all[i].way, t), own, chosen))
	}
	return out
}

// option is one way with the reason why it won or lost.
func (c *catalog) option(o *outcome, t *task, own *outcome, chosen *way) Option {
	n := o.way
	out := Option{Process: n.process, Filler: n.wire.Filler, Dia: n.wire.Dia, Gas: n.gas.Gas, Transfer: n.mode,
		Feasible: o.stands == 0, Chosen: n == chosen, Passes: o.passes, Arc: units.Minute(o.arc), Cost: o.cost.Total}
	if o.machine != nil {
		out.Machine = o.machine.row.Name
	}
	if o.count > 0 {
		out.Current = units.Amp(o.groups[o.governed].current)
	}
	out.Why = c.reason(o, t, own, chosen)
	return out
}

// reason says why a way won or lost.
func (c *catalog) reason(o *outcome, t *task, own *outcome, chosen *way) string {
	isOwn := own != nil && own.way == o.way
	money := func(v units.Money) string { return n2(v) + " " + c.shop.Currency }
	switch {
	case o.way == chosen && o.stands != 0:
		return "taken because the list asks for it; see the checks"
	case o.way == chosen && isOwn:
		return "cheapest for this joint, and in use for the list"
	case o.way == chosen:
		return fmt.Sprintf("taken for the list: saves a change-over and an opened spool or cylinder; this joint alone would be cheaper with %s %s mm in %s by %s",
			own.way.wire.Filler, number(own.way.dia, 1), own.way.gas.Gas, money(o.cost.Total-own.cost.Total))
	case o.stands != 0:
		if list := c.obstacleChecks(o, t); len(list) > 0 {
			return list[len(list)-1].text
		}
		return "cannot lay this joint"
	case isOwn:
		return "cheapest for this joint alone, but not worth a change-over and an opened spool or cylinder for the list"
	case own != nil && o.demerit > own.demerit:
		return c.demeritReason(o, t)
	case own != nil:
		return "dearer by " + money(o.cost.Total-own.cost.Total) + " than the cheapest for this joint"
	}
	return ""
}

// demeritReason says why a feasible way stands behind others whatever it costs.
func (c *catalog) demeritReason(o *outcome, t *task) string {
	switch {
	case o.called > 0:
		return fmt.Sprintf("lays %s mm² at least where %s mm² are called for", number(o.groups[0].area, 1), number(o.called, 1))
	case t.slagOverNothing(c, o.way):
		return "its slag runs into a root that has nothing behind it"
	case t.sprayOverNothing(o.way):
		return "it has no short arc for a root that has nothing behind it"
	case o.way.mode == ShortArc && t.thin > c.rules.shortArcThick:
		return "short arc may not melt the side walls of thick plate"
	case o.way.mode != ShortArc && o.way.wire.Metal != "aluminium" && t.thin < c.rules.thinPlate:
		return "thin plate is welded in short arc first"
	case t.thin >= c.rules.thinPlate && o.way.top < c.rules.weakShare*o.wanted:
		return fmt.Sprintf("too weak: it gives %s A at most where the parts call for %s A", number(o.way.top, 0), number(o.wanted, 0))
	case o.way.pulseUnstated:
		return "needs a pulse machine, which the shop has not named"
	}
	return "second choice of filler for these materials"
}
