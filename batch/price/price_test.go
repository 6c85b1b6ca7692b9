package price

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

func shopOf(t testing.TB, settings ...string) rates.Shop {
	t.Helper()
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	shop, err := rates.Default(set)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range shop.Set(settings) {
		if p.Level == finding.Error {
			t.Fatal(p.Line())
		}
	}
	return shop
}

// planned returns a plan with settings whose money follows the shop's formula.
func planned(shop *rates.Shop, mark, assembly, filler string, dia units.MM, gas string, wire units.Kg, litres units.Litre, arc units.Minute) plan.Plan {
	w, _ := shop.Wire(filler, dia)
	g, _ := shop.Gas(gas)
	p := plan.Plan{Manner: &plan.Manner{Settings: true, AreaDrawn: 18, Area: 20, Process: "135", Filler: filler, Dia: dia, Gas: gas, Transfer: plan.Spray,
		Machine: "a machine"}, Joint: &joint.Joint{Mark: mark, Assembly: assembly, Qty: 2, Detail: &joint.Detail{Position: "PB"}},
		Seam: 2.5, WeldMetal: wire * 0.9, WireKg: wire, GasL: litres, Arc: arc,
	}
	p.Cost = rates.CostOf(rates.Quantities{Qty: 2, Seam: 2.5, Seams: 2, Passes: 1, Arc: arc, WireKg: wire, WirePerKg: w.PerKg,
		Gas: litres, GasPerLitre: g.PerLitre(), ArcEnergy: 0.5, Transfer: "spray"}, shop)
	return p
}

func priced(plans []plan.Plan, shop rates.Shop) Job {
	var l joint.List
	for i := range plans {
		l.Joints = append(l.Joints, *plans[i].Joint)
	}
	return Price(l, plans, shop, nil, Options{})
}

// TestBuyListByHand is worked on paper: two joints share a wire that comes on
// 15 kg spools with 2 kg on hand, and a gas in cylinders of 10,000 l.
func TestBuyListByHand(t *testing.T) {
	shop := shopOf(t, "wire_price.G3Si1.1.0=2", "spool_kg.G3Si1=15", "on_hand_kg.G3Si1.1.0=2", "cylinder_price.M21=80", "cylinder_l.M21=10000", "tip_life_h=4", "tip_price=1.5")
	job := priced([]plan.Plan{
		planned(&shop, "W1", "A", "G3Si1", 1.0, "M21", 10, 6000, 300),
		planned(&shop, "W2", "B", "G3Si1", 1.0, "M21", 8, 6000, 240),
	}, shop)
	want := []BuyLine{
		{What: BuyWire, Name: "G3Si1 1.0 mm", Need: 18, Unit: "kg", OnHand: 2, Pack: 15, Packs: 2, Remains: 14, PackPrice: 30, Cost: 60, UsedCost: 36},
		{What: BuyGas, Name: "M21", Need: 12000, Unit: "l", Pack: 10000, Packs: 2, Remains: 8000, PackPrice: 80, Cost: 160, UsedCost: 96},
		{What: BuyTip, Name: "contact tip 1.0 mm", Need: 2.25, Unit: "pcs", Pack: 1, Packs: 3, Remains: 0.75, PackPrice: 1.5, Cost: 4.5, UsedCost: 3.375},
	}
	if len(job.Buy) != len(want) {
		t.Fatalf("%d lines: %+v", len(job.Buy), job.Buy)
	}
	for i := range want {
		if job.Buy[i] != want[i] {
			t.Errorf("line %d is\n%+v, want\n%+v", i, job.Buy[i], want[i])
		}
	}
}

