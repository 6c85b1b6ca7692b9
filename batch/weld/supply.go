package weld

import (
	"math"

	"seamtally/batch/units"
)

// GasVolume returns the shielding gas of some welding in litres at 15 °C and 1 bar.
//
//	V = f (T + n (tb + ta)/60)        (GAS-1)
//
// Symbols: f gas flow at the nozzle [l/min]; T arc time [min]; n number of starts
// [-], a fraction where it is a mean; tb, ta flow before and after the arc [s].
// Valid: 0 <= f <= 100 l/min, T, n >= 0, 0 <= tb, ta <= 600 s.
// Assumes: the flow set is the flow that leaves; leaks and surges at the start are not in it.
// Source: definition.
// Basis: derived.
// Accuracy: that of the flow; shops use up to half more where flow is set by ear.
// Errors: [ErrRange] for a value outside the limits.
func GasVolume(flow units.LMin, arc units.Minute, starts float64, before, after units.Second) (units.Litre, error) {
	err := first(
		within("gas flow", flow, 0, 100, "l/min"),
		checkTime(arc),
		within("starts", starts, 0, 1e9, ""),
		within("pre-flow", before, 0, 600, "s"),
		within("post-flow", after, 0, 600, "s"),
	)
	if err != nil {
		return 0, err
	}
	return units.Litre(float64(flow) * (float64(arc) + starts*float64(before+after)/60)), nil
}

func checkTime(t units.Minute) error { return within("time", t, 0, 1e9, "min") }

// CylinderGas returns the gas in a cylinder in litres at the surrounding pressure.
//
//	V = p Vw / p0        (GAS-2)
//
// Symbols: p absolute or gauge pressure of the full cylinder [bar]; Vw water
// volume [l]; p0 surrounding pressure [bar].
// Valid: 0 < p <= 1000 bar, 0 < Vw <= 10000 l, 0.5 <= p0 <= 2 bar. Not for carbon dioxide, which is liquid.
// Assumes: ideal gas. Argon at 200 bar holds about 7 % more.
// Source: "Volume of gas in cylinder", gas supplier technical note.
// Basis: published.
// Accuracy: about 7 % low for argon at 200 bar.
// Errors: [ErrRange] for a value outside the limits.
func CylinderGas(bar float64, water units.Litre, ambientBar float64) (units.Litre, error) {
	err := first(
		over("pressure", bar, 1000, "bar"),
		over("water volume", water, 10000, "l"),
		within("surrounding pressure", ambientBar, 0.5, 2, "bar"),
	)
	if err != nil {
		return 0, err
	}
	return units.Litre(bar * float64(water) / ambientBar), nil
}

// ArcPower returns the energy from the mains while the arc burns, in kilowatt-hours.
//
//	W = U I T / (60000 η)        (POWER-1)
//
// Symbols: U arc voltage [V]; I current [A]; T arc time [min]; η efficiency of the power source, mains to arc [0..1].
// Valid: 5 <= U <= 60 V, 1 <= I <= 2000 A, T >= 0, 0.3 <= η <= 1.
// Assumes: steady values; the cable's loss is in the arc voltage measured at the machine.
// Source: definition; worked 100 A x 25 V / 0.85 = 2940 W in an equipment-maker FAQ.
// Basis: published.
// Accuracy: about ±5 %.
// Errors: [ErrRange] for a value outside the limits.
func ArcPower(voltage units.Volt, current units.Amp, arc units.Minute, efficiency float64) (units.KWh, error) {
	err := first(
		within("arc voltage", voltage, 5, 60, "V"),
		within("current", current, 1, maxCurrent, "A"),
		checkTime(arc),
		within("efficiency of the power source", efficiency, 0.3, 1, ""),
	)
	if err != nil {
		return 0, err
	}
	return units.KWh(float64(voltage) * float64(current) * float64(arc) / (60000 * efficiency)), nil
}

// IdlePower returns the energy that a machine draws without an arc, in kilowatt-hours.
//
//	W = P T / 60000        (POWER-2)
//
// Symbols: P idle power [W]; T time switched on without an arc [min].
// Valid: 0 <= P <= 5000 W, T >= 0.
// Assumes: the machine stays on between the arcs.
// Source: definition; Regulation (EU) 2019/1784 allows 50 W.
// Basis: derived.
// Accuracy: that of the idle power.
// Errors: [ErrRange] for a value outside the limits.
func IdlePower(watts float64, idle units.Minute) (units.KWh, error) {
	err := first(within("idle power", watts, 0, 5000, "W"), checkTime(idle))
	if err != nil {
		return 0, err
	}
	return units.KWh(watts * float64(idle) / 60000), nil
}

// DutyCurrent returns the current that a machine bears at another duty, in amperes.
//
//	I2 = I1 √(d1/d2)        (DUTY-1)
//
// Symbols: I1 rated current [A] at the rated duty d1 [0..1]; d2 the other duty [0..1].
// Valid: 0 < I1 <= 2000 A, 0.01 <= d <= 1.
// Assumes: heat goes with the square of the current, period of 10 minutes. Above
// the rated maximum of the machine it does not hold.
// Source: Power-source manual 0-2510 p.21 sec.2.06.
// Basis: published.
// Accuracy: a rule of thumb; the rating plate governs.
// Errors: [ErrRange] for a value outside the limits.
func DutyCurrent(rated units.Amp, ratedDuty, duty float64) (units.Amp, error) {
	if err := first(over("rated current", rated, maxCurrent, "A"), checkDuty(ratedDuty), checkDuty(duty)); err != nil {
		return 0, err
	}
	return units.Amp(float64(rated) * math.Sqrt(ratedDuty/duty)), nil
}

func checkDuty(d float64) error { return within("duty", d, 0.01, 1, "of the time") }

// Duty returns the share of the time that a machine bears a current.
//
//	d2 = d1 (I1/I2)², at most 1        (DUTY-2)
//
// Symbols: I1 rated current [A] at the rated duty d1 [0..1]; I2 current to be used [A].
// Valid: 0 < I <= 2000 A, 0.01 <= d1 <= 1.
// Assumes: as [DutyCurrent], whose inverse it is.
// Source: Power-source manual 0-2510 p.21 sec.2.06.
// Basis: published.
// Accuracy: a rule of thumb; the rating plate governs.
// Errors: [ErrRange] for a value outside the limits.
func Duty(rated units.Amp, ratedDuty float64, current units.Amp) (float64, error) {
	err := first(over("rated current", rated, maxCurrent, "A"), checkDuty(ratedDuty), over("current", current, maxCurrent, "A"))
	if err != nil {
		return 0, err
	}
	ratio := float64(rated) / float64(current)
	return min(1, ratedDuty*ratio*ratio), nil
}
