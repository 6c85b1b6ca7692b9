package workbook

import (
	"fmt"
	"strings"

	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
)

// buyHeads are the heads of the columns that the next run reads again.
var buyHeads = [...]string{"What", "Name", "Need", "Unit", "On hand"}

// buySheet says what to order for the whole job.
func (o *output) buySheet() *look.Grid {
	g := look.NewGrid(o.l.book, o.buy)
	g.Widths = []float64{9, 26, 11, 7, 11, 11, 9, 11, 11, 12, 12, 13}
	g.Freeze, g.Titles = 4, 4
	cur := o.l.job.Shop.Currency
	g.Text(1, 1, look.Title, "Buy list")
	g.Text(2, 1, look.Sub, "Rounded up once for the whole job, less what is on hand, which is yours to fill in; pack and price come from the sheet of rates.")
	for i, s := range append(buyHeads[:], "Pack", "Packs", "Bought", "Remains", "Pack "+cur, "Pay "+cur, "In price "+cur) {
		role := look.HeadNum
		if i < 2 || i == 3 {
			role = look.Head
		}
		g.Text(4, i+1, role, s)
	}
	var wires, gases, tips []string
	for _, b := range o.l.job.Buy {
		switch b.What {
		case price.BuyWire:
			wires = append(wires, o.shownName("by_wire", b.Name))
		case price.BuyGas:
			gases = append(gases, b.Name)
		default:
			tips = append(tips, b.Name)
		}
	}
	plain := map[string]bool{price.BuyWire: plainNames(wires), price.BuyGas: plainNames(gases), price.BuyTip: plainNames(tips)}
	for i, b := range o.l.job.Buy {
		o.buyLine(g, 5+i, b, plain[b.What])
	}
	o.buyTotal(g, 5+len(o.l.job.Buy))
	return g
}

// tipDecimals is the step of contact tips, as the pricing rounds them.
const tipDecimals = 6

// kinds of line: the column that adds up to the need, the name it goes by, the
// unit and the decimals.
var buyKinds = map[string]struct {
	key, by, cost string
	unit          unit
	decimals      int
}{
	price.BuyWire: {"wire_kg", "by_wire", "cost_wire", kilo, price.KgDecimals},
	price.BuyGas:  {"gas_l", "by_gas", "cost_gas", litre, price.LitreDecimals},
	price.BuyTip:  {"arc_min", "by_tip", "tip_cost", none, tipDecimals},
}

func (o *output) buyLine(g *look.Grid, row int, b price.BuyLine, plain bool) {
	k, us := buyKinds[b.What], o.l.us
	unitName := b.Unit
	if us && k.unit.us != "" {
		unitName = k.unit.us
	}
	cell := fmt.Sprintf("$B%d", row)
	need := o.sumBy(k.key, k.by, cell, plain, k.decimals)
	if life := o.priceName("tip_life_h"); b.What == price.BuyTip && (need == "" || life == "") {
		need = ""
	} else if b.What == price.BuyTip {
		need = rounded(o.sumBy("arc_min", k.by, cell, plain, price.MinuteDecimals)+"/60/"+life, tipDecimals)
	}
	g.Text(row, 1, look.Plain, b.What)
	g.Text(row, 2, look.Plain, o.shownName(k.by, b.Name))
	format, packs := "#,##0.00", "#,##0.00" // of what is needed, and of whole packs
	switch b.What {
	case price.BuyGas:
		format, packs = "#,##0", "#,##0"
	case price.BuyTip:
		packs = "0"
	}
	show := func(v float64) float64 { return k.unit.show(v, us) }
	g.Number(row, 3, look.Calc, format, need, show(b.Need))
	g.Text(row, 4, look.Plain, unitName)
	r := o.buyRates(b)
	for i, part := range []struct {
		formula string
		v       float64
	}{{r.onHand, b.OnHand}, {r.pack, b.Pack}} {
		role, text := look.Calc, o.live(k.unit.wrap(part.formula, us))
		if part.formula == "" || text == "" {
			role, text = look.Edit, ""
		}
		if b.What == price.BuyTip {
			role = look.Calc // no shop value says how many are on hand
		}
		g.Number(row, 5+i, role, packs, text, show(part.v))
	}
	short := fmt.Sprintf("(C%d-E%d)/F%d", row, row, row)
	count, remains := "", ""
	if b.Pack > 0 {
		count = o.live(fmt.Sprintf("IF(%s>0.000000001,ROUNDUP(%s-0.000000001,0),0)", short, short))
		u := k.unit
		left := fmt.Sprintf("E%d+G%d*F%d-C%d", row, row, row, row)
		remains = o.live(u.wrap("MAX("+rounded(u.metricOf("("+left+")", us), k.decimals)+",0)", us))
	}
	g.Number(row, 7, look.Strong, "0", count, float64(b.Packs))
	g.Number(row, 8, look.Calc, packs, o.live(fmt.Sprintf("G%d*F%d", row, row)), show(float64(b.Packs)*b.Pack))
	g.Number(row, 9, look.Calc, format, remains, show(b.Remains))
	cost := o.live(r.price)
	role := look.Calc
	if cost == "" {
		role = look.Edit
	}
	g.Number(row, 10, role, money2, cost, float64(b.PackPrice))
	g.Number(row, 11, look.Calc, money2, o.live(rounded(fmt.Sprintf("G%d*J%d", row, row), price.MoneyDecimals)), float64(b.Cost))
	g.Number(row, 12, look.Calc, money2, o.sumBy(k.cost, k.by, cell, plain, price.MoneyDecimals), float64(b.UsedCost))
}

