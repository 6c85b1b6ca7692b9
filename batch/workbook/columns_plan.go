package workbook

import (
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
)

// planColumns are the planner's own figures that the formulas read, and the
// figures before they are rounded.
func planColumns() []column {
	const g = "plan"
	arced := func(depth func(*row) units.MM) func(*row) (float64, bool) {
		return func(r *row) (float64, bool) { return arcOf(r, depth(r)) }
	}
	real := func(get func(*row) float64) func(*row) (float64, bool) {
		return func(r *row) (float64, bool) { v := get(r); return v, v != 0 }
	}
	withSettings := func(get func(*row) float64) func(*row) (float64, bool) {
		return func(r *row) (float64, bool) { return get(r), r.p.Settings }
	}
	cols := []column{
		calc(g, "seams", "Seams", none, 7, "0", real(seamsOf), seamsFormula, "separate seams: copies, and sides of a fillet"),
		calc(g, "segments", "Stitches", none, 8, "0", func(r *row) (float64, bool) { return float64(r.p.Segments), r.p.Segments > 0 }, segmentsFormula, "of one seam; blank for a continuous one"),
		chosen(g, "stitch_mm", "Stitch length", mm, 8, "0.##", stitched(func(r *row) float64 { return float64(r.j.Stitch.Segment) }), "of one stitch"),
		chosen(g, "stitch_gap_mm", "Stitch gap", mm, 8, "0.##", stitched(stitchGap), "clear distance between stitches"),
		calc(g, "arc_deg", "Root arc", degree, 8, "0.0", arced(func(r *row) units.MM { return r.p.Prep.Depth }), arcFormula("depth_mm"), "angle of the arc at the root of a U or J, first side"),
		calc(g, "arc2_deg", "Root arc 2", degree, 8, "0.0", arced(func(r *row) units.MM { return r.p.Prep.Depth2 }), arcFormula("depth2_mm"), "the same on the second side"),
		calc(g, "made_a_mm", "Leg A made", mm, 8, "0.00", known(func(r *row) units.MM { return r.p.Prep.WeldLegA }),
			grownFormula("leg_a_mm", func(r *row) (a, b units.MM) { return r.p.Prep.LegA, r.p.Prep.WeldLegA }), "leg with overweld and fit-up gap"),
		calc(g, "made_b_mm", "Leg B made", mm, 8, "0.00", known(func(r *row) units.MM { return r.p.Prep.WeldLegB }),
			grownFormula("leg_b_mm", func(r *row) (a, b units.MM) { return r.p.Prep.LegB, r.p.Prep.WeldLegB }), "leg with overweld and fit-up gap"),
		chosen(g, "density", "Weld metal density", density, 9, "0", real(densityOf), "table of densities"),
		calc(g, "seam_raw_m", "Seam unrounded", metre, 10, "0.0000", real(seamRaw), seamFormula, "seams x length, or x stitches x stitch length; of a hole the depth filled"),
		calc(g, "weld_raw_kg", "Weld metal unrounded", kilo, 10, "0.0000", real(weldRaw), func(*row) string { return "[area_mm2]*[seam_raw_m]*[density]/1000000" }, "area x seam x density"),
		chosen(g, "linear_g_m", "Wire mass", gramM, 9, "0.00", known(func(r *row) units.GramM { return r.p.LinearMass }), "table of wires"),
		chosen(g, "efficiency", "Efficiency", none, 9, "0.000", withSettings(meanEfficiency), "weld metal / wire melted, all passes"),
		chosen(g, "run_efficiency", "Efficiency of the pass", none, 9, "0.000", withSettings(runEfficiency), "of the governing pass"),
		chosen(g, "run_share", "Share of the pass", none, 9, "0.000", withSettings(runShare), "area of the governing pass / area of the seam"),
		calc(g, "run_deposit_kg_h", "Deposition of the pass", kiloH, 10, "0.00", settled(func(r *row) units.KgH { return r.run().Deposit }),
			always("[wfs_m_min]*60*[linear_g_m]/1000*[run_efficiency]"), "wire feed x wire mass x efficiency (DEPO-1)"),
		chosen(g, "deposit_ratio", "Mean / pass, deposition", none, 10, "0.000", withSettings(depositRatio), "mean over the passes against the governing one"),
		chosen(g, "power_ratio", "Mean / pass, power", none, 10, "0.000", withSettings(powerRatio), "mean over the passes against the governing one"),
		chosen(g, "energy_ratio", "Largest / pass, arc energy", none, 10, "0.000", withSettings(energyRatio), "largest of any pass against the governing one"),
		chosen(g, "heat_k", "k", none, 6, "0.00", withSettings(heatFactor), "thermal efficiency (EN 1011-1)"),
		calc(g, "arc_raw_min", "Arc time unrounded", minute, 10, "0.0000", withSettings(arcRaw), always("[weld_raw_kg]/[deposit_kg_h]*60"), "weld metal / deposition rate"),
		calc(g, "starts", "Starts", none, 8, "0.0", withSettings(func(r *row) float64 { return r.p.Starts }), startsFormula, "seams x passes x stitches, or per metre of a continuous seam, at least one"),
		calc(g, "gas_raw_l", "Gas unrounded", litre, 10, "0.0", withSettings(gasRaw), always("[gas_l_min]*([arc_raw_min]+[starts]*({preflow_s}+{postflow_s})/60)"), "flow x (arc + starts x (pre-flow + post-flow))"),
		calc(g, "site_x", "Site factor", none, 8, "0.00", withSettings(siteFactor), siteFormula, "site_factor on site, else 1"),
		chosen(g, "duty", "Duty", none, 7, "0.00", withSettings(dutyOf), "arc-on share that the machine bears"),
		calc(g, "labour_raw_min", "Labour unrounded", minute, 10, "0.0000", withSettings(labourRaw),
			always("[handling_min]+[fitup_min]+[clean_min]+[between_min]+[arc_on_min]+[arc_off_min]+[rework_min]"), "sum of its parts"),
		calc(g, "energy_raw_kwh", "Energy unrounded", kilowH, 10, "0.0000", withSettings(energyRaw),
			always("[voltage_v]*[current_a]*[power_ratio]*[arc_raw_min]/60/1000/{source_efficiency}+MAX([labour_raw_min]-[arc_raw_min],0)/60*{idle_w}/1000"), "arc power x time / source efficiency + idle power x the rest"),
		calc(g, "wire_price", "Wire price per kg", none, 9, money, withSettings(wirePrice), wirePriceFormula, "from the Rates sheet"),
		calc(g, "gas_price", "Gas price per l", none, 9, "0.0000", withSettings(gasPrice), gasPriceFormula, "cylinder price / cylinder content"),
		calc(g, "spatter_min_m", "Spatter min/m", none, 9, "0.00", withSettings(spatterOf), spatterFormula, "by transfer and gas"),
		calc(g, "slag_min_m", "Slag min/m", none, 9, "0.00", slagged, slagFormula, "passes x slag_min_m, for wires that leave a slag"),
		calc(g, "tip_cost", "Tips", none, 8, money, withSettings(func(r *row) float64 { return tipCost(r) }), tipFormula, "arc hours / life of a tip x its price"),
		calc(g, "drawn_kg", "Weld metal as drawn", kilo, 10, "0.000", real(drawnKg), func(*row) string { return "[weld_kg]*([area_drawn_mm2]/[area_mm2])" }, "weld metal of the drawn geometry alone"),
		calc(g, "over_cost", "Cost of allowances", none, 10, money, withSettings(overCost),
			always("(1-[area_drawn_mm2]/[area_mm2])*(([arc_on_min]+[arc_off_min]+[rework_min])/60*{labour_rate}*(1+{overhead_pct}/100)+[cost_wire]+[cost_gas]+[cost_power]+[tip_cost])"), "the allowances' share of what follows the arc (OVER-1)"),
		chosen(g, "travel_low_mm_min", "Travel from", travel, 8, "0", known(func(r *row) units.MMMin { return units.MMMin(r.p.Travel.Low) }), "range for position and technique"),
		chosen(g, "travel_high_mm_min", "Travel to", travel, 8, "0", known(func(r *row) units.MMMin { return units.MMMin(r.p.Travel.High) }), "range for position and technique"),
		chosen(g, "heat_low_kj_mm", "Heat from", heat, 8, "0.00", known(func(r *row) units.KJMM { return r.p.HeatRange[0] }), "least that steel or procedure allows; blank: none"),
		chosen(g, "heat_high_kj_mm", "Heat to", heat, 8, "0.00", known(func(r *row) units.KJMM { return r.p.HeatRange[1] }), "most that steel or procedure allows; blank: none"),
	}
	cols = steady(cols, "arc_deg", "arc2_deg", "made_a_mm", "made_b_mm", "density", "linear_g_m", "efficiency", "run_efficiency", "run_share",
		"run_deposit_kg_h", "deposit_ratio", "power_ratio", "energy_ratio", "heat_k", "site_x", "duty", "wire_price", "gas_price",
		"spatter_min_m", "slag_min_m", "travel_low_mm_min", "travel_high_mm_min", "heat_low_kj_mm", "heat_high_kj_mm")
	cols = append(cols, plannedColumns()...)
	return append(cols, groupColumns()...)
}

