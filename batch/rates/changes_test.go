package rates

import (
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/units"
)

// TestChangeOversByHand: the paths are short enough to walk on paper.
func TestChangeOversByHand(t *testing.T) {
	a := Setup{"G3Si1", 1.0, "M21", "one"}
	wire := Setup{"G3Si1", 1.2, "M21", "one"}
	gas := Setup{"G3Si1", 1.0, "C1", "one"}
	all := Setup{"S Al 5356", 1.2, "I1", "two"}
	for name, tt := range map[string]struct {
		setups []Setup
		want   int
	}{
		"none": {nil, 0}, "one": {[]Setup{a, a}, 0}, "a wire": {[]Setup{a, wire, a}, 1},
		"wire, first set-up, gas": {[]Setup{wire, gas, a}, 2}, // wire - a - gas, not wire - gas - a
		"everything":              {[]Setup{a, all}, 3},
	} {
		if got := ChangeOvers(tt.setups); got != tt.want {
			t.Errorf("%s: %d changes, want %d", name, got, tt.want)
		}
	}
}

// everyOrder counts the changes of every order there is and returns the fewest.
func everyOrder(done, left []Setup) int {
	if len(left) == 0 {
		n := 0
		for i := 1; i < len(done); i++ {
			n += done[i-1].changes(done[i])
		}
		return n
	}
	best := 1 << 30
	for i := range left {
		rest := append(append([]Setup(nil), left[:i]...), left[i+1:]...)
		best = min(best, everyOrder(append(append([]Setup(nil), done...), left[i]), rest))
	}
	return best
}

// TestFewestChanges compares with trying every order; going to the nearest each
// time never beats it.
func TestFewestChanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		distinct := rapid.SliceOfNDistinct(rapid.Custom(func(t *rapid.T) Setup {
			return Setup{Filler: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "filler"), Dia: rapid.SampledFrom([]units.MM{1, 1.2}).Draw(t, "dia"),
				Gas: rapid.SampledFrom([]string{"M21", "I1"}).Draw(t, "gas"), Machine: rapid.SampledFrom([]string{"x", "y"}).Draw(t, "machine")}
		}), 1, 6, rapid.ID[Setup]).Draw(t, "setups")
		want := everyOrder(nil, distinct)
		if got := ChangeOvers(append(distinct, distinct[0])); got != want {
			t.Fatalf("%d changes, every order tried gives %d", got, want)
		}
		if near := nearestFirst(distinct); near < want {
			t.Fatalf("%d changes by the nearest, fewer than the fewest %d", near, want)
		}
	})
}

// TestNotYoursFor names only what a job was priced with.
func TestNotYoursFor(t *testing.T) {
	s := defaultShop(t)
	s.Set([]string{"labour_rate=31"})
	has := map[string]bool{}
	for _, v := range s.NotYoursFor([]Setup{{"G3Si1", 0.8, "M21", "x"}}, map[string]bool{"short arc": true}) {
		has[v.Key] = true
	}
	for key, want := range map[string]bool{
		"margin_pct": true, "labour_rate": false, "idle_w": false, // stated by the shop; moves little money
		"wire_price.G3Si1.0.8": true, "wire_price.G3Si1": false, "spool_kg.G3Si1": true, // the price of the diameter applied
		"cylinder_price.M21": true, "cylinder_price.I1": false,
		"spatter_min_m.short_arc": true, "spatter_min_m.pulse": false, "spatter_min_m.short_arc.C1": false,
	} {
		if has[key] != want {
			t.Errorf("%s: listed %v, want %v", key, has[key], want)
		}
	}
}
