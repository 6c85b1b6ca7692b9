// Package page is the model of a printed document: measured boxes, shapes and
// texts in millimetres from the top left corner. It is laid out completely
// before anything is drawn, so that a test can read it as text. The package
// knows fonts and paper; it knows nothing about welds or PDF.
package page

// Point is a place on the page, millimetres from the top left corner.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle; X and Y are its top left corner.
type Rect struct{ X, Y, W, H float64 }

// Right returns the right edge.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom returns the lower edge.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Inset returns the rectangle made smaller on all four sides.
func (r Rect) Inset(dx, dy float64) Rect {
	return Rect{r.X + dx, r.Y + dy, r.W - 2*dx, r.H - 2*dy}
}

// Columns cuts the rectangle into columns whose widths are in the given
// proportions, with a gap between them.
func (r Rect) Columns(gap float64, parts ...float64) []Rect {
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	free := r.W - gap*float64(len(parts)-1)
	x, out := r.X, make([]Rect, len(parts))
	for i, p := range parts {
		w := free * p / sum
		out[i] = Rect{x, r.Y, w, r.H}
		x += w + gap
	}
	return out
}

// Box is a named area that everything registered under it must stay inside.
type Box struct {
	Name string
	Rect
}

// BoxID names a box of a page.
type BoxID int

// Style is how a text looks. Size is in points.
type Style struct {
	Face Face
	Size float64
	Grey float64 // 0 black, 1 white
}

// Text is one line of text. X is its left end, Y its baseline, W its measured width.
type Text struct {
	Box     BoxID
	X, Y, W float64
	Style
	S string
}

// Shape is a polygon or an open line. Line is its stroke width in millimetres,
// 0 for none; Fill is its grey, negative for none.
type Shape struct {
	Box    BoxID
	Name   string // what it shows, for the text dump; may be empty
	Points []Point
	Closed bool
	Line   float64
	Grey   float64 // of the stroke
	Fill   float64
	Dash   float64 // length of dash and gap; 0 for a full line
}

// Mark is a bookmark of the page. Level 0 is the outermost.
type Mark struct {
	Level int
	Title string
}

// Page is one page: boxes, and what lies in them in drawing order. Texts are
// drawn after all shapes.
type Page struct {
	W, H   float64
	Boxes  []Box
	Shapes []Shape
	Texts  []Text
	Marks  []Mark
}

// Document is all pages of one file.
type Document struct {
	Title, Subject string
	Date           string // YYYY-MM-DD
	Pages          []*Page
}

// Size returns the width and height of a paper by name; A4 unless it is "letter".
func Size(paper string) (w, h float64) {
	if paper == "letter" {
		return 215.9, 279.4
	}
	return 210, 297
}

// Add appends an empty page.
func (d *Document) Add(w, h float64) *Page {
	p := &Page{W: w, H: h}
	p.Box("page", Rect{0, 0, w, h})
	d.Pages = append(d.Pages, p)
	return p
}

// Box registers a box.
func (p *Page) Box(name string, r Rect) BoxID {
	p.Boxes = append(p.Boxes, Box{name, r})
	return BoxID(len(p.Boxes) - 1)
}

// Mark adds a bookmark.
func (p *Page) Mark(level int, title string) {
	p.Marks = append(p.Marks, Mark{level, Clean(title)})
}
