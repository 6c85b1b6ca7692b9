// Package ink draws a page model as PDF. It measures and decides nothing.
package ink

import (
	"bytes"
	"fmt"
	"time"

	"github.com/jung-kurt/gofpdf"

	"seamtally/batch/traveller/page"
)

// Canvas is what a page model needs to be drawn on.
type Canvas interface {
	Page(w, h float64)
	Mark(m page.Mark)
	Shape(s page.Shape)
	Text(t page.Text)
}

// Draw draws the whole document on a canvas, in reading order.
func Draw(doc *page.Document, c Canvas) {
	for _, p := range doc.Pages {
		drawPage(p, c)
	}
}

func drawPage(p *page.Page, c Canvas) {
	c.Page(p.W, p.H)
	for _, m := range p.Marks {
		c.Mark(m)
	}
	for _, s := range p.Shapes {
		c.Shape(s)
	}
	for _, t := range p.Texts {
		c.Text(t)
	}
}

// PDF returns the document as the bytes of a PDF file. The same document always
// gives the same bytes: the dates are the document's, not the clock's. Each page of
// the model is given up once it is drawn, so that a large file is not held twice: the
// document has no pages afterwards.
func PDF(doc *page.Document) ([]byte, error) {
	canvas := newPDF(doc)
	for i, p := range doc.Pages {
		drawPage(p, canvas)
		doc.Pages[i] = nil
	}
	doc.Pages = nil
	var out whole
	if err := canvas.pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("the traveller could not be drawn: %w", err)
	}
	return out.packed, nil
}

// whole packs a file that it is given in one piece.
type whole struct{ packed []byte }

func (w *whole) Write(file []byte) (int, error) {
	if w.packed != nil {
		return 0, errTable
	}
	packed, err := pack(file)
	if err != nil {
		return 0, err
	}
	w.packed = packed
	return len(file), nil
}

type pdfCanvas struct {
	pdf        *gofpdf.Fpdf
	loaded     [3]bool // faces the document uses so far
	face       page.Face
	size       float64
	text, fill float64 // greys in force
	line, grey float64
	dash       float64
}

func newPDF(doc *page.Document) *pdfCanvas {
	pdf := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: 210, Ht: 297}})
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetCompression(false) // see pack
	pdf.SetMargins(0, 0, 0)
	pdf.SetCatalogSort(true)
	date, err := time.Parse(time.DateOnly, doc.Date)
	if err != nil {
		date = time.Unix(0, 0).UTC()
	}
	pdf.SetCreationDate(date)
	pdf.SetModificationDate(date)
	pdf.SetTitle(doc.Title, true)
	pdf.SetSubject(doc.Subject, true)
	pdf.SetAuthor("seamtally", true)
	pdf.SetCreator("seamtally", true)
	return &pdfCanvas{pdf: pdf}
}

// Page starts a page. The library restores nothing of the graphic state that we
// can rely on, so everything is set anew on it.
func (c *pdfCanvas) Page(w, h float64) {
	c.pdf.AddPageFormat("P", gofpdf.SizeType{Wd: w, Ht: h})
	c.size, c.line, c.dash = -1, -1, 0
	c.text, c.fill, c.grey = -1, -1, -1
	c.pdf.SetLineJoinStyle("round")
	c.pdf.SetLineCapStyle("round")
}

// Mark adds a bookmark. Its title is Unicode only while a Unicode font is set.
func (c *pdfCanvas) Mark(m page.Mark) {
	c.font(page.Regular, page.MinSize)
	c.pdf.Bookmark(m.Title, m.Level, 0)
}

func (c *pdfCanvas) Shape(s page.Shape) {
	if len(s.Points) < 2 {
		return
	}
	how := c.strokeAndFill(s)
	if how == "" {
		return
	}
	if r, ok := upright(s); ok {
		c.pdf.Rect(r.X, r.Y, r.W, r.H, how)
		return
	}
	if len(s.Points) == 2 {
		c.pdf.Line(s.Points[0].X, s.Points[0].Y, s.Points[1].X, s.Points[1].Y)
		return
	}
	c.pdf.MoveTo(s.Points[0].X, s.Points[0].Y)
	for _, p := range s.Points[1:] {
		c.pdf.LineTo(p.X, p.Y)
	}
	if s.Closed {
		c.pdf.ClosePath()
	}
	c.pdf.DrawPath(how)
}

// upright tells whether a shape is a rectangle along the axes, which takes one
// operator instead of six.
func upright(s page.Shape) (page.Rect, bool) {
	if !s.Closed || len(s.Points) != 4 {
		return page.Rect{}, false
	}
	a, b, c, d := s.Points[0], s.Points[1], s.Points[2], s.Points[3]
	if a.Y != b.Y || b.X != c.X || c.Y != d.Y || d.X != a.X {
		return page.Rect{}, false
	}
	return page.Rect{X: a.X, Y: a.Y, W: c.X - a.X, H: c.Y - a.Y}, true
}

func (c *pdfCanvas) strokeAndFill(s page.Shape) string {
	how := ""
	if s.Fill >= 0 {
		how = "F"
		set(&c.fill, s.Fill, func(v int) { c.pdf.SetFillColor(v, v, v) })
	}
	if s.Line <= 0 {
		return how
	}
	set(&c.grey, s.Grey, func(v int) { c.pdf.SetDrawColor(v, v, v) })
	if s.Line != c.line {
		c.line = s.Line
		c.pdf.SetLineWidth(s.Line)
	}
	if s.Dash != c.dash {
		c.dash = s.Dash
		c.pdf.SetDashPattern(dashes(s.Dash), 0)
	}
	return how + "D"
}

func dashes(d float64) []float64 {
	if d == 0 {
		return []float64{}
	}
	return []float64{d, d}
}

func set(have *float64, want float64, apply func(int)) {
	if *have != want {
		*have = want
		apply(int(want*255 + 0.5))
	}
}

func (c *pdfCanvas) Text(t page.Text) {
	c.font(t.Face, t.Size)
	set(&c.text, t.Grey, func(v int) { c.pdf.SetTextColor(v, v, v) })
	c.pdf.Text(t.X, t.Y, t.S)
}

func (c *pdfCanvas) font(f page.Face, size float64) {
	if !c.loaded[f] {
		// The library pads tables inside the bytes it is given, so that the next
		// document would come out different: each gets its own copy.
		c.pdf.AddUTF8FontFromBytes(f.String(), "", bytes.Clone(f.TTF()))
		c.loaded[f] = true
	}
	if f != c.face || size != c.size {
		c.face, c.size = f, size
		c.pdf.SetFont(f.String(), "", size)
	}
}
