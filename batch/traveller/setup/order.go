package setup

import (
	"slices"

	"seamtally/batch/plan"
)

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
	a.Stages = sorted(a.Stages)
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

// sorted lays the stages out one after another, each time taking the stage that
// has most in common with the last: first the gas, then the wire, then the
// machine; of equals the one that comes first in the list.
func sorted(stages []Stage) []Stage {
	var out []Stage
	rest := slices.Clone(stages)
	for len(rest) > 0 {
		best := 0
		for i := range rest {
			if len(out) > 0 && common(out[len(out)-1], rest[i]) > common(out[len(out)-1], rest[best]) {
				best = i
			}
		}
		out = append(out, rest[best])
		rest = slices.Delete(rest, best, best+1)
	}
	return out
}

// common weighs what two stages share.
func common(a, b Stage) int {
	n := 0
	if a.Station.Gas == b.Station.Gas {
		n += 4
	}
	if a.Station.Filler == b.Station.Filler && a.Station.Dia == b.Station.Dia {
		n += 2
	}
	if a.Station.Machine == b.Station.Machine {
		n++
	}
	return n
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
