package price

import (
	"math"
	"math/rand/v2"
	"slices"
	"sort"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// Spread is the range of a job's price that follows from the spreads of the shop
// values behind it.
type Spread struct {
	Low, Mid, High units.Money // a twentieth of the draws lies below Low, half below Mid, a twentieth above High
	Draws          int
	Factors        []Factor // those that move the price, the strongest first
}

// Factor is one shop value and what the price is where it alone lies at either
// end of its spread.
type Factor struct {
	Key                 string // shop key; "wire prices" and "gas prices" move together
	Low, High           float64
	PriceLow, PriceHigh units.Money
}

// Swing is how far the factor alone moves the price.
func (f *Factor) Swing() units.Money {
	return units.Money(math.Abs(float64(f.PriceHigh - f.PriceLow)))
}

// draws is how often the price is drawn: enough that the ends stand still to
// about a hundredth of their distance.
const draws = 1000

// lot is joints that answer to the shop values alike, added up. Wire, arc, gas and
// energy grow with the overweld as 1 + b x + c x², x the overweld beyond the
// planned one, mm: first, linear and square hold the three sums of each.
type lot struct {
	q                     rates.Quantities // counts, metres, between-pass seams
	wirePrice, gasPrice   factor           // per kilogram and per litre
	arc, wire, gas, power [3]float64
}

// lotKey is what the joints of a lot have in common.
type lotKey struct {
	site          bool
	duty          float64
	transfer, gas string
	filler        string
	dia           units.MM
}

// spreadOf draws the price of a job within the spreads of its shop values, the
// plan held, with a fixed seed.
//
//	each value: triangular between its low and its high with its peak at the value   (SPREAD-1)
//	fillets: area (z1 + x)(z2 + x) / (z1 z2), x overweld beyond the planned          (SPREAD-2)
//
// Values are drawn independently, the prices of wires together and those of gases
// together. Assumes: passes, settings and choice stay; caps, roots, convexity and
// gap stay as planned; the margin is the shop's decision and is not drawn. Basis:
// derived from the stated spreads, which are as good as their own basis.
func spreadOf(job *Job) Spread {
	lots := lotsOf(job)
	shop := rates.NewVary(&job.Shop)
	factors := factorsOf(shop)
	if len(lots) == 0 || len(factors) == 0 {
		return Spread{}
	}
	s := trial{shop: shop, nominal: &job.Shop, lots: lots, changes: float64(job.Totals.ChangeOvers)}
	out := Spread{Draws: draws, Factors: s.alone(factors)}
	r := rand.New(rand.NewPCG(2026, uint64(draws)))
	prices := make([]float64, draws)
	for k := range prices {
		for _, f := range factors {
			s.put(f, r.Float64())
		}
		prices[k] = s.price()
	}
	sort.Float64s(prices)
	at := func(share float64) units.Money {
		return Round(units.Money(prices[int(share*float64(draws-1)+0.5)]), MoneyDecimals)
	}
	out.Low, out.Mid, out.High = at(0.05), at(0.5), at(0.95)
	return out
}

// factor is a value with its spread.
type factor struct {
	key            string
	num, low, high float64
	put            func(float64) // nil: a family of prices, or the overweld
}

// Values whose spread is not drawn: they are decisions, or they need a new plan.
var heldValues = map[string]bool{"margin_pct": true, "convexity": true, "cap_height_mm": true, "root_height_mm": true, "cap_share": true, "root_share": true, "gap_mm": true,
	"preflow_s": true, "postflow_s": true, "seam_starts_per_m": true,
	"saw_kerf_mm": true, "end_loss_mm": true, "plate_waste_pct": true}

const wirePrices, gasPrices, overweld = "wire prices", "gas prices", "overweld_mm"

// factorsOf returns the single numbers of the shop that have a spread, and the
// two families of prices.
func factorsOf(shop *rates.Vary) []factor {
	out := []factor{{key: wirePrices}, {key: gasPrices}}
	for _, v := range shop.Values {
		if !v.IsNum || heldValues[v.Key] || v.Low >= v.High || v.Num < v.Low || v.Num > v.High {
			continue
		}
		if put := shop.Setter(v.Key); put != nil {
			out = append(out, factor{v.Key, v.Num, v.Low, v.High, put})
		}
	}
	return out
}

// lotsOf adds up the priced joints that answer alike.
func lotsOf(job *Job) []lot {
	at := map[lotKey]int{}
	var lots []lot
	for i := range job.Plans {
		p := &job.Plans[i]
		if !Priced(p) {
			continue
		}
		key := lotKey{onSite(p), p.Duty, string(p.Transfer), p.Gas, p.Filler, p.Dia}
		k, known := at[key]
		if !known {
			k = len(lots)
			at[key] = k
			lots = append(lots, lot{q: rates.Quantities{Passes: 2, Site: key.site, DutyCap: key.duty, Transfer: key.transfer, GasName: key.gas}})
			lots[k].prices(p, &job.Shop)
		}
		lots[k].add(p, &job.Shop)
	}
	return lots
}

// prices looks up what the wire and the gas of the lot cost; a wire or gas that
// the plan could not price costs nothing here either.
func (l *lot) prices(p *plan.Plan, shop *rates.Shop) {
	if p.Cost.Wire > 0 {
		num, low, high := shop.WireSpread(p.Filler, p.Dia)
		l.wirePrice = factor{num: num, low: low, high: high}
	}
	if p.Cost.Gas > 0 {
		num, low, high := shop.GasSpread(p.Gas)
		l.gasPrice = factor{num: num, low: low, high: high}
	}
}

func (l *lot) add(p *plan.Plan, shop *rates.Shop) {
	l.q.Qty += p.Joint.Qty
	l.q.Seam += p.Seam
	if p.Slag {
		l.q.SlagRuns += p.Seam * units.Metre(p.Passes())
	}
	if shop.BetweenPassMin > 0 { // (passes - 1) seams, as COST-1 counts them
		l.q.Seams += float64(p.Cost.Labour.BetweenPass / shop.BetweenPassMin)
	}
	idle := math.Max(float64(p.Cost.Labour.Total-p.Arc), 0) / 60000 * shop.IdleW
	b, c := overweldGrowth(p)
	for _, s := range []struct {
		sums *[3]float64
		v    float64
	}{{&l.arc, float64(p.Arc)}, {&l.wire, float64(p.WireKg)}, {&l.gas, float64(p.GasL)}, {&l.power, float64(p.Cost.Energy) - idle}} {
		s.sums[0] += s.v
		s.sums[1] += s.v * b
		s.sums[2] += s.v * c
	}
}

// overweldGrowth returns b and c of SPREAD-2; zero for welds without legs.
func overweldGrowth(p *plan.Plan) (b, c float64) {
	z1, z2 := float64(p.Prep.WeldLegA), float64(p.Prep.WeldLegB)
	if z2 <= 0 {
		z2 = z1
	}
	if z1 <= 0 || p.Prep.Kind != joint.Fillet && p.Prep.Kind != joint.Lap {
		return 0, 0
	}
	return 1/z1 + 1/z2, 1 / (z1 * z2)
}

// trial is a shop whose values are moved, with the price that follows.
type trial struct {
	shop      *rates.Vary
	nominal   *rates.Shop
	lots      []lot
	changes   float64
	wire, gas float64 // places of the price families in their spreads, 0..1; negative: at the stated price
	over      float64 // overweld beyond the planned, mm
}

// put moves one value to a place in its spread.
func (s *trial) put(f factor, place float64) { s.set(f, triangular(f, place), place) }

func (s *trial) set(f factor, value, place float64) {
	switch f.key {
	case wirePrices:
		s.wire = place
	case gasPrices:
		s.gas = place
	case overweld:
		s.over = value - f.num
	default:
		f.put(value)
	}
}

// back puts one value back to where the shop has it.
func (s *trial) back(f factor) {
	if f.key == wirePrices || f.key == gasPrices {
		s.set(f, 0, -1)
		return
	}
	s.set(f, f.num, 0)
}

// triangular returns the value below which a share of the triangle lies.
func triangular(f factor, share float64) float64 {
	if f.high <= f.low {
		return f.num
	}
	if left := (f.num - f.low) / (f.high - f.low); share < left {
		return f.low + math.Sqrt(share*(f.high-f.low)*(f.num-f.low))
	}
	return f.high - math.Sqrt((1-share)*(f.high-f.low)*(f.high-f.num))
}

// price returns the price of the job at the values as they stand.
func (s *trial) price() float64 {
	shop := &s.shop.Shop
	cost := s.changes * float64(shop.ChangeMin) / 60 * float64(shop.LabourCostPerHour())
	for i := range s.lots {
		cost += s.cost(&s.lots[i], shop)
	}
	return float64(shop.PriceOf(units.Money(cost)))
}

func (s *trial) cost(l *lot, shop *rates.Shop) float64 {
	grown := func(sums [3]float64) float64 {
		return math.Max(sums[0]+sums[1]*s.over+sums[2]*s.over*s.over, 0)
	}
	q := l.q
	q.Arc = units.Minute(grown(l.arc))
	q.WireKg = units.Kg(grown(l.wire) * (1 + shop.WastePct/100) / (1 + s.nominal.WastePct/100))
	q.Gas = units.Litre(grown(l.gas))
	q.ArcEnergy = units.KWh(grown(l.power) * s.nominal.SourceEfficiency / shop.SourceEfficiency)
	q.WirePerKg, q.GasPerLitre = placed(s.wire, l.wirePrice), placed(s.gas, l.gasPrice)
	return float64(rates.CostOf(q, shop).Total)
}

// placed is a price at a place in its spread.
func placed(place float64, f factor) units.Money {
	if place < 0 {
		return units.Money(f.num)
	}
	return units.Money(triangular(f, place))
}

// alone moves one value after the other to its ends, the rest as stated.
func (s *trial) alone(factors []factor) []Factor {
	for _, f := range factors {
		s.back(f)
	}
	var out []Factor
	for _, f := range factors {
		s.set(f, f.low, 0)
		low := s.price()
		s.set(f, f.high, 1)
		high := s.price()
		s.back(f)
		if low != high {
			out = append(out, Factor{f.key, f.low, f.high, Round(units.Money(low), MoneyDecimals), Round(units.Money(high), MoneyDecimals)})
		}
	}
	slices.SortStableFunc(out, func(a, b Factor) int {
		switch x, y := a.Swing(), b.Swing(); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	return out
}
