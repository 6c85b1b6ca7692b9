package workbook

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// handMade is a small job whose figures are typed in, so that the golden file
// changes only when the workbook does.
func handMade() (*list.Source, *price.Job) {
	text := func(col int, s string) list.Cell { return list.Cell{Col: col, Kind: list.Text, Text: s} }
	sheet := list.Sheet{Rows: []list.Row{
		{Number: 1, Cells: []list.Cell{text(1, "Mark"), text(2, "Qty"), text(3, "Length mm"), text(4, "Size")}},
		{Number: 2, Cells: []list.Cell{text(1, "Ж-1"), text(2, "2"), text(3, "500"), text(4, "z6")}},
		{Number: 3, Cells: []list.Cell{text(1, "007"), text(2, "1"), text(3, "300"), text(4, "=6")}},
		{Number: 4, Cells: []list.Cell{text(1, "X"), text(2, "many")}},
	}}
	src := &list.Source{File: "hand.csv", SHA256: strings.Repeat("ab", 32), Format: list.CSV, Sheets: []list.Sheet{sheet}}
	column := func(col int, header, key string) joint.Column {
		return joint.Column{Col: col, Header: header, Key: key, Why: "typed in"}
	}
	place := func(row int) finding.Place { return finding.Place{File: "hand.csv", Row: row} }
	l := joint.List{File: src.File, SHA256: src.SHA256, HeaderRows: [2]int{1, 1}, LastRow: 4, LastCol: 4, RowsRead: 4,
		Columns: []joint.Column{column(1, "Mark", "mark"), column(2, "Qty", "qty"), column(3, "Length mm", "length"), column(4, "Size", "size")},
		Joints: []joint.Joint{
			{Place: place(2), Mark: "Ж-1", Qty: 2, Length: 500, Detail: &joint.Detail{Sides: 1, Kind: joint.Fillet, Size: joint.Size{Means: joint.Leg, A: 6, Text: "z6"}, T1: 8, T2: 8, Material: "S235", Position: "PB"}},
			{Place: place(3), Mark: "007", Qty: 1, Length: 300, Detail: &joint.Detail{Sides: 1, Kind: joint.Fillet, Size: joint.Size{Means: joint.Leg, A: 6, Text: "=6"}}},
		},
		Others: []joint.OtherRow{{Row: 1, Fate: joint.HeaderRow, Text: "Mark"}, {Row: 4, Fate: joint.Rejected, Text: "X"}},
		Problems: []finding.Problem{{Place: finding.Place{File: "hand.csv", Row: 4, Col: 2, Header: "Qty"}, Level: finding.Error, Code: "bad-number",
			Text: `"many" is not a number`, Read: "many", Want: "a whole number", Hint: "write a number"}},
	}
	shop := rates.Shop{Currency: "EUR", Overweld: 0.5, Convexity: 0.05, OperatingFactor: 0.3, LabourRate: 30, OverheadPct: 60, MarginPct: 15, SourceEfficiency: 0.85,
		Values: []rates.Value{
			{Key: "overweld_mm", Num: 0.5, IsNum: true, Text: "0.5", Unit: "mm", Basis: "common-practice", From: "built in", Money: true},
			{Key: "labour_rate", Num: 30, IsNum: true, Text: "30", Unit: "money/h", Low: 18, High: 50, Basis: "shop", From: "--set", Money: true},
			{Key: "currency", Text: "EUR", Basis: "common-practice", From: "built in"},
		}}
	job := price.Price(l, handPlans(&l), shop, nil, price.Options{Date: "2026-01-02"})
	job.Version, job.TablesEdition = "0", "0"
	return src, &job
}

