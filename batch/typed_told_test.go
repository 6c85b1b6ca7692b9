package batch

import (
	"cmp"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/finding"
	"seamtally/batch/price"
)

// ran works the one list of a job, refused or not.
func ran(t *testing.T, job Job) Result {
	t.Helper()
	var worked *price.Job
	job.Done = func(r Result) { worked = r.Job }
	outcome, err := Run(context.Background(), job)
	if err != nil {
		t.Fatal(err)
	}
	r := outcome.Lists[0]
	r.Job = worked
	return r
}

// edit is what a person does to one cell under a header: a formula begins with =, nil
// empties the cell.
type edit struct {
	header string
	row    int
	value  any
}

// edited does to a sheet of a workbook what a person would, and saves under another name.
func edited(t *testing.T, book, sheet string, edits ...edit) string {
	t.Helper()
	f, err := excelize.OpenFile(book)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]int{}
	for _, cells := range rows {
		for c, text := range cells {
			if text != "" && at[text] == 0 {
				at[text] = c + 1
			}
		}
	}
	for _, e := range edits {
		cell, err := excelize.CoordinatesToCellName(at[e.header], e.row)
		if err != nil {
			t.Fatalf("no column %q: %v", e.header, err)
		}
		if text, ok := e.value.(string); ok && text[:1] == "=" {
			err = f.SetCellFormula(sheet, cell, text[1:])
		} else {
			err = f.SetCellValue(sheet, cell, e.value)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	name := filepath.Join(t.TempDir(), "changed.xlsx")
	if err := f.SaveAs(name); err != nil {
		t.Fatal(err)
	}
	return name
}

// plainLooks are those of a workbook with live formulas in metric units.
var plainLooks = price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}

// inWords is a list whose cells no formula of ours can follow; inNumbers one whose cells
// ours do.
const (
	inWords   = "Mark,Length,Size,t1,t2,Quantity,Gap,Material\nW1,1 m,z8,12 mm,12 mm,2 off,,S355\nW2,1 m,z5,6 mm,6 mm,1 off,,S355\n"
	inNumbers = "Mark,Length [mm],Size,t1 [mm],t2 [mm],Quantity,Gap [mm],Material\nW1,1000,z8,12,12,2,,S355\nW2,1000,z5,6,6,1,,S355\n"
)

// TestNoNumberInOurCellsIsTold types words, a truth, a share and a formula into our cells:
// each is told with its cell, what was read, what was expected and what to do, and the
// list holds.
func TestNoNumberInOurCellsIsTold(t *testing.T) {
	plain, book := oneList(t, listIn(t, inWords), t.TempDir(), plainLooks)
	for _, c := range []struct {
		edit
		want, read string
	}{
		{edit{"Leg A mm", 2, "ten"}, "a number in mm", "ten"},
		{edit{"Length mm", 2, "1,5 m"}, "a number in mm", "1,5 m"},
		{edit{"Qty", 3, true}, "a number", "TRUE"},
		{edit{"Qty", 3, "=2+3"}, "a number", "1"}, // the library leaves the figure before it
	} {
		job, _ := oneList(t, edited(t, book, "Joints", c.edit), t.TempDir(), plainLooks)
		told := problemsOf(job, "changed-in-our-column")
		if len(told) != 1 || job.Totals.Price != plain.Totals.Price || len(problemsOf(job, "typed-in-our-column")) != 0 {
			t.Errorf("%v: told %+v, price %v, want %v", c.edit, told, job.Totals.Price, plain.Totals.Price)
			continue
		}
		if p := told[0]; p.Level != finding.Warning || p.Place.Row != c.row || p.Place.Cell() == "" || p.Want != c.want || p.Read != c.read || p.Hint == "" {
			t.Errorf("%v: told %+v", c.edit, p)
		}
	}
}

// TestWhatIsTypedOverAFormulaIsTaken: our cell follows the list's own, and a person types
// a figure over the formula. The next run takes it, the run after it still does, and the
// list's own cell beats it once it is changed.
func TestWhatIsTypedOverAFormulaIsTaken(t *testing.T) {
	values := plainLooks
	values.ValuesOnly = true
	for _, looks := range []price.Options{plainLooks, values} {
		plain, book := oneList(t, listIn(t, inNumbers), t.TempDir(), looks)
		again, second := oneList(t, edited(t, book, "Joints", edit{"Length mm", 2, 1500}, edit{"Qty", 3, 4}, edit{"t1 mm", 3, 8}), t.TempDir(), looks)
		third, last := oneList(t, second, t.TempDir(), looks)
		for i, job := range []*price.Job{again, third} {
			a, b := job.List.Joints[0], job.List.Joints[1]
			if a.Length != 1500 || b.Qty != 4 || b.T1 != 8 || len(problemsOf(job, "typed-in-our-column")) != 3 || job.Totals.Price <= plain.Totals.Price {
				t.Errorf("values %v, run %d: %v long, %d pieces, %v thick; told %+v", looks.ValuesOnly, i+2, a.Length, b.Qty, b.T1, job.Problems)
			}
		}
		job, _ := oneList(t, edited(t, last, "Joints", edit{"Length [mm]", 2, 1200}), t.TempDir(), looks)
		if got := job.List.Joints[0].Length; got != 1200 || len(problemsOf(job, "typed-in-our-column")) != 2 {
			t.Errorf("values %v: %v long after the list's own change", looks.ValuesOnly, got)
		}
	}
}

