package bars

import (
	"math/rand/v2"
	"testing"

	"seamtally/batch/units"
)

// TestLongListsAreNearTheBound: with 200 pieces and more at most 2 % of bars above
// the lower bound, over lists of all kinds from one stock length, as long as they
// hold no more lengths than the linear programme takes. With more the 2 % are not
// always met: how many lists miss them is logged, and none may miss by a fifth.
func TestLongListsAreNearTheBound(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 17))
	worst, over, lists := 0.0, 0, 100
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
		gap := float64(len(p.Bars)-p.LeastBars) / float64(p.LeastBars)
		worst = max(worst, gap)
		if gap > 0.02 && len(p.Bars) > p.LeastBars+1 {
			over++
			kinds := map[units.MM]int{}
			for _, l := range kept {
				kinds[l]++
			}
			tell := t.Errorf
			if len(kinds) > mostGroups && gap < 0.2 {
				tell = t.Logf
			}
			tell("list %d: %d bars, at least %d (%.1f %%), %d pieces of %d lengths", i, len(p.Bars), p.LeastBars, 100*gap, len(kept), len(kinds))
		}
	}
	t.Logf("%d lists, worst %.2f %%, %d over", lists, 100*worst, over)
}
