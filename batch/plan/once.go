package plan

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
)

// saidOnce are the codes of checks that speak of the whole list rather than of
// one joint: nobody acts on them joint by joint.
var saidOnce = []string{"quality-level", "site-flow", "site-flow-screens", "wps-governs", "stitch-outdoor", "short-arc-aws"}

// sayOnce keeps a check that several joints have in the same words at the first
// of them, with the first of the others in its text and the marks of all behind it.
func sayOnce(plans []Plan) {
	others := map[finding.Check][]int{}
	for i := range plans {
		said := func(c finding.Check) bool {
			if !slices.Contains(saidOnce, c.Code) {
				return false
			}
			known := others[c]
			others[c] = append(known, i)
			return len(known) > 0
		}
		if p := &plans[i]; slices.ContainsFunc(p.Checks, func(c finding.Check) bool { return slices.Contains(saidOnce, c.Code) }) {
			p.Checks = slices.DeleteFunc(slices.Clone(p.Checks), said)
		}
	}
	for c, of := range others {
		if len(of) > 1 {
			tellOthers(plans, c, of)
		}
	}
}

// tellOthers tells at the first joint of a check which others it holds for.
func tellOthers(plans []Plan, c finding.Check, of []int) {
	first := &plans[of[0]]
	marks, places := make([]string, 0, len(of)), make([]string, 0, len(of))
	for _, i := range of[1:] {
		row := fmt.Sprintf("row %d", plans[i].Joint.Place.Row)
		if mark := plans[i].Joint.Mark; mark != "" {
			marks, places = append(marks, mark), append(places, mark+" ("+row+")")
		} else {
			marks, places = append(marks, row), append(places, row)
		}
	}
	at := slices.Index(first.Checks, c)
	first.Checks[at].Text += "; the same for " + finding.Few(places, othersNamed)
	if len(marks) > othersNamed+1 {
		first.Checks[at].More = "Also " + strings.Join(marks, ", ")
	}
}

// othersNamed is how many of the other joints a sentence names: nobody can act on a number
// alone, and a line holds no more.
const othersNamed = 5
