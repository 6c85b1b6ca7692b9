// Package bars answers which piece is cut from which bar: a cutting plan from
// stock lengths with saw kerf and end loss, its waste, and beside it a lower bound
// that no plan can beat.
//
// The order to read: bars.go (the question and the answer), cut.go (the job in
// whole numbers), fill.go (good plans), exact.go (the best plan of a short list),
// shuffle.go (a plan too far above its bound), bound.go (what no plan can beat),
// simplex.go, knapsack.go and dive.go (both by the linear programme).
package bars

import (
	"slices"

	"seamtally/batch/units"
)

// Stock is what bars the shop buys and how it cuts them.
type Stock struct {
	Lengths []units.MM // of a bar as bought; any number of each
	Kerf    units.MM   // lost at each cut between two pieces
	EndLoss units.MM   // lost once on each bar: cropped ends, what the saw cannot grip
}

// Bar is one bar and the pieces cut from it.
type Bar struct {
	Stock  units.MM
	Pieces []int    // indices into the list of pieces, longest first
	Waste  units.MM // what is bought and becomes no piece: rest, kerfs and end loss
}

// Plan is a cutting plan.
type Plan struct {
	Bars    []Bar
	TooLong []int    // pieces that no bar holds, in the order of the list
	Bought  units.MM // length of all bars
	Waste   units.MM
	// LeastBars is a proven lower bound: no plan for the pieces that fit uses fewer
	// bars. LeastBought is the same for the length bought.
	LeastBars   int
	LeastBought units.MM
}

// Cut returns a cutting plan for pieces of the lengths given. It buys as little
// length as it can find, and of equal lengths the fewer bars. Same input, same
// plan.
//
//	n pieces fit a bar where Σ l + (n − 1) kerf <= stock − end loss   (BARS-1)
//
// Symbols: l lengths of the pieces, kerf, stock and end loss [mm].
// Valid: lengths above zero; lists to some 10,000 pieces take seconds.
// Assumes: the last piece of a bar that ends with it needs no cut; lengths hold to
// a hundredth of a millimetre.
// Basis: derived.
// Source: what a saw takes away.
// Errors: none; a piece that no bar holds stands in TooLong.
func Cut(pieces []units.MM, stock Stock) Plan {
	j := newJob(pieces, stock)
	var plan Plan
	plan.TooLong = j.tooLong
	if len(j.items) == 0 {
		return plan
	}
	best := j.fill()
	plan.LeastBars, plan.LeastBought = j.bounds(len(best))
	if j.cost(best) > whole(plan.LeastBought) {
		best = j.improve(best, plan.LeastBars, plan.LeastBought)
	}
	for _, load := range best {
		plan.Bars = append(plan.Bars, j.bar(load, pieces))
	}
	slices.SortStableFunc(plan.Bars, longestFirst(pieces))
	for _, b := range plan.Bars {
		plan.Bought += b.Stock
		plan.Waste += b.Waste
	}
	return plan
}

// longestFirst orders bars by their stock length, then by their pieces.
func longestFirst(pieces []units.MM) func(a, b Bar) int {
	return func(a, b Bar) int {
		if a.Stock != b.Stock {
			return compare(b.Stock, a.Stock)
		}
		for i := range min(len(a.Pieces), len(b.Pieces)) {
			if x, y := pieces[a.Pieces[i]], pieces[b.Pieces[i]]; x != y {
				return compare(y, x)
			}
		}
		return len(a.Pieces) - len(b.Pieces)
	}
}

func compare(a, b units.MM) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// Least returns what no plan for the pieces that fit can beat: the number of bars
// and the length bought, by BARS-2 alone. It is quick for lists of any length.
func Least(pieces []units.MM, stock Stock) (bars int, bought units.MM) {
	j := newJob(pieces, stock)
	if len(j.items) == 0 {
		return 0, 0
	}
	return j.bounds(0)
}
