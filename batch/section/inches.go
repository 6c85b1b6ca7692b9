package section

import (
	"math"
	"strconv"
	"strings"

	"seamtally/batch/units"
)

// whole is by how much in mm a size may differ from sixteenths of an inch and still be
// one: what a designation in millimetres keeps of 1/16 in is 0.01 mm.
const whole = 0.011

// InInches returns the designation of a flat, a plate or a plain bar as people who work
// in inches say it, "flat 4x1/4 in", where all its sizes are sixteenths of an inch.
// Anything else is sold by the name that it has and keeps it.
func InInches(designation string) string {
	word, sizes, _ := strings.Cut(designation, " ")
	switch word {
	case "flat", "plate", "round", "square":
	default:
		return designation
	}
	var out []string
	for size := range strings.SplitSeq(sizes, "x") {
		mm, err := strconv.ParseFloat(size, 64)
		in := math.Round(mm/units.MMPerInch*16) / 16
		if err != nil || in <= 0 || math.Abs(in*units.MMPerInch-mm) > whole {
			return designation
		}
		out = append(out, inchName(in))
	}
	return word + " " + strings.Join(out, "x") + " in"
}
