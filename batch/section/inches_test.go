package section

import (
	"strings"
	"testing"
)

// A flat that is sold in inches is called in inches where people work in them; what is
// sold in millimetres keeps its name.
func TestInInches(t *testing.T) {
	set := load(t)
	for from, want := range map[string]string{
		`FL 1/4"x4"`: "flat 4x1/4 in", `PL 1/2 x 10 in`: "flat 10x1/2 in", `FL 3/16"x1-1/2"`: "flat 1-1/2x3/16 in", `round 3/4"`: "round 3/4 in", `PL 3/8"`: "plate 3/8 in",
		"FL 100x10": "flat 100x10", "IPE 200": "IPE 200", "CHS 60.3x4": "CHS 60.3x4", "HSS4X4X1/4": "HSS4X4X1/4", "round 20": "round 20",
	} {
		s, err := Parse(from, set)
		if err != nil {
			t.Fatal(err)
		}
		got := InInches(s.Designation)
		if got != want {
			t.Errorf("%s is called %q in inches, want %q", from, got, want)
		}
		if again, err := Parse(got, set); err != nil || again.Designation != s.Designation {
			t.Errorf("%q is read as %q (%v), not as %q", got, again.Designation, err, s.Designation)
		}
	}
}

// Inches may stand behind every size, as a sign or as a word; with millimetres behind
// another size nobody knows what is meant, and that is said.
func TestInchesBehindEverySize(t *testing.T) {
	set := load(t)
	for from, want := range map[string]string{
		`PL 1/2" x 6"`: "flat 152.4x12.7", `FL 3 1/2" x 1/4"`: "flat 88.9x6.35", `PL 1/2 in x 6 in`: "flat 152.4x12.7", `FL 3-1/2″ × 1/4″`: "flat 88.9x6.35", `PL 1/2in. x 6in.`: "flat 152.4x12.7",
		`plate 0.5 inch x 6 inches`: "flat 152.4x12.7", `pl 1/2inx6in`: "flat 152.4x12.7", `PL 6" x 1/2" A36`: "flat 152.4x12.7", `HSS 4" x 4" x 1/4"`: "HSS4X4X1/4", `L 3" x 3" x 1/4"`: "L3X3X1/4",
		"FL 100 mm  x  10 mm": "flat 100x10", "PL 1/2'' x 6''": "flat 152.4x12.7", "160 INP": "INP 160", "INP 160": "INP 160",
	} {
		if s, err := Parse(from, set); err != nil || s.Designation != want {
			t.Errorf("%s is read as %q (%v), want %q", from, s.Designation, err, want)
		}
	}
	for from, why := range map[string]string{
		`PL 1/2 in x 150 mm`: "inches and in millimetres", `PL 150 mm x 1/2 in`: "inches and in millimetres", `PL 1/2" x 150 mm`: "inches and in millimetres", `FL 100mm x 4 in`: "inches and in millimetres",
		`PL 1/2 in 6 in`: "figures beside its sizes", `PL 1/2" 6"`: "figures beside its sizes", `PL 1/2" x 6'`: "a size in feet", `FL 1/2 x 6’`: "a size in feet", `PL 1/2 ft x 6 in`: "figures beside its sizes",
	} {
		if s, err := Parse(from, set); err == nil || !strings.Contains(err.Error(), why) {
			t.Errorf("%s is read as %q (%v), want it refused: %s", from, s.Designation, err, why)
		}
	}
}

// A point between word and figure shortens the word, as in Fl.80x8; in inches, and between
// the sizes, it is that of a fraction.
func TestPointBehindAWord(t *testing.T) {
	set := load(t)
	for from, want := range map[string]string{
		"Fl.80x8": "flat 80x8", "FL.100x10": "flat 100x10", "PL.10x200": "flat 200x10", "Bl.10": "plate 10", "RD.20": "round 20", "L.50x50x5": "L 50x50x5", "U.140": "UPN 140", "Fl. 80x8": "flat 80x8",
		`PL.375" x 8"`: "flat 203.2x9.525", "PL.375x8 IN": "flat 203.2x9.525", "FL.5x1/4": "flat 12.7x6.35", "FL .5x4 IN": "flat 101.6x12.7", `FL 4" x .25"`: "flat 101.6x6.35",
		"HSS 6x6x.250": "HSS6X6X1/4", "HSS6X6X.250": "HSS6X6X1/4", "L3x3x.25": "L3X3X1/4", "CHS 60.3x.5": "CHS 60.3x0.5",
	} {
		if s, err := Parse(from, set); err != nil || s.Designation != want {
			t.Errorf("%s is read as %q (%v), want %q", from, s.Designation, err, want)
		}
	}
}
