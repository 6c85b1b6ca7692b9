package wrap

import (
	"math"
	"strconv"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
	"seamtally/batch/units"
	"seamtally/templates"
)

// CutLine is the name of the line to be cut, for whoever measures it.
const CutLine = "cut line"

// fine is the longest step along the cut line.
const fine = 0.5 // mm

// Widths of lines. A cut line is thin enough to hit and firm enough to see.
const (
	cutWidth  = 0.45
	edgeWidth = 0.25
	thin      = 0.15
)

// Type on the paper.
var (
	named  = page.Style{Face: page.Bold, Size: 10}
	figure = page.Style{Face: page.Regular, Size: 8}
)

// Rows of words above the base line: stations, names of the lines, what it is.
const (
	stationRow = 3.2
	nameRow    = 7.4
	markRow    = 13
	wordsTop   = 17.5 // centre lines leave the words free from below the marks up to here
)

// Pen is what templates are drawn with.
type Pen struct {
	Words templates.Words
	Show  show.Figures
}

// sheet is one window being drawn.
type sheet struct {
	Pen
	Window
	t   *Template
	p   *page.Page
	box page.BoxID
}

// Draw draws what a window shows of a template.
func (b Pen) Draw(p *page.Page, w Window, t *Template) {
	s := &sheet{b, w, t, p, p.Box("template", w.Paper)}
	s.waste()
	s.edges()
	s.centres()
	s.stations()
	s.line(CutLine, cutWidth, 0, 0, t.cut()...)
	s.words()
	s.seams()
}

// cut returns the points of the cut line, close enough that a straight step leaves
// it by less than a hundredth of a millimetre. Heel, sides and toe are among them.
func (t *Template) cut() []page.Point {
	n := 4 * max(45, int(math.Ceil(t.Round()/4/fine)))
	out := make([]page.Point, n+1)
	for i := range out {
		x := t.Round() * float64(i) / float64(n)
		out[i] = page.Point{X: x, Y: t.Height(x)}
	}
	return out
}

// line draws what lies in the window of an open line of the template.
func (s *sheet) line(name string, width, grey, dash float64, points ...page.Point) {
	on := make([]page.Point, len(points))
	for i, q := range points {
		on[i] = s.at(q.X, q.Y)
	}
	for _, run := range clip(s.Paper, on) {
		s.p.Draw(s.box, page.Shape{Name: name, Points: run, Line: width, Grey: grey, Dash: dash, Fill: page.None})
	}
}

func (s *sheet) straight(x1, y1, x2, y2, width, grey, dash float64) {
	s.line("", width, grey, dash, page.Point{X: x1, Y: y1}, page.Point{X: x2, Y: y2})
}

// crossed tells whether a seam runs through a span of the template.
func (s *sheet) crossed(x, w float64) bool {
	xs, _ := s.joins()
	for _, at := range xs {
		if at > x-0.4 && at < x+w+0.4 {
			return true
		}
	}
	return false
}

// word writes a text where the window holds all of it.
func (s *sheet) word(x, y, w float64, a page.Align, style page.Style, text string) {
	c := s.at(x, y)
	in := s.Paper
	if c.X < in.X || c.X+w > in.Right() || c.Y-style.Ascent() < in.Y || c.Y+style.Descent() > in.Bottom() {
		return
	}
	s.p.Write(s.box, c.X, c.Y, w, a, style, text)
}

// waste strokes what is cut away, between the line and the end of the tube.
func (s *sheet) waste() {
	const step, gap = 4, 0.8
	for x := float64(step) / 2; x < s.t.Round(); x += step {
		if h := s.t.Height(x) + gap; h < float64(s.t.Base)-gap && !s.underAway(x) {
			s.straight(x, h, x, float64(s.t.Base)-gap, thin, 0.6, 0)
		}
	}
}

// away returns the width of the word for what is cut away, where it has room at
// the heel; else 0.
func (s *sheet) away() float64 {
	w := figure.Width(page.Clean(s.Words.Say("wrap.away"))) + 0.2
	if h := float64(s.t.Base) - 6; s.t.Height(2) > h || s.t.Height(3+w) > h {
		return 0
	}
	return w
}

// underAway keeps strokes out of that word.
func (s *sheet) underAway(x float64) bool { w := s.away(); return w > 0 && x < 4+w }

// edges draws the paper's own edges, the end of the tube and the flap.
func (s *sheet) edges() {
	round, base := s.t.Round(), float64(s.t.Base)
	first, last := s.t.Height(0), s.t.Height(round)
	s.straight(0, 0, round+flap, 0, edgeWidth, 0, 0)
	s.straight(0, 0, 0, first, edgeWidth, 0, 0)
	s.straight(round, 0, round, last, edgeWidth, 0, 0)
	s.line("", thin, 0, 1.2, page.Point{X: round + flap, Y: 0}, page.Point{X: round + flap, Y: last - 3}, page.Point{X: round, Y: last})
	s.straight(0, base, round, base, edgeWidth, 0.3, 2)
	s.straight(0, first, 0, base, thin, 0.3, 2)
	s.straight(round, last, round, base, thin, 0.3, 2)
}

// Centre is one of the four lines along the tube.
type centre struct {
	x    float64
	name string // wording
}

