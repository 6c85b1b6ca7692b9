package price

import (
	"fmt"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// BenchmarkPrice measures pricing alone: the plans are made before.
func BenchmarkPrice(b *testing.B) {
	shop := shopOf(b)
	plans := make([]plan.Plan, 10000)
	for i := range plans {
		plans[i] = planned(&shop, fmt.Sprintf("W%d", i), fmt.Sprintf("A%d", i%40), "G3Si1", 1.0, "M21", units.Kg(0.1+float64(i%50)/100), 5, 2)
	}
	b.ReportAllocs()
	for b.Loop() {
		Price(joint.List{}, append([]plan.Plan{}, plans...), shop, nil, Options{})
	}
}
