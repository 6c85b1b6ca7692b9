package batch

import (
	"slices"

	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/tables"
)

// mostForPayBack is how many joints a list may have for every machine of the table
// to be tried on it: each is a whole planning more.
const mostForPayBack = 2000

// payBack tries the machines that the shop has not. A list with joints that no
// machine of the shop welds is compared by the others: a joint without settings
// has no cost.
func (j *Job) payBack(job *price.Job, set *tables.Set) {
	if len(job.Shop.Machines) == 0 || len(job.Plans) == 0 || len(job.Plans) > mostForPayBack {
		return
	}
	unsettled := 0
	for i := range job.Plans {
		if !job.Plans[i].Settings {
			unsettled++
		}
	}
	for _, m := range set.Machines {
		if slices.Contains(job.Shop.Machines, m.Name) {
			continue
		}
		shop := job.Shop.WithMachine(m.Name)
		with := plan.Joints(job.List.Joints, set, &shop, plan.Options{Codes: j.Looks.Codes, US: j.Looks.US})
		opens := unsettled
		for i := range with {
			if !with[i].Settings {
				opens--
			}
		}
		if opens > 0 { // it welds what nothing else does: no sum to compare
			job.Totals.PayBack = append(job.Totals.PayBack, price.PayBack{Machine: m.Name, Price: job.Shop.MachinePrice[m.Name], Opens: opens})
			continue
		}
		job.Totals.PayBack = append(job.Totals.PayBack, price.NewPayBack(m.Name, job, with))
	}
}
