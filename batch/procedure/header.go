package procedure

import (
	"slices"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/tables"
)

// headerDepth is how many rows with something in them may stand above a header.
const headerDepth = 40

// sheetNames are the sheets that are read as procedures whatever they hold.
var sheetNames = []string{"procedures", "procedure", "welding procedures", "table of procedures"}

func bearsName(sheet *list.Sheet) bool { return slices.Contains(sheetNames, joint.Fold(sheet.Name)) }

// headers knows the words of a header.
type headers struct {
	keys map[string]string // folded spelling -> key
	ends map[string]string // folded word -> "low" or "high"
}

func newHeaders(set *tables.Set) *headers {
	h := &headers{keys: map[string]string{}, ends: map[string]string{}}
	for _, row := range set.ProcedureHeaders {
		if row.Key == "low" || row.Key == "high" {
			h.ends[joint.Fold(row.Spelling)] = row.Key
		} else {
			h.keys[joint.Fold(row.Spelling)] = row.Key
		}
	}
	return h
}

// ranged are the keys that have two ends.
var ranged = []string{"thickness", "current", "voltage", "travel", "heat", "energy"}

// read returns what a header text names and the unit in it; an empty key where it
// is not known.
func (h *headers) read(text string) (key, unit string) {
	text = strings.ReplaceAll(text, `"`, " in")
	words := strings.Fields(joint.Fold(text))
	if key, unit = h.plain(words, ""); key != "" {
		return key, unit
	}
	for i, w := range words {
		end, ok := h.ends[w]
		if !ok {
			continue
		}
		rest := append(slices.Clone(words[:i]), words[i+1:]...)
		if key, unit = h.plain(rest, end); key != "" {
			return key, unit
		}
	}
	if i := strings.IndexAny(text, "(["); i > 0 { // a text in brackets explains the one before
		return h.read(text[:i])
	}
	return "", ""
}

// plain reads words without an end among them: a spelling, with or without a unit
// of its quantity behind it.
func (h *headers) plain(words []string, end string) (key, unit string) {
	if whole := strings.Join(words, " "); h.keys[whole] == "" { // a unit that only one quantity has names it
		for _, key := range []string{"travel", "heat"} {
			if isUnit(key, whole) && end == "" {
				return key, whole
			} else if isUnit(key, whole) {
				return key + "_" + end, whole
			}
		}
	}
	for n := 0; n <= 2 && n < len(words); n++ {
		key := h.keys[strings.Join(words[:len(words)-n], " ")]
		unit := strings.Join(words[len(words)-n:], " ")
		switch {
		case key == "":
			continue
		case key == "filler" && n > 0 && isUnit("dia", unit):
			key = "dia"
		case n > 0 && !isUnit(key, unit):
			continue
		}
		switch {
		case end == "":
			return key, unit
		case slices.Contains(ranged, key):
			return key + "_" + end, unit
		case key == "preheat" && end == "low":
			return key, unit
		}
	}
	return "", ""
}

// col is a column that is read.
type col struct {
	at     int
	header string
	unit   string // folded; empty where neither the header nor a row of units has one
}

// spot is a header: its last row's index, and the columns it names.
type spot struct {
	first, last int
	cols        map[string]col
	twice       []col // columns whose key another column has already
	unknown     []col // columns that are not understood
}

// findSheet returns the sheet of procedures and its header: the sheet of that
// name, or the first whose header can be nothing else. The header is nil where
// there is none.
func (h *headers) findSheet(src *list.Source, terms func() *joint.Terms, always bool) (sheet *list.Sheet, at *spot, named bool) {
	for i := range src.Sheets {
		if s := &src.Sheets[i]; always || bearsName(s) {
			return s, h.find(s), true
		}
	}
	for i := range src.Sheets {
		s := &src.Sheets[i]
		if at := h.find(s); at != nil && at.surely() && !s.Hidden && !terms().IsList(s) {
			return s, at, false
		}
	}
	return nil, nil, false
}

// surely tells whether a header under any name can only be one of procedures.
func (s *spot) surely() bool {
	ranges := 0
	for key := range s.cols {
		if base, _, _ := strings.Cut(key, "_"); base != "thickness" && slices.Contains(ranged, base) {
			ranges++
		}
	}
	_, number := s.cols["number"]
	return number && ranges > 0 && len(s.cols) >= 4
}

// find returns the row, or pair of rows, that names most columns; nil where none
// names a number and two more.
func (h *headers) find(sheet *list.Sheet) *spot {
	var best *spot
	take := func(s *spot) {
		if _, ok := s.cols["number"]; ok && len(s.cols) >= 3 && (best == nil || len(s.cols) > len(best.cols)) {
			best = s
		}
	}
	for i, row := range sheet.Rows {
		if i >= headerDepth {
			break
		}
		take(h.spotOf(i, i, texts(row)))
		if i+1 < len(sheet.Rows) && sheet.Rows[i+1].Number == row.Number+1 && h.hasEnds(sheet.Rows[i+1]) {
			take(h.spotOf(i, i+1, h.stack(sheet, row, sheet.Rows[i+1])))
		}
	}
	return best
}

func (h *headers) spotOf(first, last int, texts []list.Cell) *spot {
	s := &spot{first: first, last: last, cols: map[string]col{}}
	for _, c := range texts {
		key, unit := h.read(c.Text)
		if key == "" {
			s.unknown = append(s.unknown, col{at: c.Col, header: c.Text})
			continue
		}
		here := col{at: c.Col, header: c.Text, unit: unit}
		if _, taken := s.cols[key]; taken {
			s.twice = append(s.twice, here)
			continue
		}
		s.cols[key] = here
	}
	return s
}

func texts(row list.Row) []list.Cell {
	var out []list.Cell
	for _, c := range row.Cells {
		if c.Kind == list.Text {
			c.Text = strings.TrimSpace(c.Text)
			out = append(out, c)
		}
	}
	return out
}

// hasEnds tells whether a row names ends of ranges and nothing more in a cell.
func (h *headers) hasEnds(row list.Row) bool {
	for _, c := range texts(row) {
		if h.ends[joint.Fold(c.Text)] != "" {
			return true
		}
	}
	return false
}

// stack reads two header lines as one: a text above several columns, merged or
// followed by blanks, stands above each of them that names an end.
func (h *headers) stack(sheet *list.Sheet, top, bottom list.Row) []list.Cell {
	above, at := map[int]string{}, 0
	for _, c := range texts(top) {
		above[c.Col] = c.Text
	}
	var out []list.Cell
	last := 0
	for _, row := range []list.Row{top, bottom} {
		for _, c := range row.Cells {
			last = max(last, c.Col)
		}
	}
	for n := 1; n <= last; n++ {
		text := above[n]
		if text != "" {
			at = n
		}
		below := ""
		if c := bottom.At(n); c.Kind == list.Text {
			below = strings.TrimSpace(c.Text)
		}
		if text == "" && at > 0 && h.ends[joint.Fold(below)] != "" {
			text = above[at]
		}
		if text = strings.TrimSpace(text + " " + below); text != "" {
			out = append(out, list.Cell{Col: n, Kind: list.Text, Text: text})
		}
	}
	return out
}
