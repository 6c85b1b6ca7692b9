package plan

import (
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// positions are the plate positions of ISO 6947, in the order of the index used
// throughout the planner.
var positions = [...]string{"PA", "PB", "PC", "PD", "PE", "PF", "PG"}

// modes are the transfer modes that a window may name.
var modes = [...]Transfer{ShortArc, Globular, Spray, Pulse}

// The two joint families of the target currents.
const (
	butt = iota
	fillet
)

// way is one manner of welding: a wire under a gas in a transfer mode and a
// position, with everything about it that no joint changes. Currents in A.
type way struct {
	wire      *tables.Wire
	gas       *tables.Gas
	mode      Transfer
	process   string
	pos       int
	setup     int // number of the wire and gas together; see catalog.setups
	fillerBit int
	stock
	askedOnly bool // nobody but the list itself chooses the wire

	dia, q, eff       float64 // mm, g/m, 0..1
	low, high         float64 // the window
	start, top        float64 // the inner part of it, where start settings lie
	voltLow, voltHigh float64 // of a procedure that binds the way; 0: none
	boundary          float64 // a target below it belongs to the same wire's short arc
	a, b, ext         float64 // melting constants and wire extension
	k                 float64 // thermal efficiency
	volts             *tables.VoltLine
	window            *tables.Window
	melting           *tables.Melting
	effRow            *tables.Efficiency
	pass              *tables.SinglePass
	travel            []*tables.Travel
	beads             []bead  // small to large
	full              float64 // the largest pass over a root as made, mm²
	flow              *tables.Flow
	stick             *tables.Stickout
	hydrogen          tables.Hydrogen // diffusible, that the wire is reckoned with; zero: not ferritic
	targets           *targets
	machines          []*machine
	rootWay           *way // the same wire and gas in short arc, for open roots
	slag              bool // the wire leaves a slag
	pulseUnstated     bool // a pulse machine that the shop has not said it has
}

// setup is one wire with one gas: what a welder changes over between.
type setup struct {
	wire *tables.Wire
	gas  *tables.Gas
	stock
}

// stock is what the shop has and pays of a wire and a gas.
type stock struct {
	wireStock, gasStock bool
	perKg, perLitre     float64
	spool, onHand       float64 // kg
}

// catalog holds every way of welding that tables and shop allow.
type catalog struct {
	set       *tables.Set
	shop      *rates.Shop
	rules     rules
	book      ruleBook
	stockOnly bool // only the shop's wires and gases are compiled
	aws       bool // checks follow AWS and AISC rules instead of ISO and EN
	us        bool // sizes are told in inches
	all       [len(positions)][]*way
	setups    []setup
	// machines are those the shop names, or all of the table where it names none.
	machines      []*machine
	machinesNamed bool
	materials     map[string]grade
	steels        map[string]*steelFacts
	density       map[string]float64 // weld metal, kg/m³
	fillers       map[string]int     // bit number of a filler class
	pairs         map[[2]string][]tables.FillerChoice
	targets       map[targetKey]*targets
	beads         map[beadKey][]bead
	american      map[string][2]string  // name of a position, by family
	likely        []likely              // the plausible ranges, compiled
	sections      map[designation]known // designations, each read once
	conditions    map[string][]string   // words that tell of one, lower case
	careOf        map[condition]care
	forms         map[formKey]*form // the latest of each key; the others hang on it
	formCount     int
	room          []outcome          // for the ways open to one joint
	next          task               // of one joint of a form; see form.next
	assumed       []joint.Assumption // of one joint, while it is read
	said          []finding.Check    // of one joint, before it gets a list of its own or shares one
}

// newCatalog compiles tables and shop into ways of welding.
func newCatalog(set *tables.Set, shop *rates.Shop, opt Options) *catalog {
	c := &catalog{
		set: set, shop: shop, stockOnly: opt.stockOnly, rules: readRules(set), aws: opt.Codes == "aws", us: opt.US, book: readRuleBook(set, opt.Codes == "aws"),
		materials: map[string]grade{}, steels: map[string]*steelFacts{}, density: map[string]float64{}, fillers: map[string]int{}, pairs: map[[2]string][]tables.FillerChoice{}, targets: map[targetKey]*targets{}, beads: map[beadKey][]bead{}, careOf: map[condition]care{}, forms: map[formKey]*form{},
	}
	c.readLikely()
	c.readConditions()
	c.readPositions()
	for _, d := range set.Densities {
		if d.Use == tables.WeldMetal {
			c.density[d.Metal] = float64(d.Value)
		}
	}
	c.machines, c.machinesNamed = shopMachines(set, shop)
	for i := range set.Wires {
		c.addWire(&set.Wires[i])
	}
	return c
}

func (c *catalog) addWire(w *tables.Wire) {
	if _, known := c.fillers[w.Filler]; !known {
		c.fillers[w.Filler] = len(c.fillers)
	}
	if c.stockOnly && !c.wireInStock(w) {
		return
	}
	if w.Gasless() {
		c.addPair(w, &tables.NoGas)
	}
	for _, name := range w.Gases() {
		for i := range c.set.Gases {
			if gas := &c.set.Gases[i]; gas.Gas == name && !(c.stockOnly && !c.gasInStock(gas)) {
				c.addPair(w, gas)
			}
		}
	}
}

func (c *catalog) wireInStock(w *tables.Wire) bool {
	return slices.ContainsFunc(c.shop.Wires, func(p rates.WirePrice) bool { return p.Filler == w.Filler && sameDia(p.Dia, w.Dia) })
}

func (c *catalog) gasInStock(g *tables.Gas) bool {
	return slices.ContainsFunc(c.shop.Gases, func(p rates.GasPrice) bool { return p.Gas == g.Gas })
}

// addPair adds the ways of one wire under one gas.
func (c *catalog) addPair(w *tables.Wire, gas *tables.Gas) {
	melting, ok := c.set.Melting(*w)
	if !ok {
		return
	}
	windows := c.windowsOf(w, gas)
	if len(windows) == 0 {
		return
	}
	number := len(c.setups)
	c.setups = append(c.setups, setup{w, gas, c.stockOf(w, gas)})
	for pos := range positions {
		short := c.newWay(w, gas, windows, ShortArc, pos, number, &melting)
		for _, mode := range modes {
			next := short
			if mode != ShortArc {
				next = c.newWay(w, gas, windows, mode, pos, number, &melting)
			}
			if next == nil {
				continue
			}
			next.meet(short, c.rules.gapShare)
			c.all[pos] = append(c.all[pos], next)
		}
	}
}

// meet sets where a hotter mode begins: in the gap between the top of the same
// wire's short arc and its own bottom, the nearer mode takes the target.
func (w *way) meet(short *way, share float64) {
	w.rootWay = w
	if short == nil || w.mode == Pulse || w == short {
		if short != nil {
			w.rootWay = short
		}
		return
	}
	w.rootWay = short
	w.boundary = w.start - share*max(0, w.start-short.top)
}

// newWay returns one way of welding, or nil where the tables have no window or
// lack a figure for it.
func (c *catalog) newWay(w *tables.Wire, gas *tables.Gas, windows []*tables.Window, mode Transfer, pos, number int, m *tables.Melting) *way {
	window := windowOf(windows, mode, pos)
	if window == nil {
		return nil
	}
	if own, ok := c.set.MeltingIn(*w, string(mode)); ok {
		m = &own
	}
	n := &way{
		wire: w, gas: gas, mode: mode, pos: pos, setup: number, fillerBit: min(c.fillers[w.Filler], 63), process: w.Process(*gas),
		dia: float64(w.Dia), q: float64(w.LinearMass), window: window, melting: m, a: m.A, b: m.B,
		low: max(window.Low, float64(m.CurrentLow)), high: min(window.High, float64(m.CurrentHigh)),
	}
	if n.process == "" || n.high <= n.low || !c.fillIn(n) {
		return nil
	}
	width := n.high - n.low
	n.start, n.top = n.low+c.rules.innerLow*width, n.low+c.rules.innerHigh*width
	n.stock, n.askedOnly = c.setups[number].stock, n.wire.Metal == bronze
	c.machinesFor(n)
	return n
}

// fillIn looks up the rows that a way needs; false where one is missing.
func (c *catalog) fillIn(n *way) bool {
	n.volts = c.voltLine(n)
	n.pass = c.singlePass(n)
	n.travel = c.travels(n)
	n.beads = c.beadsOf(n)
	n.slag = n.wire.Slag()
	n.flow = c.shield(n)
	n.stick = c.stickout(n)
	n.hydrogen, _ = c.set.HydrogenOf(*n.wire)
	eff, ok := c.set.Efficiency(*n.wire, n.gas.Gas, string(n.mode))
	k, okK := c.set.HeatK(n.process)
	if n.volts == nil || n.pass == nil || len(n.travel) == 0 || n.flow == nil || n.stick == nil || !ok || !okK {
		return false
	}
	n.full = c.fullBead(n)
	n.eff, n.effRow, n.k = eff.Value, &eff, k.K
	n.ext = n.stick.Start - n.stick.Arc
	n.targets = c.targetsOf(n)
	return len(n.targets.family[butt].points) > 0 && len(n.targets.family[fillet].points) > 0
}

func sameDia(a, b units.MM) bool { return a-b < 0.01 && b-a < 0.01 }

// hasWord tells whether a list of words separated by blanks has the word.
func hasWord(list, word string) bool {
	for at := 0; at+len(word) <= len(list) && word != ""; {
		found := strings.Index(list[at:], word)
		if found < 0 {
			return false
		}
		start, end := at+found, at+found+len(word)
		if (start == 0 || list[start-1] == ' ') && (end == len(list) || list[end] == ' ') {
			return true
		}
		at = end
	}
	return false
}
