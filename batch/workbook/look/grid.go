package look

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"seamtally/batch/workbook/pack"
)

// Grid is one sheet of our own, filled cell by cell and written at the end.
type Grid struct {
	Name    string
	Widths  []float64 // of the columns from A on
	Freeze  int       // rows to freeze
	Titles  int       // the row repeated on every printed page
	Names   int       // columns that name a row, repeated where Split sets others on a page of their own
	Split   int       // the first column of a second printed page; 0: all on one
	Last    int       // the last row of that page
	book    *Book
	rows    [][]cell
	lines   map[int]int     // lines that wrapped text needs in a row
	wraps   map[wrapped]int // lines of texts that were counted
	heights map[int]float64
	maxCol  int
	blocks  []block
	starts  []int // rows that begin a block with a heading
	merged  [][2]string
}

// block is a run of rows that are filled only while they are written, so that a
// long list need not stand in memory.
type block struct {
	from, to int
	fill     func(row int)
}

type cell struct {
	col     string
	at      int
	style   int
	formula *pack.Formula
	num     float64
	text    string
	isNum   bool
}

// NewGrid starts a sheet.
func NewGrid(b *Book, name string) *Grid {
	return &Grid{Name: name, book: b, lines: map[int]int{}, wraps: map[wrapped]int{}, heights: map[int]float64{}}
}

// Rows returns how many rows are in use.
func (g *Grid) Rows() int { return len(g.rows) }

// Later leaves room for rows that fill writes, one at a time, when the sheet is
// written. Every style that they need must have been asked for by then.
func (g *Grid) Later(from, rows, columns int, fill func(row int)) {
	if rows > 0 {
		g.grow(from + rows - 1)
		g.maxCol = max(g.maxCol, columns)
		g.blocks = append(g.blocks, block{from, from + rows - 1, fill})
	}
}

func (g *Grid) grow(rows int) {
	if rows > len(g.rows) {
		g.rows = append(g.rows, make([][]cell, rows-len(g.rows))...)
	}
}

func (g *Grid) put(row, col int, c cell) {
	g.grow(row)
	c.at, c.col = col, pack.ColumnName(col)
	g.maxCol = max(g.maxCol, col)
	g.rows[row-1] = append(g.rows[row-1], c)
}

// Text puts a text; cells of a row must come from left to right. Behind the first
// column words keep a little off the figures to their left.
func (g *Grid) Text(row, col int, role Role, s string) {
	switch role {
	case Title:
		g.heights[row] = 26 * g.book.size / usualSize
	case Wrap, Quiet, EditText:
		g.need(row, col, col, s)
	}
	g.put(row, col, cell{style: g.book.Style(at(col, role), TextFormat(s)), text: s})
}

// at is a role in a column: words behind the first keep off what stands before them.
func at(col int, role Role) Role {
	if col > 1 {
		return Off(role)
	}
	return role
}

// mostJoined is how many runs of cells of a sheet are joined. The library that frames
// the sheets compares each with all others: 10,000 take half a minute.
const mostJoined = 500

// Over puts a text that is wrapped over several columns, joined into one cell. Behind
// the first few hundred of a sheet a text runs on in one line instead.
func (g *Grid) Over(row, from, to int, role Role, s string) {
	if len(g.merged) >= mostJoined {
		g.Text(row, from, Plain, s)
		return
	}
	g.need(row, from, to, s)
	g.put(row, from, cell{style: g.book.Style(at(from, role), TextFormat(s)), text: s})
	for col := from + 1; col <= to; col++ {
		g.Blank(row, col, at(from, role))
	}
	line := strconv.Itoa(row)
	g.merged = append(g.merged, [2]string{pack.ColumnName(from) + line, pack.ColumnName(to) + line})
}

// Merged returns the first and the last cell of each run of joined cells.
func (g *Grid) Merged() [][2]string { return g.merged }

// TextFormat keeps a text a text when somebody edits its cell. A long text goes
// without: some programs show hash signs for a long cell formatted as text.
func TextFormat(s string) string {
	if len(s) > 200 && utf8.RuneCountInString(s) > 200 {
		return ""
	}
	return "@"
}

