package price

import (
	"slices"
	"sort"

	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// Needs is what a job asks of a welding machine: what to look for where one is to
// be bought or hired. The figures are the largest of any pass, each by itself.
type Needs struct {
	Current  units.Amp
	Volts    units.Volt
	Feed     units.MMin
	Share    float64    // of ten minutes with the arc on, at that current: the shop's operating factor
	Supply   float64    // kW drawn from the mains by the hottest pass: U I / efficiency
	KVA      float64    // what the mains must bear: Supply / power factor
	Phases   int        // of the mains: one where a single-phase socket bears it
	Spool    units.Kg   // the largest that the shop buys of these wires
	Gun      string     // "plain", or what the softest wire asks for
	Wires    []units.MM // diameters, thinnest first
	Modes    []string
	LongestS float64 // the longest unbroken run, s: a seam, or a seam between two of the shop's starts
	Mark     string  // the joint with the largest current
}

// socketKVA is what a single-phase socket of 230 V and 16 A bears. Basis: derived,
// 230 x 16 / 1000.
const socketKVA = 3.68

// needsOf returns what the planned joints ask of a machine, and false where none
// has settings.
//
//	supply = U I / (1000 efficiency), kW   (SUPPLY-1)
//	apparent = supply / power factor, kVA   (SUPPLY-2)
//
// Efficiency and power factor are those of the machine that the joint is planned
// on, from the table of machines; without one the efficiency is the shop's and the
// power factor 1. Basis: derived.
func needsOf(job *Job) (Needs, bool) {
	n := Needs{Share: job.Shop.OperatingFactor, Phases: 1, Gun: "plain"}
	wires, modes := map[units.MM]bool{}, map[string]bool{}
	for i := range job.Plans {
		p := &job.Plans[i]
		if !p.Settings {
			continue
		}
		wires[p.Dia] = true
		if p.Gun != "" {
			n.Gun = p.Gun
		}
		n.Spool = max(n.Spool, spoolOf(&job.Shop, p))
		for k := range p.Runs {
			r := &p.Runs[k]
			modes[string(r.Transfer)] = true
			n.take(p, r, &job.Shop)
		}
	}
	for d := range wires {
		n.Wires = append(n.Wires, d)
	}
	for m := range modes {
		n.Modes = append(n.Modes, m)
	}
	if n.KVA > socketKVA {
		n.Phases = 3
	}
	slices.Sort(n.Wires)
	sort.Strings(n.Modes)
	return n, n.Current > 0
}

func (n *Needs) take(p *plan.Plan, r *plan.Run, shop *rates.Shop) {
	efficiency, factor := shop.SourceEfficiency, 1.0
	if m := p.Source; m != nil && m.Efficiency > 0 && m.PowerFactor > 0 {
		efficiency, factor = m.Efficiency, m.PowerFactor
	}
	if r.Current > n.Current {
		n.Current, n.Mark = r.Current, p.Joint.Mark
	}
	n.Volts, n.Feed = max(n.Volts, r.Voltage), max(n.Feed, r.WireFeed)
	if efficiency > 0 {
		kw := float64(r.Voltage) * float64(r.Current) / 1000 / efficiency
		n.Supply, n.KVA = max(n.Supply, kw), max(n.KVA, kw/factor)
	}
	if r.Travel > 0 {
		length := float64(p.Joint.Length)
		if shop.SeamStartsPerM > 0 {
			length = min(length, 1000/shop.SeamStartsPerM) // the welder stops and starts again
		}
		if s := p.Joint.Stitch; s != nil {
			length = min(length, float64(s.Segment))
		}
		n.LongestS = max(n.LongestS, length/float64(r.Travel)*60)
	}
}

// spoolOf returns the spool in kg that the shop buys of a plan's wire; 0: none.
func spoolOf(shop *rates.Shop, p *plan.Plan) units.Kg {
	for _, w := range shop.Wires {
		if w.Filler == p.Filler && w.Dia == p.Dia {
			return w.SpoolKg
		}
	}
	return 0
}
