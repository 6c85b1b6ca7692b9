package bars

import "sort"

// tries is how many ways to fill one bar are looked at.
const tries = 3000

// fill returns the best of several plans, each made for one stock length, its
// bars then shortened where a shorter one holds the same pieces.
func (j *job) fill() []load {
	var best []load
	for _, s := range j.sizes {
		if j.items[0].size > s.room {
			continue
		}
		for _, plan := range [][]load{j.bestFit(s.room), j.fullest(s.room)} {
			if j.better(plan, best) {
				best = plan
			}
		}
	}
	return best
}

// bestFit lays each item, the longest first, into the fullest bar that still has
// room for it.
func (j *job) bestFit(room int64) []load {
	var loads []load
	var free []int64 // rest of each bar, sorted
	var at []int     // which bar it is
	for i, it := range j.items {
		k := sort.Search(len(free), func(k int) bool { return free[k] >= it.size })
		bar, rest := len(loads), room-it.size
		if k < len(free) {
			bar, rest = at[k], free[k]-it.size
			free, at = append(free[:k], free[k+1:]...), append(at[:k], at[k+1:]...)
			loads[bar] = append(loads[bar], i)
		} else {
			loads = append(loads, load{i})
		}
		k = sort.Search(len(free), func(k int) bool { return free[k] >= rest })
		free, at = append(free, 0), append(at, 0)
		copy(free[k+1:], free[k:])
		copy(at[k+1:], at[k:])
		free[k], at[k] = rest, bar
	}
	return loads
}

// fullest fills one bar after the other: the longest item left, and the others
// that leave the least rest behind it.
func (j *job) fullest(room int64) []load {
	left := make([]int, len(j.items))
	for i := range left {
		left[i] = i
	}
	var loads []load
	for len(left) > 0 {
		f := filler{items: j.items, left: left[1:], least: room - j.items[left[0]].size, tries: tries}
		f.first = f.least
		f.search(0, f.least)
		l := load{left[0]}
		taken := map[int]bool{0: true}
		for _, k := range f.best {
			l = append(l, left[k+1])
			taken[k+1] = true
		}
		loads = append(loads, l)
		rest := make([]int, 0, len(left))
		for k, i := range left {
			if !taken[k] {
				rest = append(rest, i)
			}
		}
		left = rest
	}
	return loads
}

// filler looks for the items that leave the least rest of a bar.
type filler struct {
	items []item
	left  []int // longest first
	first int64 // rest before anything is laid in
	least int64 // least rest found
	tries int
	now   []int
	best  []int
}

// search goes through the items from index k on that fit the rest, the longest
// first; of equal ones it leaves out one after the other.
func (f *filler) search(k int, rest int64) {
	if rest < f.least || rest == f.first && f.best == nil {
		f.least, f.best = rest, append([]int{}, f.now...)
	}
	f.tries--
	if f.least == 0 || f.tries < 0 || len(f.left) == 0 {
		return
	}
	for k = f.next(k, rest); k < len(f.left); k = f.other(k) {
		f.now = append(f.now, k)
		f.search(k+1, rest-f.at(k))
		f.now = f.now[:len(f.now)-1]
		if f.least == 0 || f.tries < 0 {
			return
		}
	}
}

func (f *filler) at(k int) int64 { return f.items[f.left[k]].size }

// next is the first index from k on whose item fits the rest.
func (f *filler) next(k int, rest int64) int {
	return k + sort.Search(len(f.left)-k, func(i int) bool { return f.at(k+i) <= rest })
}

// other is the first index after k with a shorter item.
func (f *filler) other(k int) int {
	size := f.at(k)
	return k + sort.Search(len(f.left)-k, func(i int) bool { return f.at(k+i) < size })
}
