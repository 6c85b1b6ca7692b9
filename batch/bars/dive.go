package bars

import (
	"math"
	"slices"
	"sort"
)

// mostGroups is up to how many lengths the linear programme is solved; with more,
// neighbours are taken together.
const mostGroups = 120

// linearBound is the bound of BARS-5. Its dual values are cut to whole millionths
// and put to the proof again: whatever fits one bar is worth z at most, so Σ n v /
// z bars are needed at least. Zero where nothing was proven.
func linearBound(groups []group, room int64, pi []float64) int64 {
	worth := make([]float64, len(groups))
	sum := 0.0
	for i, p := range pi {
		worth[i] = math.Floor(max(0, p) * 1e6)
		sum += worth[i] * float64(groups[i].n)
	}
	_, most, sure := knapsack(groups, room, worth)
	if !sure || most <= 0 {
		return 0
	}
	return ceilDiv(int64(sum), int64(most))
}

// merged takes neighbouring lengths together until few enough are left, those first
// that lose least by it. Taken as long as the shortest of them they need no more bars
// than the true ones, which is a bound; taken as long as the longest (up), a plan for
// them holds the true ones.
func merged(groups []group, up bool) []group {
	out := slices.Clone(groups)
	for len(out) > mostGroups {
		at, least := 0, int64(math.MaxInt64)
		for i := range out[1:] {
			n := out[i].n
			if up {
				n = out[i+1].n
			}
			if loss := n * (out[i].size - out[i+1].size); loss < least {
				at, least = i, loss
			}
		}
		one := group{out[at+1].size, out[at].n + out[at+1].n}
		if up {
			one.size = out[at].size
		}
		out = append(append(out[:at:at], one), out[at+2:]...)
	}
	return out
}

// relaxedBound solves the linear programme for its bound.
func relaxedBound(groups []group, room int64) int {
	r := newRelaxed(merged(groups, false), room, nil)
	pi, _ := r.solve()
	return int(linearBound(r.groups, room, pi))
}

// diver lays the items of a job by the linear programme.
type diver struct {
	*job
	room   int64
	left   []int // items still to be laid, longest first
	groups []group
	exact  bool // the groups are of one length each
	pool   []column
	loads  []load
}

// dive makes a plan from the linear programme: whole bars of a pattern are taken,
// else the pattern nearest to a whole bar, and the rest is solved again. What a bar
// still has room for is laid into it at once.
func (j *job) dive(room int64) []load {
	d := &diver{job: j, room: room, left: make([]int, len(j.items))}
	for i := range d.left {
		d.left[i] = i
	}
	for len(d.left) > 0 {
		d.regroup()
		r := newRelaxed(d.groups, room, d.pool)
		r.solve()
		d.pool = r.pool
		before := len(d.left)
		if d.lay(r.round(!d.exact)); len(d.left) == before {
			return nil
		}
	}
	return d.loads
}

// regroup groups what is left. Patterns that are known are kept while each group is
// of one length.
func (d *diver) regroup() {
	var all []group
	for _, i := range d.left {
		if n := len(all); n > 0 && all[n-1].size == d.items[i].size {
			all[n-1].n++
		} else {
			all = append(all, group{d.items[i].size, 1})
		}
	}
	exact := len(all) <= mostGroups
	if d.exact && exact {
		d.pool = carried(d.groups, all, d.pool)
	} else {
		d.pool = nil
	}
	d.groups, d.exact = merged(all, true), exact
}

// carried writes patterns of some groups as patterns of those that are left of them.
func carried(before, now []group, pool []column) []column {
	at := make([]int, len(now)) // where each group was before
	for k, i := 0, 0; k < len(now); k++ {
		for before[i].size != now[k].size {
			i++
		}
		at[k] = i
	}
	var kept []column
	for _, p := range pool {
		q, ok := make(pattern, len(now)), false
		for k, i := range at {
			q[k] = min(p.pattern[i], int32(now[k].n))
			ok = ok || q[k] > 0
		}
		if ok {
			kept = append(kept, columnOf(q))
		}
	}
	return kept
}

// lay takes the pieces of patterns, of each group the longest first, and fills up
// what room they leave. Of several patterns one that has no longer all its pieces
// waits for the next turn.
func (d *diver) lay(taken []pattern) {
	next := make([]int, len(d.groups)) // place in left of the longest of each group
	ends := make([]int, len(d.groups))
	at := 0
	for g := range d.groups {
		next[g] = at
		at += int(d.groups[g].n)
		ends[g] = at
	}
	gone := make([]bool, len(d.left))
	for k, p := range taken {
		if k > 0 && !there(p, next, ends, gone) {
			continue
		}
		var l load
		rest := d.room
		for g, n := range p {
			for ; n > 0 && next[g] < ends[g]; next[g]++ {
				if gone[next[g]] {
					continue
				}
				gone[next[g]] = true
				l = append(l, d.left[next[g]])
				rest -= d.items[d.left[next[g]]].size
				n--
			}
		}
		if l = d.topUp(l, rest, gone); len(l) > 0 {
			d.loads = append(d.loads, l)
		}
	}
	kept := d.left[:0]
	for i, item := range d.left {
		if !gone[i] {
			kept = append(kept, item)
		}
	}
	d.left = kept
}

// there tells whether the groups still have all pieces of a pattern.
func there(p pattern, next, ends []int, gone []bool) bool {
	for g, n := range p {
		for i := next[g]; i < ends[g] && n > 0; i++ {
			if !gone[i] {
				n--
			}
		}
		if n > 0 {
			return false
		}
	}
	return true
}

// topUp lays into a bar what still fits it, the longest first.
func (d *diver) topUp(l load, rest int64, gone []bool) load {
	from := sort.Search(len(d.left), func(i int) bool { return d.items[d.left[i]].size <= rest })
	for i := from; i < len(d.left); i++ {
		if size := d.items[d.left[i]].size; !gone[i] && size <= rest {
			gone[i] = true
			l = append(l, d.left[i])
			rest -= size
		}
	}
	return l
}

// round returns the patterns to take now: the whole parts, else the one with most
// of a bar, or of many lengths all with most of a bar.
func (r *relaxed) round(many bool) []pattern {
	var taken []pattern
	best := -1
	for k, p := range r.basis {
		if p == nil {
			continue
		}
		for range int(r.x[k] + 1e-6) {
			taken = append(taken, p)
		}
		if best < 0 || r.x[k] > r.x[best] {
			best = k
		}
	}
	if len(taken) > 0 || best < 0 {
		return taken
	}
	taken = append(taken, r.basis[best])
	for k, p := range r.basis {
		if many && k != best && p != nil && r.x[k] > 0.6 {
			taken = append(taken, p)
		}
	}
	return taken
}
