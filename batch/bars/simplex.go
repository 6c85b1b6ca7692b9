package bars

// near is how far from zero a figure of the linear programme counts as zero.
const near = 1e-9

// pattern is how many pieces of each group one bar holds.
type pattern []int32

// term is a group of which a pattern holds pieces: most patterns hold few groups.
type term struct {
	group int
	n     float64
}

// column is a pattern with its terms.
type column struct {
	pattern
	terms []term
}

func columnOf(p pattern) column {
	c := column{pattern: p}
	for i, n := range p {
		if n != 0 {
			c.terms = append(c.terms, term{i, float64(n)})
		}
	}
	return c
}

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
	pool   []column
	column []float64 // of what enters, in terms of the basis
	worth  []float64 // of a piece of each group, in bars
}

// newRelaxed begins with a bar for each group alone.
func newRelaxed(groups []group, room int64, pool []column) *relaxed {
	m := len(groups)
	r := &relaxed{groups: groups, room: room, basis: make([]pattern, m), spare: make([]int, m), invers: make([][]float64, m), x: make([]float64, m), pool: pool, column: make([]float64, m), worth: make([]float64, m)}
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
	pi := r.worth
	clear(pi)
	for k, p := range r.basis {
		if p == nil {
			continue
		}
		row := r.invers[k][:len(pi)]
		for i := range pi {
			pi[i] += row[i]
		}
	}
	return pi
}

// solve pivots until no pattern lowers the sum; false where it gave up.
func (r *relaxed) solve() (pi []float64, done bool) {
	for range 30*len(r.groups) + 300 {
		pi = r.duals()
		if i := lowest(pi); pi[i] < -near {
			r.enter(column{}, i)
			continue
		}
		if p := r.fromPool(pi); p.pattern != nil {
			r.enter(p, 0)
			continue
		}
		p, worth, sure := knapsack(r.groups, r.room, pi)
		if worth <= 1+1e-7 {
			return pi, sure
		}
		c := columnOf(p)
		r.pool = append(r.pool, c)
		r.enter(c, 0)
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

func (r *relaxed) fromPool(pi []float64) column {
	best, most := -1, 1+1e-7
	for k := range r.pool {
		worth := 0.0
		for _, t := range r.pool[k].terms {
			worth += t.n * pi[t.group]
		}
		if worth > most {
			best, most = k, worth
		}
	}
	if best < 0 {
		return column{}
	}
	return r.pool[best]
}

// enter brings a pattern, or the surplus of a group, into the basis.
func (r *relaxed) enter(in column, surplus int) {
	column := r.column
	for k, row := range r.invers {
		if in.pattern == nil {
			column[k] = -row[surplus]
			continue
		}
		sum := 0.0
		for _, t := range in.terms {
			sum += row[t.group] * t.n
		}
		column[k] = sum
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
	r.basis[out], r.spare[out] = in.pattern, surplus
	pivot, left := column[out], r.invers[out]
	for i := range left {
		left[i] /= pivot
	}
	r.x[out] /= pivot
	for k, c := range column {
		if k == out || c == 0 {
			continue
		}
		row := r.invers[k][:len(left)]
		for i, v := range left {
			row[i] -= c * v
		}
		r.x[k] = max(0, r.x[k]-c*r.x[out])
	}
}