func (t *Template) centres() []centre {
	heel, toe := "wrap.heel", "wrap.toe"
	if t.Square() {
		heel, toe = "wrap.crown", "wrap.crown"
	}
	q := t.Round() / 4
	return []centre{{0, heel}, {q, "wrap.side"}, {2 * q, toe}, {3 * q, "wrap.side"}, {4 * q, heel}}
}

// centres draws the lines along the tube with their names beside them.
func (s *sheet) centres() {
	quarter := s.t.Round() / 4
	for i, c := range s.t.centres() {
		if i > 0 && i < 4 {
			s.straight(c.x, 0, c.x, markRow-2.4, thin, 0, 0)
			s.straight(c.x, wordsTop, c.x, s.t.Height(c.x), thin, 0, 0)
		}
		text := page.Clean(s.Words.Say(c.name))
		w := named.Width(text) + 0.01
		switch {
		case i == 4 || w > quarter-2:
		case s.crossed(c.x+1, w) && i > 0:
			s.word(c.x-1-w, nameRow, w, page.Left, named, text)
		default:
			s.word(c.x+1, nameRow, w, page.Left, named, text)
		}
	}
}

// stations draws the places told in figures: a tick at the base line, its number, and a
// fine line up to the cut.
func (s *sheet) stations() {
	n := s.t.parts()
	step := s.t.Round() / float64(n)
	for i := range n + 1 {
		x := float64(i) * step
		s.straight(x, 0, x, 2.4, edgeWidth, 0, 0)
		if i%(n/4) != 0 {
			s.straight(x, wordsTop, x, s.t.Height(x), 0.1, 0.5, 0.8)
		}
		if i < n && !s.crossed(x+0.5, 3.6) {
			s.word(x+0.5, stationRow-2.4, step-0.8, page.Left, figure, strconv.Itoa(i))
		}
	}
}

// words writes what the paper is, so that it can still be told once cut out, and
// what its two straight edges are.
func (s *sheet) words() {
	round, base := s.t.Round(), float64(s.t.Base)
	from, to := max(2, s.X+3), min(round-2, s.X+s.Paper.W-3)
	if s.Col > 0 {
		from += overlap
	}
	if w := to - from; w > 25 {
		s.word(from, markRow, w, page.Left, named, s.Title())
		s.word(from, -4, w, page.Left, figure, s.Words.Say("wrap.baseline", s.Show.Size(s.t.Base).String()))
		s.word(from, base+2, w, page.Left, figure, s.Words.Say("wrap.endline"))
	}
	if w := s.away(); w > 0 {
		s.word(2.5, base-4.4, w, page.Left, figure, s.Words.Say("wrap.away"))
	}
}

// Title is mark, tube, what it sits on, and angle in one line.
func (s *sheet) Title() string { return s.Pen.Title(s.t) }

// Title is mark, tube, what it sits on, and angle in one line.
func (b Pen) Title(t *Template) string {
	return joined(" · ", joined(", ", t.Marks...), b.Names(t), b.Show.Num(float64(t.Angle), 1)+"°")
}

// Names is the tube and what it sits on.
func (b Pen) Names(t *Template) string {
	return b.Words.Say("wrap.on", t.Tube, joined(" / ", t.Ons...))
}

func joined(by string, parts ...string) string {
	out := ""
	for _, p := range parts {
		if p == "" {
			continue
		}
		if out != "" {
			out += by
		}
		out += p
	}
	return out
}

// seams draws the lines at which sheets are joined, with diamonds that must meet
// their other halves, and the number of the sheet beyond.
func (s *sheet) seams() {
	xs, ys := s.joins()
	top := s.Y + s.Paper.H
	right := s.X + s.Paper.W
	for _, x := range xs {
		s.straight(x, s.Y, x, top, thin, 0, 1.6)
		for _, k := range []float64{0.2, 0.8} {
			s.diamond(x, s.Y+k*s.Paper.H)
		}
		beyond := 1
		if x < s.X+s.Paper.W/2 {
			beyond = -1
		}
		s.beyond(x-4+4.4*float64(beyond), s.Y+0.5*s.Paper.H, s.Row*s.Cols+s.Col+beyond)
	}
	for _, y := range ys {
		s.straight(s.X, y, right, y, thin, 0, 1.6)
		for _, k := range []float64{0.2, 0.8} {
			s.diamond(s.X+k*s.Paper.W, y)
		}
		beyond, at := s.Cols, y-4.2
		if y > s.Y+s.Paper.H/2 {
			beyond, at = -s.Cols, y+2
		}
		s.beyond(s.X+0.45*s.Paper.W, at, s.Row*s.Cols+s.Col+beyond)
	}
}

// beyond names the sheet on the other side of a seam.
func (s *sheet) beyond(x, y float64, sheet int) {
	s.word(x, y, 8, page.Centre, named.At(9), "("+strconv.Itoa(sheet+1)+")")
}

func (s *sheet) diamond(x, y float64) {
	const r = 3
	s.line("diamond", edgeWidth, 0, 0, page.Point{X: x - r, Y: y}, page.Point{X: x, Y: y + r}, page.Point{X: x + r, Y: y}, page.Point{X: x, Y: y - r}, page.Point{X: x - r, Y: y})
}

// Size prints a length of the template to a tenth of a millimetre, or as inches.
func (b Pen) Size(v float64) string {
	if b.Show.US {
		return b.Show.Size(units.MM(v)).Num
	}
	return b.Show.Fixed(v, 1)
}
