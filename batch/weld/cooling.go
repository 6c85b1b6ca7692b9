package weld

import (
	"math"

	"seamtally/batch/units"
)

func checkCooling(t0 units.Celsius, q units.KJMM) error {
	return first(
		within("temperature before the pass", t0, -30, 350, "°C"),
		within("heat input", q, 0.01, 20, "kJ/mm"),
	)
}

func checkFactor(f float64) error { return within("shape factor", f, 0.1, 1, "") }

// CoolingThick returns the time from 800 to 500 °C in thick plate, where heat
// flows in three directions, in seconds.
//
//	t = (6700 − 5 T0) Q (1/(500 − T0) − 1/(800 − T0)) F3        (COOL-1)
//
// Symbols: T0 temperature before the pass, preheat or interpass [°C]; Q heat input
// with k [kJ/mm], not arc energy; F3 shape factor of the joint for thick plate [-].
// Valid: -30 <= T0 <= 350 °C, 0.01 <= Q <= 20 kJ/mm, 0.1 <= F3 <= 1; unalloyed and
// low-alloy ferritic steel only; plate thicker than [TransitionThickness].
// Assumes: one pass on a large plate, centre of a long run.
// Source: SSAB Welding Handbook ed.2 p.17 formula 3.2; the same in SEW 088.
// Basis: published.
// Accuracy: about ±15 % against measurement.
// Errors: [ErrRange] for a value outside the limits.
func CoolingThick(t0 units.Celsius, q units.KJMM, f3 float64) (units.Second, error) {
	if err := first(checkCooling(t0, q), checkFactor(f3)); err != nil {
		return 0, err
	}
	t := float64(t0)
	return units.Second((6700 - 5*t) * float64(q) * (1/(500-t) - 1/(800-t)) * f3), nil
}

// CoolingThin returns the time from 800 to 500 °C in thin plate, where heat flows
// in two directions, in seconds.
//
//	t = (4300 − 4.3 T0) 10⁵ (Q/d)² (1/(500 − T0)² − 1/(800 − T0)²) F2        (COOL-2)
//
// Symbols: T0 temperature before the pass [°C]; Q heat input with k [kJ/mm]; d
// plate thickness [mm]; F2 shape factor of the joint for thin plate [-].
// Valid: as [CoolingThick], 0.3 <= d <= 1000 mm; plate thinner than [TransitionThickness].
// Assumes: as [CoolingThick].
// Source: SSAB Welding Handbook ed.2 p.17 formula 3.1; the same in SEW 088.
// Basis: published.
// Accuracy: about ±15 % against measurement; the square of Q/d doubles every error of d.
// Errors: [ErrRange] for a value outside the limits.
func CoolingThin(t0 units.Celsius, q units.KJMM, d units.MM, f2 float64) (units.Second, error) {
	if err := first(checkCooling(t0, q), checkPlate(d), checkFactor(f2)); err != nil {
		return 0, err
	}
	t, qd := float64(t0), float64(q)/float64(d)
	return units.Second((4300 - 4.3*t) * 1e5 * qd * qd * (1/((500-t)*(500-t)) - 1/((800-t)*(800-t))) * f2), nil
}

func checkPlate(d units.MM) error { return within("plate thickness", d, 0.3, 1000, "mm") }

// TransitionThickness returns the plate thickness in millimetres at which the
// formulas for thin and thick plate give the same time.
//
//	dt = √((4300 − 4.3 T0) 10⁵ / (6700 − 5 T0) Q (1/(500 − T0) + 1/(800 − T0)) F2/F3)        (COOL-3)
//
// Symbols: T0 temperature before the pass [°C]; Q heat input with k [kJ/mm]; F2,
// F3 shape factors for thin and thick plate [-].
// Valid: as [CoolingThick].
// Assumes: as [CoolingThick].
// Source: EN 1011-2:2001 Annex D, recalled; here derived by equating COOL-1 and COOL-2.
// Basis: derived.
// Accuracy: that of the two formulas.
// Errors: [ErrRange] for a value outside the limits.
func TransitionThickness(t0 units.Celsius, q units.KJMM, f2, f3 float64) (units.MM, error) {
	if err := first(checkCooling(t0, q), checkFactor(f2), checkFactor(f3)); err != nil {
		return 0, err
	}
	t := float64(t0)
	root := (4300 - 4.3*t) * 1e5 / (6700 - 5*t) * float64(q) * (1/(500-t) + 1/(800-t)) * f2 / f3
	return units.MM(math.Sqrt(root)), nil
}

// Cooling returns the time from 800 to 500 °C that governs in a plate, in
// seconds, and whether the plate counts as thin.
//
//	t = COOL-2 where d < dt, else COOL-1        (COOL-4)
//
// Symbols: T0 temperature before the pass [°C]; Q heat input with k [kJ/mm]; d
// plate thickness [mm]; F2, F3 shape factors for thin and thick plate [-]; dt
// transition thickness [mm].
// Valid: as [CoolingThick] and [CoolingThin].
// Assumes: as [CoolingThick].
// Source: SSAB Welding Handbook ed.2 p.17; EN 1011-2:2001 Annex D, recalled.
// Basis: published.
// Accuracy: about ±15 % against measurement. The two times are equal at dt, so the choice has no step.
// Errors: [ErrRange] for a value outside the limits.
func Cooling(t0 units.Celsius, q units.KJMM, d units.MM, f2, f3 float64) (units.Second, bool, error) {
	dt, err := TransitionThickness(t0, q, f2, f3)
	if err != nil {
		return 0, false, err
	}
	if d < dt {
		t, err := CoolingThin(t0, q, d, f2)
		return t, true, err
	}
	if err := checkPlate(d); err != nil {
		return 0, false, err
	}
	t, err := CoolingThick(t0, q, f3)
	return t, false, err
}

// HeatForCooling returns the heat input at which a pass cools from 800 to 500 °C
// in a given time, in kilojoules per millimetre: the inverse of [Cooling], which
// turns a window of times into a window of heat.
//
//	Q = min(t / ((6700 − 5 T0) (1/(500 − T0) − 1/(800 − T0)) F3), d √(t / ((4300 − 4.3 T0) 10⁵ (1/(500 − T0)² − 1/(800 − T0)²) F2)))        (COOL-5)
//
// Symbols: T0 temperature before the pass [°C]; t time from 800 to 500 °C [s]; d
// plate thickness [mm]; F2, F3 shape factors for thin and thick plate [-].
// Valid: 0.1 <= t <= 1000 s, otherwise as [Cooling].
// Assumes: as [CoolingThick].
// Source: COOL-1 and COOL-2 solved for Q; the longer of the two times governs on either side of dt, so the lesser Q.
// Basis: derived.
// Accuracy: about ±15 % in thick plate, ±8 % in thin.
// Errors: [ErrRange] for a value outside the limits.
func HeatForCooling(t0 units.Celsius, t units.Second, d units.MM, f2, f3 float64) (units.KJMM, error) {
	err := first(within("cooling time", t, 0.1, 1000, "s"), checkPlate(d), checkFactor(f2), checkFactor(f3))
	if err != nil {
		return 0, err
	}
	thick, err := CoolingThick(t0, 1, f3)
	if err != nil {
		return 0, err
	}
	thin, err := CoolingThin(t0, 1, d, f2)
	if err != nil {
		return 0, err
	}
	return min(units.KJMM(t/thick), units.KJMM(math.Sqrt(float64(t/thin)))), nil
}
