package plan

import (
	"math"
	"strconv"
	"strings"
)

// number writes a figure with at most the given decimals, no trailing zeros, and
// never a negative zero.
func number(v float64, decimals int) string {
	s := strconv.FormatFloat(round(v, decimals), 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// round rounds to a number of decimals and turns a negative zero into zero.
func round(v float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(v*p)/p + 0
}
