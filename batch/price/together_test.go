package price

import "testing"

// TestBuyTogether rounds up once for all lists: three thirds of a spool are one,
// and what is on hand counts once.
func TestBuyTogether(t *testing.T) {
	wire := func(need float64) BuyLine {
		return BuyLine{What: BuyWire, Name: "W 1.0 mm", Need: need, Unit: "kg", Pack: 15, PackPrice: 30, OnHand: 2}
	}
	gas := BuyLine{What: BuyGas, Name: "M21", Need: 100, Unit: "l", Pack: 10000, PackPrice: 80}
	got := BuyTogether([][]BuyLine{{gas, wire(5)}, {wire(6)}, {wire(6)}})
	if len(got) != 2 || got[0].What != BuyWire || got[1].What != BuyGas {
		t.Fatalf("wires first, then gases: %+v", got)
	}
	if w := got[0]; w.Need != 17 || w.Packs != 1 || w.Cost != 30 || w.Remains != 0 {
		t.Errorf("17 kg less 2 on hand is one spool of 15 and nothing left: %+v", w)
	}
	if got := BuyTogether([][]BuyLine{{wire(9)}, {wire(9)}}); got[0].Packs != 2 || got[0].Remains != 14 {
		t.Errorf("18 kg less 2 is two spools, 14 kg left: %+v", got[0])
	}
}
