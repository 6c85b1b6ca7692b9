package batch

import (
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/parts"
	"seamtally/batch/price"
)

// frame is a workbook of a list of joints and a cut list; cells of ours follow the
// lengths and pieces of P1, and not those of P2, which are words.
func frame(t *testing.T) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for sheet, rows := range map[string][][]any{
		"Sheet1": {{"Mark", "Length [mm]", "Size", "Qty", "Part 1", "Part 2", "Material"}, {"W1", 300, "z5", 4, "P1", "P2", "S235"}},
		"Cut list": {{"Part", "Section", "Length [mm]", "Quantity", "Material"}, {"P1", "SHS 80x80x5", 1200, 4, "S235"}, {"P2", "PL 10x200", "250 mm", "4 off", "S235"},
			{"P3", "SHS 80x80x5", 600, 2, "S235"}},
	} {
		if _, err := f.NewSheet(sheet); err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			cell, _ := excelize.CoordinatesToCellName(1, i+1)
			if err := f.SetSheetRow(sheet, cell, &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	name := filepath.Join(t.TempDir(), "frame.xlsx")
	if err := f.SaveAs(name); err != nil {
		t.Fatal(err)
	}
	return name
}

func part(t *testing.T, job *price.Job, mark string) (*parts.Part, *parts.Result) {
	t.Helper()
	for i := range job.Parts.List.Parts {
		if p := &job.Parts.List.Parts[i]; p.Mark == mark {
			return p, &job.Parts.Results[i]
		}
	}
	t.Fatalf("no part %s", mark)
	return nil, nil
}

// TestWhatIsTypedBesideTheCutListIsTaken types lengths and pieces into the yellow cells
// beside the cut list, over a formula and over a figure, with formulas and without, in
// either unit: the next run cuts and weighs what a list of those figures would, the run
// after it still does, and a later change of the list's own cells beats what was typed.
func TestWhatIsTypedBesideTheCutListIsTaken(t *testing.T) {
	own := []edit{{"Length [mm]", 2, 1500}, {"Quantity", 2, 6}, {"Length [mm]", 3, "300 mm"}, {"Quantity", 3, "5 off"}}
	want, _ := oneList(t, edited(t, frame(t), "Cut list", own...), t.TempDir(), plainLooks)
	values, inches := plainLooks, plainLooks
	values.ValuesOnly, inches.US = true, true
	for name, looks := range map[string]price.Options{"live": plainLooks, "values": values, "inches": inches} {
		per, head := 1.0, "Length mm"
		if looks.US {
			per, head = 25.4, "Length in"
		}
		_, book := oneList(t, frame(t), t.TempDir(), looks)
		again, second := oneList(t, edited(t, book, "Cut list", edit{head, 2, 1500 / per}, edit{"Pieces", 2, 6}, edit{head, 3, 300 / per}, edit{"Pieces", 3, 5}), t.TempDir(), looks)
		third, last := oneList(t, second, t.TempDir(), looks)
		for i, job := range []*price.Job{again, third} {
			for _, mark := range []string{"P1", "P2", "P3"} {
				p, r := part(t, job, mark)
				q, s := part(t, want, mark)
				if !near(p.Length, q.Length) || p.Qty != q.Qty || !near(r.Mass, s.Mass) || !near(r.Paint, s.Paint) {
					t.Errorf("%s, run %d, %s: %v mm, %d pieces, %v kg; the list of it has %v, %d, %v", name, i+2, mark, p.Length, p.Qty, r.Mass, q.Length, q.Qty, s.Mass)
				}
			}
			if told := problemsOf(job, "typed-in-our-column"); len(told) != 4 || told[0].Place.Sheet != "Cut list" || !near(job.Parts.Totals.Cost, want.Parts.Totals.Cost) {
				t.Errorf("%s, run %d: told %+v", name, i+2, told)
			}
		}
		job, _ := oneList(t, edited(t, last, "Cut list", edit{"Length [mm]", 2, 900}, edit{"Quantity", 3, "3 off"}), t.TempDir(), looks)
		p, _ := part(t, job, "P1")
		q, _ := part(t, job, "P2")
		if p.Length != 900 || p.Qty != 6 || !near(q.Length, 300) || q.Qty != 3 || len(problemsOf(job, "typed-in-our-column")) != 2 {
			t.Errorf("%s, the list's own change: %v mm of %d, %v mm of %d", name, p.Length, p.Qty, q.Length, q.Qty)
		}
	}
}

// TestWhatCannotBeTakenBesideTheCutListIsTold: half a piece, a piece of a kilometre, a
// word, a figure beside a row that is not worked, and where both were changed.
func TestWhatCannotBeTakenBesideTheCutListIsTold(t *testing.T) {
	plain, book := oneList(t, frame(t), t.TempDir(), plainLooks)
	for name, edits := range map[string][]edit{
		"half a piece": {{"Pieces", 2, 4.5}},
		"a kilometre":  {{"Length mm", 3, 1e6}},
		"a word":       {{"Pieces", 3, "five"}},
		"below":        {{"Length mm", 5, 700}},
		"rejected":     {{"Pieces", 2, 5}, {"Section", 2, "nonsense"}},
		"both changed": {{"Length mm", 2, 1500}, {"Length [mm]", 2, 1100}},
	} {
		job, _ := oneList(t, edited(t, book, "Cut list", edits...), t.TempDir(), plainLooks)
		told := problemsOf(job, "changed-in-our-column")
		if len(told) != 1 || told[0].Place.Sheet != "Cut list" || told[0].Place.Cell() == "" || told[0].Read == "" || told[0].Want == "" || told[0].Hint == "" {
			t.Errorf("%s: told %+v", name, told)
		}
		if same := job.Parts.Totals.Mass == plain.Parts.Totals.Mass; same != (len(edits) == 1) {
			t.Errorf("%s: %v kg, were %v", name, job.Parts.Totals.Mass, plain.Parts.Totals.Mass)
		}
	}
}

// TestTypedBesideACutListOfItsOwn: a cut list that is the only list, and one in another
// file than the joints.
func TestTypedBesideACutListOfItsOwn(t *testing.T) {
	_, alone := oneList(t, listIn(t, "Part,Section,Length [mm],Quantity,Material\nP1,SHS 80x80x5,1200,4,S235\n"), t.TempDir(), plainLooks)
	typed := edited(t, alone, "Cut list", edit{"Length mm", 2, 1500})
	job, second := oneList(t, typed, t.TempDir(), plainLooks)
	if p, _ := part(t, job, "P1"); p.Length != 1500 || len(problemsOf(job, "typed-in-our-column")) != 1 {
		t.Errorf("alone: %v mm, told %+v", p.Length, job.Problems)
	}
	r := ran(t, Job{Version: "test", Parts: second, Out: t.TempDir(), Only: []Output{Workbook}, Looks: plainLooks,
		Lists: []string{listIn(t, "Mark,Length,Size,Qty,Part 1,Material\nW1,300,z5,4,P1,S235\n")}})
	if r.Err != nil || len(r.Written) != 2 {
		t.Fatalf("%v; written %v", r.Err, r.Written)
	}
	if p, _ := part(t, r.Job, "P1"); p.Length != 1500 || len(problemsOf(r.Job, "typed-in-our-column")) != 1 {
		t.Errorf("of another file: %v mm, told %+v", p.Length, r.Job.Problems)
	}
	job, _ = oneList(t, r.Written[1], t.TempDir(), plainLooks)
	if p, _ := part(t, job, "P1"); p.Length != 1500 {
		t.Errorf("given back: %v mm", p.Length)
	}
}
