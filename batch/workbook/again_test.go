package workbook

import (
	"bytes"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

// TestRunAgainOnOurOwn gives our own workbook back: the user's cells come out as
// they went in, and the second workbook says what the first said.
func TestRunAgainOnOurOwn(t *testing.T) {
	for _, path := range []string{"mezzanine/mezzanine.xlsx", "wash-table/wash-table.csv"} {
		t.Run(path, func(t *testing.T) {
			src, job := sampleJob(t, path, price.Options{})
			first := build(t, src, job, Options{})
			again, _, err := list.Read("again.xlsx", first)
			must(t, err)
			bare, problems := Undress(again)
			for _, p := range problems {
				t.Errorf("%s: %s", p.Code, p.Text)
			}
			if src.Format != list.CSV && len(bare.Sheets) != len(src.Sheets) {
				t.Errorf("%d sheets came back of %d", len(bare.Sheets), len(src.Sheets))
			}
			sameCells(t, "undressed", src, bare.Data, nil)
			job2 := understoodJob(t, bare, price.Options{})
			second := build(t, bare, job2, Options{})
			sameCells(t, "second", src, second, nil)
			if job.Totals.Price != job2.Totals.Price {
				t.Errorf("the price was %v, is %v", job.Totals.Price, job2.Totals.Price)
			}
			if a, b := names(t, first), names(t, second); a != b {
				t.Errorf("sheets and names were\n%s\nare\n%s", a, b)
			}
			if ours, unchanged := Stamped(second); !ours || !unchanged {
				t.Error("the second workbook is not stamped")
			}
		})
	}
}

// TestPrintFollowsTheList adds a row below the list: what is printed reaches it in
// the next run, unless the user has set the print area themselves.
func TestPrintFollowsTheList(t *testing.T) {
	src, _, err := list.Read("list.xlsx", fixtureXLSX(t))
	must(t, err)
	job := understoodJob(t, src, price.Options{})
	for _, own := range []string{"", "$A$1:$C$9"} {
		f := opened(t, build(t, src, job, Options{}))
		sheet := job.List.Sheet
		row := job.List.Joints[0].Place.Row
		last := job.List.LastRow + 1
		rows, err := f.GetRows(sheet)
		must(t, err)
		for c := range job.List.LastCol {
			if c < len(rows[row-1]) && rows[row-1][c] != "" {
				must(t, f.SetCellValue(sheet, cellOf(t, c+1, last), rows[row-1][c]))
			}
		}
		want := "$" + itoa(last)
		if own != "" {
			want = own
			must(t, f.DeleteDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: sheet}))
			must(t, f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: sheet, RefersTo: "'" + sheet + "'!" + own}))
		}
		again, _, err := list.Read("again.xlsx", written(t, f))
		must(t, err)
		bare, _ := Undress(again)
		out := build(t, bare, understoodJob(t, bare, price.Options{}), Options{})
		got := ""
		for _, n := range opened(t, out).GetDefinedName() {
			if n.Name == "_xlnm.Print_Area" && n.Scope == sheet {
				got += n.RefersTo
			}
		}
		if !strings.HasSuffix(got, want) {
			t.Errorf("the print area is %q, want one that ends in %s", got, want)
		}
	}
}

func names(t *testing.T, data []byte) string {
	t.Helper()
	f := opened(t, data)
	out := strings.Join(f.GetSheetList(), ", ")
	for _, n := range f.GetDefinedName() {
		if !strings.HasPrefix(n.Name, "_xlnm") {
			out += "\n" + n.Name
		}
	}
	return out
}

// TestAChangeInOurColumnIsTaken changes a yellow cell as a person would and saves
// with another program: the file is ours and changed, and the change is taken and told.
func TestAChangeInOurColumnIsTaken(t *testing.T) {
	src, job := sampleJob(t, "mezzanine/mezzanine.xlsx", price.Options{})
	f := opened(t, build(t, src, job, Options{}))
	sheet := job.List.Sheet
	rows, err := f.GetRows(sheet)
	must(t, err)
	col := 0
	for _, row := range rows {
		for c, text := range row {
			if text == "Leg A mm" {
				col = c + 1
			}
		}
	}
	cell, err := excelize.CoordinatesToCellName(col, job.List.Joints[0].Place.Row)
	must(t, err)
	must(t, f.SetCellValue(sheet, cell, 12.5))
	saved := written(t, f)
	if ours, unchanged := Stamped(saved); !ours || unchanged {
		t.Errorf("stamp says ours %v, unchanged %v", ours, unchanged)
	}
	again, _, err := list.Read("again.xlsx", saved)
	must(t, err)
	bare, problems := Undress(again)
	typed := TakeTyped(again, &job.List)
	if len(problems) != 0 || len(typed) != 1 || typed[0].Place.Cell() != cell || typed[0].Code != "typed-in-our-column" || job.List.Joints[0].Size.A != 12.5 {
		t.Errorf("problems: %+v; typed: %+v, leg %v", problems, typed, job.List.Joints[0].Size.A)
	}
	sameCells(t, "saved by another", src, bare.Data, nil)
	if bytes.Equal(bare.Data, saved) {
		t.Error("nothing was taken out")
	}
}
