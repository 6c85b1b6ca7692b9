package save

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// TestRecoverLeavesOthersAlone: what a living run holds, and what was hidden by
// somebody else, stays; what killed runs left goes, as this version hides it and as
// the first ones did.
func TestRecoverLeavesOthersAlone(t *testing.T) {
	dir := t.TempDir()
	busy, err := folder(dir).enter()
	link(t, err)
	defer busy.leave()
	write(t, busy.part(0), "being written")
	for _, name := range []string{"0123456789abcdef", "fedcba9876543210"} {
		link(t, os.Mkdir(filepath.Join(dir, hiddenPrefix+name), 0o755))
	}
	write(t, filepath.Join(dir, ".seamtally-0123456789abcdef", "1-new-1"), "left by a killed run")
	write(t, filepath.Join(dir, ".seamtally-0123456789abcdef", "1-journal"), "")
	write(t, filepath.Join(dir, ".seamtally-0123456789abcde0.part"), "left by the first version")
	write(t, filepath.Join(dir, ".seamtally-0123456789abcde0.old"), "left by the first version")
	write(t, filepath.Join(dir, ".seamtally-journal"), "")
	others := []string{".seamtally-notes", ".seamtally-0123456789abcdee"}
	write(t, filepath.Join(dir, others[0]), "somebody's own")
	link(t, os.Symlink(t.TempDir(), filepath.Join(dir, others[1])))
	if told := folder(dir).Recover(context.Background()); len(told) > 0 {
		t.Errorf("told %q", told)
	}
	var left []string
	entries, err := os.ReadDir(dir)
	link(t, err)
	for _, e := range entries {
		left = append(left, e.Name())
	}
	want := map[string]bool{filepath.Base(busy.path): true, others[0]: true, others[1]: true}
	for _, name := range left {
		if !want[name] {
			t.Errorf("%s is still there", name)
		}
	}
	if len(left) != len(want) {
		t.Errorf("left %v, want %v", left, want)
	}
	if text, err := os.ReadFile(busy.part(0)); err != nil || string(text) != "being written" {
		t.Errorf("the living run's file: %q, %v", text, err)
	}
}

// TestFirstVersionsJournal: a mixture that an earlier version left is told.
func TestFirstVersionsJournal(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.csv"), "new")
	write(t, filepath.Join(dir, "b.pdf"), "old")
	write(t, filepath.Join(dir, ".seamtally-journal"), `[{"name":"a.csv","sha256":"`+digest([]byte("new"))+`"},{"name":"b.pdf","sha256":"`+digest([]byte("newer"))+`"}]`)
	told := folder(dir).Recover(context.Background())
	if len(told) != 1 || !strings.Contains(told[0], "a.csv came from that run, b.pdf did not") {
		t.Errorf("told %q", told)
	}
	if left := hiddenFiles(t, dir); len(left) > 0 {
		t.Errorf("left %v", left)
	}
}

// TestMixtureUnderAnyName: names of bytes that are no text are compared as bytes.
func TestMixtureUnderAnyName(t *testing.T) {
	dir := t.TempDir()
	names := []string{"a\xff.csv", "b\xff.pdf"}
	for i, text := range []string{"new", "old"} {
		if err := os.WriteFile(filepath.Join(dir, names[i]), []byte(text), 0o644); err != nil {
			t.Skip("no such names here:", err)
		}
	}
	f := folder(dir)
	r, err := f.enter()
	link(t, err)
	link(t, f.record(context.Background(), r, []File{{Name: names[0]}, {Name: names[1]}}, []string{digest([]byte("new")), digest([]byte("newer"))}))
	r.leave()
	if told := f.Recover(context.Background()); len(told) != 1 || !strings.Contains(told[0], `b\xff.pdf" did not`) {
		t.Errorf("told %q", told)
	}
}

