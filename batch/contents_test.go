package batch

import (
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"seamtally/batch/price"
)

// content is one cell of a joint list that holds something else than a tidy figure,
// and what must become of it: the right figure, or an error that names the cell. A
// wrong figure is never right.
type content struct {
	column string // of the header below
	cell   string // its XML, with @ for the reference; empty: it exists in text files only
	text   string // as a text file has it; empty: it exists in workbooks only
	says   string // in the error about the workbook; a text file has only text, whose error has its own words
	seam   string // metres, where the row is worked
}

// The columns of the list of contents, by their letter.
var contentColumns = map[string]string{"Leg": "C", "t1": "D", "Length": "F", "Qty": "G"}

var cellContents = []content{
	// What spreadsheets make of fractions and times.
	{"Leg", `<c r="@" s="1"><v>46024</v></c>`, "", "holds a date", ""},
	{"t1", `<c r="@" s="1"><v>46085</v></c>`, "", "holds a date", ""},
	{"Length", `<c r="@" s="2"><v>46024</v></c>`, "", "holds a date", ""},
	{"Length", `<c r="@" s="3"><v>0.5</v></c>`, "", "holds a date", ""},
	{"Leg", `<c r="@" t="inlineStr"><is><t>2-Jan</t></is></c>`, "2-Jan", "", ""},
	// Percentages, truths, errors.
	{"Qty", `<c r="@" s="4"><v>0.5</v></c>`, "50%", "percentage", ""},
	{"Length", `<c r="@" s="4"><v>5</v></c>`, "500 %", "percentage", ""},
	{"Leg", `<c r="@" t="b"><v>1</v></c>`, "TRUE", "TRUE or FALSE", ""},
	{"Length", `<c r="@" t="e"><v>#REF!</v></c>`, "#REF!", "error of the spreadsheet", ""},
	{"t1", `<c r="@" t="e"><v>#DIV/0!</v></c>`, "#DIV/0!", "error of the spreadsheet", ""},
	{"Qty", `<c r="@" t="e"><v>#N/A</v></c>`, "#N/A", "error of the spreadsheet", ""},
	// Formulas without a stored result, of a range, and shared.
	{"Length", `<c r="@"><f>A1*2</f></c>`, "", "without a stored result", ""},
	{"Length", `<c r="@"><f>A1*2</f><v></v></c>`, "", "without a stored result", ""},
	{"Length", `<c r="@"><f t="array" ref="@">SUM(C1:C2)</f><v>700</v></c>`, "", "", "0.70"},
	{"Length", `<c r="@"><f t="shared" si="0"/><v>800</v></c>`, "", "", "0.80"},
	{"Length", `<c r="@" t="str"><f>"9"&amp;"00"</f><v>900</v></c>`, "900", "", "0.90"},
	// Figures at and beyond the ends of what figures can be.
	{"Leg", `<c r="@"><v>-5</v></c>`, "-5", "", ""}, {"Leg", `<c r="@"><v>0</v></c>`, "0", "", ""}, {"Leg", `<c r="@"><v>-0</v></c>`, "-0", "", ""},
	{"Leg", `<c r="@"><v>1e308</v></c>`, "1e308", "", ""}, {"Leg", `<c r="@"><v>1e309</v></c>`, "1e309", "", ""}, {"Leg", `<c r="@"><v>1e-320</v></c>`, "1e-320", "", ""},
	{"Length", `<c r="@"><v>NaN</v></c>`, "NaN", "", ""}, {"Length", `<c r="@"><v>INF</v></c>`, "Infinity", "", ""},
	{"Length", `<c r="@"><v>9007199254740993</v></c>`, "9007199254740993", "", ""},
	{"Qty", `<c r="@"><v>1.5</v></c>`, "1.5", "", ""}, {"Qty", `<c r="@"><v>9007199254740993</v></c>`, "9007199254740993", "", ""},
	{"Length", `<c r="@"><v>300.00000000000006</v></c>`, "300.00000000000006", "", "0.30"},
	// Figures that are text, with blanks of several kinds about them.
	{"Length", `<c r="@" t="inlineStr"><is><t xml:space="preserve"> 500 </t></is></c>`, " 500 ", "", "0.50"},
	{"Length", `<c r="@" t="inlineStr"><is><t>` + "500\u00a0mm" + `</t></is></c>`, "500\u00a0mm", "", "0.50"},
	{"Length", `<c r="@" t="inlineStr"><is><t>` + "\u200b500\ufeff" + `</t></is></c>`, "\u200b500\ufeff", "", "0.50"},
	{"Length", `<c r="@" t="inlineStr"><is><t>'500</t></is></c>`, "'500", "", "0.50"},
}

