package report

import (
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/units"
)

// row is one joint under the result keys. The order of the fields is the order
// of the columns; per joint means all its copies, sides and stitches.
type row struct {
	Mark     string `csv:"mark" json:"mark"`
	Row      number `csv:"row" json:"row"`
	Assembly string `csv:"assembly" json:"assembly"`
	Qty      number `csv:"qty" json:"qty"`
	Kind     string `csv:"kind" json:"kind"`

	SeamM     number `csv:"seam_m" json:"seam_m"`
	AreaDrawn number `csv:"area_drawn_mm2" json:"area_drawn_mm2"`
	Area      number `csv:"area_mm2" json:"area_mm2"`
	WeldKg    number `csv:"weld_kg" json:"weld_kg"`

	Process  string `csv:"process" json:"process"`
	Filler   string `csv:"filler" json:"filler"`
	WireMM   number `csv:"wire_mm" json:"wire_mm"`
	Gas      string `csv:"gas" json:"gas"`
	Transfer string `csv:"transfer" json:"transfer"`
	Passes   number `csv:"passes" json:"passes"`

	Current     number `csv:"current_a" json:"current_a"`
	CurrentLow  number `csv:"current_low_a" json:"current_low_a"`
	CurrentHigh number `csv:"current_high_a" json:"current_high_a"`
	Voltage     number `csv:"voltage_v" json:"voltage_v"`
	WireFeed    number `csv:"wfs_m_min" json:"wfs_m_min"`
	Travel      number `csv:"travel_mm_min" json:"travel_mm_min"`
	GasFlow     number `csv:"gas_l_min" json:"gas_l_min"`
	Stickout    number `csv:"stickout_mm" json:"stickout_mm"`
	Polarity    string `csv:"polarity" json:"polarity"`
	Torch       string `csv:"torch" json:"torch"`
	Trigger     string `csv:"trigger" json:"trigger"`
	Inductance  string `csv:"inductance" json:"inductance"`

	Deposit   number `csv:"deposit_kg_h" json:"deposit_kg_h"`
	WireKg    number `csv:"wire_kg" json:"wire_kg"`
	WireM     number `csv:"wire_m" json:"wire_m"`
	GasL      number `csv:"gas_l" json:"gas_l"`
	ArcMin    number `csv:"arc_min" json:"arc_min"`
	LabourMin number `csv:"labour_min" json:"labour_min"`
	EnergyKWh number `csv:"energy_kwh" json:"energy_kwh"`
	Heat      number `csv:"heat_kj_mm" json:"heat_kj_mm"`
	ArcEnergy number `csv:"arc_energy_kj_mm" json:"arc_energy_kj_mm"`
	Preheat   number `csv:"preheat_c" json:"preheat_c"`
	Interpass number `csv:"interpass_c" json:"interpass_c"`
	T85       pair   `csv:"t85_s" json:"t85_s"`
	Machine   string `csv:"machine" json:"machine"`

	CostLabour number `csv:"cost_labour" json:"cost_labour"`
	CostWire   number `csv:"cost_wire" json:"cost_wire"`
	CostGas    number `csv:"cost_gas" json:"cost_gas"`
	CostPower  number `csv:"cost_power" json:"cost_power"`
	CostOther  number `csv:"cost_other" json:"cost_other"`
	Cost       number `csv:"cost" json:"cost"`
	Price      number `csv:"price" json:"price"`

	Checks checks `csv:"checks" json:"checks"`
	Runs   []run  `csv:"-" json:"runs"`

	// What preheat was found by, or why there is none; and how much one seam draws
	// the parts together across itself, for who cuts them.
	PreheatText string `csv:"-" json:"preheat_text"`
	ShrinkLow   number `csv:"-" json:"shrink_low_mm"`
	ShrinkHigh  number `csv:"-" json:"shrink_high_mm"`
}

// Decimals of figures that are not summed: finer than any dial or gauge.
const (
	sizeDecimals    = 3
	settingDecimals = 3
	heatDecimals    = 4
)

func newRow(p *plan.Plan) row {
	j := p.Joint
	r := row{
		Mark: j.Mark, Row: count(j.Place.Row), Assembly: j.Assembly, Qty: count(j.Qty), Kind: string(p.Prep.Kind),
		SeamM: of(p.Seam, price.MetreDecimals), AreaDrawn: positive(p.AreaDrawn, sizeDecimals), Area: positive(p.Area, sizeDecimals),
		WeldKg: positive(p.WeldMetal, price.KgDecimals), Checks: newChecks(p.Checks),
	}
	if r.Kind == "" {
		r.Kind = string(j.Kind)
	}
	if p.Settings {
		r.settings(p)
		r.quantities(p)
	}
	r.temperatures(p)
	if price.Priced(p) {
		r.money(p)
	}
	return r
}

