package section

import (
	"fmt"
	"math"

	"seamtally/batch/units"
)

// round returns a circular hollow section.
//
//	A = π t (D − t)   (SECTION-1)
//	P = π D           (SECTION-2)
//
// D: outside diameter, t: wall, mm. Valid: 0 < 2 t < D. Source: EN 10219-2 Annex
// B, EN 10210-2 Annex B. Basis: derived, geometry.
func round(d, t float64, cold bool) (Section, error) {
	if t <= 0 || 2*t >= d {
		return Section{}, fmt.Errorf("a wall of %g mm leaves nothing hollow in %g mm; write diameter and wall, such as 60.3x4", t, d)
	}
	return Section{
		Designation: fmt.Sprintf("CHS %sx%s", sizeText(d), sizeText(t)), Shape: Round, Family: "CHS", H: units.MM(d), B: units.MM(d), Web: units.MM(t), Flange: units.MM(t),
		Area: units.MM2(math.Pi * t * (d - t)), Perimeter: units.MM(math.Pi * d),
		KgM: math.Pi * t * (d - t) * Density / 1e6, Cold: cold, Basis: "derived", Source: hollowSource(cold),
	}, nil
}

// hss returns a square or rectangular section of the American tables, formed cold.
// Its mass is that of the nominal wall with corner radii of 2 t and t, by SECTION-3
// and SECTION-4 whatever the wall. The printed areas are for 0.93 of the wall.
//
// Source: American tables of shapes; the printed masses agree. Basis: derived,
// geometry; the radii are recalled.
func hss(h, b, t float64) (Section, error) {
	s, err := hollow(h, b, t, 2*t, t, "geometry on the nominal wall, corner radii of 2 t and t")
	s.Cold = err == nil
	return s, err
}

// box returns a square or rectangular hollow section.
//
//	A = 2 t (h + b − 2 t) − (4 − π)(ro² − ri²)   (SECTION-3)
//	P = 2 (h + b) − 2 (4 − π) ro                 (SECTION-4)
//
// h, b: outside, t: wall, ro, ri: corner radii by which the standards reckon, mm:
// formed cold 2 t and t up to 6 mm, 2.5 t and 1.5 t up to 10 mm, 3 t and 2 t above;
// finished hot 1.5 t and t. Valid: 0 < 2 t < b. Source: EN 10219-2 Annex B, EN
// 10210-2 Annex B. Basis: derived, geometry; the radii are recalled.
func box(h, b, t float64, cold bool) (Section, error) {
	outer, inner := radii(t, cold)
	s, err := hollow(h, b, t, outer, inner, hollowSource(cold))
	s.Cold = cold && err == nil
	return s, err
}

// hollow returns a section of four walls with the corner radii given.
func hollow(h, b, t, outer, inner float64, source string) (Section, error) {
	if t <= 0 || 2*t >= math.Min(h, b) {
		return Section{}, fmt.Errorf("a wall of %g mm leaves nothing hollow in %gx%g mm; write both sides and then the wall, such as 60x60x4", t, h, b)
	}
	if 2*outer > math.Min(h, b) {
		return Section{}, fmt.Errorf("a wall of %g mm is too thick for corners that can be formed in %gx%g mm", t, h, b)
	}
	if b > h {
		h, b = b, h // RHS 40x80x3 is bought as RHS 80x40x3
	}
	area := 2*t*(h+b-2*t) - 4*quarter*(outer*outer-inner*inner)
	family := "RHS"
	if h == b {
		family = "SHS"
	}
	return Section{
		Designation: fmt.Sprintf("%s %sx%sx%s", family, sizeText(h), sizeText(b), sizeText(t)), Shape: Box, Family: family, H: units.MM(h), B: units.MM(b),
		Web: units.MM(t), Flange: units.MM(t), Root: units.MM(outer), Toe: units.MM(inner),
		Area: units.MM2(area), Perimeter: units.MM(2*(h+b) - 4*corner*outer), KgM: area * Density / 1e6,
		Basis: "derived", Source: source,
	}, nil
}

// radii returns the corner radii, outside and inside, that a standard reckons with.
func radii(t float64, cold bool) (outer, inner float64) {
	switch {
	case !cold:
		return 1.5 * t, t
	case t <= 6:
		return 2 * t, t
	case t <= 10:
		return 2.5 * t, 1.5 * t
	}
	return 3 * t, 2 * t
}

func hollowSource(cold bool) string {
	if cold {
		return "geometry of EN 10219-2, corner radii recalled"
	}
	return "geometry of EN 10210-2, corner radii recalled"
}
