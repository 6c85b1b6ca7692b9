package joint

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

// reader carries what is known about the list while its rows are read.
type reader struct {
	*spellings
	opt   Options
	file  string
	sheet string
	cols  []column
	style measure.Style
	list  *List
	each  func(*reader, list.Row) // reads a row that is an entry of the list

	group      string // the assembly that a group row named
	drawing    string // from the title rows
	rev        string
	bareUsed   map[string]bool // columns in which a bare number took the list's unit
	sizesTaken cells           // bare sizes that took the shop's meaning
	marks      map[string]int  // folded mark -> first row
	near       map[string]int  // the same as a hasty eye sees it -> first row
	heads      heads
	row        row // the one being read; its memory serves for all
	details    details
	remarks    map[string]remark
	skeletons  map[string]bool // how the list's marks are built
	sum        running         // what a total would show
	fractions  cells           // inch fractions without a unit
	absent     map[string]bool // columns whose absence was told
	totalled   int             // rows with a quantity beside a total length
}

// heads are the texts of the header, folded once.
type heads map[string]string

func (h heads) of(text string) string {
	known, ok := h[text]
	if !ok {
		known = fold(text)
		h[text] = known
	}
	return known
}

// bare returns the unit of a bare number in a column, and notes when neither the
// column nor the cell says it.
func (r *reader) bare(c *column) measure.Unit {
	if c.unit != measure.None && c.unit != measure.Deg {
		return c.unit
	}
	if r.opt.Inches {
		return measure.Inch
	}
	return measure.None
}

func (r *reader) place(row int, c *column) finding.Place {
	p := finding.Place{File: r.file, Sheet: r.sheet, Row: row}
	if c != nil {
		p.Col, p.Header = c.Col, c.Header
	}
	return p
}

// row is one row being read; its problems are gathered, and errors reject it.
type row struct {
	*reader
	list.Row
	joint    Joint
	partial  bool   // its kind says that it is a groove of partial penetration
	detail   Detail // the joint's, while it is read
	problems []finding.Problem
	bad      bool

	sizeStitch string // a stitch note that stood behind the size
	sizeInch   bool   // the size before it is in inches
}

func (w *row) say(level finding.Level, c *column, code, read, text, want, hint string) {
	if used, lost := w.lostWord(code, read); lost {
		text, want, hint = used.text, used.want, used.hint
	}
	w.problems = append(w.problems, finding.Problem{Place: w.place(w.Number, c), Level: level, Code: code,
		Text: text, Read: shorten(read, 60), Want: want, Hint: hint})
	w.bad = w.bad || level == finding.Error
}

func (w *row) assume(key, value, why, basis string) {
	w.joint.Assumed = append(w.joint.Assumed, Assumption{Key: key, Value: value, Why: why, Basis: basis})
}

// column returns the first column of a key, nil if the list has none.
func (r *reader) column(key string) *column {
	for i := range r.cols {
		if r.cols[i].Key == key {
			return &r.cols[i]
		}
	}
	return nil
}

// cell returns the cell of a key and its column; ok is false where it is blank.
func (w *row) cell(key string) (list.Cell, *column, bool) {
	c := w.column(key)
	if c == nil {
		return list.Cell{}, nil, false
	}
	cell := w.At(c.Col)
	return cell, c, filled(cell)
}

// filled tells whether a cell says anything: a dash is a blank.
func filled(c list.Cell) bool {
	if c.Kind == list.Blank {
		return false
	}
	switch strings.TrimSpace(c.Text) {
	case "-", "–", "—", "--", "---", "./.", "":
		return c.Kind != list.Text
	}
	return true
}

// text returns a key's text, trimmed; empty if blank. A cell that holds a
// spreadsheet's error is told and read as blank.
func (w *row) text(key string) string {
	cell, c, ok := w.cell(key)
	if !ok {
		return ""
	}
	if cell.Kind == list.CellError || cell.Kind == list.NoValue {
		w.unreadable(cell, c, "text")
		return ""
	}
	return strings.TrimSpace(cell.Text)
}

// unreadable tells about a cell that cannot hold a figure, and reports whether it was one.
func (w *row) unreadable(cell list.Cell, c *column, want string) bool {
	switch {
	case cell.Kind == list.CellError || cell.Kind == list.Text && errorText(cell.Text):
		w.say(finding.Error, c, "cell-error", cell.Text, "the cell holds an error of the spreadsheet", want, "mend the formula or write the value")
	case cell.Kind == list.NoValue:
		w.say(finding.Error, c, "no-value", cell.Text, "the cell holds a formula without a stored result", want, "open the list in a spreadsheet program and save it, so that the result is stored")
	case cell.Kind == list.Date || cell.Kind == list.Text && measure.IsDate(cell.Text):
		w.say(finding.Error, c, "date", cell.Text, "the cell holds a date: spreadsheets turn fractions such as 1/4 into dates", want, "format the cell as text and write the value again")
	case cell.Kind == list.Bool:
		w.say(finding.Error, c, "not-a-number", cell.Text, "the cell holds TRUE or FALSE", want, "write the value")
	case cell.Percent:
		w.say(finding.Error, c, "percent", cell.Text, "the cell is shown as a percentage", want, "write the figure that the percentage stands for, with its unit")
	default:
		return false
	}
	return true
}

