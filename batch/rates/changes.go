package rates

import "seamtally/batch/units"

// Setup is what stands at the welder's place: changing any of the three is a
// change-over.
type Setup struct {
	Filler  string
	Dia     units.MM
	Gas     string
	Machine string
}

// changes counts what must be changed to go from one set-up to another.
func (a Setup) changes(b Setup) int {
	n := 0
	if a.Filler != b.Filler || a.Dia != b.Dia {
		n++
	}
	if a.Gas != b.Gas {
		n++
	}
	if a.Machine != b.Machine {
		n++
	}
	return n
}

// exactSetups is how many set-ups are ordered by trying every order.
const exactSetups = 12

// ChangeOvers returns the number of changes of wire, gas or machine when the
// work is grouped so that they are fewest. The first set-up is not a change. Up
// to twelve set-ups the count is the least there is; beyond, each step goes to
// the nearest set-up left, which can be a few changes above the least.
//
// Source: counting. Basis: derived.
func ChangeOvers(setups []Setup) int {
	var distinct []Setup
	seen := map[Setup]bool{}
	for _, s := range setups {
		if !seen[s] {
			seen[s] = true
			distinct = append(distinct, s)
		}
	}
	switch {
	case len(distinct) < 2:
		return 0
	case len(distinct) <= exactSetups:
		return fewestChanges(distinct)
	}
	return nearestFirst(distinct)
}

// fewestChanges is the shortest path through all set-ups: for every set already
// visited and the set-up it ends in, the fewest changes so far.
func fewestChanges(setups []Setup) int {
	n, unknown := len(setups), 1<<30
	least := make([][]int, 1<<n)
	for visited := range least {
		least[visited] = make([]int, n)
		for last := range n {
			least[visited][last] = unknown
		}
	}
	for last := range n {
		least[1<<last][last] = 0
	}
	for visited := range least {
		for last := range n {
			for next := range n {
				if visited&(1<<last) != 0 && visited&(1<<next) == 0 {
					after := visited | 1<<next
					least[after][next] = min(least[after][next], least[visited][last]+setups[last].changes(setups[next]))
				}
			}
		}
	}
	best := unknown
	for _, count := range least[len(least)-1] {
		best = min(best, count)
	}
	return best
}

func nearestFirst(setups []Setup) int {
	total, at := 0, setups[0]
	left := append([]Setup(nil), setups[1:]...)
	for len(left) > 0 {
		near := 0
		for i := range left {
			if at.changes(left[i]) < at.changes(left[near]) {
				near = i
			}
		}
		total += at.changes(left[near])
		at = left[near]
		left = append(left[:near], left[near+1:]...)
	}
	return total
}
