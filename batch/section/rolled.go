package section

import (
	"seamtally/batch/units"
	"seamtally/tables"
)

// rolled returns a section of the table. What the table does not print is worked
// out from its sizes.
//
//	angle:   A = t (a + b − t) + (1 − π/4)(r1² − 2 r2²)          (SECTION-5)
//	         P = 2 (a + b) − (2 − π/2)(r1 + 2 r2)                (SECTION-6)
//	beam:    A = 2 b tf + (h − 2 tf) tw + 4 (1 − π/4) r²         (SECTION-7)
//	         P = 2 h + 4 b − 2 tw − 4 (2 − π/2) r                (SECTION-8)
//	channel: A = 2 b tf + (h − 2 tf) tw + 2 (1 − π/4) r²         (SECTION-9)
//	         P = 2 h + 4 b − 2 tw − 2 (2 − π/2) r                (SECTION-10)
//
// h, b: outside, tw, tf: web and flange, r: root radius, r1, r2: root and toe of an
// angle, mm. The channel's formulas hold for parallel flanges; a tapered one (UPN)
// takes its printed surface. Source: geometry; the tables' masses agree. Basis:
// derived.
func rolled(row *tables.Section) Section {
	s := Section{
		Designation: row.Designation, Family: row.Family, Shape: shapeOf(row.Family), H: row.H, B: row.B, Web: row.Web, Flange: row.Flange,
		Root: row.Root, Toe: row.Toe, KgM: row.KgM, Area: units.MM2(row.KgM / Density * 1e6), Perimeter: units.MM(row.Surface * 1000),
		Listed: true, Basis: row.Basis, Source: row.Source,
	}
	if area := areaOf(&s); row.KgM == 0 && area > 0 {
		s.Area, s.KgM = units.MM2(area), area*Density/1e6
		s.Basis, s.Source = "derived", "SECTION-5 to SECTION-9 from the sizes of: "+row.Source
	}
	if s.Perimeter == 0 && row.H > 0 && s.Family != "UPN" && s.Family != "INP" {
		s.Perimeter = units.MM(perimeterOf(&s))
	}
	return s
}

func shapeOf(family string) Shape {
	switch family {
	case "L":
		return Angle
	case "UPN", "UPE", "PFC", "C":
		return Channel
	case "HSS":
		return Box
	}
	return Beam
}

// perimeterOf returns the outside length of a rolled section in mm; 0 where its
// sizes are not known.
func perimeterOf(s *Section) float64 {
	h, b, tw, r, toe := float64(s.H), float64(s.B), float64(s.Web), float64(s.Root), float64(s.Toe)
	switch s.Shape {
	case Angle:
		return 2*(h+b) - corner*(r+2*toe)
	case Beam:
		return 2*h + 4*b - 2*tw - 4*corner*r
	case Channel:
		return 2*h + 4*b - 2*tw - 2*corner*r
	case Box:
		outer, _ := radii(tw, true)
		return 2*(h+b) - 4*corner*outer
	}
	return 0
}

// areaOf returns the area of a rolled section from its sizes in mm².
func areaOf(s *Section) float64 {
	h, b, tw, tf, r, toe := float64(s.H), float64(s.B), float64(s.Web), float64(s.Flange), float64(s.Root), float64(s.Toe)
	switch s.Shape {
	case Angle:
		return tw*(h+b-tw) + quarter*(r*r-2*toe*toe)
	case Beam:
		return 2*b*tf + (h-2*tf)*tw + 4*quarter*r*r
	case Channel:
		return 2*b*tf + (h-2*tf)*tw + 2*quarter*r*r
	}
	return 0
}
