package workbook

import (
	"fmt"

	"seamtally/batch/price"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
)

// calc is a column of figures that follow from others.
func calc(group, key, head string, u unit, width float64, format string, number func(*row) (float64, bool), formula func(*row) string, about string) column {
	return column{key: key, head: head, unit: u, group: group, width: width, format: format, role: look.Calc,
		fold: true, number: number, formula: formula, about: about}
}

// chosen is a column of figures that the planner chose.
func chosen(group, key, head string, u unit, width float64, format string, number func(*row) (float64, bool), about string) column {
	c := calc(group, key, head, u, width, format, number, nil, about)
	c.role = look.Chosen
	return c
}

// rounded wraps a template so that the figure has the decimals that every output
// gives it.
func rounded(template string, decimals int) string {
	return fmt.Sprintf("ROUND(%s,%d)", template, decimals)
}

// result marks columns that the results file has too.
func result(cols []column, notResults ...string) []column {
	not := map[string]bool{}
	for _, k := range notResults {
		not[k] = true
	}
	for i := range cols {
		cols[i].result = !not[cols[i].key]
	}
	return cols
}

const money = "#,##0.00"

// estimatorColumns are hours and money.
func estimatorColumns(l *layout) []column {
	cur := unit{metric: l.job.Shop.Currency, us: l.job.Shop.Currency}
	const g = "estimator"
	cash := func(key, head string, get func(*row) units.Money, template, about string) column {
		return calc(g, key, head, cur, 11, money, settled(get), always(rounded(template, price.MoneyDecimals)), about)
	}
	cols := []column{
		cash("price", "Price", func(r *row) units.Money { return r.p.Cost.Price }, "[cost]/(1-{margin_pct}/100)", "cost / (1 - margin) (COST-9); no tax"),
		cash("cost", "Cost", func(r *row) units.Money { return r.p.Cost.Total }, "[cost_labour]+[cost_wire]+[cost_gas]+[cost_power]+[cost_other]", "sum of the five parts (COST-8)"),
		calc(g, "seam_m", "Seam", metre, 9, "0.00", known(func(r *row) units.Metre { return r.p.Seam }),
			func(*row) string { return rounded("[seam_raw_m]", price.MetreDecimals) }, "metres actually welded, all copies, sides and stitches"),
		calc(g, "area_drawn_mm2", "Area drawn", mm2, 9, "0.0", known(func(r *row) units.MM2 { return r.p.AreaDrawn }), drawnFormula, "one seam as drawn (AREA-1, 7, 9, 11, 13 to 16)"),
		calc(g, "area_mm2", "Area made", mm2, 9, "0.0", known(func(r *row) units.MM2 { return r.p.Area }), madeFormula, "one seam with the shop's allowances (AREA-6, 8, 10, 12 to 15, 17)"),
		calc(g, "weld_kg", "Weld metal", kilo, 9, "0.000", known(func(r *row) units.Kg { return r.p.WeldMetal }),
			func(*row) string { return rounded("[weld_raw_kg]", price.KgDecimals) }, "area x seam x density of the weld metal"),
		calc(g, "labour_min", "Labour", minute, 9, "0.0", settled(func(r *row) units.Minute { return r.p.Cost.Labour.Total }),
			always(rounded("[labour_raw_min]", price.MinuteDecimals)), "all labour parts, site factor included (COST-1)"),
		calc(g, "arc_min", "Arc time", minute, 9, "0.0", settled(func(r *row) units.Minute { return r.p.Arc }),
			always(rounded("[arc_raw_min]", price.MinuteDecimals)), "weld metal / deposition rate"),
		cash("cost_labour", "Labour cost", func(r *row) units.Money { return r.p.Cost.LabourCost }, "[labour_raw_min]/60*{labour_rate}*(1+{overhead_pct}/100)", "labour with overhead (COST-2)"),
		cash("cost_wire", "Wire cost", func(r *row) units.Money { return r.p.Cost.Wire }, "[weld_raw_kg]/[efficiency]*(1+{waste_pct}/100)*[wire_price]", "wire bought x price (COST-3)"),
		cash("cost_gas", "Gas cost", func(r *row) units.Money { return r.p.Cost.Gas }, "[gas_raw_l]*[gas_price]", "gas x cylinder price / cylinder content (COST-4)"),
		cash("cost_power", "Power cost", func(r *row) units.Money { return r.p.Cost.Power }, "[energy_raw_kwh]*{power_price}", "energy x power price (COST-6)"),
		cash("cost_other", "Other cost", func(r *row) units.Money { return r.p.Cost.Other },
			"[tip_cost]+[seam_raw_m]*([spatter_min_m]+[slag_min_m])*({labour_rate}*(1+{overhead_pct}/100)/60)", "contact tips, spatter and slag cleaning (COST-7)"),
		calc(g, "energy_kwh", "Energy", kilowH, 9, "0.00", settled(func(r *row) units.KWh { return r.p.Cost.Energy }),
			always(rounded("[energy_raw_kwh]", price.KWhDecimals)), "arc energy / source efficiency + idle power (COST-5)"),
	}
	cols[0].fold = false
	return append(steady(result(cols), "area_drawn_mm2", "area_mm2"), labourColumns()...)
}

