package list

import (
	"sort"
	"strconv"

	"seamtally/batch/finding"
)

// maxMerges caps the merged ranges of a sheet.
const maxMerges = 20000

// sheetReader reads one worksheet part from its start to its end.
type sheetReader struct {
	*bookReader
	*scanner
	sheet    Sheet
	last     int    // number of the row before
	texts    []byte // texts of the row's cells, one after the other
	spans    []span // where each cell's text stands in texts
	filled   []Cell // cells of the row, until it is kept
	value    []byte
	inline   string
	unsorted bool // rows came out of order
	words    words
	slab     slab
}

// span says where a cell's text is: in the row's own bytes, or a shared string.
type span struct {
	from, to int
	shared   string
}

func (b *bookReader) readSheet(ref sheetRef) (Sheet, error) {
	s, closer, err := b.pkg.scan(ref.part)
	if err != nil {
		return Sheet{}, inSheet(err, ref.name)
	}
	defer closer.Close()
	r := sheetReader{bookReader: b, scanner: s, words: words{}, sheet: Sheet{Name: ref.name, Hidden: ref.hidden}}
	if err := r.read(); err != nil {
		return Sheet{}, inSheet(err, ref.name)
	}
	if r.unsorted {
		if err := sortRows(&r.sheet); err != nil {
			return Sheet{}, inSheet(err, ref.name)
		}
	}
	r.sheet.Tables, err = b.tableNames(ref.part)
	return r.sheet, err
}

func inSheet(err error, name string) error {
	r, ok := err.(*Refusal)
	if !ok {
		r = readFault(err).(*Refusal)
	}
	r.Text += " (sheet " + strconv.Quote(name) + ")"
	return r
}

func (r *sheetReader) read() error {
	root := false
	for {
		tok, err := r.next()
		if err != nil {
			return err
		}
		if tok == tokEOF {
			if !root {
				return r.fault("there is nothing")
			}
			return nil
		}
		if tok != tokStart {
			continue
		}
		root = true
		switch string(r.name) {
		case "row":
			err = r.row()
		case "mergeCell":
			err = r.merge()
		case "col":
			r.column()
		}
		if err != nil {
			return err
		}
	}
}

// column notes hidden columns.
func (r *sheetReader) column() {
	if !truth(r.attr("hidden")) {
		return
	}
	first, err1 := strconv.Atoi(string(r.attr("min")))
	last, err2 := strconv.Atoi(string(r.attr("max")))
	if err1 == nil && err2 == nil && first >= 1 && last >= first {
		r.sheet.HiddenCols = append(r.sheet.HiddenCols, [2]int{first, min(last, maxCols)})
	}
}

func (r *sheetReader) row() error {
	number := r.last + 1
	if raw := r.attr("r"); raw != nil {
		n, err := strconv.Atoi(string(raw))
		if err != nil || n < 1 {
			return damaged("a row is numbered %q", raw)
		}
		number = n
	}
	if number > maxRows {
		return refuse("split the list", "the sheet has more than %d rows", maxRows)
	}
	r.unsorted = r.unsorted || number <= r.last
	r.last = number
	row := Row{Number: number, Hidden: truth(r.attr("hidden"))}
	r.texts, r.spans, r.filled = r.texts[:0], r.spans[:0], r.filled[:0]
	depth, col, ordered := r.depth(), 0, true
	for {
		if t, ok := r.tidyCell(number); ok && t.col > col {
			col = t.col
			if err := r.take(t); err != nil {
				return err
			}
			continue
		}
		tok, err := r.next()
		if err != nil {
			return err
		}
		if tok == tokEnd && r.depth() < depth {
			break
		}
		if tok != tokStart || string(r.name) != "c" {
			continue
		}
		before := col
		if col, err = r.cellColumn(number, col); err != nil {
			return err
		}
		ordered = ordered && col > before
		cell, err := r.cell(col)
		if err != nil {
			return err
		}
		if cell.Kind != Blank {
			r.filled = append(r.filled, cell)
		}
	}
	if len(r.filled) == 0 {
		return nil
	}
	row.Cells = r.slab.copy(r.filled)
	return r.keep(row, ordered)
}

