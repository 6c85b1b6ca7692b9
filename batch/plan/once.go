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
// of them, with the number of the others in its text and their marks behind it.
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
	marks := make([]string, 0, len(of))
	for _, i := range of[1:] {
		if j := plans[i].Joint; j.Mark != "" {
			marks = append(marks, j.Mark)
		} else {
			marks = append(marks, fmt.Sprintf("row %d", j.Place.Row))
		}
	}
	at := slices.Index(first.Checks, c)
	first.Checks[at].Text += fmt.Sprintf("; the same for %s", counted(len(marks), "other joint"))
	first.Checks[at].More = "Also " + strings.Join(marks, ", ")
}

// counted is "1 joint", "3 joints".
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
