package rates

import (
	"math"
	"testing"

	"pgregory.net/rapid"
	"seamtally/batch/units"
)

// plainShop prices nothing but what a test sets.
func plainShop() Shop {
	return Shop{OperatingFactor: 1, SiteFactor: 1, TipLifeH: 1, SourceEfficiency: 1}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, within)
	}
}

// TestPublishedCostPerPound prices one pound of weld metal as the printed cost
// worksheet does. Worked again by hand: 45 / (10.2 x 0.45) = 9.804, printed 9.80;
// 1.78 / 0.87 = 2.046, printed 2.05; 40 cfh x 0.02 / 10.2 = 0.0784, printed 0.08.
// Each printed to the cent, so half a cent either way; the total adds three.
func TestPublishedCostPerPound(t *testing.T) {
	tests := []struct {
		source                              string
		rate, lbHour, factor                float64
		wire, efficiency, cfh, perFt3       float64
		wantLabour, wantWire, wantGas, want float64
	}{
		{"Filler Metal Data Handbook, sec. 8 p.8, E71T-1 1/16 in at 300 A",
			45, 10.2, 0.45, 1.78, 0.87, 40, 0.02, 9.80, 2.05, 0.08, 11.93},
		{"Filler Metal Data Handbook, sec. 8 p.8, E7018 3/16 in at 250 A (same arithmetic, no gas)",
			45, 5.4, 0.30, 0.85, 0.64, 0, 0, 27.78, 1.33, 0, 29.11},
	}
	for _, tt := range tests {
		shop := plainShop()
		shop.LabourRate, shop.OperatingFactor = units.Money(tt.rate), tt.factor
		got := CostOf(Quantities{
			Qty: 1, Passes: 1, Seams: 1,
			Arc:       units.Minute(60 / tt.lbHour),
			WireKg:    units.Kg(1 / tt.efficiency), // the unit of mass is the pound throughout
			WirePerKg: units.Money(tt.wire),
			Gas:       units.Litre(tt.cfh / tt.lbHour), GasPerLitre: units.Money(tt.perFt3),
		}, &shop)
		near(t, tt.source+": labour", float64(got.LabourCost), tt.wantLabour, 0.005)
		near(t, tt.source+": wire", float64(got.Wire), tt.wantWire, 0.005)
		near(t, tt.source+": gas", float64(got.Gas), tt.wantGas, 0.005)
		near(t, tt.source+": total", float64(got.Total), tt.want, 0.005)
	}
}

// TestPublishedLines checks single lines of other published examples.
func TestPublishedLines(t *testing.T) {
	shop := plainShop()
	// Trade article on shielding gas use: argon 2.50 per 100 ft3, 45 cfh, 8 h of
	// arc, printed 9.00; at 15 to 30 % arc printed 1.35 to 2.70.
	for share, want := range map[float64]float64{1: 9.00, 0.15: 1.35, 0.30: 2.70} {
		got := CostOf(Quantities{Gas: units.Litre(45 * 8 * share), GasPerLitre: 0.025}, &shop)
		near(t, "gas of a shift", float64(got.Gas), want, 0.005)
	}
	// Thesis (Croatian): rutile cored wire 172.8 per kg, consumption factor 1.1,
	// printed 190 per kg of deposit.
	got := CostOf(Quantities{WireKg: 1.1, WirePerKg: 172.8}, &shop)
	near(t, "cored wire per kg deposit", float64(got.Wire), 190, 0.5)
	// Arithmetic on class slides (Spanish): 36.95 kg, solid wire 21000 per kg at
	// efficiency 0.95 is 816789; cored wire 25000 at 0.85 is 1086765.
	got = CostOf(Quantities{WireKg: 36.95 / 0.95, WirePerKg: 21000}, &shop)
	near(t, "solid wire", float64(got.Wire), 816789, 1)
	got = CostOf(Quantities{WireKg: 36.95 / 0.85, WirePerKg: 25000}, &shop)
	near(t, "cored wire", float64(got.Wire), 1086765, 1)
	// Job check derived in the power figures: 24 V 220 A, efficiency 0.85, arc 0.6 h
	// (3.727 kWh), idle 1.4 h at 50 W (0.070 kWh): 3.797 kWh. Idle is labour less arc.
	shop.OperatingFactor, shop.IdleW = 0.3, 50
	got = CostOf(Quantities{Arc: 36, ArcEnergy: units.KWh(24 * 220 / 0.85 / 1000 * 0.6)}, &shop)
	near(t, "energy", float64(got.Energy), 3.797, 0.0005)
}

