package rates

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/list"
)

// AsRun heads the column, on the sheet of rates that this tool writes, with the
// values that the list was last worked with: what differs from it was changed
// there since.
const AsRun = "as run"

// Stated is a figure that was typed elsewhere than on the sheet of rates.
type Stated struct {
	Key     string
	Value   float64
	Text    string // what stands there instead where that is no number
	Unit    string // that the text is in where it names none
	Emptied bool   // the cell held a figure and is blank now: nothing is left
	From    string // "workbook sheet Buy list"
	Place   finding.Place
}

// ReadStated puts figures that were typed elsewhere into the shop, and tells each.
func (s *Shop) ReadStated(stated []Stated) (problems []finding.Problem) {
	var entries []entry
	for _, v := range stated {
		e := entry{place: v.Place, from: v.From, key: v.Key, text: numberText(v.Value), source: v.From}
		if v.Text != "" {
			e.text, e.unit = v.Text, v.Unit
		}
		entries = append(entries, e)
		how := ", typed into the buy list"
		if v.Emptied {
			how = ": its cell in the buy list was emptied"
		}
		problems = append(problems, finding.Problem{Place: v.Place, Level: finding.Note, Code: "shop-typed", Text: v.Key + " is taken as " + e.text + how,
			Hint: "it stands on the sheet of rates from now on"})
	}
	if entries == nil {
		return nil
	}
	return append(problems, s.takeAll(entries)...)
}

// ReadSheet puts the sheet of shop values of a joint-list workbook into the shop,
// if there is one. ours names the sheet of rates that this tool wrote into the
// workbook, whatever it is called now; "" where there is none. Beside it the user
// may have a sheet named Rates or Shop of their own: it holds, except for what was
// changed on ours since the last run. A sheet of such a name without columns is
// left alone, with a note.
func (s *Shop) ReadSheet(src *list.Source, ours string) (problems []finding.Problem) {
	if src.Format == list.CSV {
		return nil
	}
	var own, theirs []entry
	for _, sheet := range src.Sheets {
		switch {
		case ours != "" && sheet.Name == ours:
			own, problems = s.readRates(src, sheet, problems)
		case theirs == nil && slices.Contains(sheetNames, strings.ToLower(strings.TrimSpace(sheet.Name))):
			theirs, problems = s.readRates(src, sheet, problems)
		}
	}
	if own != nil {
		var twice []finding.Problem
		theirs, twice = s.unlessChanged(theirs, own)
		problems = append(problems, twice...)
		problems = append(problems, s.takeAll(own)...)
	}
	if theirs != nil {
		problems = append(problems, s.takeAll(theirs)...)
	}
	return problems
}

// readRates reads the lines of one sheet and adds a note where it has none.
func (s *Shop) readRates(src *list.Source, sheet list.Sheet, problems []finding.Problem) ([]entry, []finding.Problem) {
	cols, first, ok := s.findColumns(sheet)
	if !ok {
		return nil, append(problems, finding.Problem{Place: finding.Place{File: src.File, Sheet: sheet.Name}, Level: finding.Note, Code: NoColumns,
			Text: "the sheet has no columns headed key and value, so no shop values were read from it", Hint: "head two columns key and value if shop values are meant"})
	}
	return entriesOf(src, sheet, cols, first, "workbook sheet "+sheet.Name), problems
}

// unlessChanged leaves out of the user's own lines those whose value was changed
// on our sheet since the last run: that change is the later word. Where both
// say something else, it is told.
func (s *Shop) unlessChanged(theirs, own []entry) (kept []entry, problems []finding.Problem) {
	changed := map[string]entry{}
	for _, e := range own {
		if key, wrong := s.resolve(e); wrong == nil && e.changed {
			changed[key] = e
		}
	}
	for _, e := range theirs {
		key, wrong := s.resolve(e)
		later, isChanged := changed[key]
		if wrong != nil || !isChanged {
			kept = append(kept, e)
			continue
		}
		if later.text != e.text {
			problems = append(problems, finding.Problem{Place: e.place, Level: finding.Warning, Code: "shop-two-sheets", Read: e.text,
				Text: fmt.Sprintf("%s was changed to %s on the sheet %s since the last run, which is taken; here it is %s", key, later.text, later.place.Sheet, e.text),
				Hint: "write the same value on both sheets"})
		}
	}
	return kept, problems
}

// changedFrom tells whether a value on our sheet is no longer the one that the
// list was last worked with.
func (e *entry) changedFrom(asRun list.Cell) bool {
	was := *e
	was.readCell(asRun)
	return was.text != e.text
}
