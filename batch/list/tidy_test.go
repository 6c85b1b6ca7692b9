package list

import (
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// bothWays reads a sheet of one row with the cells given, as they stand and with a
// blank more in their start tags, which the quick reading does not know.
func bothWays(t *testing.T, data []byte, cells string) (quick, slow string) {
	t.Helper()
	read := func(cells string) string {
		sheet := `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1">` + cells + `</row></sheetData></worksheet>`
		src, _, err := Read("x.xlsx", edit(t, data, sheetPart, func(string) string { return sheet }))
		if err != nil {
			return "refused: " + err.Error()
		}
		return dumpOf(src)
	}
	return read(cells), read(strings.ReplaceAll(cells, "<c r=", "<c  r="))
}

// tidyCells are cells that are read quickly and their neighbours that are not.
var tidyCells = []string{
	`<c r="A1"><v>5</v></c>`, `<c r="A1" s="1"><v>46115</v></c>`, `<c r="A1" s="2"><v>0.5</v></c>`, `<c r="A1" t="n"><v>5e2</v></c>`, `<c r="A1" t="s"><v>0</v></c>`,
	`<c r="A1" t="s"><v>99</v></c>`, `<c r="A1" t="s"><v></v></c>`, `<c r="A1" t="s"/>`, `<c r="A1" s="1"/>`, `<c r="A1" s="1"></c>`, `<c r="A1" t="inlineStr"></c>`,
	`<c r="A1" t="inlineStr"><is><t>two words</t></is></c>`, `<c r="A1" t="inlineStr"><is><t> x_x0041_ </t></is></c>`, `<c r="A1" t="inlineStr"><is><t>a &amp; b</t></is></c>`,
	`<c r="A1" t="inlineStr"><is><t/></is></c>`, `<c r="A1" t="inlineStr"><is><t xml:space="preserve"> x</t></is></c>`, `<c r="A1" t="inlineStr"><v>5</v></c>`,
	`<c r="A1" t="str"><v>x</v></c>`, `<c r="A1" t="b"><v>1</v></c>`, `<c r="A1" t="e"><v>#REF!</v></c>`, `<c r="A1"><f>1+1</f><v>2</v></c>`, `<c r="A1"><f>1+1</f></c>`,
	`<c r="A1"><v>x</v></c>`, `<c r="A1"><v> 7 </v></c>`, `<c r="A1"><v>&#53;</v></c>`, `<c r="A1" s="99999"><v>5</v></c>`, `<c r="A1" s="9999999999"><v>5</v></c>`, `<c r="A1" s=""><v>5</v></c>`,
	`<c r="A1" t="s" s="1"><v>0</v></c>`, `<c r="A2"><v>5</v></c>`, `<c r="a1"><v>5</v></c>`, `<c r="A1"><v>5</v></c><c r="A1"><v>6</v></c>`, `<c r="B1"><v>5</v></c><c r="A1"><v>6</v></c>`,
	`<c r="ZZZ1"><v>5</v></c>`, `<c r="A1"><v>5</v>`, `<c r="A1"><v>5</c>`, `<c r="A1"`, `<c r="`, `<c r="A1"><v>1e999</v></c>`, `<c r="A1"><is><t>x</t></is></c>`, `<c r="A1" t="s"><is><t>x</t></is></c>`,
}

func tidyBook(t testing.TB) []byte {
	return book(t, func(f *excelize.File) {
		set(t, f, "A1", "Mark")
		date, _ := f.NewStyle(&excelize.Style{NumFmt: 16})
		_ = f.SetCellStyle("Sheet1", "A1", "A1", date)
		share, _ := f.NewStyle(&excelize.Style{NumFmt: 9})
		_ = f.SetCellStyle("Sheet1", "B1", "B1", share)
	})
}

func TestTidyCellsReadAsTheScannerReadsThem(t *testing.T) {
	data := tidyBook(t)
	for _, cells := range tidyCells {
		for _, all := range []string{cells, cells + `<c r="C1" s="2"><v>0.25</v></c>`, `<c r="A1" t="s"><v>0</v></c>` + strings.ReplaceAll(cells, "A1", "B1")} {
			if quick, slow := bothWays(t, data, all); quick != slow {
				t.Errorf("%s\nquick: %s\nslow:  %s", all, quick, slow)
			}
		}
	}
}

func FuzzTidyCells(f *testing.F) {
	data := tidyBook(f)
	for _, cells := range tidyCells {
		f.Add(cells)
	}
	f.Fuzz(func(t *testing.T, cells string) {
		if strings.Count(cells, "<c r=") != strings.Count(cells, "<c") {
			return // another text would be changed with the start tags
		}
		if quick, slow := bothWays(t, data, cells); quick != slow {
			t.Errorf("%s\nquick: %s\nslow:  %s", cells, quick, slow)
		}
	})
}
