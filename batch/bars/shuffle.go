package bars

import (
	"math/bits"
	"slices"
)

// dice are chance that a start decides: same start, same throws.
type dice uint64

// below throws a whole number from 0 to n − 1 (the steps of SplitMix64).
func (d *dice) below(n int) int {
	*d += 0x9e3779b97f4a7c15
	x := uint64(*d)
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	high, _ := bits.Mul64(x^x>>31, uint64(n))
	return int(high)
}

// How a plan that lies too far above its bound is looked through once more.
const (
	farShare = 50   // of the bound, one of so many: 2 %
	shuffles = 6000 // handfuls of bars that are emptied and filled again
	handful  = 5    // bars at a time
	glances  = 400  // ways to fill one bar of a handful that are looked at
)

// tooFar tells whether a plan needs more than 2 % of bars above what is proven, and
// more than one.
func tooFar(bars, least int) bool { return bars > least+max(1, least/farShare) }

// shuffle empties a handful of bars at a time and fills them again, one as full as can
// be after the other. The fuller some are, the emptier the last of them is, until one
// is left over. What is laid no worse is kept, so that the next handful finds the pieces
// mixed otherwise. It ends where the plan is near its bound, or after so many handfuls.
// Bars are of one room, and chance is seeded: same input, same plan.
func (j *job) shuffle(loads []load, room int64, least int) []load {
	r := dice(len(j.items)<<20 + len(loads))
	loads = copied(loads)
	for range shuffles {
		if !tooFar(len(loads), least) || len(loads) <= handful {
			break
		}
		for k := range handful { // the handful stands in front
			other := k + r.below(len(loads)-k)
			loads[k], loads[other] = loads[other], loads[k]
		}
		var left load
		before := 0.0
		for _, l := range loads[:handful] {
			left = append(left, l...)
			before += squared(j.used(l), room)
		}
		again := j.refill(left, room, &r)
		after := 0.0
		for _, l := range again {
			after += squared(j.used(l), room)
		}
		if len(again) < handful || len(again) == handful && after >= before {
			loads = append(again, loads[handful:]...)
		}
	}
	return loads
}

// squared is what a full bar counts for: two that are half full count less than one
// that is full.
func squared(used, room int64) float64 {
	share := float64(used) / float64(room)
	return share * share
}

// refill lays items into bars, each begun with an item taken by chance and filled with
// what leaves the least rest.
func (j *job) refill(left load, room int64, r *dice) []load {
	slices.Sort(left) // longest first
	var loads []load
	for len(left) > 0 {
		at := 0
		if r.below(2) == 0 {
			at = r.below(len(left))
		}
		first := left[at]
		left = append(left[:at:at], left[at+1:]...)
		f := filler{items: j.items, left: left, least: room - j.items[first].size, tries: glances}
		f.first = f.least
		f.search(0, f.least)
		l := load{first}
		rest := left[:0:0]
		next := 0
		for k, i := range left {
			if next < len(f.best) && f.best[next] == k {
				l = append(l, i)
				next++
				continue
			}
			rest = append(rest, i)
		}
		loads, left = append(loads, l), rest
	}
	return loads
}
