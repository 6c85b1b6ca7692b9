package price

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// What is clear of a half is rounded as through fifteen digits.
func TestRoundShortWay(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		x := rapid.Float64Range(-1e9, 1e9).Draw(rt, "x")
		if rapid.Bool().Draw(rt, "near a half") {
			x = math.Trunc(x) + 0.5 + rapid.Float64Range(-1e-12, 1e-12).Draw(rt, "off")
		}
		decimals := rapid.IntRange(0, 6).Draw(rt, "decimals")
		step := math.Pow(10, float64(decimals))
		scaled, _ := strconv.ParseFloat(strconv.FormatFloat(x*step, 'g', 15, 64), 64)
		if want, got := math.Round(scaled)/step+0, Round(x, decimals); got != want {
			rt.Fatalf("%v to %d: %v, want %v", x, decimals, got, want)
		}
	})
}
