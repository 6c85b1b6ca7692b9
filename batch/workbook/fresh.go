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
	l := newLayout(job, opt, from, "Joints")
	l.textNumbers, l.decimalComma = src.Format == list.CSV, src.DecimalComma
	l.place(min(max(widest(from), job.List.LastCol), mostCopied) + 2)
	l.book = look.NewBook("", "")
	o := newOutput(l, nil, nil)
	header, labels := job.List.HeaderRows[1], 0
	if header > 1 {
		labels = header - 1
	}
	fj := &freshJoints{joints: newJoints(l, header, labels), from: from}
	for _, key := range []styleKey{{look.Off(look.Plain), "@"}, {look.Off(look.Plain), ""}, {look.Calc, ""}, {look.HeadOf("user"), ""}} {
		l.style(key.role, key.format)
	}
	donor, sheets, err := o.donor("Joints")
	if err != nil {
		return nil, err
	}
	sheets[0].Draw = fj.drawAll
	_, last := l.span()
	sheets[0].Size = "A1:" + l.letters[len(l.letters)-1] + itoa(max(last, fj.lastRow()))
	write, err := pack.Fresh(donor, sheets, o.caches)
	return &Book{Problems: leftOut(src, job), write: write, looks: l.book}, err
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

// freshJoints draws the user's rows as well as ours.
type freshJoints struct {
	*joints
	from *list.Sheet
}

func (f *freshJoints) lastRow() int {
	if f.from == nil || len(f.from.Rows) == 0 {
		return 1
	}
	return f.from.Rows[len(f.from.Rows)-1].Number
}

func (f *freshJoints) drawAll(p *pack.Pen) {
	if f.from == nil {
		return
	}
	next := 0
	for _, r := range f.from.Rows {
		if f.labels > 0 && f.labels < r.Number && f.labels > next {
			p.StartRow(f.labels, 0)
			f.draw(p, f.labels)
		}
		height := 0.0
		if r.Number == f.header {
			height = 62
		}
		p.StartRow(r.Number, height)
		f.drawUser(p, &r)
		f.draw(p, r.Number)
		next = r.Number
	}
}

// drawUser writes the user's cells of one row: what was a number stays one, all
// else is text that nothing can bring to life.
func (f *freshJoints) drawUser(p *pack.Pen, r *list.Row) {
	head := r.Number >= max(f.l.job.List.HeaderRows[0], 1) && r.Number <= f.l.job.List.HeaderRows[1]
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

// frameJoints makes the frame of the sheet of joints in a fresh workbook.
func (o *output) frameJoints(f *excelize.File, sheet string) {
	l := o.l
	for i, c := range l.cols {
		o.note(f.SetColWidth(sheet, l.letters[i], l.letters[i], c.width))
		if c.fold {
			o.note(f.SetColOutlineLevel(sheet, l.letters[i], 1))
		}
		if c.group == "plan" && c.fold {
			o.note(f.SetColVisible(sheet, l.letters[i], false))
		}
	}
	for i, width := range userWidths(l) {
		name := pack.ColumnName(i + 1)
		o.note(f.SetColWidth(sheet, name, name, width))
	}
	header := l.job.List.HeaderRows[1]
	_, last := l.span()
	left, right := "A", l.letters[len(l.letters)-1]
	if header > 0 {
		corner := pack.ColumnName(freezeCols(l.job)+1) + itoa(header+1)
		o.note(f.SetPanes(sheet, &excelize.Panes{Freeze: true, XSplit: freezeCols(l.job), YSplit: freezeRows(l.job),
			TopLeftCell: corner, ActivePane: "bottomRight"}))
		o.note(f.AutoFilter(sheet, left+itoa(header)+":"+right+itoa(last), nil))
		o.note(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", Scope: sheet, RefersTo: l.printTitles(header)}))
	}
	o.note(f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: sheet, RefersTo: l.printAreas(sheet)}))
	bind := o.binder()
	bind.page(sheet)
	o.note(bind.err)
	below := false
	o.note(f.SetSheetProps(sheet, &excelize.SheetPropsOptions{OutlineSummaryRight: &below}))
	o.fitsFormat(f, sheet)
}

// printAreas puts the list with its status, and then each group, on a page of its
// own: all columns side by side would be too small to read. The planner's own
// figures are not printed.
func (l *layout) printAreas(sheet string) string {
	_, last := l.span()
	area := func(from, to string) string {
		return quoteSheet(sheet) + "!$" + from + "$1:$" + to + "$" + itoa(last)
	}
	areas := []string{area("A", l.letters[l.at["fits"]])}
	for _, ends := range [][2]string{{"mark", "assumed"}, {"price", "rework_min"}, {"filler", "gas_l"}, {"wfs_m_min", "inductance"}, {"worst", "checks"}} {
		areas = append(areas, area(l.letters[l.at[ends[0]]], l.letters[l.at[ends[1]]]))
	}
	return strings.Join(areas, ",")
}

// printTitles repeats the marks and the header on every page.
func (l *layout) printTitles(header int) string {
	if header == 0 {
		return ""
	}
	ref := quoteSheet(l.sheet) + "!$"
	return ref + "A:$" + pack.ColumnName(max(freezeCols(l.job), 1)) + "," + ref + itoa(header) + ":$" + itoa(header)
}

// userWidths are widths for the user's columns in a fresh workbook, from what
// stands in them.
func userWidths(l *layout) []float64 {
	widths := make([]float64, min(widest(l.from), mostCopied))
	for i := range widths {
		widths[i] = 7
	}
	if l.from == nil {
		return widths
	}
	for _, r := range l.from.Rows {
		for _, c := range r.Cells {
			if c.Col > len(widths) {
				break
			}
			n := float64(len([]rune(c.Text))) + 2
			if r.Number <= l.job.List.HeaderRows[1] {
				n = min(n, 14) // headers wrap, titles run over
			}
			widths[c.Col-1] = min(max(widths[c.Col-1], n), 40)
		}
	}
	return widths
}
