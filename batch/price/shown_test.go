package price

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

func TestNamesFollowTheCodes(t *testing.T) {
	plans := []plan.Plan{
		{Manner: &plan.Manner{PositionAWS: "2F", Filler: "S Al 5356", FillerAWS: "ER5356"}, Joint: &joint.Joint{Detail: &joint.Detail{Position: "PB"}}},
		{Manner: &plan.Manner{Filler: "no class", FillerAWS: ""}, Joint: &joint.Joint{Detail: &joint.Detail{Position: "PB"}}},
		{Manner: &plan.Manner{Filler: "one", FillerAWS: "both"}, Joint: &joint.Joint{Detail: &joint.Detail{Position: "PA"}}},
		{Manner: &plan.Manner{Filler: "two", FillerAWS: "both"}, Joint: &joint.Joint{Detail: &joint.Detail{Position: "PA"}}},
		{Manner: &plan.Manner{Filler: "three", FillerAWS: "one"}, Joint: &joint.Joint{Detail: &joint.Detail{Position: "PA"}}}, // the standard class of another
	}
	for _, c := range []struct {
		codes             string
		fillers, position []string
	}{
		{"aws", []string{"ER5356", "no class", "one", "two", "three"}, []string{"2F", "PB"}},
		{"iso", []string{"S Al 5356", "no class", "one", "two", "three"}, []string{"PB", "PB"}},
	} {
		n := (&Job{Opts: Options{Codes: c.codes}, Plans: plans}).Names()
		for i, want := range c.fillers {
			if got := n.Filler(plans[i].Filler); got != want {
				t.Errorf("%s: filler %q is named %q, want %q", c.codes, plans[i].Filler, got, want)
			}
		}
		for i, want := range c.position {
			if got := n.Position(&plans[i]); got != want {
				t.Errorf("%s: position of joint %d is named %q, want %q", c.codes, i, got, want)
			}
		}
	}
}