// unlinked is a figure that our own column holds where it does not follow a cell of
// the list; without formulas none does.
func unlinked[T ~float64](key string, link func(*row, string, float64) string, get func(*row) T) func(*row) (float64, bool) {
	return func(r *row) (float64, bool) {
		v := float64(get(r))
		return v, v > 0 && (!r.l.live || link(r, key, v) == "")
	}
}

// plannedColumns keep what the plan was made from, for the cell "plan fits".
func plannedColumns() []column {
	var cols []column
	for _, p := range plannedFrom {
		u := mm
		if p.now == "angle_deg" {
			u = degree
		}
		cols = append(cols, chosen("plan", p.then, p.head, u, 8, "0.##", p.value, "as it stood when the plan was made"))
	}
	cols = append(steady(cols),
		chosen("plan", "planned_length_mm", "Read length", mm, 8, "0.##", unlinked("length", (*row).link, lengthUsed), "as it was read, where our column does not follow the list's"),
		chosen("plan", "planned_qty", "Read qty", none, 7, "0", unlinked("qty", (*row).count, func(r *row) float64 { return float64(r.j.Qty) }), "as it was read, where our column does not follow the list's"),
		chosen("plan", "planned_sides", "Read sides", none, 7, "0", unlinked("sides", (*row).count, func(r *row) float64 { return float64(r.j.Sides) }), "as it was read, where our column does not follow the list's"))
	return append(cols, column{key: "words_read", head: "Words read", group: "plan", width: 30, role: look.Chosen, fold: true,
		words: func(r *row) string {
			if !r.p.Settings {
				return ""
			}
			return r.wordsRead()
		}, about: "the words of the row that the plan was made from"})
}

