package workbook

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/parts"
)

// cutRow is one worked row of the cut list with everything a cell may ask for.
type cutRow struct {
	c   *cut
	p   *parts.Part
	r   *parts.Result
	src *list.Row // the user's cells; nil if they are not at hand
}

// row returns the i-th part.
func (c *cut) row(i int) *cutRow {
	b := c.l.job.Parts
	p := &b.List.Parts[i]
	return &cutRow{c: c, p: p, r: &b.Results[i], src: rowAt(c.l.cut, p.Place.Row)}
}

// status says in words what became of the row.
func (r *cutRow) status() string {
	said := "worked"
	if r.r.Mass <= 0 {
		said = "no mass"
	}
	for _, level := range []finding.Level{finding.Error, finding.Warning} {
		n := 0
		for _, c := range r.r.Checks {
			if c.Level == level {
				n++
			}
		}
		if n > 0 {
			said += ", " + plural(n, string(level))
		}
	}
	return said
}

// worst returns the gravest level among the checks of the part.
func (r *cutRow) worst() finding.Level {
	for _, level := range []finding.Level{finding.Error, finding.Warning} {
		if slices.ContainsFunc(r.r.Checks, func(c finding.Check) bool { return c.Level == level }) {
			return level
		}
	}
	return finding.Note
}

// link is the template that reads a number from the user's own cell, where that
// cell is the number in some unit; empty where it is not.
func (r *cutRow) link(key string, want float64) string {
	col, factor := ownNumber(&r.c.l.job.Parts.List, r.src, key, want)
	return times(r.c.l.userCell(col), col, factor)
}

// times is a cell in another unit; empty where there is none.
func times(ref string, col int, factor float64) string {
	switch {
	case col == 0:
		return ""
	case factor == 1:
		return ref
	}
	return ref + "*" + exact(factor)
}

// ownNumber finds the user's own cell of a number in a row of the cut list, and by
// what it is multiplied to be that number; 0 where the cell is another.
func ownNumber(l *parts.List, r *list.Row, key string, want float64) (col int, factor float64) {
	if r == nil || want == 0 {
		return 0, 0
	}
	for _, c := range l.Columns {
		cell := r.At(c.Col)
		if c.Key != key || cell.Kind != list.Number || cell.Percent {
			continue
		}
		for _, f := range factors {
			if (f == 1 || key == "length") && agree(cell.Value*f, want) {
				return c.Col, f
			}
		}
	}
	return 0, 0
}

// cutWordKeys are the inputs that say what a part is: it is worked anew where one of
// them is another.
var cutWordKeys = []string{"section", "width", "thickness", "material", "standard"}

// said lists the user's cells that say what the part is.
func (r *cutRow) said() []word {
	var out []word
	if r.src == nil {
		return nil
	}
	for _, c := range r.c.l.job.Parts.List.Columns {
		if !slices.Contains(cutWordKeys, c.Key) {
			continue
		}
		cell := r.src.At(c.Col)
		switch {
		case cell.Kind == list.Number && !cell.Percent:
			out = append(out, word{col: c.Col, value: cell.Value, number: true})
		case cell.Kind == list.Text || cell.Kind == list.Blank:
			out = append(out, word{col: c.Col, text: cell.Text})
		}
	}
	return out
}

// saidThen is what those cells held when the list was read, in one line.
func (r *cutRow) saidThen() string {
	var line []string
	for _, w := range r.said() {
		if w.number {
			w.text = strconv.FormatFloat(math.Round(w.value*millionths), 'f', 0, 64)
		}
		line = append(line, w.text)
	}
	return strings.Join(line, "|")
}

// fits is the template that compares the row with what was worked out.
func (r *cutRow) fits() string {
	text := "ABS([length_mm]-[planned_length_mm])<0.001,[qty]=[planned_qty],"
	var now []string
	for _, w := range r.said() {
		ref := r.c.l.userCell(w.col)
		if w.number {
			ref = "ROUND(" + ref + "*1000000,0)"
		}
		now = append(now, ref)
	}
	if len(now) > 0 && r.saidThen() != "" {
		text += "EXACT(" + strings.Join(now, `&"|"&`) + ",[cut_words]),"
	}
	return `IFERROR(IF(AND(` + text + `TRUE),"fits","run again"),"run again")`
}

// fromJoints adds up a column of the joints over those that name the part: the share
// of this row among all rows of the part. Empty where the sheet has no such column,
// or where that is not the figure that was worked out.
func (r *cutRow) fromJoints(key string, of func(*row) float64, want float64, decimals int) string {
	l := r.c.l
	if !r.c.joints || want <= 0 {
		return ""
	}
	sum, at := 0.0, make([]int, 0, len(r.r.Joints))
	for _, i := range r.r.Joints {
		sum += of(l.row(i))
		at = append(at, l.job.List.Joints[i].Place.Row)
	}
	col := "$" + l.letters[l.at[key]]
	cells, ok := spans(l.sheetRef()+col, col, at)
	if !ok {
		return ""
	}
	cells = l.cols[l.at[key]].unit.metricOf("SUM("+cells+")", l.us)
	return r.shared(cells, sum, want, decimals)
}

// mostFormula is what a formula may hold, well below the 8,192 characters of the format.
const mostFormula = 6000

// shared is the row's share of a sum over all rows of its part.
func (r *cutRow) shared(cells string, sum, want float64, decimals int) string {
	if r.r.Pieces > r.p.Qty {
		cells += "*" + itoa(r.p.Qty) + "/" + itoa(r.r.Pieces)
		sum *= float64(r.p.Qty) / float64(r.r.Pieces)
	}
	step := math.Pow(10, float64(decimals))
	if len(cells) > mostFormula {
		return ""
	}
	return agreed(math.Round(sum*step)/step, want, rounded(cells, decimals))
}

// spans lists cells of one column, those in rows that follow one another as a range.
// A function takes 255 of them.
func spans(first, col string, rows []int) (text string, ok bool) {
	slices.Sort(rows)
	var out []string
	for i := 0; i < len(rows); {
		n := i
		for n+1 < len(rows) && rows[n+1] == rows[n]+1 {
			n++
		}
		text := first + "$" + itoa(rows[i])
		if n > i {
			text += ":" + col + "$" + itoa(rows[n])
		}
		out = append(out, text)
		i = n + 1
	}
	return strings.Join(out, ","), len(out) <= 250
}

// bevelled adds up the edges to be bevelled from quantity and length of their joints.
func (r *cutRow) bevelled() string {
	l := r.c.l
	if !r.c.joints || r.r.Bevel <= 0 || len(r.r.Edges) > 60 {
		return ""
	}
	sum, terms := 0.0, []string(nil)
	for _, e := range r.r.Edges {
		i, ok := r.c.jointAt[e.Row]
		if !ok {
			return ""
		}
		j := l.row(i)
		sum += float64(max(j.j.Qty, 1)) * float64(lengthUsed(j)) / 1000
		cell := func(key string) string {
			return l.cols[l.at[key]].unit.metricOf(l.sheetRef()+"$"+l.letters[l.at[key]]+"$"+itoa(e.Row), l.us)
		}
		terms = append(terms, cell("qty")+"*"+cell("length_mm"))
	}
	return r.shared("("+strings.Join(terms, "+")+")/1000", sum, float64(r.r.Bevel), 4)
}

// cell is a cell of our columns beside the cut list, as other sheets see it.
func (c *cut) cell(key string, row int) string {
	return quoteSheet(c.sheet) + "!$" + c.letters[c.at[key]] + "$" + itoa(row)
}
