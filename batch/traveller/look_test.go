package traveller

import (
	"os"
	"path/filepath"
	"testing"
)

// TestLook writes travellers into the folder named by SEAMTALLY_LOOK, for people
// to look at.
func TestLook(t *testing.T) {
	dir := os.Getenv("SEAMTALLY_LOOK")
	if dir == "" {
		t.Skip("set SEAMTALLY_LOOK to a folder to look at the travellers")
	}
	pdf, err := Build(jobOf(t, everyKind(), metric), Options{})
	must(t, err)
	must(t, os.WriteFile(filepath.Join(dir, "kinds.pdf"), pdf, 0o644))
	us := metric
	us.US, us.Paper = true, "letter"
	pdf, err = Build(jobOf(t, everyKind(), us), Options{})
	must(t, err)
	must(t, os.WriteFile(filepath.Join(dir, "kinds-us.pdf"), pdf, 0o644))
}