// TestContractFormula works one joint through every term by hand.
//
// 4 copies, 2 sides of 0.5 m: seam 4 m, seams 8, 3 passes, arc 18 min, on site.
//
//	joint 4x3 = 12; fitup 4x2.5 = 10; clean 4x1 = 4; between (3-1)x0.5x8 = 8
//	arc/f = 18/0.30 = 60: arc 18, idle 42; rework 60x2 % = 1.2
//	sum 95.2; site 1.5: 142.8 min
//	labour 142.8/60 x 30 x 1.5 = 107.10
//	wire 2 kg x 2.20 = 4.40; gas 270 l x 0.005 = 1.35
//	energy 1.9 + 50 W x (142.8-18) min = 1.9 + 0.104 = 2.004 kWh; x 0.25 = 0.501
//	other: tips 0.3 h / 4 h x 2 = 0.15; spatter 4 m x 0.5 min = 2 min at 45/h = 1.50; 1.65
//	cost 107.10 + 4.40 + 1.35 + 0.501 + 1.65 = 115.001; margin 20 %: 143.75125
func TestContractFormula(t *testing.T) {
	shop := Shop{
		OperatingFactor: 0.30, JointMin: 3, FitupMinM: 2.5, CleanMinM: 1, BetweenPassMin: 0.5,
		SiteFactor: 1.5, ReworkPct: 2, LabourRate: 30, OverheadPct: 50, MarginPct: 20,
		PowerPrice: 0.25, IdleW: 50, TipPrice: 2, TipLifeH: 4,
		SpatterMinM: map[string]float64{"short arc": 0.5, "short arc.C1": 1},
	}
	q := Quantities{
		Qty: 4, Seam: 4, Seams: 8, Passes: 3, Arc: 18, Site: true, DutyCap: 0.6,
		WireKg: 2, WirePerKg: 2.20, Gas: 270, GasPerLitre: 0.005, ArcEnergy: 1.9, Transfer: "short arc", GasName: "M21",
	}
	got := CostOf(q, &shop)
	near(t, "labour", float64(got.Labour.Total), 142.8, 1e-9)
	near(t, "idle", float64(got.Labour.Idle), 42, 1e-9)
	near(t, "labour cost", float64(got.LabourCost), 107.10, 1e-9)
	near(t, "wire", float64(got.Wire), 4.40, 1e-9)
	near(t, "gas", float64(got.Gas), 1.35, 1e-9)
	near(t, "energy", float64(got.Energy), 2.004, 1e-9)
	near(t, "power", float64(got.Power), 0.501, 1e-9)
	near(t, "other", float64(got.Other), 1.65, 1e-9)
	near(t, "cost", float64(got.Total), 115.001, 1e-9)
	near(t, "price", float64(got.Price), 143.75125, 1e-9)

	q.Site = false
	near(t, "in the shop", float64(CostOf(q, &shop).Labour.Total), 95.2, 1e-9)
	q.DutyCap = 0.20 // the machine bears less than the operating factor: 18/0.20 = 90
	near(t, "duty bound", float64(CostOf(q, &shop).Labour.Total), 12+10+4+8+90+1.8, 1e-9)
	q.GasName = "C1"
	near(t, "spatter under CO2", CleaningMin(q, &shop), 4, 1e-9)
}

// TestImpossibleRates: nothing that is not a number ever leaves CostOf.
func TestImpossibleRates(t *testing.T) {
	for _, shop := range []Shop{
		{}, {OperatingFactor: 1, MarginPct: 100}, {OperatingFactor: -1}, {OperatingFactor: 1, MarginPct: -5},
		{OperatingFactor: 1, LabourRate: units.Money(math.Inf(1))},
	} {
		if got := CostOf(Quantities{Qty: 1, Arc: 1}, &shop); got != (Cost{}) {
			t.Errorf("shop %+v: got %+v, want unknown", shop, got)
		}
	}
}

func drawShop(t *rapid.T) Shop {
	f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	return Shop{
		OperatingFactor: f("factor", 0.05, 1), JointMin: units.Minute(f("joint", 0, 30)), FitupMinM: f("fitup", 0, 60),
		CleanMinM: f("clean", 0, 60), BetweenPassMin: units.Minute(f("between", 0, 30)), SiteFactor: f("site", 1, 5),
		ReworkPct: f("rework", 0, 50), LabourRate: units.Money(f("rate", 0, 500)), OverheadPct: f("overhead", 0, 300),
		MarginPct: f("margin", 0, 90), PowerPrice: units.Money(f("power", 0, 2)), IdleW: f("idle", 0, 500),
		TipPrice: units.Money(f("tip", 0, 20)), TipLifeH: f("life", 0.5, 50),
		SpatterMinM: map[string]float64{"spray": f("spatter", 0, 10)},
	}
}

