package rates

import (
	"math"

	"seamtally/batch/units"
)

// CostOf returns the labour, energy and money of one joint, all its copies,
// sides and stitches together, in minutes, kilowatt-hours and the shop's currency.
//
//	labour   = (joint + fitup + clean + between + arc + idle + rework) site   (COST-1)
//	joint    = qty joint_min
//	fitup    = seam fitup_min_m
//	clean    = seam clean_min_m
//	between  = (passes - 1) between_pass_min seams
//	idle     = arc / f - arc,  f = min(operating_factor, duty)
//	rework   = arc / f x rework_pct / 100
//	labour cost = labour / 60 x labour_rate (1 + overhead_pct / 100)          (COST-2)
//	wire     = wire_kg x wire price                                           (COST-3)
//	gas      = gas_l x cylinder price / cylinder litres                       (COST-4)
//	energy   = arc energy + idle_w (labour - arc) / 60000                     (COST-5)
//	power    = energy x power_price                                           (COST-6)
//	other    = arc / 60 / tip_life_h x tip_price
//	         + (seam x spatter_min_m + runs x slag_min_m) / 60
//	           x labour_rate (1 + overhead_pct/100)                           (COST-7)
//	cost     = labour cost + wire + gas + power + other                       (COST-8)
//	price    = cost / (1 - margin_pct / 100)                                  (COST-9)
//
// Symbols: arc: arc time, min; seam: metres actually welded, m; qty: identical
// joints; seams: separate seams (qty x sides); passes: of one seam; runs: metres
// of runs that leave a slag; f: share of
// the welding time with the arc burning, 0..1; duty: share the machine bears,
// 0 or 1 for no limit; site: site_factor on site, else 1; arc energy: from the
// mains while the arc burns, kWh; prices in the shop's currency.
//
// Valid: 0 < f <= 1, 0 <= margin_pct < 100, nothing negative; the reader of shop
// values refuses anything else. Where a figure still lies outside, or the sum is
// not finite, a zero Cost is returned, which the outputs show as unknown.
//
// Assumes: fit-up and tacking are their own time and not inside the operating
// factor; overhead lies on labour only; rework repeats the arc's share of the
// labour, not the metal; spatter and slag are cleaned at the labour cost rate, which is
// part of the other costs, not of the labour minutes.
//
// Source: the split into labour, wire, gas and power by operating factor and
// deposition is that of the Filler Metal Data Handbook, sec. 8, cost worksheet;
// the further lines are the shop's own. Basis: derived. Accuracy: as good as the
// shop's minutes and prices; estimating only.
func CostOf(q Quantities, s *Shop) Cost {
	factor := arcShare(q, s)
	if factor <= 0 || s.MarginPct >= 100 || s.MarginPct < 0 {
		return Cost{}
	}
	cost := Cost{Labour: labourOf(q, s, factor)}
	total := cost.Labour.Total
	perMinute := float64(s.LabourCostPerHour()) / 60

	cost.LabourCost = units.Money(float64(total) * perMinute)                     // COST-2
	cost.Wire = units.Money(float64(q.WireKg) * float64(q.WirePerKg))             // COST-3
	cost.Gas = units.Money(float64(q.Gas) * float64(q.GasPerLitre))               // COST-4
	cost.Energy = q.ArcEnergy + idleEnergy(total-q.Arc, s.IdleW)                  // COST-5
	cost.Power = units.Money(float64(cost.Energy) * float64(s.PowerPrice))        // COST-6
	cost.Other = s.TipCost(q.Arc) + units.Money(CleaningMin(q, s)*perMinute)      // COST-7
	cost.Total = cost.LabourCost + cost.Wire + cost.Gas + cost.Power + cost.Other // COST-8
	cost.Price = s.PriceOf(cost.Total)                                            // COST-9
	if bad(float64(cost.Price)) || bad(float64(total)) || bad(float64(cost.Energy)) {
		return Cost{}
	}
	return cost
}

// arcShare returns the smaller of the shop's operating factor and the share the
// machine bears; a machine share of zero or one sets no limit.
func arcShare(q Quantities, s *Shop) float64 {
	if q.DutyCap > 0 && q.DutyCap < s.OperatingFactor {
		return q.DutyCap
	}
	return math.Min(s.OperatingFactor, 1)
}

// labourOf returns the labour of COST-1 by part.
func labourOf(q Quantities, s *Shop, factor float64) Labour {
	welding := float64(q.Arc) / factor
	l := Labour{
		Joint:       units.Minute(float64(q.Qty) * float64(s.JointMin)),
		Fitup:       units.Minute(float64(q.Seam) * s.FitupMinM),
		Clean:       units.Minute(float64(q.Seam) * s.CleanMinM),
		BetweenPass: units.Minute(float64(max(q.Passes-1, 0)) * float64(s.BetweenPassMin) * q.Seams),
		Arc:         q.Arc,
		Idle:        units.Minute(welding) - q.Arc,
		Rework:      units.Minute(welding * s.ReworkPct / 100),
		SiteFactor:  1,
	}
	if q.Site {
		l.SiteFactor = s.SiteFactor
	}
	sum := l.Joint + l.Fitup + l.Clean + l.BetweenPass + l.Arc + l.Idle + l.Rework
	l.Total = units.Minute(float64(sum) * l.SiteFactor)
	return l
}

// LabourCostPerHour returns the shop's labour rate with overhead, per hour.
func (s *Shop) LabourCostPerHour() units.Money {
	return units.Money(float64(s.LabourRate) * (1 + s.OverheadPct/100))
}

// PriceOf returns the price that leaves the shop's margin on a cost: the margin
// is a share of the price, not a surcharge on the cost. Zero where no price
// leaves such a margin.
func (s *Shop) PriceOf(cost units.Money) units.Money {
	if s.MarginPct >= 100 {
		return 0
	}
	return units.Money(float64(cost) / (1 - s.MarginPct/100))
}

// CleaningMin returns the minutes of taking spatter and slag off a joint. A spatter
// figure for the transfer mode under the joint's gas beats the one for the mode
// alone; slag is taken off every run of a wire that leaves one.
func CleaningMin(q Quantities, s *Shop) float64 {
	return float64(q.Seam)*SpatterMinM(q.Transfer, q.GasName, s) + float64(q.SlagRuns)*s.SlagMinM
}

// SpatterMinM returns the minutes of spatter cleaning per metre of seam.
func SpatterMinM(transfer, gas string, s *Shop) float64 {
	perMetre, ok := s.SpatterMinM[transfer+"."+gas]
	if !ok {
		perMetre = s.SpatterMinM[transfer]
	}
	return perMetre
}

// idleEnergy returns what the power source draws while it waits.
func idleEnergy(idle units.Minute, watts float64) units.KWh {
	return units.KWh(math.Max(float64(idle), 0) / 60 * watts / 1000)
}

// Tips returns how many contact tips the arc time wears out.
func (s *Shop) Tips(arc units.Minute) float64 {
	if s.TipLifeH <= 0 {
		return 0
	}
	return float64(arc) / 60 / s.TipLifeH
}

// TipCost returns the money of the contact tips worn by the arc time.
func (s *Shop) TipCost(arc units.Minute) units.Money {
	return units.Money(s.Tips(arc) * float64(s.TipPrice))
}

func bad(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) || x < 0 }
