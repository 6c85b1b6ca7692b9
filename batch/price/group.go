package price

import (
	"sort"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
)

// Names of groups for joints that lack what is grouped by.
const (
	NoAssembly = "(no assembly)"
	NoSettings = "(no settings)"
	NoGas      = "(no gas)"
	NoPosition = "(no position)"
)

// add adds one plan to a sum.
func (s *Sum) add(p *plan.Plan) {
	s.Joints++
	s.Copies += p.Joint.Qty
	s.Seam += p.Seam
	s.WeldMetal += p.WeldMetal
	s.WireKg += p.WireKg
	s.GasL += p.GasL
	s.Arc += p.Arc
	s.Labour += p.Cost.Labour.Total
	s.Energy += p.Cost.Energy
	s.Cost += p.Cost.Total
	s.Price += p.Cost.Price
}

// round takes the dust of binary fractions off the sum of rounded figures.
func (s *Sum) round() {
	s.Seam, s.WeldMetal, s.WireKg = Round(s.Seam, MetreDecimals), Round(s.WeldMetal, KgDecimals), Round(s.WireKg, KgDecimals)
	s.GasL, s.Arc, s.Labour = Round(s.GasL, LitreDecimals), Round(s.Arc, MinuteDecimals), Round(s.Labour, MinuteDecimals)
	s.Energy, s.Cost, s.Price = Round(s.Energy, KWhDecimals), Round(s.Cost, MoneyDecimals), Round(s.Price, MoneyDecimals)
}

// group sums the plans by a name. The order is that of the list, or by name with
// the bracketed names last.
func group(plans []plan.Plan, nameOf func(*plan.Plan) string, sorted bool) []Sum {
	var sums []Sum
	at := map[string]int{}
	for i := range plans {
		name := nameOf(&plans[i])
		if _, ok := at[name]; !ok {
			at[name] = len(sums)
			sums = append(sums, Sum{Name: name})
		}
		sums[at[name]].add(&plans[i])
	}
	for i := range sums {
		sums[i].round()
	}
	if sorted {
		sort.SliceStable(sums, func(a, b int) bool { return before(sums[a].Name, sums[b].Name) })
	}
	return sums
}

func before(a, b string) bool {
	if x, y := strings.HasPrefix(a, "("), strings.HasPrefix(b, "("); x != y {
		return y
	}
	return a < b
}

func assemblyOf(p *plan.Plan) string {
	if p.Joint.Assembly == "" {
		return NoAssembly
	}
	return p.Joint.Assembly
}

func positionOf(p *plan.Plan) string {
	if p.Joint.Position == "" {
		return NoPosition
	}
	return p.Joint.Position
}

func wireOf(p *plan.Plan) string { return rates.WireName(p.Filler, p.Dia) + " mm" }

func gasOf(p *plan.Plan) string {
	if p.Gas == "" {
		return NoGas
	}
	return p.Gas
}

// settingsOr names the group of joints that have no settings.
func settingsOr(nameOf func(*plan.Plan) string) func(*plan.Plan) string {
	return func(p *plan.Plan) string {
		if !p.Settings {
			return NoSettings
		}
		return nameOf(p)
	}
}

// setups returns the set-ups of the planned joints, in the order of the list.
func setups(plans []plan.Plan) []rates.Setup {
	out := make([]rates.Setup, 0, len(plans))
	for i := range plans {
		if p := &plans[i]; p.Settings {
			out = append(out, rates.Setup{Filler: p.Filler, Dia: p.Dia, Gas: p.Gas, Machine: p.Machine})
		}
	}
	return out
}

func transfersOf(plans []plan.Plan) map[string]bool {
	modes := map[string]bool{}
	for i := range plans {
		if p := &plans[i]; p.Settings {
			modes[string(p.Transfer)] = true
		}
	}
	return modes
}

func onSite(p *plan.Plan) bool { return p.Joint.Where == joint.Site }
