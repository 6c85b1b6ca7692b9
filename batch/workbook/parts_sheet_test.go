package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// twoLists is a workbook with joints on one sheet and a cut list on another.
func twoLists(t *testing.T) []byte {
	f := excelize.NewFile()
	must(t, f.SetSheetName("Sheet1", "Joints"))
	_, err := f.NewSheet("Cut list")
	must(t, err)
	for sheet, rows := range map[string][][]any{
		"Joints": {{"Mark", "Kind", "Leg mm", "Part 1", "Part 2", "Length mm", "Qty", "Position"},
			{"W1", "fillet", 5, "P1", "P2", 600, 4, "PB"}, {"W2", "single V", nil, "P4", "P4", 400, 2, "PA"}, {"W3", "fillet", 3, "P3", "P1", "all round", 8, "PB"}},
		"Cut list": {{"Invented frame"}, {"Part", "Section", "Grade", "Length", "Qty"}, {nil, nil, nil, "m", nil},
			{"P1", "SHS 80x80x5", "S355J2H", 1.2, 4}, {"P2", "FL 100x10", "S235JR", 0.25, 4}, {"P3", "CHS 48.3x3.2", "S235", "480 mm", 8},
			{"P4", "PL 300x12", "S355", 0.4, 4}, {"P5", "IPE 160", "304", 2.95, 3}},
	} {
		for i := range rows {
			must(t, f.SetSheetRow(sheet, cellOf(t, 1, i+1), &rows[i]))
		}
	}
	return written(t, f)
}

// cutJob works both lists of a workbook.
func cutJob(t testing.TB, data []byte, opts price.Options) (*list.Source, *price.Job) {
	t.Helper()
	src, _, err := list.Read("frame.xlsx", data)
	must(t, err)
	files, err := tables.Open("")
	must(t, err)
	set, err := tables.Load(files)
	must(t, err)
	shop, err := rates.Default(set)
	must(t, err)
	cut, err := parts.NewReader(set).Understand(src, parts.Options{})
	must(t, err)
	l, err := joint.Understand(src, joint.Options{Inches: opts.US}, set)
	must(t, err)
	l.Joints = parts.NewIndex(cut).Lend(l.Joints)
	plans := plan.Joints(l.Joints, set, &shop, plan.Options{})
	book, _ := parts.Work(cut, plans, set, &shop)
	job := price.Price(*l, plans, shop, nil, opts)
	job.Parts = book
	return src, &job
}

// The sheets of parts and bars hold what was worked out, and another program gets
// the same from their formulas.
func TestPartsOnTheirSheet(t *testing.T) {
	t.Parallel()
	var books [][]byte
	for _, opts := range []price.Options{{}, {US: true}} {
		src, job := cutJob(t, twoLists(t), opts)
		data := build(t, src, job, Options{US: opts.US})
		books = append(books, data)
		f := opened(t, data)
		for i := range job.Parts.List.Parts {
			for col, want := range map[string]float64{"H": kilo.show(float64(job.Parts.Results[i].Mass), opts.US), "J": square.show(job.Parts.Results[i].Paint, opts.US)} {
				cell := col + strconv.Itoa(5+i)
				text, err := f.GetCellValue("Parts", cell)
				must(t, err)
				if got, _ := strconv.ParseFloat(text, 64); math.Abs(got-want) > 1e-9*want {
					t.Errorf("%s is %s, want %v", cell, text, want)
				}
				if formula, _ := f.GetCellFormula("Parts", cell); formula == "" {
					t.Errorf("%s has no formula", cell)
				}
			}
		}
	}
	for _, n := range sameFigures(t, books...) {
		if n < 360 {
			t.Errorf("only %d formulas", n)
		}
	}
}

// massOfNone is the cell with the mass of the assembly without a name: beside the bars.
func massOfNone(t *testing.T, data []byte) string {
	t.Helper()
	rows, err := opened(t, data).GetRows("Bars")
	must(t, err)
	for i, row := range rows {
		if len(row) == 0 || !strings.HasPrefix(row[0], "Assembly") {
			continue
		}
		for c, head := range row {
			if strings.HasPrefix(head, "Mass") {
				cell, err := excelize.CoordinatesToCellName(c+1, i+2)
				must(t, err)
				return "Bars!" + cell
			}
		}
	}
	t.Fatal("no masses by assembly on the sheet of bars")
	return ""
}

