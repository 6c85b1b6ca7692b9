package bars

import (
	"math"
	"slices"

	"seamtally/batch/units"
)

// The search for the best plan gives up after so many steps, and is not begun
// where a list is longer.
const (
	mostSteps = 400_000 // of a list of sureItems at most, which this ends
	someSteps = 20_000
	sureItems = 12
	mostItems = 60
)

// improve looks for a plan that buys less: by the linear programme, and for a short list
// by trying where each item may go; bars and least are what no plan can beat.
func (j *job) improve(known []load, bars int, least units.MM) []load {
	if len(j.items) > sureItems {
		for i, s := range j.sizes {
			if j.items[0].size > s.room || len(j.sizes) > 1 && j.leastUpTo(i+1) >= j.cost(known) {
				continue
			}
			if plan := j.dive(s.room); plan != nil && j.better(plan, known) {
				known = plan
			}
		}
	}
	if len(j.items) > mostItems {
		if len(j.sizes) == 1 && tooFar(len(known), bars) {
			return j.shuffle(known, j.largest(), bars)
		}
		return known
	}
	e := &exact{job: j, best: known, cost: j.cost(known), least: whole(least), share: math.Inf(1), steps: mostSteps}
	for _, s := range j.sizes {
		e.share = min(e.share, float64(s.price)/float64(s.room))
	}
	if len(j.items) > sureItems {
		e.steps = someSteps
	}
	var rest int64
	for _, it := range j.items {
		rest += it.size
	}
	e.search(0, rest)
	return e.best
}

// exact is a search through all plans.
type exact struct {
	*job
	loads  []load
	filled []int64
	now    int64 // length bought for the loads as they are
	best   []load
	cost   int64
	least  int64
	share  float64 // least length bought for a unit of room
	steps  int
}

// search lays the item at index i and all after it, rest in sum.
func (e *exact) search(i int, rest int64) {
	if e.steps--; e.steps < 0 || e.cost <= e.least {
		return
	}
	if i == len(e.items) {
		if e.now < e.cost {
			e.cost, e.best = e.now, copied(e.loads)
		}
		return
	}
	if e.hopeless(rest) {
		return
	}
	item := e.items[i].size
	for b := range e.loads {
		used := e.filled[b]
		if used+item > e.largest() || slices.Contains(e.filled[:b], used) || e.before(i, b) {
			continue
		}
		e.lay(b, i, rest)
	}
	e.loads, e.filled = append(e.loads, nil), append(e.filled, 0)
	e.lay(len(e.loads)-1, i, rest)
	e.loads, e.filled = e.loads[:len(e.loads)-1], e.filled[:len(e.filled)-1]
}

// lay puts the item at index i into bar b, searches on and takes it out again.
func (e *exact) lay(b, i int, rest int64) {
	item, before, now := e.items[i].size, e.filled[b], e.now
	if before > 0 {
		e.now -= e.sizeFor(before).price
	}
	e.now += e.sizeFor(before + item).price
	e.loads[b], e.filled[b] = append(e.loads[b], i), before+item
	if e.now < e.cost {
		e.search(i+1, rest-item)
	}
	e.loads[b], e.filled[b], e.now = e.loads[b][:len(e.loads[b])-1], before, now
}

// before tells whether the item before it is as long and lies in a later bar: the
// two could change places, and that has been tried.
func (e *exact) before(i, b int) bool {
	if i == 0 || e.items[i-1].size != e.items[i].size {
		return false
	}
	for later := b + 1; later < len(e.loads); later++ {
		if l := e.loads[later]; len(l) > 0 && l[len(l)-1] == i-1 {
			return true
		}
	}
	return false
}

// hopeless tells whether what is still to be laid costs too much even where it
// fills all that is free without rest.
func (e *exact) hopeless(rest int64) bool {
	if len(e.sizes) > 1 { // what is laid and what is left, at the best share
		sum := rest
		for _, used := range e.filled {
			sum += used
		}
		return float64(sum)*e.share >= float64(e.cost)
	}
	for _, used := range e.filled {
		rest -= e.largest() - used
	}
	return rest > 0 && e.now+ceilDiv(rest, e.largest())*e.sizes[0].price >= e.cost
}

func copied(loads []load) []load {
	out := make([]load, len(loads))
	for i, l := range loads {
		out[i] = append(load{}, l...)
	}
	return out
}
