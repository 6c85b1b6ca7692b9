package templates

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/gocarina/gocsv"
	"github.com/xuri/excelize/v2"

	"seamtally/tables"
)

//go:embed procedure_columns.csv
var procedureColumns []byte

// Sheets of the shop workbook, besides that of choices.
const (
	valueSheet     = "Shop"
	procedureSheet = "Procedures"
)

// Rows of the sheet of procedures.
const (
	procedureHead  = 5
	procedureUnits = 6
	procedureFirst = 7
	procedureLast  = 106
)

// ShopBook returns a shop file to fill in, as XLSX: every value of ShopFile on one
// sheet, an empty sheet of procedures on another, and what to write in its columns
// on a third. Read back unchanged it states nothing and binds nothing.
func ShopBook(set *tables.Set, us bool) ([]byte, error) {
	text, err := ShopFile(set, us)
	if err != nil {
		return nil, err
	}
	records, err := records(text)
	if err != nil {
		return nil, fmt.Errorf("shop file: %w", err)
	}
	s := &starter{file: excelize.NewFile(), us: us, choices: map[string]string{}}
	defer s.file.Close()
	if err := gocsv.UnmarshalCSV(csv.NewReader(bytes.NewReader(procedureColumns)), &s.columns); err != nil {
		return nil, fmt.Errorf("procedure_columns.csv: %w", err)
	}
	if us {
		s.arcEnergy()
	}
	s.shopSheets()
	s.styles = s.newStyles()
	s.values(records)
	s.lists(procedureLists(set, us))
	s.procedures()
	s.help("What to write on the sheet Procedures", "Headings of your own, in any order, are understood too; a range may also stand in one column, as 220-260. Units in a cell, in the heading or in the row of units count.")
	s.width(helpSheet, 1, 24) // a heading with its unit on one line
	s.shopPages(len(records))
	if s.err != nil {
		return nil, fmt.Errorf("shop file: %w", s.err)
	}
	var out bytes.Buffer
	if err := s.file.Write(&out); err != nil {
		return nil, fmt.Errorf("shop file: %w", err)
	}
	return out.Bytes(), nil
}

// arcEnergy heads the columns of heat as what the AWS codes call heat input, which
// is without the thermal efficiency: under another heading it could be taken with it,
// and the limit would be a quarter too high.
func (s *starter) arcEnergy() {
	for i := range s.columns {
		c := &s.columns[i]
		switch c.Key {
		case "h_low":
			c.What = "Least arc energy, 60 x volts x amps / (1000 x in/min): what the AWS codes call heat input, without a thermal efficiency."
		case "h_high":
			c.What = "Largest arc energy, likewise."
		default:
			continue
		}
		c.Header, c.Width = strings.Replace(c.Header, "Heat", "Arc energy", 1), 11.5
	}
}

func records(text []byte) ([][]string, error) {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	r.FieldsPerRecord = -1
	return r.ReadAll()
}

func (s *starter) shopSheets() {
	s.try(s.file.SetSheetName("Sheet1", valueSheet))
	for _, name := range []string{procedureSheet, helpSheet, choiceSheet} {
		_, err := s.file.NewSheet(name)
		s.try(err)
	}
	s.try(s.file.SetSheetVisible(choiceSheet, false))
	stamp := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC).Format(time.RFC3339) // the file format wants some date
	s.try(s.file.SetDocProps(&excelize.DocProperties{
		Title: "Shop file", Creator: "seamtally", LastModifiedBy: "seamtally", Created: stamp, Modified: stamp, Language: "en",
	}))
}

// values writes the lines of the shop file: figures as numbers, so that a
// spreadsheet can check and sum them.
func (s *starter) values(records [][]string) {
	body := false
	for i, record := range records {
		row := i + 1
		switch {
		case record[0] == "key":
			for k, head := range record {
				s.set(valueSheet, k+1, row, head, s.styles.helpHead)
			}
			s.try(s.file.SetPanes(valueSheet, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: row, TopLeftCell: fmt.Sprintf("B%d", row+1), ActivePane: "bottomRight"}))
			body = true
		case len(record) == 1:
			style := s.styles.hint
			if body {
				style = s.styles.section
			}
			s.set(valueSheet, 1, row, record[0], style)
		default:
			s.valueRow(row, record)
		}
	}
	for i, width := range []float64{31, 30, 17, 9, 9, 17, 46, 62} {
		s.width(valueSheet, i+1, width)
	}
}

func (s *starter) valueRow(row int, record []string) {
	remark := strings.HasPrefix(record[0], "#")
	lines := 1
	for k, text := range record {
		style := s.styles.helpCell
		switch {
		case remark:
			style = s.styles.remark
		case k == 0:
			style = s.styles.helpName
		case k == 1:
			style = s.styles.edit
		}
		wide := []int{29, 28, 15, 8, 8, 15, 44, 60}[k]
		lines = max(lines, (len([]rune(text))+wide-1)/wide)
		if v, err := strconv.ParseFloat(text, 64); err == nil && (k == 1 || k == 3 || k == 4) {
			s.set(valueSheet, k+1, row, v, style)
			continue
		}
		s.set(valueSheet, k+1, row, text, style)
	}
	s.try(s.file.SetRowHeight(valueSheet, row, 4+15*float64(lines)))
}

