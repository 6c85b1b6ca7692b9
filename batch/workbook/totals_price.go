package workbook

import (
	"fmt"

	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
)

// priceBlock builds the price up, each part of the labour on its own line.
func (o *output) priceBlock(g *look.Grid, at int) {
	job, t := o.l.job, o.l.job.Totals
	cur := job.Shop.Currency
	g.Section(at, besideCharts, "Price")
	o.heads(g, at+1, "What", "Hours", cur, "Share", "How", "", "", "")
	b := &priceLines{o: o, g: g, at: at + 2, price: float64(t.Price)}
	b.priceRow = b.at + 15
	b.labour(t.Labour)
	b.line("Labour", float64(t.Labour.Total)/60, o.hours("labour_min"), float64(t.LabourCost), o.sum("cost_labour", price.MoneyDecimals), "with overhead", look.Total)
	for _, p := range []struct {
		name, key string
		money     units.Money
		how       string
	}{{"Wire", "cost_wire", t.Wire, "bought, losses included"}, {"Gas", "cost_gas", t.Gas, "with pre-flow and post-flow"},
		{"Power", "cost_power", t.Power, "arc and idle"}, {"Other", "cost_other", t.Other, "contact tips, spatter and slag cleaning"}} {
		b.line(p.name, 0, "", float64(p.money), o.sum(p.key, price.MoneyDecimals), p.how, look.Calc)
	}
	b.changes(t)
	b.totals(t)
	if p := job.Parts; p != nil && p.Totals.Cost > 0 {
		b.price = 0 // no share of it
		b.line("Material, apart", 0, "", float64(p.Totals.Cost), o.live(o.materialCost()), "bars and plates, sheet "+o.bars+"; not in the price", look.Calc)
	}
}

// hours adds up a column of minutes as hours.
func (o *output) hours(key string) string {
	return o.live("ROUND(SUM(" + o.l.columnRange(key) + ")," + itoa(price.MinuteDecimals) + ")/60")
}

// priceLines writes the lines of the price.
type priceLines struct {
	o        *output
	g        *look.Grid
	at       int
	price    float64
	priceRow int
}

func (b *priceLines) line(name string, hours float64, hoursFormula string, money float64, moneyFormula, how string, role look.Role) {
	words := look.Plain
	switch role {
	case look.Total:
		words = look.TotalTxt
	case look.Part:
		words, role = look.Part, look.Calc
	}
	b.g.Text(b.at, 1, words, name)
	switch {
	case hoursFormula != "" || hours != 0:
		b.g.Number(b.at, 2, role, "0.00", hoursFormula, hours)
	case role == look.Total:
		b.g.Blank(b.at, 2, role)
	}
	b.g.Number(b.at, 3, role, money2, moneyFormula, money)
	if b.price != 0 {
		b.g.Number(b.at, 4, role, "0.0%", b.o.live(fmt.Sprintf("C%d/C%d", b.at, b.priceRow)), money/b.price)
	}
	b.g.Text(b.at, 5, look.Sub, how)
	b.at++
}

const money2 = "#,##0.00"

// labour writes each part of the labour with its money.
func (b *priceLines) labour(l rates.Labour) {
	shop := &b.o.l.job.Shop
	rate := expand("{labour_rate}*(1+{overhead_pct}/100)", nil, b.o.l.rate)
	first := b.at
	b.o.hoursAt = span{first, first + 6}
	for _, p := range []struct {
		name, key string
		minutes   units.Minute
		how       string
	}{{"Handling", "handling_min", l.Joint, "fetch, place, clamp, read the sheet"}, {"Fit-up and tacking", "fitup_min", l.Fitup, "its own line, not in the operating factor"},
		{"Cleaning", "clean_min", l.Clean, "brush and grind"}, {"Between passes", "between_min", l.BetweenPass, "chip, brush, cool"},
		{"Arc on", "arc_on_min", l.Arc, "the arc burns; on site times the site factor"}, {"Arc off", "arc_off_min", l.Idle, "at the weld, arc off; what is left of the whole"},
		{"Rework", "rework_min", l.Rework, "share of the time at the weld"}} {
		hours := b.o.hours(p.key)
		if p.key == "arc_off_min" && hours != "" {
			whole := "ROUND(SUM(" + b.o.l.columnRange("labour_min") + "),4)/60"
			hours = fmt.Sprintf("MAX(ROUND((%s-SUM(B%d:B%d)-B%d)*60,4),0)/60", whole, first, b.at-1, b.at+1)
		}
		money := float64(p.minutes) / 60 * float64(shop.LabourCostPerHour())
		b.line(p.name, float64(p.minutes)/60, hours, money, b.o.live(fmt.Sprintf("B%d*%s", b.at, rate)), p.how, look.Part)
	}
}

// changes writes the change-overs, which belong to no joint.
func (b *priceLines) changes(t price.Totals) {
	rate := expand("{labour_rate}*(1+{overhead_pct}/100)", nil, b.o.l.rate)
	hours := b.o.live(fmt.Sprintf("ROUND(%d*%s,4)/60", t.ChangeOvers, b.o.l.rate("change_min")))
	b.line("Change-overs", float64(t.ChangeOverMin)/60, hours, float64(t.ChangeOverCost),
		b.o.live(rounded(fmt.Sprintf("B%d*%s", b.at, rate), price.MoneyDecimals)),
		plural(t.ChangeOvers, "change")+" of wire, gas or machine", look.Calc)
}

// totals writes cost, margin and price. Price is the sum of the joints' prices and
// that of the change-overs, as the results file adds it up.
func (b *priceLines) totals(t price.Totals) {
	o, change := b.o, b.at-1
	margin := o.l.rate("margin_pct")
	b.line("Cost", 0, "", float64(t.Cost), o.live(fmt.Sprintf("ROUND(SUM(%s)+C%d,4)", o.l.columnRange("cost"), change)), "", look.Total)
	b.line("Margin", 0, "", float64(t.Price-t.Cost), o.live(fmt.Sprintf("C%d-C%d", b.priceRow, b.at-1)), "share of the price, not of the cost", look.Calc)
	b.priceRow, o.priceAt = b.at, b.at
	b.line("Price", 0, "", float64(t.Price), o.live(fmt.Sprintf("ROUND(SUM(%s)+ROUND(C%d/(1-%s/100),4),4)", o.l.columnRange("price"), change, margin)), "no tax", look.Total)
}
