package workbook

import (
	"fmt"
	"strings"

	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
)

// mostFactors is how many of the values that move the price are shown.
const mostFactors = 6

// spreadBlock says how far the price may lie off, and what moves it most. It is
// drawn when the list is worked: a change of a rate needs a new run to show here.
func (o *output) spreadBlock(g *look.Grid, at int) {
	s, cur := o.l.job.Totals.Spread, o.l.job.Shop.Currency
	if s.Draws == 0 {
		return
	}
	g.Section(at, besideCharts, "Price range")
	at++
	g.Text(at, 1, look.Sub, fmt.Sprintf("Drawn %d times within the spreads on the sheet of rates, passes and settings held; values of this run, not live.", s.Draws))
	for _, l := range []struct {
		name string
		v    float64
		how  string
	}{{"One in twenty lies below", float64(s.Low), ""}, {"Half lie below", float64(s.Mid), o.leaning(s)}, {"One in twenty lies above", float64(s.High), ""}} {
		at++
		g.Text(at, 1, look.Plain, l.name)
		g.Number(at, 3, look.Calc, money2, "", l.v)
		g.Text(at, 5, look.Sub, l.how)
	}
	at += 2
	o.heads(g, at, "What moves it most", "Value from", "Value to", "Price from", "Price to", "Moves "+cur, "What it is", "", "", "", "", "")
	for i, f := range s.Factors {
		if i == mostFactors {
			break
		}
		at++
		g.Text(at, 1, look.Plain, f.Key)
		if f.Low < f.High {
			g.Number(at, 2, look.Calc, "General", "", f.Low)
			g.Number(at, 3, look.Calc, "General", "", f.High)
		} else {
			g.Text(at, 2, look.Sub, "each in its spread")
		}
		g.Number(at, 4, look.Calc, "#,##0", "", float64(f.PriceLow))
		g.Number(at, 5, look.Calc, "#,##0", "", float64(f.PriceHigh))
		g.Number(at, 6, look.Strong, "#,##0", o.live(fmt.Sprintf("ABS(E%d-D%d)", at, at)), float64(f.Swing()))
		if about := o.aboutFactor(f.Key); about != "" {
			g.Over(at, factorCol, lastCol, look.Quiet, about)
		}
	}
}

// factorCol is where it stands what a value is that moves the price.
const factorCol = 7

// aboutFactor says what a shop value is, as the sheet of rates does.
func (o *output) aboutFactor(key string) string {
	for _, v := range o.l.job.Shop.Values {
		if v.Key == key {
			about, _, _ := strings.Cut(v.Note, ";")
			return about
		}
	}
	return "" // a family of prices, which says itself what it is
}

// leaning says why the middle of the draws is not the price, which takes every value
// as stated.
func (o *output) leaning(s price.Spread) string {
	switch all := o.l.job.Totals.Price; {
	case s.Mid > all:
		return "above the price: from the stated values the spreads reach further up than down"
	case s.Mid < all:
		return "below the price: from the stated values the spreads reach further down than up"
	}
	return "the price takes every value as stated"
}
