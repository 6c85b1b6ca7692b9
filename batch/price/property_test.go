package price

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

func drawPlans(r *rapid.T, shop *rates.Shop) []plan.Plan {
	var plans []plan.Plan
	for range rapid.IntRange(1, 8).Draw(r, "joints") {
		plans = append(plans, planned(shop, "W", "", rapid.SampledFrom([]string{"G3Si1", "T 46 2 P"}).Draw(r, "filler"), 1.2,
			rapid.SampledFrom([]string{"M21", "C1"}).Draw(r, "gas"), units.Kg(rapid.Float64Range(0.001, 50).Draw(r, "wire")),
			units.Litre(rapid.Float64Range(1, 9000).Draw(r, "litres")), units.Minute(rapid.Float64Range(0.1, 900).Draw(r, "arc"))))
	}
	return plans
}

// TestTwiceTheListIsTwiceTheMoney: a list given twice doubles every joint's
// money to the digit; only what belongs to the list as a whole, the change-overs
// and the rounding up to packs, does not double.
func TestTwiceTheListIsTwiceTheMoney(t *testing.T) {
	shop := shopOf(t)
	rapid.Check(t, func(r *rapid.T) {
		plans := drawPlans(r, &shop)
		one, two := priced(plans, shop), priced(append(plans[:len(plans):len(plans)], plans...), shop)
		a, b := one.Totals, two.Totals
		for name, pair := range map[string][2]float64{
			"cost": {float64(a.All.Cost), float64(b.All.Cost)}, "price": {float64(a.All.Price), float64(b.All.Price)},
			"labour": {float64(a.All.Labour), float64(b.All.Labour)}, "wire": {float64(a.All.WireKg), float64(b.All.WireKg)},
			"gas money": {float64(a.Gas), float64(b.Gas)},
		} {
			if math.Abs(2*pair[0]-pair[1]) > 1e-9*pair[1] {
				r.Fatalf("%s: twice %v is not %v", name, pair[0], pair[1])
			}
		}
		if a.ChangeOvers != b.ChangeOvers || a.ChangeOverPrice != b.ChangeOverPrice {
			r.Fatalf("change-overs %d became %d", a.ChangeOvers, b.ChangeOvers)
		}
		for i, line := range two.Buy {
			if line.Packs > 2*one.Buy[i].Packs || line.Packs < one.Buy[i].Packs {
				r.Fatalf("%s: %d packs became %d", line.Name, one.Buy[i].Packs, line.Packs)
			}
		}
	})
}

// TestAnotherJointNeverCheapens: a job with one more joint costs at least as much
// and buys at least as many packs.
func TestAnotherJointNeverCheapens(t *testing.T) {
	shop := shopOf(t)
	rapid.Check(t, func(r *rapid.T) {
		plans := drawPlans(r, &shop)
		less, more := priced(plans[:len(plans)-1], shop), priced(plans, shop)
		if more.Totals.Price < less.Totals.Price || more.Totals.ChangeOvers < less.Totals.ChangeOvers {
			r.Fatalf("price %v fell to %v", less.Totals.Price, more.Totals.Price)
		}
		packs := map[string]int{}
		for _, line := range more.Buy {
			packs[line.What+line.Name] = line.Packs
			if line.Need > line.OnHand+float64(line.Packs)*line.Pack+1e-6 {
				r.Fatalf("%s: %d packs do not cover %v", line.Name, line.Packs, line.Need)
			}
		}
		for _, line := range less.Buy {
			if packs[line.What+line.Name] < line.Packs {
				r.Fatalf("%s: packs fell below %d", line.Name, line.Packs)
			}
		}
	})
}