// TestAWorkbookOfValuesTellsNothingTyped: where ours stands without a formula and without
// what was reckoned with, a number is no sign that somebody typed it: the list's own
// figures changed since then hold, and nothing is told.
func TestAWorkbookOfValuesTellsNothingTyped(t *testing.T) {
	looks := plainLooks
	looks.ValuesOnly = true
	_, book := oneList(t, listIn(t, inNumbers), t.TempDir(), looks)
	job, _ := oneList(t, edited(t, book, "Joints", edit{"Length [mm]", 2, 1300}, edit{"Read length mm", 2, nil}), t.TempDir(), looks)
	if got := job.List.Joints[0].Length; got != 1300 || len(problemsOf(job, "typed-in-our-column"))+len(problemsOf(job, "changed-in-our-column")) != 0 {
		t.Errorf("%v long; told %+v", got, job.Problems)
	}
}

// TestAnEmptiedCellLeavesTheWordToTheList empties a cell that a figure was typed into.
func TestAnEmptiedCellLeavesTheWordToTheList(t *testing.T) {
	plain, book := oneList(t, listIn(t, inWords), t.TempDir(), plainLooks)
	_, second := oneList(t, edited(t, book, "Joints", edit{"Leg A mm", 2, 10}), t.TempDir(), plainLooks)
	job, third := oneList(t, edited(t, second, "Joints", edit{"Leg A mm", 2, nil}), t.TempDir(), plainLooks)
	told := problemsOf(job, "typed-in-our-column")
	if len(told) != 1 || told[0].Level != finding.Note || told[0].Place.Row != 2 || job.List.Joints[0].Size.A != 8 || !near(job.Totals.Price, plain.Totals.Price) {
		t.Errorf("told %+v, leg %v, price %v, want %v", told, job.List.Joints[0].Size.A, job.Totals.Price, plain.Totals.Price)
	}
	job, _ = oneList(t, third, t.TempDir(), plainLooks)
	if told := problemsOf(job, "typed-in-our-column"); len(told) != 0 || job.List.Joints[0].Size.A != 8 {
		t.Errorf("the run after: told %+v, leg %v", told, job.List.Joints[0].Size.A)
	}
}

// TestTypedBesideARejectedRowIsTold: a figure typed beside a row that is not worked goes
// nowhere, whether it was typed now or before the row was spoiled.
func TestTypedBesideARejectedRowIsTold(t *testing.T) {
	_, book := oneList(t, listIn(t, inWords), t.TempDir(), plainLooks)
	spoiled := edit{"Size", 2, "nonsense"}
	_, second := oneList(t, edited(t, book, "Joints", edit{"Qty", 2, 7}), t.TempDir(), plainLooks)
	_, rejected := oneList(t, edited(t, book, "Joints", spoiled), t.TempDir(), plainLooks)
	for name, from := range map[string]string{
		"typed and spoiled":      edited(t, book, "Joints", edit{"Qty", 2, 7}, spoiled),
		"spoiled later":          edited(t, second, "Joints", spoiled),
		"typed later":            edited(t, rejected, "Joints", edit{"Qty", 2, 7}),
		"words, typed later":     edited(t, rejected, "Joints", edit{"Qty", 2, "seven"}),
		"beside a row of naught": edited(t, book, "Joints", edit{"Qty", 4, 7}),
	} {
		job, _ := oneList(t, from, t.TempDir(), plainLooks)
		told := problemsOf(job, "changed-in-our-column")
		if len(told) != 1 || told[0].Place.Cell() == "" || told[0].Read == "" || told[0].Want == "" || told[0].Hint == "" {
			t.Errorf("%s: told %+v", name, told)
		}
	}
	job, _ := oneList(t, edited(t, book, "Joints", spoiled), t.TempDir(), plainLooks)
	if told := problemsOf(job, "changed-in-our-column"); len(told) != 0 {
		t.Errorf("nothing typed: told %+v", told)
	}
}

