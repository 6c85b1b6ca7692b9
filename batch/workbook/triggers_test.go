package workbook

import (
	"slices"
	"strconv"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

// The joints of the lists below: a fillet by its leg, one by a text, a groove, a
// groove with a root radius and a slot, with a column for every input that can
// decide a plan.
var decided = []string{"Mark", "Kind", "Size", "Leg", "Throat", "t1", "t2", "Stitch", "Material", "Material 2", "Position", "Shop/Site",
	"Process", "Wire", "Gas", "WPS", "Angle", "Gap", "Root face", "Depth", "Radius", "Backing", "Length mm", "Qty", "Sides", "Remarks"}

var decidedBy = map[string]map[string]any{
	"leg":    {"Kind": "fillet", "Leg": 5, "t1": 8, "t2": 10, "Material": "S235", "Position": "PB", "Length mm": 500, "Qty": 2, "Sides": 1},
	"throat": {"Kind": "fillet", "Throat": 4, "t1": 8, "t2": 10, "Material": "S235", "Position": "PB", "Length mm": 500, "Qty": 2, "Sides": 1, "Process": 135},
	"text":   {"Kind": "fillet", "Size": "a4", "t1": `1/4"`, "t2": 8, "Material": "S235", "Position": "PB", "Length mm": 500, "Qty": 2, "Sides": 1},
	"groove": {"Kind": "single V", "t1": 12, "t2": 12, "Angle": 60, "Gap": 2, "Root face": 1, "Material": "S235", "Position": "PA", "Length mm": 500, "Qty": 2, "Sides": 1},
	"part":   {"Kind": "single V", "t1": 12, "t2": 12, "Angle": 60, "Gap": 1, "Depth": 8, "Material": "S235", "Position": "PA", "Length mm": 500, "Qty": 2, "Sides": 1},
	"radius": {"Kind": "single U", "t1": 20, "t2": 20, "Angle": 16, "Radius": 6, "Material": "S235", "Position": "PA", "Length mm": 500, "Qty": 2, "Sides": 1},
	"slot":   {"Kind": "slot", "Size": "20", "t1": 8, "t2": 10, "Material": "S235", "Position": "PA", "Length mm": 60, "Qty": 2},
}

// triggers is every change that a person may make in the list: the joint, the
// column, what is written there, and whether its plan still fits.
var triggers = []struct {
	joint, column string
	now           any
	fits          bool
}{
	{"leg", "Kind", "lap", false}, {"leg", "Leg", 7, false}, {"throat", "Throat", 5, false}, {"leg", "t1", 6, false}, {"leg", "t2", 6, false},
	{"leg", "Stitch", "5 x 40 (60)", false}, {"leg", "Material", "304L", false}, {"leg", "Material 2", "304L", false}, {"leg", "Position", "PF", false},
	{"leg", "Shop/Site", "site", false}, {"leg", "Process", "138", false}, {"throat", "Process", 138, false}, {"leg", "Wire", "T46", false},
	{"leg", "Gas", "M20", false}, {"leg", "WPS", "P-1", false}, {"leg", "Gap", 2, false}, {"leg", "Angle", 75, false},
	{"text", "Size", "a5", false}, {"text", "Size", "z4", false}, {"text", "Size", 6, false}, {"text", "t1", `3/8"`, false}, {"text", "t1", 10, false},
	{"groove", "Angle", 50, false}, {"groove", "Gap", 3, false}, {"groove", "Root face", 2, false}, {"groove", "Backing", "bar", false},
	{"groove", "Sides", 2, false}, {"part", "Depth", 9, false}, {"radius", "Radius", 4, false}, {"slot", "Length mm", 90, false}, {"slot", "Size", "25", false},
	{"leg", "Leg", "z7", false}, {"leg", "Leg", "", false}, {"leg", "t1", "", false}, {"leg", "Kind", "", false},

	{"leg", "Length mm", 1000, true}, {"leg", "Qty", 5, true}, {"leg", "Sides", 2, true}, {"groove", "Length mm", 700, true},
	{"text", "Length mm", 700, true}, {"leg", "Remarks", "turned", true}, {"groove", "Qty", 9, true}, {"slot", "Qty", 3, true},
}

// TestEveryTriggerAsksForARun makes each of those changes in a row of its own, has
// another program work the list out and reads which rows ask for another run, and how
// many the Totals count. The rates then take the travel out of its range.
func TestEveryTriggerAsksForARun(t *testing.T) {
	t.Parallel()
	f := excelize.NewFile()
	must(t, f.SetSheetRow("Sheet1", "A1", &decided))
	for i, c := range triggers {
		row := make([]any, len(decided))
		for k, head := range decided {
			row[k] = decidedBy[c.joint][head]
		}
		row[0] = "W" + strconv.Itoa(i+1)
		must(t, f.SetSheetRow("Sheet1", "A"+strconv.Itoa(i+2), &row))
	}
	src, _, err := list.Read("list.xlsx", written(t, f))
	must(t, err)
	job := understoodJob(t, src, price.Options{})
	if got := len(job.List.Joints); got != len(triggers) {
		t.Fatalf("%d joints of %d were read", got, len(triggers))
	}
	before := build(t, src, job, Options{})
	edited := opened(t, before)
	for i, c := range triggers {
		must(t, edited.SetCellValue("Sheet1", cellOf(t, 1+slices.Index(decided, c.column), i+2), c.now))
	}
	wider := withNumbers(t, before, map[string]float64{"Rates!" + rateCell(job, "overweld_mm"): 4})
	theirs := recalculated(t, written(t, edited), wider)

	now := opened(t, theirs[0])
	col, want := headsOf(t, now, "Sheet1")["Plan fits?"], 0
	for i, c := range triggers {
		text, err := now.GetCellValue("Sheet1", cellOf(t, col, i+2))
		must(t, err)
		if !c.fits {
			want++
		}
		if (text == "fits") != c.fits || text != "fits" && text != "run again" {
			t.Errorf("row %d, %s of %s now %v: %q", i+2, c.column, c.joint, c.now, text)
		}
	}
	if n := int(onTotals(t, now, "Plans to run again")); n != want {
		t.Errorf("the Totals count %d rows, want %d", n, want)
	}

	now, want = opened(t, theirs[1]), 0
	for i := range triggers {
		if text, _ := now.GetCellValue("Sheet1", cellOf(t, col, i+2)); text == "run again" {
			want++
		}
	}
	if n := int(onTotals(t, now, "Plans to run again")); n != want || n < len(triggers)/2 {
		t.Errorf("with 4 mm of overweld %d rows ask for another run and the Totals count %d", want, n)
	}
}
