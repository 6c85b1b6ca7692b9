package save

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// faultyDisk lets the Nth change of the file system fail, once or from then on.
type faultyDisk struct {
	Disk
	at      int
	forever bool
	count   int
	ops     []string
	copies  bool   // the file system has no links
	before  func() // runs before each change, after it was counted
}

func (d *faultyDisk) fail(op string) error {
	d.count++
	d.ops = append(d.ops, op)
	if d.before != nil {
		d.before()
	}
	if d.count == d.at || d.forever && d.count > d.at {
		return fmt.Errorf("%s: %w", op, syscall.ENOSPC)
	}
	return nil
}

func (d *faultyDisk) Mkdir(path string) error {
	if err := d.fail("make folder"); err != nil {
		return err
	}
	return d.Disk.Mkdir(path)
}

func (d *faultyDisk) Create(path string) (Handle, error) {
	if err := d.fail("create"); err != nil {
		return nil, err
	}
	handle, err := d.Disk.Create(path)
	return &faultyHandle{handle, d}, err
}

func (d *faultyDisk) Link(path, as string) error {
	if d.copies {
		return syscall.EPERM
	}
	if err := d.fail("link"); err != nil {
		return err
	}
	return d.Disk.Link(path, as)
}

func (d *faultyDisk) Rename(from, to string) error {
	if err := d.fail("rename"); err != nil {
		return err
	}
	return d.Disk.Rename(from, to)
}

func (d *faultyDisk) Remove(path string) error {
	if err := d.fail("remove"); err != nil {
		return err
	}
	return d.Disk.Remove(path)
}

func (d *faultyDisk) SyncDir(dir string) error {
	if err := d.fail("sync folder"); err != nil {
		return err
	}
	return d.Disk.SyncDir(dir)
}

func (d *faultyDisk) Hold(dir string) (func(), error) {
	if err := d.fail("hold"); err != nil {
		return nil, err
	}
	return d.Disk.Hold(dir)
}

type faultyHandle struct {
	Handle
	disk *faultyDisk
}

// Write fails after half of the bytes, as a disk that fills up does.
func (h *faultyHandle) Write(p []byte) (int, error) {
	if err := h.disk.fail("write"); err != nil {
		n, _ := h.Handle.Write(p[:len(p)/2])
		return n, err
	}
	return h.Handle.Write(p)
}

func (h *faultyHandle) Sync() error {
	if err := h.disk.fail("sync"); err != nil {
		return err
	}
	return h.Handle.Sync()
}

func (h *faultyHandle) Close() error {
	err := h.Handle.Close()
	if fault := h.disk.fail("close"); fault != nil {
		return fault
	}
	return err
}

func ours([]byte) Owner { return Own }

func set(version string) []File {
	var files []File
	for _, name := range []string{"a.xlsx", "b.csv", "c.pdf"} {
		files = append(files, File{Name: name, Data: []byte(strings.Repeat(name+" "+version+"\n", 50)), Judge: ours})
	}
	return files
}

