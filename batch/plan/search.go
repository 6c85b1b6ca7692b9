package plan

import (
	"math"
	"slices"
)

// A short list is chosen for by trying every choice, one of few set-ups by trying
// every set of them, as long as that takes no longer than planning the joints
// does; larger ones by closing, opening and swapping set-ups as long as the list
// gets cheaper.
const (
	mostChoices = 20_000
	mostSets    = 12
	mostTries   = 400_000 // sets x joints
)

// search settles the candidate of each joint.
func (s *selection) search() {
	if s.choices() <= mostChoices {
		s.everyChoice()
		return
	}
	s.openSets()
	s.move()
}

// choices returns how many choices the list has.
func (s *selection) choices() float64 {
	n := 1.0
	for i := range s.order {
		n *= float64(max(1, len(s.order[i])))
	}
	return n
}

// everyChoice tries each candidate of each joint with all of the others and keeps
// the cheapest choice, the first of equals.
func (s *selection) everyChoice() {
	best, pick := math.Inf(1), slices.Clone(s.pick)
	s.clear()
	var next func(i int)
	next = func(i int) {
		if i == len(s.order) {
			if cost := s.cost(); cost < best-1e-9 {
				best = cost
				copy(pick, s.pick)
			}
			return
		}
		if len(s.order[i]) == 0 {
			next(i + 1)
		}
		for _, k := range s.order[i] {
			s.pick[i] = k
			s.put(i, k, 1)
			next(i + 1)
			s.put(i, k, -1)
		}
	}
	next(0)
	copy(s.pick, pick)
}

// openSets finds the set of open set-ups with which the list is cheapest when each
// joint takes its own cheapest of them.
func (s *selection) openSets() {
	n := len(s.universe)
	open := make([]bool, len(s.c.setups))
	for _, k := range s.universe {
		open[k] = true
	}
	switch {
	case n <= mostSets && len(s.offers)<<n <= mostTries:
		s.every(open)
	default:
		s.climb(open)
	}
	s.with(open)
}

// with gives each joint its cheapest candidate of the open set-ups and returns
// what the list costs; infinite where a joint has none.
func (s *selection) with(open []bool) float64 {
	s.clear()
	for i := range s.offers {
		s.pick[i] = -1
		for _, k := range s.order[i] {
			if open[s.offers[i].list[k].way.setup] {
				s.pick[i] = k
				break
			}
		}
		if s.pick[i] >= 0 {
			s.put(i, s.pick[i], 1)
		} else if len(s.order[i]) > 0 {
			return math.Inf(1)
		}
	}
	return s.cost()
}

// every tries all sets of set-ups and leaves the cheapest open, of equals the one
// with the most.
func (s *selection) every(open []bool) {
	best, bestSet := math.Inf(1), 0
	for set := 1<<len(s.universe) - 1; set > 0; set-- {
		s.unlock(open, set)
		if cost := s.with(open); cost < best-1e-9 {
			best, bestSet = cost, set
		}
	}
	s.unlock(open, bestSet)
}

func (s *selection) unlock(open []bool, set int) {
	for at, k := range s.universe {
		open[k] = set&(1<<at) != 0
	}
}

// climb closes, swaps and opens set-ups, the change that saves most first, until
// none saves anything.
func (s *selection) climb(open []bool) {
	cost := s.with(open)
	for range 4 * len(s.universe) {
		best, a, b := s.step(open, cost)
		if a < 0 {
			return
		}
		flip(open, a, b)
		cost = best
	}
}

// step returns the cheapest cost that one change gives, and the change; -1 where
// none saves anything.
func (s *selection) step(open []bool, cost float64) (best float64, a, b int) {
	best, a, b = cost-1e-9, -1, -1
	try := func(x, y int) {
		flip(open, x, y)
		if c := s.with(open); c < best {
			best, a, b = c, x, y
		}
		flip(open, x, y)
	}
	for i, x := range s.universe {
		try(x, -1)
		for _, y := range s.universe[:i] {
			if open[x] != open[y] {
				try(x, y)
			}
		}
	}
	return best, a, b
}

func flip(open []bool, a, b int) {
	open[a] = !open[a]
	if b >= 0 {
		open[b] = !open[b]
	}
}

// mostRounds is how often the joints are gone through for moves that save; each
// round makes the list cheaper, and few lists need a third.
const mostRounds = 10

// move takes single joints to another set-up as long as that makes the list
// cheaper: a joint may fill a spool that is open anyway, or stay on a machine.
func (s *selection) move() {
	cost := s.cost()
	for range mostRounds {
		before := cost
		for i := range s.offers {
			cost = s.moveOne(i, cost)
		}
		if cost >= before-1e-9 {
			return
		}
	}
}

// moveOne gives a joint the candidate with which the list is cheapest.
func (s *selection) moveOne(i int, cost float64) float64 {
	best, bestCost := s.pick[i], cost
	if best < 0 || len(s.order[i]) < 2 {
		return cost
	}
	s.put(i, best, -1)
	for _, k := range s.order[i] {
		if k == s.pick[i] {
			continue
		}
		s.put(i, k, 1)
		if c := s.cost(); c < bestCost-1e-9 {
			best, bestCost = k, c
		}
		s.put(i, k, -1)
	}
	s.put(i, best, 1)
	s.pick[i] = best
	return bestCost
}
