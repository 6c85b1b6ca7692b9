package save

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"testing"
)

func folder(dir string) Folder { return Folder{Dir: dir, Disk: Real()} }

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestPutMode(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.xlsx"), "old")
	if err := os.Chmod(filepath.Join(dir, "a.xlsx"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := folder(dir).Put(context.Background(), set("new")); err != nil {
		t.Fatal(err)
	}
	for _, f := range set("new") {
		info, err := os.Stat(filepath.Join(dir, f.Name))
		if err != nil || info.Mode().Perm()&^0o644 != 0 {
			t.Errorf("%s: mode %v, %v; want 0644 less the umask", f.Name, info.Mode(), err)
		}
	}
}

// TestRefusals holds every state of a target that is left alone without --force.
func TestRefusals(t *testing.T) {
	foreign := func([]byte) Owner { return Foreign }
	changed := func([]byte) Owner { return Changed }
	tests := []struct {
		name   string
		make   func(t *testing.T, dir, path string)
		judge  Judge
		says   string
		forced bool // --force gets past it
	}{
		{"foreign", func(t *testing.T, dir, path string) { write(t, path, "x") }, foreign, "does not know as its own", true},
		{"changed", func(t *testing.T, dir, path string) { write(t, path, "x") }, changed, "was changed after", true},
		{"link", func(t *testing.T, dir, path string) {
			write(t, filepath.Join(dir, "elsewhere"), "x")
			link(t, os.Symlink(filepath.Join(dir, "elsewhere"), path))
		}, ours, "a link", true},
		{"dangling link", func(t *testing.T, dir, path string) { link(t, os.Symlink(filepath.Join(dir, "nowhere"), path)) }, ours, "a link", true},
		{"circle of links", func(t *testing.T, dir, path string) { link(t, os.Symlink(path, path)) }, ours, "a link", true},
		{"folder", func(t *testing.T, dir, path string) { link(t, os.Mkdir(path, 0o755)) }, ours, "a folder has that name", false},
		{"hard link of the input", func(t *testing.T, dir, path string) { link(t, os.Link(filepath.Join(dir, "in.csv"), path)) }, ours, "input", false},
		{"symbolic link to the input", func(t *testing.T, dir, path string) { link(t, os.Symlink("in.csv", path)) }, ours, "input", false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			write(t, filepath.Join(dir, "in.csv"), "input")
			tt.make(t, dir, filepath.Join(dir, "out.csv"))
			f := folder(dir)
			f.Inputs = []string{filepath.Join(dir, ".", "in.csv")}
			err := f.Check(Target{"out.csv", tt.judge})
			if err == nil || !strings.Contains(err.Error(), tt.says) {
				t.Errorf("Check: %v, want a sentence with %q", err, tt.says)
			}
			f.Force = true
			if err := f.Check(Target{"out.csv", tt.judge}); (err == nil) != tt.forced {
				t.Errorf("with force: %v", err)
			}
			if got, _ := os.ReadFile(filepath.Join(dir, "in.csv")); string(got) != "input" {
				t.Errorf("the input now holds %q", got)
			}
		})
	}
}

// TestForcedLink replaces the link, never the file that it leads to.
func TestForcedLink(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "elsewhere"), "theirs")
	link(t, os.Symlink("elsewhere", filepath.Join(dir, "a.xlsx")))
	f := folder(dir)
	f.Force = true
	if err := f.Put(context.Background(), set("new")); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "elsewhere")); string(got) != "theirs" {
		t.Errorf("the link's target now holds %q", got)
	}
}

func TestSameFileInAnotherSpelling(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "frame-joints.csv"), "input")
	f := folder(dir + "/./")
	f.Inputs = []string{filepath.Join(dir, "..", filepath.Base(dir), "frame-joints.csv")}
	if err := f.Check(Target{"frame-joints.csv", ours}); err == nil || !strings.Contains(err.Error(), "input") {
		t.Errorf("got %v", err)
	}
}

func TestPrepare(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "file"), "x")
	tests := []struct {
		dir, says string
	}{
		{filepath.Join(dir, "no", "such"), "does not exist"},
		{filepath.Join(dir, "file"), "a file, not a folder"},
		{filepath.Join(dir, "file", "below"), "a file"},
		{filepath.Join(dir, strings.Repeat("long", 100)), "too long"},
	}
	for _, tt := range tests {
		_, err := folder(tt.dir).Prepare()
		if err == nil || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%s: %v, want %q", tt.dir, err, tt.says)
		}
	}
	made, err := folder(filepath.Join(dir, "out")).Prepare()
	if err != nil || !made {
		t.Errorf("one missing folder: made %v, %v", made, err)
	}
	if left := hiddenFiles(t, filepath.Join(dir, "out")); len(left) > 0 {
		t.Errorf("the probe stays behind: %v", left)
	}
}

func TestLongName(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("names are limited otherwise there")
	}
	err := folder(t.TempDir()).Check(Target{strings.Repeat("n", 260), ours})
	var told *Error
	if !errors.As(err, &told) || !errors.Is(err, syscall.ENAMETOOLONG) {
		t.Errorf("got %v", err)
	}
}

// TestManyRunsAtOnce puts different sets under the same names at the same time:
// at the end all files come from one run.
func TestManyRunsAtOnce(t *testing.T) {
	dir := t.TempDir()
	var group sync.WaitGroup
	errs := make([]error, 20)
	for i := range errs {
		group.Go(func() {
			f := folder(dir)
			f.Recover(context.Background())
			errs[i] = f.Put(context.Background(), set(fmt.Sprint("run ", i)))
		})
	}
	group.Wait()
	if err := errors.Join(errs...); err != nil {
		t.Error(err)
	}
	first, _ := os.ReadFile(filepath.Join(dir, "a.xlsx"))
	_, run, _ := strings.Cut(strings.SplitN(string(first), "\n", 2)[0], " ")
	for _, f := range set(run) {
		if got, _ := os.ReadFile(filepath.Join(dir, f.Name)); string(got) != string(f.Data) {
			t.Errorf("%s is not from %q", f.Name, run)
		}
	}
	if left := hiddenFiles(t, dir); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func link(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func TestUnprinted(t *testing.T) {
	err := Unprinted(syscall.ENOSPC)
	if want := `"standard output" cannot be written: the disk is full; print into a file where there is room, or to the screen`; err.Error() != want || !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("got %q", err)
	}
}