// buyFrom are the formulas that lead a line of the buy list back to the rates;
// empty where no rate states the figure.
type buyFrom struct{ onHand, pack, price string }

func (o *output) buyRates(b price.BuyLine) buyFrom {
	shop := &o.l.job.Shop
	name := func(want float64, keys ...string) string {
		for _, key := range keys {
			if v, ok := shop.Value(key); ok && v.IsNum && v.Num == want {
				return o.l.rate(key)
			}
		}
		return ""
	}
	packPrice := func(text string) string {
		if text == "" {
			return ""
		}
		return rounded(text, price.MoneyDecimals)
	}
	switch b.What {
	case price.BuyWire:
		class := strings.TrimSuffix(b.Name, " mm")
		at := strings.LastIndexByte(class, ' ')
		filler, one := class[:at], class[:at]+"."+class[at+1:]
		w, _ := shop.Wire(filler, o.diaOf(b.Name))
		from := buyFrom{onHand: name(b.OnHand, "on_hand_kg."+one), pack: name(b.Pack, "spool_kg."+one, "spool_kg."+filler)}
		if per := name(float64(w.PerKg), "wire_price."+one, "wire_price."+filler); per != "" && from.pack != "" {
			from.price = packPrice(per + "*" + from.pack)
		}
		return from
	case price.BuyGas:
		return buyFrom{name(b.OnHand, "on_hand_l."+b.Name), name(b.Pack, "cylinder_l."+b.Name), packPrice(o.priceName("cylinder_price." + b.Name))}
	}
	return buyFrom{price: packPrice(o.priceName("tip_price"))}
}

func (o *output) priceName(key string) string { return o.l.rateNames[key] }

// diaOf is the diameter of the joints that a line of the buy list stands for.
func (o *output) diaOf(name string) (dia units.MM) {
	o.l.rows(func(_ int, r *row) {
		if r.p.Settings && rates.WireName(r.p.Filler, r.p.Dia)+" mm" == name {
			dia = r.p.Dia
		}
	})
	return dia
}

func (o *output) buyTotal(g *look.Grid, row int) {
	if len(o.l.job.Buy) == 0 {
		g.Text(row, 1, look.Plain, "Nothing to buy: no joint has settings.")
		return
	}
	pay, used := 0.0, 0.0
	for _, b := range o.l.job.Buy {
		pay += float64(b.Cost)
		used += float64(b.UsedCost)
	}
	g.Text(row, 1, look.TotalTxt, "Total")
	for col := 2; col <= 10; col++ {
		g.Blank(row, col, look.TotalTxt)
	}
	g.Number(row, 11, look.Total, money2, o.live(fmt.Sprintf("SUM(K5:K%d)", row-1)), pay)
	g.Number(row, 12, look.Total, money2, o.live(fmt.Sprintf("SUM(L5:L%d)", row-1)), used)
	g.Over(row+1, 1, len(g.Widths), look.Quiet, "Pay is what whole packs cost; in price is what the joints' price carries for what they use. What remains is yours for the next job. Add a spare spool and cylinder as you see fit.")
}
