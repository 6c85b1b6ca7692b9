package section

import "testing"

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
