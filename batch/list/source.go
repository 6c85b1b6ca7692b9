// Package list turns the bytes of a joint list into rows of cells, each with its
// place. It knows files and spreadsheets; it knows nothing about welds.
package list

// Format is what a file was found to be, whatever its name says.
type Format string

// The formats that are read.
const (
	XLSX Format = "xlsx"
	XLSM Format = "xlsm"
	CSV  Format = "csv"
)

// CellKind says what a cell held.
type CellKind uint8

// The kinds of cell.
const (
	Blank     CellKind = iota
	Text               // text, also every CSV cell
	Number             // a typed number
	Bool               // TRUE or FALSE
	Date               // a number shown as a date or time: never a size
	CellError          // #REF!, #N/A ..., or a number that is none, such as 1e309
	NoValue            // a formula without a stored result
)

// Cell is one cell as read. Text is what a person would read in it; Value is the
// typed number of a Number or Date cell.
type Cell struct {
	Col     int // 1-based
	Text    string
	Value   float64
	Kind    CellKind
	Formula bool // the cell holds a formula; Value or Text is its stored result
	Percent bool // the number format shows a percentage
}

// Row is one row that has at least one cell that is not blank.
type Row struct {
	Number int // 1-based, as the spreadsheet or an editor shows it (CSV: line where the record starts)
	Hidden bool
	Cells  []Cell // ascending by Col, blanks left out
	same   []Cell // of a thinned sheet: cells that other rows have too; see At
}

// At returns the cell in a 1-based column; a zero Cell if blank.
func (r Row) At(col int) Cell {
	for _, cells := range [...][]Cell{r.Cells, r.same} {
		for i := range cells {
			if c := &cells[i]; c.Col == col {
				return *c
			} else if c.Col > col {
				break
			}
		}
	}
	return Cell{Col: col}
}

// Merge is a merged range, all bounds 1-based and inclusive.
type Merge struct{ FirstRow, FirstCol, LastRow, LastCol int }

// Sheet is one worksheet, or the whole of a CSV file.
type Sheet struct {
	Name    string // empty for CSV
	Hidden  bool
	Thinned bool // see Thin
	Rows    []Row
	Merges  []Merge
	Tables  []string // names of list objects on the sheet, if any
	// HiddenCols are ranges of hidden columns, first and last, 1-based.
	HiddenCols [][2]int
}

// Source is a file that was read to its end.
type Source struct {
	File         string // the name as the user gave it
	SHA256       string // of the bytes, lower-case hex
	Format       Format
	Data         []byte // the bytes themselves, for annotation
	Encoding     string // "UTF-8", "UTF-16LE", "Windows-1251"...
	Delimiter    rune   // CSV only
	DecimalComma bool   // CSV only: the file writes 2,5 for two and a half
	Date1904     bool
	Sheets       []Sheet
}
