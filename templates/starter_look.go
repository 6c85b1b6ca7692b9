package templates

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// starterStyles are the styles of the starter list, by use.
type starterStyles struct {
	title, label, hint, fillIn, needed, optional, units int
	text, number, exampleText, exampleNumber            int
	helpHead, helpCell, helpName                        int
	section, edit, remark                               int // of the shop workbook
}

// exampleOf returns the style of an example cell of a column.
func (st starterStyles) exampleOf(c starterColumn) int {
	if c.number() {
		return st.exampleNumber
	}
	return st.exampleText
}

// number tells whether a column holds numbers, which stand to the right.
func (c starterColumn) number() bool {
	switch c.Key {
	case "qty", "length", "sides", "t1", "t2", "angle", "gap", "root_face":
		return true
	}
	return false
}

const starterFont = "Calibri"

func (s *starter) newStyles() starterStyles {
	font := func(size float64, bold, italic bool, colour string) *excelize.Font {
		return &excelize.Font{Family: starterFont, Size: size, Bold: bold, Italic: italic, Color: colour}
	}
	fill := func(colour string) excelize.Fill {
		return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
	}
	centre := &excelize.Alignment{Horizontal: "center", Vertical: "center", WrapText: true}
	left := &excelize.Alignment{Horizontal: "left", Vertical: "center", Indent: 1}
	right := &excelize.Alignment{Horizontal: "right", Vertical: "center"}
	wrap := &excelize.Alignment{Horizontal: "left", Vertical: "center", Indent: 1, WrapText: true}
	middle := &excelize.Alignment{Vertical: "center"}
	grid, under := starterBorder("left", "right", "top", "bottom"), starterBorder("bottom")
	asText := "@"
	return starterStyles{
		title:         s.newStyle(excelize.Style{Font: font(18, true, false, "1F3A5F"), Alignment: middle}),
		label:         s.newStyle(excelize.Style{Font: font(11, true, false, "333333")}),
		hint:          s.newStyle(excelize.Style{Font: font(10, false, true, "44505C"), Alignment: middle}),
		fillIn:        s.newStyle(excelize.Style{Font: font(11, false, false, "000000"), Border: under}),
		needed:        s.newStyle(excelize.Style{Font: font(11, true, false, "FFFFFF"), Fill: fill("1F3A5F"), Border: grid, Alignment: centre}),
		optional:      s.newStyle(excelize.Style{Font: font(11, true, false, "1F3A5F"), Fill: fill("CFDCE8"), Border: grid, Alignment: centre}),
		units:         s.newStyle(excelize.Style{Font: font(10, false, true, "44505C"), Fill: fill("EEF2F6"), Border: grid, Alignment: centre}),
		text:          s.newStyle(excelize.Style{Font: font(11, false, false, "000000"), Border: grid, Alignment: left, CustomNumFmt: &asText}),
		number:        s.newStyle(excelize.Style{Font: font(11, false, false, "000000"), Border: grid, Alignment: right, CustomNumFmt: s.numberFormat()}),
		exampleText:   s.newStyle(excelize.Style{Font: font(11, false, true, "6B7680"), Border: grid, Alignment: left, CustomNumFmt: &asText}),
		exampleNumber: s.newStyle(excelize.Style{Font: font(11, false, true, "6B7680"), Border: grid, Alignment: right, CustomNumFmt: s.numberFormat()}),
		section:       s.newStyle(excelize.Style{Font: font(12, true, false, "1F3A5F"), Alignment: middle}),
		remark:        s.newStyle(excelize.Style{Font: font(10, false, true, "6B7680"), Border: grid, Alignment: wrap}),
		edit:          s.newStyle(excelize.Style{Font: font(11, false, false, "000000"), Fill: fill("FFF7D6"), Border: grid, Alignment: wrap}),
		helpHead:      s.newStyle(excelize.Style{Font: font(11, true, false, "FFFFFF"), Fill: fill("1F3A5F"), Border: grid, Alignment: left}),
		helpCell:      s.newStyle(excelize.Style{Font: font(11, false, false, "000000"), Border: grid, Alignment: wrap}),
		helpName:      s.newStyle(excelize.Style{Font: font(11, true, false, "1F3A5F"), Border: grid, Alignment: wrap}),
	}
}

// numberFormat keeps fractions of an inch from being turned into dates: typed
// into a general cell, 1/4 becomes the first of April.
func (s *starter) numberFormat() *string {
	format := "General"
	if s.us {
		format = "@"
	}
	return &format
}

