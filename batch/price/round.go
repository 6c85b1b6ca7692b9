package price

import (
	"math"
	"sort"
	"strconv"
)

// Decimals of the figures that are summed and printed by machines. Every joint's
// figure is rounded to these before it is added up, and totals are sums of the
// rounded figures, so that the column of a results file adds up to its total
// digit for digit. The steps are far below what a shop can measure.
const (
	MoneyDecimals  = 4
	KgDecimals     = 6
	MetreDecimals  = 4
	LitreDecimals  = 3
	MinuteDecimals = 4
	KWhDecimals    = 6
)

// Round returns x rounded half away from zero to a number of decimals. What is a
// half step to fifteen digits counts as one, as it does in a spreadsheet's ROUND:
// binary fractions fall a hair short of many decimal halves.
func Round[T ~float64](x T, decimals int) T {
	step := math.Pow(10, float64(decimals))
	if plain := float64(x) * step; math.Abs(plain) < 1e15 && clearOfHalf(plain) {
		return T(math.Round(plain)/step + 0) // -0 becomes 0
	}
	scaled, err := strconv.ParseFloat(strconv.FormatFloat(float64(x)*step, 'g', 15, 64), 64)
	if r := math.Round(scaled) / step; err == nil && !math.IsInf(r, 0) {
		return T(r + 0) // -0 becomes 0
	}
	return x
}

// clearOfHalf tells whether a number is further from a half step than the last of
// fifteen digits: those are then no question.
func clearOfHalf(x float64) bool {
	return math.Abs(math.Abs(x-math.Trunc(x))-0.5) > 1e-14*math.Abs(x)
}

// AddUp returns parts rounded to a number of decimals so that they add up to the
// rounded total exactly: each is cut down, and the steps that are then missing go
// to the parts that lost most, the earlier first. A printed table of parts uses
// it, so that a reader who adds the column gets the figure below it.
func AddUp[T ~float64](total T, parts []T, decimals int) []T {
	step := math.Pow(10, float64(decimals))
	out, lost := make([]float64, len(parts)), make([]float64, len(parts))
	missing := math.Round(float64(total) * step)
	for i, p := range parts {
		scaled := float64(p) * step
		out[i] = math.Floor(scaled + 1e-9)
		lost[i] = scaled - out[i]
		missing -= out[i]
	}
	order := make([]int, len(parts))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return lost[order[a]] > lost[order[b]] })
	if n := float64(len(parts)); missing < 0 || missing > n {
		missing = 0 // the parts are not those of this total; show each as it is
		for i, p := range parts {
			out[i] = math.Round(float64(p) * step)
		}
	}
	for _, i := range order[:int(missing)] {
		out[i]++
	}
	rounded := make([]T, len(parts))
	for i := range out {
		rounded[i] = T(out[i] / step)
	}
	return rounded
}
