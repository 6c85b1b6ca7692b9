package parts

import (
	"fmt"
	"runtime"
	"sync"

	"seamtally/batch/bars"
	"seamtally/batch/finding"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// buy groups the parts by what they are cut from, and finds what to buy.
func (w *worker) buy() {
	groups, plates := map[string]int{}, map[string]int{}
	var members [][]int
	for i := range w.book.List.Parts {
		p := &w.book.List.Parts[i]
		if p.Plate {
			w.addPlate(plates, i)
			continue
		}
		name := sectionName(&p.Section)
		key := name + "\x00" + markKey(p.Material)
		g, ok := groups[key]
		if !ok {
			g = len(w.book.Groups)
			groups[key] = g
			w.book.Groups = append(w.book.Groups, w.group(p, name))
			members = append(members, nil)
		}
		members[g] = append(members[g], i)
	}
	w.cutAll(members)
	for g := range w.book.Groups {
		w.settleBars(&w.book.Groups[g])
	}
	for i := range w.book.Plates {
		w.settlePlates(&w.book.Plates[i])
	}
	w.unpriced()
}

// sectionName is what a bar is asked for by: a hollow section finished hot is
// another product than one formed cold.
func sectionName(s *section.Section) string {
	if (s.Shape == section.Round || s.Shape == section.Box) && !s.Cold && s.Family != "HSS" && s.Family != "PIPE" {
		return s.Designation + " EN 10210"
	}
	return s.Designation
}

func (w *worker) group(p *Part, name string) Group {
	s := &p.Section
	m := w.metal(p.Material)
	return Group{Section: name, Material: p.Material, KgM: massPerMetre(s, m.density), Stocks: w.shop.StockLengths[stockKind(s)],
		Kerf: w.shop.SawKerf, EndLoss: w.shop.EndLoss, PricePerKg: m.price, Shape: string(s.Shape), H: s.H, B: s.B}
}

// stockKind is the kind of section for which the shop states lengths of bars.
func stockKind(s *section.Section) string {
	switch s.Shape {
	case section.Round, section.Box:
		return "hollow"
	case section.Beam, section.Tee:
		return "beam"
	case section.Channel:
		return "channel"
	case section.Angle:
		return "angle"
	case section.Flat:
		return "flat"
	}
	return "bar"
}

// mostPieces is how many pieces of one section are planned at once; more are planned
// in lots of this size, whose bars add up.
const mostPieces = 10_000

// lot is pieces of one group that are planned together.
type lot struct {
	group   int
	part    []int // of each piece
	lengths []units.MM
	plan    bars.Plan
}

// cutAll makes the cutting plans of all groups, side by side, and adds their bars to
// the book in the order of the groups.
func (w *worker) cutAll(members [][]int) {
	var lots []*lot
	for g, parts := range members {
		all := w.pieceList(g, parts)
		for from := 0; from < len(all.part); from += mostPieces {
			to := min(from+mostPieces, len(all.part))
			lots = append(lots, &lot{group: g, part: all.part[from:to], lengths: all.lengths[from:to]})
		}
		if len(all.part) > mostPieces {
			grp := &w.book.Groups[g]
			grp.LowerBound, grp.LeastBought = bars.Least(all.lengths, stockOf(grp))
		}
	}
	sideBySide(len(lots), func(i int) {
		lots[i].plan = bars.Cut(lots[i].lengths, stockOf(&w.book.Groups[lots[i].group]))
	})
	counts := make([]int, len(members))
	for _, l := range lots {
		counts[l.group]++
	}
	for _, l := range lots {
		w.take(l, counts[l.group] == 1)
	}
}

func (w *worker) pieceList(g int, parts []int) *lot {
	l := &lot{group: g}
	for _, i := range parts {
		p := &w.book.List.Parts[i]
		for range p.Qty {
			l.part, l.lengths = append(l.part, i), append(l.lengths, p.Length)
		}
	}
	return l
}

func stockOf(g *Group) bars.Stock {
	return bars.Stock{Lengths: g.Stocks, Kerf: g.Kerf, EndLoss: g.EndLoss}
}

// sideBySide does n pieces of work on all cores.
func sideBySide(n int, work func(int)) {
	var group sync.WaitGroup
	next := make(chan int)
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	group.Wait()
}

// take adds the bars of a lot to the book.
func (w *worker) take(l *lot, only bool) {
	g := &w.book.Groups[l.group]
	for _, b := range l.plan.Bars {
		bar := Bar{Group: l.group, Stock: b.Stock, Waste: b.Waste, Pieces: make([]Piece, len(b.Pieces))}
		for k, piece := range b.Pieces {
			i := l.part[piece]
			bar.Pieces[k] = Piece{Part: i, Length: l.lengths[piece]}
			if r := &w.book.Results[i]; len(r.Bars) == 0 || r.Bars[len(r.Bars)-1] != len(w.book.Bars) {
				r.Bars = append(r.Bars, len(w.book.Bars))
			}
		}
		w.book.Bars = append(w.book.Bars, bar)
	}
	for _, piece := range l.plan.TooLong {
		if i := l.part[piece]; len(g.TooLong) == 0 || g.TooLong[len(g.TooLong)-1] != i {
			g.TooLong = append(g.TooLong, i)
		}
	}
	g.Bars += len(l.plan.Bars)
	g.Bought, g.Waste = g.Bought+l.plan.Bought, g.Waste+l.plan.Waste
	if only {
		g.LowerBound, g.LeastBought = l.plan.LeastBars, l.plan.LeastBought
	}
}

// settleBars weighs and prices the bars of a group, and tells about the pieces that
// no bar holds.
func (w *worker) settleBars(g *Group) {
	for _, i := range g.TooLong {
		w.tooLong(g, i)
	}
	g.BoughtKg = round(massOf(g.KgM, g.Bought, 1), kgDecimals)
	g.Cost = costOf(g.BoughtKg, g.PricePerKg)
}

// costOf returns the price of material as bought.
//
//	C = m c        (PARTS-12)
//
// Symbols: m mass as bought, waste included [kg]; c price [money/kg].
// Valid: a price above zero; else 0, which is unknown.
// Assumes: the shop's own price without margin: the material is a line of its own
// beside the price of the welding.
// Source: shop values.
// Basis: derived.
// Errors: none.
func costOf(kg units.Kg, price units.Money) units.Money {
	return round(units.Money(float64(kg)*float64(price)), moneyDecimals)
}

// tooLong tells about pieces that no bar of the shop holds. They are in the mass of
// the structure, but not in what is bought.
func (w *worker) tooLong(g *Group, i int) {
	p := &w.book.List.Parts[i]
	if len(g.Stocks) == 0 {
		w.sayPart(i, "length", "part-too-long", finding.Warning, fmt.Sprintf("the shop states no length of bar for %s", g.Section))
		return
	}
	longest := g.Stocks[0]
	for _, l := range g.Stocks {
		longest = max(longest, l)
	}
	w.sayPart(i, "length", "part-too-long", finding.Warning, fmt.Sprintf("part %s is %s mm long, and the longest bar of %s that the shop buys has %s mm, %s of them lost at the ends: it is left out of the bars",
		p.Name(), number(float64(p.Length)), g.Section, number(float64(longest)), number(float64(g.EndLoss))))
}

// addPlate puts a part to the plate that it is cut from.
func (w *worker) addPlate(at map[string]int, i int) {
	p := &w.book.List.Parts[i]
	key := exact(float64(p.Section.Web)) + "\x00" + markKey(p.Material)
	k, ok := at[key]
	if !ok {
		k = len(w.book.Plates)
		at[key] = k
		w.book.Plates = append(w.book.Plates, Plate{Thickness: p.Section.Web, Material: p.Material, PricePerKg: w.metal(p.Material).price})
	}
	w.book.Plates[k].Parts = append(w.book.Plates[k].Parts, i)
}

// settlePlates sums the pieces of one plate and what is bought for them.
//
//	m_b = m (1 + w / 100)        (PARTS-13)
//
// Symbols: m mass of the pieces [kg]; w the shop's waste of plate [%].
// Valid: w >= 0.
// Assumes: pieces are not laid out on sheets: the waste is the shop's experience.
// Source: shop values.
// Basis: common-practice.
// Errors: none.
func (w *worker) settlePlates(pl *Plate) {
	for _, i := range pl.Parts {
		p := &w.book.List.Parts[i]
		pl.Area += float64(p.Width) * float64(p.Length) * float64(p.Qty) / 1e6
		pl.Mass += w.book.Results[i].Mass
	}
	pl.Area, pl.Mass = round(pl.Area, paintDecimals), round(pl.Mass, kgDecimals)
	pl.BoughtKg = round(pl.Mass*units.Kg(1+w.shop.PlateWastePct/100), kgDecimals)
	pl.Cost = costOf(pl.BoughtKg, pl.PricePerKg)
}