func drawQuantities(t *rapid.T) Quantities {
	f := func(name string, high float64) float64 { return rapid.Float64Range(0, high).Draw(t, name) }
	qty := rapid.IntRange(1, 500).Draw(t, "qty")
	return Quantities{
		Qty: qty, Seam: units.Metre(f("seam", 1e4)), Seams: float64(qty * rapid.IntRange(1, 2).Draw(t, "sides")),
		Passes: rapid.IntRange(1, 20).Draw(t, "passes"), Arc: units.Minute(f("arc", 1e5)), Site: rapid.Bool().Draw(t, "site"),
		DutyCap: rapid.SampledFrom([]float64{0, 0.1, 0.35, 0.6, 1}).Draw(t, "duty"), WireKg: units.Kg(f("kg", 1e4)), WirePerKg: units.Money(f("perKg", 100)),
		Gas: units.Litre(f("gas", 1e6)), GasPerLitre: units.Money(f("perLitre", 1)), ArcEnergy: units.KWh(f("kwh", 1e4)), Transfer: "spray",
	}
}

// TestTwiceTheQuantity: doubling a joint's copies doubles every part of its money.
func TestTwiceTheQuantity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shop, q := drawShop(t), drawQuantities(t)
		twice := q
		twice.Qty, twice.Seam, twice.Seams, twice.Arc = 2*q.Qty, 2*q.Seam, 2*q.Seams, 2*q.Arc
		twice.WireKg, twice.Gas, twice.ArcEnergy = 2*q.WireKg, 2*q.Gas, 2*q.ArcEnergy
		one, two := CostOf(q, &shop), CostOf(twice, &shop)
		for _, pair := range [][2]units.Money{{one.LabourCost, two.LabourCost}, {one.Power, two.Power},
			{one.Other, two.Other}, {one.Total, two.Total}, {one.Price, two.Price}} {
			if math.Abs(float64(2*pair[0]-pair[1])) > 1e-9*float64(pair[1])+1e-12 {
				t.Fatalf("twice %v is not %v", pair[0], pair[1])
			}
		}
	})
}

// TestPriceRises: more of anything that is paid for never makes a joint cheaper.
func TestPriceRises(t *testing.T) {
	grow := []func(*Quantities, *Shop){
		func(q *Quantities, _ *Shop) { q.Qty++ }, func(q *Quantities, _ *Shop) { q.Seam += 1 },
		func(q *Quantities, _ *Shop) { q.Passes++ }, func(q *Quantities, _ *Shop) { q.Arc += 1 },
		func(q *Quantities, _ *Shop) { q.Site = true }, func(q *Quantities, _ *Shop) { q.WireKg += 1 },
		func(q *Quantities, _ *Shop) { q.Gas += 1 }, func(q *Quantities, _ *Shop) { q.ArcEnergy += 1 },
		func(_ *Quantities, s *Shop) { s.LabourRate += 1 }, func(_ *Quantities, s *Shop) { s.OverheadPct += 1 },
		func(_ *Quantities, s *Shop) { s.MarginPct += 1 }, func(_ *Quantities, s *Shop) { s.OperatingFactor *= 0.9 },
		func(_ *Quantities, s *Shop) { s.ReworkPct += 1 }, func(_ *Quantities, s *Shop) { s.TipPrice += 1 },
	}
	rapid.Check(t, func(t *rapid.T) {
		shop, q := drawShop(t), drawQuantities(t)
		before := CostOf(q, &shop).Price
		grow[rapid.IntRange(0, len(grow)-1).Draw(t, "grow")](&q, &shop)
		if after := CostOf(q, &shop).Price; float64(after) < float64(before)*(1-1e-12)-1e-12 {
			t.Fatalf("price fell from %v to %v", before, after)
		}
	})
}

// Slag is taken off every run: two runs of three metres at a minute a metre.
func TestSlagIsCleanedOffEveryRun(t *testing.T) {
	s := Shop{SlagMinM: 1, SpatterMinM: map[string]float64{"spray": 0.5}}
	if got := CleaningMin(Quantities{Seam: 3, SlagRuns: 6, Transfer: "spray"}, &s); got != 7.5 {
		t.Errorf("%g min, want 3 x 0.5 + 6 x 1", got)
	}
}
