package section

import (
	"math"

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
//	channel: A = 2 b tf + (h − 2 tf) tw + 2 (1 − π/4)(r1² − r2²)  (SECTION-9)
//	         P = 2 h + 4 b − 2 tw − 2 (2 − π/2)(r1 + r2)         (SECTION-10)
//
// h, b: outside, tw, tf: web and flange, r: root radius, r1, r2: root and toe of an
// angle or a channel, mm. SECTION-7 to SECTION-10 hold for parallel flanges; tapered
// ones (UPN, INP, C, MC, S, GOST) have SECTION-13 and SECTION-14. Source: geometry; the tables' masses
// agree. Basis: derived.
func rolled(row *tables.Section) Section {
	s := Section{
		Designation: row.Designation, Family: row.Family, Shape: shapeOf(row.Family), H: row.H, B: row.B, Web: row.Web, Flange: row.Flange,
		Root: row.Root, Toe: row.Toe, KgM: row.KgM, Area: units.MM2(row.KgM / Density * 1e6), Perimeter: units.MM(row.Surface * 1000),
		Listed: true, Basis: row.Basis, Source: row.Source, SurfaceBasis: row.Basis, SurfaceSource: row.Source,
	}
	if area := areaOf(&s); row.KgM == 0 && area > 0 {
		s.Area, s.KgM = units.MM2(area), area*Density/1e6
		s.Basis, s.Source = "derived", "SECTION-5 to SECTION-9 from the sizes of: "+row.Source
	}
	if s.Perimeter > 0 && row.Recalls("surface_m2_m") {
		s.SurfaceBasis = "memory"
	}
	if s.Perimeter == 0 && row.H > 0 {
		s.Perimeter = units.MM(perimeterOf(&s))
		s.SurfaceBasis, s.SurfaceSource = "derived", "SECTION-6 to SECTION-14 from the sizes of: "+row.Source
	}
	return s
}

func shapeOf(family string) Shape {
	switch family {
	case "L":
		return Angle
	case "UPN", "UPE", "PFC", "C", "MC", "GOSTП", "GOSTУ":
		return Channel
	case "T":
		return Tee
	case "PIPE":
		return Round
	case "HSS":
		return Box
	}
	return Beam
}

// perimeterOf returns the outside length of a rolled section in mm; 0 where its
// sizes are not known.
func perimeterOf(s *Section) float64 {
	h, b, tw, r, toe := float64(s.H), float64(s.B), float64(s.Web), float64(s.Root), float64(s.Toe)
	if f, ok := taperOf(s); ok {
		return f.perimeter()
	}
	switch s.Shape {
	case Angle:
		return 2*(h+b) - corner*(r+2*toe)
	case Beam:
		return 2*h + 4*b - 2*tw - 4*corner*r
	case Channel:
		return 2*h + 4*b - 2*tw - 2*corner*(r+toe)
	case Box:
		return 2*(h+b) - 4*corner*2*tw
	case Round:
		return math.Pi * h
	}
	return 0
}

// areaOf returns the area of a rolled section from its sizes in mm².
func areaOf(s *Section) float64 {
	h, b, tw, tf, r, toe := float64(s.H), float64(s.B), float64(s.Web), float64(s.Flange), float64(s.Root), float64(s.Toe)
	if f, ok := taperOf(s); ok {
		return f.area()
	}
	switch s.Shape {
	case Angle:
		return tw*(h+b-tw) + quarter*(r*r-2*toe*toe)
	case Beam:
		return 2*b*tf + (h-2*tf)*tw + 4*quarter*r*r
	case Channel:
		return 2*b*tf + (h-2*tf)*tw + 2*quarter*(r*r-toe*toe)
	case Round:
		return math.Pi * tw * (h - tw)
	}
	return 0
}

// tapered is a section whose flanges grow thicker towards the web.
type tapered struct {
	h, b, web float64
	tip, root float64 // thickness of the flange at its tip and at the web
	arm       float64 // flange beside the web
	sides     float64 // of the web that have flanges: 1 or 2
	turn      float64 // of the outline at tip and root
	r, toe    float64
}

// taperOf returns the outline of a section with tapered flanges.
//
//	A = h tw + 2 n a (t1 + t2)/2 + 2 n k' (r1² − r2²)                (SECTION-13)
//	P = 2 b + 2 n (t1 + a √(1 + s²)) + (2 − n) h + n (h − 2 t2)
//	    − 2 n k (r1 + r2)                                            (SECTION-14)
//
// n: sides of the web with flanges, 1 of a channel, 2 of a beam; a = (b − tw)/n;
// s: slope of the inner faces; t1 = tf − s e, t2 = t1 + s a: flange at tip and web;
// e: from the tip to where tf is measured; k = 2 tan(φ/2) − φ, k' = k/2, φ = π/2 −
// arctan s. Slopes: UPN 8 % to 300 mm and 5 % above, INP 14 %, C, MC and S 1 in 6,
// GOST channels 10 % and beams 12 %. Radii where
// the table has none: UPN tf and tf/2, INP tw and 0.6 tw, C those of the table.
// Valid: 0 < t1. Source: geometry; slopes, places and radii recalled from DIN 1025-1
// and DIN 1026-1. Basis: derived. Accuracy: within 0.5 % of most printed
// surfaces, within 1.5 % of all.
func taperOf(s *Section) (tapered, bool) {
	h, b, tw, tf := float64(s.H), float64(s.B), float64(s.Web), float64(s.Flange)
	f := tapered{h: h, b: b, web: tw, arm: b - tw, sides: 1, r: float64(s.Root), toe: float64(s.Toe)}
	slope, from := 0.0, 0.0
	switch {
	case s.Family == "UPN" && h <= 300:
		slope, from = 0.08, b/2
	case s.Family == "UPN":
		slope, from = 0.05, (b-tw)/2
	case s.Family == "INP":
		slope, from, f.sides, f.arm = 0.14, b/4, 2, (b-tw)/2
	case s.Family == "C" || s.Family == "MC":
		slope, from = 1.0/6, (b-tw)/2
	case s.Family == "S":
		slope, from, f.sides, f.arm = 1.0/6, (b-tw)/4, 2, (b-tw)/2
	case s.Family == "GOSTУ":
		slope, from = 0.10, (b-tw)/2
	case s.Family == "GOSTI":
		slope, from, f.sides, f.arm = 0.12, (b-tw)/4, 2, (b-tw)/2
	default:
		return f, false
	}
	switch {
	case s.Family == "UPN":
		f.r, f.toe = tf, tf/2
	case s.Family == "INP":
		f.r, f.toe = tw, 0.6*tw
	}
	f.tip = tf - slope*from
	f.root = f.tip + slope*f.arm
	f.turn = math.Pi/2 - math.Atan(slope)
	return f, h > 0 && f.tip > 0
}

// saved is by how much an arc of radius 1 is shorter than its corner.
func (f tapered) saved() float64 { return 2*math.Tan(f.turn/2) - f.turn }

func (f tapered) area() float64 {
	return f.h*f.web + f.sides*f.arm*(f.tip+f.root) + f.sides*f.saved()*(f.r*f.r-f.toe*f.toe)
}

func (f tapered) perimeter() float64 {
	inner := math.Hypot(f.arm, f.root-f.tip)
	return 2*f.b + 2*f.sides*(f.tip+inner) + (2-f.sides)*f.h + f.sides*(f.h-2*f.root) - 2*f.sides*f.saved()*(f.r+f.toe)
}
