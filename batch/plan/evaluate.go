package plan

import (
	"math"
	"slices"

	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// group is a number of equal passes of one seam.
type group struct {
	n         int
	side      int
	kind      RunKind
	way       *way
	area      float64 // of one pass, with allowances, mm²
	full      float64 // of a pass over a root: what the largest of the way has, mm²; 0: the area itself counts
	wanted    float64 // what the parts call for, A
	borne     float64 // what a bead of the area bears, A
	current   float64
	volts     float64
	feed      float64 // m/min
	deposit   float64 // kg/h
	travel    float64 // mm/min
	technique string
	width     float64
}

// obstacle is what stands in the way of a manner of welding, gravest last: those
// from impossible on cannot be obeyed even where the user asks for it.
type obstacle uint16

const (
	tooHot       obstacle = 1 << iota // the window begins above what the sheet bears
	belongsShort                      // the target lies in the short-arc part
	plateTooThin                      // thinner than the wire is meant for
	tooSmall                          // leg or pass smaller than the wire lays
	beadSmall                         // the window begins above what the bead bears
	tooFast                           // travel above the range at the lowest current
	tooSlow                           // travel below the range even in small passes
	alThick                           // aluminium in short arc above its thickness
	noMachine                         // no machine of the shop bears it
	noMetal                           // no area: nothing to lay
)

// outcome is one way of welding tried on one joint.
type outcome struct {
	way      *way
	stands   obstacle // zero: feasible
	demerit  int      // 0 is best; a better demerit beats any saving
	groups   [4]group
	count    int // groups in use
	passes   int
	machine  *machine
	duty     float64
	wireKg   float64
	arc      float64 // minutes, all copies
	gas      float64 // litres
	starts   float64
	kwh      float64
	wanted   float64 // target current
	called   float64 // mm² of the bead called for, where a larger one is laid; 0: as called
	melted   bool    // it is larger because the thickness calls for its current
	cost     rates.Cost
	governed int   // index of the governing group
	laid     *laid // of the joint's form; nil: not shared
}

// try plans one joint in one way of welding.
func (c *catalog) try(n *way, t *task) outcome {
	o := c.lay(n, t)
	if o.count > 0 {
		c.quantities(&o, t)
	}
	return o
}

// tried is try, from what the joint's form knows already where it does.
func (c *catalog) tried(n *way, t *task) outcome {
	known := t.form.found(n)
	if known == nil {
		return c.try(n, t)
	}
	o := *known
	if t.kept != nil {
		c.pickMachine(&o, t)
	}
	c.quantities(&o, t)
	return o
}

// lay lays the passes of a joint in one way of welding and picks the machine.
func (c *catalog) lay(n *way, t *task) outcome {
	t = c.filledBy(n, t)
	o := c.before(n, t)
	c.layOut(&o, t)
	return o
}

// before is what of a way is known before any pass is laid. What stands in the way then
// stands in the end, and the demerit does not fall: only swell changes it, to what lies
// above all of these.
func (c *catalog) before(n *way, t *task) (o outcome) {
	o.way = n
	o.wanted = target(n.targets.family[t.family].points, t.heatT)
	o.stands, o.demerit = c.obstacles(n, t, o.wanted)
	return o
}

// layOut lays the passes and picks the machine.
func (c *catalog) layOut(o *outcome, t *task) {
	c.layPasses(o, t)
	if o.count == 0 {
		o.stands |= noMetal
		return
	}
	c.swell(o, t)
	c.melt(o, t)
	c.pickMachine(o, t)
}

// obstacles judges what can be judged before any pass is laid.
func (c *catalog) obstacles(n *way, t *task, wanted float64) (stands obstacle, demerit int) {
	switch {
	case n.start*c.rules.thinShare <= wanted:
	case n.mode == ShortArc && n.low*c.rules.hotShare <= wanted:
		demerit += lastResort // told, see choice
	default:
		stands |= tooHot
	}
	if wanted < n.boundary {
		stands |= belongsShort
	}
	if t.thin < n.pass.MinT-0.05 {
		stands |= plateTooThin
	}
	if t.leg > 0 && t.leg < n.pass.MinLeg-0.01 {
		stands |= tooSmall
	}
	if n.mode == ShortArc {
		if n.wire.Metal == "aluminium" && t.thin > c.rules.alShortArc {
			stands |= alThick
		}
		if t.thin > c.rules.shortArcThick {
			demerit += 2
		}
	}
	if n.pulseUnstated {
		demerit++
	}
	if n.mode != ShortArc && n.wire.Metal != "aluminium" && t.thin < c.rules.thinPlate {
		demerit++
	}
	if short := c.rules.weakShare*min(wanted, n.most()) - n.top; t.thin >= c.rules.weakFrom && short > 0 {
		demerit += 1 + int(short/(c.rules.weakStep*wanted)) // of several that are too weak, the least weak
	}
	if t.slagOverNothing(c, n) || t.sprayOverNothing(n) {
		demerit += lastResort
	}
	return stands, demerit + t.rank(c, n)
}

// lastResort is a demerit beyond all others together: such a way is taken only where
// there is no other, or where the list asks for it.
const lastResort = 1000

// slagOverNothing tells whether a root that is welded through from one side would be
// laid with a wire whose slag runs into it and through it.
func (t *task) slagOverNothing(c *catalog, n *way) bool {
	open := t.openRoot || t.prep.Gap > 0 || float64(t.prep.RootFace) < c.rules.closedFace
	return t.oneSided && open && n.rootWay.slag
}

// sprayOverNothing tells whether an open root of steel would be laid in a transfer
// that falls through it.
func (t *task) sprayOverNothing(n *way) bool {
	mode := n.rootWay.mode
	return t.oneSided && t.openRoot && t.metal != "aluminium" && (mode == Spray || mode == Globular)
}

// current limits a target to the inner part of the window.
func (n *way) clamp(current float64) float64 {
	return max(n.start, min(current, n.top))
}

// lay sets a group's current as high as the target and the travel range allow,
// and tells what stands in the way.
func (g *group) lay(wanted, density float64) obstacle {
	n := g.way
	g.wanted = wanted
	best := obstacle(tooFast)
	bears := g.bears()
	g.borne = bears
	goal := n.clamp(min(wanted, bears))
	for _, r := range n.travel {
		current := min(goal, n.currentAt(n.feedFor(depositFor(r.High, g.area, density))))
		stands := obstacle(0)
		if current < n.start*(1-1e-9) {
			current, stands = n.start, tooFast
		}
		feed := n.feed(current)
		deposit := n.deposit(feed)
		travel := travelAt(deposit, g.area, density)
		if travel < r.Low*(1-1e-9) {
			stands = tooSlow
		}
		if g.technique == "" || stands < best || stands == best && current > g.current {
			best = stands
			g.current, g.feed, g.deposit, g.travel, g.technique = current, feed, deposit, travel, r.Technique
		}
	}
	g.volts = n.voltage(g.current)
	g.width = n.pass.Width
	if n.start > bears*(1+1e-9) {
		best |= beadSmall
	}
	return best
}

// largestPass returns the largest pass area in mm² that the way lays at its
// target without falling below its slowest travel.
func (n *way) largestPass(wanted, density float64) float64 {
	deposit := n.deposit(n.feed(n.clamp(wanted)))
	slowest := math.Inf(1)
	for _, r := range n.travel {
		slowest = min(slowest, r.Low)
	}
	return deposit / 60 / (density * 1e-9 * slowest)
}

// pickMachine chooses the lightest machine for the largest current.
func (c *catalog) pickMachine(o *outcome, t *task) {
	most := 0.0
	for i := range o.groups[:o.count] {
		most = max(most, o.groups[i].current)
	}
	o.machine, o.duty = o.way.pick(most, c.shop.OperatingFactor, t.wish.machine)
	if m := t.kept; m != nil && o.machine != nil && slices.Contains(o.way.machines, m) && m.bears(o.way, most) && m.duty(most) >= o.duty {
		o.machine, o.duty = m, m.duty(most)
	}
	if o.machine == nil && (c.machinesNamed || t.wish.machine != "") {
		o.stands |= noMachine
	}
	if o.machine == nil {
		o.duty = 1
	}
}

// quantities works out wire, time, gas and energy of the joint and its cost.
func (c *catalog) quantities(o *outcome, t *task) {
	shop := c.shop
	var perM, ui, wire, biggest float64 // minutes, V A min, kg per metre of seam
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		mass := t.density * g.area * 1e-6 * float64(g.n) // kg per metre
		minutes := mass / g.deposit * 60
		perM += minutes
		ui += g.volts * g.current * minutes
		wire += mass / g.way.eff
		o.passes += g.n
		if g.area > biggest*(1+1e-9) {
			biggest, o.governed = g.area, i
		}
	}
	o.arc = perM * t.seam
	o.wireKg = wire * t.seam * (1 + shop.WastePct/100)
	o.starts = t.startsPerPass * float64(o.passes)
	o.gas = o.way.flow.Start * (o.arc + o.starts*float64(shop.Preflow+shop.Postflow)/60)
	o.kwh = ui * t.seam / 60 / 1000 / c.efficiency(o)
	slag := 0.0
	if o.way.slag {
		slag = t.seam * float64(o.passes)
	}
	o.cost = rates.CostOf(rates.Quantities{
		Qty: t.j.Qty, Seam: units.Metre(t.seam), Seams: t.seams, Passes: o.passes, Arc: units.Minute(o.arc),
		Site: t.site, DutyCap: o.duty, WireKg: units.Kg(o.wireKg), WirePerKg: units.Money(o.way.perKg),
		Gas: units.Litre(o.gas), GasPerLitre: units.Money(o.way.perLitre), ArcEnergy: units.KWh(o.kwh),
		Transfer: string(o.way.mode), GasName: o.way.gas.Gas, SlagRuns: units.Metre(slag), Metal: o.way.wire.Metal,
	}, shop)
}

// efficiency is the source efficiency that the shop states.
func (c *catalog) efficiency(*outcome) float64 { return c.shop.SourceEfficiency }
