package joint

import (
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
	"seamtally/tables"
)

// KinOptions are a kind of list that is read by the machinery of joint lists: what its columns are
// called, which of them make a header and a row, and what its rows are called.
type KinOptions struct {
	Headers  []tables.Header
	Name     string   // key of the column that names the rows
	Core     []string // a header names at least two of these
	Figures  []string // a row with none of these is a title
	Looks    []string // two of these make an entry of a row without a name
	Measures []string // columns that show how the list writes numbers
	Needs    []string // columns that every row needs
	One, All string   // "part", "parts"
	List     string   // "cut list"
	Hint     string   // what to do where no header is found
	Enough   string   // the columns that are enough
	// Fits tells whether a text can be a value of a key, where the key is its own.
	Fits func(key, text string) (fits, known bool)
}

// Kin reads another kind of list.
type Kin struct{ s *spellings }

// NewKin prepares the words of the tables for another kind of list.
func NewKin(o KinOptions, set *tables.Set) *Kin {
	return &Kin{spellingsOf(dialect{
		headers: o.Headers, name: o.Name, core: o.Core, figures: o.Figures, looks: o.Looks, measures: o.Measures, lacks: o.Needs,
		one: o.One, all: o.All, list: o.List, hint: o.Hint, enough: o.Enough, fits: o.Fits,
	}, set)}
}

// Read goes through a list and hands every row that is an entry to each. The List
// has no joints but the places of the entries.
func (k *Kin) Read(src *list.Source, opt Options, each func(*Entry)) (*List, error) {
	return k.s.read(src, opt, func(r *reader, in list.Row) { r.entry(in, each) })
}

// Columns returns how the columns of a sheet would be read, nil where no header is
// found.
func (k *Kin) Columns(sheet *list.Sheet) []Column { return k.s.columnsOf(sheet) }

// Columns returns how the columns of a sheet would be read as a joint list's, nil
// where it has no header of one.
func (t *Terms) Columns(sheet *list.Sheet) []Column { return t.s.columnsOf(sheet) }

func (s *spellings) columnsOf(sheet *list.Sheet) []Column {
	spot, ok := s.findHeader(sheet)
	if !ok {
		return nil
	}
	var out []Column
	for _, c := range s.assign(spot, sheet.Rows[spot.last+1:]) {
		out = append(out, c.Column)
	}
	return out
}

// Fit returns the share of a column's values below the header that could be values
// of a key of a joint list.
func (t *Terms) Fit(sheet *list.Sheet, col int, key string) float64 {
	spot, ok := t.s.findHeader(sheet)
	if !ok {
		return 0
	}
	return t.s.fits(key, values(sheet.Rows[spot.last+1:], col))
}

// Entry is one row of another kind of list while it is read.
type Entry struct{ w *row }

func (r *reader) entry(in list.Row, each func(*Entry)) {
	w := &row{reader: r, Row: in}
	w.joint.Detail, w.joint.Place = &w.detail, r.place(in.Number, nil)
	each(&Entry{w})
	r.list.Problems = append(r.list.Problems, w.problems...)
	if w.bad {
		r.other(in, Rejected)
		return
	}
	r.list.Joints = append(r.list.Joints, w.joint)
}

// Place is the row's place.
func (e *Entry) Place() finding.Place { return e.w.joint.Place }

// Has tells whether the list has a column of a key.
func (e *Entry) Has(key string) bool { return e.w.column(key) != nil }

// Text returns a key's text; empty if blank.
func (e *Entry) Text(key string) string { return e.w.text(key) }

// Name returns the text of the column that names the rows. A date in it is told.
func (e *Entry) Name() string {
	key := e.w.dialect.name
	cell, c, ok := e.w.cell(key)
	if ok && (cell.Kind == list.Date || cell.Kind == list.Text && measure.IsDate(cell.Text)) {
		e.w.say(finding.Error, c, "date", cell.Text, "the mark is a date: spreadsheets turn marks such as 1-2 into dates, and what was written is lost", "the "+e.w.dialect.one+"'s own name or number", "format the cell as text and write the mark again")
	}
	return e.w.text(key)
}

// Group is the text of the title row above, the usual place of an assembly.
func (e *Entry) Group() string { return e.w.group }

// Bad tells whether the row is rejected.
func (e *Entry) Bad() bool { return e.w.bad }

// Say tells about the cell of a key; an error rejects the row.
func (e *Entry) Say(level finding.Level, key, code, read, text, want, hint string) {
	e.w.say(level, e.w.column(key), code, read, text, want, hint)
}

// Missing rejects the row because the list has no column of a key, told once.
func (e *Entry) Missing(key, what string) { e.w.missing(key, what) }

// Quantity returns how many entries alike the row stands for, at least 1.
func (e *Entry) Quantity() int {
	e.w.quantity()
	return e.w.joint.Qty
}

// Length returns a length in millimetres; feet and inches in two columns are
// added. ok is false where it is blank or wrong; what is wrong was told.
func (e *Entry) Length(key, want string) (mm float64, ok bool) {
	w := e.w
	for i := range w.cols {
		c := &w.cols[i]
		cell := w.At(c.Col)
		if c.Key != key || !filled(cell) {
			continue
		}
		if w.unreadable(cell, c, want) {
			return 0, false
		}
		one, good := w.oneLength(cell, c, want)
		if !good {
			return 0, false
		}
		mm, ok = mm+one, true
	}
	return mm, ok
}

// Beyond says on which side of what is ordinary a figure lies.
func Beyond(v, least float64, text, under, over string) string {
	return beyond(v, least, text, under, over)
}

// Unlikely says a length as it was read, and as it would be in another unit.
func Unlikely(mm, low, high float64) string { return readings(mm, low, high) }

// Inches tells whether bare numbers under a key are inches.
func (e *Entry) Inches(key string) bool {
	c := e.w.column(key)
	return c != nil && e.w.bare(c) == measure.Inch
}

// Plain returns a cell's text with plain digits, signs and quotes, and with a point
// as decimal mark where the list writes commas.
func (e *Entry) Plain(key string) string {
	text := measure.Plain(e.w.text(key))
	if e.w.style.Mark == ',' {
		text = strings.ReplaceAll(text, ",", ".")
	}
	return text
}
