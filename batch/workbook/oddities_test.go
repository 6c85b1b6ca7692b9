package workbook

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

const oddSheet = "Welds"

// oddBook is a small list that change makes odd: a title, a header in row 3, six
// joints, a sum of the user's below them, and a frame of the user's own.
func oddBook(t testing.TB, change func(*excelize.File)) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	must(t, f.SetSheetName("Sheet1", oddSheet))
	must(t, f.SetCellValue(oddSheet, "A1", "Gate G-2, invented"))
	must(t, f.SetSheetRow(oddSheet, "A3", &[]any{"Mark", "Qty", "Kind", "Length (mm)", "Size", "t1 (mm)", "Material", "Position", "Due", "Total"}))
	for i := range 6 {
		n := itoa(4 + i)
		must(t, f.SetSheetRow(oddSheet, "A"+n, &[]any{"G" + n, 1 + i, "fillet", 200 + 50*i, "z5", 8, "S235", "PB", 45000 + i}))
		must(t, f.SetCellFormula(oddSheet, "J"+n, "B"+n+"*D"+n))
	}
	must(t, f.SetCellFormula(oddSheet, "J11", "SUM(J4:J9)"))
	days, err := f.NewStyle(&excelize.Style{NumFmt: 14})
	must(t, err)
	must(t, f.SetCellStyle(oddSheet, "I4", "I9", days))
	must(t, f.SetPanes(oddSheet, &excelize.Panes{Freeze: true, YSplit: 3, TopLeftCell: "A4", ActivePane: "bottomLeft"}))
	portrait, wide, fit := "portrait", 1, true
	must(t, f.SetPageLayout(oddSheet, &excelize.PageLayoutOptions{Orientation: &portrait, FitToWidth: &wide}))
	must(t, f.SetSheetProps(oddSheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	for name, cells := range map[string]string{"_xlnm.Print_Area": "$A$1:$J$11", "_xlnm.Print_Titles": "$3:$3"} {
		must(t, f.SetDefinedName(&excelize.DefinedName{Name: name, RefersTo: oddSheet + "!" + cells, Scope: oddSheet}))
	}
	if change != nil {
		change(f)
	}
	return written(t, f)
}

// withText changes the text of one part.
func withText(t testing.TB, data []byte, part string, change func(string) string) []byte {
	t.Helper()
	bodies := partsOf(t, data)
	was := string(bodies[part])
	now := change(was)
	if now == was {
		t.Fatalf("%s is as it was: the case is not made", part)
	}
	bodies[part] = []byte(now)
	return repacked(t, bodies)
}

const oddPart, bookPart = "xl/worksheets/sheet1.xml", "xl/workbook.xml"

var (
	cellRef   = regexp.MustCompile(`<c r="[A-Z]+[0-9]+"`)
	someTag   = regexp.MustCompile(`<(/?)([A-Za-z])`)
	rowsOfAny = regexp.MustCompile(`(?s)(<(?:\w+:)?row\b[^>]*?)(?:/>|>(.*?)</(?:\w+:)?row>)`)
)

// TestOddWorkbooks annotates lists of kinds that real programs write, each made here:
// every row of the user's stands byte for byte, in its order, what is named of the
// workbook stands as it was, and another program finds every cell as before. What
// cannot be added to gives a fresh workbook that says why.
func TestOddWorkbooks(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		data  []byte
		fresh string              // why there is a fresh one; empty: annotated
		kept  map[string][]string // part -> what must stand in it, before and after
		gone  string              // a part that goes by design
		note  string              // code of what is told
		first int                 // our first column, where it matters
	}{
		"1904 dates": {data: withText(t, oddBook(t, nil), bookPart, func(s string) string {
			return strings.Replace(s, "<workbookPr", `<workbookPr date1904="1"`, 1)
		}), kept: map[string][]string{bookPart: {`date1904="1"`}}},
		"strict variant": {data: withText(t, oddBook(t, nil), oddPart, func(s string) string {
			return strings.ReplaceAll(s, "http://schemas.openxmlformats.org/spreadsheetml/2006/main", "http://purl.oclc.org/ooxml/spreadsheetml/main")
		}), fresh: "strict"},
		"prefixed elements": {data: withText(t, oddBook(t, nil), oddPart, func(s string) string {
			return strings.Replace(someTag.ReplaceAllString(s, "<${1}x:$2"), `xmlns="`, `xmlns:x="`, 1)
		}), kept: map[string][]string{oddPart: {"<x:worksheet", "</x:worksheet>"}}},
		"no cell references": {data: withText(t, oddBook(t, nil), oddPart, func(s string) string { return cellRef.ReplaceAllString(s, "<c") })},
		"rows out of order": {data: withText(t, oddBook(t, nil), oddPart, func(s string) string {
			rows := rowsOfAny.FindAllString(s, -1)
			five, six := rows[3], rows[4]
			return strings.Replace(s, five+six, six+five, 1)
		})},
		"shared formulas": {data: oddBook(t, func(f *excelize.File) {
			kind, ref := excelize.STCellFormulaTypeShared, "J4:J9"
			must(t, f.SetCellFormula(oddSheet, "J4", "B4*D4", excelize.FormulaOpts{Type: &kind, Ref: &ref}))
		}), kept: map[string][]string{oddPart: {`t="shared"`}}},
		"calculation chain": {data: chained(t), gone: "xl/calcChain.xml"},
		"protection": {data: oddBook(t, func(f *excelize.File) {
			must(t, f.ProtectSheet(oddSheet, &excelize.SheetProtectionOptions{Password: "gate", SelectLockedCells: true}))
			must(t, f.ProtectWorkbook(&excelize.WorkbookProtectionOptions{LockStructure: true}))
		}), kept: map[string][]string{oddPart: {"<sheetProtection "}, bookPart: {"<workbookProtection "}}, note: "protected"},
		"a table": {data: oddBook(t, func(f *excelize.File) {
			must(t, f.AddTable(oddSheet, &excelize.Table{Range: "A3:J9", Name: "Gates"}))
		}), kept: map[string][]string{"xl/tables/table1.xml": {`ref="A3:J9"`}, oddPart: {"<tableParts"}}},
		"a filter": {data: oddBook(t, func(f *excelize.File) {
			must(t, f.AutoFilter(oddSheet, "A3:J9", []excelize.AutoFilterOptions{{Column: "C", Expression: "x == fillet"}}))
		}), kept: map[string][]string{oddPart: {`<autoFilter ref="$A$3:$J$9"`}}},
		"merged headers": {data: oddBook(t, func(f *excelize.File) {
			for _, cells := range [][2]string{{"A2", "C2"}, {"D2", "F2"}} {
				must(t, f.MergeCell(oddSheet, cells[0], cells[1]))
			}
			must(t, f.SetCellValue(oddSheet, "A2", "Joint"))
			must(t, f.SetCellValue(oddSheet, "D2", "Weld"))
		}), kept: map[string][]string{oddPart: {`<mergeCell ref="A2:C2"`, `<mergeCell ref="D2:F2"`}}},
		"cells right of the list": {data: oddBook(t, func(f *excelize.File) {
			must(t, f.SetCellValue(oddSheet, "P4", "ask the yard"))
			must(t, f.SetCellFormula(oddSheet, "Q20", "SUM(D4:D9)/1000"))
		}), first: 19},
	} {
		t.Run(name, func(t *testing.T) {
			src, _, err := list.Read("gate.xlsx", c.data)
			must(t, err)
			job := understoodJob(t, src, price.Options{})
			if len(job.List.Joints) != 6 {
				t.Fatalf("%d joints are read, want 6", len(job.List.Joints))
			}
			book, err := Prepare(src, job, Options{})
			must(t, err)
			out := bytesOf(t, book)
			if c.fresh != "" {
				if !isFresh(book.Problems) || !strings.Contains(book.Problems[0].Text, c.fresh) {
					t.Errorf("no fresh workbook for that: %+v", book.Problems)
				}
				sameCells(t, name, src, out, book.Problems)
				return
			}
			if isFresh(book.Problems) {
				t.Fatalf("not annotated: %+v", book.Problems)
			}
			if c.note != "" && (len(book.Problems) != 1 || book.Problems[0].Code != c.note) {
				t.Errorf("told %+v, want %s", book.Problems, c.note)
			}
			before, after := partsOf(t, c.data), partsOf(t, out)
			rowsKept(t, before[oddPart], after[oddPart])
			for part, texts := range c.kept {
				for _, text := range texts {
					if !bytes.Contains(before[part], []byte(text)) || !bytes.Contains(after[part], []byte(text)) {
						t.Errorf("%s in %s: before %v, after %v", text, part, bytes.Contains(before[part], []byte(text)), bytes.Contains(after[part], []byte(text)))
					}
				}
			}
			if _, there := after[c.gone]; there {
				t.Errorf("%s is left, though its order is no longer true", c.gone)
			}
			if status := headsOf(t, opened(t, out), oddSheet)["Status"]; c.first != 0 && status != c.first {
				t.Errorf("ours begin in column %d, want %d", status, c.first)
			}
			sameCells(t, name, src, out, nil)
			sameParts(t, name, c.data, out)
			dir := t.TempDir()
			was, is := filepath.Join(dir, "was.xlsx"), filepath.Join(dir, "is.xlsx")
			must(t, os.WriteFile(was, c.data, 0o644))
			must(t, os.WriteFile(is, out, 0o644))
			sameByAnotherProgram(t, was, is)
		})
	}
}

