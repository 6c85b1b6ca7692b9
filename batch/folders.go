package batch

import (
	"context"
	"os"

	"seamtally/batch/save"
)

// open makes sure, once for each folder, that files can be made in it, and tells
// what a run that was cut off left there. The function it returns takes back the
// folders that were made and stayed empty.
func (j *Job) open(ctx context.Context, places []place) (done func()) {
	if j.DryRun {
		return func() {}
	}
	opened := map[string]*place{}
	var made []string
	for i := range places {
		p := &places[i]
		if first := opened[p.folder.Dir]; first != nil {
			p.broken, p.folder.Shared = first.broken, first.folder.Shared
			continue
		}
		opened[p.folder.Dir] = p
		p.folder.Shared = &save.Shared{}
		p.said = p.folder.Recover(ctx) // Before anything of this run's is hidden there.
		isNew, err := p.folder.Prepare()
		if isNew {
			made = append(made, p.folder.Dir)
		}
		p.broken = err
	}
	return func() {
		for _, dir := range made {
			_ = os.Remove(dir) // Only goes if it stayed empty.
		}
	}
}
