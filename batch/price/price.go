package price

import (
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// Price puts a list, its plans, one for each joint in the same order, and the
// shop together into a priced job. shopProblems are what reading the shop values
// had to say. The plans given are the job's own from here on. The caller fills Version and
// TablesEdition.
func Price(l joint.List, plans []plan.Plan, shop rates.Shop, shopProblems []finding.Problem, opts Options) Job {
	job := Job{List: l, Shop: shop, Opts: opts}
	settle(plans, &shop)
	job.Plans = plans
	job.Problems = append(append(job.Problems, l.Problems...), shopProblems...)
	job.Buy = buyList(job.Plans, &shop)
	job.Totals = totals(&job)
	job.Totals.Spread = spreadOf(&job)
	if needs, any := needsOf(&job); any {
		job.Totals.Needs = &needs
	}
	return job
}

// settle rounds every figure of the plans that is summed to its step: each part
// of the money first, then their sum, then the price of the sum.
func settle(plans []plan.Plan, shop *rates.Shop) {
	for i := range plans {
		p := &plans[i]
		p.Seam, p.WeldMetal = Round(p.Seam, MetreDecimals), Round(p.WeldMetal, KgDecimals)
		p.WireKg, p.GasL, p.Arc = Round(p.WireKg, KgDecimals), Round(p.GasL, LitreDecimals), Round(p.Arc, MinuteDecimals)
		c := &p.Cost
		c.Energy, c.Labour.Total = Round(c.Energy, KWhDecimals), Round(c.Labour.Total, MinuteDecimals)
		for _, part := range []*units.Money{&c.LabourCost, &c.Wire, &c.Gas, &c.Power, &c.Other} {
			*part = Round(*part, MoneyDecimals)
		}
		c.Total = Round(c.LabourCost+c.Wire+c.Gas+c.Power+c.Other, MoneyDecimals)
		c.Price = Round(shop.PriceOf(c.Total), MoneyDecimals)
	}
}

// Priced tells whether a plan carries money: one without settings has metal and
// metres only, and its money is unknown, not nothing.
func Priced(p *plan.Plan) bool { return p.Settings && p.Cost.Total > 0 }

// totals adds up the job.
func totals(job *Job) Totals {
	var t Totals
	for i := range job.Plans {
		p := &job.Plans[i]
		t.All.add(p)
		t.addParts(p, &job.Shop)
		if !Priced(p) {
			t.Unpriced = append(t.Unpriced, p.Joint.Mark)
		}
	}
	t.round()
	t.ByAssembly = group(job.Plans, assemblyOf, false)
	t.ByWire = group(job.Plans, settingsOr(wireOf), true)
	t.ByGas = group(job.Plans, settingsOr(gasOf), true)
	t.ByProcess = group(job.Plans, settingsOr(func(p *plan.Plan) string { return p.Process }), true)
	t.ByPosition = group(job.Plans, positionOf, true)
	t.changeOvers(job)
	t.NotYours = job.Shop.NotYoursFor(setups(job.Plans), transfersOf(job.Plans))
	t.Exclusions = exclusions(job, t.Unpriced)
	t.count(job)
	return t
}

// addParts adds what stands in the totals only: the money and labour by kind,
// and what the allowances cost.
func (t *Totals) addParts(p *plan.Plan, shop *rates.Shop) {
	c := p.Cost
	t.LabourCost += c.LabourCost
	t.Wire += c.Wire
	t.Gas += c.Gas
	t.Power += c.Power
	t.Other += c.Other
	factor := units.Minute(c.Labour.SiteFactor)
	t.Labour.Joint += c.Labour.Joint * factor
	t.Labour.Fitup += c.Labour.Fitup * factor
	t.Labour.Clean += c.Labour.Clean * factor
	t.Labour.BetweenPass += c.Labour.BetweenPass * factor
	t.Labour.Arc += c.Labour.Arc * factor
	t.Labour.Rework += c.Labour.Rework * factor
	t.Labour.Total += c.Labour.Total
	drawn, overweldCost := allowances(p, shop)
	t.DrawnKg += drawn
	t.OverweldKg += float64(p.WeldMetal - drawn)
	t.OverweldCost += float64(overweldCost)
}

// round brings the sums back to their steps and lets the idle labour be what is
// left of the whole, so that the parts of the labour add up.
func (t *Totals) round() {
	for _, money := range []*units.Money{&t.LabourCost, &t.Wire, &t.Gas, &t.Power, &t.Other} {
		*money = Round(*money, MoneyDecimals)
	}
	l := &t.Labour
	l.SiteFactor = 1
	rest := Round(l.Total, MinuteDecimals)
	l.Total = rest
	for _, part := range []*units.Minute{&l.Joint, &l.Fitup, &l.Clean, &l.BetweenPass, &l.Arc, &l.Rework} {
		*part = Round(*part, MinuteDecimals)
		rest -= *part
	}
	l.Idle = max(Round(rest, MinuteDecimals), 0)
	t.DrawnKg = Round(t.DrawnKg, KgDecimals)
	t.OverweldKg = Round(t.OverweldKg, KgDecimals)
	t.OverweldCost = Round(t.OverweldCost, MoneyDecimals)
	t.All.round()
}

// allowances returns the weld metal of the drawn geometry alone, and the money
// that the rest of the metal costs: its share of wire, gas, power and of the
// labour that follows the arc. Fit-up, handling and starts do not grow with it.
//
//	drawn = m A_drawn / A;  money = (1 - A_drawn / A)(wire + gas + power + tips + arc labour)   (OVER-1)
//
// Symbols: m weld metal, kg; A, A_drawn area of one seam with allowances and as
// drawn, mm². Assumes: arc time, wire and gas follow the area; the pass plan
// stays. Basis: derived. Accuracy: a few per cent of itself.
func allowances(p *plan.Plan, shop *rates.Shop) (drawn units.Kg, money units.Money) {
	if p.Area <= 0 || p.AreaDrawn < 0 {
		return p.WeldMetal, 0
	}
	share := float64(p.AreaDrawn / p.Area)
	l := p.Cost.Labour
	arcLabour := float64(l.Arc+l.Idle+l.Rework) * l.SiteFactor / 60 * float64(shop.LabourCostPerHour())
	follows := arcLabour + float64(p.Cost.Wire+p.Cost.Gas+p.Cost.Power) + float64(shop.TipCost(p.Arc))
	if !Priced(p) {
		follows = 0
	}
	return units.Kg(float64(p.WeldMetal) * share), units.Money((1 - share) * follows)
}

// changeOvers prices the changes of wire, gas or machine between the set-ups of
// the job, grouped so that they are fewest. They stand apart from the joints.
func (t *Totals) changeOvers(job *Job) {
	shop := &job.Shop
	t.ChangeOvers = rates.ChangeOvers(setups(job.Plans))
	t.ChangeOverMin = Round(units.Minute(float64(t.ChangeOvers)*float64(shop.ChangeMin)), MinuteDecimals)
	cost := float64(t.ChangeOverMin) / 60 * float64(shop.LabourCostPerHour())
	t.ChangeOverCost = Round(units.Money(cost), MoneyDecimals)
	t.ChangeOverPrice = Round(shop.PriceOf(t.ChangeOverCost), MoneyDecimals)
	t.Cost = Round(t.All.Cost+t.ChangeOverCost, MoneyDecimals)
	t.Price = Round(t.All.Price+t.ChangeOverPrice, MoneyDecimals)
}

// Say adds what was found after the list was priced, and counts it.
func (job *Job) Say(found ...finding.Problem) {
	if len(found) > 0 {
		job.Problems = append(job.Problems[:len(job.Problems):len(job.Problems)], found...)
		job.Totals.count(job)
	}
}

// count counts the findings of the list and of the plans by level.
func (t *Totals) count(job *Job) {
	by := map[finding.Level]int{}
	for _, p := range job.Problems {
		by[p.Level]++
	}
	for i := range job.Plans {
		for _, c := range job.Plans[i].Checks {
			by[c.Level]++
		}
	}
	t.Errors, t.Warnings, t.Notes = by[finding.Error], by[finding.Warning], by[finding.Note]
}
