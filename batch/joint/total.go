package joint

import (
	"math"
	"strings"
	"unicode"

	"seamtally/batch/list"
)

// running keeps the sums that a total row without a word would show: of lengths,
// of lengths times quantity and of quantities, since the last total and in all.
type running struct {
	since, all [3]float64
}

// add counts a row that is no total.
func (s *running) add(r *reader, row list.Row) {
	length, qty := r.plainFigure(row, "length"), r.plainFigure(row, "qty")
	n := qty
	if n == 0 {
		n = 1
	}
	for i, v := range [3]float64{length, length * n, qty} {
		s.since[i] += v
		s.all[i] += v
	}
}

// close begins anew after a total.
func (s *running) close() { s.since = [3]float64{} }

// fits tells whether a row without a mark is a total though no word says so: its
// length and quantity are formulas, or what the rows above add up to. Any other
// row with figures is a joint that lacks its mark.
func (s *running) fits(r *reader, row list.Row) bool {
	length, qty := r.plainFigure(row, "length"), r.plainFigure(row, "qty")
	if length == 0 && qty == 0 || r.mapped(row, "stitch") != "" {
		return false
	}
	formulas := true
	for _, key := range []string{"length", "qty"} {
		if c := row.At(r.colOf(key)); filled(c) {
			formulas = formulas && c.Formula
		}
	}
	if formulas {
		return true
	}
	for _, sums := range [][3]float64{s.since, s.all} {
		lengthFits := length == 0 || same(length, sums[0]) || same(length, sums[1])
		if lengthFits && (qty == 0 || same(qty, sums[2])) {
			return true
		}
	}
	return false
}

func same(a, b float64) bool { return a > 0 && math.Abs(a-b) <= 0.002*a }

// plainFigure returns the number in a row's column, 0 if it is blank or no number.
func (r *reader) plainFigure(row list.Row, key string) float64 {
	c := r.column(key)
	if c == nil {
		return 0
	}
	cell := row.At(c.Col)
	if cell.Kind == list.Number {
		return cell.Value
	}
	mm, bad := lengthOf(cell.Text, "", r.style)
	if bad != nil || cell.Kind != list.Text {
		return 0
	}
	return mm
}

// skeleton is a mark with every run of digits as one 9: "W-07" and "W-12" are alike.
func skeleton(mark string) string {
	var b strings.Builder
	digits := false
	for _, r := range fold(mark) {
		if unicode.IsDigit(r) {
			if !digits {
				b.WriteByte('9')
			}
			digits = true
			continue
		}
		digits = false
		b.WriteRune(r)
	}
	if !strings.Contains(b.String(), "9") {
		return ""
	}
	return b.String()
}

// learnMarks notes how the marks of rows with figures are built.
func (r *reader) learnMarks(body []list.Row) {
	r.skeletons = map[string]bool{}
	for _, row := range body {
		if r.figures(row) >= 2 {
			if s := skeleton(r.mapped(row, r.dialect.name)); s != "" {
				r.skeletons[s] = true
			}
		}
	}
}

// fillMerged gives every row of a vertically merged cell the value that stands in
// the first: one assembly, material or thickness for several joints.
func fillMerged(rows []list.Row, merges []list.Merge) []list.Row {
	index := map[int]int{}
	for i, row := range rows {
		index[row.Number] = i
	}
	var out []list.Row
	for _, m := range merges {
		first, ok := index[m.FirstRow]
		if !ok || m.LastRow == m.FirstRow {
			continue
		}
		value := rows[first].At(m.FirstCol)
		if value.Kind == list.Blank {
			continue
		}
		if out == nil {
			out = append(out, rows...)
		}
		for i := first + 1; i < len(out) && out[i].Number <= m.LastRow; i++ {
			out[i].Cells = put(out[i].Cells, value)
		}
	}
	if out == nil {
		return rows
	}
	return out
}

// put returns the cells with one more, in order; a cell that is there stays.
func put(cells []list.Cell, c list.Cell) []list.Cell {
	at := 0
	for at < len(cells) && cells[at].Col < c.Col {
		at++
	}
	if at < len(cells) && cells[at].Col == c.Col {
		return cells
	}
	out := make([]list.Cell, 0, len(cells)+1)
	out = append(out, cells[:at]...)
	out = append(out, c)
	return append(out, cells[at:]...)
}
