package workbook

import (
	"bytes"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// The fixture is an invented list with what the workbook must cope with: several
// assemblies, Cyrillic marks, stitches, throats, grooves, a row without material,
// a row that was not read, and a text that would like to be a formula.
var fixtureHeader = []string{"Mark", "Assembly", "Kind", "Qty", "Length mm", "Sides", "Size", "t1", "t2", "Material", "Position", "Where", "Remark"}

var fixtureRows = [][]any{
	{"W-01", "Frame", "fillet", 4, 1250, 2, 6, 8, 10, "S235", "PB", "", "=1+2"},
	{"W-02", "Frame", "fillet", 2, 600, 1, "a4", 8, 8, "S355", "PF", "", "@SUM(A1)"},
	{"007", "Frame", "single V", 1, 800, 1, "", 10, 10, "S235", "PA", "", "007 stays 007"},
	{"Ж-3", "Лестница", "lap", 10, 150, 1, 3, 3, 3, "S235", "PB", "", "ø 48,3 × 3 °"},
	{"W-05", "Лестница", "fillet", 1, 3000, 2, 5, 6, 6, "304L", "PB", "", "stitch"},
	{"W-06", "Лестница", "fillet", 1, 500, 1, 6, 8, 8, "", "PB", "", "no material"},
	{"W-07", "Rail & post <1>", "single bevel", 2, 300, 1, "", 12, 12, "S355", "PA", "site", ""},
	{"W-08", "Rail & post <1>", "double V", 1, 1000, 1, "", 20, 20, "S355", "PA", "", ""},
	{"W-09", "Rail & post <1>", "fillet", 3, 400.5, 1, 12, 15, 20, "S355", "PB", "site", "-5+3"},
	{"W-10", "", "square butt", 1, 700, 1, "", 2, 2, "5083", "PA", "", "+cmd|' /C calc'!A0"},
	{"W-11", "", "corner", 1, 700, 1, "", 4, 4, "S235", "PA", "", "two\nlines"},
	{"W-12", "", "fillet", "x", 700, 1, 6, 8, 8, "S235", "PB", "", "bad quantity"},
}

// fixtureSheet is where the list stands in its workbook.
const fixtureSheet = "Joints 'A' & B"

// fixtureXLSX is the list as a user's workbook: title rows, formats, a formula, a
// second sheet, a filter.
func fixtureXLSX(t testing.TB) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	must(t, f.SetSheetName("Sheet1", fixtureSheet))
	must(t, f.SetCellValue(fixtureSheet, "A1", "Mezzanine M-1, invented"))
	must(t, f.SetCellValue(fixtureSheet, "A2", "Drawing 4711, rev B"))
	style, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true, Family: "Arial", Size: 10}, NumFmt: 2})
	must(t, err)
	must(t, f.SetSheetRow(fixtureSheet, "A4", &fixtureHeader))
	must(t, f.SetCellStyle(fixtureSheet, "A4", "M4", style))
	for i, row := range fixtureRows {
		must(t, f.SetSheetRow(fixtureSheet, "A"+strconv.Itoa(5+i), &row))
	}
	must(t, f.SetCellFormula(fixtureSheet, "E18", "SUM(E5:E16)"))
	must(t, f.AutoFilter(fixtureSheet, "A4:M16", nil))
	must(t, f.SetColWidth(fixtureSheet, "A", "XFD", 11))
	_, err = f.NewSheet("Totals")
	must(t, err)
	must(t, f.SetCellValue("Totals", "B2", "the user's own totals"))
	must(t, f.SetDefinedName(&excelize.DefinedName{Name: "shop_labour_rate", RefersTo: "Totals!$B$2"}))
	return written(t, f)
}

func written(t testing.TB, f *excelize.File) []byte {
	t.Helper()
	var out bytes.Buffer
	_, err := f.WriteTo(&out)
	must(t, err)
	return out.Bytes()
}

