package bars

import (
	"math/rand/v2"
	"testing"
	"time"

	"seamtally/batch/units"
)

// allowed is how far above the lower bound a long list may lie: 2 % of its bars,
// and one bar of a list of few bars.
func allowed(least int) int { return max(1, least/50) }

// TestLongListsAreNearTheBound: with 200 pieces and more at most 2 % of bars above
// the lower bound, over lists of all kinds from one stock length.
func TestLongListsAreNearTheBound(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 17))
	worst, lists := 0.0, 100
	if raced {
		lists = 10
	}
	for i := range lists {
		pieces, stock := random(r, 200+r.IntN(200))
		stock.Lengths = stock.Lengths[:1]
		kept := pieces[:0]
		for _, l := range pieces {
			if l < 5900 {
				kept = append(kept, l)
			}
		}
		if len(kept) < 200 {
			continue
		}
		p := Cut(kept, stock)
		if err := sound(kept, stock, p); err != nil {
			t.Fatal(err)
		}
		worst = max(worst, float64(len(p.Bars)-p.LeastBars)/float64(p.LeastBars))
		if len(p.Bars) > p.LeastBars+allowed(p.LeastBars) {
			t.Errorf("list %d: %d bars, at least %d, %d pieces", i, len(p.Bars), p.LeastBars, len(kept))
		}
	}
	t.Logf("%d lists, worst %.2f %%", lists, 100*worst)
}

// TestManyLengthsAreNearTheBound: the same with pieces nearly all of which differ,
// up to 5,000 of them, each list in seconds.
func TestManyLengthsAreNearTheBound(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 29))
	for _, c := range []struct{ n, low, high int }{
		{500, 100, 5900}, {500, 1500, 3500}, {1000, 2000, 3100}, {1000, 1900, 5000}, {2000, 1500, 3500}, {5000, 100, 5900}, {5000, 1300, 2400}, {5000, 600, 1400}, {5000, 1900, 5000},
	} {
		if raced && c.n > 500 {
			continue
		}
		pieces := make([]units.MM, c.n)
		for i := range pieces {
			pieces[i] = units.MM(c.low) + units.MM(r.IntN((c.high-c.low)*2))/2
		}
		stock := Stock{Lengths: []units.MM{6000}, Kerf: 3, EndLoss: 20}
		start := time.Now()
		p := Cut(pieces, stock)
		took := time.Since(start)
		if err := sound(pieces, stock, p); err != nil {
			t.Fatal(err)
		}
		t.Logf("%d pieces of %d to %d mm: %d bars, at least %d, %v", c.n, c.low, c.high, len(p.Bars), p.LeastBars, took.Round(time.Millisecond))
		if len(p.Bars) > p.LeastBars+allowed(p.LeastBars) {
			t.Errorf("%d pieces of %d to %d mm: %d bars, at least %d", c.n, c.low, c.high, len(p.Bars), p.LeastBars)
		}
	}
}
