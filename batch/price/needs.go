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
	Wires    []units.MM // diameters, thinnest first
	Modes    []string
	LongestS float64 // the longest unbroken run, s: a seam, or a seam between two of the shop's starts
	Mark     string  // the joint with the largest current
}

// needsOf returns what the planned joints ask of a machine, and false where none
// has settings.
//
//	supply = U I / (1000 efficiency), kW   (SUPPLY-1)
//
// Basis: derived.
func needsOf(job *Job) (Needs, bool) {
	n := Needs{Share: job.Shop.OperatingFactor}
	wires, modes := map[units.MM]bool{}, map[string]bool{}
	for i := range job.Plans {
		p := &job.Plans[i]
		if !p.Settings {
			continue
		}
		wires[p.Dia] = true
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
	slices.Sort(n.Wires)
	sort.Strings(n.Modes)
	return n, n.Current > 0
}

func (n *Needs) take(p *plan.Plan, r *plan.Run, shop *rates.Shop) {
	efficiency := shop.SourceEfficiency
	if r.Current > n.Current {
		n.Current, n.Mark = r.Current, p.Joint.Mark
	}
	n.Volts, n.Feed = max(n.Volts, r.Voltage), max(n.Feed, r.WireFeed)
	if efficiency > 0 {
		n.Supply = max(n.Supply, float64(r.Voltage)*float64(r.Current)/1000/efficiency)
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
