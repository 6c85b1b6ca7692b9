package pack

import (
	"bytes"
	"encoding/xml"
	"io"
	"strconv"
	"strings"
)

// Shape is what one look over the user's sheet told.
type Shape struct {
	LastCol  int  // rightmost column that holds a cell, a merge, a table or a picture
	LastRow  int  // last row with an element of its own
	Ordered  bool // rows ascend
	Numbered bool // every row element carries its number
	Filtered bool // the sheet has a filter of its own
	Guarded  bool // the sheet is protected
	Printed  bool // the sheet has a page set-up of its own

	lastShared int // highest number of a formula that the user's cells share; -1 for none

	rows   map[int]bool // rows that exist, only those up to lowRows
	prefix string       // of the sheet's elements, colon included
	head   []byte       // up to and with the start tag of sheetData
	tail   []byte       // from the end tag of sheetData
}

// lowRows is how far down the existence of rows is remembered: titles and headers
// stand at the top.
const lowRows = 2000

// HasRow tells whether a row near the top of the sheet has an element of its own.
func (s *Shape) HasRow(n int) bool { return s.rows[n] }

// farCol is beyond what a person lays out on purpose: a merge that reaches
// further is a banner over whole rows.
const farCol = 1000

// measure reads the sheet once from end to end.
func (l *Leaf) measure() (Shape, error) {
	s := Shape{Ordered: true, Numbered: true, lastShared: -1, rows: map[int]bool{}}
	err := l.walk(&s, func(row rowPiece) {
		s.lastShared = max(s.lastShared, row.lastShared())
		s.LastRow = max(s.LastRow, row.number)
		s.LastCol = max(s.LastCol, row.lastCol())
		s.Numbered = s.Numbered && row.numbered
		if row.number <= lowRows {
			s.rows[row.number] = true
		}
	})
	if err != nil {
		return s, strange("the sheet cannot be added to: %s", plainly(err))
	}
	return s, l.measureRest(&s)
}

// walk streams the sheet: head, each row, tail. It fills head, tail and prefix of s.
func (l *Leaf) walk(s *Shape, each func(rowPiece)) error {
	r, err := l.file.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	w := newWindow(r)
	if err := readHead(w, s); err != nil {
		return err
	}
	last := 0
	for {
		row, err := nextRow(w, s.prefix, last)
		if err != nil {
			return err
		}
		if row.text == nil {
			s.tail = row.gap
			break
		}
		s.Ordered = s.Ordered && row.number > last
		last = row.number
		each(row)
	}
	rest, err := restOf(w)
	s.tail = append(s.tail, rest...)
	return err
}

// readHead takes everything up to and with the start tag of sheetData.
func readHead(w *window, s *Shape) error {
	for i := 0; ; {
		m, err := w.markupFrom(i)
		if err != nil {
			return err
		}
		i = m.to
		prefix, name := splitName(m.name)
		if name != "sheetData" {
			continue
		}
		if m.kind != 's' {
			return strange("the sheet has no rows")
		}
		s.prefix = prefix
		s.head = bytes.Clone(w.take(m.to))
		return checkHead(s.head)
	}
}

func checkHead(head []byte) error {
	switch {
	case bytes.Contains(head, []byte(strictNS)):
		return strange("the sheet is of the strict variant of the format")
	case !bytes.Contains(head, []byte(mainNS)):
		return strange("the sheet does not use the spreadsheet namespace")
	}
	if i := bytes.Index(head, []byte("?>")); bytes.HasPrefix(head, []byte("<?xml")) && i > 0 {
		code := strings.ToLower(string(attrText(append([]byte("<?xml "), head[5:i+2]...), "encoding")))
		if code != "" && code != "utf-8" && code != "us-ascii" && code != "ascii" {
			return strange("it is written in %s", code)
		}
	}
	return nil
}

func splitName(name []byte) (prefix, local string) {
	if i := bytes.IndexByte(name, ':'); i >= 0 {
		return string(name[:i+1]), string(name[i+1:])
	}
	return "", string(name)
}

func restOf(w *window) ([]byte, error) {
	rest := bytes.Clone(w.take(w.z - w.a))
	if w.eof {
		return rest, nil
	}
	more, err := io.ReadAll(io.LimitReader(w.r, maxPiece))
	return append(rest, more...), err
}

// rowPiece is one row element as it stands in the file.
type rowPiece struct {
	gap      []byte // what stands between the row before and this one
	text     []byte // the whole element; nil at the end of the rows
	tagEnd   int    // the start tag is text[:tagEnd]
	closed   bool   // a self-closed element
	number   int
	numbered bool
	prefix   string
}

