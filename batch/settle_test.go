package batch

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/price"
)

// TestFloorColumnsComeBack fills in the floor's columns of a worked workbook,
// settles it, works it again and settles that: the records stay.
func TestFloorColumnsComeBack(t *testing.T) {
	dir := t.TempDir()
	var rows []string
	for i := range 14 {
		rows = append(rows, fmt.Sprintf("W%d,A,1,fillet,%d,5,8,8,S235,PB", i+1, 500+100*i))
	}
	looks := price.Options{Date: "2026-03-01", Codes: "iso", Paper: "a4", Lang: "en"}
	run := func(list, out string) string {
		t.Helper()
		o, err := Run(context.Background(), Job{Lists: []string{list}, Out: filepath.Join(dir, out), Only: []Output{Workbook}, Looks: looks})
		if err != nil || o.Code != Worked {
			t.Fatal(err, o)
		}
		return o.Lists[0].Written[0]
	}
	worked := run(listOf(t, dir, "floor.csv", rows), "one")
	fillFloor(t, worked)
	var before string
	for k, path := range []string{worked, run(worked, "two")} {
		s, err := Settle(context.Background(), Job{Lists: []string{path}, Looks: looks})
		if err != nil {
			t.Fatal(err)
		}
		if len(s.Settled.Joints) != len(rows) || s.Job.Floor[3].Note != "=late" {
			t.Fatalf("%d of %d records, note %q", len(s.Settled.Joints), len(rows), s.Job.Floor[3].Note)
		}
		f := s.Settled.Factors[0]
		if !f.Fitted || math.Abs(f.Value-0.2) > 0.005 {
			t.Errorf("operating factor %g, the records were written with 0.2: %s", f.Value, f.Sentence)
		}
		text := fmt.Sprint(s.Settled.Factors)
		if k == 1 && text != before {
			t.Errorf("worked again it reads\n%s\nbefore\n%s", text, before)
		}
		before = text
	}
}

// fillFloor writes, into every row of a worked workbook, the planned arc time
// and the welder's time that an operating factor of 0.2 makes of it.
func fillFloor(t *testing.T, path string) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	sheet := f.GetSheetList()[0]
	cells, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	col, head := map[string]int{}, 0
	for r, row := range cells {
		for c, text := range row {
			if strings.HasPrefix(text, "Floor: ") || text == "Arc time min" || strings.HasPrefix(text, "of which ") {
				col[text], head = c+1, r
			}
		}
	}
	number := func(r int, name string) float64 {
		var v float64
		fmt.Sscan(cells[r][col[name]-1], &v)
		return v
	}
	for r := head + 1; r < len(cells); r++ {
		if len(cells[r]) < col["Arc time min"] || cells[r][col["Arc time min"]-1] == "" {
			continue
		}
		arc := number(r, "Arc time min")
		apart := number(r, "of which handling min") + number(r, "of which fit-up min") + number(r, "of which cleaning min")
		for name, v := range map[string]any{"Floor: arc time min": arc, "Floor: welder's time min": apart + arc*1.02/0.2, "Floor: note": "=late"} {
			at, _ := excelize.CoordinatesToCellName(col[name], r+1)
			if err := f.SetCellValue(sheet, at, v); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
}

// The new shop file is read back as it was written.
func TestSettledShopIsReadBack(t *testing.T) {
	dir := t.TempDir()
	rows := []string{}
	for i := range 12 {
		rows = append(rows, fmt.Sprintf("W%d,A,1,fillet,%d,5,8,8,S235,PB,%.2f,%d", i+1, 1000+50*i, 3.0+0.15*float64(i), 20+i))
	}
	path := filepath.Join(dir, "floor.csv")
	text := "Mark,Assembly,Qty,Kind,Length mm,Leg mm,t1 mm,t2 mm,Material,Position,Floor: arc time min,Floor: welder's time min\n" + strings.Join(rows, "\n") + "\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	looks := price.Options{Date: "2026-03-01", Codes: "iso"}
	s, err := Settle(context.Background(), Job{Lists: []string{path}, Set: []string{"labour_rate=41"}, Looks: looks})
	if err != nil {
		t.Fatal(err)
	}
	shop := filepath.Join(dir, "shop.csv")
	if err := os.WriteFile(shop, s.ShopFile, 0o600); err != nil {
		t.Fatal(err)
	}
	again, err := Settle(context.Background(), Job{Lists: []string{path}, Shop: shop, Looks: looks})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := again.Job.Shop.OperatingFactor, s.Settled.Factors[0].Value; math.Abs(got-want) > 0.0006 {
		t.Errorf("operating factor read back %g, fitted %g", got, want)
	}
	if again.Job.Shop.LabourRate != 41 {
		t.Errorf("the shop's own labour rate came back as %g", float64(again.Job.Shop.LabourRate))
	}
}
