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
	"slices"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// Options are what the user asked for about the workbook.
type Options struct {
	US         bool // inches, pounds and inches a minute for people
	ValuesOnly bool // no live formulas

	marks []string // of the joints where they are not in the job; see PrepareCut
}

// Stamped tells whether this tool wrote a workbook, and whether nobody has
// changed it since.
func Stamped(data []byte) (ours, unchanged bool) { return pack.Stamped(data) }

// HasOurs tells whether our columns stand in a workbook, whoever saved it last.
func HasOurs(data []byte) bool {
	_, ok := pack.FindOurs(data, marks...)
	return ok
}

// Book is a workbook that is ready to be written.
type Book struct {
	Problems  []finding.Problem // what making it had to say
	Annotated bool              // it is the user's own; else a fresh one
	write     pack.Writer
	looks     *look.Book
}

// NotAnnotated is the code of the problem that says why a fresh workbook was written.
const NotAnnotated = "not-annotated"

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
	if src, err = unthinned(src, job); err != nil {
		return nil, err
	}
	why := finding.Problem{
		Place: finding.Place{File: src.File, Sheet: job.List.Sheet}, Level: finding.Warning, Code: NotAnnotated,
		Text: "your workbook could not be annotated without risk to what stands in it: " + strange.Why,
		Hint: "the results stand in a new workbook with a copy of your rows; save your list anew as XLSX to have it annotated",
	}
	told := *job
	told.Say(why)
	if b, err = fresh(src, &told, opt); err != nil {
		return nil, err
	}
	b.Problems = append(b.Problems, why)
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

// Thin lets go of the cells of a list that was understood, but for those that the
// formulas beside them read: of 100,000 rows they are a fourth of all that is kept.
// A text file's cells stay, because its workbook has them all.
func Thin(src *list.Source, l *joint.List) {
	if src.Format == list.CSV || len(l.Columns) == 0 {
		return
	}
	keep, own := map[int]bool{}, map[int]bool{}
	for _, c := range l.Columns {
		if slices.Contains(planKeys, c.Key) {
			keep[c.Col], own[c.Col] = true, c.Key == "length" || c.Key == "qty"
		}
	}
	for i := range src.Sheets {
		if s := &src.Sheets[i]; s.Name == l.Sheet {
			s.Thin(keep, own)
		}
	}
}

// unthinned returns a source with all its cells: read again, where they are gone.
func unthinned(src *list.Source, job *price.Job) (*list.Source, error) {
	if s := sheetOf(src, job); s == nil || !s.Thinned {
		return src, nil
	}
	whole, _, err := list.Read(src.File, src.Data)
	return whole, err
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
	l := newLayout(job, opt, sheetOf(src, job), job.List.Sheet)
	l.book = look.NewBook(u.Font())
	l.cut = cutSheetOf(src, job)
	o := newOutput(l, u.SheetNames(), u.DefinedNames())
	var on []*pack.Annotation
	if !isAlone(job) {
		a, err := o.onJoints(u)
		if err != nil {
			return nil, err
		}
		on = append(on, a)
	}
	a, problem, err := o.onCut(u, isAlone(job))
	if err != nil {
		return nil, err
	}
	if a != nil {
		on = append(on, a)
	}
	donor, sheets, err := o.donor("")
	if err != nil {
		return nil, err
	}
	write, err := pack.Annotate(u, on, donor, sheets, o.caches)
	b := &Book{Problems: notes(src, u, on), Annotated: true, write: write, looks: l.book}
	if problem != nil {
		b.Problems = append(b.Problems, *problem)
	}
	return b, err
}

// onJoints makes the annotation of the list of joints.
func (o *output) onJoints(u *pack.User) (*pack.Annotation, error) {
	l := o.l
	leaf, err := u.Leaf(l.job.List.Sheet)
	if err != nil {
		return nil, err
	}
	shape := leaf.Shape()
	first := max(shape.LastCol, l.job.List.LastCol) + 2
	if first+len(l.cols) > pack.MaxCol {
		return nil, &pack.Strange{Why: "no columns are left to the right of the list"}
	}
	l.place(first)
	h := headingOf(l.job)
	header, labels := h.rows(shape)
	js := newJoints(l, header, labels)
	from, last := l.span()
	return &pack.Annotation{Leaf: leaf, Mark: jointsMark, First: first, Columns: js.columns(), Last: last, Draw: js.draw, Extra: labels, Header: header,
		FreezeRows: h.freezeRows(), FreezeCols: h.freezeCols(), Rules: fitsRule(l, l.letters[l.at["fits"]], from, last),
		PrintArea: l.printAreas(l.sheet, h.top(l.from, header, labels)), PrintTitle: printTitles(l.sheet, header, h.freezeCols())}, nil
}

// notes says what an annotation does to a file that a user might not expect.
func notes(src *list.Source, u *pack.User, on []*pack.Annotation) []finding.Problem {
	place := finding.Place{File: src.File}
	var out []finding.Problem
	if u.Signed() {
		out = append(out, finding.Problem{Place: place, Level: finding.Note, Code: "signature",
			Text: "the workbook carries a digital signature, which does not hold for the annotated copy",
			Hint: "your own file keeps its signature; sign the copy anew if that is wanted"})
	}
	for _, a := range on {
		if a.Leaf.Shape().Guarded {
			out = append(out, finding.Problem{Place: place, Level: finding.Note, Code: "protected",
				Text: "the sheet is protected, and so are our cells on it",
				Hint: "take the protection off in the annotated copy to change a figure there"})
			break
		}
	}
	return out
}
