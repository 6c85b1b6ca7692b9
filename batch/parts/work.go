package parts

import (
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/section"
	"seamtally/batch/units"
	"seamtally/tables"
)

// Decimals to which the figures of a part are rounded before they are summed, so
// that a column adds up to its total.
const (
	kgDecimals    = 3
	weldDecimals  = 6
	metreDecimals = 4
	paintDecimals = 4
	moneyDecimals = 4
	sizeDecimals  = 2
)

// Work compares the joints with the cut list and works out what follows from both:
// for each part mass, paint, seams, edges and ends, and for all the bars and plates
// to buy. Without plans only that which follows from the parts alone is known. What
// it finds about a joint is added to the checks of its plan; what it finds about a
// part stands in the part's result and among the problems returned.
func Work(l *List, plans []plan.Plan, set *tables.Set, shop *rates.Shop) (*Book, []finding.Problem) {
	m := newMatcher(l, plans, set)
	m.match()
	w := &worker{matcher: m, shop: shop, metals: map[string]metal{}, templates: plan.Templates(plans)}
	for i := range l.Parts {
		w.part(i)
	}
	w.welds()
	w.buy()
	w.assemblies()
	w.totals()
	return m.book, m.problems
}

type worker struct {
	*matcher
	shop   *rates.Shop
	metals map[string]metal // by the words of the list
	// templates are the numbers of the papers that mark the joints' cuts.
	templates []int
}

// metal is what a material weighs and costs.
type metal struct {
	group   string  // "carbon steel", "stainless", "aluminium"; "" if not known
	density float64 // kg/m³
	price   units.Money
	zinc    bool
}

// metal returns what is known of a material by the words of the list. A blank one
// is carbon steel; one that nobody knows weighs as steel and has no price.
func (w *worker) metal(words string) metal {
	m, ok := w.metals[words]
	if ok {
		return m
	}
	m = metal{density: section.Density}
	if words == "" {
		m.group = "carbon steel"
	} else if row, known := w.set.Material(words); known {
		m.group, m.zinc = row.Group, row.Coated == "zinc"
	}
	if d, known := w.set.Density(m.group, tables.WeldMetal); known {
		m.density = float64(d.Value)
	}
	m.price = w.shop.MaterialPrice[priceKeys[m.group]]
	w.metals[words] = m
	return m
}

// priceKeys are the names that the shop's prices have for the metals.
var priceKeys = map[string]string{"carbon steel": "carbon_steel", "stainless": "stainless", "aluminium": "aluminium"}

// part fills in what follows from the part alone.
func (w *worker) part(i int) {
	p, r := &w.book.List.Parts[i], &w.book.Results[i]
	r.Perimeter = p.Section.Perimeter
	if p.Plate && p.Width <= 0 {
		r.Perimeter = 0
		return
	}
	r.KgM = massPerMetre(&p.Section, w.metal(p.Material).density)
	r.Mass = round(massOf(r.KgM, p.Length, p.Qty), kgDecimals)
	r.Paint = round(paintOf(p), paintDecimals)
}

// massPerMetre returns the mass of a metre of a section in kg.
//
//	q = q_steel ρ / 7850        (PARTS-3)
//
// Symbols: q_steel mass per metre in steel by the section's standard [kg/m]; ρ
// density [kg/m³].
// Valid: a section whose mass is known; else 0.
// Assumes: the sizes of the steel section in the other metal.
// Source: the ratio of two densities.
// Basis: derived.
// Errors: none.
func massPerMetre(s *section.Section, density float64) float64 {
	return s.KgM * density / section.Density
}

// massOf returns the mass of pieces in kg.
//
//	m = q l n / 1000        (PARTS-4)
//
// Symbols: q mass per metre [kg/m]; l cutting length [mm]; n pieces [-].
// Valid: l > 0, n >= 1.
// Assumes: square cuts: what a mitre, a saddle or a hole takes away stays in it.
// Source: a prism.
// Basis: derived.
// Errors: none.
func massOf(kgM float64, length units.MM, pieces int) units.Kg {
	return units.Kg(kgM * float64(length) / 1000 * float64(pieces))
}

