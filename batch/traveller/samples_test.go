package traveller

import (
	"os"
	"path/filepath"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
)

// samples are the lists that every layout is tried on.
var samples = []string{
	"mezzanine/mezzanine.xlsx", "wash-table/wash-table.csv", "gangway/gangway.csv", "four-columns/four-columns.csv", "mistakes/mistakes.csv", "trestle/trestle.csv",
}

// priced takes a list all the way to a priced job.
func priced(t testing.TB, name string, data []byte, opts price.Options) *price.Job {
	t.Helper()
	set, err := builtIn()
	must(t, err)
	src, _, err := list.Read(name, data)
	must(t, err)
	shop, err := rates.Default(set)
	must(t, err)
	joints, err := joint.Understand(src, joint.Options{SizeMeans: shop.SizeMeans, MissingSize: shop.MissingSize}, set)
	must(t, err)
	plans := plan.Joints(joints.Joints, set, &shop, plan.Options{Codes: opts.Codes})
	if opts.US {
		plan.Imperial(plans)
	}
	job := price.Price(*joints, plans, shop, []finding.Problem{}, opts)
	job.Version, job.TablesEdition = "0.1", "0123abcd"
	return &job
}

func sample(t testing.TB, path string, opts price.Options) *price.Job {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "samples", path))
	must(t, err)
	return priced(t, filepath.Base(path), data, opts)
}

// TestSamplesAreFaultless lays out the travellers of all samples in all looks.
func TestSamplesAreFaultless(t *testing.T) {
	for _, path := range samples {
		for name, opts := range looks() {
			t.Run(path+" "+name, func(t *testing.T) { faultless(t, sample(t, path, opts)) })
		}
	}
}
