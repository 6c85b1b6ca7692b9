package templates

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"time"

	"github.com/gocarina/gocsv"
	"github.com/xuri/excelize/v2"
)

//go:embed starter_columns.csv
var starterColumns []byte

// starterColumn is one column of the starter list and what its help says.
type starterColumn struct {
	Key        string  `csv:"key"`
	Header     string  `csv:"header"`
	UnitMetric string  `csv:"unit_metric"`
	UnitUS     string  `csv:"unit_us"`
	Width      float64 `csv:"width"`
	Needed     string  `csv:"needed"`  // "yes": one of the few that are enough
	Choices    string  `csv:"choices"` // name of the list to pick from
	What       string  `csv:"what"`
	Metric     string  `csv:"example_metric"`
	US         string  `csv:"example_us"`
	IfEmpty    string  `csv:"if_empty"`
}

func (c starterColumn) unit(us bool) string {
	if us {
		return c.UnitUS
	}
	return c.UnitMetric
}

// Sheets of the starter list.
const (
	jointSheet  = "Joints"
	helpSheet   = "Help"
	choiceSheet = "Choices"
)

// Rows of the joint sheet.
const (
	headerRow = 7
	unitsRow  = 8
	firstRow  = 9
	lastRow   = 308 // as far as drop-downs and formats reach
)

// starter is the workbook while it is being made. The first error stays in err
// and stops everything after it.
type starter struct {
	file    *excelize.File
	us      bool
	columns []starterColumn
	styles  starterStyles
	choices map[string]string // name of a list -> its range on the choice sheet
	err     error
}

// JointList returns a joint list to fill in, as XLSX: a sheet with the columns
// that are read, units, drop-downs and example rows, and a sheet that explains
// each column. With us the units row says inches and the page is Letter size.
// The date (YYYY-MM-DD, or empty for none) is printed at the top; the same
// arguments give the same bytes.
func JointList(us bool, date string) ([]byte, error) {
	columns, err := readStarterColumns()
	if err != nil {
		return nil, err
	}
	day, err := starterDate(date)
	if err != nil {
		return nil, err
	}
	s := &starter{file: excelize.NewFile(), us: us, columns: columns, choices: map[string]string{}}
	defer s.file.Close()
	s.sheets(day)
	s.styles = s.newStyles()
	s.lists(starterLists(us))
	s.head(day)
	s.body()
	s.examples()
	s.rules()
	s.help("What to write in each column", "Columns may stand in any order, under your own headings, in your own list: this sheet is only one way to begin.")
	s.pages()
	if s.err != nil {
		return nil, fmt.Errorf("starter list: %w", s.err)
	}
	var out bytes.Buffer
	if err := s.file.Write(&out); err != nil {
		return nil, fmt.Errorf("starter list: %w", err)
	}
	return out.Bytes(), nil
}

func readStarterColumns() ([]starterColumn, error) {
	var columns []starterColumn
	if err := gocsv.UnmarshalCSV(csv.NewReader(bytes.NewReader(starterColumns)), &columns); err != nil {
		return nil, fmt.Errorf("starter_columns.csv: %w", err)
	}
	return columns, nil
}

func starterDate(date string) (time.Time, error) {
	if date == "" {
		return time.Time{}, nil
	}
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return time.Time{}, errors.New("the date is written YYYY-MM-DD")
	}
	return day, nil
}

// sheets makes the three sheets and says whose file it is.
func (s *starter) sheets(day time.Time) {
	s.try(s.file.SetSheetName("Sheet1", jointSheet))
	for _, name := range []string{helpSheet, choiceSheet} {
		_, err := s.file.NewSheet(name)
		s.try(err)
	}
	s.try(s.file.SetSheetVisible(choiceSheet, false))
	if day.IsZero() {
		day = time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC) // the file format wants some date
	}
	stamp := day.Format(time.RFC3339)
	s.try(s.file.SetDocProps(&excelize.DocProperties{
		Title: "Joint list", Creator: "seamtally", LastModifiedBy: "seamtally",
		Created: stamp, Modified: stamp, Language: "en",
	}))
}

