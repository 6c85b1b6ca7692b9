package samples

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// styles of the mezzanine workbook, chosen to print well in grey.
type styles struct {
	title, label, date, header, units, group, text, number, centre, metres int
	subtotal, subtotalNumber, note, area                                   int
}

func newStyles(b *book) styles {
	line := func(kind int) []excelize.Border {
		var all []excelize.Border
		for _, side := range []string{"left", "right", "top", "bottom"} {
			all = append(all, excelize.Border{Type: side, Color: "9AA5B1", Style: kind})
		}
		return all
	}
	fill := func(colour string) excelize.Fill {
		return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
	}
	thin := line(1)
	right := &excelize.Alignment{Horizontal: "right", Vertical: "center", Indent: 1}
	mid := &excelize.Alignment{Vertical: "center"}
	centre := &excelize.Alignment{Horizontal: "center", Vertical: "center", WrapText: true}
	day, metres := "yyyy-mm-dd", "0.000"
	return styles{
		title:          b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Bold: true, Size: 16, Color: "1F3A5F"}, Alignment: mid}),
		label:          b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Bold: true}}),
		date:           b.style(&excelize.Style{CustomNumFmt: &day, Alignment: &excelize.Alignment{Horizontal: "left"}}),
		header:         b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Bold: true, Color: "FFFFFF"}, Fill: fill("1F3A5F"), Border: thin, Alignment: centre}),
		units:          b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Italic: true, Color: "44505C"}, Fill: fill("E6EBF0"), Border: thin, Alignment: centre}),
		group:          b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Bold: true}, Fill: fill("CFDCE8"), Alignment: mid}),
		text:           b.style(&excelize.Style{Border: thin, Alignment: &excelize.Alignment{Vertical: "center", Horizontal: "left", Indent: 1}}),
		number:         b.style(&excelize.Style{Border: thin, Alignment: right}),
		centre:         b.style(&excelize.Style{Border: thin, Alignment: centre}),
		metres:         b.style(&excelize.Style{Border: thin, CustomNumFmt: &metres, Alignment: right}),
		subtotal:       b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Bold: true}, Fill: fill("F2F4F7"), Alignment: mid}),
		subtotalNumber: b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Bold: true}, Fill: fill("F2F4F7"), CustomNumFmt: &metres, Alignment: right, Border: []excelize.Border{{Type: "top", Color: "1F3A5F", Style: 1}}}),
		note:           b.style(&excelize.Style{Font: &excelize.Font{Family: "Calibri", Color: "44505C"}}),
		area:           b.style(&excelize.Style{Border: thin, NumFmt: 2, Alignment: right}),
	}
}

// looks sets what a reader sees but a calculation does not: widths, panes,
// colours by condition, a comment and the printed page.
func looks(b *book, total int) {
	for i, c := range columns {
		name, err := excelize.ColumnNumberToName(i + 1)
		b.must(err)
		b.must(b.SetColWidth(jointSheet, name, name, c.width))
	}
	b.must(b.SetPanes(jointSheet, &excelize.Panes{
		Freeze: true, XSplit: 1, YSplit: 8, TopLeftCell: "B9", ActivePane: "bottomRight",
		Selection: []excelize.Selection{{SQRef: "B9", ActiveCell: "B9", Pane: "bottomRight"}},
	}))
	b.must(b.AutoFilter(jointSheet, fmt.Sprintf("A8:Y%d", total), nil))
	hard, err := b.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Bold: true, Color: "8A4B00"}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"FFE8C7"}}})
	b.must(err)
	b.must(b.SetConditionalFormat(jointSheet, fmt.Sprintf("Q9:Q%d", total-1), []excelize.ConditionalFormatOptions{
		{Type: "formula", Criteria: `OR($Q9="PF",$Q9="PD",$Q9="PC")`, Format: &hard},
	}))
	page(b, jointSheet, 7, 8, fmt.Sprintf("A1:Y%d", total+8))
}