func handPlans(l *joint.List) []plan.Plan {
	prep := plan.Prep{Kind: joint.Fillet, LegA: 6, LegB: 6, T1: 8, T2: 8, Angle: 90, WeldLegA: 6.5, WeldLegB: 6.5}
	check := finding.Check{Code: "leg-small", Level: finding.Warning, Text: "leg 6 mm <below> the least", Rule: "least leg", Source: "a document, table 1", Basis: "published", Do: "ask"}
	return []plan.Plan{
		{Manner: &plan.Manner{Prep: prep, AreaDrawn: 18, Area: 24, Density: 7850, Settings: true,
			Process: "135", Filler: "G3Si1", Dia: 1, Gas: "M21", Transfer: plan.Spray, LinearMass: 6.17,
			Runs:    []plan.Run{{Area: 24, Current: 240, Voltage: 27, WireFeed: 10, Travel: 314, Deposit: 3.5, Arc: 3.23, ArcEnergy: 1.2, Heat: 0.99}},
			Current: plan.Window{Start: 240, Low: 220, High: 260}, GasFlow: plan.Window{Start: 15}, Travel: plan.Window{Start: 314, Low: 250, High: 400}, HeatMax: 0.99, ArcEnergyMax: 1.2}, Joint: &l.Joints[0], Seam: 1, WeldMetal: 0.1884,
			WireKg: 0.2, WireM: 32, GasL: 50, Starts: 2, Arc: 3.23, Checks: []finding.Check{check},
			Cost: rates.Cost{Labour: rates.Labour{Joint: 8, Arc: 3.23, Idle: 7, SiteFactor: 1, Total: 18.23}, LabourCost: 14.58, Wire: 0.5, Gas: 0.3, Total: 15.38},
		},
		{Manner: &plan.Manner{Prep: prep, AreaDrawn: 18, Area: 24, Density: 7850, NoSettings: "no settings: the material is blank"}, Joint: &l.Joints[1], Seam: 0.3, WeldMetal: 0.05652}}
}

// dump writes every cell of a workbook on a line of its own.
func dump(t testing.TB, data []byte) string {
	t.Helper()
	f := opened(t, data)
	var b strings.Builder
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		must(t, err)
		for r := range rows {
			for c := range rows[r] {
				cell, _ := excelize.CoordinatesToCellName(c+1, r+1)
				value, err := f.GetCellValue(sheet, cell)
				must(t, err)
				formula, err := f.GetCellFormula(sheet, cell)
				must(t, err)
				if value == "" && formula == "" {
					continue
				}
				kind, err := f.GetCellType(sheet, cell)
				must(t, err)
				fmt.Fprintf(&b, "%s!%s | %s | %s | %s | formula=%s\n", sheet, cell, kindWord(kind), strings.ReplaceAll(value, "\n", "\\n"), lookOf(t, f, sheet, cell), formula)
			}
		}
	}
	return b.String()
}

func kindWord(k excelize.CellType) string {
	switch k {
	case excelize.CellTypeUnset, excelize.CellTypeNumber:
		return "number"
	case excelize.CellTypeFormula:
		return "words"
	}
	return "text"
}

// lookOf names what a cell looks like by what matters in it.
func lookOf(t testing.TB, f *excelize.File, sheet, cell string) string {
	t.Helper()
	id, err := f.GetCellStyle(sheet, cell)
	must(t, err)
	s, err := f.GetStyle(id)
	must(t, err)
	look := ""
	if s.CustomNumFmt != nil {
		look = *s.CustomNumFmt
	} else if s.NumFmt != 0 {
		look = fmt.Sprintf("format %d", s.NumFmt)
	}
	if len(s.Fill.Color) > 0 {
		look += " on " + s.Fill.Color[0]
	}
	if s.Font != nil && s.Font.Bold {
		look += " bold"
	}
	return strings.TrimSpace(look)
}

func TestGoldenDump(t *testing.T) {
	src, job := handMade()
	got := dump(t, build(t, src, job, Options{}))
	path := filepath.Join("testdata", "hand.golden")
	if *update {
		must(t, os.MkdirAll("testdata", 0o755))
		must(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; write it with -update and read what it says", err)
	}
	if got != string(want) {
		t.Errorf("the workbook has changed; read the difference after -update:\n%s", firstDifference(string(want), got))
	}
}

func firstDifference(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			now := "(end)"
			if i < len(b) {
				now = b[i]
			}
			return "was: " + a[i] + "\nis:  " + now
		}
	}
	return "more lines than before"
}
