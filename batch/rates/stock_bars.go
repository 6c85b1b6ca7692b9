package rates

import (
	"fmt"
	"strconv"
	"strings"

	"seamtally/batch/units"
)

// barKinds are the kinds of section that have stock lengths of their own.
var barKinds = []string{"hollow", "beam", "channel", "angle", "flat", "bar"}

// metals are the kinds of metal that have a price of their own per kilogram.
var metals = []string{"carbon_steel", "stainless", "aluminium"}

// Plausible lengths of a bar as it is bought, mm; common practice.
const shortestBar, longestBar = 500, 30_000

// barLengths reads "6000; 12000", "6 m; 12 m" or "20 ft; 40 ft"; bad says what is
// wrong.
func barLengths(text string) (lengths []units.MM, bad string) {
	for _, item := range splitStock(text) {
		num, unit, err := readNumber(item, false)
		if err != nil {
			return nil, fmt.Sprintf("%q %v", item, err)
		}
		times, known := map[string]float64{"": 1, "mm": 1, "cm": 10, "m": 1000, "in": 25.4, `"`: 25.4, "ft": 304.8, "'": 304.8}[strings.ToLower(unit)]
		if !known {
			return nil, fmt.Sprintf("%q has no unit of length", item)
		}
		mm := num * times
		if mm < shortestBar || mm > longestBar {
			return nil, fmt.Sprintf("no bar is bought %s mm long", numberText(mm))
		}
		lengths = append(lengths, units.MM(mm))
	}
	if len(lengths) == 0 {
		return nil, "no length is named"
	}
	return lengths, ""
}

// lengthsText writes lengths as the shop table does.
func lengthsText(lengths []units.MM) string {
	var parts []string
	for _, l := range lengths {
		parts = append(parts, strconv.FormatFloat(float64(l), 'f', -1, 64))
	}
	return strings.Join(parts, "; ")
}

// settleBars fills in the stock lengths.
func (s *Shop) settleBars() {
	s.StockLengths = map[string][]units.MM{}
	for _, kind := range barKinds {
		s.StockLengths[kind], _ = barLengths(s.word("stock_" + kind)) // Read before it was kept.
	}
}

// Applied returns those of the given shop values that are defaults and move money,
// for sums that stand apart from the welding price.
func (s *Shop) Applied(keys map[string]bool) []Value {
	var out []Value
	for _, v := range s.NotYours() {
		if keys[v.Key] {
			out = append(out, v)
		}
	}
	return out
}
