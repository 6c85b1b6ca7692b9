package joint

import (
	"slices"
	"strings"

	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

// fate tells what a row is that may not be a joint; empty for a joint.
func (r *reader) fate(row list.Row, spot headerSpot) RowFate {
	if r.repeats(row, spot) {
		return RepeatRow
	}
	w := list.Row{Cells: row.Cells}
	mark := r.mapped(w, r.dialect.name)
	figures := r.figures(row)
	first := ""
	for _, c := range row.Cells {
		if c.Kind == list.Text && strings.TrimSpace(c.Text) != "" {
			first = c.Text
			break
		}
	}
	_, plainly := r.word("total", mark)
	if (mark == "" || r.sums(mark)) && first != "" && r.anySum(row) && (plainly || !r.looksLikeJoint(row)) {
		return TotalRow
	}
	if figures == 0 {
		switch {
		case mark != "" && r.skeletons[skeleton(mark)]:
			return "" // a mark like the others with nothing beside it is a joint that lacks its figures
		case r.begins("signature", first):
			return TrailingRow
		case r.begins("page", first):
			return RepeatRow
		case len(row.Cells) == 1 && first != "":
			return GroupRow
		case mark == "" && r.onlyWords(row):
			return GroupRow
		}
	}
	if mark == "" && !r.looksLikeJoint(row) && (figures == 0 || r.sum.fits(r, row)) {
		return TotalRow
	}
	return ""
}

func (r *reader) sums(text string) bool { return r.begins("total", text) }

func (r *reader) anySum(row list.Row) bool {
	for _, c := range row.Cells {
		if c.Kind == list.Text && r.sums(c.Text) {
			return true
		}
	}
	return false
}

// mapped returns the text of a key's cell in a row.
func (r *reader) mapped(row list.Row, key string) string {
	if c := r.column(key); c != nil {
		return strings.TrimSpace(row.At(c.Col).Text)
	}
	return ""
}

// figures counts the row's cells under measure columns that say something.
func (r *reader) figures(row list.Row) int {
	n := 0
	for i := range r.cols {
		if slices.Contains(r.dialect.figures, r.cols[i].Key) && filled(row.At(r.cols[i].Col)) {
			n++
		}
	}
	return n
}

// looksLikeJoint tells whether a row without a mark says enough to be one.
func (r *reader) looksLikeJoint(row list.Row) bool {
	n := 0
	for _, key := range r.dialect.looks {
		if c := r.column(key); c != nil && filled(row.At(c.Col)) {
			n++
		}
	}
	return n >= 2 || n == 1 && r.mapped(row, "length") != ""
}

func (r *reader) onlyWords(row list.Row) bool {
	for _, c := range row.Cells {
		if c.Kind != list.Text {
			return false
		}
		if _, bad := measure.Parse(c.Text, r.style); bad == nil {
			return false
		}
	}
	return true
}

// repeats tells whether a row is the header again, or a line of column numbers.
func (r *reader) repeats(row list.Row, spot headerSpot) bool {
	same, counting := 0, 0
	for i, c := range row.Cells {
		if c.Kind == list.Text && fold(c.Text) == r.heads.of(spot.texts[c.Col]) {
			same++
		}
		if counting < i {
			continue
		}
		if v, bad := measure.Number(c.Text, measure.Style{}); bad == nil && int(v) == i+1 {
			counting++
		}
	}
	n := len(row.Cells)
	return n > 1 && same*2 > n || n >= 4 && n >= len(r.cols)-1 && counting == n
}

// unitsLine reads a row under the header that only names units, and gives them to
// the columns that have none.
func (r *reader) unitsLine(row list.Row) bool {
	found := 0
	for _, c := range row.Cells {
		if c.Kind != list.Text {
			return false
		}
		text := strings.Trim(strings.TrimSpace(c.Text), "()[]")
		if _, ok := measure.UnitOf(text); ok {
			found++
		} else if !unitLike(text) {
			return false
		}
	}
	if found == 0 {
		return false
	}
	for i := range r.cols {
		c := &r.cols[i]
		cell := row.At(c.Col)
		if u, ok := measure.UnitOf(strings.Trim(strings.TrimSpace(cell.Text), "()[]")); ok {
			c.unit, c.Unit = u, string(u)
		}
	}
	return true
}

// unitLike are the words of a units row that are no length: pieces, a dash.
func unitLike(text string) bool {
	switch fold(text) {
	case "", "pcs", "pc", "st", "stk", "szt", "шt", "ea", "no", "kg", "text", "n", "pz", "ud", "uds", "ks", "id", "c", "a", "v", "min", "h", "eur":
		return true
	}
	return false
}