// keep gives the row's cells their texts and adds the row.
func (r *sheetReader) keep(row Row, ordered bool) error {
	own := string(r.texts)
	for i := range row.Cells {
		if s := r.spans[i]; s.to > s.from {
			row.Cells[i].Text = own[s.from:s.to]
		} else {
			row.Cells[i].Text = s.shared
		}
	}
	if !ordered {
		sort.SliceStable(row.Cells, func(i, j int) bool { return row.Cells[i].Col < row.Cells[j].Col })
		for i := 1; i < len(row.Cells); i++ {
			if row.Cells[i].Col == row.Cells[i-1].Col {
				return damaged("cell %s%d stands in it twice", finding.ColumnName(row.Cells[i].Col), row.Number)
			}
		}
	}
	r.cells += len(row.Cells)
	if r.cells > maxCells {
		return refuse("save the list alone in a new workbook, or split it", "the workbook has more than %d filled cells", maxCells)
	}
	r.sheet.Rows = append(r.sheet.Rows, row)
	return nil
}

// cellColumn reads the column of the cell's address; without one it is the next.
func (r *sheetReader) cellColumn(row, before int) (int, error) {
	ref := r.attr("r")
	if ref == nil {
		return before + 1, nil
	}
	col, at, ok := parseRef(ref)
	if !ok || at != row {
		return 0, damaged("row %d has a cell with the address %q", row, ref)
	}
	if col > maxCols {
		return 0, refuse("save the list alone in a new workbook", "the sheet has more than %d columns", maxCols)
	}
	return col, nil
}

// parseRef reads an address such as "C14".
func parseRef(ref []byte) (col, row int, ok bool) {
	i := 0
	for ; i < len(ref) && i < 4; i++ {
		c := ref[i] &^ 0x20
		if c < 'A' || c > 'Z' {
			break
		}
		col = col*26 + int(c-'A') + 1
	}
	for j := i; j < len(ref); j++ {
		if !digit(ref[j]) || row > maxRows {
			return 0, 0, false
		}
		row = row*10 + int(ref[j]-'0')
	}
	return col, row, col > 0 && row > 0
}

func (r *sheetReader) merge() error {
	first, second, found := cutByte(r.attr("ref"), ':')
	if !found {
		return nil
	}
	c1, r1, ok1 := parseRef(first)
	c2, r2, ok2 := parseRef(second)
	if !ok1 || !ok2 || c2 > maxCols || r2 > maxRows || c1 > c2 || r1 > r2 {
		return damaged("a merged range is written %q", r.attr("ref"))
	}
	if len(r.sheet.Merges) >= maxMerges {
		return refuse("save the list alone in a new workbook", "the sheet has more than %d merged ranges", maxMerges)
	}
	r.sheet.Merges = append(r.sheet.Merges, Merge{FirstRow: r1, FirstCol: c1, LastRow: r2, LastCol: c2})
	return nil
}

func cutByte(b []byte, sep byte) (before, after []byte, found bool) {
	for i, c := range b {
		if c == sep {
			return b[:i], b[i+1:], true
		}
	}
	return b, nil, false
}

// sortRows puts rows in order and joins the pieces of a row that came in several.
func sortRows(sheet *Sheet) error {
	rows := sheet.Rows
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].Number < rows[j].Number })
	out := rows[:0]
	for _, row := range rows {
		if n := len(out); n > 0 && out[n-1].Number == row.Number {
			return damaged("row %d stands in it twice", row.Number)
		}
		out = append(out, row)
	}
	sheet.Rows = out
	return nil
}

// tableNames reads the names of the list objects on a sheet.
func (b *bookReader) tableNames(part string) ([]string, error) {
	links, err := b.pkg.readLinks(relsOf(part), part)
	if err != nil {
		return nil, err
	}
	var names []string
	for _, l := range links {
		if l.kind != "table" || b.pkg.parts[partName(l.target)] == nil {
			continue
		}
		s, closer, err := b.pkg.scan(l.target)
		if err != nil {
			return nil, err
		}
		if tok, err := s.next(); err == nil && tok == tokStart {
			if name, err := s.attrText("displayName"); err == nil && name != "" {
				names = append(names, name)
			}
		}
		closer.Close()
	}
	sort.Strings(names)
	return names, nil
}
