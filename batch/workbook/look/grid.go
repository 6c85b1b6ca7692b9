package look

import (
	"strconv"

	"seamtally/batch/workbook/pack"
)

// Grid is one sheet of our own, filled cell by cell and written at the end.
type Grid struct {
	Name    string
	Widths  []float64 // of the columns from A on
	Freeze  int       // rows to freeze
	Titles  int       // the row repeated on every printed page
	Heights map[int]float64
	book    *Book
	rows    [][]cell
	maxCol  int
}

type cell struct {
	col     string
	at      int
	style   int
	formula pack.Formula
	num     float64
	text    string
	isNum   bool
}

// NewGrid starts a sheet.
func NewGrid(b *Book, name string) *Grid {
	return &Grid{Name: name, book: b, Heights: map[int]float64{}}
}

// Rows returns how many rows are in use.
func (g *Grid) Rows() int { return len(g.rows) }

func (g *Grid) put(row, col int, c cell) {
	for len(g.rows) < row {
		g.rows = append(g.rows, nil)
	}
	c.at, c.col = col, pack.ColumnName(col)
	g.maxCol = max(g.maxCol, col)
	g.rows[row-1] = append(g.rows[row-1], c)
}

// Text puts a text; cells of a row must come from left to right.
func (g *Grid) Text(row, col int, role Role, s string) {
	g.put(row, col, cell{style: g.book.Style(role, "@"), text: s})
}

// Words puts a text that follows from a formula.
func (g *Grid) Words(row, col int, role Role, formula, s string) {
	g.put(row, col, cell{style: g.book.Style(role, ""), text: s, formula: formulaOf(formula)})
}

// Number puts a number, with its formula where there is one.
func (g *Grid) Number(row, col int, role Role, format, formula string, v float64) {
	g.put(row, col, cell{style: g.book.Style(role, format), num: v, isNum: true, formula: formulaOf(formula)})
}

// Blank puts a cell that only has a look.
func (g *Grid) Blank(row, col int, role Role) {
	g.put(row, col, cell{style: g.book.Style(role, "")})
}

// Line puts texts side by side, from column 1 on.
func (g *Grid) Line(row int, role Role, texts ...string) {
	for i, s := range texts {
		g.Text(row, i+1, role, s)
	}
}

func formulaOf(text string) pack.Formula {
	if text == "" {
		return nil
	}
	return pack.NewFormula(text)
}

// Sheet returns the sheet for packing.
func (g *Grid) Sheet() pack.Sheet {
	size := "A1"
	if len(g.rows) > 0 && g.maxCol > 0 {
		size = "A1:" + pack.ColumnName(g.maxCol) + strconv.Itoa(len(g.rows))
	}
	return pack.Sheet{Name: g.Name, Draw: g.draw, Size: size}
}

func (g *Grid) draw(p *pack.Pen) {
	for i, row := range g.rows {
		if len(row) == 0 {
			continue
		}
		p.StartRow(i+1, g.Heights[i+1])
		for _, c := range row {
			if c.isNum {
				p.Number(c.col, c.style, c.formula, c.num)
			} else {
				p.Text(c.col, c.style, c.formula, c.text)
			}
		}
	}
	p.EndRow()
}
