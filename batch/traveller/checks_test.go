package traveller

import (
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/setup"
)

// Where rows share a mark, a check that holds for some of them names it once.
func TestCheckNamesAMarkOnce(t *testing.T) {
	of := func(mark string, checks ...finding.Check) *plan.Plan {
		return &plan.Plan{Manner: &plan.Manner{}, Joint: &joint.Joint{Detail: &joint.Detail{}, Mark: mark}, Checks: checks}
	}
	twice := finding.Check{Code: "mark-twice", Level: finding.Warning, Text: "it stands in row 46 too"}
	got := tellings(setup.Setup{Plans: []*plan.Plan{of("D-01", twice), of("D-01", twice), of("W-01")}})
	if len(got) != 1 || len(got[0].marks) != 1 {
		t.Errorf("%+v", got)
	}
}