// rowsKept wants every row of the first sheet in the second, in the same order: the
// same start tag, to which a header without a height may have got one, and then the
// same bytes, before anything of ours.
func rowsKept(t *testing.T, before, after []byte) {
	t.Helper()
	now, compared := rowsOfAny.FindAllSubmatch(after, -1), 0
	for _, row := range rowsOfAny.FindAllSubmatch(before, -1) {
		for len(now) > 0 && !(sameTag(row[1], now[0][1]) && bytes.HasPrefix(now[0][2], row[2])) {
			now = now[1:]
		}
		if len(now) == 0 {
			t.Fatalf("gone, changed or moved: %s>%s", row[1], row[2])
		}
		now = now[1:]
		compared++
	}
	if compared < 9 {
		t.Errorf("only %d rows compared", compared)
	}
}

func sameTag(was, is []byte) bool {
	added, ok := bytes.CutPrefix(is, was)
	return ok && (len(added) == 0 || heightOnly.Match(added))
}

var heightOnly = regexp.MustCompile(`^ ht="[0-9.]+"( customHeight="1")?$`)

// chained is the list with the order in which its formulas were last worked out.
func chained(t testing.TB) []byte {
	t.Helper()
	bodies := partsOf(t, oddBook(t, nil))
	put := func(part, end, text string) {
		if !bytes.Contains(bodies[part], []byte(end)) {
			t.Fatalf("%s does not end in %s", part, end)
		}
		bodies[part] = bytes.Replace(bodies[part], []byte(end), []byte(text+end), 1)
	}
	bodies["xl/calcChain.xml"] = []byte(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>` + "\n" +
		`<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="J4" i="1"/><c r="J11" i="1"/></calcChain>`)
	put("[Content_Types].xml", "</Types>", `<Override PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/>`)
	put("xl/_rels/workbook.xml.rels", "</Relationships>", `<Relationship Id="rIdChain" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/>`)
	return repacked(t, bodies)
}