// stitched is a figure of rows with a stitch note.
func stitched(get func(*row) float64) func(*row) (float64, bool) {
	return func(r *row) (float64, bool) {
		if r.j.Stitch == nil || r.p.Segments == 0 {
			return 0, false
		}
		return get(r), true
	}
}

// groupColumns name what the totals and the buy list add up by.
func groupColumns() []column {
	word := func(key, head string, get func(*row) string) column {
		return column{key: key, head: head, group: "plan", width: 14, role: look.Chosen, fold: true, words: get,
			about: "name under which the row is added up"}
	}
	settled := func(get func(*row) string) func(*row) string {
		return func(r *row) string {
			if !r.p.Settings {
				return price.NoSettings
			}
			return get(r)
		}
	}
	or := func(text, instead string) string {
		if text == "" {
			return instead
		}
		return text
	}
	return steady([]column{
		word("by_assembly", "By assembly", func(r *row) string { return or(r.j.Assembly, price.NoAssembly) }),
		word("by_wire", "By wire", settled(func(r *row) string { return rates.WireName(r.l.names.Filler(r.p.Filler), r.p.Dia) + " mm" })),
		word("by_gas", "By gas", settled(func(r *row) string { return or(r.p.Gas, price.NoGas) })),
		word("by_process", "By process", settled(func(r *row) string { return r.p.Process })),
		word("by_position", "By position", func(r *row) string { return or(r.l.names.Position(r.p), price.NoPosition) }),
		word("by_tip", "By tip", settled(func(r *row) string { return "contact tip " + diaText(r) + " mm" })),
	}, "by_wire", "by_gas", "by_process", "by_position", "by_tip")
}

