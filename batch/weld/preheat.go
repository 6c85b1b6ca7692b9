package weld

import (
	"math"

	"seamtally/batch/units"
)

// PreheatSet is one of the two published pairs of constants of the preheat formula.
type PreheatSet struct {
	Slope  float64 // of CET [°C/%]
	Offset float64 // [°C]
	Name   string
}

// The two sets differ by about 1 °C.
var (
	EN1011 = PreheatSet{697, -328, "EN 1011-2 formula C.8"}
	SEW088 = PreheatSet{700, -330, "SEW 088"}
)

// Limits of the preheat formula, for callers that must decide what lies beyond.
const (
	PreheatLean  = 0.2 // least CET [%]
	PreheatRich  = 0.5
	PreheatThin  = 10.0 // least thickness [mm]
	PreheatThick = 90.0
	PreheatCool  = 0.5 // least heat input [kJ/mm]
	PreheatHot   = 4.0
	PreheatDry   = 1.0 // least diffusible hydrogen [ml/100 g]
	PreheatWet   = 20.0
)

// Preheat returns the preheat temperature against hydrogen cracking in degrees Celsius.
//
//	Tp = s CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET − 32) Q + o        (PREHEAT-1)
//
// Symbols: CET carbon equivalent [%], by CARBON-2; d thickness of the thicker part
// [mm]; HD diffusible hydrogen of the filler [ml/100 g]; Q heat input with k
// [kJ/mm]; s, o slope and offset of the set [°C/%, °C].
// Valid: 0.2 <= CET <= 0.5 %, 10 <= d <= 90 mm, 1 <= HD <= 20 ml/100 g,
// 0.5 <= Q <= 4 kJ/mm, as EN 1011-2 has it; the caller decides what a thinner plate gets.
// Assumes: ordinary restraint, yield strength up to 1000 MPa, no help from low interpass times.
// Source: SEW 088 coefficients: Verbindungen im Stahl- und Verbundbau; EN 1011-2 coefficients: DIN EN 1011-2 formula C.8 on a welding engineer's page (Mindestvorwärmtemperatur); limits recalled.
// Basis: published.
// Accuracy: about ±20 °C. A result at or below ambient means no preheat for hydrogen.
// Errors: [ErrRange] for a value outside the limits.
func Preheat(cet float64, d units.MM, hydrogen float64, q units.KJMM, set PreheatSet) (units.Celsius, error) {
	err := first(
		within("CET", cet, PreheatLean, PreheatRich, "%"),
		within("thickness for preheat", d, PreheatThin, PreheatThick, "mm"),
		within("diffusible hydrogen", hydrogen, PreheatDry, PreheatWet, "ml/100 g"),
		within("heat input", q, PreheatCool, PreheatHot, "kJ/mm"),
	)
	if err != nil {
		return 0, err
	}
	t := set.Slope*cet + 160*math.Tanh(float64(d)/35) + 62*math.Pow(hydrogen, 0.35)
	return units.Celsius(t + (53*cet-32)*float64(q) + set.Offset), nil
}

// PreheatCET returns the CET at which the preheat formula gives a temperature, in
// per cent: with the temperature of parts that nobody heats it is the highest CET
// that needs no preheat, which a mill certificate can prove.
//
//	CET = (Tp − 160 tanh(d/35) − 62 HD^0.35 + 32 Q − o) / (s + 53 Q)        (PREHEAT-2)
//
// Symbols: as [Preheat].
// Valid: as [Preheat], -30 <= Tp <= 400 °C; the result may lie outside the CET
// that the formula is meant for, and the caller decides what that says.
// Assumes: as [Preheat].
// Source: PREHEAT-1 solved for CET.
// Basis: derived.
// Accuracy: ±0.03 %, that of the formula.
// Errors: [ErrRange] for a value outside the limits.
func PreheatCET(tp units.Celsius, d units.MM, hydrogen float64, q units.KJMM, set PreheatSet) (float64, error) {
	if err := within("preheat", tp, -30, 400, "°C"); err != nil {
		return 0, err
	}
	lean, err := Preheat(PreheatLean, d, hydrogen, q, set)
	if err != nil {
		return 0, err
	}
	return PreheatLean + float64(tp-lean)/(set.Slope+53*float64(q)), nil
}
