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
	taken     map[string]bool // names of sheets in use, folded
	names     map[string]bool // defined names in use, folded
	err       error
	rateCells map[string]string // rate -> its cell, with the sheet

	assemblies, hoursAt span // rows of the Totals sheet that charts show
	caches              map[string]pack.Cache

	totals, buy, checks, rates, basis string // names of the sheets
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

// donor makes the workbook whose sheets are set into the final one. With a name
// for the sheet of joints it holds that sheet too, as the first.
func (o *output) donor(joints string) ([]byte, []pack.Sheet, error) {
	o.nameRates() // formulas on all sheets use the names
	grids := []*look.Grid{o.totalsSheet(), o.buySheet(), o.checksSheet(), o.ratesSheet(), o.basisSheet()}
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
		o.frameJoints(f, joints)
	}
	for _, g := range grids {
		o.frame(f, g)
	}
	o.caches = o.charts(f, grids[0])
	o.defineRates(f)
	o.guardRates(f)
	o.markOurs(f, grids)
	o.note(o.props(f))
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
	l := o.l
	columns := l.sheetRef() + "$" + l.letters[0] + ":$" + l.letters[len(l.letters)-1]
	o.note(f.SetDefinedName(&excelize.DefinedName{Name: pack.ColumnsName, RefersTo: columns}))
	for i, g := range grids {
		o.note(f.SetDefinedName(&excelize.DefinedName{Name: pack.SheetName + itoa(i+1), RefersTo: quoteSheet(g.Name) + "!$A$1"}))
	}
}

// frame sets widths, panes and print set-up of one of our sheets.
func (o *output) frame(f *excelize.File, g *look.Grid) {
	for i, w := range g.Widths {
		name := pack.ColumnName(i + 1)
		o.note(f.SetColWidth(g.Name, name, name, w))
	}
	if g.Freeze > 0 {
		o.note(f.SetPanes(g.Name, &excelize.Panes{Freeze: true, YSplit: g.Freeze,
			TopLeftCell: "A" + itoa(g.Freeze+1), ActivePane: "bottomLeft"}))
	}
	if g.Rows() > 0 {
		o.note(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: g.Name,
			RefersTo: fmt.Sprintf("%s!$A$1:$%s$%d", quoteSheet(g.Name), pack.ColumnName(len(g.Widths)), g.Rows())}))
	}
	if g.Titles > 0 {
		o.note(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", Scope: g.Name,
			RefersTo: fmt.Sprintf("%s!$%d:$%d", quoteSheet(g.Name), g.Titles, g.Titles)}))
	}
	grid := false
	o.note(f.SetSheetView(g.Name, 0, &excelize.ViewOptions{ShowGridLines: &grid}))
	o.page(f, g.Name)
}

// page prints a sheet landscape, one page wide, with a footer that names list,
// version and page.
func (o *output) page(f *excelize.File, sheet string) {
	landscape, wide, tall, paper, fit := "landscape", 1, 0, 9, true
	if o.l.job.Opts.Paper == "letter" {
		paper = 1
	}
	o.note(f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &landscape, Size: &paper, FitToWidth: &wide, FitToHeight: &tall}))
	o.note(f.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	side, top := 0.4, 0.5
	o.note(f.SetPageMargins(sheet, &excelize.PageLayoutMarginsOptions{Left: &side, Right: &side, Top: &top, Bottom: &top}))
	o.note(f.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{
		OddFooter: "&L" + footerText(o.l.job.List.File) + "&C&A&R" + footerText("seamtally "+o.l.job.Version) + "   &P / &N"}))
}

// footerText makes a text safe for a footer, where & begins a code; at most 60
// characters, because the whole footer has 255.
func footerText(s string) string {
	runes := []rune(pack.Plain(s))
	if len(runes) > 60 {
		runes = append(runes[:59], '…')
	}
	return strings.ReplaceAll(string(runes), "&", "&&")
}

// props sets the document's properties, with the date of the job and no clock.
func (o *output) props(f *excelize.File) error {
	when := o.l.job.Opts.Date + "T00:00:00Z"
	if len(o.l.job.Opts.Date) != len("2006-01-02") {
		when = "1980-01-01T00:00:00Z"
	}
	err := f.SetDocProps(&excelize.DocProperties{Title: "Welding: " + footerText(o.l.job.List.File), Creator: "seamtally",
		LastModifiedBy: "seamtally", Created: when, Modified: when, Description: "Starting points and an estimate; see the sheet " + o.basis})
	if err != nil {
		return err
	}
	return f.SetAppProps(&excelize.AppProperties{Application: "seamtally"})
}

// fitsRule colours the cell that says whether the plan fits, on the user's sheet.
func fitsRule(l *layout) string {
	if !l.live {
		return ""
	}
	id, err := l.book.File.NewConditionalStyle(warningStyle())
	l.book.Note(err)
	from, to := l.span()
	col := l.letters[l.at["fits"]]
	cells := col + itoa(from) + ":" + col + itoa(to)
	return `<conditionalFormatting xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" sqref="` + cells +
		`"><cfRule type="cellIs" dxfId="` + itoa(id) + `" priority="1000000" operator="equal"><formula>"run again"</formula></cfRule></conditionalFormatting>`
}

func warningStyle() *excelize.Style {
	return &excelize.Style{Font: &excelize.Font{Bold: true, Color: "8A2C0D"},
		Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"FBE3DA"}}}
}

// fitsFormat does the same in a fresh workbook.
func (o *output) fitsFormat(f *excelize.File, sheet string) {
	if !o.l.live {
		return
	}
	id, err := f.NewConditionalStyle(warningStyle())
	o.note(err)
	from, to := o.l.span()
	col := o.l.letters[o.l.at["fits"]]
	o.note(f.SetConditionalFormat(sheet, col+itoa(from)+":"+col+itoa(to),
		[]excelize.ConditionalFormatOptions{{Type: "cell", Criteria: "==", Value: `"run again"`, Format: &id}}))
}
