package joint

import (
	"cmp"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
	"seamtally/batch/units"
)

// Floor is what the floor wrote down for one row. Zero means not written.
type Floor struct {
	Row    int
	Qty    int          // copies done; 0: all of them
	Arc    units.Minute // arc time of these copies
	Labour units.Minute // welder's time, fit-up and handling included
	Wire   units.Kg     // wire taken off the spool
	Feed   units.MMin   // wire feed really set
	Note   string
}

// Empty tells whether nothing that can be reckoned with was written.
func (f Floor) Empty() bool { return f.Arc == 0 && f.Labour == 0 && f.Wire == 0 }

// The headings of the columns that the floor fills in, without their unit. The
// annotated workbook has them empty; any list may have them.
const (
	FloorQty    = "Floor: copies done"
	FloorArc    = "Floor: arc time"
	FloorLabour = "Floor: welder's time"
	FloorWire   = "Floor: wire used"
	FloorFeed   = "Floor: wire feed set"
	FloorNote   = "Floor: note"
)

// floorUnits are the units that may follow a heading, and what one of them is in
// minutes, kilograms or metres a minute; the first is taken where none is written.
var floorUnits = map[string][]struct {
	unit string
	is   float64
}{
	FloorQty:    {{"", 1}},
	FloorArc:    {{"min", 1}, {"h", 60}, {"s", 1.0 / 60}},
	FloorLabour: {{"min", 1}, {"h", 60}, {"s", 1.0 / 60}},
	FloorWire:   {{"kg", 1}, {"g", 0.001}, {"lb", 0.45359237}},
	FloorFeed:   {{"m/min", 1}, {"in/min", 0.0254}, {"ipm", 0.0254}},
	FloorNote:   {{"", 1}},
}

// floorColumn is a column of the floor's in a sheet.
type floorColumn struct {
	col    int
	title  string // as in the constants
	header string // as written
	is     float64
}

// ReadFloor returns the floor's records of a sheet by row, nil where it has no
// column for them, and what could not be read. A row is counted by what stands in
// it; one with a note alone is kept for its note.
func ReadFloor(src *list.Source, sheet string) (map[int]Floor, []finding.Problem) {
	if src == nil {
		return nil, nil
	}
	for i := range src.Sheets {
		if s := &src.Sheets[i]; s.Name == sheet || src.Format == list.CSV {
			return readFloor(src.File, s)
		}
	}
	return nil, nil
}

func readFloor(file string, s *list.Sheet) (map[int]Floor, []finding.Problem) {
	var cols []floorColumn
	var problems []finding.Problem
	var out map[int]Floor
	for _, r := range s.Rows {
		if heads := floorHeads(r); len(heads) > 0 {
			cols = heads
			continue
		}
		f := Floor{Row: r.Number}
		for _, c := range cols {
			cell := r.At(c.col)
			if !filled(cell) {
				continue
			}
			if p := f.take(c, cell); p != nil {
				p.Place = finding.Place{File: file, Sheet: s.Name, Row: r.Number, Col: c.col, Header: c.header}
				problems = append(problems, *p)
			}
		}
		if f != (Floor{Row: r.Number}) {
			if out == nil {
				out = map[int]Floor{}
			}
			out[r.Number] = f
		}
	}
	return out, problems
}

// floorStem begins every heading of the floor's columns.
const floorStem = "floor"

// floorHeads finds the floor's columns in a header row.
func floorHeads(r list.Row) []floorColumn {
	var out []floorColumn
	for _, cell := range r.Cells {
		if cell.Kind != list.Text || !mayBeFloor(cell.Text) {
			continue
		}
		text := fold(cell.Text)
		for title, known := range floorUnits {
			tail, ok := strings.CutPrefix(text, fold(title))
			if !ok {
				continue
			}
			for _, u := range known {
				if tail = strings.TrimSpace(tail); tail == fold(u.unit) || tail == "" {
					out = append(out, floorColumn{cell.Col, title, cell.Text, u.is})
					break
				}
			}
		}
	}
	return out
}

// mayBeFloor tells quickly that most texts do not begin with the stem: those that
// begin with other plain letters.
func mayBeFloor(s string) bool {
	if len(s) < len(floorStem) {
		return false
	}
	for i := range len(floorStem) {
		if c := s[i] | 0x20; c < 'a' || c > 'z' {
			return true
		}
	}
	return strings.EqualFold(s[:len(floorStem)], floorStem)
}

// take puts a cell into the record; nil where it could be read.
func (f *Floor) take(c floorColumn, cell list.Cell) *finding.Problem {
	if c.title == FloorNote {
		f.Note = cell.Text
		return nil
	}
	v := cell.Value
	if cell.Kind == list.Text {
		var bad *measure.Fault
		if v, bad = measure.Number(cell.Text, measure.Style{}); bad != nil {
			return &finding.Problem{Level: finding.Error, Code: "bad-record", Text: "the floor's record cannot be read: " + bad.Text, Read: cell.Text, Want: "a number in the unit of the heading", Hint: cmp.Or(bad.Hint, "write the number alone") + "; the record is left out until then"}
		}
	}
	if cell.Kind != list.Text && cell.Kind != list.Number {
		return &finding.Problem{Level: finding.Error, Code: "bad-record", Text: "the floor's record is no number", Read: cell.Text, Want: "a number in the unit of the heading", Hint: "write the number that the floor gave, or empty the cell; the record is left out until then"}
	}
	if v < 0 || c.title == FloorQty && v != float64(int(v)) {
		return &finding.Problem{Level: finding.Error, Code: "bad-record", Text: "no floor can have recorded this", Read: cell.Text, Want: "a number of zero or more", Hint: "correct the record; it is left out until then"}
	}
	v *= c.is
	switch c.title {
	case FloorQty:
		f.Qty = int(v)
	case FloorArc:
		f.Arc = units.Minute(v)
	case FloorLabour:
		f.Labour = units.Minute(v)
	case FloorWire:
		f.Wire = units.Kg(v)
	case FloorFeed:
		f.Feed = units.MMin(v)
	}
	return nil
}
