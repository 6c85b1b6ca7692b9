package plan

import (
	"bytes"
	"math"
	"strconv"
)

// number writes a figure with at most the given decimals, no trailing zeros, and
// never a negative zero.
func number(v float64, decimals int) string { return numberWith(v, decimals, "") }

// numberWith is number with something behind it.
func numberWith(v float64, decimals int, behind string) string {
	var room [32]byte
	s := strconv.AppendFloat(room[:0], round(v, decimals), 'f', decimals, 64)
	if bytes.IndexByte(s, '.') >= 0 {
		s = bytes.TrimRight(bytes.TrimRight(s, "0"), ".")
	}
	return string(append(s, behind...))
}

// round rounds to a number of decimals and turns a negative zero into zero.
func round(v float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(v*p)/p + 0
}
