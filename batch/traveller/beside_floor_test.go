//go:build unix

package traveller

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"
)

// pagesOfFloor is what the measuring program is asked to write.
const pagesOfFloor = 1000

// TestBesideTheFloor measures a traveller of a thousand sheets in turn with a program
// that only writes as many pages of a table and twenty shapes with the same library; its
// path is given as SEAMTALLY_FLOOR. Processor time is compared, because other work on a
// machine shifts the clock, and the least of five counts. It fails below half the pages
// a second, or above 300 MB for the whole process, its joints and plans included.
func TestBesideTheFloor(t *testing.T) {
	if os.Getenv("SEAMTALLY_BUILD_ONCE") != "" {
		buildOnce(t)
		return
	}
	floor := os.Getenv("SEAMTALLY_FLOOR")
	if floor == "" {
		t.Skip("set SEAMTALLY_FLOOR to the measuring program to compare with it")
	}
	theirs, ours, most := time.Hour, time.Hour, 0.0
	for range 5 {
		cmd := exec.Command(floor, "pdf", fmt.Sprint(pagesOfFloor), "utf8")
		cmd.Env = append(os.Environ(), "FLOOR_DIR="+t.TempDir()+"/")
		must(t, cmd.Run())
		theirs = min(theirs, cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime())

		cmd = exec.Command(os.Args[0], "-test.run", "^TestBesideTheFloor$", "-test.v")
		cmd.Env = append(os.Environ(), "SEAMTALLY_BUILD_ONCE=1")
		out, err := cmd.Output()
		must(t, err)
		var pages int
		var spent time.Duration
		line := string(out)[strings.Index(string(out), "built "):]
		if _, err := fmt.Sscanf(line, "built %d pages in %d", &pages, &spent); err != nil {
			t.Fatalf("%q: %v", line, err)
		}
		ours = min(ours, spent*pagesOfFloor/time.Duration(pages))
		most = max(most, float64(cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss)/1000)
	}
	ratio := float64(theirs) / float64(ours)
	t.Logf("a thousand pages: %v of processor, the floor %v: %.2f of its pages a second; at most %.0f MB", ours, theirs, ratio, most)
	if ratio < 0.5 || most > 300 {
		t.Error("too slow or too large")
	}
}

// buildOnce builds the traveller and prints the processor time that took, planning and
// pricing apart.
func buildOnce(t *testing.T) {
	job := jobOf(t, manySetups(pagesOfFloor), metric)
	doc, err := Model(job, Options{})
	must(t, err)
	pages := len(doc.Pages)
	doc = nil
	before := processorTime(t)
	pdf, err := Build(job, Options{})
	must(t, err)
	fmt.Printf("built %d pages in %d, %d bytes\n", pages, processorTime(t)-before, len(pdf))
}

func processorTime(t *testing.T) time.Duration {
	t.Helper()
	var r syscall.Rusage
	must(t, syscall.Getrusage(syscall.RUSAGE_SELF, &r))
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}
