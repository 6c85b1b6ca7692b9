package workbook

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// richSheet is where the list of the rich workbook stands.
const richSheet = "Weld list"

// richBook is a workbook with as much in it as a user could have: on the sheet of
// the list itself wherever that is possible. All of it is invented.
func richBook(t testing.TB) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	must(t, f.SetSheetName("Sheet1", richSheet))
	richRows(t, f)
	richLooks(t, f)
	richRules(t, f)
	richObjects(t, f)
	richFrame(t, f)
	must(t, f.AddVBAProject(append([]byte{0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1}, bytes.Repeat([]byte{0x5a}, 4000)...)))
	f.Path = "rich.xlsm"
	return withForeignParts(t, written(t, f))
}

// richRows writes the list: titles, a header in row 6, twelve joints, sums below.
func richRows(t testing.TB, f *excelize.File) {
	must(t, f.SetCellValue(richSheet, "B2", "Platform P-7, invented"))
	must(t, f.MergeCell(richSheet, "B2", "H2"))
	must(t, f.SetCellRichText(richSheet, "B3", []excelize.RichTextRun{{Text: "Revision ", Font: &excelize.Font{Italic: true}}, {Text: "C", Font: &excelize.Font{Bold: true, Color: "C00000"}}}))
	must(t, f.SetSheetRow(richSheet, "A6", &[]any{"Mark", "Assembly", "Kind", "Qty", "Length (mm)", "Size", "t1", "Material", "Due", "Total mm", "Share", "Note"}))
	for i := range 12 {
		row := 7 + i
		n := itoa(row)
		must(t, f.SetSheetRow(richSheet, "A"+n, &[]any{"00" + itoa(i), []string{"Deck", "Stairs", "Rail"}[i%3], "fillet", 1 + i%4, 300 + 125.5*float64(i), []string{"z6", "a4", "z5"}[i%3], 8, "S235", 46000 + i}))
		must(t, f.SetCellFormula(richSheet, "J"+n, "D"+n+"*E"+n))
		must(t, f.SetCellFormula(richSheet, "K"+n, "J"+n+"/J$20"))
		must(t, f.SetCellValue(richSheet, "L"+n, "=not a formula "+n))
	}
	must(t, f.SetCellValue(richSheet, "A20", "Total"))
	must(t, f.SetCellFormula(richSheet, "J20", "SUBTOTAL(9,J7:J18)"))
	_, err := f.NewSheet("Prices")
	must(t, err)
	must(t, f.SetSheetRow("Prices", "A1", &[]any{"Item", "Price"}))
	for i, s := range []string{"wire", "gas", "labour"} {
		must(t, f.SetSheetRow("Prices", "A"+itoa(i+2), &[]any{s, 10.5 * float64(i+1)}))
	}
	must(t, f.SetCellFormula("Prices", "B6", "SUM(Quantities)"))
	must(t, f.SetCellHyperLink(richSheet, "L7", "https://example.org/drawing", "External"))
	must(t, f.SetCellHyperLink(richSheet, "L8", "Prices!A1", "Location"))
}

func richLooks(t testing.TB, f *excelize.File) {
	for i, s := range []excelize.Style{
		{Font: &excelize.Font{Bold: true, Family: "Arial", Size: 10, Color: "FFFFFF"}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"305496"}}, Alignment: &excelize.Alignment{WrapText: true, TextRotation: 45}},
		{NumFmt: 14}, {CustomNumFmt: text(`#,##0.0" mm"`)}, {NumFmt: 10, Protection: &excelize.Protection{Hidden: true, Locked: true}},
		{Fill: excelize.Fill{Type: "gradient", Color: []string{"FFFFFF", "E0EBF5"}, Shading: 1}, Border: []excelize.Border{{Type: "diagonalUp", Style: 3, Color: "FF0000"}}},
	} {
		id, err := f.NewStyle(&s)
		must(t, err)
		must(t, f.SetCellStyle(richSheet, []string{"A6", "I7", "J7", "K7", "L7"}[i], []string{"L6", "I18", "J20", "K18", "L18"}[i], id))
	}
	must(t, f.SetColWidth(richSheet, "A", "A", 11.5))
	must(t, f.SetColWidth(richSheet, "L", "L", 28))
	must(t, f.SetColOutlineLevel(richSheet, "H", 1))
	must(t, f.SetColOutlineLevel(richSheet, "I", 1))
	must(t, f.SetColVisible(richSheet, "I", false))
	must(t, f.SetRowHeight(richSheet, 6, 42))
	must(t, f.SetRowOutlineLevel(richSheet, 9, 1))
	must(t, f.SetRowVisible(richSheet, 10, false))
}

