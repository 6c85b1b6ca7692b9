package bars

// near is how far from zero a figure of the linear programme counts as zero.
const near = 1e-9

// pattern is how many pieces of each group one bar holds.
type pattern []int32

// relaxed is the linear programme of a cutting problem: the least number of bars,
// parts of bars allowed, whose patterns make up the pieces of each group.
//
//	least Σ x_p with Σ a_ip x_p >= n_i, x_p >= 0        (BARS-5)
//
// It is solved by the revised simplex method; a pattern that is missing is found
// by the knapsack of its dual values (Gilmore and Gomory 1961).
type relaxed struct {
	groups []group
	room   int64
	basis  []pattern   // a nil pattern stands for a surplus
	spare  []int       // of which group the surplus is
	invers [][]float64 // of the basis
	x      []float64
	pool   []pattern
}

// newRelaxed begins with a bar for each group alone.
func newRelaxed(groups []group, room int64, pool []pattern) *relaxed {
	m := len(groups)
	r := &relaxed{groups: groups, room: room, basis: make([]pattern, m), spare: make([]int, m), invers: make([][]float64, m), x: make([]float64, m), pool: pool}
	for i, g := range groups {
		p := make(pattern, m)
		p[i] = int32(min(room/g.size, g.n))
		r.basis[i], r.x[i] = p, float64(g.n)/float64(p[i])
		r.invers[i] = make([]float64, m)
		r.invers[i][i] = 1 / float64(p[i])
	}
	return r
}

// duals is what one piece of each group is worth in bars.
func (r *relaxed) duals() []float64 {
	pi := make([]float64, len(r.groups))
	for k, p := range r.basis {
		if p == nil {
			continue
		}
		for i, v := range r.invers[k] {
			pi[i] += v
		}
	}
	return pi
}

// solve pivots until no pattern lowers the sum; false where it gave up.
func (r *relaxed) solve() (pi []float64, done bool) {
	for range 30*len(r.groups) + 300 {
		pi = r.duals()
		if i := lowest(pi); pi[i] < -near {
			r.enter(nil, i)
			continue
		}
		if p := r.fromPool(pi); p != nil {
			r.enter(p, 0)
			continue
		}
		p, worth, sure := knapsack(r.groups, r.room, pi)
		if worth <= 1+1e-7 {
			return pi, sure
		}
		r.pool = append(r.pool, p)
		r.enter(p, 0)
	}
	return pi, false
}

func lowest(v []float64) int {
	at := 0
	for i := range v {
		if v[i] < v[at] {
			at = i
		}
	}
	return at
}

func (r *relaxed) fromPool(pi []float64) pattern {
	var best pattern
	most := 1 + 1e-7
	for _, p := range r.pool {
		worth := 0.0
		for i, n := range p {
			worth += float64(n) * pi[i]
		}
		if worth > most {
			best, most = p, worth
		}
	}
	return best
}

// enter brings a pattern, or the surplus of a group, into the basis.
func (r *relaxed) enter(p pattern, surplus int) {
	m := len(r.groups)
	column := make([]float64, m)
	for k, row := range r.invers {
		if p == nil {
			column[k] = -row[surplus]
			continue
		}
		for i, n := range p {
			if n != 0 {
				column[k] += row[i] * float64(n)
			}
		}
	}
	out := -1
	for k, c := range column {
		if c > near && (out < 0 || r.x[k]*column[out] < r.x[out]*c) {
			out = k
		}
	}
	if out < 0 {
		return
	}
	r.basis[out], r.spare[out] = p, surplus
	pivot := column[out]
	for i := range r.invers[out] {
		r.invers[out][i] /= pivot
	}
	r.x[out] /= pivot
	for k, c := range column {
		if k == out || c == 0 {
			continue
		}
		for i, v := range r.invers[out] {
			r.invers[k][i] -= c * v
		}
		r.x[k] = max(0, r.x[k]-c*r.x[out])
	}
}
