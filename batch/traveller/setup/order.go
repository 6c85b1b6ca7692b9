package setup

import "seamtally/batch/plan"

func station(p *plan.Plan) Station { return Station{p.Filler, p.Dia, p.Gas, p.Machine} }

// order groups the joints into set-ups and lays the set-ups out so that each
// station comes once, stations with the same gas next to each other.
func (a *Assembly) order() {
	setups := group(a.Plans)
	for _, s := range setups {
		if !s.Pattern().Settings {
			a.Unset = append(a.Unset, s)
			continue
		}
		a.addTo(s)
	}
	a.Stages = sameGasTogether(a.Stages)
	number := 0
	for i := range a.Stages {
		for j := range a.Stages[i].Setups {
			number++
			a.Stages[i].Setups[j].Number = number
		}
	}
	for i := range a.Unset {
		number++
		a.Unset[i].Number = number
	}
	a.Changes = max(len(a.Stages)-1, 0)
	a.Saved = changes(a.Plans) - a.Changes
}

func group(plans []*plan.Plan) []Setup {
	var out []Setup
	at := map[string]int{}
	for _, p := range plans {
		k, ok := at[key(p)]
		if !ok {
			k = len(out)
			at[key(p)] = k
			out = append(out, Setup{})
		}
		out[k].Plans = append(out[k].Plans, p)
	}
	return out
}

func (a *Assembly) addTo(s Setup) {
	here := station(s.Pattern())
	for i := range a.Stages {
		if a.Stages[i].Station == here {
			a.Stages[i].add(s)
			return
		}
	}
	stage := Stage{Station: here, Process: s.Pattern().Process}
	stage.add(s)
	a.Stages = append(a.Stages, stage)
}

func (st *Stage) add(s Setup) {
	st.Setups = append(st.Setups, s)
	for _, p := range s.Plans {
		st.Arc += p.Arc
		st.Labour += p.Cost.Labour.Total
	}
}

func sameGasTogether(stages []Stage) []Stage {
	var out []Stage
	taken := make([]bool, len(stages))
	for i := range stages {
		for j := i; j < len(stages); j++ {
			if !taken[j] && stages[j].Station.Gas == stages[i].Station.Gas {
				taken[j] = true
				out = append(out, stages[j])
			}
		}
	}
	return out
}

// changes counts the changes of station when the joints are welded in the order
// of the list.
func changes(plans []*plan.Plan) int {
	n := 0
	var last *plan.Plan
	for _, p := range plans {
		if !p.Settings {
			continue
		}
		if last != nil && station(last) != station(p) {
			n++
		}
		last = p
	}
	return n
}