func richRules(t testing.TB, f *excelize.File) {
	red, err := f.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Color: "9C0006"}})
	must(t, err)
	must(t, f.SetConditionalFormat(richSheet, "D7:D18", []excelize.ConditionalFormatOptions{{Type: "cell", Criteria: ">", Value: "3", Format: &red}}))
	must(t, f.SetConditionalFormat(richSheet, "E7:E18", []excelize.ConditionalFormatOptions{{Type: "data_bar", Criteria: "=", MinType: "min", MaxType: "max", BarColor: "#638EC6", BarSolid: true}}))
	must(t, f.SetConditionalFormat(richSheet, "J7:J18", []excelize.ConditionalFormatOptions{{Type: "3_color_scale", Criteria: "=", MinType: "min", MidType: "percentile", MaxType: "max", MinColor: "#F8696B", MidColor: "#FFEB84", MaxColor: "#63BE7B"}}))
	list := excelize.NewDataValidation(true)
	list.Sqref = "C7:C18"
	must(t, list.SetDropList([]string{"fillet", "lap", "single V"}))
	must(t, f.AddDataValidation(richSheet, list))
	whole := excelize.NewDataValidation(true)
	whole.Sqref = "D7:D18"
	must(t, whole.SetRange(1, 500, excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween))
	whole.SetInput("Copies", "how many of this joint")
	must(t, f.AddDataValidation(richSheet, whole))
	must(t, f.SetDefinedName(&excelize.DefinedName{Name: "Quantities", RefersTo: "'" + richSheet + "'!$D$7:$D$18", Comment: "copies"}))
	must(t, f.SetDefinedName(&excelize.DefinedName{Name: "local", RefersTo: "Prices!$B$2", Scope: "Prices"}))
	must(t, f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: "'" + richSheet + "'!$A$1:$L$20", Scope: richSheet}))
	must(t, f.AddIgnoredErrors(richSheet, "A7:A18", excelize.IgnoredErrorsNumberStoredAsText))
}

func richObjects(t testing.TB, f *excelize.File) {
	must(t, f.AddTable(richSheet, &excelize.Table{Range: "A6:L18", Name: "Joints", StyleName: "TableStyleMedium2", ShowRowStripes: yes()}))
	must(t, f.AddComment(richSheet, excelize.Comment{Cell: "F7", Author: "Estimator", Paragraph: []excelize.RichTextRun{{Text: "as drawn"}}}))
	must(t, f.AddComment(richSheet, excelize.Comment{Cell: "L18", Author: "Estimator", Paragraph: []excelize.RichTextRun{{Text: "ask"}}}))
	must(t, f.AddPictureFromBytes(richSheet, "J1", &excelize.Picture{Extension: ".png", File: dot(t), Format: &excelize.GraphicOptions{AltText: "logo"}}))
	must(t, f.AddChart(richSheet, "B24", &excelize.Chart{Type: excelize.Col, Title: excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: "Lengths"}}},
		Series: []excelize.ChartSeries{{Name: "len", Categories: "'" + richSheet + "'!$A$7:$A$18", Values: "'" + richSheet + "'!$E$7:$E$18"}}}))
	must(t, f.AddShape(richSheet, &excelize.Shape{Cell: "H24", Type: "rect", Paragraph: []excelize.RichTextRun{{Text: "approved by nobody"}}, Width: 180, Height: 40}))
	must(t, f.AddSparkline(richSheet, &excelize.SparklineOptions{Location: []string{"L20"}, Range: []string{richSheet + "!E7:E18"}, Markers: true}))
	must(t, f.AddFormControl(richSheet, excelize.FormControl{Cell: "K24", Type: excelize.FormControlButton, Macro: "Button1_Click", Text: "Recalculate", Width: 90, Height: 24}))
	_, err := f.NewSheet("Pivot")
	must(t, err)
	must(t, f.AddPivotTable(&excelize.PivotTableOptions{DataRange: richSheet + "!$A$6:$L$18", PivotTableRange: "Pivot!$A$3:$C$12", Name: "PivotJoints",
		Rows: []excelize.PivotTableField{{Data: "Assembly"}}, Data: []excelize.PivotTableField{{Data: "Qty", Subtotal: "Sum"}}, RowGrandTotals: true, ShowDrill: true}))
	must(t, f.AddSlicer(richSheet, &excelize.SlicerOptions{Name: "Assembly", Cell: "H28", TableSheet: richSheet, TableName: "Joints", Caption: "Assembly"}))
	_, err = f.NewSheet("Secret")
	must(t, err)
	must(t, f.SetCellValue("Secret", "A1", 0.42))
	must(t, f.SetSheetVisible("Secret", false, true))
	must(t, f.AddChartSheet("Chart", &excelize.Chart{Type: excelize.Line, Series: []excelize.ChartSeries{{Name: "p", Categories: "Prices!$A$2:$A$4", Values: "Prices!$B$2:$B$4"}}}))
}

