package plan

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// choice judges the wire, gas and mode that the plan took.
func (k *checker) choice(t *task, o *outcome, of *offer) {
	n := o.way
	if of.forced {
		for _, c := range k.c.obstacleChecks(o, t) {
			k.sayReason(c, finding.Warning, c.text)
		}
	}
	if len(t.wish.wires) > 0 && !t.suits(n) {
		level := finding.Warning
		if n.wire.Metal != t.metal { // steel wire on stainless: never, whoever asks
			level = finding.Error
		}
		if takes := t.takesFiller(); takes != "" {
			k.sayf("wire-metal", level, "%s is asked for; the materials take %s", n.wire.Filler, takes)
		} else {
			k.sayf("wire-metal", level, "%s is asked for; "+noFiller, n.wire.Filler)
		}
	}
	k.never(t, n)
	k.softer(t, n)
	switch {
	case t.slagOverNothing(k.c, n):
		k.sayf("root-open", finding.Warning, "the root has nothing behind it, and %s leaves a slag", n.wire.Filler)
	case t.sprayOverNothing(n):
		k.sayf("root-open", finding.Warning, "the root has nothing behind it, and %s %s mm is welded in %s", n.wire.Filler, number(n.dia, 1), n.rootWay.mode)
	case t.openRoot && t.oneSided && n.dia > k.c.book.value("root-open")+tinyDia:
		k.sayf("root-open", finding.Warning, "the root has nothing behind it, and wire of %s mm runs at %s A in it", number(n.dia, 1), number(o.groups[0].current, 0))
	}
	if o.stands&tooHot == 0 && n.start*k.c.rules.thinShare > o.wanted*(1+1e-9) {
		k.sayf("too-hot", finding.Warning, begins, n.named(), number(n.start, 0), number(o.wanted, 0))
	}
	k.shielding(t, o)
	if n.mode == ShortArc && t.thin > k.c.rules.shortArcThick {
		k.say(k.c.book.first("short-arc-thick"), finding.Warning, "short arc on %s may not melt the sides of the joint", mmText(t.thin))
	}
	if n.mode == ShortArc {
		k.say(k.c.book.first("short-arc-aws"), finding.Note, "planned in short arc, for which the code has no ready-made procedure")
	}
	k.stock(n.wireStock, n.perKg, "%s mm is not in the shop's stock", n.wire.Filler+" "+number(n.dia, 1))
	k.stock(n.gasStock, n.perLitre, "the gas %s is not in the shop's stock", n.gas.Gas)
}

// softer tells a butt of quenched and tempered steel whose weld metal is softer than the
// plate: what carries as much as the plate asks for a matching wire and its procedure.
func (k *checker) softer(t *task, n *way) {
	r := k.c.book.first("wire-softer")
	hard := func(m *tables.Material) bool { return m == nil || m.Family == "quenched and tempered" }
	if t.mat == nil || !hard(t.mat) || !hard(t.mat2) || !t.prep.Kind.IsButt() || n.wire.RmMPa >= r.Value {
		return
	}
	k.say(r, finding.Warning, "%s is softer than %s: its weld metal bears about %s MPa", n.wire.Filler, t.mat.Grade, number(n.wire.RmMPa, 0))
}

// stock tells what is not in the shop's stock, and whether it has a price.
func (k *checker) stock(has bool, price float64, format, what string) {
	switch {
	case has:
	case price > 0:
		k.sayf("not-in-stock", finding.Warning, format, what)
	default:
		k.sayf("no-price", finding.Warning, format, what)
	}
}

const noFiller = "the table of fillers has none for these materials"

// takesFiller names what the pair of materials takes; empty if nothing is known.
func (t *task) takesFiller() string {
	names := make([]string, len(t.pair))
	for i, f := range t.pair {
		names[i] = f.Filler
	}
	return strings.Join(names, " or ")
}

