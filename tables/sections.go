package tables

import (
	"slices"
	"strings"

	"seamtally/batch/units"
)

// Section is a section whose size stands in a table: I, H, channels, angles and
// the American shapes. A zero is a figure that the source does not print.
type Section struct {
	Family      string   `csv:"family"`      // IPE, HEA, UPN, L, W...
	Designation string   `csv:"designation"` // "IPE 200"
	H           units.MM `csv:"h_mm"`        // height, or the longer leg
	B           units.MM `csv:"b_mm"`        // flange, or the other leg
	Web         units.MM `csv:"web_mm"`      // web, wall or leg
	Flange      units.MM `csv:"flange_mm"`
	Root        units.MM `csv:"root_mm"`      // radius of the root fillet
	Toe         units.MM `csv:"toe_mm"`       // radius of the toes
	KgM         float64  `csv:"kg_m"`         // as printed
	Surface     float64  `csv:"surface_m2_m"` // as printed
	// Recalled names the columns of a published row whose figures were not read with the
	// others: "root_mm toe_mm". A table of somebody's own may do without.
	Recalled string `csv:"recalled,omitempty"`
	Origin
}

// Recalls tells whether the figure of a column was recalled, not read.
func (s *Section) Recalls(column string) bool {
	return s.Basis == "memory" || slices.Contains(strings.Fields(s.Recalled), column)
}

// HollowSize is an outside, or a wall, in which hollow sections are made and kept in
// stock: any outside may come with any wall near it.
type HollowSize struct {
	Shape string   `csv:"shape"` // box, round, or wall
	H     units.MM `csv:"h_mm"`  // height, diameter, or the wall
	B     units.MM `csv:"b_mm"`
	Origin
}
