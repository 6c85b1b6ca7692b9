// Package workbook turns a priced job into a workbook: the user's own, annotated,
// where the list came as one; a fresh one where it came as text. Results are live
// formulas on the user's cells, the rates and the plan, each with its value
// stored beside it.
//
// The order to read: build.go, columns.go and its neighbours (what stands beside
// the list), layout.go and row.go (where it stands), joints.go (how it is drawn),
// then one file for each sheet of our own. Package look holds styles and grids,
// package pack sets our parts into the user's package.
package workbook

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// Options are what the user asked for about the workbook.
type Options struct {
	US         bool // inches, pounds and inches a minute for people
	ValuesOnly bool // no live formulas
}

// Stamped tells whether this tool wrote a workbook, and whether nobody has
// changed it since.
func Stamped(data []byte) (ours, unchanged bool) { return pack.Stamped(data) }

// Book is a workbook that is ready to be written.
type Book struct {
	Problems  []finding.Problem // what making it had to say
	Annotated bool              // it is the user's own; else a fresh one
	write     pack.Writer
	looks     *look.Book
}

// Prepare makes the workbook of a priced job ready. A workbook that cannot be
// annotated without loss gives a fresh one and a Problem that says why.
func Prepare(src *list.Source, job *price.Job, opt Options) (b *Book, err error) {
	defer guard(&err)
	if src.Format == list.CSV {
		b, err = fresh(src, job, opt)
		return b, err
	}
	b, err = annotate(src, job, opt)
	var strange *pack.Strange
	if !errors.As(err, &strange) {
		return b, err
	}
	if b, err = fresh(src, job, opt); err != nil {
		return nil, err
	}
	b.Problems = append(b.Problems, finding.Problem{
		Place: finding.Place{File: src.File, Sheet: job.List.Sheet}, Level: finding.Warning, Code: "not-annotated",
		Text: "your workbook could not be annotated without risk to what stands in it: " + strange.Why,
		Hint: "the results stand in a new workbook with a copy of your rows; save your list anew as XLSX to have it annotated",
	})
	return b, nil
}

// Write writes the workbook. It never stands in memory whole.
func (b *Book) Write(to io.Writer) (err error) {
	defer guard(&err)
	return errors.Join(b.write(to), b.looks.Err())
}

// guard turns a fault of our own or of a library into an error.
func guard(err *error) {
	if fault := recover(); fault != nil {
		*err = fmt.Errorf("the workbook could not be made: %v\n%s", fault, debug.Stack())
	}
}

// sheetOf finds the sheet of the list in its file.
func sheetOf(src *list.Source, job *price.Job) *list.Sheet {
	for i := range src.Sheets {
		if src.Sheets[i].Name == job.List.Sheet || src.Format == list.CSV {
			return &src.Sheets[i]
		}
	}
	return nil
}

// annotate sets our cells and sheets into the user's own workbook.
func annotate(src *list.Source, job *price.Job, opt Options) (*Book, error) {
	u, err := pack.OpenUser(src.Data)
	if err != nil {
		return nil, err
	}
	leaf, err := u.Leaf(job.List.Sheet)
	if err != nil {
		return nil, err
	}
	l := newLayout(job, opt, sheetOf(src, job), job.List.Sheet)
	shape := leaf.Shape()
	first := max(shape.LastCol, job.List.LastCol) + 2
	if first+len(l.cols) > pack.MaxCol {
		return nil, &pack.Strange{Why: "no columns are left to the right of the list"}
	}
	l.cut = cutSheetOf(src, job)
	l.place(first)
	l.book = look.NewBook(u.Font())
	header, labels := headerRows(job, shape)
	o := newOutput(l, u.SheetNames(), u.DefinedNames())
	js := newJoints(l, header, labels)
	rules := fitsRule(l)
	donor, sheets, err := o.donor("")
	if err != nil {
		return nil, err
	}
	_, last := l.span()
	a := pack.Annotation{Leaf: leaf, First: first, Columns: js.columns(), Last: last, Draw: js.draw, Extra: labels, Header: header,
		FreezeRows: freezeRows(job), FreezeCols: freezeCols(job), Rules: rules,
		PrintArea: l.printAreas(l.sheet), PrintTitle: l.printTitles(header)}
	write, err := pack.Annotate(u, []*pack.Annotation{&a}, donor, sheets, o.caches)
	return &Book{Problems: notes(src, u, leaf), Annotated: true, write: write, looks: l.book}, err
}

// headerRows are the rows of our headers and of the labels over them. The labels
// need a row of their own above the user's header.
func headerRows(job *price.Job, shape pack.Shape) (header, labels int) {
	first, last := job.List.HeaderRows[0], job.List.HeaderRows[1]
	if last == 0 {
		return 0, 0
	}
	above := last - 1
	if above < 1 || (above < first && !shape.HasRow(above) && !(shape.Ordered && shape.Numbered)) {
		return last, 0
	}
	return last, above
}

// mostFrozen is how many rows may stay in sight without leaving too few to scroll.
const mostFrozen = 12

func freezeRows(job *price.Job) int {
	last := max(job.List.HeaderRows[1], job.List.UnitsRow)
	if last > mostFrozen {
		return 0
	}
	return last
}

// freezeCols keeps the column of the marks in sight where it stands at the left.
func freezeCols(job *price.Job) int {
	for _, c := range job.List.Columns {
		if c.Key == "mark" && c.Col <= 3 {
			return c.Col
		}
	}
	return 0
}

// notes says what an annotation does to a file that a user might not expect.
func notes(src *list.Source, u *pack.User, leaf *pack.Leaf) []finding.Problem {
	place := finding.Place{File: src.File}
	var out []finding.Problem
	if u.Signed() {
		out = append(out, finding.Problem{Place: place, Level: finding.Note, Code: "signature",
			Text: "the workbook carries a digital signature, which does not hold for the annotated copy",
			Hint: "your own file keeps its signature; sign the copy anew if that is wanted"})
	}
	if leaf.Shape().Guarded {
		out = append(out, finding.Problem{Place: place, Level: finding.Note, Code: "protected",
			Text: "the sheet is protected, and so are our cells on it",
			Hint: "take the protection off in the annotated copy to change a figure there"})
	}
	return out
}