// refused tells whether no figure can be right: it must be told, whatever the words.
func (c content) refused() bool { return c.seam == "" }

// TestContents works one row for each content, in a workbook and in a text file.
func TestContents(t *testing.T) {
	ordinary := []string{"fillet", "5", "8", "8", "500", "1", "S235", "PB"}
	head := []string{"Mark", "Kind", "Leg", "t1", "t2", "Length", "Qty", "Material", "Position"}
	var sheet, text strings.Builder
	inline := func(v string) string { return `<c t="inlineStr"><is><t>` + v + `</t></is></c>` }
	sheet.WriteString("<row>")
	for _, h := range head {
		sheet.WriteString(inline(h))
	}
	sheet.WriteString("</row>")
	w := csv.NewWriter(&text)
	_ = w.Write(head)
	for i, c := range cellContents {
		mark := fmt.Sprintf("W-%d", i)
		at := strings.Index("ABCDEFGHI", contentColumns[c.column])
		fmt.Fprintf(&sheet, `<row r="%d">%s`, i+2, inline(mark))
		fields := append([]string{mark}, ordinary...)
		for k, v := range fields[1:] {
			switch {
			case k+1 != at:
				sheet.WriteString(typedCell(v))
			case c.cell == "":
				sheet.WriteString(typedCell(c.text))
			default:
				sheet.WriteString(strings.ReplaceAll(c.cell, "@", fmt.Sprintf("%s%d", contentColumns[c.column], i+2)))
			}
		}
		sheet.WriteString("</row>")
		if c.text != "" {
			fields[at] = c.text
		}
		_ = w.Write(fields)
	}
	w.Flush()
	book := hostile{parts: map[string]string{"xl/worksheets/sheet1.xml": `<?xml version="1.0"?><worksheet ` + sheetNS + `><sheetData>` + sheet.String() + `</sheetData></worksheet>`}}
	for name, data := range map[string][]byte{"contents.xlsx": book.bytes(t), "contents.csv": []byte(text.String())} {
		asRead(t, name, data)
	}
}

func typedCell(v string) string {
	if regexp.MustCompile(`^\d+$`).MatchString(v) {
		return `<c><v>` + v + `</v></c>`
	}
	return `<c t="inlineStr"><is><t>` + v + `</t></is></c>`
}

// asRead works the list and looks at each row.
func asRead(t *testing.T, name string, data []byte) {
	t.Helper()
	list := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(list, data, 0o600); err != nil {
		t.Fatal(err)
	}
	var r Result
	o, err := Run(context.Background(), Job{Lists: []string{list}, Done: func(of Result) { r = of }, Looks: price.Options{Date: "2026-03-01", Codes: "iso", Paper: "a4", Lang: "en"}})
	if err != nil || o.Code != SomeRows || r.Err != nil {
		t.Fatalf("%s: code %d, %v, %v", name, o.Code, err, r.Err)
	}
	told, seams := map[int]string{}, map[int]string{}
	for _, p := range r.Job.Problems {
		told[p.Place.Row] += p.Place.Cell() + " " + p.Text + "\n"
	}
	for i, j := range r.Job.List.Joints {
		seams[j.Place.Row] = fmt.Sprintf("%.2f", float64(r.Job.Plans[i].Seam))
	}
	for i, c := range cellContents {
		row := i + 2
		if strings.HasSuffix(name, ".csv") && c.text == "" {
			continue
		}
		if !c.refused() {
			if seams[row] != c.seam {
				t.Errorf("%s, row %d (%s): %q metres, want %s; said: %s", name, row, c.cell, seams[row], c.seam, told[row])
			}
			continue
		}
		if seams[row] != "" || !strings.Contains(told[row], contentColumns[c.column]+fmt.Sprint(row)+" ") || strings.HasSuffix(name, ".xlsx") && !strings.Contains(told[row], c.says) {
			t.Errorf("%s, row %d, %s %q: worked as %q metres, said: %s", name, row, c.column, c.text, seams[row], told[row])
		}
	}
	for _, path := range r.Written {
		if out, err := os.ReadFile(path); err != nil || strings.HasSuffix(path, ".csv") && regexp.MustCompile(`(?i)\b(nan|inf)\b`).Match(out) {
			t.Errorf("%s: %v, or it holds what is no number", filepath.Base(path), err)
		}
	}
	if len(r.Job.List.Joints)+len(r.Job.List.Others) != r.Job.List.RowsRead {
		t.Errorf("%d joints and %d others of %d rows", len(r.Job.List.Joints), len(r.Job.List.Others), r.Job.List.RowsRead)
	}
}