// need makes a row tall enough for a text that is wrapped over columns. Programs that
// fit rows by themselves are free to do better: the height is a proposal.
func (g *Grid) need(row, from, to int, s string) {
	width := 0.0
	for col := from; col <= to; col++ {
		if col > len(g.Widths) {
			width += 9
			continue
		}
		width += g.Widths[col-1]
	}
	g.lines[row] = max(g.lines[row], min(g.linesIn(s, width-2), 25))
}

// linesIn is how many lines a text of several takes. A sheet of checks says the
// same of many rows: what was counted is remembered.
func (g *Grid) linesIn(s string, room float64) int {
	key := wrapped{s, room}
	if known, ok := g.wraps[key]; ok {
		return known
	}
	lines := 0
	for line := range strings.SplitSeq(s, "\n") {
		lines += linesOf(line, room)
	}
	if len(g.wraps) < mostWraps {
		g.wraps[key] = lines
	}
	return lines
}

type wrapped struct {
	text string
	room float64
}

// mostWraps is how many texts are remembered.
const mostWraps = 4096

// height is the height of a row in points. It is stated for lines of the usual height
// too, so that all programs count the same rows to a page and beside a chart.
func (g *Grid) height(row int) float64 {
	if h := g.heights[row]; h > 0 {
		return h
	}
	if n := g.lines[row]; n > 1 {
		return (float64(n)*14.4 + 2) * g.book.size / usualSize
	}
	if len(g.blocks) > 0 {
		return 0 // a long list does without
	}
	return math.Round(15*g.book.size/usualSize*4) / 4
}

// Section puts the heading of a block, underlined over the block's width.
func (g *Grid) Section(row, width int, s string) {
	g.heights[row] = 22 * g.book.size / usualSize
	g.starts = append(g.starts, row)
	g.Text(row, 1, Section, s)
	for col := 2; col <= width; col++ {
		g.Blank(row, col, Section)
	}
}

// Words puts a text that follows from a formula.
func (g *Grid) Words(row, col int, role Role, formula, s string) {
	g.put(row, col, cell{style: g.book.Style(at(col, role), ""), text: s, formula: formulaOf(formula)})
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

func formulaOf(text string) *pack.Formula {
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
	next := 1
	for _, b := range g.blocks {
		g.drawRows(p, next, b.from-1)
		for row := b.from; row <= b.to; row++ {
			b.fill(row)
			g.drawRows(p, row, row)
			g.rows[row-1] = g.rows[row-1][:0]
			if row < b.to {
				g.rows[row], g.rows[row-1] = g.rows[row-1], nil // the next row uses the same memory
			}
			delete(g.lines, row)
		}
		next = b.to + 1
	}
	g.drawRows(p, next, len(g.rows))
	p.EndRow()
}

func (g *Grid) drawRows(p *pack.Pen, from, to int) {
	for n := from; n <= to; n++ {
		if len(g.rows[n-1]) == 0 {
			continue
		}
		p.StartRow(n, g.height(n))
		for _, c := range g.rows[n-1] {
			if c.isNum {
				p.Number(c.col, c.style, c.formula, c.num)
			} else {
				p.Text(c.col, c.style, c.formula, c.text)
			}
		}
	}
}

// TextsOf returns the texts of a column, for a chart.
func (g *Grid) TextsOf(col string, from, to int) []string {
	var out []string
	g.column(col, from, to, func(c cell) { out = append(out, c.text) })
	return out
}

// NumbersOf returns the figures of a column, for a chart.
func (g *Grid) NumbersOf(col string, from, to int) []float64 {
	var out []float64
	g.column(col, from, to, func(c cell) { out = append(out, c.num) })
	return out
}

func (g *Grid) column(col string, from, to int, f func(cell)) {
	for row := from; row <= to && row <= len(g.rows); row++ {
		for _, c := range g.rows[row-1] {
			if c.col == col {
				f(c)
			}
		}
	}
}