// passes judges sizes that become several passes.
func (k *checker) passes(t *task, o *outcome) {
	k.cold(t, o)
	k.coldAluminium(t, o)
	if g := &o.groups[0]; o.melted {
		k.sayf("bead-through", finding.Note, "beads of %s mm² instead of %s mm²: parts of %s call for %s A, and no hand is faster than %s mm/min with it",
			number(g.area, 1), number(o.called, 1), mmText(t.thin), number(g.wanted*k.c.upward(t), 0), number(g.travel, 0))
	} else if o.called > 0 {
		k.sayf("bead-larger", finding.Note, "a bead of %s mm² instead of %s mm²: %s %s mm lays no smaller one at its lowest current of %s A and %s mm/min",
			number(g.area, 1), number(o.called, 1), o.way.wire.Filler, number(o.way.dia, 1), number(g.current, 0), number(g.travel, 0))
	}
	if t.leg <= 0 || o.passes < 2 {
		return
	}
	if t.openRoot {
		k.sayf("root-corner", finding.Note, "a root run first, %d in all: the corner is open and nothing stands behind it", o.passes)
		return
	}
	why, most := "one pass lays up to %s", o.way.pass.MaxLeg
	if t.leg <= most {
		why, most = "the current that a part of %s bears does not lay it in one", t.thin
	}
	k.sayf("several-passes", finding.Note, "leg %s takes %d passes of %s %s mm in %s: "+why,
		mmText(t.leg), o.passes, o.way.wire.Filler, number(o.way.dia, 1), positions[t.pos], mmText(most))
}

// machine judges duty cycle and the longest run.
func (k *checker) machine(t *task, o *outcome, p *Plan) {
	if o.machine == nil {
		return
	}
	most := float64(p.Runs[p.Governing].Current)
	for i := range p.Runs {
		most = max(most, float64(p.Runs[i].Current))
	}
	if o.duty < k.c.shop.OperatingFactor {
		k.sayf("machine-duty", finding.Note, "%s bears %s A for %s %% of the time", o.machine.row.Name, number(most, 0), number(100*o.duty, 0))
	}
	run := float64(t.j.Length)
	if t.stitch.count > 0 {
		run = t.stitch.segment
	}
	r := k.c.book.first("machine-long-run")
	if minutes := run / max(float64(p.Travel.Start), 1e-9); r != nil && t.holeDepth == 0 && o.duty < 1 && minutes > r.Over*o.duty {
		k.say(r, finding.Note, "one run takes %s min; %s bears %s A for %s min in ten", number(minutes, 1), o.machine.row.Name, number(most, 0), number(r.Over*o.duty, 1))
	}
}

// coded is a sentence with the code of its rule.
type coded struct{ code, text string }

// reason is a coded sentence that keeps its figures apart, for who words it in another
// language.
type reason struct {
	coded
	key, args string
}

func because(code, format string, args ...any) reason {
	var c finding.Check
	c.Say(format, args...)
	return reason{coded{code, c.Text}, format, c.Args}
}

// sayReason adds a check for a reason, which may stand in a longer text.
func (k *checker) sayReason(r reason, level finding.Level, text string) {
	before := len(k.out)
	k.sayf(r.code, level, "%s", text)
	if len(k.out) > before {
		c := &k.out[before]
		c.Key, c.Args = r.key, r.args
	}
}

// begins is how a wire that is too hot is told.
const begins = "%s begins at %s A; the parts call for about %s A"

// named is the way as a person calls it: "G3Si1 0.8 mm short arc".
func (n *way) named() string {
	return fmt.Sprintf("%s %s mm %s", n.wire.Filler, number(n.dia, 1), n.mode)
}

// obstacleChecks puts what stands in the way of an outcome into sentences.
func (c *catalog) obstacleChecks(o *outcome, t *task) []reason {
	n := o.way
	var out []reason
	add := func(which obstacle, code, format string, args ...any) {
		if o.stands&which != 0 {
			out = append(out, because(code, format, args...))
		}
	}
	name := n.named()
	add(tooHot, "too-hot", begins, name, number(n.start, 0), number(o.wanted, 0))
	add(belongsShort, "mode-low", "%s begins at %s A; the parts call for about %s A", name, number(n.start, 0), number(o.wanted, 0))
	add(plateTooThin, "plate-thin-for-wire", "%s is for %s and more; the thinner part is %s", name, mmText(n.pass.MinT), mmText(t.thin))
	add(tooSmall, "leg-small-for-wire", "%s lays a leg of %s and more; %s is asked for", name, mmText(n.pass.MinLeg), mmText(t.leg))
	g := &o.groups[o.governed]
	add(beadSmall, "leg-small-for-wire", "%s begins at %s A, which is more than a run of %s mm² bears", name, number(n.start, 0), number(g.area, 1))
	add(tooFast, "travel-fast", "%s would have to travel %s mm/min at its lowest current of %s A, faster than a steady hand", name, number(g.travel, 0), number(g.current, 0))
	add(tooSlow, "travel-slow", "%s runs at %s mm/min even at %s A", name, number(g.travel, 0), number(g.current, 0))
	add(alThick, "al-short-arc", "short arc is asked for on aluminium of %s, which is too thick for it", mmText(t.thin))
	if len(n.machines) == 0 && o.stands&noMachine != 0 {
		add(noMachine, "machine-none", "no machine of the shop feeds %s mm wire in %s", number(n.dia, 1), n.mode)
		return out
	}
	best := n.machines[0].row
	for _, m := range n.machines[1:] {
		if m.row.CurrentHigh > best.CurrentHigh {
			best = m.row
		}
	}
	add(noMachine, "machine-none", "%s needs %s A and %s m/min, and the strongest machine for it gives %s to %s A and %s m/min at most", name, number(g.current, 0), number(g.feed, 1),
		number(float64(best.CurrentLow), 0), number(float64(best.CurrentHigh), 0), number(float64(best.FeedHigh), 1))
	return out
}

