package main

import (
	"fmt"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/price"
	"seamtally/tables"
)

// procedures echoes how each of the shop's procedures was read, and which joints
// name it.
func procedures(b *strings.Builder, job *price.Job) {
	said := false
	for _, v := range job.Shop.Values {
		number, ok := strings.CutPrefix(v.Key, tables.ProcedureValue)
		if !ok {
			continue
		}
		if !said {
			b.WriteString("\nProcedures of the shop\n")
			said = true
		}
		by := "no joint of the list names it"
		if marks := namedBy(job, number); len(marks) > 0 {
			by = "named by " + oneLine(finding.Few(marks, fewNamed))
		}
		fmt.Fprintf(b, "  %-10s %s; %s\n", oneLine(number), oneLine(v.Text), by)
	}
}

// namedBy are the marks of the joints that name a procedure.
func namedBy(job *price.Job, number string) []string {
	var out []string
	for i := range job.List.Joints {
		if j := &job.List.Joints[i]; tables.ProcedureKey(j.WPS) == tables.ProcedureKey(number) {
			out = append(out, j.Mark)
		}
	}
	return out
}
