package bars

import "math"

// mostGroups is up to how many lengths the linear programme is solved; with more,
// neighbours are taken together for the bound.
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

// merged takes neighbouring lengths together, as long as the shortest of them: the
// bars it needs are no more than the true ones.
func merged(groups []group) []group {
	each := (len(groups) + mostGroups - 1) / mostGroups
	var out []group
	for i := 0; i < len(groups); i += each {
		part := groups[i:min(i+each, len(groups))]
		one := group{size: part[len(part)-1].size}
		for _, g := range part {
			one.n += g.n
		}
		out = append(out, one)
	}
	return out
}

// relaxedBound solves the linear programme for its bound.
func relaxedBound(groups []group, room int64) int {
	r := newRelaxed(merged(groups), room, nil)
	pi, _ := r.solve()
	return int(linearBound(r.groups, room, pi))
}

// dive makes a plan from the linear programme: whole bars of a pattern are taken,
// else the pattern nearest to a whole bar, and the rest is solved again.
func (j *job) dive(room int64) []load {
	left := map[int64][]int{} // items of each size, still to be laid
	for i, it := range j.items {
		left[it.size] = append(left[it.size], i)
	}
	groups := j.groups()
	if len(groups) > mostGroups {
		return nil
	}
	var loads []load
	var pool []pattern
	for len(groups) > 0 {
		r := newRelaxed(groups, room, pool)
		r.solve()
		taken := r.round()
		for _, p := range taken {
			var l load
			for i, n := range p {
				for n = min(n, int32(len(left[groups[i].size]))); n > 0; n-- {
					items := left[groups[i].size]
					l = append(l, items[0])
					left[groups[i].size] = items[1:]
				}
			}
			if len(l) > 0 {
				loads = append(loads, l)
			}
		}
		groups, pool = remaining(groups, left, r.pool)
	}
	return loads
}

// round returns the patterns to take now: the whole parts, else the one with most
// of a bar.
func (r *relaxed) round() []pattern {
	var taken []pattern
	var best int
	for k, p := range r.basis {
		if p == nil {
			continue
		}
		for range int(r.x[k] + 1e-6) {
			taken = append(taken, p)
		}
		if r.basis[best] == nil || r.x[k] > r.x[best] {
			best = k
		}
	}
	if len(taken) == 0 {
		taken = append(taken, r.basis[best])
	}
	return taken
}

// remaining drops the groups that are laid, and from the pool what no longer can be.
func remaining(groups []group, left map[int64][]int, pool []pattern) ([]group, []pattern) {
	var out []group
	var at []int
	for i, g := range groups {
		if n := len(left[g.size]); n > 0 {
			out, at = append(out, group{g.size, int64(n)}), append(at, i)
		}
	}
	var kept []pattern
	for _, p := range pool {
		q, ok := make(pattern, len(out)), false
		for k, i := range at {
			q[k] = min(p[i], int32(out[k].n))
			ok = ok || q[k] > 0
		}
		if ok {
			kept = append(kept, q)
		}
	}
	return out, kept
}
