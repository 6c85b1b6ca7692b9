package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// A seam of more unlike passes than the table holds says how many it leaves out.
func TestPassesLeftOutAreTold(t *testing.T) {
	job := jobOf(t, []joint.Joint{butt("B", joint.SingleV, 30, 1000, "PA")}, metric)
	runs := job.Plans[0].Runs
	for len(runs) < 14 {
		runs = append(runs, runs[len(runs)-1])
	}
	runs = runs[:14]
	for i := range runs {
		runs[i].Number = i + 1
		runs[i].Current = units.Amp(200 + 5*i) // no two alike
	}
	job.Plans[0].Runs = runs
	doc := faultless(t, job)
	if text := doc.Dump(); !strings.Contains(text, "5 more passes") { // nine rows stand in full
		t.Errorf("the five passes left out are not told:\n%s", text)
	}
}
