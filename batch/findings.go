package batch

import (
	"seamtally/batch/price"
	"seamtally/batch/report"
)

// Findings returns everything found in a list as CSV, one line each; empty where
// nothing was found.
func Findings(job *price.Job) ([]byte, error) { return report.Findings(job) }
