package workbook

import (
	"strings"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// fresh makes a workbook of our own with the user's rows, at the row numbers
// that they have in the file, and our columns beside them.
func fresh(src *list.Source, job *price.Job, opt Options) (*Book, error) {
	from := sheetOf(src, job)
	name, h := "Joints", headingOf(job)
	if isAlone(job) {
		name, h = "Cut list", cutHeading(&job.Parts.List)
	}
	l := newLayout(job, opt, from, name)
	l.textNumbers, l.decimalComma = src.Format == list.CSV, src.DecimalComma
	first := min(max(widest(from), job.List.LastCol), mostCopied) + 2
	l.place(first)
	l.book = look.NewBook("", "")
	o := newOutput(l, nil, nil)
	rows := &freshRows{l: l, from: from, heading: *h, headRow: h.header[1]}
	if rows.headRow > 1 {
		rows.labelRow = rows.headRow - 1
	}
	if isAlone(job) {
		l.cut = from
		o.cut = newCut(l, name, first, false)
		o.cut.header, o.cut.labels = rows.headRow, rows.labelRow
		rows.draw = o.cut.draw
	} else {
		rows.draw = newJoints(l, rows.headRow, rows.labelRow).draw
	}
	for _, key := range []styleKey{{look.Off(look.Plain), "@"}, {look.Off(look.Plain), ""}, {look.Calc, ""}, {look.HeadOf("user"), ""}} {
		l.style(key.role, key.format)
	}
	o.fresh = rows
	donor, sheets, err := o.donor(name)
	if err != nil {
		return nil, err
	}
	sheets[0].Draw = rows.drawAll
	letters, last := o.besides()
	sheets[0].Size = "A1:" + letters[len(letters)-1] + itoa(max(last, rows.lastRow()))
	write, err := pack.Fresh(donor, sheets, o.caches)
	return &Book{Problems: leftOut(src, job), write: write, looks: l.book}, err
}

// besides are the columns of ours beside the list of a fresh workbook, and its last row.
func (o *output) besides() (letters []string, last int) {
	if isAlone(o.l.job) {
		_, last = o.cut.span()
		return o.cut.letters, last
	}
	_, last = o.l.span()
	return o.l.letters, last
}

// mostCopied is how many of the user's columns a fresh workbook takes over. Only
// stray cells stand further out.
const mostCopied = 300

func widest(s *list.Sheet) int {
	most := 0
	if s == nil {
		return 0
	}
	for _, r := range s.Rows {
		if n := len(r.Cells); n > 0 {
			most = max(most, r.Cells[n-1].Col)
		}
	}
	return most
}

// leftOut says what a fresh workbook does not take over.
func leftOut(src *list.Source, job *price.Job) []finding.Problem {
	from := sheetOf(src, job)
	if widest(from) <= mostCopied {
		return nil
	}
	return []finding.Problem{{Place: finding.Place{File: src.File, Sheet: job.List.Sheet}, Level: finding.Warning, Code: "cells-left-out",
		Text: "cells right of column " + pack.ColumnName(mostCopied) + " are not copied into the new workbook",
		Hint: "they stand in your own file as before"}}
}

// freshRows draws the user's rows as well as ours.
type freshRows struct {
	heading
	l                 *layout
	from              *list.Sheet
	headRow, labelRow int
	draw              func(*pack.Pen, int) // our cells of a row
}

func (f *freshRows) lastRow() int {
	if f.from == nil || len(f.from.Rows) == 0 {
		return 1
	}
	return f.from.Rows[len(f.from.Rows)-1].Number
}

func (f *freshRows) drawAll(p *pack.Pen) {
	if f.from == nil {
		return
	}
	next := 0
	for _, r := range f.from.Rows {
		if f.labelRow > 0 && f.labelRow < r.Number && f.labelRow > next {
			p.StartRow(f.labelRow, 0)
			f.draw(p, f.labelRow)
		}
		height := 0.0
		if r.Number == f.headRow {
			height = 47
		}
		p.StartRow(r.Number, height)
		f.drawUser(p, &r)
		f.draw(p, r.Number)
		next = r.Number
	}
}

// drawUser writes the user's cells of one row: what was a number stays one, all
// else is text that nothing can bring to life.
func (f *freshRows) drawUser(p *pack.Pen, r *list.Row) {
	head := r.Number >= max(f.header[0], 1) && r.Number <= f.header[1]
	for _, c := range r.Cells {
		if c.Col > mostCopied {
			break
		}
		col := pack.ColumnName(c.Col)
		v, isNumber := f.l.number(r.Number, c)
		switch {
		case head:
			p.Text(col, f.l.style(look.HeadOf("user"), ""), nil, c.Text)
		case isNumber:
			p.Number(col, f.l.style(look.Calc, ""), nil, v)
		case c.Kind == list.Bool || c.Kind == list.Text || c.Text != "":
			p.Text(col, f.l.style(look.Off(look.Plain), look.TextFormat(c.Text)), nil, c.Text)
		}
	}
}

// frameFresh makes the frame of the user's rows in a fresh workbook.
func (o *output) frameFresh(f *excelize.File, sheet string) {
	l := o.l
	if isAlone(l.job) {
		from, last := o.cut.span()
		frameBeside(o, f, sheet, o.cut.beside)
		o.headFresh(f, sheet, o.cut.printAreas(o.fresh.top(o.fresh.from, o.fresh.headRow, o.fresh.labelRow), last, false))
		o.fitsFormat(f, sheet, o.cut.letters[o.cut.at["fits"]], from, last)
		return
	}
	frameBeside(o, f, sheet, &beside[row]{l: l, cols: l.cols, letters: l.letters})
	o.headFresh(f, sheet, l.printAreas(sheet, o.fresh.top(o.fresh.from, o.fresh.headRow, o.fresh.labelRow)))
	from, last := l.span()
	o.fitsFormat(f, sheet, l.letters[l.at["fits"]], from, last)
}

// frameBeside sets widths and folds of our columns.
func frameBeside[R any](o *output, f *excelize.File, sheet string, b *beside[R]) {
	for i, c := range b.columns() {
		o.note(f.SetColWidth(sheet, b.letters[i], b.letters[i], c.Width))
		if c.Level > 0 {
			o.note(f.SetColOutlineLevel(sheet, b.letters[i], uint8(c.Level)))
		}
		if c.Hidden {
			o.note(f.SetColVisible(sheet, b.letters[i], false))
		}
	}
}

// headFresh sets the widths of the user's columns, what stays in sight and what is printed.
func (o *output) headFresh(f *excelize.File, sheet, areas string) {
	rows := o.fresh
	for i, width := range rows.userWidths() {
		name := pack.ColumnName(i + 1)
		o.note(f.SetColWidth(sheet, name, name, width))
	}
	letters, last := o.besides()
	if header := rows.headRow; header > 0 {
		corner := pack.ColumnName(rows.freezeCols()+1) + itoa(header+1)
		o.note(f.SetPanes(sheet, &excelize.Panes{Freeze: true, XSplit: rows.freezeCols(), YSplit: rows.freezeRows(),
			TopLeftCell: corner, ActivePane: "bottomRight"}))
		o.note(f.AutoFilter(sheet, "A"+itoa(header)+":"+letters[len(letters)-1]+itoa(last), nil))
		o.note(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", Scope: sheet, RefersTo: printTitles(sheet, header, rows.freezeCols())}))
	}
	o.note(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: sheet, RefersTo: areas}))
	bind := o.binder()
	bind.page(sheet)
	o.note(bind.err)
	below := false
	o.note(f.SetSheetProps(sheet, &excelize.SheetPropsOptions{OutlineSummaryRight: &below}))
}

