package section

import (
	"fmt"
	"math"

	"seamtally/batch/units"
)

// flat returns a flat or a strip of plate.
//
//	A = b t,  P = 2 (b + t)   (SECTION-11)
//
// b: width, t: thickness, mm. Basis: derived, geometry.
func flat(b, t float64) (Section, error) {
	if b < t {
		b, t = t, b
	}
	if t <= 0 {
		return Section{}, fmt.Errorf("a thickness of %g mm is no flat", t)
	}
	return Section{
		Designation: fmt.Sprintf("flat %sx%s", sizeText(b), sizeText(t)), Shape: Flat, Family: "flat", H: units.MM(t), B: units.MM(b), Web: units.MM(t), Flange: units.MM(t),
		Area: units.MM2(b * t), Perimeter: units.MM(2 * (b + t)), KgM: b * t * Density / 1e6, Basis: "derived", Source: "rectangle",
	}, nil
}

// bar returns a round or square bar.
//
//	round A = π d²/4, P = π d; square A = a², P = 4 a   (SECTION-12)
//
// d, a: diameter and side, mm. Basis: derived, geometry.
func bar(d float64, square bool) (Section, error) {
	if d <= 0 {
		return Section{}, fmt.Errorf("a bar of %g mm is none", d)
	}
	area, perimeter, name := math.Pi*d*d/4, math.Pi*d, "round"
	if square {
		area, perimeter, name = d*d, 4*d, "square"
	}
	return Section{
		Designation: fmt.Sprintf("%s %s", name, sizeText(d)), Shape: Bar, Family: name, H: units.MM(d), B: units.MM(d), Web: units.MM(d), Flange: units.MM(d),
		Area: units.MM2(area), Perimeter: units.MM(perimeter), KgM: area * Density / 1e6, Basis: "derived", Source: "geometry",
	}, nil
}
