package batch

import (
	"archive/zip"
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/save"
)

// oneList works one list into a folder and returns the job, and where its workbook is.
func oneList(t *testing.T, name, out string, looks price.Options) (*price.Job, string) {
	t.Helper()
	job := Job{Version: "test", Lists: []string{name}, Out: out, Only: []Output{Workbook}, Looks: looks}
	var worked *price.Job
	job.Done = func(r Result) {
		if r.Err != nil {
			t.Fatal(r.Err)
		}
		worked = r.Job
	}
	outcome, err := Run(context.Background(), job)
	if err != nil {
		t.Fatal(err)
	}
	return worked, outcome.Lists[0].Written[0]
}

// retyped writes a figure under one of our headers, or a text under one of the list's,
// as a person would, and saves under another name.
func retyped(t *testing.T, book, header string, row int, value any) string {
	t.Helper()
	f, err := excelize.OpenFile(book)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	sheet := f.GetSheetList()[0]
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for _, cells := range rows {
		for c, text := range cells {
			if text == header {
				cell, _ := excelize.CoordinatesToCellName(c+1, row)
				if err := f.SetCellValue(sheet, cell, value); err != nil {
					t.Fatal(err)
				}
				name := filepath.Join(t.TempDir(), "changed.xlsx")
				if err := f.SaveAs(name); err != nil {
					t.Fatal(err)
				}
				return name
			}
		}
	}
	t.Fatalf("no column %q", header)
	return ""
}

func problemsOf(job *price.Job, code string) (out []finding.Problem) {
	for _, p := range job.Problems {
		if p.Code == code {
			out = append(out, p)
		}
	}
	return out
}

// TestWhatIsTypedIntoOurCellsIsTaken types a leg, a length, a quantity and a gap into the
// yellow cells beside a list whose own cells are words or blank: the next run prices what
// a list of those figures would cost, the run after it still does, and a later change of
// the list's own cell beats what was typed.
func TestWhatIsTypedIntoOurCellsIsTaken(t *testing.T) {
	head := "Mark,Length,Size,t1,t2,Quantity,Gap,Material\n"
	for _, c := range []struct {
		name, metric, inch string
		value, inches      float64
		wanted, later      string // the row of a list that says so, and with the list's own change
		own                string // the list's header
		change             string
		check              func(*joint.Joint) bool
	}{
		{"a leg", "Leg A mm", "Leg A in", 10, 10 / 25.4, "W1,1 m,z10,12 mm,12 mm,2 off,,S355\n", "W1,1 m,z6,12 mm,12 mm,2 off,,S355\n", "Size", "z6", func(j *joint.Joint) bool { return j.Size.A == 10 }},
		{"a length", "Length mm", "Length in", 1500, 1500 / 25.4, "W1,1500 mm,z8,12 mm,12 mm,2 off,,S355\n", "W1,2 m,z8,12 mm,12 mm,2 off,,S355\n", "Length", "2 m", func(j *joint.Joint) bool { return j.Length == 1500 }},
		{"a quantity", "Qty", "Qty", 5, 5, "W1,1 m,z8,12 mm,12 mm,5,,S355\n", "W1,1 m,z8,12 mm,12 mm,3 off,,S355\n", "Quantity", "3 off", func(j *joint.Joint) bool { return j.Qty == 5 }},
		{"a thickness", "t1 mm", "t1 in", 20, 20 / 25.4, "W1,1 m,z8,20 mm,12 mm,2 off,,S355\n", "W1,1 m,z8,15 mm,12 mm,2 off,,S355\n", "t1", "15 mm", func(j *joint.Joint) bool { return j.T1 == 20 }},
	} {
		for _, us := range []bool{false, true} {
			dir, looks := t.TempDir(), price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso", US: us}
			header, value := c.metric, c.value
			if us {
				header, value = c.inch, c.inches
			}
			_, book := oneList(t, listIn(t, head+"W1,1 m,z8,12 mm,12 mm,2 off,,S355\nW2,1 m,z5,6 mm,6 mm,1 off,,S355\n"), filepath.Join(dir, "1"), looks)
			want, _ := oneList(t, listIn(t, head+c.wanted+"W2,1 m,z5,6 mm,6 mm,1 off,,S355\n"), filepath.Join(dir, "2"), looks)
			again, second := oneList(t, retyped(t, book, header, 2, value), filepath.Join(dir, "3"), looks)
			third, last := oneList(t, second, filepath.Join(dir, "4"), looks)
			for i, job := range []*price.Job{again, third} {
				if !c.check(&job.List.Joints[0]) || !near(job.Totals.Price, want.Totals.Price) {
					t.Errorf("%s, inches %v, run %d: price %v, the list of it %v; %+v", c.name, us, i+2, job.Totals.Price, want.Totals.Price, job.List.Joints[0].Size)
				}
				if told := problemsOf(job, "typed-in-our-column"); len(told) != 1 || told[0].Place.Row != 2 {
					t.Errorf("%s, run %d: told %+v", c.name, i+2, told)
				}
			}
			changed, _ := oneList(t, retyped(t, last, c.own, 2, c.change), filepath.Join(dir, "5"), looks)
			later, _ := oneList(t, listIn(t, head+c.later+"W2,1 m,z5,6 mm,6 mm,1 off,,S355\n"), filepath.Join(dir, "6"), looks)
			if !near(changed.Totals.Price, later.Totals.Price) || len(problemsOf(changed, "typed-in-our-column")) != 0 {
				t.Errorf("%s, inches %v: the list's own change gives %v, want %v", c.name, us, changed.Totals.Price, later.Totals.Price)
			}
		}
	}
}

