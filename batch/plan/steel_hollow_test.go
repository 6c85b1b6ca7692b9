package plan

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
)

// A bare grade is judged by the standards of plates and beams; by those of hollow
// sections too where a part is one, and where the grade ends in H whatever the part is.
func TestBareGradesOfPlatesAreNotHollowSections(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	m := c.material("S235")
	hollow := func(words string, part bool) bool {
		for _, l := range c.steelFacts(words, m, part).limits {
			if strings.Contains(l.row.Standard, "EN 10210") {
				return true
			}
		}
		return false
	}
	if hollow("S235", false) || !hollow("S235", true) || !hollow("S235JRH", false) || hollow("S235JR", true) {
		t.Error("hollow sections are not told from plates")
	}
	if plate, tube := c.steelOf("S235", m, 10, false), c.steelOf("S235", m, 10, true); plate.cet > tube.cet || plate.cet <= 0 {
		t.Errorf("CET %.3f of a plate, %.3f of a tube", plate.cet, tube.cet)
	}
	for part, want := range map[string]bool{"SHS 60x60x4": true, "CHS 48.3x3.2": true, "IPE 200": false, "": false} {
		j := changed(filletJoint(4, 4, "PB"), func(j *joint.Joint) {})
		j.Part1 = part
		if got := c.anyHollow(c.readTask(&j)); got != want {
			t.Errorf("%q: hollow %v", part, got)
		}
	}
}
