package traveller

import (
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
)

// flow fills pages from top to bottom. What does not fit goes to a new page with
// the same header; nothing is ever cut in two.
type flow struct {
	*builder
	p          *page.Page
	y          float64
	head       head
	squeeze    squeeze
	jointWidth float64 // of what the joint table says of a joint
	rowShare   float64 // of the height of a cover's rows that they have here
	signed     int     // rows of sign-off that the sheet makes room for
}

func (b *builder) flow(h head) *flow {
	f := &flow{builder: b, head: h}
	f.turn()
	return f
}

// turn starts the next page.
func (f *flow) turn() {
	f.p = f.newPage(f.head)
	f.y = f.top
}

// room returns the height that is left on the page.
func (f *flow) room() float64 { return f.foot - f.y }

// take returns the next rectangle of the height given, on a new page if needed,
// registered under a name.
func (f *flow) take(name string, h float64) (page.Rect, page.BoxID) {
	if f.room() < h && f.y > f.top {
		f.turn()
	}
	r := page.Rect{X: f.left, Y: f.y, W: f.width, H: h}
	f.y += h
	return r, f.p.Box(name, r)
}

// gap leaves white space, unless the page is about to end.
func (f *flow) gap(h float64) { f.y += min(h, max(f.room(), 0)) }

// section writes a heading that stays with at least keep millimetres of what follows.
func (f *flow) section(text string, keep float64) {
	if f.room() < 7+keep && f.y > f.top {
		f.turn()
	}
	r, box := f.take("heading", 7)
	f.p.Write(box, r.X, r.Y+5, r.W, page.Left, title, text)
}

// column is one column of a table.
type column struct {
	key   string // wording of its heading
	part  float64
	align page.Align
}

// cell is what stands in one field of a table: a line, and a second smaller one.
type cell struct {
	text, under string
	bold        bool
	indent      float64 // of both lines, beside what is drawn there
	goesOn      bool    // of the first field: the row below belongs to this one
}

// table is rows under a heading that is repeated on every page.
type table struct {
	name    string
	columns []column
	height  float64 // of a row
	split   int     // a firm line stands before this column; 0: none
	over    []over  // headings that stand over several columns
	// more stands below the last row of a page where the rows go on, and again
	// above the rows of the next; blank: the repeated heading is enough.
	more, again string
}

// moreHeight is the room that the note below a page's last row takes.
const moreHeight = 4.6

// over is a heading over the columns from first to last, both counted.
type over struct {
	key         string
	first, last int
}

const (
	tableHead = 6.5
	overHead  = 3.2 // more where headings stand over others
)

// headHeight is the height of a table's heading.
func (t table) headHeight() float64 {
	if len(t.over) > 0 {
		return tableHead + overHead
	}
	return tableHead
}

// placed is a row of a table that stands on a page.
type placed struct {
	p     *page.Page
	box   page.BoxID
	cells []page.Rect
}

// rows writes the rows of a table, turning pages as needed, and returns where
// they stand.
func (f *flow) rows(t table, rows [][]cell) []placed {
	var out []placed
	if f.room() < t.headHeight()+t.height {
		f.turn()
	}
	f.tableHead(t)
	for i, row := range rows {
		if f.room() < t.height*float64(belonging(rows, i)) || t.more != "" && i > 0 && f.room() < min(t.height*float64(len(rows)-i), t.height+moreHeight) {
			f.goOn(t)
		}
		out = append(out, f.row(t, row))
	}
	return out
}

// belonging counts a row and those below it that belong to it; of a row that belongs to
// the one above itself alone.
func belonging(rows [][]cell, i int) int {
	n := 1
	if i > 0 && rows[i-1][0].goesOn {
		return n
	}
	for rows[i+n-1][0].goesOn {
		n++
	}
	return n
}

// goOn turns the page inside a table, with the table's notes that it does.
func (f *flow) goOn(t table) {
	if t.more != "" && f.room() >= moreHeight {
		r, box := f.take("more", moreHeight)
		f.p.Write(box, r.X, r.Y+3.6, r.W, page.Right, strong.At(9), t.more)
	}
	f.turn()
	if t.again != "" {
		f.section(t.again, t.headHeight()+t.height)
	}
	f.tableHead(t)
}

func (t table) parts() []float64 {
	out := make([]float64, len(t.columns))
	for i, c := range t.columns {
		out[i] = c.part
	}
	return out
}

// atLeastHeads returns the columns, none narrower than its heading.
func (f *flow) atLeastHeads(columns []column) []column {
	for i := range columns {
		columns[i].part = max(columns[i].part, label.Width(page.Clean(f.say(columns[i].key)))+1.8)
	}
	return columns
}

// width returns the width of a column of a table that is as wide as given.
func (t table) width(whole float64, column int) float64 {
	return page.Rect{W: whole}.Columns(0, t.parts()...)[column].W
}

func (f *flow) tableHead(t table) {
	r, box := f.take(t.name+" head", t.headHeight())
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.4, 0)
	cells := r.Columns(0, t.parts()...)
	for _, o := range t.over {
		from, to := cells[o.first], cells[o.last]
		f.p.Write(box, from.X+0.8, r.Y+3.4, to.Right()-from.X-1.6, page.Left, label, f.say(o.key))
		f.p.Line(box, from.X+0.8, r.Y+4.3, to.Right()-0.8, r.Y+4.3, 0.12, 0.3)
	}
	for i, c := range cells {
		f.p.Write(box, c.X+0.8, r.Bottom()-2, c.W-1.6, t.columns[i].align, label, f.say(t.columns[i].key))
	}
	f.p.Line(box, r.X, r.Bottom(), r.Right(), r.Bottom(), 0.4, 0)
}

func (f *flow) row(t table, row []cell) placed {
	r, box := f.take(t.name+" row", t.height)
	cells := r.Columns(0, t.parts()...)
	for i, c := range cells {
		if i > 0 {
			width, grey := 0.12, 0.5
			if i == t.split {
				width, grey = 0.5, 0
			}
			f.p.Line(box, c.X, c.Y, c.X, c.Bottom(), width, grey)
		}
		if i < len(row) {
			f.cell(box, c, t.columns[i].align, row[i])
		}
	}
	if !row[0].goesOn {
		f.p.Line(box, r.X, r.Bottom(), r.Right(), r.Bottom(), 0.15, 0.3)
	}
	return placed{f.p, box, cells}
}

func (f *flow) cell(box page.BoxID, c page.Rect, a page.Align, v cell) {
	s := body
	if v.bold {
		s = title.At(10.5)
	}
	middle := c.Y + c.H/2
	c.X, c.W = c.X+v.indent, c.W-v.indent
	if v.under == "" {
		f.p.Write(box, c.X+0.8, middle+s.Ascent()/2-0.3, c.W-1.6, a, s, v.text)
		return
	}
	f.p.Write(box, c.X+0.8, middle-0.7, c.W-1.6, a, s, v.text)
	f.p.Write(box, c.X+0.8, middle+3.2, c.W-1.6, a, small, v.under)
}

// sheets lays out the sheets of one assembly.
func (b *builder) sheets(a *setup.Assembly) {
	setups := a.Setups()
	for _, s := range setups {
		b.sheet(a, s, len(setups))
	}
}
