package procedure

import (
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// perLength are the units of energy per length of seam, in kJ/mm.
var perLength = map[string]float64{"kj mm": 1, "kj cm": 0.1, "kj m": 0.001, "j mm": 0.001, "j cm": 0.0001, "mj m": 1, "kj in": 1 / units.MMPerInch, "kj inch": 1 / units.MMPerInch, "j in": 0.001 / units.MMPerInch}

// factors turn a unit, folded, into the one a quantity is kept in: mm/min, kJ/mm.
var factors = map[string]map[string]float64{
	"current": {"a": 1, "amp": 1, "amps": 1, "ampere": 1, "amperes": 1},
	"voltage": {"v": 1, "volt": 1, "volts": 1},
	"travel": {"mm min": 1, "cm min": 10, "m min": 1000, "mm s": 60, "mm sec": 60, "cm s": 600, "in min": units.MMPerInch, "inch min": units.MMPerInch,
		"inches min": units.MMPerInch, "ipm": units.MMPerInch, "cpm": 10, "m h": 1000. / 60},
	"heat":      perLength,
	"energy":    perLength,
	"thickness": {"mm": 1, "cm": 10, "in": units.MMPerInch, "inch": units.MMPerInch, "inches": units.MMPerInch},
	"dia":       {"mm": 1, "in": units.MMPerInch, "inch": units.MMPerInch, "inches": units.MMPerInch},
	"preheat":   {"°c": 1, "c": 1, "deg c": 1, "° c": 1, "celsius": 1, "°f": 1, "f": 1, "deg f": 1, "° f": 1, "fahrenheit": 1},
}

// base is the quantity of a key: current_low is of current.
func base(key string) string {
	key, _, _ = strings.Cut(key, "_")
	return key
}

func isUnit(key, unit string) bool {
	_, ok := factors[base(key)][unit]
	return ok
}

// anyUnit tells whether a text is a unit of any quantity, or a dash in its place.
func anyUnit(text string) (folded string, ok bool) {
	folded = foldUnit(text)
	if folded == "" {
		return "", true
	}
	for key := range factors {
		if isUnit(key, folded) {
			return folded, true
		}
	}
	return folded, false
}

// foldUnit brings a unit to the form in which units are compared.
func foldUnit(text string) string {
	text = strings.NewReplacer(`"`, "in", "″", "in", "''", "in", " per ", "/", "⁻¹", "", "·", "/", "º", "°").Replace(strings.TrimSpace(text))
	return joint.Fold(text)
}

// convert brings a figure to the quantity's own unit.
func convert(key string, value float64, unit string) float64 {
	if base(key) == "preheat" {
		if strings.Contains(unit, "f") {
			return (value - 32) / 1.8
		}
		return value
	}
	return value * factors[base(key)][unit]
}
