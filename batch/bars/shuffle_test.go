package bars

import (
	"math/rand/v2"
	"reflect"
	"testing"
)

// The one list of the first four hundred whose plan by the linear programme lies more
// than 2 % above its bound, 94 bars of 92, comes within it, and the same way twice.
func TestAListFarFromItsBoundIsShuffled(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 17))
	pieces, stock := random(r, 200+r.IntN(200))
	for range 245 {
		pieces, stock = random(r, 200+r.IntN(200))
	}
	stock.Lengths = stock.Lengths[:1]
	p := Cut(pieces, stock)
	if err := sound(pieces, stock, p); err != nil {
		t.Fatal(err)
	}
	if len(pieces) != 245 || p.LeastBars != 92 || tooFar(len(p.Bars), p.LeastBars) {
		t.Errorf("%d pieces: %d bars, at least %d", len(pieces), len(p.Bars), p.LeastBars)
	}
	if again := Cut(pieces, stock); !reflect.DeepEqual(p, again) {
		t.Error("a second plan differs")
	}
}

// Shuffling a plan that is as bad as can be loses no item and leaves no bar too full.
func TestShufflingLosesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 9))
	for range 20 {
		pieces, stock := random(r, 60+r.IntN(60))
		j := newJob(pieces, stock)
		var alone []load
		for i := range j.items {
			alone = append(alone, load{i})
		}
		got := j.shuffle(alone, j.largest(), j.leastBars(j.largest()))
		seen := make([]int, len(j.items))
		for _, l := range got {
			if len(l) == 0 || j.used(l) > j.largest() {
				t.Errorf("a bar holds %d of %d", j.used(l), j.largest())
			}
			for _, i := range l {
				seen[i]++
			}
		}
		for i, n := range seen {
			if n != 1 {
				t.Errorf("item %d stands %d times", i, n)
			}
		}
		if len(got) >= len(alone) && len(alone) > 1 && j.used(alone[0])+j.used(alone[len(alone)-1]) <= j.largest() {
			t.Errorf("%d bars of %d items", len(got), len(alone))
		}
	}
}
