package plan

import (
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// What holds for many joints is said at the first of them, with the marks of the
// others; what the welder acts on stays at every joint.
func TestWhatHoldsForTheListIsSaidOnce(t *testing.T) {
	set, shop := world(t)
	var joints []joint.Joint
	for i, mark := range []string{"A", "B", "C"} {
		j := filletJoint(6+float64(i), 50, "PB")
		j.Mark, j.Quality, j.Material, j.Place.Row = mark, "C", "S355", i+2
		joints = append(joints, j)
	}
	joints[2].Quality = "B"
	plans := Joints(joints, set, shop, Options{})
	first, _ := checkOf(&plans[0], "quality-level")
	if !strings.Contains(first.Text, "; the same for B (row 3)") || first.More != "" {
		t.Errorf("the first joint does not speak for the second: %q, %q", first.Text, first.More)
	}
	if c, said := checkOf(&plans[1], "quality-level"); said {
		t.Errorf("said again at the second: %s", c.Text)
	}
	if _, said := checkOf(&plans[2], "quality-level"); !said {
		t.Error("another level is another thing to say")
	}
	for i := range plans {
		if c, said := checkOf(&plans[i], "preheat"); !said || c.More == "" || len(c.Text) > 150 {
			t.Errorf("joint %d: the preheat is not told short with its figures behind it: %+v", i, c)
		}
	}
	own := Explain(joints, 1, set, shop, Options{})
	for _, s := range own.Steps {
		if s.ID == "QUALITY-503" && s.Numbers == "b = "+n2(units.MM(7*1.4142135623730951)) { // the face of z7 at 90 degrees
			return
		}
	}
	t.Error("explain does not show the limits of the joint's own size")
}

// Of many joints the first are named with their rows and all behind the sentence: from a
// number alone nobody finds them.
func TestTheOtherJointsAreNamed(t *testing.T) {
	set, shop := world(t)
	var joints []joint.Joint
	for i := range 9 {
		j := filletJoint(6+float64(i), 50, "PB")
		j.Mark, j.Quality, j.Material, j.Place.Row = "W"+strconv.Itoa(i+1), "C", "S355", i+2
		joints = append(joints, j)
	}
	joints[2].Mark = ""
	first, _ := checkOf(&Joints(joints, set, shop, Options{})[0], "quality-level")
	if !strings.HasSuffix(first.Text, "; the same for W2 (row 3), row 4, W4 (row 5), W5 (row 6), W6 (row 7) and 3 more") || first.More != "Also W2, row 4, W4, W5, W6, W7, W8, W9" {
		t.Errorf("%q, %q", first.Text, first.More)
	}
}
