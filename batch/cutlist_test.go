package batch_test

import (
	"context"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch"
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
			if err := f.SetSheetRow(name, "A"+string(rune('1'+r)), &row); err != nil {
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
	paintRows = [][]any{{"Item", "Section", "Pieces", "Length m", "Area m²"}, {"Columns", "HEB 160", 6, 2.95, 16.2}}
)

// A cut list is found by its headers on a sheet beside the joints, before or behind
// them; a sheet of paint areas is none unless it is named.
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
		"alone":           {bookOf(t, "Liste", cutRows), "", 2, 0},
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