// TestRecoverWaitsForNobody: where another run is putting files in place, or the
// wait is interrupted, nothing is swept and nothing is said.
func TestRecoverWaitsForNobody(t *testing.T) {
	dir := t.TempDir()
	room := filepath.Join(dir, ".seamtally-0123456789abcdef")
	link(t, os.Mkdir(room, 0o755))
	letGo, err := Real().Hold(dir)
	link(t, err)
	defer letGo()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if told := folder(dir).Recover(ctx); told != nil {
		t.Errorf("told %q", told)
	}
	if _, err := os.Stat(room); err != nil {
		t.Error(err)
	}
	if err := folder(dir).Put(ctx, nil); err == nil {
		t.Error("files were put in place while another run held the folder")
	}
}

// TestPatienceEnds: a run that waits in vain says so.
func TestPatienceEnds(t *testing.T) {
	defer func(was time.Duration) { patience = was }(patience)
	patience = time.Millisecond
	dir := before(t)
	letGo, err := Real().Hold(dir)
	link(t, err)
	defer letGo()
	err = folder(dir).Put(context.Background(), set("new"))
	if err == nil || !strings.Contains(err.Error(), "another run of seamtally") || state(t, dir) != "old old old" {
		t.Errorf("%v; files are %s", err, state(t, dir))
	}
}

// sweptDisk lets a new room be taken for a leftover some times.
type sweptDisk struct {
	Disk
	times int
}

func (d *sweptDisk) Hold(dir string) (func(), error) {
	if d.times--; d.times >= 0 && roomName.MatchString(filepath.Base(dir)) {
		return nil, ErrBusy
	}
	return d.Disk.Hold(dir)
}

// TestSweptRoom: a run whose new room is swept away makes another, but not for ever.
func TestSweptRoom(t *testing.T) {
	for times, good := range map[int]bool{1: true, takenAway - 1: true, takenAway: false} {
		dir := before(t)
		err := Folder{Dir: dir, Disk: &sweptDisk{Real(), times}}.Put(context.Background(), set("new"))
		want := map[bool]string{true: "new new new", false: "old old old"}[good]
		if (err == nil) != good || state(t, dir) != want || len(hiddenFiles(t, dir)) > 0 {
			t.Errorf("swept %d times: %v, files are %s, left %v", times, err, state(t, dir), hiddenFiles(t, dir))
		}
	}
}

// TestSharedRoom: lists of one run, put in place side by side, hide one folder between
// them, which goes with the last; a mixture among them keeps it.
func TestSharedRoom(t *testing.T) {
	dir, shared := t.TempDir(), &Shared{}
	most := 0
	var group sync.WaitGroup
	var mu sync.Mutex
	for i := range 8 {
		group.Go(func() {
			files := set("new")
			for k := range files {
				files[k].Name = fmt.Sprint(i, files[k].Name)
			}
			files[2].Write = func(w io.Writer) error {
				mu.Lock()
				defer mu.Unlock()
				most = max(most, len(Folder{Dir: dir}.hidden()))
				_, err := w.Write(files[2].Data)
				return err
			}
			f := folder(dir)
			f.Shared = shared
			if err := f.Put(context.Background(), files); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 24 || most != 1 {
		t.Errorf("%d files, %v; at most %d hidden", len(entries), err, most)
	}
}

// TestSharedRoomKeepsAMixture: one list leaves old beside new, another is put in place
// after it; the next run is told of the first.
func TestSharedRoomKeepsAMixture(t *testing.T) {
	for at := 1; ; at++ {
		dir := before(t)
		disk := &faultyDisk{Disk: Real(), at: at, forever: true}
		f := Folder{Dir: dir, Disk: disk, Shared: &Shared{}}
		other, err := f.enter()
		if err != nil {
			continue
		}
		err = f.Put(context.Background(), set("new"))
		disk.at, disk.forever = -1, false
		other.clear(disk)
		other.leave()
		if err == nil {
			t.Fatal("no fault left a mixture")
		}
		if !errors.Is(err, errNotUndone) {
			continue
		}
		got := state(t, dir)
		if told := folder(dir).Recover(context.Background()); len(told) != 1 || len(hiddenFiles(t, dir)) > 0 {
			t.Errorf("files are %s, told %q, left %v", got, told, hiddenFiles(t, dir))
		}
		return
	}
}
