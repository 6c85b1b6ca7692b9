package main

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// What keeps a joint from having settings is said once.
func TestNoSettingsIsSaidOnce(t *testing.T) {
	var b strings.Builder
	j := joint.Joint{Mark: "A", Detail: &joint.Detail{}}
	explained(&b, "list.csv", &plan.Plan{Joint: &j, Manner: &plan.Manner{NoSettings: "no settings: the material is blank"}})
	if !strings.Contains(b.String(), "\nNo settings: the material is blank\n") {
		t.Error(b.String())
	}
}