func richFrame(t testing.TB, f *excelize.File) {
	fit, wide, portrait := true, 1, "portrait"
	must(t, f.SetPageLayout(richSheet, &excelize.PageLayoutOptions{Orientation: &portrait, FitToWidth: &wide}))
	must(t, f.SetSheetProps(richSheet, &excelize.SheetPropsOptions{FitToPage: &fit, TabColorRGB: text("FFC55A11")}))
	must(t, f.SetHeaderFooter(richSheet, &excelize.HeaderFooterOptions{OddHeader: "&LPlatform&RP-7", OddFooter: "&CPage &P of &N"}))
	must(t, f.InsertPageBreak(richSheet, "A13"))
	must(t, f.SetPanes(richSheet, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: 6, TopLeftCell: "B7", ActivePane: "bottomRight"}))
	must(t, f.ProtectSheet(richSheet, &excelize.SheetProtectionOptions{Password: "weld", SelectLockedCells: true, SelectUnlockedCells: true, FormatCells: true}))
	must(t, f.ProtectWorkbook(&excelize.WorkbookProtectionOptions{LockStructure: true}))
	must(t, f.SetDocProps(&excelize.DocProperties{Title: "Platform", Creator: "an invented estimator"}))
	must(t, f.SetCustomProps(excelize.CustomProperty{Name: "Job", Value: "P-7"}))
}

// withForeignParts adds what the library cannot make: a link to another workbook
// with its cached cells, a person's threaded comment, a custom XML part, and
// printer settings. Calculation order too, which goes by design.
func withForeignParts(t testing.TB, data []byte) []byte {
	t.Helper()
	const rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	const head = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>` + "\n"
	out := map[string][]byte{}
	for name, body := range partsOf(t, data) {
		out[name] = body
	}
	put := func(name, from, to string) {
		if !bytes.Contains(out[name], []byte(from)) {
			t.Fatalf("%s has no %s", name, from)
		}
		out[name] = bytes.Replace(out[name], []byte(from), []byte(to), 1)
	}
	out["xl/externalLinks/externalLink1.xml"] = []byte(head + `<externalLink xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><externalBook xmlns:r="` + rel + `" r:id="rId1"><sheetNames><sheetName val="Stock"/></sheetNames><sheetDataSet><sheetData sheetId="0"><row r="1"><cell r="A1"><v>7</v></cell></row></sheetData></sheetDataSet></externalBook></externalLink>`)
	out["xl/externalLinks/_rels/externalLink1.xml.rels"] = []byte(head + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="` + rel + `/externalLinkPath" Target="stock.xlsx" TargetMode="External"/></Relationships>`)
	out["customXml/item1.xml"] = []byte(head + `<job xmlns="urn:invented"><number>P-7</number></job>`)
	out["xl/printerSettings/printerSettings1.bin"] = bytes.Repeat([]byte{7, 0}, 300)
	put("[Content_Types].xml", "</Types>", `<Default Extension="bin2" ContentType="application/octet-stream"/><Override PartName="/xl/externalLinks/externalLink1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.externalLink+xml"/><Override PartName="/xl/printerSettings/printerSettings1.bin" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.printerSettings"/></Types>`)
	put("xl/_rels/workbook.xml.rels", "</Relationships>", `<Relationship Id="rIdExt" Type="`+rel+`/externalLink" Target="externalLinks/externalLink1.xml"/><Relationship Id="rIdCx" Type="`+rel+`/customXml" Target="../customXml/item1.xml"/></Relationships>`)
	put("xl/workbook.xml", "<definedNames>", `<externalReferences><externalReference xmlns:r="`+rel+`" r:id="rIdExt"/></externalReferences><definedNames>`)
	put("xl/worksheets/_rels/sheet1.xml.rels", "</Relationships>", `<Relationship Id="rIdPrn" Type="`+rel+`/printerSettings" Target="../printerSettings/printerSettings1.bin"/></Relationships>`)
	put("xl/worksheets/sheet1.xml", "<pageSetup ", `<pageSetup xmlns:r="`+rel+`" r:id="rIdPrn" `)
	return repacked(t, out)
}

func text(s string) *string { return &s }

func yes() *bool { b := true; return &b }

func dot(t testing.TB) []byte {
	img := image.NewRGBA(image.Rect(0, 0, 60, 24))
	for i := range 60 {
		img.Set(i, i*2/5, color.RGBA{200, 60, 20, 255})
	}
	var out bytes.Buffer
	must(t, png.Encode(&out, img))
	return out.Bytes()
}

// cell references of rows, for the comparison by bytes.
func attrOf(tag, name string) string {
	_, rest, ok := strings.Cut(tag, " "+name+`="`)
	if !ok {
		return ""
	}
	value, _, _ := strings.Cut(rest, `"`)
	return value
}
