package plan

import (
	"math"

	"seamtally/batch/units"
)

// plan writes out what was worked out for one joint: geometry and metal always,
// settings where a way was chosen.
func (c *catalog) plan(p *Plan, t *task, of *offer, n *way) {
	if n != nil {
		t = c.filledBy(n, t)
	}
	*p = Plan{Joint: t.j, Seam: units.Metre(t.seam), Segments: t.segments, WeldMetal: units.Kg(t.density * t.made * 1e-6 * t.seam)}
	if n == nil {
		p.Manner = c.geometryOf(t)
		p.NoSettings = t.noSettings
		if p.NoSettings == "" {
			p.NoSettings = "no settings: " + c.whyNothing(t)
		}
		c.checkBare(p, t)
		return
	}
	o := c.tried(n, t)
	totals(p, &o)
	p.WeldMetal *= units.Kg(o.growth())
	t.gasless = n.gas.Gasless()
	trigger := c.trigger(t)
	if p.Manner = t.form.manner(&o, trigger); p.Manner == nil {
		p.Manner = c.geometryOf(t)
		o.grown(p, t)
		p.Settings = true
		c.waySettings(p, t, &o)
		c.deposition(p, t, &o)
		c.heat(p, t, &o)
		c.sentences(p, t, &o, trigger)
		p.Cautions = c.cautions(t, n.wire)
		t.form.share(&o, trigger, p.Manner)
	}
	c.check(p, t, &o, of)
}

// geometryOf returns the geometry and the metal of a joint only.
func (c *catalog) geometryOf(t *task) *Manner {
	m := &Manner{Branch: t.branch, Prep: t.prep, Assumed: t.assumed, Density: units.KgM3(t.density), PositionAWS: c.awsPosition(t.j)}
	if t.mat != nil {
		m.MetalGroup = t.metal
	}
	m.AreaDrawn, m.Area = units.MM2(t.drawn), units.MM2(t.made)
	m.Shrink = shrinkRange(t, m.Area)
	m.Limits = c.limitsOf(t)
	return m
}

// waySettings fills in the wire, the gas, the passes and the windows.
func (c *catalog) waySettings(p *Plan, t *task, o *outcome) {
	n := o.way
	p.Process, p.ProcessAWS, p.Filler, p.FillerAWS, p.Dia = n.process, c.set.AWSProcess(n.process), n.wire.Filler, n.wire.AWS, n.wire.Dia
	p.Gas, p.GasMix, p.Transfer = n.gas.Gas, n.gas.Mix, n.mode
	if o.machine != nil {
		p.Machine, p.Source = o.machine.row.Name, o.machine.row
	}
	p.Slag = n.slag
	if c.softFeed(n) != nil {
		p.Gun = "push-pull or spool gun"
	}
	p.Runs = o.runsOf(t, c.rules.band)
	p.Governing = governing(p.Runs)
	g := &o.groups[o.governed]
	p.Current, p.WireFeed = g.bands(c.rules.band)
	p.Voltage = Window{g.volts, round(g.volts-g.way.volts.Band, 1), round(g.volts+g.way.volts.Band, 1)}
	p.Travel = Window{g.travel, g.travel * (1 - c.rules.travelBand), g.travel * (1 + c.rules.travelBand)}
	if t.proc != nil {
		p.Voltage = p.Voltage.inside(float64(t.proc.VoltageLow), float64(t.proc.VoltageHigh))
		p.Travel = p.Travel.inside(float64(t.proc.TravelLow), float64(t.proc.TravelHigh))
		for i := range p.Runs {
			p.Runs[i].Volts = p.Runs[i].Volts.inside(float64(t.proc.VoltageLow), float64(t.proc.VoltageHigh))
		}
	}
	p.GasFlow = Window{n.flow.Start, n.flow.Low, n.flow.High}
	p.Stickout = Window{g.way.stick.Start, g.way.stick.Low, g.way.stick.High}
	p.LinearMass = units.GramM(n.q)
	p.Duty = o.duty
}

// bands returns the currents in A around that of the group, a share of it to either
// side as far as the wire bears them, and the wire feeds in m/min that bring them.
func (g *group) bands(share float64) (current, feed Window) {
	low, high := max(g.current*(1-share), min(g.way.low, g.current)), min(g.current*(1+share), max(g.way.high, g.current))
	current = Window{g.current, min(math.Ceil(low-1e-9), g.current), max(math.Floor(high+1e-9), g.current)} // whole amperes where they hold the start
	return current, Window{g.feed, g.way.feed(current.Low), g.way.feed(current.High)}
}

