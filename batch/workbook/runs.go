package workbook

import "seamtally/batch/plan"

// The functions of this file take from the passes what the formulas need beside
// the governing pass: means over the passes, and how they stand to the governing
// one. The plan's own sums are rounded for adding up; these are not.

// overRuns adds up one figure of every pass.
func overRuns(r *row, of func(plan.Run) float64) float64 {
	sum := 0.0
	for _, run := range r.p.Runs {
		sum += of(run)
	}
	return sum
}

func ratio(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return a / b
}

// densityOf is the density of the weld metal, kg/m³.
func densityOf(r *row) float64 { return float64(r.p.Density) }

// weldRaw is the weld metal before it is rounded, kg.
func weldRaw(r *row) float64 { return float64(r.p.Area) * seamRaw(r) * densityOf(r) / 1e6 }

// runEfficiency is the deposition efficiency of the governing pass.
func runEfficiency(r *row) float64 { return efficiencyOf(r, r.run()) }

func efficiencyOf(r *row, run plan.Run) float64 {
	return ratio(float64(run.Deposit), float64(run.WireFeed)*60*float64(r.p.LinearMass)/1000)
}

// meanEfficiency is weld metal over wire melted, over all passes.
func meanEfficiency(r *row) float64 {
	metal := overRuns(r, func(run plan.Run) float64 { return float64(run.Area) })
	wire := overRuns(r, func(run plan.Run) float64 { return ratio(float64(run.Area), efficiencyOf(r, run)) })
	return ratio(metal, wire)
}

// runShare is the governing pass's share of the area of one seam.
func runShare(r *row) float64 { return ratio(float64(r.run().Area), float64(r.p.Area)) }

// depositRatio is the mean deposition rate over the passes by time, against that
// of the governing pass.
func depositRatio(r *row) float64 {
	metal := overRuns(r, func(run plan.Run) float64 { return float64(run.Arc) * float64(run.Deposit) })
	time := overRuns(r, func(run plan.Run) float64 { return float64(run.Arc) })
	return ratio(ratio(metal, time), float64(r.run().Deposit))
}

// depositOf is the mean deposition rate, kg/h.
func depositOf(r *row) float64 { return float64(r.run().Deposit) * depositRatio(r) }

// powerRatio is the mean arc power over the passes by time, against that of the
// governing pass.
func powerRatio(r *row) float64 {
	energy := overRuns(r, func(run plan.Run) float64 { return float64(run.Voltage) * float64(run.Current) * float64(run.Arc) })
	time := overRuns(r, func(run plan.Run) float64 { return float64(run.Arc) })
	return ratio(ratio(energy, time), float64(r.run().Voltage)*float64(r.run().Current))
}

// energyRatio is the largest arc energy of any pass against that of the governing one.
func energyRatio(r *row) float64 {
	run := r.run()
	return ratio(float64(r.p.ArcEnergyMax), ratio(float64(run.Voltage)*float64(run.Current)*0.06, float64(run.Travel)))
}

// heatFactor is k of the heat input.
func heatFactor(r *row) float64 { return ratio(float64(r.p.HeatMax), float64(r.p.ArcEnergyMax)) }

// arcRaw is the arc time before it is rounded, minutes.
func arcRaw(r *row) float64 { return ratio(weldRaw(r), depositOf(r)) * 60 }
