//go:build unix

package save

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"syscall"
	"testing"
)

const killDir, killAt = "SAVE_TEST_KILL_DIR", "SAVE_TEST_KILL_AT"

// TestMain lets the test program play the run that is killed.
func TestMain(m *testing.M) {
	dir := os.Getenv(killDir)
	if dir == "" {
		os.Exit(m.Run())
	}
	at, _ := strconv.Atoi(os.Getenv(killAt))
	disk := &faultyDisk{Disk: Real(), at: -1}
	disk.before = func() {
		if disk.count == at {
			_ = syscall.Kill(os.Getpid(), syscall.SIGKILL)
			select {}
		}
	}
	if err := (Folder{Dir: dir, Disk: disk}).Put(context.Background(), set("new")); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// TestKilledAtEveryChange kills a run before its first change of the file
// system, its second, and so on: files are whole, a mixture is told by the next
// run, and the next run clears what is left.
func TestKilledAtEveryChange(t *testing.T) {
	mixtures := 0
	for n := 1; ; n++ {
		dir := before(t)
		run := exec.Command(os.Args[0])
		run.Env = append(os.Environ(), killDir+"="+dir, fmt.Sprint(killAt, "=", n))
		out, err := run.CombinedOutput()
		got := state(t, dir)
		if err == nil {
			if got != "new new new" || mixtures == 0 {
				t.Errorf("the run that lived: %s; mixtures seen: %d", got, mixtures)
			}
			return
		}
		if len(out) > 0 || strings.Contains(got, "TORN") || strings.Contains(got, "LOST") {
			t.Fatalf("killed at change %d: %s %s", n, got, out)
		}
		if left := hiddenFiles(t, dir); len(left) > 1 {
			t.Errorf("killed at change %d: more than one thing is left hidden: %v", n, left)
		}
		told := folder(dir).Recover(context.Background())
		mixed := strings.Contains(got, "old") && strings.Contains(got, "new")
		if mixed {
			mixtures++
		}
		if mixed != (len(told) > 0) {
			t.Errorf("killed at change %d: files are %s, the next run says %q", n, got, told)
		}
		if left := hiddenFiles(t, dir); len(left) > 0 {
			t.Errorf("killed at change %d: the next run leaves %v", n, left)
		}
	}
}
