package price

import (
	"fmt"
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
)

// spreadJob is a job of two wires, two gases and a site joint.
func spreadJob(shop rates.Shop) Job {
	plans := []plan.Plan{
		planned(&shop, "A", "x", "G3Si1", 1.0, "M21", 3, 600, 40), planned(&shop, "B", "x", "G3Si1", 1.2, "M21", 5, 900, 50),
		planned(&shop, "C", "y", "G 19 9 L Si", 1.0, "M12", 2, 300, 30),
	}
	for i := range plans {
		plans[i].Prep = plan.Prep{Kind: joint.Fillet, WeldLegA: 6, WeldLegB: 6}
	}
	return priced(plans, shop)
}

// TestSpreadBeginsAtThePrice: with no value moved the lots cost what the joints cost.
func TestSpreadBeginsAtThePrice(t *testing.T) {
	job := spreadJob(shopOf(t))
	s := trial{shop: rates.NewVary(&job.Shop), nominal: &job.Shop, lots: lotsOf(&job), changes: float64(job.Totals.ChangeOvers), wire: -1, gas: -1}
	if got, want := s.price(), float64(job.Totals.Price); math.Abs(got-want) > 0.001 {
		t.Errorf("the lots cost %g, the job %g", got, want)
	}
}

// TestSpreadFactors compares each factor alone with a job priced anew at the ends.
func TestSpreadFactors(t *testing.T) {
	shop := shopOf(t)
	job := spreadJob(shop)
	seen := map[string]bool{}
	for _, f := range job.Totals.Spread.Factors {
		seen[f.Key] = true
		if f.Key == wirePrices || f.Key == gasPrices || f.Key == overweld || f.Key == "source_efficiency" || f.Key == "waste_pct" {
			continue // They change quantities, or several values: see below.
		}
		for value, want := range map[float64]float64{f.Low: float64(f.PriceLow), f.High: float64(f.PriceHigh)} {
			again := spreadJob(shopOf(t, fmt.Sprintf("%s=%g", f.Key, value)))
			if got := float64(again.Totals.Price); math.Abs(got-want) > 0.002 {
				t.Errorf("%s = %g: priced anew %g, in the spread %g", f.Key, value, got, want)
			}
		}
	}
	for _, key := range []string{"labour_rate", "operating_factor", "joint_min", "fitup_min_m", "change_min", "spatter_min_m.spray", "waste_pct", wirePrices, gasPrices, overweld} {
		if !seen[key] {
			t.Errorf("%s moves the price and is no factor", key)
		}
	}
	// 120 min of arc make 800 min at 0.15 and 267 min at 0.45: more than a wage of 18 or 50
	// makes of some 480 min.
	if first := job.Totals.Spread.Factors[0]; first.Key != "operating_factor" {
		t.Errorf("the operating factor moves this price most; it says %s", first.Key)
	}
	anew := spreadJob(shopOf(t, "wire_price.G3Si1=1.6", "wire_price.G 19 9 L Si=7"))
	for _, f := range job.Totals.Spread.Factors {
		if f.Key == wirePrices && math.Abs(float64(f.PriceLow-anew.Totals.Price)) > 0.002 {
			t.Errorf("wire prices at their lows: %g, priced anew %g", f.PriceLow, anew.Totals.Price)
		}
	}
}

// TestOverweldGrowth compares the growth with the area of a fillet: legs of 6 mm
// that become 7 hold 49/36 of the metal.
func TestOverweldGrowth(t *testing.T) {
	b, c := overweldGrowth(&plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: joint.Fillet, WeldLegA: 6, WeldLegB: 6}}})
	if got := 1 + b + c; math.Abs(got-49.0/36) > 1e-12 {
		t.Errorf("growth %g, want %g", got, 49.0/36)
	}
	if b, c = overweldGrowth(&plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: joint.SingleV, WeldLegA: 6}}}); b != 0 || c != 0 {
		t.Error("a groove has no legs to grow")
	}
}

// TestTriangular checks the inverse against the triangle's mean and median.
func TestTriangular(t *testing.T) {
	f := factor{num: 3, low: 2, high: 8}
	const n = 100000
	sum := 0.0
	for k := range n {
		sum += triangular(f, (float64(k)+0.5)/n)
	}
	if mean := sum / n; math.Abs(mean-(2+3+8)/3.0) > 1e-3 {
		t.Errorf("mean %g, want %g", mean, (2+3+8)/3.0)
	}
	if triangular(f, 0) != 2 || triangular(f, 1) != 8 || math.Abs(triangular(f, 1.0/6)-3) > 1e-12 {
		t.Error("the triangle reaches from 2 to 8 with its peak at 3, a sixth of it to the left")
	}
}

// TestSpreadIsARange: the price lies inside, the draws are the same each time, and
// a shop without spreads has none.
func TestSpreadIsARange(t *testing.T) {
	shop := shopOf(t)
	a, b := spreadJob(shop), spreadJob(shop)
	s := a.Totals.Spread
	if !(s.Low < s.Mid && s.Mid < s.High) || s.Low > a.Totals.Price || s.High < a.Totals.Price {
		t.Errorf("price %g in %g to %g", a.Totals.Price, s.Low, s.High)
	}
	if s.Low != b.Totals.Spread.Low || s.High != b.Totals.Spread.High {
		t.Error("two draws of the same job differ")
	}
	for i := range shop.Values {
		shop.Values[i].Low, shop.Values[i].High = 0, 0
	}
	if c := spreadJob(shop); len(c.Totals.Spread.Factors) != 0 {
		t.Errorf("no value has a spread: %+v", c.Totals.Spread.Factors)
	}
}

func BenchmarkSpread(b *testing.B) {
	job := spreadJob(shopOf(b))
	for b.Loop() {
		spreadOf(&job)
	}
}
