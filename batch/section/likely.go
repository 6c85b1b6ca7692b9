package section

import (
	"math"

	"seamtally/batch/units"
	"seamtally/tables"
)

// likelihood says how usual the sizes of a section are for its shape.
type likelihood int

const (
	unread   likelihood = iota // no section at all
	unheard                    // none of its shape is made in this size
	cuttable                   // it could be cut from plate, or forged
	platy                      // ordinary plate, and wide flats
	standard                   // within what is rolled or drawn of its shape
)

// span is a range of sizes in mm.
type span struct{ least, most float64 }

func (s span) holds(v float64) bool { return v >= s.least-1e-6 && v <= s.most+1e-6 }

// What is rolled as bar, plate and wide flat, mm. Source: EN 10058 (flats and wide flats;
// those of 3 mm are kept beside them), EN 10059 and EN 10060 with the wire rod of EN 10017
// below them, EN 10079 (wide flats to 1250 mm), EN 10029 (plate to 4000 mm; EN 10131 sheet
// from 0.35 mm); flats of inches go to 8 in, ASTM A6. Basis: memory.
var (
	flatWide  = span{10, 200}
	flatThick = span{3, 80}
	inchFlat  = 8 * units.MMPerInch
	roundBar  = span{5, 250}
	squareBar = span{5, 150}
	wideFlat  = span{10, 1250}
	plateWide = span{10, 4000}
	sheetFrom = 0.35
	anySolid  = span{0.35, 300} // what is forged, or cut from the thickest plate
	anyWidth  = span{3, 6000}
)

// likely tells how usual the sizes of a section are that was worked out from them. The
// limits of hollow sections, and the thickest part, are those of the tables.
func likely(s *Section, inches bool, set *tables.Set) likelihood {
	h, b, t := float64(s.H), float64(s.B), float64(s.Web)
	switch {
	case s.Shape == Box || s.Shape == Round:
		return likelyHollow(math.Max(h, b), math.Min(h, b), t, s.Shape, inches, set)
	case s.Shape == Bar:
		usual := roundBar
		if s.Family == "square" {
			usual = squareBar
		}
		return graded(usual.holds(t), false, anySolid.holds(t))
	case s.Shape == Flat:
		return likelyFlat(s, inches, set)
	}
	return standard // of the table
}

func graded(isRolled, isPlate, isCut bool) likelihood {
	switch {
	case isRolled:
		return standard
	case isPlate:
		return platy
	case isCut:
		return cuttable
	}
	return unheard
}

// likelyFlat judges a flat, or a plate with its width or without.
func likelyFlat(s *Section, inches bool, set *tables.Set) likelihood {
	b, t := float64(s.B), float64(s.Web)
	thick := span{sheetFrom, thickestPart(set)}
	if s.Family == "plate" { // without its width
		return graded(false, thick.holds(t), anySolid.holds(t))
	}
	wide, bar := wideFlat, flatWide
	if s.Plate {
		wide = plateWide
	}
	if inches {
		bar.most = inchFlat
	}
	rolls := !s.Plate && bar.holds(b) && flatThick.holds(t)
	return graded(rolls, wide.holds(b) && thick.holds(t), anyWidth.holds(b) && anySolid.holds(t))
}

// thickestPart is the thickest flange that a section of the table has.
func thickestPart(set *tables.Set) float64 {
	most := 0.0
	for i := range set.Sections {
		most = math.Max(most, float64(set.Sections[i].Flange))
	}
	return most
}

// likelyHollow judges a hollow section by the smallest and the largest outside and wall
// of the tables. In inches the walls end with those of the American pipes.
func likelyHollow(h, b, t float64, shape Shape, inches bool, set *tables.Set) likelihood {
	high, low, wall := hollowSpans(set, shape)
	if inches {
		wall.most = thickestPipe(set, wall.most)
	}
	return graded(high.holds(h) && low.holds(b) && wall.holds(t), false, false)
}

func hollowSpans(set *tables.Set, shape Shape) (high, low, wall span) {
	none := span{math.Inf(1), 0}
	high, low, wall = none, none, none
	own := "box"
	if shape == Round {
		own = "round"
	}
	take := func(s *span, v float64) { s.least, s.most = math.Min(s.least, v), math.Max(s.most, v) }
	for i := range set.HollowSizes {
		switch row := &set.HollowSizes[i]; row.Shape {
		case own:
			take(&high, math.Max(float64(row.H), float64(row.B)))
			take(&low, math.Min(float64(row.H), float64(row.B)))
		case "wall":
			take(&wall, float64(row.H))
		}
	}
	for _, s := range []*span{&high, &low, &wall} {
		if *s == none {
			*s = span{0, math.Inf(1)} // a table without any says nothing against any
		}
	}
	return high, low, wall
}

func thickestPipe(set *tables.Set, other float64) float64 {
	most := 0.0
	for i := range set.Sections {
		if row := &set.Sections[i]; row.Family == "PIPE" || row.Family == "HSS" {
			most = math.Max(most, float64(row.Web))
		}
	}
	if most == 0 {
		return other
	}
	return most
}