// whyNothing says what stands in the way of every way, from the one that comes
// nearest.
func (c *catalog) whyNothing(t *task) string {
	if t.proc != nil {
		return c.whyOutside(t)
	}
	return c.nearest(t).text
}

// nearest finds the way with the least in its way and says what that is.
func (c *catalog) nearest(t *task) reason {
	var best outcome
	for _, n := range c.waysOf(t) {
		if !c.mayTry(n, t) {
			continue
		}
		if o := c.try(n, t); o.stands != 0 && (best.way == nil || o.stands < best.stands) {
			best = o
		}
	}
	if best.way != nil {
		if list := c.obstacleChecks(&best, c.filledBy(best.way, t)); len(list) > 0 {
			last := list[len(list)-1]
			last.text = "nothing of the shop fits; nearest: " + last.text
			return last
		}
	}
	return c.nothingTried(t)
}

// nothingTried says why no way was open at all.
func (c *catalog) nothingTried(t *task) reason {
	w := &t.wish
	if w.mode == ShortArc && t.metal == "aluminium" && t.thin > c.rules.alShortArc {
		return because("al-short-arc", "short arc is asked for on aluminium of %s, which is too thick for it", mmText(t.thin))
	}
	if r := c.gasRule(t); r.code != "" {
		return r
	}
	if len(w.wires) > 0 && w.gas != "" && !hasWord(w.wires[0].GasList, w.gas) {
		return because("wire-gas", "%s is not welded with %s; it takes %s", w.wires[0].Filler, w.gas, strings.Join(w.wires[0].Gases(), ", "))
	}
	if len(w.wires) == 0 && w.gas != "" {
		if takes := c.gasesFor(t); len(takes) > 0 && !slices.Contains(takes, w.gas) {
			if w.gas == noGas {
				return because("wire-gas", "no wire for these materials is welded without gas, as the list asks; they take %s", strings.Join(takes, ", "))
			}
			return because("wire-gas", "no wire for these materials is welded with %s; they take %s", w.gas, strings.Join(takes, ", "))
		}
	}
	if w.named && c.anyPosition(t) {
		return because("wish-position", "the wire, gas or process that the list asks for is not welded in %s", positions[t.pos])
	}
	if w.named {
		return because("wish-not-met", "the list asks for %s; the shop has no wire and gas that do it together", w.asked)
	}
	if c.anyPosition(t) {
		return because("nothing-fits", "no wire of the shop for these materials has a window in %s", positions[t.pos])
	}
	if takes := t.takesFiller(); takes != "" {
		return because("wire-to-buy", "the shop has no wire with its gas for these materials: the materials take %s", takes)
	}
	return because("nothing-fits", "the shop has no wire with its gas for these materials: the table of fillers has none for these materials")
}

// gasesFor returns the gases that the wires for the joint's materials are welded
// with, in the order of the table of wires.
func (c *catalog) gasesFor(t *task) []string {
	var out []string
	for _, f := range t.pair {
		for i := range c.set.Wires {
			if c.set.Wires[i].Filler != f.Filler {
				continue
			}
			for _, gas := range c.set.Wires[i].Gases() {
				if !slices.Contains(out, gas) {
					out = append(out, gas)
				}
			}
		}
	}
	return out
}

// anyPosition tells whether any position would open a way.
func (c *catalog) anyPosition(t *task) bool {
	for pos := range c.all {
		for _, n := range c.all[pos] {
			if c.mayTry(n, t) {
				return true
			}
		}
	}
	return false
}

// tinyDia is below the step between two diameters of wire, mm: 0.045 in passes for 1.2 mm.
const tinyDia = 0.05
