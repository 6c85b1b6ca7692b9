//go:build unix

package save

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
)

// withFlock puts another lock in the place of the system's for one test.
func withFlock(t *testing.T, lock func(fd, how int) error) {
	t.Helper()
	was := flock
	flock = lock
	t.Cleanup(func() { flock = was })
}

// TestWithoutLocks stands on a file system that has no locks: files are put in
// place all the same, and what is hidden counts as left behind after an hour.
func TestWithoutLocks(t *testing.T) {
	withFlock(t, func(int, int) error { return syscall.EBADF })
	dir := before(t)
	link(t, folder(dir).Put(context.Background(), set("new")))
	if got := state(t, dir); got != "new new new" || len(hiddenFiles(t, dir)) > 0 {
		t.Errorf("files are %s, left %v", got, hiddenFiles(t, dir))
	}
	young, old := filepath.Join(dir, ".seamtally-0000000000000000"), filepath.Join(dir, ".seamtally-1111111111111111")
	for _, path := range []string{young, old} {
		link(t, os.Mkdir(path, 0o755))
	}
	long := time.Now().Add(-outlived - time.Minute)
	link(t, os.Chtimes(old, long, long))
	folder(dir).Recover(context.Background())
	if left := hiddenFiles(t, dir); len(left) != 1 || left[0] != young {
		t.Errorf("left %v, want only the young one", left)
	}
}

// TestHoldOfWhatIsGone: between opening and locking a folder its last holder may
// remove it; a lock on what nobody finds any more is none.
func TestHoldOfWhatIsGone(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "room")
	link(t, os.Mkdir(dir, 0o755))
	withFlock(t, func(fd, how int) error {
		_ = os.Remove(dir)
		return syscall.Flock(fd, how)
	})
	if _, err := Real().Hold(dir); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}

// TestRealDisk: what the machine's own file system refuses comes back as an error.
func TestRealDisk(t *testing.T) {
	dir := t.TempDir()
	nowhere := filepath.Join(dir, "no", "such")
	for name, err := range map[string]error{
		"create":           func() error { _, err := Real().Create(nowhere); return err }(),
		"keep a folder":    keep(Real(), dir, filepath.Join(dir, "kept")),
		"keep nothing":     keep(Real(), nowhere, filepath.Join(dir, "kept too")),
		"keep nowhere":     keep(Real(), dir, nowhere),
		"sync nothing":     Real().SyncDir(nowhere),
		"hold nothing":     func() error { _, err := Real().Hold(nowhere); return err }(),
		"rename nothing":   Real().Rename(nowhere, dir),
		"remove nothing":   Real().Remove(nowhere),
		"folder in a file": Real().Mkdir(nowhere),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// TestKeepCopies: across file systems there are no links.
func TestKeepCopies(t *testing.T) {
	const elsewhere = "/proc/self/cmdline"
	want, err := os.ReadFile(elsewhere)
	if err != nil {
		t.Skip("no second file system here:", err)
	}
	kept := filepath.Join(t.TempDir(), "kept")
	link(t, keep(Real(), elsewhere, kept))
	if got, err := os.ReadFile(kept); err != nil || !bytes.Equal(got, want) {
		t.Errorf("kept %q, %v", got, err)
	}
}

// TestUnreadableTarget: a file that cannot be read is nobody's.
func TestUnreadableTarget(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("needs a file that nobody can read")
	}
	err := folder("/proc/self").Check(Target{"mem", ours})
	if err == nil || !strings.Contains(err.Error(), "the disk reports a fault") {
		t.Errorf("got %v", err)
	}
}

// TestPrepareEveryFault: a folder in which nothing can be made is known before any work.
func TestPrepareEveryFault(t *testing.T) {
	for n := 1; ; n++ {
		dir := filepath.Join(t.TempDir(), "out")
		disk := &faultyDisk{Disk: Real(), at: n}
		_, err := Folder{Dir: dir, Disk: disk}.Prepare()
		if disk.count < n {
			break
		}
		var told *Error
		if op := disk.ops[n-1]; (err != nil) == (op == "remove") || err != nil && !errors.As(err, &told) {
			t.Errorf("fault %d (%s): %v", n, op, err)
		}
	}
}

// TestContentThatFails: an error of whoever makes the content is no error of the disk.
func TestContentThatFails(t *testing.T) {
	dir := before(t)
	wrong := errors.New("no font")
	files := set("new")
	files[2].Write = func(w io.Writer) error {
		_, _ = io.WriteString(w, "half of it")
		return wrong
	}
	err := folder(dir).Put(context.Background(), files)
	if err != wrong || state(t, dir) != "old old old" || len(hiddenFiles(t, dir)) > 0 {
		t.Errorf("%v; files are %s, left %v", err, state(t, dir), hiddenFiles(t, dir))
	}
}

// TestLargeContent is written in several pieces and is whole.
func TestLargeContent(t *testing.T) {
	dir := t.TempDir()
	want := bytes.Repeat([]byte("0123456789abcdef\n"), 3*chunk/16)
	link(t, folder(dir).Put(context.Background(), []File{{Name: "large", Data: want}}))
	if got, err := os.ReadFile(filepath.Join(dir, "large")); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%d bytes, %v; want %d", len(got), err, len(want))
	}
}

// TestChangedMeanwhile: the places are looked at again before the first rename.
func TestChangedMeanwhile(t *testing.T) {
	dir := before(t)
	files := set("new")
	files[1].Judge = func([]byte) Owner { return Changed }
	err := folder(dir).Put(context.Background(), files)
	if err == nil || !strings.Contains(err.Error(), "was changed after") || state(t, dir) != "old old old" {
		t.Errorf("%v; files are %s", err, state(t, dir))
	}
}

// TestUnknownReason: an error that nobody has words for is told in the system's, on one line.
func TestUnknownReason(t *testing.T) {
	err := folder("out").failed("a.csv", errors.New("two\nlines"))
	if want := `"out/a.csv" cannot be written: the system refused (two, lines); choose another folder with -o`; err.Error() != want {
		t.Errorf("got %q", err)
	}
}

func TestStampNeedsAnEnd(t *testing.T) {
	if got := StampPDF([]byte("%PDF-1.3")); string(got) != "%PDF-1.3" {
		t.Errorf("got %q", got)
	}
}

// TestPipeInTheWay: what is no plain file is neither opened nor replaced, with force or
// without: to read a pipe would wait for ever.
func TestPipeInTheWay(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mkfifo(filepath.Join(dir, "a.xlsx"), 0o644); err != nil {
		t.Skip("no pipes here:", err)
	}
	for _, force := range []bool{false, true} {
		f := folder(dir)
		f.Force = force
		if err := f.Put(context.Background(), set("new")); err == nil || !strings.Contains(err.Error(), "not a plain file") {
			t.Errorf("force %v: %v", force, err)
		}
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 1 || entries[0].Type()&os.ModeNamedPipe == 0 {
		t.Errorf("now there stands %v, %v", entries, err)
	}
}