func (s *starter) newStyle(style excelize.Style) int {
	id, err := s.file.NewStyle(&style)
	s.try(err)
	return id
}

func starterBorder(sides ...string) []excelize.Border {
	var out []excelize.Border
	for _, side := range sides {
		out = append(out, excelize.Border{Type: side, Color: "9AA5B1", Style: 1})
	}
	return out
}

// body formats the empty rows and freezes what must stay in sight.
func (s *starter) body() {
	for i, c := range s.columns {
		style := s.styles.text
		if c.number() {
			style = s.styles.number
		}
		s.style(jointSheet, i+1, firstRow, i+1, lastRow, style)
		s.width(jointSheet, i+1, c.Width)
	}
	for row := firstRow; row <= lastRow; row++ {
		s.try(s.file.SetRowHeight(jointSheet, row, 19))
	}
	s.try(s.file.SetPanes(jointSheet, &excelize.Panes{
		Freeze: true, XSplit: 1, YSplit: unitsRow, TopLeftCell: "B9", ActivePane: "bottomRight",
		Selection: []excelize.Selection{{SQRef: "B9", ActiveCell: "B9", Pane: "bottomRight"}},
	}))
}

func (s *starter) width(sheet string, col int, width float64) {
	name, err := excelize.ColumnNumberToName(col)
	s.try(err)
	s.try(s.file.SetColWidth(sheet, name, name, width))
}

// help writes the sheet that explains the columns.
func (s *starter) help(title, hint string) {
	s.set(helpSheet, 1, 1, title, s.styles.title)
	s.set(helpSheet, 1, 2, hint, s.styles.hint)
	for i, head := range []string{"Heading", "What to write", "For example", "If it stays empty"} {
		s.set(helpSheet, i+1, 4, head, s.styles.helpHead)
	}
	for i, c := range s.columns {
		example, row := c.Metric, 5+i
		if s.us {
			example = c.US
		}
		name := c.Header
		if u := c.unit(s.us); u != "" && u != "pcs" {
			name += " (" + u + ")"
		}
		s.set(helpSheet, 1, row, name, s.styles.helpName)
		s.set(helpSheet, 2, row, c.What, s.styles.helpCell)
		s.set(helpSheet, 3, row, example, s.styles.helpCell)
		s.set(helpSheet, 4, row, c.IfEmpty, s.styles.helpCell)
		s.try(s.file.SetRowHeight(helpSheet, row, helpHeight(c)))
	}
	for i, width := range []float64{17, 66, 20, 42} {
		s.width(helpSheet, i+1, width)
	}
	s.try(s.file.SetPanes(helpSheet, &excelize.Panes{Freeze: true, YSplit: 4, TopLeftCell: "A5", ActivePane: "bottomLeft"}))
}

// helpHeight gives a row the lines its longest cell wraps to: the format does
// not let a program leave the height of wrapped rows to every reader.
func helpHeight(c starterColumn) float64 {
	lines := max(1, (len(c.What)+61)/62, (len(c.IfEmpty)+37)/38)
	return 3 + 15*float64(lines)
}

// pages sets up printing: landscape, one page wide, headings on every page.
func (s *starter) pages() {
	size := 9 // A4
	if s.us {
		size = 1 // Letter
	}
	last, err := excelize.CoordinatesToCellName(len(s.columns), firstRow+45, true)
	s.try(err)
	s.page(jointSheet, size, 0, fmt.Sprintf("$%d:$%d", headerRow, unitsRow), "$A$1:"+last)
	s.page(helpSheet, size, 1, "$4:$4", fmt.Sprintf("$A$1:$D$%d", 4+len(s.columns)))
	s.file.SetActiveSheet(0)
}

func (s *starter) page(sheet string, size, tall int, titles, area string) {
	landscape, wide, fit := "landscape", 1, true
	s.try(s.file.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &landscape, Size: &size, FitToWidth: &wide, FitToHeight: &tall}))
	s.try(s.file.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	edge, foot := 0.4, 0.6
	s.try(s.file.SetPageMargins(sheet, &excelize.PageLayoutMarginsOptions{Left: &edge, Right: &edge, Top: &edge, Bottom: &foot}))
	s.try(s.file.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{OddFooter: "&L&A&RPage &P of &N"}))
	s.try(s.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: sheet + "!" + titles, Scope: sheet}))
	s.try(s.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: sheet + "!" + area, Scope: sheet}))
}