// comment hangs a note on the site weld that is hard to reach.
func comment(b *book) {
	b.must(b.AddComment(jointSheet, excelize.Comment{
		Cell: "R30", Author: "Drawing office", Width: 260, Height: 90,
		Paragraph: []excelize.RichTextRun{{Text: "Flange splices are reached from the floor plate level; the web only from a platform."}},
	}))
}

func page(b *book, sheet string, titleFrom, titleTo int, area string) {
	wide, tall, a3, landscape, fit := 1, 0, 8, "landscape", true
	b.must(b.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &landscape, Size: &a3, FitToWidth: &wide, FitToHeight: &tall}))
	b.must(b.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	edge, foot := 0.4, 0.6
	b.must(b.SetPageMargins(sheet, &excelize.PageLayoutMarginsOptions{Left: &edge, Right: &edge, Top: &edge, Bottom: &foot}))
	b.must(b.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{OddFooter: "&LInvented example: mezzanine M1, rev. B&C&A&RPage &P of &N"}))
	b.must(b.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: fmt.Sprintf("'%s'!$%d:$%d", sheet, titleFrom, titleTo), Scope: sheet}))
	from, to := area[:2], area[3:]
	b.must(b.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: fmt.Sprintf("'%s'!$%s$%s:$%s$%s", sheet, from[:1], from[1:], to[:1], to[1:]), Scope: sheet}))
}

// paint is the second sheet: surfaces for the painter, no welds in it.
var paint = []struct {
	item, section string
	pieces        int
	metres        float64
	perMetre      float64 // m² of surface per metre of the section
}{
	{"Columns C1 to C6", "HEB 160", 6, 2.95, 0.918},
	{"Main beams B1 to B3", "IPE 300", 3, 11.6, 1.16},
	{"Trimmer T1", "welded 360x160", 1, 5.4, 1.34},
	{"Secondary beams", "IPE 200", 8, 2.9, 0.768},
	{"Edge members", "UPN 200", 2, 5.9, 0.661},
	{"Stringers ST1", "UPN 200", 2, 5.2, 0.661},
	{"Bracing BR1", "CHS 88.9x4", 4, 3.6, 0.279},
}

func paintAreas(b *book, s styles) {
	b.set(paintSheet, "A1", "Invented example: paint areas, mezzanine M1")
	b.must(b.MergeCell(paintSheet, "A1", "F1"))
	b.must(b.SetCellStyle(paintSheet, "A1", "F1", s.title))
	for i, name := range []string{"Item", "Section", "Pieces", "Length each (m)", "Surface (m²/m)", "Area (m²)"} {
		b.set(paintSheet, cell(i+1, 3), name)
	}
	b.must(b.SetCellStyle(paintSheet, "A3", "F3", s.header))
	b.must(b.SetRowHeight(paintSheet, 3, 30))
	var total float64
	at := 4
	for _, p := range paint {
		b.must(b.SetSheetRow(paintSheet, cell(1, at), &[]any{p.item, p.section, p.pieces, p.metres, p.perMetre}))
		area := float64(p.pieces) * p.metres * p.perMetre
		b.formula(2, paintSheet, cell(6, at), fmt.Sprintf("C%d*D%d*E%d", at, at, at), area)
		b.must(b.SetCellStyle(paintSheet, cell(1, at), cell(5, at), s.text))
		b.must(b.SetCellStyle(paintSheet, cell(6, at), cell(6, at), s.area))
		total += area
		at++
	}
	b.set(paintSheet, cell(1, at), "Total")
	b.formula(2, paintSheet, cell(6, at), fmt.Sprintf("SUM(F4:F%d)", at-1), total)
	b.must(b.SetCellStyle(paintSheet, cell(1, at), cell(5, at), s.subtotal))
	b.must(b.SetCellStyle(paintSheet, cell(6, at), cell(6, at), s.area))
	b.must(b.SetColWidth(paintSheet, "A", "B", 22))
	b.must(b.SetColWidth(paintSheet, "C", "F", 12))
	page(b, paintSheet, 3, 3, fmt.Sprintf("A1:F%d", at))
}
