package batch

import (
	"context"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
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
			opt := plan.Options{Codes: job.Looks.Codes, US: job.Looks.US}
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
		return "", nil, noSuchMark(&worked.List, strings.TrimSpace(mark), marks)
	}
	return worked.List.File, plans, nil
}

// noSuchMark tells a row that could not be worked from a mark that no row has.
func noSuchMark(l *joint.List, mark string, marks []string) error {
	for _, o := range l.Others {
		if o.Fate == joint.Rejected && o.Mark == mark && mark != "" {
			return Usagef("the joint %q of %s stands in row %d, which could not be worked; correct what `seamtally check %s` says of that row", mark, l.File, o.Row, word(l.File))
		}
	}
	such := ""
	if len(marks) > 0 {
		such = ", such as " + marks[0]
	}
	hint := "write a mark as it stands in the list" + such + "; `seamtally check " + word(l.File) + "` shows how the list was read"
	if near := finding.Nearest(mark, marks); near != "" {
		hint = "write " + near + " if that was meant"
	}
	return Usagef("no row of %s has the mark %q; %s", l.File, mark, hint)
}

// word puts a file's name between quotation marks where a command line needs them.
func word(file string) string {
	if strings.ContainsAny(file, " ()&'") {
		return strconv.Quote(file)
	}
	return file
}