// printAreas puts the list with its status, and then each group, on a page of its
// own that begins at a row top: all columns side by side would be too small to read.
// Checks and what was assumed are printed on sheets of their own, where they have room;
// the planner's own figures are not printed.
func (l *layout) printAreas(sheet string, top int) string {
	_, last := l.span()
	areas := []string{printArea(sheet, "A", 1, l.letters[l.at["fits"]], last)}
	for _, ends := range [][2]string{{"mark", "where"}, {"price", "rework_min"}, {"filler", "gas_l"}, {"wfs_m_min", "t85_s"}, {"torch", "inductance"}} {
		areas = append(areas, printArea(sheet, l.letters[l.at[ends[0]]], top, l.letters[l.at[ends[1]]], last))
	}
	return strings.Join(areas, ",")
}

// top is the row where the printed pages of the groups begin: the labels over them, or
// the header where words of the user's stand left of the labels and would be cut.
func (h *heading) top(sheet *list.Sheet, header, labels int) int {
	if labels == 0 {
		return max(header, 1)
	}
	if r := rowAt(sheet, labels); r != nil {
		for _, c := range r.Cells {
			if c.Col <= max(h.freezeCols(), 1) && c.Text != "" {
				return max(header, 1)
			}
		}
	}
	return labels
}

func printArea(sheet, from string, top int, to string, last int) string {
	return quoteSheet(sheet) + "!$" + from + "$" + itoa(top) + ":$" + to + "$" + itoa(last)
}

// printTitles repeats the marks, which stand in the first columns, and the header on
// every page.
func printTitles(sheet string, header, marks int) string {
	if header == 0 {
		return ""
	}
	ref := quoteSheet(sheet) + "!$"
	return ref + "A:$" + pack.ColumnName(max(marks, 1)) + "," + ref + itoa(header) + ":$" + itoa(header)
}

// userWidths are widths for the user's columns in a fresh workbook, from what
// stands in them.
func (f *freshRows) userWidths() []float64 {
	widths := make([]float64, min(widest(f.from), mostCopied))
	for i := range widths {
		widths[i] = 7
	}
	if f.from == nil {
		return widths
	}
	for _, r := range f.from.Rows {
		for _, c := range r.Cells {
			if c.Col > len(widths) {
				break
			}
			n := float64(len([]rune(c.Text))) + 2
			if r.Number <= f.header[1] {
				n = min(n, 14) // headers wrap, titles run over
			}
			widths[c.Col-1] = min(max(widths[c.Col-1], n), 40)
		}
	}
	return widths
}
