package workbook

import (
	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/workbook/pack"
)

// marks tell our columns beside a list of joints from those beside a cut list.
const (
	jointsMark = ""
	cutMark    = "cut_"
)

var marks = []string{jointsMark, cutMark}

// Undress returns the user's part of a workbook that this tool wrote: their
// sheets and cells, without our columns and sheets. Any other source comes back
// as it is. What the user typed into the yellow cells there, TakeTyped and TakeTypedParts
// take over; rates are read before.
func Undress(src *list.Source) (*list.Source, []finding.Problem) {
	if src.Format == list.CSV {
		return src, nil
	}
	ours, ok := pack.FindOurs(src.Data, marks...)
	if !ok {
		return src, nil
	}
	data, err := pack.Undress(src.Data, marks...)
	if err != nil {
		return src, []finding.Problem{{Place: finding.Place{File: src.File, Sheet: ours.Places[0].Sheet}, Level: finding.Warning, Code: "own-columns",
			Text: "our own columns in this workbook could not be told apart: " + err.Error(), Hint: "give the list itself, or delete our columns and sheets"}}
	}
	bare := *src
	bare.Data, bare.Sheets = data, nil
	for _, s := range src.Sheets {
		place, both := ours.On(s.Name)
		switch {
		case both:
			bare.Sheets = append(bare.Sheets, withoutOurs(s, place))
		case !ours.Sheets[s.Name]:
			bare.Sheets = append(bare.Sheets, s)
		}
	}
	return &bare, nil
}

// RatesSheet returns the name of the sheet of rates that this tool wrote into a
// workbook, whatever it is called now; "" where there is none.
func RatesSheet(src *list.Source) string {
	var candidates []string
	for i := range src.Sheets {
		if headsRates(&src.Sheets[i]) {
			candidates = append(candidates, src.Sheets[i].Name)
		}
	}
	if src.Format == list.CSV || len(candidates) == 0 {
		return ""
	}
	ours, _ := pack.FindOurs(src.Data, marks...)
	for _, name := range candidates {
		if ours.Sheets[name] {
			return name
		}
	}
	return ""
}

// headsRates tells whether a sheet has the header of our sheet of rates.
func headsRates(s *list.Sheet) bool {
	for i, r := range s.Rows {
		if i >= 2*firstRate {
			break
		}
		found := 0
		for _, c := range r.Cells {
			if c.Text == rateHeads[0] || c.Text == rateHeads[1] {
				found++
			}
		}
		if found == 2 {
			return true
		}
	}
	return false
}

// withoutOurs returns the sheet without the cells in our columns.
func withoutOurs(s list.Sheet, ours pack.Place) list.Sheet {
	rows := s.Rows
	s.Rows = nil
	for _, r := range rows {
		var kept []list.Cell
		for _, c := range r.Cells {
			if c.Col < ours.First || c.Col > ours.Last {
				kept = append(kept, c)
			}
		}
		if len(kept) > 0 {
			r.Cells = kept
			s.Rows = append(s.Rows, r)
		}
	}
	return s
}

// head is a column of ours as it was found: where, under which words, and how many of
// the unit that formulas reckon in one of its own makes.
type head struct {
	key, text, unit string
	col             int
	per             float64
}

func headOf[R any](c *columnBeside[R], us bool) head {
	h := head{key: c.key, text: c.head, unit: c.unit.name(us), per: 1}
	if us && c.unit.per > 0 {
		h.per = c.unit.per
	}
	return h
}

// ourHeads finds our columns of planned figures by their headers, in either unit, with
// the name of the group before them or without.
func ourHeads(s *list.Sheet, ours pack.Place) map[string]head {
	names := map[string]head{}
	name := func(group, title string, h head) {
		names[title], names[grouped(group, title)] = h, h
	}
	for _, us := range []bool{true, false} {
		for _, c := range append(readColumns(&layout{}), append(plannedColumns(), typedColumn())...) {
			if ours.Mark == jointsMark {
				name(c.group, c.title(us), headOf(&c, us))
			}
		}
		for _, c := range append(cutRead(), cutPlan()...) {
			if ours.Mark == cutMark {
				name(c.group, c.title(us), headOf(&c, us))
			}
		}
	}
	heads := map[string]head{}
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			if h, ok := names[c.Text]; ok && c.Col >= ours.First && c.Col <= ours.Last && heads[h.key].col == 0 {
				h.col = c.Col
				heads[h.key] = h
			}
		}
	}
	return heads
}