func gasRaw(r *row) float64 {
	s := r.shop()
	return r.p.GasFlow.Start * (arcRaw(r) + r.p.Starts*float64(s.Preflow+s.Postflow)/60)
}

func siteFactor(r *row) float64 { return r.p.Cost.Labour.SiteFactor }

func siteFormula(r *row) string {
	if r.j.Where == joint.Site && r.p.Settings {
		return "{site_factor}"
	}
	return ""
}

// dutyOf is 1 where the machine sets no limit.
func dutyOf(r *row) float64 {
	if r.p.Duty <= 0 {
		return 1
	}
	return r.p.Duty
}

func labourRaw(r *row) float64 {
	l := r.p.Cost.Labour
	return float64(l.Joint+l.Fitup+l.Clean+l.BetweenPass+l.Arc+l.Idle+l.Rework) * l.SiteFactor
}

func energyRaw(r *row) float64 {
	run, s := r.run(), r.shop()
	arc := arcRaw(r)
	watts := float64(run.Voltage) * float64(run.Current) * powerRatio(r)
	return ratio(watts*arc/60/1000, s.SourceEfficiency) + max(labourRaw(r)-arc, 0)/60*s.IdleW/1000
}

func wirePrice(r *row) float64 {
	w, _ := r.shop().Wire(r.p.Filler, r.p.Dia)
	return float64(w.PerKg)
}

func wirePriceFormula(r *row) string {
	if !r.p.Settings {
		return ""
	}
	class := "wire_price." + r.p.Filler
	for _, key := range []string{"wire_price." + r.p.Filler + "." + diaText(r), class} {
		if v, ok := r.shop().Value(key); ok && v.Num == wirePrice(r) {
			return "{" + key + "}"
		}
	}
	return ""
}

// diaText is a diameter as the keys of the shop's values spell it.
func diaText(r *row) string { return rates.WireName("", r.p.Dia)[1:] }

func gasPrice(r *row) float64 {
	g, _ := r.shop().Gas(r.p.Gas)
	return float64(g.PerLitre())
}

func gasPriceFormula(r *row) string {
	if !r.p.Settings || r.p.Gas == "" {
		return ""
	}
	return "{cylinder_price." + r.p.Gas + "}/{cylinder_l." + r.p.Gas + "}"
}

func spatterOf(r *row) float64 {
	return rates.SpatterMinM(string(r.p.Transfer), r.p.Gas, r.shop())
}

// slagged is the minutes of taking the slag off a metre of seam.
func slagged(r *row) (float64, bool) {
	return r.shop().SlagMinM * float64(r.p.Passes()), r.p.Settings && r.p.Slag
}

func slagFormula(r *row) string {
	if !r.p.Settings || !r.p.Slag {
		return ""
	}
	return "[passes]*{slag_min_m}"
}

func spatterFormula(r *row) string {
	if !r.p.Settings {
		return ""
	}
	mode := "spatter_min_m." + strings.ReplaceAll(string(r.p.Transfer), " ", "_")
	for _, key := range []string{mode + "." + r.p.Gas, mode} {
		if v, ok := r.shop().Value(key); ok && v.Num == spatterOf(r) {
			return "{" + key + "}"
		}
	}
	return ""
}

func tipCost(r *row) float64 { return float64(r.shop().TipCost(units.Minute(arcRaw(r)))) }

func tipFormula(r *row) string {
	if r.shop().TipLifeH <= 0 {
		return ""
	}
	return always("[arc_raw_min]/60/{tip_life_h}*{tip_price}")(r)
}

func drawnKg(r *row) float64 {
	return float64(r.p.WeldMetal) * ratio(float64(r.p.AreaDrawn), float64(r.p.Area))
}

// overCost is what the allowances cost: their share of what follows the arc.
func overCost(r *row) float64 {
	l, s := r.p.Cost.Labour, r.shop()
	labour := float64(l.Arc+l.Idle+l.Rework) * l.SiteFactor / 60 * float64(s.LabourCostPerHour())
	share := 1 - ratio(float64(r.p.AreaDrawn), float64(r.p.Area))
	return share * (labour + float64(r.p.Cost.Wire+r.p.Cost.Gas+r.p.Cost.Power) + tipCost(r))
}
