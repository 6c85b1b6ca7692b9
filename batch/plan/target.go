package plan

// target returns the current in A that metal, joint family and thickness call
// for: straight lines between the anchors, the last one beyond them, and in
// proportion to the thickness below the first.
func target(anchors []point, t float64) float64 {
	first := anchors[0]
	if t <= first.t {
		return first.i * t / first.t
	}
	for k := 1; k < len(anchors); k++ {
		if p, q := anchors[k-1], anchors[k]; t <= q.t {
			return p.i + (q.i-p.i)*(t-p.t)/(q.t-p.t)
		}
	}
	return anchors[len(anchors)-1].i
}

// sinkThickness returns the thickness in mm that sets the current where two parts
// meet: the mean of both, but no more than the sink factor times the thinner one,
// which must not burn through.
func sinkThickness(t1, t2, factor float64) float64 {
	thin := min(t1, t2)
	return min((t1+t2)/2, factor*thin)
}
