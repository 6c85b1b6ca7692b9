// Package procedure reads a shop's own welding procedures from a sheet as people
// keep it: headers in their own words, units in headers, in a row of units or in
// the cell, ranges in one column or in two. What cannot be meant is told with its
// cell, all in one pass. It binds nothing: the planner does.
package procedure

import (
	"fmt"
	"sync"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/tables"
)

// Row is a procedure and the cell of its number. A row with a mistake binds
// nothing, but its number is taken.
type Row struct {
	tables.Procedure
	Place finding.Place
	Wrong bool
}

// Options say how a source is to be read.
type Options struct {
	// From names the source for people: "shop file shop.xlsx".
	From string
	// Inches: thicknesses and diameters without any unit are inches.
	Inches bool
	// ArcEnergy: heat input is what the AWS codes call so, U I 60 / v without the
	// thermal efficiency k.
	ArcEnergy bool
	// Table: the source is the table of the tables folder, where a zero stands for
	// a blank.
	Table bool
	// Always: the one sheet is procedures, whatever its header.
	Always bool
}

// Reader knows the words of the tables.
type Reader struct {
	set     *tables.Set
	terms   func() *joint.Terms // of use only where there is a sheet to read
	headers *headers
}

// NewReader prepares the words of the tables for look-up.
func NewReader(set *tables.Set) *Reader {
	return &Reader{set, sync.OnceValue(func() *joint.Terms { return joint.NewTerms(set) }), newHeaders(set)}
}

// Read returns the procedures of the first sheet that holds some, and whether
// there is such a sheet.
func (known *Reader) Read(src *list.Source, opt Options) (rows []Row, found bool, problems []finding.Problem) {
	h := known.headers
	sheet, spot, named := h.findSheet(src, known.terms, opt.Always)
	switch {
	case sheet == nil:
		return nil, false, nil
	case spot == nil && named && len(sheet.Rows) > 0:
		return nil, true, []finding.Problem{{Place: finding.Place{File: src.File, Sheet: sheet.Name}, Level: finding.Error, Code: "procedures-no-header",
			Text: "the sheet has no header of procedures", Want: "a row with the columns number, process, wire, gas, position and ranges of current, voltage, travel or heat",
			Hint: "start from the sheet in the shop file that `seamtally starter` writes, or rename the sheet if it holds something else"}}
	case spot == nil:
		return nil, false, nil
	}
	r := &reader{src: src, set: known.set, terms: known.terms, headers: h, sheet: sheet, opt: opt, cols: spot.cols}
	r.readHeader(spot)
	rows = r.read(sheet.Rows[spot.last+1:])
	r.tellHeat(spot, rows)
	r.tellUnknown(spot, sheet.Rows[spot.last+1:])
	return rows, true, r.problems
}

// Holds tells whether a sheet bears the name and the header of procedures.
func (known *Reader) Holds(sheet *list.Sheet) bool {
	return bearsName(sheet) && known.headers.find(sheet) != nil
}

// Join puts procedures of several sources together. A number that stands twice is
// a mistake, told with both places: nobody can say which of the two binds.
func Join(sources ...[]Row) ([]tables.Procedure, []finding.Problem) {
	var out []tables.Procedure
	var problems []finding.Problem
	first := map[string]finding.Place{}
	for _, rows := range sources {
		for _, row := range rows {
			key := tables.ProcedureKey(row.Number)
			if key == "" {
				continue // told already
			}
			if at, twice := first[key]; twice {
				problems = append(problems, finding.Problem{Place: row.Place, Level: finding.Error, Code: "procedure-twice", Read: row.Number,
					Text: fmt.Sprintf("procedure %s is stated twice; the other stands in %s", row.Number, at),
					Hint: "take one of the two out, or give it a number of its own"})
				continue
			}
			if first[key] = row.Place; !row.Wrong {
				out = append(out, row.Procedure)
			}
		}
	}
	return out, problems
}
