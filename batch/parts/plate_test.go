package parts

import (
	"math"
	"strings"
	"testing"
)

// A plate may be written with all three of its sizes. Units stand behind any of them, as
// signs or as words, and win over those of the list; a point in front is no stroke behind
// the word, one that shortens the word no point in front; a grade may follow. What mixes inches and millimetres is not read.
func TestThreeSizesOfAPlate(t *testing.T) {
	set, _ := world(t)
	const in = 25.4
	for _, c := range []struct {
		text          string
		inches        bool
		thick, w, l   float64 // 0: refused
		grade, listed string
	}{
		{"PL 10x200x300", false, 10, 200, 300, "S275", ""},
		{"PL 10x200x300 S355J2", false, 10, 200, 300, "S355J2", ""},
		{"PL 10x200x300 S355", false, 10, 200, 300, "S235", "S235"},
		{"PL. 10 x 200 x 300 mm", true, 10, 200, 300, "S275", ""},
		{"PL 10 mm x 200 mm x 300 mm", true, 10, 200, 300, "S275", ""},
		{"PL 10mm x 200 x 300", true, 10, 200, 300, "S275", ""},
		{"PL .375x8x12", true, 0.375 * in, 8 * in, 12 * in, "S275", ""},
		{"PL.375x8x12", true, 0.375 * in, 8 * in, 12 * in, "S275", ""},
		{"Bl.10x200x300", false, 10, 200, 300, "S275", ""},
		{"Bl. 10x200x300", false, 10, 200, 300, "S275", ""},
		{"PL-.375 x 8 x 12\"", false, 0.375 * in, 8 * in, 12 * in, "S275", ""},
		{"PL 3/8\" x 8\" x 12\"", false, 0.375 * in, 8 * in, 12 * in, "S275", ""},
		{"PL 3/8″ x 8″ x 12″", false, 0.375 * in, 8 * in, 12 * in, "S275", ""},
		{"PL 3/8 in x 8 in. x 12 inches A36", false, 0.375 * in, 8 * in, 12 * in, "A36", ""},
		{"PL 1/2\" x 3 1/2\" x 6\"", false, 0.5 * in, 3.5 * in, 6 * in, "S275", ""},
		{"PL 1/2x3-1/2x6", false, 0.5 * in, 3.5 * in, 6 * in, "S275", ""},
		{"PL 10mm x 8\" x 12\"", false, 0, 0, 0, "", ""},
		{"PL 3/8 x 200 mm x 300 mm", false, 0, 0, 0, "", ""},
		{"PL .375x8x12", false, 0, 0, 0, "", ""}, // no plate of 0.375 mm
	} {
		l := understood(t, set, "part,section,material,length,qty\nA,\""+strings.ReplaceAll(c.text, `"`, `""`)+"\","+c.listed+",,1\nB,PL 10x200,S235,400,1\n", Options{Material: "S275", Inches: c.inches})
		got := l.Parts[0]
		if c.thick == 0 {
			if got.Mark == "A" {
				t.Errorf("%s is read as %s", c.text, got.Section.Designation)
			}
			continue
		}
		if got.Mark != "A" || math.Abs(float64(got.Section.Web)-c.thick) > 1e-6 || math.Abs(float64(got.Width)-c.w) > 1e-6 || math.Abs(float64(got.Length)-c.l) > 1e-6 || got.Material != c.grade {
			t.Errorf("%s (inches %v): %s, %v x %v x %v of %q, want %v x %v x %v of %q; %v", c.text, c.inches, got.Mark, got.Section.Web, got.Width, got.Length, got.Material, c.thick, c.w, c.l, c.grade, l.Problems)
		}
	}
}

// Width and thickness beside a word are those of a plate; beside the name of another shape
// they are not, and a tube of 13 kg is no flat of 4.
func TestWidthAndThicknessMakeNoTube(t *testing.T) {
	set, _ := world(t)
	for word, plate := range map[string]bool{"base plate": true, "gusset": true, "square plate": true, "": true, "P": true, "FL": true, "SHS": false, "CHS": false, "L": false, "angle": false, "angle cleat": false, "Rohr": false, "RHS post": false, "IPE": false} {
		l := understood(t, set, "part,section,width,thickness,length,qty,material\nA,"+word+",60,4,2000,1,S235\nB,PL 10x200,,,400,1,S235\n", Options{})
		if got := l.Parts[0].Mark == "A"; got != plate {
			t.Errorf("%q 60 wide and 4 thick: read %v, want %v; %s %v", word, got, plate, l.Parts[0].Section.Designation, l.Problems)
		}
	}
}

// A width is one size: 60x60 is no product as two pieces of a length are.
func TestTwoSizesInAWidth(t *testing.T) {
	set, _ := world(t)
	l := understood(t, set, "part,section,width,thickness,length,qty,material\nA,plate,60x60,4,2000,1,S235\nB,plate,60,4,2x500,1,S235\n", Options{})
	if len(l.Parts) != 1 || l.Parts[0].Mark != "B" {
		t.Errorf("%d parts, first %s %s; want B alone", len(l.Parts), l.Parts[0].Mark, l.Parts[0].Section.Designation)
	}
}

// A designation that its standard's table does not hold is told as that, though width and
// thickness stand beside it.
func TestUnknownSizeBesideWidthAndThickness(t *testing.T) {
	set, _ := world(t)
	l := understood(t, set, "part,section,width,thickness,length,qty,material\nA,UPN 85,85,5,1000,2,S235\nB,SHS,60,4,1000,1,S235\nC,PL 10x200,,,400,1,S235\n", Options{})
	said := map[int]string{}
	for _, p := range l.Problems {
		if p.Code == "unknown-section" {
			said[p.Place.Row] = p.Line()
		}
	}
	if !strings.Contains(said[2], "UPN 80") || !strings.Contains(said[3], "without its sizes") {
		t.Errorf("told %v", said)
	}
}