// labourColumns are the parts of the labour, each with its site factor.
func labourColumns() []column {
	part := func(key, head, template string, get func(*row) units.Minute, about string) column {
		value := func(r *row) (float64, bool) {
			return float64(get(r)) * r.p.Cost.Labour.SiteFactor, r.p.Settings
		}
		return calc("estimator", key, head, minute, 9, "0.0", value, always("("+template+")*[site_x]"), about)
	}
	const share = "MIN({operating_factor},[duty])"
	return []column{
		part("handling_min", "of which handling", "[qty]*{joint_min}", func(r *row) units.Minute { return r.p.Cost.Labour.Joint }, "fetch, place, clamp, read the sheet: joint_min for each joint"),
		part("fitup_min", "of which fit-up", "[seam_raw_m]*{fitup_min_m}", func(r *row) units.Minute { return r.p.Cost.Labour.Fitup }, "fitting and tacking, its own line and not inside the operating factor"),
		part("clean_min", "of which cleaning", "[seam_raw_m]*{clean_min_m}", func(r *row) units.Minute { return r.p.Cost.Labour.Clean }, "brushing and grinding"),
		part("between_min", "of which between passes", "MAX([passes]-1,0)*{between_pass_min}*[seams]", func(r *row) units.Minute { return r.p.Cost.Labour.BetweenPass }, "each pass after the first, each seam"),
		part("arc_on_min", "of which arc on", "[arc_raw_min]", func(r *row) units.Minute { return r.p.Cost.Labour.Arc }, "the arc burns"),
		part("arc_off_min", "of which arc off", "[arc_raw_min]/"+share+"-[arc_raw_min]", func(r *row) units.Minute { return r.p.Cost.Labour.Idle }, "at the weld without arc: arc / min(operating factor, duty) - arc"),
		part("rework_min", "of which rework", "[arc_raw_min]/"+share+"*{rework_pct}/100", func(r *row) units.Minute { return r.p.Cost.Labour.Rework }, "rework share of the time at the weld"),
	}
}

// foremanColumns are what to fetch and to buy.
func foremanColumns() []column {
	const g = "foreman"
	word := func(key, head string, width float64, get func(*row) string, about string) column {
		return column{key: key, head: head, group: g, width: width, role: look.Chosen, fold: true, words: get, about: about}
	}
	waste := "[weld_raw_kg]/[efficiency]*(1+{waste_pct}/100)"
	cols := []column{
		word("filler", "Wire", 13, func(r *row) string { return r.l.names.Filler(r.p.Filler) }, "standard class; chosen by the planner or asked for by the list"),
		chosen(g, "wire_mm", "Wire dia.", mm, 7, "0.0", known(func(r *row) units.MM { return r.p.Dia }), "diameter"),
		word("gas", "Gas", 7, func(r *row) string { return r.p.Gas }, "ISO 14175 designation"),
		word("process", "Process", 8, func(r *row) string { return r.p.Process }, "ISO 4063 number"),
		word("machine", "Machine", 20, func(r *row) string { return r.p.Machine }, "chosen machine; blank if none fits"),
		chosen(g, "passes", "Passes", none, 7, "0", func(r *row) (float64, bool) { return float64(r.p.Passes()), r.p.Passes() > 0 }, "of one seam"),
		calc(g, "wire_kg", "Wire to buy", kilo, 9, "0.000", settled(func(r *row) units.Kg { return r.p.WireKg }), always(rounded(waste, price.KgDecimals)), "weld metal / efficiency x (1 + waste)"),
		calc(g, "wire_m", "Wire length", metre, 9, "0", settled(func(r *row) units.Metre { return r.p.WireM }), always(waste+"/[linear_g_m]*1000"), "wire / linear mass"),
		calc(g, "gas_l", "Gas", litre, 9, "0", shielded(func(r *row) units.Litre { return r.p.GasL }), gassed(rounded("[gas_raw_l]", price.LitreDecimals)), "flow x (arc time + starts x (pre-flow + post-flow))"),
	}
	cols[0].fold = false
	return steady(result(cols), "filler", "wire_mm", "gas", "process", "machine", "passes")
}

