package joint

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// nothing is the reading of a text that says no one figure.
const nothing = "refused"

// freshCells are texts of cells that were written down before anybody looked at how
// they would be read: the column, the text, and what it says ("leg 6", "500").
// V60 is the kind: a V of 60°. Refused says that it has to be refused, or is, though a reader would know.
var freshCells = [][3]string{
	{"size", "a 4", "throat 4"}, {"size", "A4", "throat 4"}, {"size", "z = 6 mm", "leg 6"}, {"size", "a=3,5", "throat 3.5"},
	{"size", "6×8", "leg 6/8"}, {"size", "6 x 8 mm", "leg 6/8"}, {"size", "6*8", "leg 6/8"}, {"size", "z6x8", "leg 6/8"},
	{"size", "6 mm fillet", "leg 6"}, {"size", "fillet 6", "leg 6"}, {"size", "6 mm leg", "leg 6"}, {"size", "leg 6mm", "leg 6"}, {"size", "4 mm throat", "throat 4"},
	{"size", "a4/z6", nothing}, {"size", "6±0.5", "leg 6"}, {"size", "6 +/- 1", "leg 6"}, {"size", "5-6", nothing}, {"size", "5÷6", nothing}, {"size", "5…6", nothing},
	{"size", ">=6", nothing}, {"size", "≥6", nothing}, {"size", "≈5", nothing}, {"size", "min. 5", nothing}, {"size", "max 5", nothing}, {"size", "2x6 (2L)", nothing},
	{"size", "3/16 in.", "leg 4.7625"}, {"size", "⁵⁄₁₆\"", "leg 7.9375"}, {"size", "¼\"", "leg 6.35"}, {"size", "⅜”", "leg 9.525"}, {"size", "1/4\" fillet", "leg 6.35"}, {"size", ".25\"", "leg 6.35"}, {"size", "1/4-3/8", nothing}, {"size", "1/4\"x3/8\"", "leg 6.35/9.525"},
	{"size", "Ø60", nothing}, {"size", "V60", " 0"}, {"size", "6 mm / 8 mm", nothing}, {"size", "６", "leg 6"}, {"size", "6,0", "leg 6"}, {"size", "06 mm", "leg 6"}, {"size", "6mm.", "leg 6"}, {"size", "6 mm²", nothing}, {"size", "−6", nothing}, {"size", "0", nothing}, {"size", "6OO", nothing}, {"size", "6 cm", "leg 60"}, {"size", "a4z6", nothing}, {"size", "4a", "throat 4"}, {"size", "6z", "leg 6"}, {"size", "5 (4)", nothing},
	{"length", "1.234,5", "1234.5"}, {"length", "1,234.5", "1234.5"}, {"length", "1 234,5", "1234.5"}, {"length", "1'234", "1234"}, {"length", "1 234", "1234"}, {"length", "1.234", nothing}, {"length", "1,234", nothing},
	{"length", "1'-6 1/2\"", "469.9"}, {"length", "1’-6½”", "469.9"}, {"length", "1′ 6½″", "469.9"}, {"length", "1 ft 6 1/2 in", "469.9"}, {"length", "18 1/2\"", "469.9"}, {"length", "18-1/2 in", "469.9"}, {"length", "18.5\"", "469.9"}, {"length", "3'", "914.4"}, {"length", "3 ft.", "914.4"}, {"length", "0'-9\"", "228.6"}, {"length", "5'-13\"", nothing},
	{"length", "1.2 m", "1200"}, {"length", "1,2m", "1200"}, {"length", "120 cm", "1200"}, {"length", "12 dm", "1200"}, {"length", "500 MM", "500"}, {"length", "500㎜", "500"}, {"length", "５００", "500"}, {"length", "500 mm.", "500"}, {"length", "L=500", "500"}, {"length", "500,-", nothing}, {"length", "~500", nothing}, {"length", "500 approx", nothing}, {"length", "2 x 500", "1000"}, {"length", "500+300", "800"}, {"length", "500 (x2)", nothing}, {"length", "5OO", nothing}, {"length", "l00", nothing}, {"length", "1e3", "1000"}, {"length", "−500", nothing}, {"length", "0", nothing}, {"length", "500/300", nothing}, {"length", "500-600", nothing}, {"length", "Ø60", nothing}, {"length", "3,5 м", "3500"}, {"length", "500 mm ea", nothing},
	{"t1", "t=10", "10"}, {"t1", "10 mm.", "10"}, {"t1", "10THK", "10"}, {"t1", "10 thk", "10"}, {"t1", "PL10", "10"}, {"t1", "10mm pl", "10"}, {"t1", "t10", "10"}, {"t1", "t15", "15"}, {"t1", "t1=8", "8"}, {"t1", "16 ga", nothing}, {"t1", "16 gauge", nothing}, {"t1", "#10", nothing}, {"t1", "3/8", nothing}, {"t1", "3/8\"", "9.525"}, {"t1", "1 1/2 in", "38.1"}, {"t1", "0.375″", "9.525"}, {"t1", "1¼\"", "31.75"}, {"t1", "10/12", nothing}, {"t1", "10-12", nothing}, {"t1", "8+8", nothing}, {"t1", "10±0.3", "10"}, {"t1", "2x8", nothing}, {"t1", "9½", nothing}, {"t1", "10 ÷ 12", nothing}, {"t1", "1/2 mm", nothing},
}

// refusedCells are those that a reader would know and that are refused all the same:
// tolerances, and units that no drawing of steel has.
var refusedCells = [][2]string{{"size", "6±0.5"}, {"size", "6 +/- 1"}, {"size", "6 cm"}, {"length", "12 dm"}, {"t1", "10±0.3"}}

// TestFreshCells: a cell that is refused though it says a figure is named above, and one
// that is named and read after all fails too.
func TestFreshCells(t *testing.T) {
	set := loadTables(t)
	for _, c := range freshCells {
		cells := map[string]string{"size": "z5", "length": "500", "t1": "6", c[0]: c[1]}
		var text strings.Builder
		w := csv.NewWriter(&text)
		_ = w.Write([]string{"Mark", "Length (mm)", "Size", "Thickness (mm)"}) // A builder takes everything.
		_ = w.Write([]string{"W1", cells["length"], cells["size"], cells["t1"]})
		w.Flush()
		got := nothing
		l, err := understand(t, set, text.String(), Options{})
		if err == nil && len(l.Joints) == 1 {
			j := l.Joints[0]
			switch c[0] {
			case "size":
				got = fmt.Sprintf("%s %.7g", j.Size.Means, j.Size.A)
				if j.Size.B > 0 {
					got += fmt.Sprintf("/%.7g", j.Size.B)
				}
				if j.Stitch != nil || j.Sides == 2 {
					got += fmt.Sprintf(" stitch %v sides %d", j.Stitch, j.Sides)
				}
			case "length":
				got = fmt.Sprintf("%.7g", j.Length)
			case "t1":
				got = fmt.Sprintf("%.7g", j.T1)
			}
		}
		want := c[2]
		if slices.Contains(refusedCells, [2]string{c[0], c[1]}) {
			want = nothing
		}
		if got != want {
			t.Errorf("%s %q is read as %s, want %s: it says %s", c[0], c[1], got, want, c[2])
		}
	}
}
