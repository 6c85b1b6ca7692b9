package workbook

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
)

// barsFrom is the row of the first section to buy.
const barsFrom = 5

// materialCost is the cell that adds up what bars and plates cost.
func (o *output) materialCost() string {
	b := o.l.job.Parts
	return quoteSheet(o.bars) + "!$K$" + itoa(barsFrom+len(b.Groups)+len(b.Plates))
}

// barsSheet says which bars and plates to buy and which pieces come from which bar.
func (o *output) barsSheet() *look.Grid {
	b, us := o.l.job.Parts, o.l.us
	g := look.NewGrid(o.l.book, o.bars)
	g.Widths = []float64{24, 13, 9, 11, 11, 11, 10, 10, 11, 11, 12}
	g.Freeze, g.Titles = barsFrom-1, 1
	cur := o.l.job.Shop.Currency
	g.Text(1, 1, look.Title, "Bars and plates")
	g.Text(2, 1, look.Sub, "What to buy for the parts and which pieces come from which bar. Material is apart from the welding price. Allowances for shrinkage are not in the lengths.")
	stale := fmt.Sprintf("COUNTIF(%s!%s,\"run again\")", quoteSheet(o.parts), o.partRange(cutCol))
	const holds, changed = "The bars are cut for the parts as they stand.", "Parts were changed: run again. Bars, pieces and cost below are for the lengths as they were."
	g.Words(3, 1, look.Sub, o.live(fmt.Sprintf(`IF(%s=0,"%s","%s")`, stale, holds, changed)), holds)
	heads := []string{"Section", "Material", kiloM.name(us), "Bars", "Least bars", "Bought " + metre.name(us), "Waste " + metre.name(us), "Waste %", "Bought " + kilo.name(us), cur + " a " + kilo.name(us), "Cost " + cur}
	headLine(g, 4, 2, heads)
	row := barsFrom
	for i := range b.Groups {
		o.barGroupLine(g, row, &b.Groups[i])
		row++
	}
	first := row
	for i := range b.Plates {
		o.plateLine(g, row, &b.Plates[i])
		row++
	}
	g.Text(row, 1, look.TotalTxt, "Total")
	for col := 2; col <= 10; col++ {
		switch {
		case col == 9:
			g.Number(row, col, look.Total, "#,##0.00", o.live(fmt.Sprintf("SUM(I%d:I%d)", barsFrom, row-1)), kilo.show(float64(b.Totals.BoughtKg), us))
		case col == 4 && first > barsFrom:
			g.Number(row, col, look.Total, "0", o.live(fmt.Sprintf("SUM(D%d:D%d)", barsFrom, first-1)), float64(b.Totals.Bars))
		default:
			g.Blank(row, col, look.TotalTxt)
		}
	}
	g.Number(row, 11, look.Total, money2, o.live(fmt.Sprintf("SUM(K%d:K%d)", barsFrom, row-1)), float64(b.Totals.Cost))
	g.Text(row+1, 1, look.Sub, "Least bars is proven: no plan of cutting needs fewer. Plates are bought with the shop's plate_waste_pct on top of their pieces.")
	row = o.assemblyBlock(g, row+3)
	o.barPlan(g, row+1)
	return g
}

func headLine(g *look.Grid, row, words int, heads []string) {
	for i, s := range heads {
		role := look.HeadNum
		if i < words {
			role = look.Head
		}
		g.Text(row, i+1, role, s)
	}
}

func (o *output) barGroupLine(g *look.Grid, row int, x *parts.Group) {
	us := o.l.us
	g.Text(row, 1, look.Plain, o.l.called(x.Section))
	g.Text(row, 2, look.Plain, x.Material)
	g.Number(row, 3, look.Plain, "0.000", "", kiloM.show(x.KgM, us))
	g.Number(row, 4, look.Plain, "0", "", float64(x.Bars))
	g.Number(row, 5, look.Plain, "0", "", float64(x.LowerBound))
	bought, waste := float64(x.Bought)/1000, float64(x.Waste)/1000
	g.Number(row, 6, look.Plain, "#,##0.00", "", metre.show(bought, us))
	g.Number(row, 7, look.Plain, "#,##0.00", "", metre.show(waste, us))
	if bought > 0 {
		g.Number(row, 8, look.Calc, "0.0%", o.live(fmt.Sprintf("G%d/F%d", row, row)), waste/bought)
	} else {
		g.Blank(row, 8, look.Plain)
	}
	mass := agreed(math.Round(x.KgM*bought*1e3)/1e3, float64(x.BoughtKg), kilo.wrap(rounded(kiloM.metricOf(fmt.Sprintf("C%d", row), us)+"*"+metre.metricOf(fmt.Sprintf("F%d", row), us), 3), us))
	o.boughtCells(g, row, mass, x.BoughtKg, x.PricePerKg, x.Cost)
}