func TestExactlyOnePackIsOnePack(t *testing.T) {
	for _, tt := range []struct {
		need, onHand float64
		packs        int
		remains      float64
	}{{15, 0, 1, 0}, {15.000001, 0, 2, 14.999999}, {0.1 + 0.2, 0.3, 0, 0}, {0, 0, 0, 0}, {3, 20, 0, 17}, {45.000000000001, 0, 3, 0}} {
		got := BuyLine{Need: tt.need, OnHand: tt.onHand, Pack: 15}.packed(KgDecimals)
		if got.Packs != tt.packs || math.Abs(got.Remains-tt.remains) > 1e-9 {
			t.Errorf("need %v with %v on hand: %d packs, %v remain; want %d, %v", tt.need, tt.onHand, got.Packs, got.Remains, tt.packs, tt.remains)
		}
	}
}

// TestChangeOversByHand: two wires in one gas are one change of eight minutes at
// 30 an hour with 60 % overhead: 8/60 x 48 = 6.40, and 6.40 / 0.85 = 7.5294.
func TestChangeOversByHand(t *testing.T) {
	shop := shopOf(t, "change_min=8", "labour_rate=30", "overhead_pct=60", "margin_pct=15")
	job := priced([]plan.Plan{
		planned(&shop, "W1", "", "G3Si1", 1.0, "M21", 1, 100, 10),
		planned(&shop, "W2", "", "G3Si1", 1.2, "M21", 1, 100, 10),
		planned(&shop, "W3", "", "G3Si1", 1.0, "M21", 1, 100, 10),
	}, shop)
	got := job.Totals
	if got.ChangeOvers != 1 || got.ChangeOverCost != 6.4 || got.ChangeOverPrice != 7.5294 {
		t.Errorf("%d changes, cost %v, price %v", got.ChangeOvers, got.ChangeOverCost, got.ChangeOverPrice)
	}
	if math.Abs(float64(got.Cost-got.All.Cost-6.4)) > 1e-9 {
		t.Errorf("cost %v, joints alone %v", got.Cost, got.All.Cost)
	}
}

// TestTotalsAddUp draws jobs and adds their joints up in every way there is.
func TestTotalsAddUp(t *testing.T) {
	shop := shopOf(t)
	rapid.Check(t, func(r *rapid.T) {
		var plans []plan.Plan
		for i := range rapid.IntRange(0, 12).Draw(r, "joints") {
			p := planned(&shop, "W", rapid.SampledFrom([]string{"", "A", "B"}).Draw(r, "assembly"), "G3Si1",
				rapid.SampledFrom([]units.MM{0.8, 1.0, 1.2}).Draw(r, "dia"), "M21",
				units.Kg(rapid.Float64Range(0.001, 50).Draw(r, "wire")), units.Litre(rapid.Float64Range(1, 9000).Draw(r, "gas")), units.Minute(rapid.Float64Range(0.1, 900).Draw(r, "arc")))
			if i%4 == 3 {
				p.Settings, p.Cost, p.WireKg, p.GasL, p.Arc = false, rates.Cost{}, 0, 0, 0
			}
			plans = append(plans, p)
		}
		job := priced(plans, shop)
		all := job.Totals.All
		for name, sums := range map[string][]Sum{"assembly": job.Totals.ByAssembly, "wire": job.Totals.ByWire, "gas": job.Totals.ByGas, "process": job.Totals.ByProcess, "position": job.Totals.ByPosition} {
			var s Sum
			for _, g := range sums {
				s.Joints, s.Copies, s.Seam, s.WeldMetal, s.WireKg = s.Joints+g.Joints, s.Copies+g.Copies, s.Seam+g.Seam, s.WeldMetal+g.WeldMetal, s.WireKg+g.WireKg
				s.GasL, s.Arc, s.Labour, s.Energy, s.Cost, s.Price = s.GasL+g.GasL, s.Arc+g.Arc, s.Labour+g.Labour, s.Energy+g.Energy, s.Cost+g.Cost, s.Price+g.Price
			}
			if s.round(); s != all {
				r.Fatalf("by %s adds up to\n%+v, the total is\n%+v", name, s, all)
			}
		}
		tot := job.Totals
		if parts := Round(tot.LabourCost+tot.Wire+tot.Gas+tot.Power+tot.Other, MoneyDecimals); parts != all.Cost {
			r.Fatalf("the five costs add up to %v, the cost is %v", parts, all.Cost)
		}
		for i := range job.Plans {
			c := job.Plans[i].Cost
			if sum := Round(c.LabourCost+c.Wire+c.Gas+c.Power+c.Other, MoneyDecimals); sum != c.Total || c.Price < c.Total {
				r.Fatalf("joint %d: parts %v, cost %v, price %v", i, sum, c.Total, c.Price)
			}
		}
		if len(tot.Exclusions) == 0 || tot.Exclusions[0] != WeldingOnly {
			r.Fatalf("exclusions %q", tot.Exclusions)
		}
	})
}