// errorText tells whether a text is an error value that a spreadsheet wrote.
func errorText(s string) bool {
	switch strings.ToUpper(strings.TrimSpace(s)) {
	case "#REF!", "#N/A", "#VALUE!", "#DIV/0!", "#NAME?", "#NUM!", "#NULL!", "#SPILL!", "#CALC!", "#NV", "#WERT!", "#BEZUG!", "#ARG!", "#ADR!":
		return true
	}
	return false
}

// colOf returns the column number of a key, 0 if the list has none.
func (r *reader) colOf(key string) int {
	if c := r.column(key); c != nil {
		return c.Col
	}
	return 0
}

// fault turns a reading fault into a problem of the row.
func (w *row) fault(c *column, code, read string, f *measure.Fault, want string) {
	hint := f.Hint
	if hint == "" {
		hint = "write such a value in the cell"
	}
	w.say(finding.Error, c, code, read, f.Text, want, hint)
}

// millimetres reads a length column; ok is false where it is blank or wrong.
func (w *row) millimetres(key, want string) (mm float64, ok bool) {
	cell, c, filled := w.cell(key)
	if !filled || w.unreadable(cell, c, want) {
		return 0, false
	}
	if cell.Kind == list.Number {
		return w.typed(cell, c), true
	}
	unit := w.bare(c)
	text := withoutOwnName(key, cell.Text)
	q, _ := measure.Parse(text, w.style)
	if q.Unit == measure.None {
		w.noteBare(c, unit)
	}
	mm, bad := millimetres(text, unit, w.style)
	if bad != nil {
		w.fault(c, "bad-number", cell.Text, bad, want)
		return 0, false
	}
	return mm, true
}

// typed returns a typed number in millimetres. A unit in the number's own format,
// such as 0" mm", stands in the cell and wins over the column.
func (r *reader) typed(cell list.Cell, c *column) float64 {
	if shown := strings.TrimLeft(cell.Text, "-0123456789.,"); shown != "" && shown != cell.Text {
		if u, ok := measure.UnitOf(shown); ok && u != measure.Deg {
			return cell.Value * u.Millimetres()
		}
	}
	unit := r.bare(c)
	r.noteBare(c, unit)
	if unit == measure.None {
		unit = measure.MM
	}
	return cell.Value * unit.Millimetres()
}

// missing tells once that the list has no column of a kind that every row needs,
// and rejects the row.
func (w *row) missing(key, what string) {
	w.bad = true
	if w.absent[key] {
		return
	}
	w.absent[key] = true
	var unknown []string
	for i := range w.cols {
		if w.cols[i].Key == "" && w.cols[i].Header != "" {
			unknown = append(unknown, w.cols[i].Header)
		}
	}
	hint := "add a column headed " + key
	if len(unknown) > 0 {
		hint += "; these headers were not understood: " + shorten(strings.Join(unknown, ", "), 120)
	}
	w.problems = append(w.problems, finding.Problem{Place: w.place(w.list.HeaderRows[1], nil), Level: finding.Error, Code: "no-column",
		Text: "the list has no column for " + what + ", so no row can be worked that needs it", Want: "a column headed " + key, Hint: hint})
}

func (r *reader) noteBare(c *column, unit measure.Unit) {
	if c.unit == measure.None && !foreignUnit.MatchString(c.Header) {
		r.bareUsed[c.Header] = true
	}
}

func shorten(s string, n int) string {
	if runes := []rune(s); len(runes) > n {
		return string(runes[:n-1]) + "…"
	}
	return s
}

// beyond says on which side of what is ordinary a figure lies.
func beyond(v, least float64, text, under, over string) string {
	if v < least {
		return text + under + ": "
	}
	return text + over + ": "
}

// readings says a figure as it was read, and as it would be in another unit
// where that would be an ordinary figure.
func readings(mm, low, high float64) string {
	text := trim(mm) + " mm as read"
	for _, other := range []struct {
		times float64
		unit  string
	}{{25.4, "inches"}, {10, "centimetres"}, {1000, "metres"}} {
		if v := mm * other.times; v >= low && v <= high {
			text += "; " + trim(v) + " mm if it was meant in " + other.unit
		}
	}
	return text
}

func trim(v float64) string {
	if math.Abs(v) >= 1e9 {
		return strconv.FormatFloat(v, 'g', 4, 64)
	}
	s := fmt.Sprintf("%.3f", v)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}
