package units

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// LPerFt3 is exact by definition of the inch, KgPerLb by definition of the pound.
const (
	LPerFt3   = 28.316846592
	KgPerLb   = 0.45359237
	KmPerMile = 1.609344
)

// figure is a number, or two with a word between, in the languages of the sheets, and its unit. both is a length
// that has its inches behind it in brackets, wind a speed that is told twice.
var (
	figure = regexp.MustCompile(`(^|[^\pL\d.,])(\d+(?:\.\d+)?)(?:( to | and | bis | und | a | y | e | do | i | до | і | й | та | x |–)(\d+(?:\.\d+)?))? ?(mm/min|mm²|mm|°C|kJ/mm|m/min|l/min|kg/h|kg|km/h|m/s|m)($|[^\pL\d²³/])`)
	both   = regexp.MustCompile(`\d+(?:\.\d+)? mm \((\d+(?:/\d+)?) in\)`)
	wind   = regexp.MustCompile(`\d+(?:\.\d+)? m/s \((\d+(?:\.\d+)? km/h)\)`)
)

// Imperial words the figures of a metric sentence in US units: inches, °F, in/min,
// kJ/in, ft³/h, lb, mph. Words and numbers without a unit stay as they are.
func Imperial(text string) string {
	if !strings.ContainsAny(text, "0123456789") {
		return text
	}
	text = both.ReplaceAllString(text, "$1 in")
	text = wind.ReplaceAllString(text, "$1")
	text = trade(text)
	for {
		at := figure.FindStringSubmatchIndex(text)
		if at == nil {
			return text
		}
		part := func(n int) string {
			if at[2*n] < 0 {
				return ""
			}
			return text[at[2*n]:at[2*n+1]]
		}
		u := usUnits[part(5)]
		said := u.write(part(2))
		if part(4) != "" {
			said += part(3) + u.write(part(4))
		}
		text = text[:at[4]] + said + " " + u.name + text[at[11]:]
	}
}

// usUnit is how a metric unit is told in US units.
type usUnit struct {
	name  string
	times float64
	plus  float64
	text  func(float64) string
}

var usUnits = map[string]usUnit{
	"mm":     {"in", 1 / MMPerInch, 0, inchText},
	"mm²":    {"in²", 1 / (MMPerInch * MMPerInch), 0, decimals(3)},
	"mm/min": {"in/min", 1 / MMPerInch, 0, decimals(1)},
	"m/min":  {"in/min", 1000 / MMPerInch, 0, decimals(0)},
	"m":      {"ft", 1000 / MMPerInch / 12, 0, feetText},
	"kJ/mm":  {"kJ/in", MMPerInch, 0, decimals(1)},
	"°C":     {"°F", 1.8, 32, warmth},
	"l/min":  {"ft³/h", 60 / LPerFt3, 0, decimals(0)},
	"kg":     {"lb", 1 / KgPerLb, 0, decimals(2)},
	"kg/h":   {"lb/h", 1 / KgPerLb, 0, decimals(1)},
	"km/h":   {"mph", 1 / KmPerMile, 0, decimals(0)},
	"m/s":    {"mph", 3.6 / KmPerMile, 0, decimals(0)},
}

func (u usUnit) write(metric string) string {
	v, err := strconv.ParseFloat(metric, 64)
	if err != nil {
		return metric
	}
	return u.text(v*u.times + u.plus)
}

func decimals(n int) func(float64) string {
	return func(v float64) string { return plain(v, n) }
}

// plain writes a number without idle zeros.
func plain(v float64, n int) string {
	text := strconv.FormatFloat(v, 'f', n, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// inchText writes inches as a fraction where the length is a sixteenth within a
// tenth of a millimetre and below a foot, else in thousandths; longer ones in
// tenths. Round metric lengths from 50 to 300 mm are the whole inches that the
// trade measures instead: 75 mm is 3 in.
func inchText(in float64) string {
	const slack = 0.1 / MMPerInch
	sixteenths := math.Round(in * 16)
	quarters := in * MMPerInch / 25
	switch {
	case quarters >= 2-1e-6 && quarters <= 12+1e-6 && math.Abs(quarters-math.Round(quarters)) < 1e-6:
		return plain(math.Round(quarters), 0)
	case in >= 12:
		return plain(in, 1)
	case sixteenths == 0 || math.Abs(in-sixteenths/16) > slack:
		return plain(in, 3)
	}
	return Sixteenths(int(sixteenths))
}

// Sixteenths writes so many sixteenths of an inch as the trade does: "3", "5/16", "1 1/2".
func Sixteenths(n int) string {
	whole, part, under := n/16, n%16, 16
	if part == 0 {
		return strconv.Itoa(whole)
	}
	for part%2 == 0 {
		part, under = part/2, under/2
	}
	text := strconv.Itoa(part) + "/" + strconv.Itoa(under)
	if whole > 0 {
		text = strconv.Itoa(whole) + " " + text
	}
	return text
}

// feetText writes feet: whole ones from 30.
func feetText(ft float64) string {
	if ft >= 30 {
		return plain(ft, 0)
	}
	return plain(ft, 2)
}
