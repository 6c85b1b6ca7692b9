package workbook

import (
	"sort"
	"strconv"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// layout is where everything of one list stands in its workbook.
type layout struct {
	job     *price.Job
	us      bool
	names   price.Names // of fillers and positions, in the codes asked for
	live    bool        // formulas are written
	sheet   string      // the sheet with the joints
	from    *list.Sheet
	cut     *list.Sheet // of the cut list, where it stands in the same workbook
	inputs  map[string][]joint.Column
	numeric map[int]bool // columns of the user's that hold numbers
	book    *look.Book

	// A text file has no typed numbers: those that read as one are written as one.
	textNumbers, decimalComma bool

	firstRow, lastRow int // of the list; see span

	cols    []column
	first   int // our first column on the sheet of joints
	letters []string
	at      map[string]int // key -> index in cols

	marks     []string              // of the joints
	rateNames map[string]string     // rate -> defined name
	decisive  []planCell            // columns that decide a plan, from the left
	fits      map[fitPattern]string // the comparison by its pattern
	styles    map[styleKey]int

	checkTexts map[checkList]string // see row.checkText
}

type styleKey struct {
	role   look.Role
	format string
}

func newLayout(job *price.Job, opt Options, from *list.Sheet, sheet string) *layout {
	l := &layout{
		job: job, us: opt.US, names: job.Names(), live: !opt.ValuesOnly, sheet: sheet, from: from,
		inputs: map[string][]joint.Column{}, at: map[string]int{},
		styles: map[styleKey]int{}, fits: map[fitPattern]string{},
		checkTexts: map[checkList]string{},
	}
	for _, c := range job.List.Columns {
		if c.Key != "" {
			l.inputs[c.Key] = append(l.inputs[c.Key], c)
		}
	}
	if l.marks = opt.marks; l.marks == nil && job.Parts != nil {
		for i := range job.List.Joints {
			l.marks = append(l.marks, job.List.Joints[i].Mark)
		}
	}
	l.numeric = map[int]bool{}
	for _, key := range numericKeys {
		for _, c := range l.inputs[key] {
			l.numeric[c.Col] = true
		}
	}
	l.decisive = l.planCells()
	l.cols = columnsOf(l)
	for i := range l.cols {
		c := &l.cols[i]
		c.width = look.HeadWidth(c.title(l.us), c.width)
		l.at[c.key] = i
	}
	return l
}

// called is how a section is named in the units that people see.
func (l *layout) called(designation string) string {
	return parts.Called(designation, l.us)
}

// aws tells whether American names were asked for.
func (l *layout) aws() bool { return l.job != nil && l.job.Opts.Codes == "aws" }

// place sets our columns beside the user's.
func (l *layout) place(first int) {
	l.first = first
	l.letters = make([]string, len(l.cols))
	for i := range l.cols {
		l.letters[i] = pack.ColumnName(first + i)
	}
}

// userCell is the template of the user's own cell of a column, in the same row.
func (l *layout) userCell(col int) string { return "$" + pack.ColumnName(col) + "§" }

// style returns the number of a style, remembered.
func (l *layout) style(role look.Role, format string) int {
	key := styleKey{role, format}
	id, ok := l.styles[key]
	if !ok {
		id = l.book.Style(role, format)
		l.styles[key] = id
	}
	return id
}

// rowAt finds the user's row of a number on a sheet; nil where it has none.
func rowAt(s *list.Sheet, number int) *list.Row {
	if s == nil {
		return nil
	}
	rows := s.Rows
	i := sort.Search(len(rows), func(i int) bool { return rows[i].Number >= number })
	if i < len(rows) && rows[i].Number == number {
		return &rows[i]
	}
	return nil
}

// number tells whether a cell of the user's is, or in a fresh workbook will be, a
// number. Marks and other words stay text for ever: 007 is not 7.
func (l *layout) number(row int, c list.Cell) (float64, bool) {
	switch {
	case c.Kind == list.Number && !c.Percent:
		return c.Value, true
	case c.Kind == list.Text && l.textNumbers && row > l.job.List.HeaderRows[1] && l.numeric[c.Col]:
		return plainNumber(c.Text, l.decimalComma)
	}
	return 0, false
}

// plainNumber reads digits with at most one decimal mark, and nothing else.
func plainNumber(text string, comma bool) (float64, bool) {
	text = strings.TrimSpace(text)
	if comma {
		if strings.Contains(text, ".") {
			return 0, false
		}
		text = strings.Replace(text, ",", ".", 1)
	}
	digits := strings.Replace(text, ".", "", 1)
	if digits == "" || strings.Trim(digits, "0123456789") != "" || len(digits) > 15 {
		return 0, false
	}
	if len(text) > 1 && text[0] == '0' && text[1] != '.' {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}

// numericKeys are the inputs that a bare number can stand for.
var numericKeys = []string{"qty", "length", "sides", "size", "leg", "throat", "t1", "t2", "angle", "gap",
	"root_face", "depth", "radius"}

// rows calls f for every joint with its plan, in order. The row holds, without the
// user's cells, until f returns.
func (l *layout) rows(f func(i int, r *row)) {
	r := row{l: l}
	for i := range l.job.List.Joints {
		if i >= len(l.job.Plans) {
			return
		}
		r.j, r.p = &l.job.List.Joints[i], &l.job.Plans[i]
		f(i, &r)
	}
}

func (l *layout) row(i int) *row {
	r := &row{l: l}
	r.take(i)
	return r
}

// take makes a row that of the i-th joint; its memory is used again.
func (r *row) take(i int) {
	l, words := r.l, r.words[:0]
	j := &l.job.List.Joints[i]
	*r = row{l: l, j: j, p: &l.job.Plans[i], src: rowAt(l.from, j.Place.Row), words: words}
}

// templateKey names a compiled formula: the same template is another formula where
// the column is shown in another unit.
type templateKey struct{ unit, template string }

// expand puts a template together: cell gives what stands for [key], rate what
// stands for {key}.
func expand(template string, cell, rate func(key string) string) string {
	var out strings.Builder
	for {
		i := strings.IndexAny(template, "[{")
		if i < 0 {
			out.WriteString(template)
			return out.String()
		}
		out.WriteString(template[:i])
		end := strings.IndexAny(template[i:], "]}") + i
		key := template[i+1 : end]
		if template[i] == '[' {
			out.WriteString(cell(key))
		} else {
			out.WriteString(rate(key))
		}
		template = template[end+1:]
	}
}

// rate returns the name of a rate's cell, or its value where the shop's values
// do not list it.
func (l *layout) rate(key string) string {
	if name, ok := l.rateNames[key]; ok {
		return name
	}
	return "0"
}

// columnRange is the cells of one of our columns over all rows of the list, as
// other sheets see them.
func (l *layout) columnRange(key string) string {
	col := l.letters[l.at[key]]
	from, to := l.span()
	return l.sheetRef() + "$" + col + "$" + itoa(from) + ":$" + col + "$" + itoa(to)
}

// span returns the first and the last row of the list.
func (l *layout) span() (from, to int) {
	if l.lastRow == 0 {
		l.firstRow, l.lastRow = l.measureSpan()
	}
	return l.firstRow, l.lastRow
}

func (l *layout) measureSpan() (from, to int) {
	from = l.job.List.HeaderRows[1] + 1
	to = max(l.job.List.LastRow, from)
	for _, j := range l.job.List.Joints {
		from, to = min(from, j.Place.Row), max(to, j.Place.Row)
	}
	return max(from, 1), to
}

// sheetRef is the name of the sheet of joints, quoted for a formula.
func (l *layout) sheetRef() string { return quoteSheet(l.sheet) + "!" }

func quoteSheet(name string) string { return "'" + strings.ReplaceAll(name, "'", "''") + "'" }