// A longer part weighs more, on its line and in the total, without another run.
func TestALongerPartWeighsMore(t *testing.T) {
	t.Parallel()
	src, job := cutJob(t, twoLists(t), price.Options{})
	data := build(t, src, job, Options{})
	changed := opened(t, recalculated(t, withNumbers(t, data, map[string]float64{"Cut list!D4": 2.4, "Cut list!E8": 6}))[0])
	twice := func(i int) float64 { return 2 * float64(job.Parts.Results[i].Mass) }
	for cell, want := range map[string]float64{"H5": twice(0), "H9": twice(4),
		"H10":               float64(job.Parts.Totals.Mass) + float64(job.Parts.Results[0].Mass) + float64(job.Parts.Results[4].Mass),
		massOfNone(t, data): float64(job.Parts.Totals.Mass) + float64(job.Parts.Results[0].Mass) + float64(job.Parts.Results[4].Mass)} {
		sheet, at, other := strings.Cut(cell, "!")
		if !other {
			sheet, at = "Parts", cell
		}
		text, err := changed.GetCellValue(sheet, at)
		must(t, err)
		if got, _ := strconv.ParseFloat(text, 64); math.Abs(got-want) > 2e-3 {
			t.Errorf("Parts!%s is %s, want %.3f", cell, text, want)
		}
	}
	for cell, want := range map[string]string{"Parts!S5": "run again", "Parts!S6": "fits", "Parts!S9": "run again", "Bars!A3": "Parts were changed"} {
		sheet, at, _ := strings.Cut(cell, "!")
		if text, _ := changed.GetCellValue(sheet, at); !strings.HasPrefix(text, want) {
			t.Errorf("%s says %q, want %q", cell, text, want)
		}
	}
}

// What is wrong in another file, such as the cut list, is not told of the row with
// the same number in the list.
func TestReasonsAreTheListsOwn(t *testing.T) {
	job := &price.Job{}
	job.List.File, job.List.Sheet = "frame.xlsx", "Joints"
	job.List.Others = []joint.OtherRow{{Row: 3, Fate: joint.Rejected}, {Row: 4, Fate: joint.Rejected}}
	wrong := func(file, sheet string, row int, text string) finding.Problem {
		return finding.Problem{Place: finding.Place{File: file, Sheet: sheet, Row: row}, Level: finding.Error, Text: text}
	}
	job.Problems = []finding.Problem{wrong("cut.csv", "", 3, "no section"), wrong("frame.xlsx", "Cut list", 3, "no length"),
		wrong("frame.xlsx", "Joints", 4, "no leg"), wrong("frame.xlsx", "Joints", 4, "no thickness")}
	got := (&layout{job: job}).reasons()
	if got[3] != "see the sheet of checks" || got[4] != "no leg; no thickness" {
		t.Errorf("%v", got)
	}
}

// A cut list of its own comes back with its parts worked out and no sheet of welds:
// beside its rows, in its own workbook or, where it came as text, in a fresh one.
func TestACutListOfItsOwn(t *testing.T) {
	t.Parallel()
	f := excelize.NewFile()
	for i, row := range [][]any{{"Part", "Section", "Length mm", "Qty"}, {"P1", "SHS 80x80x5", 1200, 4}, {"P2", "UPN 140", 700, 2}} {
		must(t, f.SetSheetRow("Sheet1", cellOf(t, 1, i+1), &row))
	}
	for name, data := range map[string][]byte{"cut.xlsx": written(t, f), "cut.csv": []byte("Part,Section,Length mm,Qty\nP1,SHS 80x80x5,1200,4\nP2,UPN 140,700,2\n")} {
		src, _, err := list.Read(name, data)
		must(t, err)
		job := cutAlone(t, src)
		data := build(t, src, job, Options{})
		sameFigures(t, data)
		sameCells(t, name, src, data, nil)
		out := opened(t, data)
		sheet := map[string]string{"cut.xlsx": "Sheet1", "cut.csv": "Cut list"}[name]
		if got, want := fmt.Sprint(out.GetSheetList()), "["+sheet+" Parts Bars Checks Rates Basis]"; got != want {
			t.Errorf("sheets %s, want %s", got, want)
		}
		rows, err := out.GetRows(sheet)
		must(t, err)
		if got, want := fmt.Sprint(rows[0][5:9], len(rows[0])), "[Status Bars fit? As read: Part Assembly] 25"; got != want {
			t.Errorf("beside the parts stands %s, want %s: no columns of welds", got, want)
		}
		if mass := rows[1][13]; mass != exact(float64(job.Parts.Results[0].Mass)) {
			t.Errorf("beside P1 stands the mass %s, want %v", mass, job.Parts.Results[0].Mass)
		}
		again, _, err := list.Read("again.xlsx", data)
		must(t, err)
		bare, problems := Undress(again)
		if len(problems) > 0 || len(bare.Sheets) != 1 || len(bare.Sheets[0].Rows) != len(src.Sheets[0].Rows) {
			t.Errorf("undressed: %v, %+v", problems, bare.Sheets)
		}
		sameCells(t, "undressed", src, bare.Data, nil)
		if before, now := job.Parts.Totals, cutAlone(t, bare).Parts.Totals; before.Mass != now.Mass || before.Pieces != now.Pieces {
			t.Errorf("run again: %+v, %+v", before, now)
		}
	}
}

// cutAlone works a file that holds a cut list and no joints.
func cutAlone(t *testing.T, src *list.Source) *price.Job {
	t.Helper()
	set := testTables(t)
	shop, err := rates.Default(set)
	must(t, err)
	cut, err := parts.NewReader(set).Understand(src, parts.Options{})
	must(t, err)
	book, _ := parts.Work(cut, nil, set, &shop)
	job := price.Price(joint.List{File: cut.File, Sheet: cut.Sheet, SHA256: cut.SHA256}, nil, shop, nil, price.Options{})
	job.Parts = book
	return &job
}
