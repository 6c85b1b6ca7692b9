package batch

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"seamtally/batch/price"
	"seamtally/batch/save"
)

const goodList = "Mark,Length (mm),Leg (mm),Thickness (mm),Material\nW1,1000,5,6,S235\nW2,500,4,5,S235\n"

// jobIn returns a job over lists that are written into a new folder first.
func jobIn(t *testing.T, lists map[string]string, order ...string) (Job, string) {
	t.Helper()
	dir := t.TempDir()
	job := Job{Version: "test", Looks: price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}}
	for name, text := range lists {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range order {
		job.Lists = append(job.Lists, filepath.Join(dir, name))
	}
	return job, dir
}

// TestOneBadListNeverStopsTheRest works 40 lists of which every eighth is bad;
// SEAMTALLY_LISTS asks for more.
func TestOneBadListNeverStopsTheRest(t *testing.T) {
	lists, order := map[string]string{}, []string{}
	count := 40
	if n, err := strconv.Atoi(os.Getenv("SEAMTALLY_LISTS")); err == nil {
		count = n
	}
	for i := range count {
		name := fmt.Sprintf("list%03d.csv", i)
		lists[name], order = goodList, append(order, name)
		if i%8 == 0 {
			lists[name] = "nothing like a list\n"
		}
	}
	job, dir := jobIn(t, lists, order...)
	job.Out = filepath.Join(dir, "new")
	var told []string
	job.Done = func(r Result) { told = append(told, filepath.Base(r.List)) }
	outcome, err := Run(context.Background(), job)
	if err != nil || outcome.Code != Unreadable {
		t.Fatalf("code %d, %v", outcome.Code, err)
	}
	if strings.Join(told, " ") != strings.Join(order, " ") {
		t.Errorf("told in the order %v", told)
	}
	for i, r := range outcome.Lists {
		if bad := i%8 == 0; bad != (r.Err != nil) || bad == (len(r.Written) == 3) {
			t.Errorf("%s: written %v, error %v", r.List, r.Written, r.Err)
		}
	}
	if made, _ := filepath.Glob(filepath.Join(job.Out, "*-worked.xlsx")); len(made) != count-(count+7)/8 {
		t.Errorf("%d workbooks, want %d", len(made), count-(count+7)/8)
	}
}

// panickingDisk stands for a fault of our own in the middle of one list.
type panickingDisk struct {
	save.Disk
	dir string
}

func (d panickingDisk) Link(path, as string) error {
	if filepath.Dir(path) == d.dir {
		panic("a table without rows")
	}
	return d.Disk.Link(path, as)
}

func TestFaultOfOurOwnNamesTheList(t *testing.T) {
	job, dir := jobIn(t, map[string]string{"a.csv": goodList}, "a.csv")
	other, _ := jobIn(t, map[string]string{"b.csv": goodList}, "b.csv")
	job.Lists = append(job.Lists, other.Lists...)
	if outcome, err := Run(context.Background(), job); err != nil || outcome.Code != Worked {
		t.Fatalf("first run: code %d, %v", outcome.Code, err)
	}
	job.Disk = panickingDisk{save.Real(), dir}
	outcome, err := Run(context.Background(), job)
	if err != nil || outcome.Code != OurBug {
		t.Fatalf("code %d, %v", outcome.Code, err)
	}
	text := outcome.Lists[0].Err.Error()
	if strings.Contains(text, "\n") || !strings.Contains(text, "a.csv") || strings.Contains(text, "goroutine") {
		t.Errorf("the fault is told as %q", text)
	}
	if len(outcome.Lists[1].Written) != 3 {
		t.Errorf("the other list: %v", outcome.Lists[1].Err)
	}
}

// fullDisk lets the Nth write fail.
type fullDisk struct {
	save.Disk
	after *int
}

type fullHandle struct {
	save.Handle
	after *int
}

func (d fullDisk) Create(path string) (save.Handle, error) {
	handle, err := d.Disk.Create(path)
	return fullHandle{handle, d.after}, err
}

func (h fullHandle) Write(p []byte) (int, error) {
	if *h.after--; *h.after < 0 {
		n, _ := h.Handle.Write(p[:len(p)/2])
		return n, syscall.ENOSPC
	}
	return h.Handle.Write(p)
}

// TestFullDisk fails the first write of a run, then the second, until none fails:
// the old outputs stay whole, every one of them.
func TestFullDisk(t *testing.T) {
	job, dir := jobIn(t, map[string]string{"a.csv": goodList}, "a.csv")
	if outcome, err := Run(context.Background(), job); err != nil || outcome.Code != Worked {
		t.Fatalf("first run: %v %v", outcome.Lists[0].Err, err)
	}
	old := contents(t, dir)
	job.Looks.Date = "2026-04-01"
	for n := 0; ; n++ {
		after := n
		job.Disk = fullDisk{save.Real(), &after}
		outcome, err := Run(context.Background(), job)
		if err != nil {
			t.Fatal(err)
		}
		if outcome.Code == Worked {
			if n < 3 {
				t.Errorf("no fault after %d writes", n)
			}
			break
		}
		if outcome.Code != Unwritable || !strings.Contains(outcome.Lists[0].Err.Error(), "disk is full") {
			t.Errorf("write %d: code %d, %v", n, outcome.Code, outcome.Lists[0].Err)
		}
		if now := contents(t, dir); now != old {
			t.Errorf("write %d: the folder has changed", n)
		}
	}
	if contents(t, dir) == old {
		t.Error("the last run changed nothing")
	}
}

// contents returns names and bytes of a folder as one text.
func contents(t *testing.T, dir string) string {
	t.Helper()
	var all bytes.Buffer
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&all, "%s %d %s\n", e.Name(), len(data), data)
	}
	return all.String()
}

func TestInterruptedBeforeAList(t *testing.T) {
	job, dir := jobIn(t, map[string]string{"a.csv": goodList, "b.csv": goodList}, "a.csv", "b.csv")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	before := contents(t, dir)
	outcome, err := Run(ctx, job)
	if err != nil || outcome.Code != Interrupted {
		t.Errorf("code %d, %v", outcome.Code, err)
	}
	if contents(t, dir) != before {
		t.Error("something was written")
	}
}

// TestInputsStayAsTheyAre compares every sample before and after a run, and the
// outputs of two runs with each other.
func TestInputsStayAsTheyAre(t *testing.T) {
	samples, _ := filepath.Glob("../samples/*/*")
	lists := map[string]string{}
	var order []string
	for _, path := range samples {
		if ext := filepath.Ext(path); ext != ".csv" && ext != ".xlsx" || strings.HasPrefix(filepath.Base(path), "shop") || strings.HasPrefix(filepath.Base(path), "hand") {
			continue
		}
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		lists[filepath.Base(path)], order = string(data), append(order, filepath.Base(path))
	}
	if len(order) < 4 {
		t.Fatalf("only %d sample lists found", len(order))
	}
	job, dir := jobIn(t, lists, order...)
	job.Out = filepath.Join(dir, "out")
	before := ""
	for range 2 {
		outcome, err := Run(context.Background(), job)
		if err != nil || outcome.Code > SomeRows {
			t.Fatalf("code %d, %v", outcome.Code, err)
		}
		for name, text := range lists {
			if now, _ := os.ReadFile(filepath.Join(dir, name)); string(now) != text {
				t.Errorf("%s was changed", name)
			}
		}
		now := contents(t, job.Out)
		if before != "" && now != before {
			t.Error("two runs on the same lists and date differ")
		}
		before = now
	}
}
