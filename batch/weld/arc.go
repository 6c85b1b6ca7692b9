package weld

import "seamtally/batch/units"

// Travel returns the speed of a pass in millimetres per minute.
//
//	v = D / (60 ρ A) 10⁹        (ARC-1)
//
// Symbols: D deposition rate [kg/h]; ρ density of the weld metal [kg/m³]; A area of the pass [mm²], as made.
// Valid: 0 < D <= 100 kg/h, 500 <= ρ <= 20000 kg/m³, 10⁻³ <= A <= 10⁵ mm².
// Assumes: all metal goes into this pass.
// Source: the balance of metal: what the wire gives is what the seam takes.
// Basis: derived.
// Accuracy: that of the deposition rate and the area.
// Errors: [ErrRange] for an area of zero (a closed square butt as drawn) or any value outside the limits.
func Travel(rate units.KgH, area units.MM2, density units.KgM3) (units.MMMin, error) {
	err := first(checkRate(rate), within("area of the pass", area, 1e-3, 1e5, "mm²"), checkDensity(density))
	if err != nil {
		return 0, err
	}
	return units.MMMin(float64(rate) / (60 * float64(density) * float64(area)) * 1e9), nil
}

// PassArea returns the area that a pass has at a travel speed, in square millimetres.
//
//	A = D / (60 ρ v) 10⁹        (ARC-2)
//
// Symbols: D deposition rate [kg/h]; ρ density of the weld metal [kg/m³]; v travel speed [mm/min].
// Valid: 0 < D <= 100 kg/h, 500 <= ρ <= 20000 kg/m³, 1 <= v <= 10000 mm/min.
// Assumes: as [Travel], whose inverse it is.
// Source: the balance of metal.
// Basis: derived.
// Accuracy: that of the deposition rate.
// Errors: [ErrRange] for a value outside the limits.
func PassArea(rate units.KgH, travel units.MMMin, density units.KgM3) (units.MM2, error) {
	err := first(checkRate(rate), checkTravel(travel), checkDensity(density))
	if err != nil {
		return 0, err
	}
	return units.MM2(float64(rate) / (60 * float64(density) * float64(travel)) * 1e9), nil
}

func checkTravel(v units.MMMin) error { return within("travel speed", v, 1, 10000, "mm/min") }

// VoltagePoint is a voltage at a current.
type VoltagePoint struct {
	Current units.Amp
	Voltage units.Volt
}

// ArcVoltage returns the arc voltage at a current in volts, on a straight line
// through two known points.
//
//	U = U1 + (U2 − U1) (I − I1) / (I2 − I1)        (ARC-3)
//
// Symbols: U1, U2 voltages at the currents I1 < I2 [V, A]; I current [A].
// Valid: 0 <= I <= 2000 A; the result 5 to 60 V. Points outside the two are on the same line.
// Assumes: the line of one process, gas and transfer mode.
// Source: a straight line; the points come from the caller's table.
// Basis: derived.
// Accuracy: that of the points, 1 to 2 V.
// Errors: [ErrRange] where the points do not rise in current or the result is no arc voltage.
func ArcVoltage(current units.Amp, p1, p2 VoltagePoint) (units.Volt, error) {
	err := first(
		within("current", current, 0, maxCurrent, "A"),
		within("second current of the voltage line", p2.Current, float64(p1.Current)+1, maxCurrent, "A"),
	)
	if err != nil {
		return 0, err
	}
	slope := float64(p2.Voltage-p1.Voltage) / float64(p2.Current-p1.Current)
	u := p1.Voltage + units.Volt(slope*float64(current-p1.Current))
	return u, within("arc voltage", u, 5, 60, "V")
}

// LoadVoltage returns the conventional load voltage of a MIG/MAG machine in volts.
//
//	U = 14 + 0.05 I, at most 44        (ARC-4)
//
// Symbols: I current [A]; U load voltage [V], not the arc voltage to set.
// Valid: 0 <= I <= 2000 A.
// Assumes: nothing about the arc: it is the line on which machines are rated.
// Source: IEC 60974-1.
// Basis: memory.
// Accuracy: short arc runs 0 to 4 V below it, cored wire in CO2 1 to 2 V above.
// Errors: [ErrRange] for a current outside the limits.
func LoadVoltage(current units.Amp) (units.Volt, error) {
	if err := within("current", current, 0, maxCurrent, "A"); err != nil {
		return 0, err
	}
	return units.Volt(min(44, 14+0.05*float64(current))), nil
}

// ArcEnergy returns the energy of the arc per length of pass in kilojoules per
// millimetre. It is not the heat input, which has the thermal efficiency in it.
//
//	E = 60 U I / (1000 v)        (HEAT-1)
//
// Symbols: U arc voltage [V]; I current [A]; v travel speed [mm/min].
// Valid: 5 <= U <= 60 V, 1 <= I <= 2000 A, 1 <= v <= 10000 mm/min.
// Assumes: steady values; pulsed current needs mean power from the machine.
// Source: definition; solved examples of an education page print the same results.
// Basis: published.
// Accuracy: that of the settings; printed checks agree to their rounding.
// Errors: [ErrRange] for a value outside the limits.
func ArcEnergy(voltage units.Volt, current units.Amp, travel units.MMMin) (units.KJMM, error) {
	err := first(
		within("arc voltage", voltage, 5, 60, "V"),
		within("current", current, 1, maxCurrent, "A"),
		checkTravel(travel),
	)
	if err != nil {
		return 0, err
	}
	return units.KJMM(60 * float64(voltage) * float64(current) / (1000 * float64(travel))), nil
}

// HeatInput returns the heat that goes into the joint per length of pass, in
// kilojoules per millimetre.
//
//	Q = k E        (HEAT-2)
//
// Symbols: E arc energy [kJ/mm]; k thermal efficiency of the process [0..1].
// Valid: 0 <= E <= 200 kJ/mm, 0 < k <= 1.
// Assumes: k of the process as EN 1011-1 has it; measured values scatter (0.84 for MIG/MAG in the laboratory against 0.8).
// Source: SSAB Welding Handbook ed.2 p.13; EN 1011-1.
// Basis: published.
// Accuracy: about ±10 %, that of k.
// Errors: [ErrRange] for a value outside the limits.
func HeatInput(energy units.KJMM, k float64) (units.KJMM, error) {
	err := first(within("arc energy", energy, 0, 200, "kJ/mm"), over("thermal efficiency k", k, 1, ""))
	if err != nil {
		return 0, err
	}
	return units.KJMM(k * float64(energy)), nil
}