func (r *row) settings(p *plan.Plan) {
	r.Process, r.Filler, r.Gas, r.Transfer, r.Machine = p.Process, p.Filler, p.Gas, string(p.Mode()), p.Machine
	r.WireMM, r.Passes = of(p.Dia, sizeDecimals), count(p.Passes())
	r.Current, r.CurrentLow, r.CurrentHigh = setting(p.Current.Start), setting(p.Current.Low), setting(p.Current.High)
	r.Voltage, r.WireFeed, r.Travel = setting(p.Voltage.Start), setting(p.WireFeed.Start), setting(p.Travel.Start)
	r.GasFlow, r.Stickout = setting(p.GasFlow.Start), setting(p.Stickout.Start)
	r.Polarity, r.Torch, r.Trigger, r.Inductance = p.Polarity, p.Torch, p.Trigger, p.Inductance
}

func setting(x float64) number { return positive(x, settingDecimals) }

func (r *row) quantities(p *plan.Plan) {
	r.Deposit, r.WireKg, r.WireM = positive(p.Deposit, settingDecimals), of(p.WireKg, price.KgDecimals), of(p.WireM, sizeDecimals)
	if p.Gas != "" {
		r.GasL = of(p.GasL, price.LitreDecimals)
	}
	r.ArcMin = positive(p.Arc, price.MinuteDecimals)
	r.Heat, r.ArcEnergy = positive(p.HeatMax, heatDecimals), positive(p.ArcEnergyMax, heatDecimals)
}

func (r *row) temperatures(p *plan.Plan) {
	if p.Preheat != nil {
		r.Preheat = of(*p.Preheat, 1)
	}
	if p.Interpass != nil {
		r.Interpass = of(*p.Interpass, 1)
	}
	r.PreheatText = p.PreheatWords
	if p.Shrink != nil {
		r.ShrinkLow, r.ShrinkHigh = of(p.Shrink[0], 2), of(p.Shrink[1], 2)
	}
	if p.T85 != nil {
		r.T85 = pair{of(p.T85[0], 2), of(p.T85[1], 2)}
	}
}

func (r *row) money(p *plan.Plan) {
	c := p.Cost
	r.LabourMin, r.EnergyKWh = of(c.Labour.Total, price.MinuteDecimals), of(c.Energy, price.KWhDecimals)
	amount := func(m units.Money) number { return of(m, price.MoneyDecimals) }
	r.CostLabour, r.CostWire, r.CostGas, r.CostPower, r.CostOther = amount(c.LabourCost), amount(c.Wire), amount(c.Gas), amount(c.Power), amount(c.Other)
	if p.Gas == "" {
		r.CostGas = unknown
	}
	r.Cost, r.Price = amount(c.Total), amount(c.Price)
}

// run is one pass of one seam.
type run struct {
	Pass      int    `json:"pass"`
	Layer     int    `json:"layer"`
	Bead      int    `json:"bead"`
	Side      int    `json:"side"`
	Kind      string `json:"kind"`
	Area      number `json:"area_mm2"`
	Current   number `json:"current_a"`
	Voltage   number `json:"voltage_v"`
	WireFeed  number `json:"wfs_m_min"`
	Travel    number `json:"travel_mm_min"`
	Heat      number `json:"heat_kj_mm"`
	ArcEnergy number `json:"arc_energy_kj_mm"`
	Deposit   number `json:"deposit_kg_h"`
	Transfer  string `json:"transfer"`
	Technique string `json:"technique"`
	Stickout  number `json:"stickout_mm"`
	GasFlow   number `json:"gas_l_min"`
}

func newRuns(p *plan.Plan) []run {
	runs := []run{}
	for _, r := range p.Runs {
		runs = append(runs, run{
			Pass: r.Number, Layer: r.Layer, Bead: r.Bead, Side: r.Side, Kind: string(r.Kind), Transfer: string(r.Transfer), Technique: r.Technique,
			Area: positive(r.Area, sizeDecimals), Current: positive(r.Current, settingDecimals), Voltage: positive(r.Voltage, settingDecimals),
			WireFeed: positive(r.WireFeed, settingDecimals), Travel: positive(r.Travel, settingDecimals),
			Heat: positive(r.Heat, heatDecimals), ArcEnergy: positive(r.ArcEnergy, heatDecimals), Deposit: positive(r.Deposit, settingDecimals),
			Stickout: setting(r.Stickout.Start), GasFlow: setting(r.GasFlow.Start),
		})
	}
	return runs
}
