package parts

import (
	"strings"
	"testing"
)

// A grade that stands behind the section is the part's where its column is blank; the
// shop's own is for rows of which nothing says better. One that only adds a quality to
// the column's agrees with it.
func TestAGradeInTheDesignation(t *testing.T) {
	set, _ := world(t)
	l := understood(t, set, "part,section,material,length,qty\nA,SHS 60x60x4 S235JRH,,500,1\nB,SHS 60x60x4 S355J2H,S235,500,1\nC,SHS 60x60x4 S355J2H,S355,500,1\nD,SHS 60x60x4 S355,S355J2H,500,1\nE,SHS 60x60x4,,500,1\n", Options{Material: "S275"})
	for i, want := range []string{"S235JRH", "S235", "S355", "S355J2H", "S275"} {
		if got := l.Parts[i].Material; got != want {
			t.Errorf("%s is of %q, want %q", l.Parts[i].Mark, got, want)
		}
	}
	var told []int
	for _, p := range l.Problems {
		if p.Code == "two-grades" {
			told = append(told, p.Place.Row)
		}
	}
	if len(told) != 1 || told[0] != 3 {
		t.Errorf("two grades are told in rows %v, want 3", told)
	}
}

// A grade from the designation takes the place of the shop's, and of nothing else that was
// taken for granted: that a tube is formed cold, or that width and thickness say the shape.
func TestAGradeLeavesOtherAssumptions(t *testing.T) {
	set, _ := world(t)
	l := understood(t, set, "part,section,width,thickness,length,qty\nA,SHS 60x60x4 S235JRH,,,500,1\nB,base plate S355,200,10,500,1\nC,SHS 60x60x4,,,500,1\n", Options{Material: "S275"})
	for i, want := range []string{"standard=EN 10219 material=S235JRH", "section=width x thickness material=S355", "material=S275 standard=EN 10219"} {
		var got []string
		for _, a := range l.Parts[i].Assumed {
			got = append(got, a.Key+"="+a.Value)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: assumed %q, want %q", l.Parts[i].Mark, got, want)
		}
	}
}
