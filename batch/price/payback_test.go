package price

import (
	"testing"

	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// Two joints at 60 and 40 and one change of eight minutes at 48 an hour are
// 106.4; with another machine 30 and 40 and no change are 70. A machine of 3640 is
// paid back by a hundred such jobs.
func TestPayBackByHand(t *testing.T) {
	shop := rates.Shop{ChangeMin: 8, LabourRate: 30, OverheadPct: 60, MachinePrice: map[string]units.Money{"big": 3640}}
	joint := func(cost units.Money, minutes units.Minute, machine string) plan.Plan {
		return plan.Plan{Manner: &plan.Manner{Settings: true, Filler: "G3Si1", Dia: 1, Gas: "M21", Machine: machine},
			Cost: rates.Cost{Total: cost, Labour: rates.Labour{Total: minutes}},
		}
	}
	job := Job{Shop: shop, Plans: []plan.Plan{joint(60, 50, "small"), joint(40, 30, "old")}}
	p := NewPayBack("big", &job, []plan.Plan{joint(30, 20, "big"), joint(40, 30, "big")})
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"saving", float64(p.Saves), 36.4}, {"hours", p.Hours, 38.0 / 60}, {"jobs", p.Jobs, 100}} {
		if c.got < c.want-1e-9 || c.got > c.want+1e-9 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	if p := NewPayBack("big", &job, job.Plans); p.Saves != 0 || p.Jobs != 0 {
		t.Errorf("nothing saved is %+v", p)
	}
}
