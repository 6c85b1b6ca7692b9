package parts

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
)

// Sizes without a unit are read in that of the list where such a part is made, and in the
// other where only that gives one, which is told; sizes in two units are asked about.
func TestUnitOfSections(t *testing.T) {
	set, _ := world(t)
	for _, c := range []struct {
		section string
		inches  bool
		want    string  // designation; empty: refused
		length  float64 // mm
		code    string  // of what is told
	}{
		{"SHS 20x20x2", true, "SHS 20x20x2", 254, "size-unit"},
		{"SHS 2x2x.25", true, "SHS 50.8x50.8x6.35", 254, ""},
		{"Ø20", true, "round 20", 254, "size-unit"},
		{"flat bar .5 x 2", false, "flat 50.8x12.7", 10, "size-unit"},
		{"PL 10x200", true, "flat 200x10", 254, "size-unit"},
		{`PL 10 x 200 x 12""`, false, "", 0, "mixed-units"},
		{"PL 3/8 x 200 x 300", false, "", 0, "mixed-units"},
		{"PL 3/8 x 6 x 12", false, "flat 152.4x9.525", 304.8, ""},
		{"PL .5 x 6 x 12", true, "flat 152.4x12.7", 304.8, ""},
		{"PL 10 x 200 x 300", true, "flat 200x10", 300, "size-unit"},
		{"PL 10 x 200 x 300", false, "flat 200x10", 300, ""},
	} {
		length := "10"
		if strings.Count(c.section, "x") == 2 && strings.HasPrefix(c.section, "PL") {
			length = ""
		}
		l := understood(t, set, "part,section,length,qty\nA,\""+c.section+"\","+length+",2\nB,IPE 200,90,1\n", Options{Inches: c.inches})
		told := ""
		for _, p := range l.Problems {
			if p.Place.Row == 2 && p.Level != finding.Note {
				told += p.Code
				if p.Hint == "" || p.Place.Col != 2 {
					t.Errorf("%s: %+v", c.section, p)
				}
			}
		}
		if told != c.code {
			t.Errorf("%s, inches %v: told %q, not %q: %+v", c.section, c.inches, told, c.code, l.Problems)
		}
		if c.want == "" {
			if len(l.Parts) != 1 {
				t.Errorf("%s, inches %v: read as %+v", c.section, c.inches, l.Parts[0].Section)
			}
			continue
		}
		if len(l.Parts) != 2 || l.Parts[0].Section.Designation != c.want || far(float64(l.Parts[0].Length), c.length) {
			t.Errorf("%s, inches %v: %+v", c.section, c.inches, l.Parts)
		}
	}
}

// The size of a weld under a heading of sections shows that the joint list was named as
// the cut list.
func TestAWeldSizeIsNoSection(t *testing.T) {
	set, _ := world(t)
	l := understood(t, set, "Part;Size;Qty;Length;Material\nB1;z4;1;500;S235\n", Options{})
	said := ""
	for _, p := range l.Problems {
		said += p.Line()
	}
	if !strings.Contains(said, "this was read as a cut list") || !strings.Contains(said, "--parts") {
		t.Error(said)
	}
}
