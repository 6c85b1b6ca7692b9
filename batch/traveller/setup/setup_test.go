package setup

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

func planned(mark, assembly, filler, gas, machine string, leg units.MM) plan.Plan {
	return plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: joint.Fillet, LegA: leg},
		Settings: filler != "", Filler: filler, Dia: 1.2, Gas: gas, Machine: machine},
		Joint:  &joint.Joint{Mark: mark, Assembly: assembly, Qty: 2, Detail: &joint.Detail{}},
		WireKg: 1, GasL: 100, Arc: 10, Seam: 1.5, Cost: rates.Cost{Labour: rates.Labour{Total: 30}},
	}
}

func order(a Assembly) string {
	var out []string
	for _, st := range a.Stages {
		out = append(out, st.Station.Filler+"/"+st.Station.Gas+"/"+st.Station.Machine)
	}
	return strings.Join(out, " ")
}

func TestStationsComeOnceAndNeighboursShare(t *testing.T) {
	job := &price.Job{Plans: []plan.Plan{
		planned("1", "A", "solid", "M21", "big", 6), planned("2", "A", "inox", "M12", "small", 6), planned("3", "A", "cored", "M21", "small", 6),
		planned("4", "A", "solid", "M21", "big", 6), planned("5", "A", "inox", "M12", "small", 4), planned("6", "A", "solid", "M21", "small", 6),
		planned("7", "A", "", "", "", 6),
	}}
	a := Group(job)[0]
	if got := order(a); got != "solid/M21/big solid/M21/small cored/M21/small inox/M12/small" {
		t.Errorf("order of work: %s", got)
	}
	if a.Changes != 3 || a.Saved != 2 {
		t.Errorf("changes %d, saved %d; want 3 and 2 of the list's 5", a.Changes, a.Saved)
	}
	if got := strings.Join(a.Stages[0].Setups[0].Marks(), " "); got != "1 4" {
		t.Errorf("the first set-up is that of %s, want 1 4", got)
	}
	if len(a.Unset) != 1 || a.Unset[0].Number != 6 {
		t.Errorf("without settings: %+v", a.Unset)
	}
}

func TestNeedsAddUp(t *testing.T) {
	job := &price.Job{Plans: []plan.Plan{planned("1", "A", "solid", "M21", "big", 6), planned("2", "A", "solid", "M21", "big", 5), planned("3", "B", "solid", "C1", "big", 5)}}
	job.Shop.Wires = []rates.WirePrice{{Filler: "solid", Dia: 1.2, SpoolKg: 15}}
	job.Shop.Gases = []rates.GasPrice{{Gas: "M21", Cylinder: 11000}}
	all := Group(job)
	a := all[0]
	if len(all) != 2 || len(a.Wires) != 1 || a.Wires[0].Kg != 2 || a.Wires[0].Pack != 15 || a.Gases[0].L != 200 || a.Gases[0].Pack != 11000 {
		t.Errorf("needs: %+v %+v", a.Wires, a.Gases)
	}
	if a.Arc != 20 || a.Labour != 60 || a.Copies != 4 || a.Seam != 3 {
		t.Errorf("sums: %v %v %v %v", a.Arc, a.Labour, a.Copies, a.Seam)
	}
}

// Every joint is in exactly one set-up, numbers run from 1, and the order of work
// never has more changes than there are stations, nor than the list's own order.
func TestEveryJointOnce(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		pick := func(name string, from ...string) string { return rapid.SampledFrom(from).Draw(rt, name) }
		var job price.Job
		n := rapid.IntRange(0, 25).Draw(rt, "joints")
		for i := range n {
			job.Plans = append(job.Plans, planned(fmt.Sprint(i), pick("assembly", "A", "B", ""), pick("wire", "solid", "cored", ""),
				pick("gas", "M21", "C1"), pick("machine", "x", "y"), units.MM(rapid.IntRange(3, 5).Draw(rt, "leg"))))
		}
		seen := map[string]int{}
		for _, a := range Group(&job) {
			for i, s := range a.Setups() {
				if s.Number != i+1 {
					rt.Fatalf("set-up %d has number %d", i+1, s.Number)
				}
				for _, m := range s.Marks() {
					seen[m]++
				}
			}
			if a.Saved < 0 {
				rt.Fatalf("the order of work has %d more changes than the list", -a.Saved)
			}
		}
		if len(seen) != n {
			rt.Fatalf("%d joints, %d on sheets", n, len(seen))
		}
		for m, k := range seen {
			if k != 1 {
				rt.Fatalf("joint %s is on %d sheets", m, k)
			}
		}
	})
}
