package report

import (
	"seamtally/batch/price"
	"seamtally/batch/units"
)

// sum is a total over some joints; its names are those of the result keys.
type sum struct {
	Name      string `json:"name,omitempty"`
	Joints    int    `json:"joints"`
	Copies    int    `json:"copies"`
	SeamM     number `json:"seam_m"`
	WeldKg    number `json:"weld_kg"`
	WireKg    number `json:"wire_kg"`
	GasL      number `json:"gas_l"`
	ArcMin    number `json:"arc_min"`
	LabourMin number `json:"labour_min"`
	EnergyKWh number `json:"energy_kwh"`
	Cost      number `json:"cost"`
	Price     number `json:"price"`
}

// totals of a job. cost and price of the sum are those of the joints; job_cost
// and job_price hold the change-overs too.
type totals struct {
	sum
	CostLabour      number    `json:"cost_labour"`
	CostWire        number    `json:"cost_wire"`
	CostGas         number    `json:"cost_gas"`
	CostPower       number    `json:"cost_power"`
	CostOther       number    `json:"cost_other"`
	ChangeOvers     int       `json:"change_overs"`
	ChangeOverMin   number    `json:"change_over_min"`
	ChangeOverCost  number    `json:"change_over_cost"`
	ChangeOverPrice number    `json:"change_over_price"`
	JobCost         number    `json:"job_cost"`
	JobPrice        number    `json:"job_price"`
	MachineNeeds    *needs    `json:"machine_needs"` // null: no joint has settings
	PayBack         []payBack `json:"pay_back"`      // of the machines that the shop has not
	PriceLow        number    `json:"price_low"`     // a twentieth of the draws lies below, a twentieth above price_high
	PriceMid        number    `json:"price_mid"`
	PriceHigh       number    `json:"price_high"`
	PriceDraws      int       `json:"price_draws"`
	PriceFactors    []swing   `json:"price_factors"`
	DrawnKg         number    `json:"weld_drawn_kg"`
	OverweldKg      number    `json:"overweld_kg"`
	OverweldCost    number    `json:"overweld_cost"`
	ByAssembly      []sum     `json:"by_assembly"`
	ByWire          []sum     `json:"by_wire"`
	ByGas           []sum     `json:"by_gas"`
	ByProcess       []sum     `json:"by_process"`
	ByPosition      []sum     `json:"by_position"`
	NotYours        []string  `json:"not_yours"`
	Unpriced        []string  `json:"unpriced"`
	Exclusions      []string  `json:"exclusions"`
	*partTotals               // where there is a cut list
	Errors          int       `json:"errors"`
	Warnings        int       `json:"warnings"`
	Notes           int       `json:"notes"`
}

func newSum(s price.Sum) sum {
	return sum{Name: s.Name, Joints: s.Joints, Copies: s.Copies,
		SeamM: of(s.Seam, price.MetreDecimals), WeldKg: of(s.WeldMetal, price.KgDecimals), WireKg: of(s.WireKg, price.KgDecimals),
		GasL: of(s.GasL, price.LitreDecimals), ArcMin: of(s.Arc, price.MinuteDecimals), LabourMin: of(s.Labour, price.MinuteDecimals),
		EnergyKWh: of(s.Energy, price.KWhDecimals), Cost: of(s.Cost, price.MoneyDecimals), Price: of(s.Price, price.MoneyDecimals)}
}

func newSums(list []price.Sum) []sum {
	out := []sum{}
	for _, s := range list {
		out = append(out, newSum(s))
	}
	return out
}

// needs is what the job asks of a machine.
type needs struct {
	Current number   `json:"current_a"`
	Volts   number   `json:"voltage_v"`
	Feed    number   `json:"wfs_m_min"`
	Share   number   `json:"arc_share"`
	Supply  number   `json:"supply_kw"`
	KVA     number   `json:"supply_kva"`
	Phases  int      `json:"phases"`
	Spool   number   `json:"spool_kg"`
	Gun     string   `json:"gun"`
	Longest number   `json:"longest_run_s"`
	Wires   []number `json:"wire_mm"`
	Modes   []string `json:"transfer"`
	Mark    string   `json:"mark"`
}