// head writes the title block, the headers and the row of units.
func (s *starter) head(day time.Time) {
	s.set(jointSheet, 1, 1, "Joint list", s.styles.title)
	s.set(jointSheet, 1, 2, "Job", s.styles.label)
	s.set(jointSheet, 1, 3, "Drawing, rev.", s.styles.label)
	s.set(jointSheet, 1, 4, "Date", s.styles.label)
	for row := 2; row <= 4; row++ {
		s.style(jointSheet, 3, row, 7, row, s.styles.fillIn)
	}
	if !day.IsZero() {
		s.set(jointSheet, 3, 4, day.Format(time.DateOnly), s.styles.fillIn)
	}
	s.set(jointSheet, 1, 5, "Dark columns are enough; the others may stay empty. Replace the example rows. The sheet Help explains each column.", s.styles.hint)
	for i, c := range s.columns {
		style := s.styles.optional
		if c.Needed == "yes" {
			style = s.styles.needed
		}
		s.set(jointSheet, i+1, headerRow, c.Header, style)
		s.set(jointSheet, i+1, unitsRow, c.unit(s.us), s.styles.units)
	}
	s.try(s.file.SetRowHeight(jointSheet, 1, 26))
	s.try(s.file.SetRowHeight(jointSheet, headerRow, 33))
	for row := 2; row <= 5; row++ {
		s.try(s.file.SetRowHeight(jointSheet, row, 18))
	}
}

// starterExamples are the example rows, by key. They show a weld of two sides, a
// stitch and a butt, which is what people ask about first.
func starterExamples(us bool) []map[string]any {
	if us {
		return []map[string]any{
			{"mark": "EXAMPLE-1", "assembly": "C1", "qty": 12, "kind": "fillet", "length": 6, "sides": 2, "size": `z1/4"`, "t1": `5/16"`, "t2": `1/2"`, "material": "A36", "position": "2F", "where": "shop", "note": "Example row: replace it"},
			{"mark": "EXAMPLE-2", "assembly": "C1", "qty": 2, "kind": "lap", "length": `2' 8"`, "sides": 1, "stitch": "2-6", "size": `z3/16"`, "t1": `1/4"`, "t2": `3/8"`, "material": "A36", "position": "2F", "where": "shop", "note": "Example row: replace it"},
			{"mark": "EXAMPLE-3", "assembly": "B1", "qty": 4, "kind": "single V", "length": 6, "t1": `3/8"`, "t2": `3/8"`, "angle": 60, "gap": `1/8"`, "root_face": `1/16"`, "backing": "ceramic", "material": "A36", "position": "3G", "where": "site", "quality": "C", "note": "Example row: replace it"},
		}
	}
	return []map[string]any{
		{"mark": "EXAMPLE-1", "assembly": "C1", "qty": 12, "kind": "fillet", "length": 160, "sides": 2, "size": "z6", "t1": 8, "t2": 12, "material": "S355", "position": "PB", "where": "shop", "note": "Example row: replace it"},
		{"mark": "EXAMPLE-2", "assembly": "C1", "qty": 2, "kind": "lap", "length": 850, "sides": 1, "stitch": "5x50(150)", "size": "z4", "t1": 6, "t2": 8, "material": "S355", "position": "PB", "where": "shop", "note": "Example row: replace it"},
		{"mark": "EXAMPLE-3", "assembly": "B1", "qty": 4, "kind": "single V", "length": 150, "t1": 10, "t2": 10, "angle": 60, "gap": 3, "root_face": 1.5, "backing": "ceramic", "material": "S355", "position": "PF", "where": "site", "quality": "C", "note": "Example row: replace it"},
	}
}

// examples fills the first rows; they are grey and italic so that nobody takes
// them for joints of the job.
func (s *starter) examples() {
	for i, example := range starterExamples(s.us) {
		for col, c := range s.columns {
			if value, ok := example[c.Key]; ok {
				s.set(jointSheet, col+1, firstRow+i, value, s.styles.exampleOf(c))
			}
		}
	}
}

// set writes one cell and its style.
func (s *starter) set(sheet string, col, row int, value any, style int) {
	if s.err != nil {
		return
	}
	cell, err := excelize.CoordinatesToCellName(col, row)
	s.try(err)
	if value != "" {
		s.try(s.file.SetCellValue(sheet, cell, value))
	}
	s.try(s.file.SetCellStyle(sheet, cell, cell, style))
}

// style sets the style of a range of cells.
func (s *starter) style(sheet string, col1, row1, col2, row2, style int) {
	from, err := excelize.CoordinatesToCellName(col1, row1)
	s.try(err)
	to, err := excelize.CoordinatesToCellName(col2, row2)
	s.try(err)
	s.try(s.file.SetCellStyle(sheet, from, to, style))
}

// try keeps the first error.
func (s *starter) try(err error) {
	if s.err == nil {
		s.err = err
	}
}
