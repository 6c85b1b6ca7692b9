package workbook

import (
	"strings"
	"unicode"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/rates"
	"seamtally/batch/workbook/look"
)

const firstRate = 5

// rateHeads are the headers of the sheet of rates, which a later run reads back.
var rateHeads = []string{"Key", "Value", "Unit", "Note", "Low", "High", "As run", "Basis", "Source", "From"}

// nameRates gives every number among the shop's values a defined name, so that
// formulas read as sentences.
func (o *output) nameRates() {
	o.l.rateNames = map[string]string{}
	for i, v := range o.l.job.Shop.Values {
		if !v.IsNum {
			continue
		}
		o.l.rateNames[v.Key] = o.freeDefined("shop_" + nameOf(v.Key))
		o.rateCells[v.Key] = quoteSheet(o.rates) + "!$B$" + itoa(firstRate+i)
	}
}

// nameOf turns a key into what a defined name may hold.
func nameOf(key string) string {
	return strings.Map(func(r rune) rune {
		if r == '_' || r == '.' || r < 0x80 && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			return r
		}
		return '_'
	}, key)
}

// defineRates writes the names into the donor, in the order of the values.
func (o *output) defineRates(f *excelize.File) {
	for _, v := range o.l.job.Shop.Values {
		if name, ok := o.l.rateNames[v.Key]; ok {
			o.note(f.SetDefinedName(&excelize.DefinedName{Name: name, RefersTo: o.rateCells[v.Key]}))
		}
	}
}

// guardRates lets the cells of numbers take numbers only. The spread that stands
// beside a value is usual, not a limit.
func (o *output) guardRates(f *excelize.File) {
	for i, v := range o.l.job.Shop.Values {
		if !v.IsNum {
			continue
		}
		rule := excelize.NewDataValidation(true)
		rule.Sqref = "B" + itoa(firstRate+i)
		o.note(rule.SetRange(0, mostOf(v.Key), excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween))
		rule.SetError(excelize.DataValidationErrorStyleStop, "Not a number for this value", "Give a number from 0 to "+exact(mostOf(v.Key))+", in "+strings.TrimSpace(v.Unit+" "))
		o.note(f.AddDataValidation(o.rates, rule))
	}
}

// mostOf is the largest number that makes sense for a rate.
func mostOf(key string) float64 {
	switch key {
	case "margin_pct":
		return 99
	case "operating_factor", "source_efficiency":
		return 1
	}
	return 1000000
}

// ratesSheet lists every value of the shop. The yellow cells are what formulas
// everywhere read.
func (o *output) ratesSheet() *look.Grid {
	g := look.NewGrid(o.l.book, o.rates)
	g.Widths = []float64{26, 30, 18, 52, 8, 8, 21, 16, 32, 16}
	g.Freeze, g.Titles = firstRate-1, firstRate-1
	g.Text(1, 1, look.Title, "Rates")
	g.Text(2, 1, look.Sub, "What the shop pays, needs and has. Change a yellow cell and every formula follows. Settings, wire and gas were chosen with these values: after a large change run the list again.")
	for i, s := range rateHeads {
		role := look.Head
		if s == "Low" || s == "High" || s == "Value" || s == "As run" {
			role = look.HeadNum
		}
		g.Text(firstRate-1, i+1, role, s)
	}
	for i, v := range o.l.job.Shop.Values {
		o.rateLine(g, firstRate+i, v)
	}
	return g
}

// rateLine writes one value of the shop.
func (o *output) rateLine(g *look.Grid, row int, v rates.Value) {
	g.Text(row, 1, look.Plain, v.Key)
	if v.IsNum {
		g.Number(row, 2, look.Edit, "General", "", v.Num)
	} else {
		g.Text(row, 2, look.EditText, v.Text)
	}
	g.Text(row, 3, look.Plain, o.unitText(v.Unit))
	g.Text(row, 4, look.Wrap, v.Note)
	if v.Low != 0 || v.High != 0 {
		g.Number(row, 5, look.Calc, "General", "", v.Low)
		g.Number(row, 6, look.Calc, "General", "", v.High)
	}
	if v.IsNum {
		g.Number(row, 7, look.Calc, "General", "", v.Num)
	} else {
		g.Text(row, 7, look.Wrap, v.Text)
	}
	g.Text(row, 8, look.Plain, v.Basis)
	g.Text(row, 9, look.Quiet, v.Source)
	g.Text(row, 10, look.Quiet, v.From)
}