// near allows the rounding of an inch.
func near[T ~float64](a, b T) bool { return a-b < 1e-3 && b-a < 1e-3 }

// TestWhatCannotBeTakenIsTold: both changed, the list holds; half a piece is no quantity.
func TestWhatCannotBeTakenIsTold(t *testing.T) {
	looks := price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}
	name := listIn(t, "Mark,Length,Size,t1,t2,Quantity,Material\nW1,1 m,z8,12 mm,12 mm,2 off,S355\n")
	plain, book := oneList(t, name, t.TempDir(), looks)
	half, _ := oneList(t, retyped(t, book, "Qty", 2, 2.5), t.TempDir(), looks)
	if told := problemsOf(half, "changed-in-our-column"); len(told) != 1 || half.Totals.Price != plain.Totals.Price {
		t.Errorf("two and a half pieces: told %+v, price %v, want %v", told, half.Totals.Price, plain.Totals.Price)
	}
	both, _ := oneList(t, retyped(t, retyped(t, book, "Leg A mm", 2, 12), "Size", 2, "z6"), t.TempDir(), looks)
	told := problemsOf(both, "changed-in-our-column")
	if len(told) != 1 || !strings.Contains(told[0].Text, "the list was changed as well") || both.List.Joints[0].Size.A != 6 {
		t.Errorf("both changed: told %+v, leg %v", told, both.List.Joints[0].Size.A)
	}
}

// listIn writes a list into a folder of its own.
func listIn(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

// TestOursWithoutItsStampIsOurs drops the part that holds the stamp, as some programs do
// when they save: the result still takes the next free name, and the sheets the name of
// the list that it all began with, or the one that was asked for.
func TestOursWithoutItsStampIsOurs(t *testing.T) {
	looks := price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}
	_, book := oneList(t, listIn(t, "Mark,Length,Size,t1,t2,Material\nW1,1 m,z8,12 mm,12 mm,S355\n"), t.TempDir(), looks)
	data, err := os.ReadFile(book)
	if err != nil {
		t.Fatal(err)
	}
	pack, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, f := range pack.File {
		if f.Name == "docProps/custom.xml" {
			continue
		}
		if err := z.Copy(f); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil || judgeWorkbook(out.Bytes()) != save.Foreign {
		t.Fatalf("the stamp is still there, or %v", err)
	}
	if err := os.WriteFile(book, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	again, second := oneList(t, book, "", looks)
	if filepath.Base(second) != "list-worked-2.xlsx" || again.Opts.Job != "list" {
		t.Errorf("written as %s for the job %q", filepath.Base(second), again.Opts.Job)
	}
	looks.Job = "Stair 12"
	_, third := oneList(t, second, "", looks)
	f, err := excelize.OpenFile(third)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if title, err := f.GetCellValue("Totals", "A1"); err != nil || title != "Welding price of Stair 12" {
		t.Errorf("title %q, %v", title, err)
	}
}

// TestWhatCouldNotBeTakenIsNotReplaced: with --force a workbook of ours is replaced, but not
// where it alone holds what somebody typed.
func TestWhatCouldNotBeTakenIsNotReplaced(t *testing.T) {
	looks := price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}
	for value, want := range map[float64]string{2.5: "list-worked-2.xlsx", 3: "list-worked.xlsx"} {
		dir := t.TempDir()
		_, book := oneList(t, listIn(t, "Mark,Length,Size,t1,t2,Quantity,Material\nW1,1 m,z8,12 mm,12 mm,2 off,S355\n"), dir, looks)
		data, err := os.ReadFile(retyped(t, book, "Qty", 2, value))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(book, data, 0o644); err != nil {
			t.Fatal(err)
		}
		job := Job{Version: "test", Lists: []string{book}, Only: []Output{Workbook}, Force: true, Looks: looks}
		outcome, err := Run(context.Background(), job)
		if err != nil || len(outcome.Lists[0].Written) != 1 || filepath.Base(outcome.Lists[0].Written[0]) != want {
			t.Fatalf("%v pieces: %v, written %v, want %s", value, err, outcome.Lists[0].Written, want)
		}
		if now, err := os.ReadFile(book); err != nil || bytes.Equal(now, data) != (want != "list-worked.xlsx") {
			t.Errorf("%v pieces: the workbook is the same %v, %v", value, bytes.Equal(now, data), err)
		}
	}
}
