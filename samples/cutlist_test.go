package samples

import "github.com/xuri/excelize/v2"

const cutSheet = "Cut list"

// cut are the parts of the mezzanine: part, assembly, section, grade, length in mm,
// pieces, remark. The sections are those whose thicknesses the weld list has.
var cut = []struct {
	part, assembly, section, grade string
	length, pieces                 int
	remark                         string
}{
	{"101", "C1", "HEB 160", "S355J2", 2950, 6, "Columns"},
	{"102", "C1", "PL 20x300", "S355J2", 300, 6, "Base plates"},
	{"103", "C1", "PL 15x200", "S355J2", 250, 6, "Cap plates"},
	{"104", "C1", "FL 70x10", "S355J2", 100, 12, "Stiffeners"},
	{"105", "C1", "FL 180x10", "S355J2", 220, 16, "Fin plates and gussets"},
	{"106", "C1", "FL 80x25", "S355J2", 80, 6, "Shear keys"},
	{"201", "B1", "IPE 300", "S355J2", 11600, 3, "Main beams"},
	{"202", "B1", "PL 15x180", "S355J2", 340, 6, "End plates"},
	{"203", "B1", "FL 140x8", "S355J2", 230, 16, "Fin plates"},
	{"204", "B1", "FL 70x8", "S355J2", 230, 12, "Stiffeners"},
	{"301", "T1", "PL 12x160", "S355J2", 2700, 4, "Flanges of the trimmer, in two lengths"},
	{"302", "T1", "PL 8x336", "S355J2", 2700, 2, "Web of the trimmer, in two lengths"},
	{"303", "T1", "PL 15x180", "S355J2", 380, 2, "End plates"},
	{"401", "S1", "IPE 200", "S235JR", 2900, 8, "Secondary beams"},
	{"402", "S1", "UPN 200", "S235JR", 5900, 2, "Edge members"},
	{"403", "S1", "FL 120x10", "S235JR", 130, 16, "End plates"},
	{"404", "S1", "L 60x60x6", "S235JR", 5790, 2, "Edge angles"},
	{"501", "ST1", "UPN 200", "S235JR", 5200, 2, "Stringers"},
	{"502", "ST1", "FL 50x5", "S235JR", 790, 17, "Tread stiffeners"},
	{"601", "BR1", "CHS 88.9x4", "S355J2H", 3600, 4, "Braces"},
	{"602", "BR1", "PL 10x160", "S355J2", 240, 8, "Gussets"},
	{"701", "EQ1", "SHS 150x150x8", "S355J2H", 300, 4, "Stubs"},
	{"702", "EQ1", "PL 25x800", "S355J2", 1200, 2, "Pad plate, in two parts"},
}

// joined are the parts that the joints of the mezzanine join, as far as the cut list
// has them: the one whose edge meets first.
var joined = map[string][2]string{
	"C1-01": {"101", "102"}, "C1-02": {"101", "102"}, "C1-03": {"101", "102"}, "C1-04": {"101", "103"}, "C1-05": {"101", "103"},
	"C1-06": {"104", "101"}, "C1-07": {"104", "101"}, "C1-08": {"105", "101"}, "C1-09": {"105", "101"}, "C1-10": {"106", "102"},
	"B1-01": {"201", "202"}, "B1-02": {"201", "202"}, "B1-03": {"201", "202"}, "B1-04": {"203", "201"}, "B1-05": {"204", "201"},
	"B1-06": {"204", "201"}, "B1-07": {"201", "201"}, "B1-08": {"201", "201"}, "B1-10": {"", "202"},
	"T1-01": {"302", "301"}, "T1-02": {"301", "301"}, "T1-03": {"302", "302"}, "T1-04": {"", "302"}, "T1-05": {"", "301"},
	"T1-06": {"302", "303"}, "T1-07": {"301", "303"},
	"S1-01": {"401", "403"}, "S1-02": {"404", ""}, "S1-03": {"", "402"}, "S1-04": {"", "402"},
	"ST1-01": {"", "501"}, "ST1-02": {"", "501"}, "ST1-03": {"502", ""}, "ST1-04": {"501", ""}, "ST1-05": {"501", ""},
	"ST1-06": {"501", "501"}, "ST1-07": {"501", "501"}, "ST1-09": {"", "501"},
	"BR1-01": {"601", "602"}, "BR1-02": {"601", ""}, "BR1-03": {"602", "101"}, "BR1-04": {"602", "201"},
	"EQ1-01": {"702", "702"}, "EQ1-02": {"701", "702"}, "EQ1-03": {"", "702"}, "EQ1-04": {"", "702"},
}

func cutList(b *book, s styles) {
	b.set(cutSheet, "A1", "Invented example: cut list, mezzanine M1 (main parts; no real structure)")
	b.must(b.MergeCell(cutSheet, "A1", "G1"))
	b.must(b.SetCellStyle(cutSheet, "A1", "G1", s.title))
	for i, name := range []string{"Part", "Assembly", "Section", "Grade", "Length", "Pieces", "Remarks"} {
		b.set(cutSheet, cell(i+1, 3), name)
	}
	b.set(cutSheet, "E4", "mm")
	b.set(cutSheet, "F4", "pcs")
	b.must(b.SetCellStyle(cutSheet, "A3", "G4", s.header))
	for i, p := range cut {
		b.must(b.SetSheetRow(cutSheet, cell(1, 5+i), &[]any{p.part, p.assembly, p.section, p.grade, p.length, p.pieces, p.remark}))
		b.must(b.SetCellStyle(cutSheet, cell(1, 5+i), cell(7, 5+i), s.text))
	}
	b.must(b.SetColWidth(cutSheet, "A", "B", 10))
	b.must(b.SetColWidth(cutSheet, "C", "D", 16))
	b.must(b.SetColWidth(cutSheet, "E", "F", 9))
	b.must(b.SetColWidth(cutSheet, "G", "G", 40))
	// Across the paper: upright, the columns set beside the list would shrink to a third.
	landscape, wide, tall, fit := "landscape", 1, 0, true
	b.must(b.SetPageLayout(cutSheet, &excelize.PageLayoutOptions{Orientation: &landscape, FitToWidth: &wide, FitToHeight: &tall}))
	b.must(b.SetSheetProps(cutSheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
}
