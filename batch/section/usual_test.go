package section

import (
	"slices"
	"strings"
	"testing"

	"seamtally/tables"
)

// TestUnusual: a size in which no tube is made is told with those next to it; one that
// is made, in millimetres or inches, is not.
func TestUnusual(t *testing.T) {
	set := load(t)
	for text, near := range map[string]string{
		"SHS 66x66x4": "SHS 65x65x4", "SHS 60x60x4.3": "SHS 60x60x4.5", "RHS 105x50x4": "RHS 100x50x4", "CHS 61x4": "CHS 60.3x4", "CHS 48.5x3.2": "CHS 48.3x3.2", "RHS 66x60x4": "SHS 65x65x4",
		"SHS 60x60x4": "", "RHS 50x100x4": "", "CHS 60.3x3.2": "", "CHS 4.5x0.237 in": "", "HSS4X4X1/4": "", "SHS 2x2x1/8": "", "IPE 200": "", "L 50x50x5": "", "Pipe4STD": "", "RHS 120x60x6.3 HF": "",
	} {
		s, err := Parse(text, set)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		got := Unusual(&s, set)
		if near == "" && len(got) > 0 || near != "" && !slices.Contains(got, near) {
			t.Errorf("%q: %s, want %q", text, strings.Join(got, ", "), near)
		}
	}
}

// TestPublishedHollowSizesAreUsual: no size of the published tables is told as unusual.
func TestPublishedHollowSizesAreUsual(t *testing.T) {
	set := load(t)
	for _, name := range []string{"sections-hollow-rect", "sections-hollow-circular", "sections-more"} {
		for _, f := range figures(t, name) {
			s, err := Parse(f.spelling(), set)
			if err != nil {
				t.Errorf("%s: %v", f.spelling(), err)
			} else if near := Unusual(&s, set); len(near) > 0 {
				t.Errorf("%s is told as unusual, beside %s", f.spelling(), strings.Join(near, ", "))
			}
		}
	}
}

// TestATableWithoutWallsOrOutsidesSaysNothingOfThem: a user's own table may have either
// alone, and what it lacks is taken as it is written.
func TestATableWithoutWallsOrOutsidesSaysNothingOfThem(t *testing.T) {
	set := load(t)
	box := tables.HollowSize{Shape: "box", H: 60, B: 60}
	round := tables.HollowSize{Shape: "round", H: 60.3, B: 60.3}
	wall := tables.HollowSize{Shape: "wall", H: 4, B: 4}
	for _, c := range []struct {
		sizes      []tables.HollowSize
		text, near string
	}{
		{nil, "SHS 66x66x4.3", ""},
		{[]tables.HollowSize{box}, "SHS 66x66x4.3", "SHS 60x60x4.3"},
		{[]tables.HollowSize{round}, "CHS 61x4.3", "CHS 60.3x4.3"},
		{[]tables.HollowSize{wall}, "SHS 66x66x4.3", "SHS 66x66x4"},
		{[]tables.HollowSize{wall}, "SHS 66x66x4", ""},
		{[]tables.HollowSize{box, wall}, "SHS 66x66x4.3", "SHS 60x60x4"},
	} {
		own := *set
		own.HollowSizes = c.sizes
		s, err := Parse(c.text, set)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(Unusual(&s, &own), ", "); got != c.near {
			t.Errorf("%q beside %v: %q, want %q", c.text, c.sizes, got, c.near)
		}
	}
}
