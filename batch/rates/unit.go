package rates

import "strings"

// scale says what one of a unit is in another, exactly, for the units a shop
// file may use instead of ours.
var scale = map[[2]string]float64{
	{"in", "mm"}: 25.4, {"cm", "mm"}: 10, {"m", "mm"}: 1000,
	{"ft", "m"}: 0.3048, {"in", "m"}: 0.0254, {"mm", "m"}: 0.001, {"cm", "m"}: 0.01,
	{"lb", "kg"}: 0.45359237, {"g", "kg"}: 0.001, {"t", "kg"}: 1000,
	{"m3", "l"}: 1000, {"ft3", "l"}: 28.316846592,
	{"s", "min"}: 1.0 / 60, {"h", "min"}: 60, {"min", "h"}: 1.0 / 60, {"s", "h"}: 1.0 / 3600,
	{"min", "s"}: 60, {"ms", "s"}: 0.001, {"kW", "W"}: 1000, {"MWh", "kWh"}: 1000,
	{"%", "share"}: 0.01, {"%", "x"}: 0.01, {"share", "%"}: 100,
}

// unitNames are other spellings of units, compared without case.
var unitNames = map[string]string{
	"mm": "mm", "millimetre": "mm", "millimeter": "mm", "cm": "cm", "m": "m", "metre": "m", "meter": "m",
	"in": "in", "inch": "in", "inches": "in", `"`: "in", "ft": "ft", "feet": "ft", "'": "ft",
	"kg": "kg", "g": "g", "t": "t", "lb": "lb", "lbs": "lb", "pound": "lb",
	"l": "l", "litre": "l", "liter": "l", "litres": "l", "liters": "l", "m3": "m3", "m³": "m3", "ft3": "ft3", "cf": "ft3", "ft³": "ft3",
	"s": "s", "sec": "s", "second": "s", "seconds": "s", "ms": "ms",
	"min": "min", "minute": "min", "minutes": "min", "h": "h", "hr": "h", "hour": "h", "hours": "h",
	"w": "W", "watt": "W", "kw": "kW", "kwh": "kWh", "mwh": "MWh",
	"%": "%", "percent": "%", "pct": "%", "share": "share", "x": "x", "times": "x", "1": "1",
	"ml": "ml", "100g": "100 g", "100 g": "100 g",
}

// currencySigns are the signs that stand for one currency only; "$" and "kr"
// stand for several, so any currency may be meant.
var currencySigns = map[string]string{"€": "EUR", "£": "GBP", "zł": "PLN", "₽": "RUB", "₴": "UAH"}

// unitFault says what is wrong with a unit.
type unitFault uint8

const (
	unitFits unitFault = iota
	unitWrong
	moneyWrong
)

// convert returns the factor that turns a number in the given unit into the
// wanted one. An empty given unit is the wanted one.
func convert(given, wanted, currency string) (factor float64, fault unitFault) {
	if strings.HasPrefix(wanted, "share") {
		wanted, given = "share", shareWord(given)
	}
	if given == "" || strings.EqualFold(given, wanted) {
		return 1, unitFits
	}
	top, bottom := splitUnit(given)
	wantTop, wantBottom := splitUnit(wanted)
	factor = 1
	if wantTop == "money" {
		if fault := moneyFault(top, currency); fault != unitFits {
			return 0, fault
		}
	} else if factor = scaleOf(top, wantTop); factor == 0 {
		return 0, unitWrong
	}
	if bottom == wantBottom || bottom == "" && wantTop == "money" {
		return factor, unitFits // "EUR" alone is per what the key says
	}
	below := scaleOf(bottom, wantBottom)
	if below == 0 {
		return 0, unitWrong
	}
	return factor / below, unitFits
}

// shareWord takes "share of the welding time", and "of the welding time" as the
// sheet Rates of our own workbook shows it, for a plain share.
func shareWord(unit string) string {
	if low := strings.ToLower(unit); strings.HasPrefix(low, "share") || strings.HasPrefix(low, "of ") {
		return "share"
	}
	return unit
}

func splitUnit(unit string) (top, bottom string) {
	top, bottom, _ = strings.Cut(strings.ReplaceAll(unit, " per ", "/"), "/")
	return oneUnit(top), oneUnit(bottom)
}

func oneUnit(unit string) string {
	unit = strings.TrimSpace(unit)
	if name, ok := unitNames[strings.ToLower(unit)]; ok {
		return name
	}
	return unit
}

func scaleOf(given, wanted string) float64 {
	if given == wanted {
		return 1
	}
	return scale[[2]string{given, wanted}]
}

// moneyFault tells a foreign currency from a unit that is no money at all.
func moneyFault(word, currency string) unitFault {
	if word == "money" || word == "" || word == "$" || word == "kr" || strings.EqualFold(word, currency) {
		return unitFits
	}
	if _, ok := unitNames[strings.ToLower(word)]; ok {
		return unitWrong
	}
	if strings.EqualFold(currencySigns[word], currency) {
		return unitFits
	}
	return moneyWrong
}