// paintOf returns the surface of pieces that is painted, in m².
//
//	bar    S = P l n / 10⁶                         (PARTS-5)
//	plate  S = (2 b l + 2 t (b + l)) n / 10⁶       (PARTS-6)
//
// Symbols: P outside perimeter of the section [mm]; l length, b width, t thickness
// [mm]; n pieces [-].
// Valid: sizes above zero; 0 where the perimeter is not known.
// Assumes: bars without their ends, hollow ones outside only; plates with all faces
// and edges; nothing taken off where parts touch.
// Source: geometry.
// Basis: derived.
// Errors: none.
func paintOf(p *Part) float64 {
	l, n := float64(p.Length), float64(p.Qty)
	if p.Plate {
		b, t := float64(p.Width), float64(p.Section.Web)
		return (2*b*l + 2*t*(b+l)) * n / 1e6
	}
	return float64(p.Section.Perimeter) * l * n / 1e6
}

// assemblies sums parts and welds by assembly, in the order of the lists.
func (w *worker) assemblies() {
	at := map[string]int{}
	of := func(name string) *Assembly {
		i, ok := at[markKey(name)]
		if !ok {
			i = len(w.book.Assemblies)
			at[markKey(name)] = i
			w.book.Assemblies = append(w.book.Assemblies, Assembly{Name: name})
		}
		return &w.book.Assemblies[i]
	}
	for i := range w.book.List.Parts {
		a := of(w.book.List.Parts[i].Assembly)
		a.Pieces += w.book.List.Parts[i].Qty
		a.Mass += w.book.Results[i].Mass
	}
	for i := range w.plans {
		of(w.plans[i].Joint.Assembly).WeldMetal += round(w.plans[i].WeldMetal, weldDecimals)
	}
	for i := range w.book.Assemblies {
		a := &w.book.Assemblies[i]
		a.Mass, a.WeldMetal = round(a.Mass, kgDecimals), round(a.WeldMetal, weldDecimals)
		a.PerTonne = perTonne(a.WeldMetal, a.Mass)
	}
}

// perTonne returns the weld metal of a tonne of structure in kg; 0 where either is
// not known.
//
//	w = 1000 m_w / m        (PARTS-7)
//
// Symbols: m_w weld metal [kg]; m mass of the parts [kg].
// Valid: both above zero.
// Assumes: the parts' list is whole.
// Source: the two lists.
// Basis: derived.
// Errors: none.
func perTonne(weld, mass units.Kg) float64 {
	if weld <= 0 || mass <= 0 {
		return 0
	}
	return round(1000*float64(weld)/float64(mass), 3)
}

// totals sums what the parts and the purchases hold.
func (w *worker) totals() {
	t, l := &w.book.Totals, &w.book.List
	t.Rows = len(l.Parts)
	for i := range l.Parts {
		t.Pieces += l.Parts[i].Qty
		t.Mass += w.book.Results[i].Mass
		t.Paint += w.book.Results[i].Paint
	}
	for i := range w.plans {
		t.WeldMetal += round(w.plans[i].WeldMetal, weldDecimals)
	}
	for i := range w.book.Groups {
		g := &w.book.Groups[i]
		t.Bars, t.LowerBound = t.Bars+g.Bars, t.LowerBound+g.LowerBound
		t.BoughtKg, t.Cost = t.BoughtKg+g.BoughtKg, t.Cost+g.Cost
	}
	for i := range w.book.Plates {
		t.BoughtKg, t.Cost = t.BoughtKg+w.book.Plates[i].BoughtKg, t.Cost+w.book.Plates[i].Cost
	}
	t.Mass, t.BoughtKg = round(t.Mass, kgDecimals), round(t.BoughtKg, kgDecimals)
	t.Paint, t.Cost = round(t.Paint, paintDecimals), round(t.Cost, moneyDecimals)
	t.WeldMetal = round(t.WeldMetal, weldDecimals)
	t.WeldPerTonne = perTonne(t.WeldMetal, t.Mass)
}

// round rounds half away from zero to a number of decimals.
func round[T ~float64](v T, decimals int) T {
	step := math.Pow(10, float64(decimals))
	scaled := float64(v) * step
	if r := math.Round(scaled + math.Copysign(1e-9*max(1, math.Abs(scaled)*1e-6), scaled)); !math.IsInf(r, 0) {
		return T(r/step + 0)
	}
	return v
}