// governing returns the index of the pass with the largest area, the first of equals.
func governing(runs []Run) int {
	best := 0
	for i := range runs {
		if float64(runs[i].Area) > float64(runs[best].Area)*(1+1e-9) {
			best = i
		}
	}
	return best
}

// totals fills in what the joint uses and what it costs.
func totals(p *Plan, o *outcome) {
	p.Arc, p.Starts, p.GasL = units.Minute(o.arc), o.starts, units.Litre(o.gas)
	p.WireKg = units.Kg(o.wireKg)
	p.WireM = units.Metre(o.wireKg * 1000 / o.way.q)
	p.Cost = o.cost
}

// deposition fills in what the passes deposit together, and how much of the wire.
func (c *catalog) deposition(p *Plan, t *task, o *outcome) {
	perM, metal, melted := 0.0, 0.0, 0.0
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		mass := t.density * g.area * 1e-6 * float64(g.n)
		perM += mass / g.deposit * 60
		metal += mass
		melted += mass / g.way.eff
	}
	if perM > 0 {
		p.Deposit, p.Efficiency = units.KgH(metal/perM*60), metal/melted
	}
}

// run returns one pass of the group; share is what its current may be off.
func (g *group) run(number, layer, bead int, density, share float64) Run {
	_, feed := g.bands(share)
	energy := 0.0 // of a hole filled on the spot there is none per length
	if g.travel > 0 {
		energy = 60 * g.volts * g.current / (1000 * g.travel) // HEAT-1
	}
	return Run{
		Number: number, Layer: layer, Bead: bead, Side: g.side, Kind: g.kind, Transfer: g.way.mode,
		Area: units.MM2(g.area), Current: units.Amp(g.current), Voltage: units.Volt(g.volts),
		WireFeed: units.MMin(g.feed), Travel: units.MMMin(g.travel),
		ArcEnergy: units.KJMM(energy), Heat: units.KJMM(g.way.k * energy),
		Deposit: units.KgH(g.deposit), Arc: units.Minute(density * g.area * 1e-6 / g.deposit * 60),
		Technique: g.technique, Feed: feed,
		Stickout: Window{g.way.stick.Start, g.way.stick.Low, g.way.stick.High},
		GasFlow:  Window{g.way.flow.Start, g.way.flow.Low, g.way.flow.High},
		Volts:    Window{g.volts, round(g.volts-g.way.volts.Band, 1), round(g.volts+g.way.volts.Band, 1)},
	}
}

// heat fills in the largest heat of any pass and, for ferritic steel, what
// follows from it.
func (c *catalog) heat(p *Plan, t *task, o *outcome) {
	for _, r := range p.Runs {
		p.HeatMax, p.ArcEnergyMax = max(p.HeatMax, r.Heat), max(p.ArcEnergyMax, r.ArcEnergy)
	}
}

// trigger tells how the trigger of the gun is held: short or long.
func (c *catalog) trigger(t *task) string {
	run := float64(t.j.Length)
	if t.stitch.count > 0 {
		run = t.stitch.segment
	}
	if t.holeDepth > 0 {
		run = 0
	}
	if run > c.rules.latchMM {
		return "long"
	}
	return "short"
}

// shortFirst returns short arc where any pass runs so, a root below passes in spray above
// all, else the way's own mode: the inductance does its work there and is of no account
// in the others.
func shortFirst(n *way, runs []Run) Transfer {
	for i := range runs {
		if runs[i].Transfer == ShortArc {
			return ShortArc
		}
	}
	return n.mode
}

// sentences fills in the sentences for the welder.
func (c *catalog) sentences(p *Plan, t *task, o *outcome, trigger string) {
	n, thin := o.way, ""
	if t.thin <= c.rules.thinInductance {
		thin = "thin"
	}
	p.Polarity = c.words("polarity", n, n.mode, n.wire.Polarity)
	p.Torch = c.words("torch", n, n.mode, "")
	for i := range p.Runs {
		r := &p.Runs[i]
		if r.Torch = p.Torch; r.Transfer != n.mode {
			r.Torch = c.words("torch", n, r.Transfer, "")
		}
	}
	p.Trigger = c.words("trigger", n, n.mode, trigger)
	p.Inductance = c.words("inductance", n, shortFirst(n, p.Runs), thin)
	p.Technique = c.words("technique", n, n.mode, o.groups[o.governed].technique)
}