// before puts the old state into a folder: two of the three files exist.
func before(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for _, f := range set("old")[:2] {
		if err := os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// state says of every target whether it holds the old or the new content.
func state(t *testing.T, dir string) string {
	t.Helper()
	var out []string
	for i, f := range set("new") {
		data, err := os.ReadFile(filepath.Join(dir, f.Name))
		switch {
		case errors.Is(err, os.ErrNotExist):
			out = append(out, map[bool]string{true: "old", false: "LOST"}[i == 2])
		case string(data) == string(f.Data):
			out = append(out, "new")
		case i < 2 && string(data) == string(set("old")[i].Data):
			out = append(out, "old")
		default:
			out = append(out, "TORN")
		}
	}
	return strings.Join(out, " ")
}

func hiddenFiles(t *testing.T, dir string) []string {
	t.Helper()
	return Folder{Dir: dir}.hidden()
}

// TestPutEveryFault lets the first change of the file system fail, then the
// second, and so on until a run meets no fault.
func TestPutEveryFault(t *testing.T) { putEveryFault(t, false) }

// TestPutEveryFaultWithoutLinks: where the old files are copied the same holds.
func TestPutEveryFaultWithoutLinks(t *testing.T) { putEveryFault(t, true) }

func putEveryFault(t *testing.T, copies bool) {
	for n := 1; ; n++ {
		dir := before(t)
		disk := &faultyDisk{Disk: Real(), at: n, copies: copies}
		err := Folder{Dir: dir, Disk: disk}.Put(context.Background(), set("new"))
		got := state(t, dir)
		if disk.count < n {
			t.Logf("%d changes, each failed once: %s", n-1, strings.Join(disk.ops, ", "))
			if err != nil || got != "new new new" {
				t.Errorf("without a fault: %v, %s", err, got)
			}
			return
		}
		op := disk.ops[n-1]
		if err != nil {
			var told *Error
			if !errors.As(err, &told) {
				t.Errorf("fault %d (%s): error %q has no place and no advice", n, op, err)
			}
			if got != "old old old" {
				t.Errorf("fault %d (%s): error %v, but the files are %s", n, op, err, got)
			}
		} else if got != "new new new" {
			t.Errorf("fault %d (%s): no error, but the files are %s", n, op, got)
		}
		if left := hiddenFiles(t, dir); len(left) > 0 && op != "remove" {
			t.Errorf("fault %d (%s): left behind %v", n, op, left)
		}
		Folder{Dir: dir, Disk: Real()}.Recover(context.Background())
		if left := hiddenFiles(t, dir); len(left) > 0 {
			t.Errorf("fault %d (%s): still there after the next run: %v", n, op, left)
		}
	}
}

// TestCopiesOfOldFilesAreSynced: where the file system has no links, every copy of an
// old file is on the disk before any name is changed.
func TestCopiesOfOldFilesAreSynced(t *testing.T) {
	disk := &faultyDisk{Disk: Real(), at: -1, copies: true}
	link(t, Folder{Dir: before(t), Disk: disk}.Put(context.Background(), set("new")))
	made, synced := 0, 0
	for _, op := range disk.ops[:slices.Index(disk.ops, "rename")] {
		switch op {
		case "create":
			made++
		case "sync":
			synced++
		}
	}
	if made != 3+1+2 || synced != made { // the new files, the journal and the old files
		t.Errorf("of %d files made %d are synced: %v", made, synced, disk.ops)
	}
}

// TestPutFaultForGood lets everything fail from the Nth change on, the taking
// back too. No file may be torn, and a mixture must be told by the next run.
func TestPutFaultForGood(t *testing.T) {
	mixtures := 0
	for n := 1; ; n++ {
		dir := before(t)
		disk := &faultyDisk{Disk: Real(), at: n, forever: true}
		err := Folder{Dir: dir, Disk: disk}.Put(context.Background(), set("new"))
		if disk.count < n {
			break
		}
		got := state(t, dir)
		if strings.Contains(got, "TORN") || strings.Contains(got, "LOST") {
			t.Fatalf("from change %d on (%s): %s", n, disk.ops[n-1], got)
		}
		told := Folder{Dir: dir, Disk: Real()}.Recover(context.Background())
		mixed := strings.Contains(got, "old") && strings.Contains(got, "new")
		if mixed {
			mixtures++
		}
		if mixed != (len(told) > 0) {
			t.Errorf("from change %d on (%s): files are %s, the next run says %q", n, disk.ops[n-1], got, told)
		}
		if err == nil && got != "new new new" {
			t.Errorf("from change %d on (%s): no error, files are %s", n, disk.ops[n-1], got)
		}
		if left := hiddenFiles(t, dir); len(left) > 0 {
			t.Errorf("from change %d on: still there after the next run: %v", n, left)
		}
	}
	if mixtures == 0 {
		t.Error("no fault left a mixture: the telling was not tried")
	}
}

// TestPutInterrupted cancels at every change: before the first rename nothing
// happens, from there on everything does.
func TestPutInterrupted(t *testing.T) {
	for n := 1; ; n++ {
		dir := before(t)
		ctx, cancel := context.WithCancel(context.Background())
		disk := &cancellingDisk{faultyDisk{Disk: Real(), at: -1}, n, cancel}
		err := Folder{Dir: dir, Disk: disk}.Put(ctx, set("new"))
		got := state(t, dir)
		if disk.count < n {
			cancel()
			return
		}
		if want := map[bool]string{true: "new new new", false: "old old old"}[err == nil]; got != want {
			t.Errorf("interrupted at change %d: %v, files are %s", n, err, got)
		}
		if left := hiddenFiles(t, dir); len(left) > 0 {
			t.Errorf("interrupted at change %d: left behind %v", n, left)
		}
	}
}

type cancellingDisk struct {
	faultyDisk
	n      int
	cancel func()
}

func (d *cancellingDisk) Create(path string) (Handle, error) {
	if d.count+1 >= d.n {
		d.cancel()
	}
	return d.faultyDisk.Create(path)
}

func (d *cancellingDisk) Rename(from, to string) error {
	if d.count+1 >= d.n {
		d.cancel()
	}
	return d.faultyDisk.Rename(from, to)
}
