package workbook

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// The joints of thin parts below have every size of their preparation stated and no
// material, so that their thickness alone moves their area; a second pair of
// thicknesses stands beside the first.
var sheetHeads = []any{"Mark", "Kind", "Size", "t1", "t2", "Angle", "Gap", "Root face", "Depth", "Radius", "Backing", "Length mm", "Qty", "Sides"}

var sheetJoints = []struct {
	row    []any
	t1, t2 any
}{
	{[]any{"S1", "square butt", nil, 0.8, 0.8, nil, 0.2, nil, nil, nil, nil, 500, 1, 1}, 0.6, 0.9},
	{[]any{"S2", "square butt", nil, 0.8, 0.8, nil, 0.2, nil, nil, nil, nil, 500, 1, 1}, 2, 3},
	{[]any{"S3", "square butt", nil, 3, 2, nil, 0.5, nil, nil, nil, nil, 500, 1, 1}, 3, 0.7},
	{[]any{"S4", "square butt", nil, 0.9, 0.9, nil, 0.2, nil, nil, nil, nil, 500, 1, 2}, 0.7, 0.7},
	{[]any{"S5", "square butt", nil, 0.9, 0.9, nil, 0.2, nil, nil, nil, "bar", 500, 1, 1}, 0.7, 0.7},
	{[]any{"S6", "square butt", nil, 0.9, nil, nil, 0.2, nil, nil, nil, nil, 500, 1, 1}, 0.5, nil},
	{[]any{"S7", "single V", nil, 0.9, 0.9, 60, 0.5, 0.4, nil, nil, nil, 500, 1, 1}, 0.7, 0.8},
	{[]any{"S8", "single bevel", nil, 3, 3, 45, 0.5, 0.4, nil, nil, nil, 500, 1, 1}, 0.8, 0.8},
	{[]any{"S9", "double V", nil, 0.9, 0.9, 60, 0.3, 0.3, nil, nil, nil, 500, 1, 2}, 0.7, 0.7},
	{[]any{"S10", "single U", nil, 3, 3, 20, 0.5, 0.4, nil, 1, nil, 500, 1, 1}, 0.9, 0.9},
	{[]any{"S11", "flare bevel", nil, 0.8, 5, nil, 0, nil, nil, 2, nil, 500, 1, 1}, 0.6, 5},
	{[]any{"S12", "flare V", nil, 0.8, 0.8, nil, 0, nil, nil, 2, nil, 500, 1, 1}, 2, 2},
	{[]any{"S13", "flare bevel", nil, nil, nil, nil, 0, nil, nil, 2, nil, 500, 1, 1}, nil, nil},
}

// sheetList writes the list with its first or its second thicknesses.
func sheetList(t *testing.T, second bool) *price.Job {
	t.Helper()
	return understoodJob(t, sheetSource(t, second), price.Options{})
}

func sheetSource(t *testing.T, second bool) *list.Source {
	t.Helper()
	f := excelize.NewFile()
	must(t, f.SetSheetRow("Sheet1", "A1", &sheetHeads))
	for i, j := range sheetJoints {
		row := append([]any{}, j.row...)
		if second {
			row[3], row[4] = j.t1, j.t2
		}
		must(t, f.SetSheetRow("Sheet1", "A"+strconv.Itoa(i+2), &row))
	}
	src, _, err := list.Read("sheet.xlsx", written(t, f))
	must(t, err)
	return src
}

// TestSheetMovesItsCap changes the thicknesses of thin parts in the live workbook, and
// in another copy the shares that limit cap and root; another program then has the
// areas that a run with these works out.
func TestSheetMovesItsCap(t *testing.T) {
	t.Parallel()
	src, job := sheetSource(t, false), sheetList(t, false)
	book := build(t, src, job, Options{})
	moved := map[string]float64{}
	for i, j := range sheetJoints {
		for col, v := range map[string]any{"D": j.t1, "E": j.t2} {
			switch v := v.(type) {
			case float64:
				moved["Sheet1!"+col+strconv.Itoa(i+2)] = v
			case int:
				moved["Sheet1!"+col+strconv.Itoa(i+2)] = float64(v)
			}
		}
	}
	shares := map[string]float64{"Rates!" + rateCell(job, "cap_share"): 0.5, "Rates!" + rateCell(job, "root_share"): 0.3}
	theirs := recalculated(t, withNumbers(t, book, moved), withNumbers(t, book, shares))

	lower := job.Shop
	lower.CapShare, lower.RootShare = 0.5, 0.3
	areasAre(t, "thicknesses changed", opened(t, theirs[0]), job, sheetList(t, true).Plans)
	areasAre(t, "shares changed", opened(t, theirs[1]), job, replanned(t, job, &lower))
}

// replanned plans the joints of a job with other shop values.
func replanned(t *testing.T, job *price.Job, shop *rates.Shop) []plan.Plan {
	t.Helper()
	files, err := tables.Open("")
	must(t, err)
	set, err := tables.Load(files)
	must(t, err)
	return plan.Joints(job.List.Joints, set, shop, plan.Options{})
}

// areasAre compares the areas of a workbook that another program worked out.
func areasAre(t *testing.T, what string, f *excelize.File, job *price.Job, want []plan.Plan) {
	t.Helper()
	col := ours(t, f, "Sheet1", columnKeyed(t, job, "area_mm2"), false)
	if len(want) != len(sheetJoints) {
		t.Fatalf("%s: %d joints of %d were read", what, len(want), len(sheetJoints))
	}
	for i := range want {
		cell := cellOf(t, col, i+2)
		text, err := f.GetCellValue("Sheet1", cell)
		must(t, err)
		got, err := strconv.ParseFloat(text, 64)
		if err != nil || math.Abs(got-float64(want[i].Area)) > 1e-9*math.Max(1, got) {
			formula, _ := f.GetCellFormula("Sheet1", cell)
			t.Errorf("%s, %s: %s mm², a run says %v; =%s", what, job.List.Joints[i].Mark, text, want[i].Area, strings.TrimSpace(formula))
		}
	}
}
