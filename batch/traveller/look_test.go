package traveller

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/price"
)

// TestLook writes travellers into the folder named by SEAMTALLY_LOOK, for people
// to look at.
func TestLook(t *testing.T) {
	dir := os.Getenv("SEAMTALLY_LOOK")
	if dir == "" {
		t.Skip("set SEAMTALLY_LOOK to a folder to look at the travellers")
	}
	us := metric
	us.US, us.Paper = true, "letter"
	jobs := map[string]*price.Job{"kinds": jobOf(t, everyKind(), metric), "kinds-us": jobOf(t, everyKind(), us)}
	for _, path := range samples {
		opts := metric
		if strings.HasPrefix(path, "gangway") {
			opts = us
		}
		jobs[filepath.Base(filepath.Dir(path))] = sample(t, path, opts)
	}
	for name, job := range jobs {
		pdf, err := Build(job, Options{})
		must(t, err)
		must(t, os.WriteFile(filepath.Join(dir, name+".pdf"), pdf, 0o644))
	}
}
