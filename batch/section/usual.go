package section

import (
	"fmt"
	"math"
	"sort"

	"seamtally/tables"
)

// Unusual returns the sizes nearest to those of a hollow section in millimetres that is
// made in no standard size: more likely a slip of the pen than a section to be had. Nil
// where it is one, and of anything else.
func Unusual(s *Section, set *tables.Set) []string {
	shape := ""
	switch {
	case s.Family == "SHS" || s.Family == "RHS":
		shape = "box"
	case s.Family == "CHS":
		shape = "round"
	default:
		return nil
	}
	h, b, wall := math.Max(float64(s.H), float64(s.B)), math.Min(float64(s.H), float64(s.B)), float64(s.Web)
	sizes, sure := nearestSizes(set, shape, h, b)
	walls, known := nearestSizes(set, "wall", wall, wall)
	if sure && known || ofInches(h, b, wall) {
		return nil
	}
	var out []string
	for _, at := range sizes {
		name := fmt.Sprintf("%s %sx%sx%s", "RHS", sizeText(at[0]), sizeText(at[1]), sizeText(walls[0][0]))
		switch {
		case shape == "round":
			name = fmt.Sprintf("CHS %sx%s", sizeText(at[0]), sizeText(walls[0][0]))
		case at[0] == at[1]:
			name = "SHS" + name[3:]
		}
		out = append(out, name)
	}
	return out
}

// nearestSizes returns the sizes of a shape that lie nearest, and whether the first is
// the size itself. A table without a size of the shape says nothing against any.
func nearestSizes(set *tables.Set, shape string, h, b float64) (near [][2]float64, exact bool) {
	for i := range set.HollowSizes {
		if row := &set.HollowSizes[i]; row.Shape == shape {
			near = append(near, [2]float64{float64(row.H), float64(row.B)})
		}
	}
	off := func(at [2]float64) float64 { return math.Abs(at[0]-h)/at[0] + math.Abs(at[1]-b)/at[1] }
	sort.SliceStable(near, func(i, j int) bool { return off(near[i]) < off(near[j]) })
	if len(near) == 0 {
		return [][2]float64{{h, b}}, true
	}
	exact = off(near[0]) < 1e-6
	if exact {
		return near[:1], true
	}
	return near[:min(len(near), mostNear-1)], false
}

// ofInches tells whether sizes are those of inches: outsides in eighths, and a wall of
// any gauge.
func ofInches(sizes ...float64) bool {
	for _, v := range sizes[:len(sizes)-1] {
		if eighths := v / 25.4 * 8; math.Abs(eighths-math.Round(eighths))/8*25.4 > 0.06 {
			return false
		}
	}
	return true
}