// procedureLists are the words to pick from; other words are understood as well.
func procedureLists(set *tables.Set, us bool) []starterList {
	var wires, gases []string
	for _, w := range set.Wires {
		name := w.Filler
		if us && w.AWS != "" {
			name = w.AWS
		}
		if !slices.Contains(wires, name) {
			wires = append(wires, name)
		}
	}
	for _, g := range set.Gases {
		if g.Gas != "" && !slices.Contains(gases, g.Gas) {
			gases = append(gases, g.Gas)
		}
	}
	lists := []starterList{{"wire", wires}, {"gas", append(gases, "none")}}
	if us {
		return append(lists, starterList{"process", []string{"GMAW", "FCAW", "135", "136", "138", "131"}},
			starterList{"position", []string{"1F, 2F", "1F", "2F", "3F", "4F", "1G", "2G", "3G", "4G", "3F down", "all", "all except 3G down"}})
	}
	return append(lists, starterList{"process", []string{"135", "136", "138", "114", "131", "MAG", "MIG"}},
		starterList{"position", []string{"PA, PB", "PA", "PB", "PC", "PD", "PE", "PF", "PG", "all", "all except PG"}})
}

// procedures writes the empty sheet, with one example that binds nothing.
func (s *starter) procedures() {
	s.set(procedureSheet, 1, 1, "Procedures of the shop", s.styles.title)
	s.set(procedureSheet, 1, 2, "A joint that names one of these under WPS is planned inside its ranges or not at all. A blank cell is no limit. The sheet Help explains each column.", s.styles.hint)
	s.set(procedureSheet, 1, 3, "The row that begins with # is an invented example and binds nothing: write your own procedures below it. Copy them from your qualified procedures; nothing here qualifies one.", s.styles.hint)
	for i, c := range s.columns {
		style := s.styles.optional
		if c.Needed == "yes" {
			style = s.styles.needed
		}
		s.set(procedureSheet, i+1, procedureHead, c.Header, style)
		s.set(procedureSheet, i+1, procedureUnits, c.unit(s.us), s.styles.units)
		s.set(procedureSheet, i+1, procedureFirst, s.exampleCell(c), s.exampleStyle(c))
		cell := s.styles.text
		if c.ranged() {
			cell = s.styles.number
		}
		s.style(procedureSheet, i+1, procedureFirst+1, i+1, procedureLast, cell)
		s.width(procedureSheet, i+1, c.Width)
		s.procedureRule(i+1, c)
	}
	s.try(s.file.SetRowHeight(procedureSheet, 1, 26))
	s.try(s.file.SetRowHeight(procedureSheet, procedureHead, 33))
	for row := procedureFirst; row <= procedureLast; row++ {
		s.try(s.file.SetRowHeight(procedureSheet, row, 19))
	}
	s.try(s.file.SetPanes(procedureSheet, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: procedureUnits, TopLeftCell: "B7", ActivePane: "bottomRight",
		Selection: []excelize.Selection{{SQRef: "B8", ActiveCell: "B8", Pane: "bottomRight"}}}))
}

// ranged tells whether a column of procedures holds figures.
func (c starterColumn) ranged() bool { return c.UnitMetric != "" }

func (s *starter) exampleCell(c starterColumn) any {
	text := c.Metric
	if s.us {
		text = c.US
	}
	switch {
	case c.Key == "number":
		return "# EXAMPLE"
	case c.Key == "note":
		return "Invented; binds nothing"
	}
	if v, err := strconv.ParseFloat(text, 64); err == nil && c.ranged() {
		return v
	}
	return text
}

func (s *starter) exampleStyle(c starterColumn) int {
	if c.ranged() {
		return s.styles.exampleNumber
	}
	return s.styles.exampleText
}

// procedureRule hangs a drop-down and a short prompt on a column.
func (s *starter) procedureRule(col int, c starterColumn) {
	name, err := excelize.ColumnNumberToName(col)
	s.try(err)
	rule := excelize.NewDataValidation(true)
	rule.Sqref = fmt.Sprintf("%s%d:%s%d", name, procedureFirst+1, name, procedureLast)
	if s.choices[c.Choices] != "" {
		rule.SetSqrefDropList(s.choices[c.Choices])
		s.warn(rule, "Not in the list", "Pick from the list, or keep what you typed if you mean it: other spellings may be understood.")
	}
	rule.SetInput(c.Header, shorten(c.What, 250))
	s.try(s.file.AddDataValidation(procedureSheet, rule))
}

// shopPages sets up printing of the sheets.
func (s *starter) shopPages(values int) {
	size := 9 // A4
	if s.us {
		size = 1 // Letter
	}
	last, err := excelize.CoordinatesToCellName(len(s.columns), procedureFirst+30, true)
	s.try(err)
	s.page(valueSheet, size, 0, fmt.Sprintf("$%d:$%d", len(shopHead)+1, len(shopHead)+1), fmt.Sprintf("$A$1:$H$%d", values))
	s.page(procedureSheet, size, 0, fmt.Sprintf("$%d:$%d", procedureHead, procedureUnits), "$A$1:"+last)
	s.page(helpSheet, size, 1, "$4:$4", fmt.Sprintf("$A$1:$D$%d", 4+len(s.columns)))
	s.file.SetActiveSheet(0)
}
