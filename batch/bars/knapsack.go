package bars

import "slices"

// mostNodes is where the search for the most valuable bar gives up.
const mostNodes = 300_000

// knapsack returns the bar of most worth: pieces of each group, no more than there
// are. It is not sure where it gave up before it had seen all.
func knapsack(groups []group, room int64, worth []float64) (best pattern, most float64, sure bool) {
	k := &sack{groups: groups, worth: worth, nodes: mostNodes, now: make(pattern, len(groups)), best: make(pattern, len(groups))}
	for i := range groups {
		if worth[i] > 0 {
			k.order = append(k.order, i)
		}
	}
	slices.SortStableFunc(k.order, func(a, b int) int {
		x, y := worth[a]*float64(groups[b].size), worth[b]*float64(groups[a].size)
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return a - b
	})
	k.small = make([]int64, len(k.order)+1)
	k.small[len(k.order)] = room + 1
	for i := len(k.order) - 1; i >= 0; i-- {
		k.small[i] = min(k.small[i+1], groups[k.order[i]].size)
	}
	k.search(0, room, 0)
	return k.best, k.most, k.nodes >= 0
}

// sack is a search through the fillings of one bar.
type sack struct {
	groups    []group
	worth     []float64
	order     []int   // groups, the most worth for its length first
	small     []int64 // the shortest from there on
	nodes     int
	now, best pattern
	most      float64
}

func (k *sack) search(at int, room int64, worth float64) {
	if k.nodes--; k.nodes < 0 {
		return
	}
	if worth > k.most {
		k.most = worth
		copy(k.best, k.now)
	}
	for ; at < len(k.order) && room >= k.small[at]; at++ {
		i := k.order[at]
		g := k.groups[i]
		if worth+k.worth[i]/float64(g.size)*float64(room) <= k.most*(1+1e-12) {
			return
		}
		for n := min(room/g.size, g.n); n > 0; n-- {
			k.now[i] = int32(n)
			k.search(at+1, room-n*g.size, worth+float64(n)*k.worth[i])
			if k.nodes < 0 {
				break
			}
		}
		k.now[i] = 0
	}
}
