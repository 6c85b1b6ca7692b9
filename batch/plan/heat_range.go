package plan

import (
	"math"

	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// heatRange fills in between which heats of its hottest pass the joint keeps to
// what its metals and its procedure ask for, all passes moving together. A plan
// that lies outside already was told so by a check; its range ends at its own heat.
func (k *checker) heatRange(t *task, p *Plan) {
	own, least := float64(p.HeatMax), coolest(p)
	if own <= 0 || least <= 0 {
		return
	}
	low, high := 0.0, math.Inf(1)
	limit := func(from, to units.KJMM) {
		low = max(low, float64(from)*own/least)
		if to > 0 {
			high = min(high, float64(to))
		}
	}
	if t.proc != nil {
		limit(t.proc.HeatLow, t.proc.HeatHigh)
	}
	for _, m := range []*tables.Material{t.mat, t.mat2} {
		if m == nil {
			continue
		}
		if l, ok := k.c.set.HeatLimit(m.Family); ok {
			limit(l.HeatMin, l.HeatMax)
		}
	}
	if from, to := k.coolingHeat(t, p); to > 0 {
		low, high = max(low, from*own), min(high, to*own)
	}
	if low > 0 {
		p.HeatRange[0] = units.KJMM(min(low, own))
	}
	if !math.IsInf(high, 1) {
		p.HeatRange[1] = units.KJMM(max(high, own))
	}
}

// coolingHeat turns the cooling times that the steel likes into factors of the
// heat of all passes between which the check of the cooling time is silent. Times
// that the range of travel cannot reach from here are no limit: 0 and infinity.
// Both are 0 where no cooling time was worked out.
func (k *checker) coolingHeat(t *task, p *Plan) (low, high float64) {
	shape, ok := k.c.set.ShapeFactor(shapeKey(t.prep.Kind))
	if p.T85 == nil || !ok {
		return 0, 0
	}
	family := k.c.richest(t, max(float64(t.prep.T1), float64(t.prep.T2))).row.Family
	limit, ok := k.c.set.HeatLimit(family)
	if !ok || limit.T85High == 0 {
		return 0, 0
	}
	// A hardened steel wants every pass inside, others let one pass in it do.
	fast, slow := shape.F2High, shape.F2Low
	if family == hardened {
		fast, slow = slow, fast
	}
	bounds := [2][2]float64{{math.Inf(1), 0}, {math.Inf(1), 0}} // of low and high: least and most
	for i := range p.Runs {
		r := &p.Runs[i]
		from := startOf(p, r.Number > 1)
		for b, c := range []struct {
			time units.Second
			f2   float64
		}{{limit.T85Low, fast}, {limit.T85High, slow}} {
			heat, err := weld.HeatForCooling(from, c.time, units.MM(t.thin), c.f2, shape.F3)
			if err != nil || r.Heat <= 0 {
				return 0, 0
			}
			factor := float64(heat / r.Heat)
			bounds[b] = [2]float64{min(bounds[b][0], factor), max(bounds[b][1], factor)}
		}
	}
	low, high = bounds[0][0], bounds[1][1]
	if family == hardened {
		low, high = bounds[0][1], bounds[1][0]
	}
	if low < p.Travel.Start/p.Travel.High {
		low = 0
	}
	if high > p.Travel.Start/p.Travel.Low {
		high = math.Inf(1)
	}
	return low, high
}