func newNeeds(n *price.Needs) *needs {
	if n == nil {
		return nil
	}
	out := &needs{of(n.Current, 3), of(n.Volts, 3), of(n.Feed, 4), of(n.Share, 9), of(n.Supply, 3), of(n.KVA, 3), n.Phases, when(n.Spool > 0, of(n.Spool, 3)), n.Gun, of(n.LongestS, 1), []number{}, append([]string{}, n.Modes...), n.Mark}
	for _, d := range n.Wires {
		out.Wires = append(out.Wires, of(d, 3))
	}
	return out
}

// swing is what one shop value alone makes of the price at the ends of its spread.
type swing struct {
	Key       string `json:"key"`
	Low       number `json:"low"`
	High      number `json:"high"`
	PriceLow  number `json:"price_low"`
	PriceHigh number `json:"price_high"`
}

func newSwings(list []price.Factor) []swing {
	out := []swing{}
	for _, f := range list {
		stated := f.Low < f.High // the families of prices have no single ends
		out = append(out, swing{f.Key, when(stated, of(f.Low, 9)), when(stated, of(f.High, 9)), of(f.PriceLow, price.MoneyDecimals), of(f.PriceHigh, price.MoneyDecimals)})
	}
	return out
}

func newTotals(t *price.Totals) totals {
	amount := func(m units.Money) number { return of(m, price.MoneyDecimals) }
	out := totals{sum: newSum(t.All),
		CostLabour: amount(t.LabourCost), CostWire: amount(t.Wire), CostGas: amount(t.Gas), CostPower: amount(t.Power), CostOther: amount(t.Other),
		ChangeOvers: t.ChangeOvers, ChangeOverMin: of(t.ChangeOverMin, price.MinuteDecimals),
		ChangeOverCost: amount(t.ChangeOverCost), ChangeOverPrice: amount(t.ChangeOverPrice), JobCost: amount(t.Cost), JobPrice: amount(t.Price),
		MachineNeeds: newNeeds(t.Needs), PayBack: payBacks(t.PayBack),
		PriceLow: when(t.Spread.Draws > 0, amount(t.Spread.Low)), PriceMid: when(t.Spread.Draws > 0, amount(t.Spread.Mid)),
		PriceHigh: when(t.Spread.Draws > 0, amount(t.Spread.High)), PriceDraws: t.Spread.Draws, PriceFactors: newSwings(t.Spread.Factors),
		DrawnKg: of(t.DrawnKg, price.KgDecimals), OverweldKg: of(t.OverweldKg, price.KgDecimals), OverweldCost: of(t.OverweldCost, price.MoneyDecimals),
		ByAssembly: newSums(t.ByAssembly), ByWire: newSums(t.ByWire), ByGas: newSums(t.ByGas), ByProcess: newSums(t.ByProcess), ByPosition: newSums(t.ByPosition),
		NotYours: []string{}, Unpriced: append([]string{}, t.Unpriced...), Exclusions: append([]string{}, t.Exclusions...),
		Errors: t.Errors, Warnings: t.Warnings, Notes: t.Notes,
	}
	for _, v := range t.NotYours {
		out.NotYours = append(out.NotYours, v.Key)
	}
	return out
}

// payBack is what a machine that the shop has not would save on the job.
type payBack struct {
	Machine string `json:"machine"`
	Saves   number `json:"saves"` // null: it welds joints that nothing else does
	Hours   number `json:"saves_h"`
	Price   number `json:"price"` // null: not stated
	Jobs    number `json:"jobs"`  // such jobs that pay it back; null: not known, or never
	Opens   int    `json:"opens"` // joints that only this machine welds
}

func payBacks(list []price.PayBack) []payBack {
	out := []payBack{}
	for _, p := range list {
		out = append(out, payBack{p.Machine, when(p.Opens == 0, of(p.Saves, price.MoneyDecimals)), when(p.Opens == 0, of(p.Hours, 3)),
			when(p.Price > 0, of(p.Price, price.MoneyDecimals)), when(p.Jobs > 0, of(p.Jobs, 2)), p.Opens})
	}
	return out
}