// nextRow takes the next row element; its text is nil where sheetData ends.
func nextRow(w *window, prefix string, last int) (rowPiece, error) {
	from := 0
	m, err := w.markupFrom(0)
	for err == nil && m.kind == 'x' {
		m, err = w.markupFrom(m.to)
	}
	if err != nil {
		return rowPiece{}, err
	}
	from = m.from
	if string(m.name) == prefix+"sheetData" && m.kind == 'e' {
		return rowPiece{gap: bytes.Clone(w.take(from))}, nil
	}
	if string(m.name) != prefix+"row" || m.kind == 'e' {
		return rowPiece{}, strange("%q stands where a row was expected", m.name)
	}
	end := m.to
	if m.kind == 's' {
		if end, err = rowEnd(w, m.to, prefix); err != nil {
			return rowPiece{}, err
		}
	}
	tagEnd := m.to - from
	piece := w.take(end)
	row := rowPiece{gap: piece[:from], text: piece[from:], tagEnd: tagEnd, closed: m.kind == 'o', prefix: prefix}
	return row, row.readNumber(last)
}

func rowEnd(w *window, from int, prefix string) (int, error) {
	mark := "</" + prefix + "row"
	end, err := w.indexFrom(from, mark)
	if err != nil {
		return 0, err
	}
	if bytes.Contains(w.buf[w.a+from:w.a+end], []byte("<!")) {
		if end, err = slowRowEnd(w, from, prefix+"row"); err != nil {
			return 0, err
		}
	}
	return w.endOf(end, ">")
}

// slowRowEnd finds the end tag where comments or CDATA could hide a false one.
func slowRowEnd(w *window, from int, name string) (int, error) {
	for {
		m, err := w.markupFrom(from)
		if err != nil {
			return 0, err
		}
		if m.kind == 'e' && string(m.name) == name {
			return m.from, nil
		}
		from = m.to
	}
}

func (r *rowPiece) readNumber(last int) error {
	text := attrText(r.text[:r.tagEnd], "r")
	if text == nil {
		r.number = last + 1
		return nil
	}
	n, err := strconv.Atoi(string(text))
	if err != nil || n < 1 || n > MaxRow {
		return strange("a row has the number %q", text)
	}
	r.number, r.numbered = n, true
	return nil
}

// lastCol returns the rightmost column with a cell element.
func (r *rowPiece) lastCol() int {
	last, col := 0, 0
	open := []byte("<" + r.prefix + "c")
	for text := r.text[r.tagEnd:]; ; {
		i := bytes.Index(text, open)
		if i < 0 {
			return last
		}
		tag := text[i:]
		text = tag[len(open):]
		if len(text) == 0 || (text[0] > ' ' && text[0] != '>' && text[0] != '/') {
			continue
		}
		end := bytes.IndexByte(tag, '>')
		if end < 0 {
			return last
		}
		col++
		if c, _, ok := cellRef(attrText(tag[:end+1], "r")); ok {
			col = c
		}
		last = max(last, col)
	}
}

// lastShared returns the highest number of a shared formula in the row; -1 where
// there is none.
func (r *rowPiece) lastShared() int {
	last := -1
	for text := r.text; ; {
		i := bytes.Index(text, []byte("si="))
		if i < 0 || len(text) < i+4 {
			return last
		}
		text = text[i+4:]
		end := bytes.IndexAny(text, "\"'")
		if n, err := strconv.Atoi(string(text[:max(end, 0)])); err == nil && n < 1<<30 {
			last = max(last, n)
		}
	}
}

// piece is one element on the level below the root of a sheet.
type piece struct {
	prefix, name     string
	attrs            []xml.Attr
	start, open, end int
}

func (p *piece) attr(name string) string {
	n := node{attrs: p.attrs}
	return n.attr(name)
}

// pieces lists the elements below the root in the head (depth 0) or in the tail
// (depth 2: it begins inside sheetData).
func pieces(data []byte, depth int) ([]piece, error) {
	dec := xml.NewDecoder(bytes.NewReader(data))
	var out []piece
	tail := depth == 2
	for {
		start := int(dec.InputOffset())
		tok, err := dec.RawToken()
		if err == io.EOF && (tail && depth != 0 || !tail && depth != 2) {
			return nil, errNested // before the rows sheet and rows are open, behind them neither
		}
		if err == io.EOF {
			return out, nil
		}
		if err != nil {
			return nil, err
		}
		switch t := tok.(type) {
		case xml.StartElement:
			if depth == 1 {
				p := piece{prefix: t.Name.Space, name: t.Name.Local, start: start, open: int(dec.InputOffset())}
				p.attrs = append(p.attrs, t.Attr...)
				out = append(out, p)
			}
			depth++
		case xml.EndElement:
			depth--
			if depth == 1 && len(out) > 0 {
				out[len(out)-1].end = int(dec.InputOffset())
			}
		}
	}
}
