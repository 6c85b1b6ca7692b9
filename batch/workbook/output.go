package workbook

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// output gathers the sheets of our own and the frame they are made in.
type output struct {
	l         *layout
	fresh     *freshRows      // the user's rows in a workbook of our own; nil in their own
	cut       *cut            // our columns beside the cut list; nil where there are none
	taken     map[string]bool // names of sheets in use, folded
	names     map[string]bool // defined names in use, folded
	err       error
	rateCells map[string]string // rate -> its cell, with the sheet

	assemblies, hoursAt span // rows of the Totals sheet that charts show
	priceAt             int  // row of the price
	caches              map[string]pack.Cache

	totals, buy, checks, rates, basis string // names of the sheets
	parts, bars                       string // empty without a cut list
}

func newOutput(l *layout, sheets, names []string) *output {
	o := &output{l: l, taken: map[string]bool{}, names: map[string]bool{}, rateCells: map[string]string{}}
	for _, s := range append(sheets, l.sheet) {
		o.taken[strings.ToLower(s)] = true
	}
	for _, n := range names {
		o.names[strings.ToLower(n)] = true
	}
	o.totals, o.buy, o.checks = o.freeName("Totals"), o.freeName("Buy list"), o.freeName("Checks")
	o.rates, o.basis = o.freeName("Rates"), o.freeName("Basis")
	if l.job.Parts != nil {
		o.parts, o.bars = o.freeName("Parts"), o.freeName("Bars")
	}
	return o
}

func (o *output) note(err error) {
	if o.err == nil {
		o.err = err
	}
}

// freeName returns a name for a sheet that the user has not taken.
func (o *output) freeName(name string) string {
	free := name
	for n := 2; o.taken[strings.ToLower(free)]; n++ {
		free = fmt.Sprintf("%s (weld %d)", name, n)
		if n == 2 {
			free = name + " (weld)"
		}
	}
	o.taken[strings.ToLower(free)] = true
	return free
}

// freeDefined returns a defined name that the user has not taken.
func (o *output) freeDefined(name string) string {
	free := name
	for n := 2; o.names[strings.ToLower(free)]; n++ {
		free = fmt.Sprintf("%s_%d", name, n)
	}
	o.names[strings.ToLower(free)] = true
	return free
}

// grids are our own sheets, from what is asked first to what it rests on. A cut
// list of its own has no welds to price or to buy for.
func (o *output) grids() []*look.Grid {
	var all []*look.Grid
	if o.l.job.Parts == nil || len(o.l.job.List.Joints) > 0 {
		all = append(all, o.totalsSheet(), o.buySheet())
	}
	if o.l.job.Parts != nil {
		all = append(all, o.partsSheet(), o.barsSheet())
	}
	return append(all, o.checksSheet(), o.ratesSheet(), o.basisSheet())
}

// donor makes the workbook whose sheets are set into the final one. With a name
// for the sheet of joints it holds that sheet too, as the first.
func (o *output) donor(joints string) ([]byte, []pack.Sheet, error) {
	o.nameRates() // formulas on all sheets use the names
	grids := o.grids()
	f := o.l.book.File
	defer f.Close()
	var sheets []pack.Sheet
	if joints != "" {
		sheets = append(sheets, pack.Sheet{Name: joints})
	}
	for _, g := range grids {
		sheets = append(sheets, g.Sheet())
	}
	for i, s := range sheets {
		if i == 0 {
			o.note(f.SetSheetName("Sheet1", s.Name))
			continue
		}
		_, err := f.NewSheet(s.Name)
		o.note(err)
	}
	if joints != "" {
		o.frameFresh(f, joints)
	}
	bind := o.binder()
	for _, g := range grids {
		bind.frame(g)
	}
	o.caches = o.charts(f, grids[0])
	o.defineRates(f)
	o.guardRates(f)
	o.markOurs(f, grids)
	bind.props()
	o.note(bind.err)
	o.note(o.l.book.Err())
	if o.err != nil {
		return nil, nil, o.err
	}
	var out bytes.Buffer
	if _, err := f.WriteTo(&out); err != nil {
		return nil, nil, err
	}
	o.l.book.Shut()
	return out.Bytes(), sheets, nil
}

// markOurs leaves hidden names on what is ours, so that a later run can tell it
// from the user's. Names follow their cells whatever the user inserts or renames.
func (o *output) markOurs(f *excelize.File, grids []*look.Grid) {
	mark := func(name, sheet string, letters []string) {
		columns := quoteSheet(sheet) + "!$" + letters[0] + ":$" + letters[len(letters)-1]
		o.note(f.SetDefinedName(&excelize.DefinedName{Name: pack.ColumnsName(name), RefersTo: columns}))
	}
	if !isAlone(o.l.job) {
		mark(jointsMark, o.l.sheet, o.l.letters)
	}
	if o.cut != nil {
		mark(cutMark, o.cut.sheet, o.cut.letters)
	}
	for i, g := range grids {
		o.note(f.SetDefinedName(&excelize.DefinedName{Name: pack.SheetName + itoa(i+1), RefersTo: quoteSheet(g.Name) + "!$A$1"}))
	}
}

// fitsRule colours the cell that says whether the plan fits, on the user's sheet.
func fitsRule(l *layout, col string, from, to int) string {
	if !l.live {
		return ""
	}
	id, err := l.book.File.NewConditionalStyle(warningStyle())
	l.book.Note(err)
	cells := col + itoa(from) + ":" + col + itoa(to)
	return `<conditionalFormatting xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" sqref="` + cells +
		`"><cfRule type="cellIs" dxfId="` + itoa(id) + `" priority="1000000" operator="equal"><formula>"run again"</formula></cfRule></conditionalFormatting>`
}

func warningStyle() *excelize.Style {
	return &excelize.Style{Font: &excelize.Font{Bold: true, Color: "8A2C0D"},
		Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"FBE3DA"}}}
}

// fitsFormat does the same in a fresh workbook.
func (o *output) fitsFormat(f *excelize.File, sheet, col string, from, to int) {
	if !o.l.live {
		return
	}
	id, err := f.NewConditionalStyle(warningStyle())
	o.note(err)
	o.note(f.SetConditionalFormat(sheet, col+itoa(from)+":"+col+itoa(to),
		[]excelize.ConditionalFormatOptions{{Type: "cell", Criteria: "==", Value: `"run again"`, Format: &id}}))
}
