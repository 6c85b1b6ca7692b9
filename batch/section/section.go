// Package section turns the designation of a section, as people write it, into
// what a weld needs of it: thickness where the weld sits, perimeter, mass and
// surface. Hollow sections, flats and bars are worked out from their sizes by the
// geometry of their standards, rolled sections come from the table.
//
// The order to read: section.go (what a section is), parse.go and sizes.go (how it
// may be written), make.go (which family works it out), hollow.go, rolled.go and
// plain.go (one family each), names.go and american.go (what is called by a name, and
// by the American designations), near.go (the table, and what is near).
package section

import (
	"fmt"
	"math"
	"strconv"

	"seamtally/batch/units"
)

// Density is that of the standards' tables of steel sections. Source: EN 10219-2,
// EN 10210-2, EN 10056 and EN 10365 print masses with it. Basis: published.
const Density = 7850.0 // kg/m³

// Shape says how a section is made up.
type Shape string

// The shapes.
const (
	Round   Shape = "round hollow"
	Box     Shape = "square or rectangular hollow"
	Angle   Shape = "angle"
	Beam    Shape = "I or H"
	Channel Shape = "channel"
	Tee     Shape = "tee"
	Flat    Shape = "flat"
	Bar     Shape = "bar"
)

// Section is one section.
type Section struct {
	Designation string // as its standard spells it
	Shape       Shape
	Family      string   // "SHS", "IPE"...
	H, B        units.MM // outside; H alone where it is round
	Web         units.MM // thickness of web, wall or leg: where most welds sit
	Flange      units.MM // thickness of the flange; that of the web where there is none of its own
	Root, Toe   units.MM // radii; of a box the outer and the inner one
	Area        units.MM2
	Perimeter   units.MM // outside
	KgM         float64
	Listed      bool   // its standard's table holds it
	Cold        bool   // a hollow section formed cold
	Plate       bool   // cut from plate, by its designation
	Basis       string // of the mass
	Source      string
	// SurfaceBasis and SurfaceSource are of the perimeter where they differ; blank:
	// those of the mass.
	SurfaceBasis, SurfaceSource string
}

// Origin says what mass and perimeter rest on.
func (s *Section) Origin() string {
	text := s.Basis + ": " + s.Source
	if s.SurfaceBasis != "" && s.SurfaceBasis != s.Basis {
		text += "; its perimeter: " + s.SurfaceBasis
	}
	return text
}

// Surface returns what is painted, in m² of a metre.
func (s *Section) Surface() float64 { return float64(s.Perimeter) / 1000 }

// Error says what could not be read as a section, and what is near it.
type Error struct {
	Text string
	Why  string
	Near []string // published designations
}

func (e *Error) Error() string {
	text := fmt.Sprintf("%q is no section: %s", e.Text, e.Why)
	if len(e.Near) > 0 {
		text += "; the nearest are " + join(e.Near)
	}
	return text
}

// sizeText writes a size to a thousandth of a millimetre.
func sizeText(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64) }

// quarter is what a rounded corner of radius 1 leaves out of its square.
const quarter = 1 - math.Pi/4

// corner is what a rounded corner of radius 1 is shorter than its two sides.
const corner = 2 - math.Pi/2
