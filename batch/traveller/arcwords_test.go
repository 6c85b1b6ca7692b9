package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

// A globular arc throws coarse drops and crackles: told that a good one hisses and hardly
// spatters, a welder would turn the dials until it is another arc.
func TestGoodBeadOfGlobularArcDoesNotHiss(t *testing.T) {
	j := leg("W", 8, 12, 12, 500, "PB")
	j.Wire, j.Gas = "G3Si1", "C1"
	job := jobOf(t, []joint.Joint{j}, metric)
	if mode := job.Plans[0].Mode(); mode != plan.Globular {
		t.Fatalf("laid in %s: no fixture", mode)
	}
	good := said(lastOf(faultless(t, job)), "test bead")
	if !strings.Contains(good, "coarse drops") || strings.Contains(good, "hiss") || strings.Contains(good, "hardly a spatter") {
		t.Errorf("a good test bead of a globular arc: %q", good)
	}
}

// A list with one column of thicknesses has stated it: the picture draws the other part as
// thick, as the planner takes it, and says so; nothing was left to an example.
func TestPictureOfOneThickness(t *testing.T) {
	for _, c := range []struct {
		j    joint.Joint
		want string
		not  string
	}{
		{leg("W", 6, 10, 0, 500, "PB"), "other part taken as equally thick", "not stated"},
		{leg("W", 6, 0, 10, 500, "PB"), "other part taken as equally thick", "not stated"},
		{leg("W", 6, 0, 0, 500, "PB"), "thickness not stated", "taken as thick"},
		{leg("W", 6, 10, 10, 500, "PB"), "scale", "taken as thick"},
	} {
		text := said(lastOf(faultless(t, jobOf(t, []joint.Joint{c.j}, metric))), "picture")
		if !strings.Contains(text, c.want) || strings.Contains(text, c.not) {
			t.Errorf("t1 %v, t2 %v: %q", c.j.T1, c.j.T2, text)
		}
	}
}

func lastOf(doc *page.Document) *page.Page { return doc.Pages[len(doc.Pages)-1] }