func fixtureCSV() []byte {
	var b strings.Builder
	b.WriteString(strings.Join(fixtureHeader, ";") + "\n")
	for _, row := range fixtureRows {
		for i, v := range row {
			if i > 0 {
				b.WriteByte(';')
			}
			switch v := v.(type) {
			case int:
				b.WriteString(strconv.Itoa(v))
			case float64:
				b.WriteString(strings.Replace(strconv.FormatFloat(v, 'f', -1, 64), ".", ",", 1))
			case string:
				b.WriteString(strings.ReplaceAll(v, "\n", " "))
			}
		}
		b.WriteByte('\n')
	}
	return []byte(b.String())
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

var fixtureKeys = map[string]string{"Mark": "mark", "Assembly": "assembly", "Kind": "kind", "Qty": "qty", "Length mm": "length",
	"Sides": "sides", "Size": "size", "t1": "t1", "t2": "t2", "Material": "material", "Position": "position", "Where": "where"}

// understood reads the fixture's own columns, without the real reader.
func understood(src *list.Source) joint.List {
	l := joint.List{File: src.File, SHA256: src.SHA256, Sheet: src.Sheets[0].Name}
	for _, row := range src.Sheets[0].Rows {
		l.RowsRead++
		switch {
		case row.At(1).Text == "Mark":
			l.HeaderRows = [2]int{row.Number, row.Number}
			for _, c := range row.Cells {
				l.Columns = append(l.Columns, joint.Column{Col: c.Col, Header: c.Text, Key: fixtureKeys[c.Text], Why: "fixture"})
				l.LastCol = max(l.LastCol, c.Col)
			}
		case l.HeaderRows[1] == 0 || row.At(2).Text == "" && row.At(3).Text == "":
			l.Others = append(l.Others, joint.OtherRow{Row: row.Number, Fate: joint.TitleRow, Text: row.At(1).Text})
		default:
			l.LastRow = row.Number
			readFixtureRow(&l, row)
		}
	}
	return l
}

func readFixtureRow(l *joint.List, row list.Row) {
	num := func(col int) float64 {
		v, _ := strconv.ParseFloat(strings.Replace(row.At(col).Text, ",", ".", 1), 64)
		return v
	}
	if row.At(4).Text == "x" {
		l.Others = append(l.Others, joint.OtherRow{Row: row.Number, Fate: joint.Rejected, Text: row.At(1).Text})
		l.Problems = append(l.Problems, finding.Problem{Place: finding.Place{File: l.File, Sheet: l.Sheet, Row: row.Number, Col: 4, Header: "Qty"},
			Level: finding.Error, Code: "bad-number", Text: `the quantity "x" is not a number`, Read: "x", Want: "a whole number", Hint: "write a number"})
		return
	}
	j := joint.Joint{
		Place: finding.Place{File: l.File, Sheet: l.Sheet, Row: row.Number}, Mark: row.At(1).Text, Assembly: row.At(2).Text, Qty: int(num(4)), Length: units.MM(num(5)), Note: row.At(13).Text,
		Detail: &joint.Detail{
			Kind: joint.Kind(row.At(3).Text), Sides: int(num(6)), T1: units.MM(num(8)), T2: units.MM(num(9)), Material: row.At(10).Text, Position: row.At(11).Text, Where: joint.Where(row.At(12).Text),
		},
	}
	size := row.At(7).Text
	switch {
	case strings.HasPrefix(size, "a"):
		v, _ := strconv.ParseFloat(size[1:], 64)
		j.Size = joint.Size{Means: joint.Throat, A: units.MM(v), Text: size}
	case size != "":
		j.Size = joint.Size{Means: joint.Leg, A: units.MM(num(7)), Text: size}
		j.Assumed = append(j.Assumed, joint.Assumption{Key: "size", Value: "leg", Why: "a bare number is a leg", Basis: "shop value"})
	}
	if j.Note == "stitch" {
		j.Stitch = &joint.Stitch{Segment: 50, Pitch: 150, Gap: 100, ByPitch: true, Text: "50-150"}
	}
	l.Joints = append(l.Joints, j)
}

// fixtureJob prices the fixture with the built-in tables and rates.
func fixtureJob(t testing.TB, name string, data []byte, opts price.Options) (*list.Source, *price.Job) {
	t.Helper()
	src, _, err := list.Read(name, data)
	must(t, err)
	return src, priced(t, src, understood(src), opts)
}

func priced(t testing.TB, src *list.Source, l joint.List, opts price.Options) *price.Job {
	t.Helper()
	files, err := tables.Open("")
	must(t, err)
	set, err := tables.Load(files)
	must(t, err)
	shop, err := rates.Default(set)
	must(t, err)
	plans := plan.Joints(l.Joints, set, &shop, plan.Options{})
	if opts.Date == "" {
		opts.Date = "2026-11-25"
	}
	job := price.Price(l, plans, shop, nil, opts)
	job.Version, job.TablesEdition = "test", set.Edition
	return &job
}