// TestPricedTwice prices plans that were priced before: they are rounded already,
// and no figure moves a second time.
func TestPricedTwice(t *testing.T) {
	shop := shopOf(t)
	plans := []plan.Plan{planned(&shop, "W1", "", "G3Si1", 1.0, "M21", 1.23456789, 100, 10)}
	once := priced(plans, shop)
	first, cost := once.Plans[0], once.Totals.Price
	twice := priced(once.Plans, shop)
	if !reflect.DeepEqual(twice.Plans[0], first) || twice.Totals.Price != cost {
		t.Errorf("priced again: %v, before %v", twice.Totals.Price, cost)
	}
	if first.WireKg != Round(first.WireKg, KgDecimals) {
		t.Errorf("the wire is not rounded: %v", first.WireKg)
	}
}

func TestAddUp(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		parts := rapid.SliceOfN(rapid.Float64Range(0, 1e6), 1, 20).Draw(r, "parts")
		total := 0.0
		for _, p := range parts {
			total += p
		}
		sum := 0.0
		for i, p := range AddUp(total, parts, 2) {
			sum += p
			if math.Abs(p-parts[i]) > 0.01+1e-6 {
				r.Fatalf("%v became %v", parts[i], p)
			}
		}
		if want := Round(total, 2); math.Abs(sum-want) > 1e-6 {
			r.Fatalf("the rounded parts add up to %v, the rounded total is %v", sum, want)
		}
	})
}

func TestRoundHasNoMinusZero(t *testing.T) {
	if got := Round(-0.00001, 2); math.Signbit(got) || got != 0 {
		t.Errorf("got %v", got)
	}
	for x, want := range map[float64]float64{2.345: 2.35, -2.345: -2.35, 0.5: 0.5, 1e300: 1e300} {
		if got := Round(x, 2); got != want {
			t.Errorf("%v rounds to %v, want %v", x, got, want)
		}
	}
}

// TestALittleIsStillBought: a tenth of a minute of arc wears a tip of 4 h by
// 0.0004, and the shop needs one to weld it.
func TestALittleIsStillBought(t *testing.T) {
	shop := shopOf(t)
	job := priced([]plan.Plan{planned(&shop, "W1", "", "G3Si1", 1.0, "M21", 0.00001, 0.01, 0.1)}, shop)
	for _, line := range job.Buy {
		if line.Need <= 0 || line.Packs != 1 {
			t.Errorf("%s: need %v, %d packs", line.Name, line.Need, line.Packs)
		}
	}
}

// The figure lies half a step between two decimals; in binary it falls just short.
func TestRoundTakesDecimalHalvesAsSpreadsheetsDo(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     float64
	}{
		{89.547 / 60 / 4, 6, 0.373113}, // 0.3731125: a tip need of the gangway sample
		{1.005, 2, 1.01}, {2.675, 2, 2.68}, {-1.005, 2, -1.01}, {0.5, 0, 1}, {0.49999999, 0, 0}, {1.0049999, 2, 1},
	} {
		if got := Round(c.x, c.decimals); got != c.want {
			t.Errorf("%v to %d decimals: %v, want %v", c.x, c.decimals, got, c.want)
		}
	}
}
