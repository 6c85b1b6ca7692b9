package bars

import (
	"math/rand/v2"
	"slices"
)

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
	r := rand.New(rand.NewPCG(uint64(len(j.items)), uint64(len(loads))))
	loads = copied(loads)
	for range shuffles {
		if !tooFar(len(loads), least) || len(loads) <= handful {
			break
		}
		for k := range handful { // the handful stands in front
			other := k + r.IntN(len(loads)-k)
			loads[k], loads[other] = loads[other], loads[k]
		}
		var left load
		before := 0.0
		for _, l := range loads[:handful] {
			left = append(left, l...)
			before += squared(j.used(l), room)
		}
		again := j.refill(left, room, r)
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
func (j *job) refill(left load, room int64, r *rand.Rand) []load {
	slices.Sort(left) // longest first
	var loads []load
	for len(left) > 0 {
		at := 0
		if r.IntN(2) == 0 {
			at = r.IntN(len(left))
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
