package section

import (
	"strings"
	"testing"
)

// What no unit stands beside is read in the unit of its list, unless nobody makes that and
// the other unit gives what is made: 20x20x2 in a list of inches is no post of half a metre.
func TestUnitOfTheList(t *testing.T) {
	set := load(t)
	for _, c := range []struct {
		text   string
		inches bool
		want   string // designation; empty: refused
		told   bool
	}{
		{"SHS 20x20x2", true, "SHS 20x20x2", true},
		{"SHS 60x60x4", true, "SHS 60x60x4", true},
		{"SHS 2x2x.25", true, "SHS 50.8x50.8x6.35", false},
		{"SHS 8x8x.5", true, "SHS 203.2x203.2x12.7", false},
		{"SHS 1500x1500x40", true, "", false},
		{"CHS 20x2", true, "CHS 20x2", true},
		{"CHS 6x.28", true, "CHS 152.4x7.112", false},
		{"Ø20", true, "round 20", true},
		{"Ø1", true, "round 25.4", false},
		{"FL 4x.25", true, "flat 101.6x6.35", false},
		{"FL 40x8", true, "flat 40x8", true},
		{"FL 12x1", true, "flat 304.8x25.4", false},
		{"FL 200x10", true, "flat 200x10", true},
		{"PL .375", true, "plate 9.525", false},
		{"PL 10", true, "plate 10", true},
		{"PL 10x200", true, "flat 200x10", true},
		{"L 60x60x6", true, "L 60x60x6", false},
		{"SHS 60x60x4 mm", true, "SHS 60x60x4", false},

		{"SHS 60x60x4", false, "SHS 60x60x4", false},
		{"SHS 2x2x.25", false, "SHS 50.8x50.8x6.35", true},
		{"flat bar .5 x 2", false, "flat 50.8x12.7", true},
		{"FL 4 x .25", false, "flat 101.6x6.35", true},
		{"FL 8x2", false, "flat 8x2", true},
		{"PL .375", false, "plate 0.375", true},
		{"PL .3", false, "plate 7.62", true},
		{"Ø4", false, "round 4", true},
		{"Ø20", false, "round 20", false},
		{"100x10", false, "flat 100x10", false},
		{"FL 2500x10", false, "flat 2500x10", false},
		{"PL 10x200", false, "flat 200x10", false},

		{"FB 2x1/4", false, "flat 50.8x6.35", false},
		{"Quadratrohr 60x60x4", false, "SHS 60x60x4", false},
		{"Rundstahl 20", false, "round 20", false},
		{"channel C8x11.5", false, "C8X11.5", false},
		{"channel UPN 200", false, "UPN 200", false},
		{"channel 200", false, "", false},
		{`FL 100 x 3/8"`, false, "", false},
		{"FL 12 x 1/2", false, "flat 304.8x12.7", false},
		{"SHS 60x60x1/4", false, "", false},
		{`SHS 4x4x1/4"`, false, "SHS 101.6x101.6x6.35", false},
		{"PL 1/2x200", false, "", false},
		{`PL 1/2"x96"`, false, "flat 2438.4x12.7", false},
	} {
		got, err := ParseIn(c.text, c.inches, set)
		switch {
		case (err != nil) != (c.want == ""):
			t.Errorf("%s, inches %v: %q, %v", c.text, c.inches, got.Designation, err)
			continue
		case err != nil:
			if !strings.Contains(err.Error(), "write") {
				t.Errorf("%s: %v does not say what to do", c.text, err)
			}
			continue
		case got.Designation != c.want || (got.Doubt != nil) != c.told:
			t.Errorf("%s, inches %v: %s, told %+v", c.text, c.inches, got.Designation, got.Doubt)
		}
		again, err := Parse(got.Text, set)
		if err != nil || again.Designation != got.Designation {
			t.Errorf("%s reads back as %s, %v, not %s", got.Text, again.Designation, err, got.Designation)
		}
	}
}
