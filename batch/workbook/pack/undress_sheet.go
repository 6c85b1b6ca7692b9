package pack

import (
	"bytes"
	"strconv"
	"strings"
)

// row writes a row without the cells in our columns.
func (b *bare) row(out *bytes.Buffer, r rowPiece) {
	if r.closed {
		out.Write(r.text)
		return
	}
	out.Write(r.text[:r.tagEnd])
	w := window{buf: r.text, a: r.tagEnd, z: len(r.text), eof: true}
	col := 0
	for {
		m, err := w.markupFrom(0)
		if err != nil {
			out.Write(w.buf[w.a:w.z])
			return
		}
		if string(m.name) != r.prefix+"c" || m.kind == 'e' || m.kind == 'x' {
			out.Write(w.take(m.to))
			continue
		}
		out.Write(w.take(m.from))
		m.to -= m.from
		col++
		if c, _, ok := cellRef(attrText(w.buf[w.a:w.a+m.to], "r")); ok {
			col = c
		}
		end := m.to
		if m.kind == 's' {
			end = cellEnd(&w, m.to, r.prefix+"c")
		}
		cell := w.take(end)
		if col < b.First || col > b.Last {
			out.Write(cell)
		}
	}
}

// cellEnd returns where the cell ends whose start tag ended at from.
func cellEnd(w *window, from int, name string) int {
	for {
		m, err := w.markupFrom(from)
		if err != nil {
			return w.z - w.a
		}
		if m.kind == 'e' && string(m.name) == name {
			return m.to
		}
		from = m.to
	}
}

// head takes the widths of our columns away.
func (b *bare) head(head []byte) ([]byte, error) {
	list, err := pieces(head, 0)
	if err != nil {
		return nil, err
	}
	var edits []edit
	for _, p := range list {
		if p.name != "cols" {
			continue
		}
		cols, err := parse(head[p.start:p.end])
		if err != nil {
			return nil, err
		}
		shift(cols, p.start)
		kept := 0
		for _, c := range cols.kids {
			lo, _ := strconv.Atoi(c.attr("min"))
			if lo < b.First || lo > b.Last {
				kept++
				continue
			}
			edits = append(edits, edit{at: c.start, cut: c.end - c.start})
		}
		if kept == 0 {
			edits = []edit{{at: cols.start, cut: cols.end - cols.start}}
		}
	}
	return apply(head, edits), nil
}

// tail takes the conditional formats of our columns away.
func (b *bare) tail(tail []byte) ([]byte, error) {
	list, err := pieces(tail, 2)
	if err != nil {
		return nil, err
	}
	var edits []edit
	for _, p := range list {
		if p.name == "conditionalFormatting" && b.within(p.attr("sqref")) {
			edits = append(edits, edit{at: p.start, cut: p.end - p.start})
		}
	}
	return apply(tail, edits), nil
}

// within tells whether all of a list of ranges lies in our columns.
func (b *bare) within(sqref string) bool {
	for _, ref := range strings.Fields(sqref) {
		if !strings.Contains(ref, ":") {
			ref += ":" + ref
		}
		first, last := columnsOf(ref)
		if first < b.First || last > b.Last {
			return false
		}
	}
	return sqref != ""
}