// welderColumns are the settings: starting points for a test bead.
func welderColumns() []column {
	const g = "welder"
	word := func(key, head string, width float64, get func(*row) string, about string) column {
		return column{key: key, head: head, group: g, width: width, role: look.Chosen, fold: true, words: get, about: about}
	}
	cols := []column{
		chosen(g, "wfs_m_min", "Wire feed", feed, 8, "0.0", settled(func(r *row) units.MMin { return r.run().WireFeed }), "start value of the governing pass"),
		chosen(g, "voltage_v", "Voltage", volt, 8, "0.0", settled(func(r *row) units.Volt { return r.run().Voltage }), "at the arc"),
		chosen(g, "stickout_mm", "Stick-out", mm, 8, "0", known(func(r *row) units.MM { return units.MM(r.p.Stickout.Start) }), "contact tip to work"),
		chosen(g, "gas_l_min", "Gas flow", flow, 8, "0", known(func(r *row) units.LMin { return units.LMin(r.p.GasFlow.Start) }), "at the nozzle"),
		word("polarity", "Polarity", 24, func(r *row) string { return r.p.Polarity }, "of the wire"),
		word("transfer", "Transfer", 10, func(r *row) string { return string(r.p.Mode()) }, "how metal crosses the arc"),
		calc(g, "travel_mm_min", "Travel", travel, 8, "0", along(func(r *row) units.MMMin { return r.run().Travel }),
			moving("[run_deposit_kg_h]/60/([area_mm2]*[run_share]*[density]*0.000000001)"), "deposition rate / (density x area of the pass) (TRAVEL-1)"),
		chosen(g, "current_a", "Current", amp, 8, "0", settled(func(r *row) units.Amp { return r.run().Current }), "a result of the wire feed, not a knob"),
		chosen(g, "current_low_a", "Current from", amp, 8, "0", known(func(r *row) units.Amp { return units.Amp(r.p.Current.Low) }), "working window"),
		chosen(g, "current_high_a", "Current to", amp, 8, "0", known(func(r *row) units.Amp { return units.Amp(r.p.Current.High) }), "working window"),
		calc(g, "deposit_kg_h", "Deposition", kiloH, 11, "0.00", settled(func(r *row) units.KgH { return units.KgH(depositOf(r)) }),
			always("[run_deposit_kg_h]*[deposit_ratio]"), "while the arc burns, mean over the passes by time"),
		calc(g, "arc_energy_kj_mm", "Arc energy", heat, 8, "0.00", along(func(r *row) units.KJMM { return r.p.ArcEnergyMax }),
			moving("[voltage_v]*[current_a]*0.06/[travel_mm_min]*[energy_ratio]"), "largest of any pass, without k"),
		calc(g, "heat_kj_mm", "Heat input", heat, 8, "0.00", along(func(r *row) units.KJMM { return r.p.HeatMax }),
			moving("[arc_energy_kj_mm]*[heat_k]"), "largest of any pass, with k (EN 1011-1)"),
		chosen(g, "preheat_c", "Preheat", celsius, 8, "0", func(r *row) (float64, bool) { return fromPointer(r.p.Preheat) }, "ferritic steel only"),
		chosen(g, "interpass_c", "Interpass max.", celsius, 9, "0", func(r *row) (float64, bool) { return fromPointer(r.p.Interpass) }, "not above this"),
		word("t85_s", "t8/5 s", 13, t85Text, "cooling time; a pair where the shape factor is a range"),
		word("torch", "Torch", 50, func(r *row) string { return r.p.Torch }, "angle and direction"),
		word("trigger", "Trigger", 19, func(r *row) string { return r.p.Trigger }, "two or four strokes"),
		word("inductance", "Inductance", 52, func(r *row) string { return r.p.Inductance }, "setting in words"),
	}
	cols[0].fold = false
	return steady(result(cols))
}

func fromPointer[T ~float64](v *T) (float64, bool) {
	if v == nil {
		return 0, false
	}
	return float64(*v), true
}

func t85Text(r *row) string {
	if r.p.T85 == nil {
		return ""
	}
	low, high := float64(r.p.T85[0]), float64(r.p.T85[1])
	if low == high {
		return fmt.Sprintf("%.1f", low)
	}
	return fmt.Sprintf("%.1f to %.1f", low, high)
}

// along is settled for figures per length of a pass: a hole filled on the spot has
// none.
func along[T ~float64](get func(*row) T) func(*row) (float64, bool) {
	return func(r *row) (float64, bool) {
		v, ok := settled(get)(r)
		return v, ok && r.p.Travel.Start > 0
	}
}

// moving is always for formulas of such figures.
func moving(template string) func(*row) string {
	return func(r *row) string {
		if r.p.Travel.Start <= 0 {
			return ""
		}
		return always(template)(r)
	}
}

// shielded is a number that is there whenever the joint is welded under a gas.
func shielded[T ~float64](get func(*row) T) func(*row) (float64, bool) {
	return func(r *row) (float64, bool) {
		if !r.p.Settings || r.p.Gas == "" {
			return 0, false
		}
		return float64(get(r)), true
	}
}

// gassed is always for joints that are welded under a gas.
func gassed(template string) func(*row) string {
	return func(r *row) string {
		if !r.p.Settings || r.p.Gas == "" {
			return ""
		}
		return template
	}
}
