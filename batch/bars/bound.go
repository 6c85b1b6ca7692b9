package bars

import (
	"math"

	"seamtally/batch/units"
)

// foldings is how many dual feasible functions are tried.
const foldings = 120

// bounds returns what no plan can beat: the number of bars and the length bought.
//
//	bars >= ⌈Σ f(l / room)⌉ for every dual feasible f              (BARS-2)
//	f_k(x) = x where (k + 1) x is whole, else ⌊(k + 1) x⌋ / k      (BARS-3)
//	g_e(x) = 1 for x > 1 − e, x for e <= x <= 1 − e, else 0        (BARS-4)
//
// Symbols: l a piece with its kerf, room that of the longest bar; k = 1, 2, 3...;
// 0 < e <= 1/2. f is dual feasible where the values of whatever fits one bar add
// up to 1 at most; f_k after g_e is again.
// Where they leave a plan of most bars unproven, the bound of BARS-5 is tried too.
// Assumes: nothing of the pieces; with several stock lengths the bound of the
// bars is that of the longest, and the length is bounded by the best share of
// room, up to the next multiple of what all lengths are multiples of, and by the
// bars of the shortest.
// Basis: derived.
// Source: dual feasible functions, Fekete and Schepers 2001, recalled.
func (j *job) bounds(most int) (bars int, bought units.MM) {
	bars = j.leastBars(j.largest())
	if bars < most {
		bars = max(bars, relaxedBound(j.groups(), j.largest()))
	}
	if len(j.sizes) == 1 {
		return bars, units.MM(float64(bars)) * j.sizes[0].stock
	}
	all := commonOf(j.sizes)
	length := ceilDiv(j.leastLength(j.sizes), all) * all
	return bars, max(units.MM(length)/step, units.MM(float64(bars))*j.sizes[0].stock)
}

// leastLength is what must be bought of some sizes where all bars were filled without
// rest by the best share of room.
func (j *job) leastLength(sizes []size) int64 {
	share, sum := math.Inf(1), 0.0
	for _, s := range sizes {
		share = min(share, float64(s.price)/float64(s.room))
	}
	for _, it := range j.items {
		sum += float64(it.size)
	}
	return int64(math.Ceil(sum * share * (1 - 1e-12)))
}

// leastUpTo is what no plan can beat whose bars are of the first n sizes.
func (j *job) leastUpTo(n int) int64 {
	return max(j.leastLength(j.sizes[:n]), int64(j.leastBars(j.sizes[n-1].room))*j.sizes[0].price)
}

// commonOf is the length of which all that can be bought is a multiple.
func commonOf(sizes []size) int64 {
	all := int64(0)
	for _, s := range sizes {
		for rest := s.price; rest > 0; {
			all, rest = rest, all%rest
		}
	}
	return all
}

// group is a size and how many items have it.
type group struct{ size, n int64 }

func (j *job) groups() []group {
	var out []group
	for _, it := range j.items {
		if n := len(out); n > 0 && out[n-1].size == it.size {
			out[n-1].n++
		} else {
			out = append(out, group{it.size, 1})
		}
	}
	return out
}

// leastBars is the best of all bounds for bars of one room.
func (j *job) leastBars(room int64) int {
	groups := j.groups()
	best := ceilDiv(sumOf(groups, func(s int64) int64 { return s }), room)
	for k := int64(1); k <= foldings; k++ {
		best = max(best, ceilDiv(sumOf(groups, folded(k, room)), k*room))
	}
	thin := max(1, len(groups)/60) // with very many sizes not each is a threshold
	for i := 0; i < len(groups); i += thin {
		e := groups[i].size
		if 2*e > room {
			continue
		}
		cut := cutOff(e, room)
		best = max(best, ceilDiv(sumOf(groups, cut), room))
		for k := int64(1); k <= 20; k++ {
			f := folded(k, room)
			best = max(best, ceilDiv(sumOf(groups, func(s int64) int64 { return f(cut(s)) }), k*room))
		}
	}
	return int(best)
}

// folded is k room f_k in whole numbers.
func folded(k, room int64) func(int64) int64 {
	return func(s int64) int64 {
		if (k+1)*s%room == 0 {
			return k * s
		}
		return (k + 1) * s / room * room
	}
}

// cutOff is room g_e in whole numbers.
func cutOff(e, room int64) func(int64) int64 {
	return func(s int64) int64 {
		switch {
		case s > room-e:
			return room
		case s >= e:
			return s
		}
		return 0
	}
}

func sumOf(groups []group, f func(int64) int64) int64 {
	var sum int64
	for _, g := range groups {
		sum += g.n * f(g.size)
	}
	return sum
}

func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }
