package batch

import (
	"context"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/plan"
	"seamtally/batch/report"
)

// Schema is the version of every JSON document that the tool prints.
const Schema = report.Schema

// Explain works the job's one list and returns its name and the traced plans of
// the joints with a mark: more than one where the list has the mark twice.
func Explain(ctx context.Context, job Job, mark string) (name string, plans []plan.Plan, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = &Bug{List: job.Lists[0], Fault: fault}
		}
	}()
	t, err := job.tools()
	if err != nil {
		return "", nil, err
	}
	_, worked, err := job.work(ctx, t, job.Lists[0])
	if err != nil {
		return "", nil, err
	}
	joints := worked.List.Joints
	var marks []string
	for i := range joints {
		marks = append(marks, joints[i].Mark)
		if joints[i].Mark == strings.TrimSpace(mark) {
			opt := plan.Options{Codes: job.Looks.Codes}
			p := plan.Explain(joints, i, t.set, &worked.Shop, opt)
			plan.ExplainHints(&p, worked.Plans, i, t.set, &worked.Shop, opt)
			plans = append(plans, p)
			if job.Looks.Codes == "aws" {
				plan.American(plans[len(plans)-1:], t.set)
			}
			if job.Looks.US {
				plan.Imperial(plans[len(plans)-1:])
			}
		}
	}
	if len(plans) == 0 {
		return "", nil, noSuchMark(worked.List.File, mark, marks)
	}
	return worked.List.File, plans, nil
}

func noSuchMark(list, mark string, marks []string) error {
	hint := "`seamtally check` shows how the list was read"
	if near := finding.Nearest(mark, marks); near != "" {
		hint = "did you mean " + near + "?"
	}
	return Usagef("%s has no joint %q, or its row holds a mistake (`seamtally check` tells); %s", list, mark, hint)
}
