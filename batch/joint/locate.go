package joint

import (
	"strings"

	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

// headerSpot is where a sheet's header stands and what it says.
type headerSpot struct {
	first, last int // indexes into the sheet's rows; last > first: two lines
	texts       map[int]string
	score       int
}

// headerDepth is how many rows with something in them may stand above a header.
const headerDepth = 60

// findHeader looks for the row, or pair of rows, that reads most like a header.
func (s *spellings) findHeader(sheet *list.Sheet) (headerSpot, bool) {
	var best headerSpot
	for i := range sheet.Rows {
		if i >= headerDepth {
			break
		}
		one := headerSpot{first: i, last: i, texts: texts(sheet.Rows[i])}
		one.score = s.score(one.texts)
		if one.score > best.score {
			best = one
		}
		if i+1 < len(sheet.Rows) && sheet.Rows[i+1].Number == sheet.Rows[i].Number+1 && wordy(sheet.Rows[i+1]) {
			two := headerSpot{first: i, last: i + 1, texts: s.join(sheet, i)}
			two.score = s.score(two.texts)
			if two.score > best.score && two.score > s.score(texts(sheet.Rows[i+1])) {
				best = two
			}
		}
	}
	return best, best.score > 0
}

// score counts the different keys that a header line names; a line that names no
// mark and no measure is no header.
func (s *spellings) score(texts map[int]string) int {
	keys, spelt := map[string]bool{}, false
	var unknown []string
	for _, text := range texts {
		if all := s.header(text); all != nil {
			keys[all[0].key] = true
			spelt = spelt || all[0].key == s.dialect.name || len([]rune(fold(text))) > 1
		} else {
			unknown = append(unknown, text)
		}
	}
	if !spelt { // nothing, or only single letters, which head any table
		return 0
	}
	for _, text := range unknown { // slips of the pen count beside headers that are spelt right
		if near := s.near(text); near != "" {
			keys[s.headers[near][0].key] = true
		}
	}
	core := 0
	for _, k := range s.dialect.core {
		if keys[k] {
			core++
		}
	}
	if core < 2 || len(keys) < 2 {
		return 0
	}
	return len(keys)
}

func texts(row list.Row) map[int]string {
	out := map[int]string{}
	for _, c := range row.Cells {
		if c.Kind == list.Text {
			out[c.Col] = strings.TrimSpace(c.Text)
		}
	}
	return out
}

// wordy tells whether a row could be a header line: text, hardly any numbers.
func wordy(row list.Row) bool {
	words := 0
	for _, c := range row.Cells {
		if c.Kind != list.Text {
			return false
		}
		if _, bad := measure.Parse(c.Text, measure.Style{}); bad != nil {
			words++
		}
	}
	return words*2 > len(row.Cells)
}

// join reads two header lines as one; a group cell over several columns, merged
// or followed by blanks, stands above each of them.
func (s *spellings) join(sheet *list.Sheet, i int) map[int]string {
	top, bottom := texts(sheet.Rows[i]), texts(sheet.Rows[i+1])
	over := map[int]string{}
	for col, text := range top {
		over[col] = text
	}
	for _, m := range sheet.Merges {
		if m.FirstRow == sheet.Rows[i].Number {
			for col := m.FirstCol; col <= m.LastCol && col < m.FirstCol+64; col++ {
				over[col] = top[m.FirstCol]
			}
		}
	}
	out := map[int]string{}
	for col, text := range over {
		out[col] = text
	}
	for col, text := range bottom {
		out[col] = s.better(over[col], text)
	}
	return out
}

// better chooses the reading of two stacked header texts that means something.
func (s *spellings) better(top, bottom string) string {
	if top == "" {
		return bottom
	}
	if _, isUnit := measure.UnitOf(strings.Trim(bottom, "()[] ")); isUnit {
		return top + " (" + strings.Trim(bottom, "()[] ") + ")"
	}
	both := top + " " + bottom
	switch {
	case s.header(both) != nil:
		return both
	case s.header(bottom) != nil:
		return bottom
	case s.header(top) != nil && bottom == "":
		return top
	}
	return both
}
