package weld

import (
	"math"

	"seamtally/batch/units"
)

// Melting holds the two constants of a wire: A for the heat of the arc, B for the
// heat of the current in the wire extension.
type Melting struct {
	A float64 // mm/(s A)
	B float64 // 1/(s A²), per mm of extension
}

// perMinute turns mm/s into m/min.
const perMinute = 0.06

func (m Melting) check(extension units.MM) error {
	return first(
		over("melting constant a", m.A, 100, "mm/(s A)"),
		within("melting constant b", m.B, 0, 1, "1/(s A²)"),
		within("wire extension", extension, 0, 100, "mm"),
	)
}

// Feed returns the wire feed that a current melts, in metres per minute.
//
//	w = 0.06 (a I + b l I²)        (MELT-1)
//
// Symbols: a melting constant of the arc [mm/(s A)]; b of the wire's resistance
// [1/(s A²)]; I current [A]; l wire extension, tip to work less the arc [mm].
// Valid: 0 <= I <= 2000 A, 0 <= l <= 100 mm; the constants hold only in the range
// of current that they were fitted in, which the caller keeps.
// Assumes: constant-voltage machine, steady feed, polarity and transfer mode those of the constants; I is the mean current.
// Source: form: Lesnewich 1958, Halmoy 1979; constants from the caller's table.
// Basis: memory for the form; the table says where the constants come from.
// Accuracy: that of the fit, 5 to 25 %; a source that the fit has not seen is missed by 10 to 14 % rms.
// Errors: [ErrRange] for a value outside the limits.
func (m Melting) Feed(current units.Amp, extension units.MM) (units.MMin, error) {
	err := first(m.check(extension), within("current", current, 0, maxCurrent, "A"))
	if err != nil {
		return 0, err
	}
	i := float64(current)
	return units.MMin(perMinute * (m.A*i + m.B*float64(extension)*i*i)), nil
}

// Current returns the current that a wire feed settles at, in amperes.
//
//	I = 2 w' / (a + √(a² + 4 b l w')),  w' = w / 0.06        (MELT-2)
//
// Symbols: w wire feed [m/min]; a, b melting constants [mm/(s A), 1/(s A²)]; l wire extension [mm].
// Valid: 0 <= w <= 50 m/min, 0 <= l <= 100 mm.
// Assumes: as [Melting.Feed], whose inverse it is.
// Source: the positive root of MELT-1, written so that b = 0 needs no case.
// Basis: derived.
// Accuracy: that of the fit.
// Errors: [ErrRange] for a value outside the limits.
func (m Melting) Current(feed units.MMin, extension units.MM) (units.Amp, error) {
	err := first(m.check(extension), within("wire feed", feed, 0, 50, "m/min"))
	if err != nil {
		return 0, err
	}
	w := float64(feed) / perMinute
	return units.Amp(2 * w / (m.A + math.Sqrt(m.A*m.A+4*m.B*float64(extension)*w))), nil
}

// Deposition returns the weld metal laid per hour of arc, in kilograms per hour.
//
//	D = w q η 60 / 1000        (MELT-3)
//
// Symbols: w wire feed [m/min]; q linear mass of the wire [g/m]; η deposition efficiency [0..1].
// Valid: 0 <= w <= 50 m/min, 0.1 <= q <= 1000 g/m, 0.3 <= η <= 1.
// Assumes: the arc burns the whole hour.
// Source: definition; MIG Welding Handbook ch.7 p.10 gives the same rate in pounds.
// Basis: derived.
// Accuracy: that of feed and efficiency.
// Errors: [ErrRange] for a value outside the limits.
func Deposition(feed units.MMin, q units.GramM, efficiency float64) (units.KgH, error) {
	err := first(
		within("wire feed", feed, 0, 50, "m/min"),
		checkLinear(q),
		within("deposition efficiency", efficiency, 0.3, 1, ""),
	)
	if err != nil {
		return 0, err
	}
	return units.KgH(float64(feed) * float64(q) * efficiency * 60 / 1000), nil
}

// ArcTime returns the minutes that the arc burns to lay some weld metal.
//
//	T = 60 m / D        (MELT-4)
//
// Symbols: m weld metal [kg]; D deposition rate while the arc burns [kg/h].
// Valid: m >= 0, 0 < D <= 100 kg/h. No metal takes no time.
// Assumes: the same rate throughout. This is arc time: the clock runs longer by the operating factor.
// Source: definition.
// Basis: derived.
// Accuracy: that of the deposition rate.
// Errors: [ErrRange] for a rate of zero or any value outside the limits: never an infinite time.
func ArcTime(metal units.Kg, rate units.KgH) (units.Minute, error) {
	err := first(within("weld metal", metal, 0, 1e9, "kg"), checkRate(rate))
	if err != nil {
		return 0, err
	}
	return units.Minute(60 * float64(metal) / float64(rate)), nil
}

func checkRate(d units.KgH) error { return within("deposition rate", d, 1e-6, 100, "kg/h") }
