package rates

import (
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/list"
)

// NoColumns is the code of a shop file without shop values.
const NoColumns = "shop-no-columns"

// headerDepth is how many rows may stand above the header of a shop file.
const headerDepth = 20

// sheetNames are the sheets of a joint-list workbook that are read as a shop
// file where they have columns headed key and value.
var sheetNames = []string{"rates", "shop", "shop values", "shop rates"}

// columns are the columns of a shop file, 1-based; zero where there is none.
type columns struct{ key, value, unit, low, high, basis, source, note, asRun int }

// ReadFile puts a shop file into the shop: a CSV file, or the first sheet of a
// workbook that has columns headed key and value. Every fault is reported with
// its cell; the good lines are taken. In a workbook that this tool wrote, ours
// names its sheet of rates, which is read whatever else there is.
func (s *Shop) ReadFile(src *list.Source, ours string) []finding.Problem {
	for _, sheet := range src.Sheets {
		if ours != "" && sheet.Name != ours {
			continue
		}
		if cols, first, ok := s.findColumns(sheet); ok {
			from := "shop file " + src.File[strings.LastIndexAny(src.File, `/\`)+1:] // the folder is no part of a result
			if sheet.Name != "" {
				from += ", sheet " + sheet.Name
			}
			return s.takeAll(entriesOf(src, sheet, cols, first, from))
		}
	}
	return []finding.Problem{{Place: finding.Place{File: src.File}, Level: finding.Error, Code: NoColumns,
		Text: "no shop values were found", Want: "columns headed key and value",
		Hint: "start from the shop file that `seamtally starter` writes"}}
}

// findColumns looks for the header; without one, two columns that begin with a
// known key will do.
func (s *Shop) findColumns(sheet list.Sheet) (cols columns, firstRow int, ok bool) {
	for i, row := range sheet.Rows {
		if i >= headerDepth {
			break
		}
		cols = headerColumns(row)
		if cols.key > 0 && cols.value > 0 {
			return cols, i + 1, true
		}
		if _, problem := s.resolve(entry{key: row.At(1).Text}); problem == nil && row.At(2).Kind != list.Blank {
			return columns{key: 1, value: 2, unit: 3}, i, true
		}
	}
	return columns{}, 0, false
}

func headerColumns(row list.Row) (c columns) {
	for _, cell := range row.Cells {
		at := map[string]*int{"key": &c.key, "value": &c.value, "unit": &c.unit, "low": &c.low, "high": &c.high,
			"basis": &c.basis, "source": &c.source, "note": &c.note, AsRun: &c.asRun}[strings.ToLower(strings.TrimSpace(cell.Text))]
		if at != nil && *at == 0 {
			*at = cell.Col
		}
	}
	return c
}

// entriesOf reads the lines below the header. A line without a key is a comment.
func entriesOf(src *list.Source, sheet list.Sheet, cols columns, first int, from string) []entry {
	var entries []entry
	for _, row := range sheet.Rows[first:] {
		key := strings.TrimSpace(row.At(cols.key).Text)
		if key == "" || strings.HasPrefix(key, "#") {
			continue
		}
		text := func(col int) string {
			if col == 0 {
				return ""
			}
			return strings.TrimSpace(row.At(col).Text)
		}
		e := entry{key: key, keyCol: cols.key, from: from, unit: text(cols.unit), basis: text(cols.basis), source: text(cols.source), note: text(cols.note),
			low: text(cols.low), high: text(cols.high), decimalComma: src.DecimalComma}
		e.place = finding.Place{File: src.File, Sheet: sheet.Name, Row: row.Number, Col: cols.value, Header: "value"}
		e.readCell(row.At(cols.value))
		e.changed = cols.asRun > 0 && e.changedFrom(row.At(cols.asRun))
		entries = append(entries, e)
	}
	return entries
}

// readCell takes the value from a cell. A typed number keeps its digits whatever
// its format shows; a date, an error or a formula without a result is passed on
// as text that reads as no number, so that it is refused with its place.
func (e *entry) readCell(cell list.Cell) {
	e.text = strings.TrimSpace(cell.Text)
	switch cell.Kind {
	case list.Number:
		e.text, e.percent, e.decimalComma = numberText(cell.Value), cell.Percent, false
	case list.Date:
		e.text = "the date " + e.text
		e.holds, e.cure = e.text, "format the cell as a number and write the value again"
	case list.NoValue:
		e.text = "a formula without a stored result"
		e.holds, e.cure = e.text, "open the file in a spreadsheet program and save it, so that the result is stored"
	}
}
