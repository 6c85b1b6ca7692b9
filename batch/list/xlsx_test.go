package list

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// book makes a workbook for a test.
func book(t testing.TB, fill func(f *excelize.File)) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	fill(f)
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// edit rewrites one part of a package.
func edit(t testing.TB, data []byte, part string, change func(string) string) []byte {
	t.Helper()
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, file := range in.File {
		r, err := file.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, _ := io.ReadAll(r)
		if file.Name == part {
			text = []byte(change(string(text)))
		}
		p, _ := w.Create(file.Name)
		_, _ = p.Write(text)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func set(t testing.TB, f *excelize.File, cell string, v any) {
	t.Helper()
	if err := f.SetCellValue("Sheet1", cell, v); err != nil {
		t.Fatal(err)
	}
}

const sheetPart = "xl/worksheets/sheet1.xml"

func TestCellKinds(t *testing.T) {
	data := book(t, func(f *excelize.File) {
		set(t, f, "A1", "007")
		set(t, f, "B1", 6.5)
		set(t, f, "C1", true)
		set(t, f, "D1", 46115)
		date, _ := f.NewStyle(&excelize.Style{NumFmt: 16})
		_ = f.SetCellStyle("Sheet1", "D1", "D1", date)
		set(t, f, "E1", 0.5)
		pct, _ := f.NewStyle(&excelize.Style{NumFmt: 9})
		_ = f.SetCellStyle("Sheet1", "E1", "E1", pct)
		_ = f.SetCellFormula("Sheet1", "F1", "B1*2")
		set(t, f, "H1", "=1+2")
	})
	src, _, err := Read("x.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	row := src.Sheets[0].Rows[0]
	if c := row.At(1); c.Kind != Text || c.Text != "007" {
		t.Errorf("text %+v", c)
	}
	if c := row.At(2); c.Kind != Number || c.Value != 6.5 {
		t.Errorf("number %+v", c)
	}
	if c := row.At(3); c.Kind != Bool {
		t.Errorf("bool %+v", c)
	}
	if c := row.At(4); c.Kind != Date {
		t.Errorf("date %+v", c)
	}
	if c := row.At(5); !c.Percent {
		t.Errorf("percent %+v", c)
	}
	if c := row.At(6); c.Kind != NoValue || !c.Formula {
		t.Errorf("formula without a result %+v", c)
	}
	if c := row.At(7); c.Kind != Blank {
		t.Errorf("blank %+v", c)
	}
	if c := row.At(8); c.Kind != Text || c.Text != "=1+2" || c.Formula {
		t.Errorf("text that looks like a formula %+v", c)
	}
}

func TestNothingEndsEarlyInSilence(t *testing.T) {
	data := book(t, func(f *excelize.File) {
		for i, v := range []string{"Mark", "Length", "W1", "W2"} {
			set(t, f, []string{"A1", "B1", "A2", "A3"}[i], v)
		}
	})
	for name, bad := range map[string][]byte{
		"cut sheet":         edit(t, data, sheetPart, func(s string) string { return s[:strings.Index(s, "</row>")] }),
		"bad shared string": edit(t, data, sheetPart, func(s string) string { return strings.Replace(s, "<v>1</v>", "<v>99999</v>", 1) }),
		"negative string":   edit(t, data, sheetPart, func(s string) string { return strings.Replace(s, "<v>1</v>", "<v>-1</v>", 1) }),
		"unknown entity":    edit(t, data, sheetPart, func(s string) string { return strings.Replace(s, "<v>1</v>", "<v>&boo;</v>", 1) }),
		"doctype":           edit(t, data, sheetPart, func(s string) string { return `<!DOCTYPE x [<!ENTITY a "b">]>` + s }),
		"cut strings":       edit(t, data, "xl/sharedStrings.xml", func(s string) string { return s[:len(s)/2] }),
		"cut package":       data[:len(data)/2],
	} {
		src, _, err := Read("x.xlsx", bad)
		if err == nil {
			t.Errorf("%s: read as %v", name, dump(src))
			continue
		}
		plainWords(t, err)
	}
}

func TestUntidySheetsReadLikeTidyOnes(t *testing.T) {
	data := book(t, func(f *excelize.File) {
		set(t, f, "A1", "Mark")
		set(t, f, "B1", "Length")
		set(t, f, "A2", "W1")
		set(t, f, "B2", 500)
	})
	tidy, _, err := Read("x.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(string) string{
		"no references": func(s string) string {
			for _, c := range []string{"A1", "B1", "A2", "B2"} {
				s = strings.Replace(s, ` r="`+c+`"`, "", 1)
			}
			return s
		},
		"rows out of order": func(s string) string {
			a, b := strings.Index(s, "<row"), strings.LastIndex(s, "<row")
			end := strings.Index(s, "</sheetData>")
			return s[:a] + s[b:end] + s[a:b] + s[end:]
		},
		"single quotes": func(s string) string { return strings.ReplaceAll(s, `r="A2"`, `r='A2'`) },
		"comments":      func(s string) string { return strings.Replace(s, "<sheetData>", "<!-- x --><sheetData><!-- y -->", 1) },
	} {
		src, _, err := Read("x.xlsx", edit(t, data, sheetPart, change))
		if err != nil || dump(src) != dump(tidy) {
			t.Errorf("%s: %v\n%s", name, err, dumpOf(src))
		}
	}
}

func dumpOf(src *Source) string {
	if src == nil {
		return ""
	}
	return dump(src)
}

func TestHiddenAndMergedAreTold(t *testing.T) {
	data := book(t, func(f *excelize.File) {
		set(t, f, "A1", "Mark")
		set(t, f, "A2", "W1")
		_ = f.MergeCell("Sheet1", "A1", "C1")
		_ = f.SetRowVisible("Sheet1", 2, false)
		_, _ = f.NewSheet("Other")
		_ = f.SetSheetVisible("Other", false)
	})
	src, _, err := Read("x.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	if len(src.Sheets) != 2 || !src.Sheets[1].Hidden || !src.Sheets[0].Rows[1].Hidden || len(src.Sheets[0].Merges) != 1 || src.Sheets[0].Merges[0] != (Merge{1, 1, 1, 3}) {
		t.Errorf("%+v", src.Sheets)
	}
}

func FuzzSheet(f *testing.F) {
	data := book(f, func(b *excelize.File) {
		set(f, b, "A1", "Mark")
		set(f, b, "B2", 5.5)
		_ = b.MergeCell("Sheet1", "C1", "D2")
	})
	in, _ := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	for _, file := range in.File {
		if file.Name == sheetPart {
			r, _ := file.Open()
			text, _ := io.ReadAll(r)
			f.Add(string(text))
		}
	}
	f.Add(`<worksheet><sheetData><row><c t="s"><v>0</v></c></row></sheetData></worksheet>`)
	f.Fuzz(func(t *testing.T, sheet string) {
		_, _, err := Read("x.xlsx", edit(t, data, sheetPart, func(string) string { return sheet }))
		if err != nil {
			plainWords(t, err)
		}
	})
}

func BenchmarkReadXLSX(b *testing.B) {
	data := book(b, func(f *excelize.File) {
		for r := 1; r <= 10000; r++ {
			for c := 1; c <= 15; c++ {
				name, _ := excelize.CoordinatesToCellName(c, r)
				_ = f.SetCellValue("Sheet1", name, r*c)
			}
		}
	})
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := Read("x.xlsx", data); err != nil {
			b.Fatal(err)
		}
	}
}

// FuzzPackage changes the container of a workbook: names, sizes, flags and the
// directory of the zip. It is refused in plain words or read.
func FuzzPackage(f *testing.F) {
	data := book(f, func(b *excelize.File) {
		set(f, b, "A1", "Mark")
		set(f, b, "B2", 5.5)
	})
	f.Add(data)
	f.Add(stored(f, data, ""))
	for _, extra := range []string{"../../etc/x", "/etc/x", `C:\x`, "xl/Worksheets/Sheet1.xml", "xl/worksheets/sheet1.xml", "word/document.xml", "mimetype"} {
		f.Add(stored(f, data, extra))
	}
	f.Add(data[:len(data)/2])
	f.Fuzz(func(t *testing.T, data []byte) {
		src, _, err := Read("x.xlsx", data)
		if err != nil {
			plainWords(t, err)
		} else if len(src.Sheets) == 0 {
			t.Error("read without a sheet")
		}
	})
}

// stored packs the parts of a package anew without compressing them, with one part more.
func stored(t testing.TB, data []byte, extra string) []byte {
	t.Helper()
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	add := func(name string, text []byte) {
		p, err := w.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Store})
		if err == nil {
			_, err = p.Write(text)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, file := range in.File {
		r, err := file.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, _ := io.ReadAll(r)
		add(file.Name, text)
	}
	if extra != "" {
		add(extra, []byte("x"))
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