func (o *output) plateLine(g *look.Grid, row int, x *parts.Plate) {
	us := o.l.us
	area, waste, ok := x.Bought()
	g.Text(row, 1, look.Plain, fmt.Sprintf("plate %s %s, %s %s", trimmed(mm.show(float64(x.Thickness), us)), mm.name(us), trimmed(square.show(area, us)), square.name(us)))
	g.Text(row, 2, look.Plain, x.Material)
	if ok {
		g.Number(row, 8, look.Plain, "0.0%", "", waste)
	}
	o.boughtCells(g, row, "", x.BoughtKg, x.PricePerKg, x.Cost)
}

// boughtCells are what a line of the list weighs and costs.
func (o *output) boughtCells(g *look.Grid, row int, mass string, kg units.Kg, per, cost units.Money) {
	us := o.l.us
	role := look.Calc
	if mass == "" {
		role = look.Plain
	}
	g.Number(row, 9, role, "#,##0.00", o.live(mass), kilo.show(float64(kg), us))
	if per <= 0 {
		return
	}
	// A price is for a kilogram; where people read pounds it is shown for a pound.
	pound := 1.0
	if us {
		pound = kilo.per
	}
	link := o.materialPrice(per)
	role = look.Calc
	if link == "" {
		role = look.Edit
	} else if us {
		link += "*" + exact(pound)
	}
	g.Number(row, 10, role, "0.000", o.live(link), float64(per)*pound)
	whole := math.Round(float64(kg)*float64(per)*1e4) / 1e4
	g.Number(row, 11, look.Calc, money2, o.live(agreed(whole, float64(cost), rounded(fmt.Sprintf("I%d*J%d", row, row), price.MoneyDecimals))), float64(cost))
}

// materialPrice is the name of the rate that gives a price; empty where none or
// several do.
func (o *output) materialPrice(per units.Money) string {
	found := ""
	for _, metal := range []string{"carbon_steel", "stainless", "aluminium"} {
		key := "material_price." + metal
		if v, ok := o.l.job.Shop.Value(key); ok && v.IsNum && v.Num == float64(per) {
			if found != "" {
				return ""
			}
			found = o.priceName(key)
		}
	}
	return found
}

// barPlan lists the bars, those that are cut alike in one line.
func (o *output) barPlan(g *look.Grid, row int) {
	b, us := o.l.job.Parts, o.l.us
	g.Section(row, 11, "Which pieces come from which bar")
	headLine(g, row+1, 2, []string{"Section", "Material", "Bars", "Length " + mm.name(us), "Rest " + mm.name(us)})
	g.Text(row+1, 6, look.Head, "Pieces")
	for col := 7; col <= 11; col++ {
		g.Blank(row+1, col, look.Head)
	}
	row += 2
	for i := 0; i < len(b.Bars); {
		x := &b.Bars[i]
		n := 1
		for i+n < len(b.Bars) && sameBar(x, &b.Bars[i+n]) {
			n++
		}
		group := &b.Groups[x.Group]
		g.Text(row, 1, look.Plain, o.l.called(group.Section))
		g.Text(row, 2, look.Plain, group.Material)
		g.Number(row, 3, look.Plain, "0", "", float64(n))
		g.Number(row, 4, look.Plain, "#,##0.0", "", mm.show(float64(x.Stock), us))
		g.Number(row, 5, look.Plain, "#,##0.0", "", mm.show(float64(x.Waste), us))
		g.Text(row, 6, look.Plain, o.piecesText(x))
		row++
		i += n
	}
}

func sameBar(a, b *parts.Bar) bool {
	return a.Group == b.Group && a.Stock == b.Stock && slices.Equal(a.Pieces, b.Pieces)
}

// piecesText names the pieces of a bar: "B1: 3 x 1250; B2: 800". A mark may be a number,
// so it does not stand behind the count.
func (o *output) piecesText(x *parts.Bar) string {
	var said []string
	for i := 0; i < len(x.Pieces); {
		n := 1
		for i+n < len(x.Pieces) && x.Pieces[i+n] == x.Pieces[i] {
			n++
		}
		length := trimmed(mm.show(float64(x.Pieces[i].Length), o.l.us))
		if n > 1 {
			length = fmt.Sprintf("%d x %s", n, length)
		}
		said = append(said, o.l.job.Parts.List.Parts[x.Pieces[i].Part].Name()+": "+length)
		i += n
	}
	return strings.Join(said, "; ")
}