// TestNothingTypedNothingTold runs what was written for the samples again, with formulas
// in inches and without in millimetres: nobody typed anything, and nothing is told as typed.
func TestNothingTypedNothingTold(t *testing.T) {
	for _, sample := range [][2]string{{"mezzanine/mezzanine.xlsx"}, {"gangway/gangway.csv"}, {"wash-table/wash-table.csv"}, {"four-columns/four-columns.csv"},
		{"mistakes/mistakes.csv"}, {"trestle/trestle.csv", "trestle/trestle-cut-list.csv"}, {"trestle/trestle-cut-list.csv"}} {
		for _, looks := range []price.Options{{US: true, Codes: "aws"}, {ValuesOnly: true}} {
			looks.Date, looks.Paper, looks.Lang, looks.Codes, looks.Symbols = "2026-03-01", "a4", "en", cmp.Or(looks.Codes, "iso"), "iso"
			job := Job{Version: "test", Lists: []string{filepath.Join("../samples", sample[0])}, Out: t.TempDir(), Only: []Output{Workbook}, Looks: looks}
			if sample[1] != "" {
				job.Parts = filepath.Join("../samples", sample[1])
			}
			first := ran(t, job)
			if first.Err != nil {
				t.Fatal(first.Err)
			}
			job.Lists, job.Out = first.Written[:1], t.TempDir()
			again := ran(t, job)
			if again.Err != nil {
				t.Fatal(again.Err)
			}
			for _, code := range []string{"typed-in-our-column", "changed-in-our-column", "shop-typed"} {
				if told := problemsOf(again.Job, code); len(told) > 0 {
					t.Errorf("%s, %+v: %d told, first %+v", sample, looks, len(told), told[0])
				}
			}
		}
	}
}

// TestANoughtThatIsTypedIsTaken: no gap, typed where the list says nothing of one and the
// plan took one, is a statement.
func TestANoughtThatIsTypedIsTaken(t *testing.T) {
	plain, book := oneList(t, listIn(t, "Mark,Kind,Length,t1,t2,Material\nW1,V butt,1 m,12 mm,12 mm,S355\n"), t.TempDir(), plainLooks)
	if g := plain.Plans[0].Prep.Gap; g <= 0 {
		t.Fatalf("the plan takes a gap of %v", g)
	}
	job, _ := oneList(t, edited(t, book, "Joints", edit{"Gap mm", 2, 0}), t.TempDir(), plainLooks)
	if j := job.List.Joints[0]; !j.GapGiven || j.Gap != 0 || job.Plans[0].Prep.Gap != 0 || len(problemsOf(job, "typed-in-our-column")) != 1 {
		t.Errorf("gap given %v, %v; told %+v", j.GapGiven, j.Gap, job.Problems)
	}
}

// TestOnlyAWorkbookIsWrittenBeside: results replace results with --force, whatever was
// typed into the workbook that they are of.
func TestOnlyAWorkbookIsWrittenBeside(t *testing.T) {
	dir := t.TempDir()
	_, book := oneList(t, listIn(t, inWords), dir, plainLooks)
	changed := filepath.Join(dir, "list-worked.xlsx")
	data, err := os.ReadFile(edited(t, book, "Joints", edit{"Qty", 2, 2.5}))
	if err == nil {
		err = os.WriteFile(changed, data, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	r := ran(t, Job{Version: "test", Lists: []string{changed}, Only: []Output{Results}, Force: true, Looks: plainLooks})
	if r.Err != nil || len(problemsOf(r.Job, "changed-in-our-column")) != 1 || len(problemsOf(r.Job, "kept-for-what-was-typed")) != 0 {
		t.Errorf("%v; told %+v", r.Err, r.Job.Problems)
	}
}

// TestASecondDepthThatIsTypedIsTold: the depth from the second side follows from the
// others, and no list states it.
func TestASecondDepthThatIsTypedIsTold(t *testing.T) {
	plain, book := oneList(t, listIn(t, "Mark,Kind,Length,t1,t2,Material\nW1,double V,1 m,20 mm,20 mm,S355\n"), t.TempDir(), plainLooks)
	if plain.Plans[0].Prep.Depth2 <= 0 {
		t.Fatal("the plan has no second depth")
	}
	job, _ := oneList(t, edited(t, book, "Joints", edit{"Depth 2 mm", 2, 5}), t.TempDir(), plainLooks)
	told := problemsOf(job, "changed-in-our-column")
	if len(told) != 1 || !strings.Contains(told[0].Hint, "root face") || job.Totals.Price != plain.Totals.Price {
		t.Errorf("told %+v, price %v, want %v", told, job.Totals.Price, plain.Totals.Price)
	}
	if again, _ := oneList(t, book, t.TempDir(), plainLooks); len(problemsOf(again, "changed-in-our-column")) != 0 {
		t.Errorf("nothing typed: told %+v", again.Problems)
	}
}
