// Package parts reads a shop's cut list and works out what follows from it and
// from the joints together: mass, paint, seams and weld metal on each part, edges
// and ends to be prepared, and the bars to buy.
//
// The order to read: parts.go (what a cut list says), book.go (what follows from
// it), read.go and fields.go (cells to parts), lend.go (what a joint takes from
// its parts), match.go (the two lists compared), work.go (mass and sums), edges.go and
// shrink.go (what the joints ask of the parts), buy.go (bars, plates and money).
package parts

import (
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// List is a cut list, understood.
type List struct {
	File, Sheet string
	SHA256      string
	HeaderRows  [2]int // first and last header row
	UnitsRow    int    // 0 if none
	LastRow     int
	LastCol     int
	Columns     []joint.Column
	Parts       []Part
	Others      []joint.OtherRow         // rows that are no part, each with its fate
	RowsRead    int                      // rows that are not blank: parts and others together
	Refused     map[string]finding.Place // folded marks of rows that could not be read
	Typed       map[int]string           // what was typed beside a row, not in it; nil: nothing
	Problems    []finding.Problem
}

// Part is one row of a cut list: pieces that are alike.
type Part struct {
	Place    finding.Place
	Mark     string
	Written  string // the designation, or width x thickness, as the list has it
	Text     string // the same with what other columns say of it, as section.Parse reads it
	Section  section.Section
	Plate    bool     // cut from plate, not from a bar
	Width    units.MM // of a piece of plate; 0: not known, or a bar
	Length   units.MM // of one piece
	Qty      int      // at least 1
	Material string   // as written; "" if blank
	Standard string   // as written
	Assembly string
	Note     string
	Assumed  []joint.Assumption
}

// CutTo gives the part another cutting length; false where no ordinary piece has it.
func (p *Part) CutTo(length units.MM) bool {
	if length < shortestPiece || length > longestPiece {
		return false
	}
	p.Length = length
	return true
}

// Name is what a person finds the part by: its mark, else its designation.
func (p *Part) Name() string {
	if p.Mark != "" {
		return p.Mark
	}
	return p.Section.Designation
}
