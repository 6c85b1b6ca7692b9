package batch_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch"
	"seamtally/batch/finding"
)

// bookOf writes a workbook of sheets, in the order given.
func bookOf(t *testing.T, sheets ...any) string {
	t.Helper()
	f := excelize.NewFile()
	for i := 0; i < len(sheets); i += 2 {
		name := sheets[i].(string)
		if _, err := f.NewSheet(name); err != nil {
			t.Fatal(err)
		}
		for r, row := range sheets[i+1].([][]any) {
			if err := f.SetSheetRow(name, fmt.Sprint("A", r+1), &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := f.DeleteSheet("Sheet1"); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "frame.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

var (
	jointRows = [][]any{{"Mark", "Leg mm", "Part 1", "Part 2", "Length mm", "Qty"}, {"W1", 5, "P1", "P2", 600, 4}}
	plainRows = [][]any{{"Mark", "Leg mm", "t1 mm", "t2 mm", "Length mm", "Qty"}, {"W1", 5, 8, 8, 600, 4}}
	cutRows   = [][]any{{"Part", "Section", "Grade", "Length mm", "Qty"}, {"P1", "SHS 80x80x5", "S355J2H", 1200, 4}, {"P2", "FL 100x10", "S235", 250, 4}}
	fourRows  = [][]any{{"Mark", "Length (mm)", "Size", "Thickness (mm)"}, {"F1", 450, "z5", 6}, {"F2", 80, "a4", 8}}
	sizedRows = [][]any{{"Mark", "Length (mm)", "Size", "Qty"}, {"P1", 450, "SHS 80x80x5", 6}, {"P2", 80, "L 60x60x6", 8}}
	paintRows = [][]any{{"Item", "Section", "Pieces", "Length m", "Area m²"}, {"Columns", "HEB 160", 6, 2.95, 16.2}}
)

// A cut list is found by its headers on a sheet beside the joints, before or behind
// them; a sheet of paint areas is none unless it is named.
// inchRows are the four columns that are enough, with a size in inches: no row of them
// can be read as a part, though Size heads sections too.
func inchRows(size string) [][]any {
	return [][]any{{"Mark", "Length", "Size", "t1"}, {"A", 500, size, 8}, {"B", 600, size, 8}}
}

func TestWhichSheetIsTheCutList(t *testing.T) {
	for name, c := range map[string]struct {
		path, parts string
		want        int // parts; -1: no cut list
		joints      int
	}{
		"behind":          {bookOf(t, "Welds", jointRows, "Liste", cutRows), "", 2, 1},
		"before":          {bookOf(t, "Liste", cutRows, "Welds", jointRows), "", 2, 1},
		"named by option": {bookOf(t, "Welds", plainRows, "Paint", paintRows), "paint", 1, 1},
		"paint areas":     {bookOf(t, "Welds", plainRows, "Paint", paintRows), "", -1, 1},
		"behind paint":    {bookOf(t, "Welds", plainRows, "Paint", paintRows, "Liste", cutRows), "", 2, 1},
		"alone":           {bookOf(t, "Liste", cutRows), "", 2, 0},
		"four of welds":   {bookOf(t, "Liste", fourRows), "", -1, 2},
		"sizes of parts":  {bookOf(t, "Liste", sizedRows), "", 2, 0},
		"inch sizes":      {bookOf(t, "Liste", inchRows("1/4")), "", -1, 2},
		"inches marked":   {bookOf(t, "Liste", inchRows(`5/16"`)), "", -1, 2},
		"decimal inches":  {bookOf(t, "Liste", inchRows("0.25 in")), "", -1, 2},
		"four-columns":    {"../samples/four-columns/four-columns.csv", "", -1, 6},
	} {
		t.Run(name, func(t *testing.T) {
			job := batch.Job{Lists: []string{c.path}, Parts: c.parts, DryRun: true}
			job.Done = func(r batch.Result) {
				if r.Err != nil {
					t.Fatal(r.Err)
				}
				found := -1
				if r.Job.Parts != nil {
					found = len(r.Job.Parts.List.Parts)
				}
				if found != c.want || len(r.Job.List.Joints) != c.joints {
					t.Errorf("%d parts and %d joints, want %d and %d", found, len(r.Job.List.Joints), c.want, c.joints)
				}
			}
			batch.Run(context.Background(), job)
		})
	}
}

// The sheet that is taken as the cut list is not told as one more list of joints; a second
// sheet of joints is.
func TestTheCutListIsNoOtherJointList(t *testing.T) {
	plates := [][]any{{"Mark", "Size", "Thickness mm", "Length mm", "Qty"}, {"P1", 10, 10, 250, 4}}
	for name, c := range map[string]struct {
		path, parts string
		told        bool
	}{
		"a cut list":          {bookOf(t, "Welds", jointRows, "Liste", cutRows), "", false},
		"named by option":     {bookOf(t, "Welds", plainRows, "Plates", plates), "plates", false},
		"sizes of parts":      {bookOf(t, "Welds", plainRows, "Cut list", sizedRows), "", false},
		"more welds":          {bookOf(t, "Welds", plainRows, "Stair", fourRows), "", true},
		"more welds and cuts": {bookOf(t, "Welds", plainRows, "Liste", cutRows, "Stair", fourRows), "", true},
	} {
		job := batch.Job{Lists: []string{c.path}, Parts: c.parts, DryRun: true}
		job.Done = func(r batch.Result) {
			if r.Err != nil {
				t.Fatalf("%s: %v", name, r.Err)
			}
			told := 0
			for _, p := range r.Job.Problems {
				if p.Code == "other-sheets" {
					told++
				}
			}
			if (told == 1) != c.told || told > 1 {
				t.Errorf("%s: told %d times", name, told)
			}
		}
		batch.Run(context.Background(), job)
	}
}

// What a joint says itself wins over its part, and that is told.
func TestTheJointWinsOverItsPart(t *testing.T) {
	rows := [][]any{{"Mark", "Leg mm", "Part 1", "Part 2", "t1 mm", "Material", "Length mm", "Qty"}, {"W1", 5, "P1", "P2", 6, "S235", 600, 4}}
	job := batch.Job{Lists: []string{bookOf(t, "Welds", rows, "Cut list", cutRows)}, DryRun: true}
	job.Done = func(r batch.Result) {
		if r.Err != nil {
			t.Fatal(r.Err)
		}
		p := &r.Job.Plans[0]
		if p.Prep.T1 != 6 || p.Prep.T2 != 10 || p.Joint.Material != "S235" {
			t.Errorf("t1 %v, t2 %v, material %s", p.Prep.T1, p.Prep.T2, p.Joint.Material)
		}
		told := map[string]bool{}
		for _, c := range p.Checks {
			told[c.Code] = true
		}
		if !told["part-thickness"] || !told["part-grade"] {
			t.Errorf("told: %v", told)
		}
	}
	batch.Run(context.Background(), job)
}

// A hundred mistakes planted in two lists, twenty of each kind, are told, each with
// its row and what to do about it; the rows between them are worked in peace.
func TestAHundredMistakesInTwoListsAreTold(t *testing.T) {
	joints := [][]any{{"Mark", "Leg mm", "Part 1", "Part 2", "t1 mm", "Length mm", "Qty"}}
	cut := [][]any{{"Part", "Section", "Grade", "Length mm", "Qty"}}
	type planted struct{ joint, part int } // rows, either of which may tell it
	var mistakes []planted
	for i := range 120 {
		part, plate := fmt.Sprintf("P%d", i), fmt.Sprintf("Q%d", i)
		j := []any{fmt.Sprintf("W%d", i), 5, part, plate, nil, 150, 4}
		p := []any{part, "SHS 80x80x5", "S355", 1200, 4}
		switch {
		case i%6 == 0: // nothing wrong
		case i%6 == 1:
			j[2] = fmt.Sprintf("X%d", i)
		case i%6 == 2:
			p[4], j[6] = 12, 10
		case i%6 == 3:
			j[4] = 9
		case i%6 == 4:
			p[1] = "IPE 205"
		case i%6 == 5:
			p[3] = 1.2 // metres under a header of millimetres
		}
		joints, cut = append(joints, j), append(cut, p, []any{plate, "PL 200x12", "S235", 200, 4})
		if i%6 != 0 {
			mistakes = append(mistakes, planted{len(joints), len(cut) - 1})
		}
	}
	job := batch.Job{Lists: []string{bookOf(t, "Welds", joints, "Cut list", cut)}, DryRun: true}
	job.Done = func(r batch.Result) {
		if r.Err != nil {
			t.Fatal(r.Err)
		}
		toldJoint, toldPart := map[int]string{}, map[int]string{}
		for i := range r.Job.Plans {
			for _, c := range r.Job.Plans[i].Checks {
				if strings.HasPrefix(c.Code, "part-") && c.Level != finding.Note {
					if c.Do == "" || c.Text == "" {
						t.Errorf("%+v says not what to do", c)
					}
					toldJoint[r.Job.Plans[i].Joint.Place.Row] += c.Text + "; "
				}
			}
		}
		for _, p := range r.Job.Problems {
			if p.Level == finding.Note {
				continue
			}
			if p.Place.Row == 0 || p.Hint == "" {
				t.Errorf("%s: no row, or not what to do", p.Line())
			}
			if p.Place.Sheet == "Cut list" {
				toldPart[p.Place.Row] += p.Text + "; "
			} else {
				toldJoint[p.Place.Row] += p.Text + "; "
			}
		}
		told := 0
		for k, m := range mistakes {
			if toldJoint[m.joint] == "" && toldPart[m.part] == "" {
				t.Errorf("mistake %d of kind %d (joint row %d, part row %d) is not told", k, k%5+1, m.joint, m.part)
				continue
			}
			told++
		}
		if len(mistakes) != 100 || told != 100 {
			t.Errorf("%d of %d planted mistakes are told", told, len(mistakes))
		}
		for row := 2; row <= len(joints); row += 6 { // those without a mistake
			if text := toldJoint[row]; text != "" {
				t.Errorf("row %d has no mistake, but: %s", row, text)
			}
		}
	}
	batch.Run(context.Background(), job)
}

// A cut list in a workbook of its own is given back beside the others, under the name
// of the list: once more under another where it has that name itself.
func TestTheCutListOfAnotherWorkbookIsGivenBack(t *testing.T) {
	frame := bookOf(t, "Welds", jointRows)
	for name, want := range map[string]string{"parts.xlsx": "frame-parts.xlsx", "frame-parts.xlsx": "frame-parts-worked.xlsx"} {
		dir := t.TempDir()
		data, err := os.ReadFile(bookOf(t, "Liste", cutRows))
		if err != nil {
			t.Fatal(err)
		}
		cut := filepath.Join(dir, name)
		if err := os.WriteFile(cut, data, 0o644); err != nil {
			t.Fatal(err)
		}
		job := batch.Job{Lists: []string{frame}, Parts: cut, Out: dir, Only: []batch.Output{batch.Workbook}}
		outcome, err := batch.Run(context.Background(), job)
		if err != nil || outcome.Lists[0].Err != nil {
			t.Fatal(err, outcome.Lists[0].Err)
		}
		written := fmt.Sprint(outcome.Lists[0].Written)
		if got := fmt.Sprint([]string{filepath.Join(dir, "frame-worked.xlsx"), filepath.Join(dir, want)}); written != got {
			t.Errorf("%s: wrote %s, want %s", name, written, got)
		}
		if after, err := os.ReadFile(cut); err != nil || string(after) != string(data) {
			t.Errorf("%s: the cut list itself was changed (%v)", name, err)
		}
		f, err := excelize.OpenFile(filepath.Join(dir, want))
		if err != nil {
			t.Fatal(err)
		}
		if rows, _ := f.GetRows("Liste"); len(rows[1]) < 20 || rows[1][0] != "P1" {
			t.Errorf("%s: %v", name, rows)
		}
	}
}

// TestTheMezzaninesCutListIsLive: in a whole run every figure that follows from cells
// is a formula; what the run rounds is rounded before it is added up.
func TestTheMezzaninesCutListIsLive(t *testing.T) {
	dir := t.TempDir()
	job := batch.Job{Lists: []string{filepath.Join("..", "samples", "mezzanine", "mezzanine.xlsx")}, Out: dir, Only: []batch.Output{batch.Workbook}}
	outcome, err := batch.Run(context.Background(), job)
	if err != nil || outcome.Lists[0].Err != nil {
		t.Fatal(err, outcome.Lists[0].Err)
	}
	f, err := excelize.OpenFile(filepath.Join(dir, "mezzanine-worked.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := f.GetRows("Cut list")
	if err != nil {
		t.Fatal(err)
	}
	for c, head := range rows[2] {
		switch head {
		case "Length mm", "Mass kg", "Mass each kg", "Paint m²", "Seam m", "Weld metal kg", "Bevel m":
		default:
			continue
		}
		live := 0
		for r := 4; r < 27; r++ {
			cell, _ := excelize.CoordinatesToCellName(c+1, r+1)
			formula, _ := f.GetCellFormula("Cut list", cell)
			if formula == "" && c < len(rows[r]) && rows[r][c] != "" {
				t.Errorf("%s of row %d is %s without a formula", head, r+1, rows[r][c])
			}
			if formula != "" {
				live++
			}
		}
		if live < 5 {
			t.Errorf("%s: %d formulas", head, live)
		}
	}
}
