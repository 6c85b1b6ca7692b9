package settle

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// estimate is a value with its 95 % interval.
type estimate struct{ value, low, high float64 }

// jackknife estimates a value from n records and its interval from what the value
// becomes with each record left out in turn.
//
//	s² = (n − 1)/n Σ (v(i) − v̄)²,  v ± t s   (SETTLE-3)
//
// of(skip): the value without record skip, -1 for all; weights: how much each
// record counts, which sets the degrees of freedom: records of unequal weight say
// less than as many equal ones, ν = (Σ w)²/Σ w² − 1. Valid for means, ratios of
// sums and smooth functions of them. Source: the delete-one jackknife of the
// textbooks. Basis: derived; its coverage is measured by a test on simulated shops.
func jackknife(n int, weights []float64, of func(skip int) float64) estimate {
	all := of(-1)
	mean := 0.0
	left := make([]float64, n)
	for i := range left {
		left[i] = of(i)
		mean += left[i] / float64(n)
	}
	s := 0.0
	for _, v := range left {
		s += (v - mean) * (v - mean)
	}
	s = math.Sqrt(s * float64(n-1) / float64(n))
	t := distuv.StudentsT{Sigma: 1, Nu: freedom(weights)}.Quantile(0.975)
	return estimate{all, all - t*s, all + t*s}
}

// freedom returns the degrees of freedom that records of unequal weight leave.
func freedom(weights []float64) float64 {
	sum, squares := 0.0, 0.0
	for _, w := range weights {
		sum += w
		squares += w * w
	}
	return math.Max(1, sum*sum/squares-1)
}

// ratio estimates Σ u a / Σ u b. The weights u take the size of the joint off, for
// a record scatters by a share of itself: a metre of seam says as much about the
// shop as ten. They come from the plan, not from the record, so that a record
// too high weighs no less than one too low.
func ratio(a, b, u []float64) estimate {
	weights := make([]float64, len(b))
	for i := range b {
		weights[i] = u[i] * b[i]
	}
	return jackknife(len(a), weights, func(skip int) float64 {
		x, y := 0.0, 0.0
		for i := range a {
			if i != skip {
				x += u[i] * a[i]
				y += u[i] * b[i]
			}
		}
		return x / y
	})
}
