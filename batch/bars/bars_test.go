package bars

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"seamtally/batch/units"
)

// sound says what is wrong with a plan: a piece lost, doubled, or longer with the
// others than its bar.
func sound(pieces []units.MM, stock Stock, p Plan) error {
	seen := make([]int, len(pieces))
	var bought, waste units.MM
	for i, b := range p.Bars {
		sum := -stock.Kerf
		used := units.MM(0)
		for _, k := range b.Pieces {
			seen[k]++
			sum += pieces[k] + stock.Kerf
			used += pieces[k]
		}
		if len(b.Pieces) == 0 || sum > b.Stock-stock.EndLoss+1e-6 {
			return fmt.Errorf("bar %d of %v holds %v", i, b.Stock, sum)
		}
		if math.Abs(float64(b.Stock-used-b.Waste)) > 1e-6 {
			return fmt.Errorf("bar %d: waste %v", i, b.Waste)
		}
		bought += b.Stock
		waste += b.Waste
	}
	for _, k := range p.TooLong {
		seen[k]++
		for _, l := range stock.Lengths {
			if pieces[k] > 0 && pieces[k] <= l-stock.EndLoss-0.02 {
				return fmt.Errorf("piece of %v fits %v", pieces[k], l)
			}
		}
	}
	for k, n := range seen {
		if n != 1 {
			return fmt.Errorf("piece %d stands %d times", k, n)
		}
	}
	if bought != p.Bought || math.Abs(float64(waste-p.Waste)) > 1e-3 || p.LeastBars > len(p.Bars) || p.LeastBought > p.Bought+1e-6 {
		return fmt.Errorf("sums: %v of %v bought, waste %v of %v, %d bars at least %d, at least %v", bought, p.Bought, waste, p.Waste, len(p.Bars), p.LeastBars, p.LeastBought)
	}
	return nil
}

// random makes a list as shops have it: few or many lengths, short or long ones.
func random(r *rand.Rand, n int) ([]units.MM, Stock) {
	stock := Stock{Lengths: []units.MM{6000}, Kerf: units.MM(r.IntN(5)), EndLoss: units.MM(r.IntN(60))}
	if r.IntN(3) == 0 {
		stock.Lengths = append(stock.Lengths, units.MM(3000+1000*r.IntN(10)), 12000)
	}
	low, high := 50+r.IntN(2000), 2000+r.IntN(4200)
	kinds := 1 + r.IntN(max(2, n))
	lengths := make([]units.MM, kinds)
	for i := range lengths {
		lengths[i] = units.MM(low + r.IntN(max(1, high-low)))
		if r.IntN(4) == 0 {
			lengths[i] += 0.35
		}
	}
	pieces := make([]units.MM, n)
	for i := range pieces {
		pieces[i] = lengths[r.IntN(kinds)]
	}
	return pieces, stock
}

// TestNothingIsLost: over 10,000 random lists no piece is lost, doubled or longer
// than its bar, the bounds hold, and the plan is the same twice.
func TestNothingIsLost(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	lists := 10_000
	if raced {
		lists = 1000
	}
	for i := range lists {
		pieces, stock := random(r, r.IntN(40))
		p := Cut(pieces, stock)
		if err := sound(pieces, stock, p); err != nil {
			t.Fatalf("list %d: %v\n%v %+v", i, err, pieces, stock)
		}
		if i%50 == 0 && !reflect.DeepEqual(p, Cut(pieces, stock)) {
			t.Fatalf("list %d: two plans for the same list", i)
		}
	}
}

// optimum tries all ways to share pieces among bars, with nothing clever in it.
func optimum(pieces []units.MM, stock Stock) units.MM {
	best := units.MM(math.Inf(1))
	var bars []units.MM
	price := func(sum units.MM) units.MM {
		least := units.MM(math.Inf(1))
		for _, l := range stock.Lengths {
			if sum-stock.Kerf <= l-stock.EndLoss+1e-9 {
				least = min(least, l)
			}
		}
		return least
	}
	var lay func(i int)
	lay = func(i int) {
		if i == len(pieces) {
			var sum units.MM
			for _, b := range bars {
				sum += price(b)
			}
			best = min(best, sum)
			return
		}
		for b := range bars {
			bars[b] += pieces[i] + stock.Kerf
			lay(i + 1)
			bars[b] -= pieces[i] + stock.Kerf
		}
		bars = append(bars, pieces[i]+stock.Kerf)
		lay(i + 1)
		bars = bars[:len(bars)-1]
	}
	lay(0)
	return best
}

// TestShortListsAreBest compares lists of up to 8 pieces with every possible plan.
func TestShortListsAreBest(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	lists := 1500
	if raced {
		lists = 150
	}
	for i := range lists {
		pieces, stock := random(r, 1+r.IntN(8))
		p := Cut(pieces, stock)
		if len(p.TooLong) > 0 {
			continue
		}
		if want := optimum(pieces, stock); math.Abs(float64(p.Bought-want)) > 1e-6 {
			t.Fatalf("list %d: bought %v, the best is %v\n%v %+v", i, p.Bought, want, pieces, stock)
		}
	}
}

// BenchmarkFiveThousandPieces is a matter of seconds.
func BenchmarkFiveThousandPieces(b *testing.B) {
	r := rand.New(rand.NewPCG(19, 23))
	pieces := make([]units.MM, 5000)
	for i := range pieces {
		pieces[i] = units.MM(200+r.IntN(50000)) / 10
	}
	stock := Stock{Lengths: []units.MM{6000, 12000}, Kerf: 2, EndLoss: 20}
	for range b.N {
		p := Cut(pieces, stock)
		if err := sound(pieces, stock, p); err != nil {
			b.Fatal(err)
		}
	}
}
