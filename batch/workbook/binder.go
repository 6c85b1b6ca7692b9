package workbook

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// binder gives the sheets of a donor their frame: widths, panes, print set-up,
// and the properties of the document. It keeps the first error.
type binder struct {
	f              *excelize.File
	title          string // of the document
	about          string
	left           string // of the footers: what the sheets are about
	version, paper string
	date           string
	err            error
}

// PlainOptions are what a workbook of our own, without a list in it, carries
// beside its figures.
type PlainOptions struct {
	US                   bool
	Version, Paper, Date string
}

func (o *output) binder() *binder {
	job := o.l.job
	return &binder{f: o.l.book.File, title: "Welding: " + footerText(job.List.File), about: "Starting points and an estimate; see the sheet " + o.basis,
		left: job.List.File, version: job.Version, paper: job.Opts.Paper, date: job.Opts.Date}
}

func (b *binder) note(err error) {
	if b.err == nil {
		b.err = err
	}
}

// frame sets widths, panes and print set-up of one of our sheets.
func (b *binder) frame(g *look.Grid) {
	for i, w := range g.Widths {
		name := pack.ColumnName(i + 1)
		b.note(b.f.SetColWidth(g.Name, name, name, w))
	}
	if g.Freeze > 0 {
		b.note(b.f.SetPanes(g.Name, &excelize.Panes{Freeze: true, YSplit: g.Freeze,
			TopLeftCell: "A" + itoa(g.Freeze+1), ActivePane: "bottomLeft"}))
	}
	if g.Rows() > 0 {
		b.note(b.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: g.Name,
			RefersTo: printed(g)}))
	}
	if g.Titles > 0 {
		b.note(b.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", Scope: g.Name,
			RefersTo: repeated(g)}))
	}
	for _, m := range g.Merged() {
		b.note(b.f.MergeCell(g.Name, m[0], m[1]))
	}
	for _, row := range g.Breaks(b.room()) {
		b.note(b.f.InsertPageBreak(g.Name, "A"+itoa(row)))
	}
	grid := false
	b.note(b.f.SetSheetView(g.Name, 0, &excelize.ViewOptions{ShowGridLines: &grid}))
	b.page(g.Name)
}

// printed is the area that is printed, in two parts where a sheet is too wide to be
// read on one page.
func printed(g *look.Grid) string {
	part := func(col, row, toCol, toRow int) string {
		return fmt.Sprintf("%s!$%s$%d:$%s$%d", quoteSheet(g.Name), pack.ColumnName(col), row, pack.ColumnName(toCol), toRow)
	}
	if g.Split == 0 {
		return part(1, 1, len(g.Widths), g.Rows())
	}
	return part(1, 1, g.Split-1, g.Rows()) + "," + part(g.Split, g.Titles, len(g.Widths), g.Last)
}

// repeated is what every printed page begins with.
func repeated(g *look.Grid) string {
	rows := fmt.Sprintf("%s!$%d:$%d", quoteSheet(g.Name), g.Titles, g.Titles)
	if g.Split == 0 {
		return rows
	}
	return fmt.Sprintf("%s!$A:$%s,%s", quoteSheet(g.Name), pack.ColumnName(g.Names), rows)
}

// room is what can be printed on of a landscape page, in points.
func (b *binder) room() (width, height float64) {
	if b.paper == "letter" {
		return 792 - 2*72*sideMargin, 612 - 2*72*topMargin
	}
	return 842 - 2*72*sideMargin, 595 - 2*72*topMargin
}

// The margins of a page, in inches.
const sideMargin, topMargin = 0.4, 0.5

// page prints a sheet landscape, one page wide, with a footer that names list,
// version and page.
func (b *binder) page(sheet string) {
	landscape, wide, tall, paper, fit := "landscape", 1, 0, 9, true
	if b.paper == "letter" {
		paper = 1
	}
	b.note(b.f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &landscape, Size: &paper, FitToWidth: &wide, FitToHeight: &tall}))
	b.note(b.f.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	side, top := sideMargin, topMargin
	b.note(b.f.SetPageMargins(sheet, &excelize.PageLayoutMarginsOptions{Left: &side, Right: &side, Top: &top, Bottom: &top}))
	b.note(b.f.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{
		OddFooter: "&L" + footerText(b.left) + "&C&A&R" + footerText("seamtally "+b.version) + "   &P / &N"}))
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
func (b *binder) props() {
	when := b.date + "T00:00:00Z"
	if len(b.date) != len("2006-01-02") {
		when = "1980-01-01T00:00:00Z"
	}
	b.note(b.f.SetDocProps(&excelize.DocProperties{Title: b.title, Creator: "seamtally",
		LastModifiedBy: "seamtally", Created: when, Modified: when, Description: b.about}))
	b.note(b.f.SetAppProps(&excelize.AppProperties{Application: "seamtally"}))
}

// whole makes a workbook of grids alone.
func (b *binder) whole(book *look.Book, grids []*look.Grid) ([]byte, error) {
	defer b.f.Close()
	var sheets []pack.Sheet
	for i, g := range grids {
		sheets = append(sheets, g.Sheet())
		if i == 0 {
			b.note(b.f.SetSheetName("Sheet1", g.Name))
		} else {
			_, err := b.f.NewSheet(g.Name)
			b.note(err)
		}
		b.frame(g)
	}
	b.props()
	b.note(book.Err())
	if b.err != nil {
		return nil, b.err
	}
	var donor bytes.Buffer
	if _, err := b.f.WriteTo(&donor); err != nil {
		return nil, err
	}
	book.Shut()
	write, err := pack.Fresh(donor.Bytes(), sheets, nil)
	if err != nil {
		return nil, err
	}
	data, err := write.Bytes()
	return data, errors.Join(err, book.Err())
}
