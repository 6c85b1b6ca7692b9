package cutting

import (
	"math"
	"strconv"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
	"seamtally/batch/units"
	"seamtally/templates"
)

// Heights of a drawn bar.
const (
	BarHeight   = 10.5
	BraceHeight = 5.5 // words below the bar, where pieces are too short to hold theirs
)

// restFill is the grey of what is left over; it is hatched as well.
const restFill = 0.9

var (
	markType = page.Style{Face: page.Bold, Size: 9.5}
	sizeType = page.Style{Face: page.Regular, Size: 8.5}
)

// Pen is what bars are drawn with.
type Pen struct {
	Words templates.Words
	Show  show.Figures
	Kerf  units.MM
	Scale float64 // paper over part
}

// number prints a length for a key: to a thousandth of a millimetre.
func number(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64) }

// label is how a run is told in words: "B1: 3 × 1250".
func (b Pen) label(r Run) string {
	text := b.Show.Size(r.Length).Num
	if r.Count > 1 {
		text = strconv.Itoa(r.Count) + " × " + text
	}
	if r.Mark != "" {
		text = short(markType, r.Mark) + ": " + text
	}
	return text
}

// short keeps the mark of a piece to what a saw's page has room for.
func short(s page.Style, mark string) string { return page.Shorten(s, page.Clean(mark), 42) }

// Layout tells where the words of a pattern go.
type Layout struct {
	Inside []bool // each piece of the run holds its own words
	Below  []bool // the run has its words below the bar
	Legend bool   // some run has neither: the pieces are told in a line below
	Height float64
}

// Layout finds room for the words of a pattern.
func (b Pen) Layout(p *Pattern) Layout {
	l := Layout{Inside: make([]bool, len(p.Runs)), Below: make([]bool, len(p.Runs)), Height: BarHeight}
	for i, r := range p.Runs {
		w := float64(r.Length) * b.Scale
		l.Inside[i] = b.holds(w, r)
		if l.Inside[i] {
			continue
		}
		span := w*float64(r.Count) + float64(b.Kerf)*b.Scale*float64(r.Count-1)
		l.Below[i] = sizeType.Width(page.Clean(b.label(r)))+1 <= span
		l.Legend = l.Legend || !l.Below[i]
	}
	if l.Legend {
		for i := range l.Below {
			l.Below[i] = false
		}
	}
	for _, below := range l.Below {
		if below {
			l.Height = BarHeight + BraceHeight
		}
	}
	return l
}

// holds tells whether a piece drawn so wide holds its mark and its length.
func (b Pen) holds(w float64, r Run) bool {
	room := w - 2*slant(w) - 0.8
	return markType.Width(short(markType, r.Mark)) <= room && sizeType.Width(b.Show.Size(r.Length).Num) <= room
}

// slant is how far the cut of an end that is not square runs into a piece.
func slant(w float64) float64 { return min(2.2, w/4) }

// Bar draws a pattern, its left upper corner at x and y.
func (b Pen) Bar(p *page.Page, box page.BoxID, x, y float64, pat *Pattern, l Layout) {
	at := x
	for i, r := range pat.Runs {
		from, w := at, float64(r.Length)*b.Scale
		for range r.Count {
			b.piece(p, box, at, y, w, r.Ends)
			if l.Inside[i] {
				b.inside(p, box, page.Rect{X: at, Y: y, W: w, H: BarHeight}, r)
			}
			at += w + float64(b.Kerf)*b.Scale
		}
		if l.Below[i] {
			b.brace(p, box, from, at-float64(b.Kerf)*b.Scale, y+BarHeight, b.label(r))
		}
	}
	b.rest(p, box, page.Rect{X: at, Y: y, W: x + float64(pat.Stock)*b.Scale - at, H: BarHeight}, pat.Rest)
	p.Draw(box, page.Shape{Name: "stock", Points: corners(page.Rect{X: x, Y: y, W: float64(pat.Stock) * b.Scale, H: BarHeight}), Closed: true, Line: 0.15, Fill: page.None})
}

// piece draws the outline of a piece. Ends are told apart by their shape alone: a
// mitre as a slant, a saddle as a hollow, what the drawing alone knows as a zigzag.
func (b Pen) piece(p *page.Page, box page.BoxID, x, y, w float64, ends [2]End) {
	d := slant(w)
	left, right := edge(ends[0], d), edge(ends[1], d)
	var points []page.Point
	for _, q := range left {
		points = append(points, page.Point{X: x + q.X, Y: y + q.Y})
	}
	for i := range right {
		q := right[len(right)-1-i]
		points = append(points, page.Point{X: x + w - q.X, Y: y + q.Y})
	}
	p.Draw(box, page.Shape{Name: "piece", Points: points, Closed: true, Line: min(0.3, 0.1+w/20), Fill: 1})
}

// edge is the left end of a piece from the top down: how far it runs in, at which height.
func edge(e End, d float64) []page.Point {
	const h = BarHeight
	switch e.Kind {
	case Mitre:
		return []page.Point{{X: d, Y: 0}, {X: 0, Y: h}}
	case Saddle:
		out := make([]page.Point, 0, 13)
		for i := range 13 {
			t := float64(i) / 12
			out = append(out, page.Point{X: d * math.Sin(math.Pi*t), Y: h * t})
		}
		return out
	case Other:
		return []page.Point{{X: 0, Y: 0}, {X: d, Y: h / 4}, {X: 0, Y: h / 2}, {X: d, Y: 3 * h / 4}, {X: 0, Y: h}}
	}
	return []page.Point{{X: 0, Y: 0}, {X: 0, Y: h}}
}

func (b Pen) inside(p *page.Page, box page.BoxID, r page.Rect, run Run) {
	w := r.W - 2*slant(r.W)
	p.Write(box, r.X+slant(r.W), r.Y+4.6, w, page.Centre, markType, short(markType, run.Mark))
	p.Write(box, r.X+slant(r.W), r.Y+8.8, w, page.Centre, sizeType, b.Show.Size(run.Length).Num)
}

// brace spans a run below the bar.
func (b Pen) brace(p *page.Page, box page.BoxID, from, to, y float64, text string) {
	p.Draw(box, page.Shape{Points: []page.Point{{X: from + 0.2, Y: y + 0.5}, {X: from + 0.2, Y: y + 1.5}, {X: to - 0.2, Y: y + 1.5}, {X: to - 0.2, Y: y + 0.5}}, Line: 0.15, Fill: page.None})
	p.Write(box, from, y+4.7, to-from, page.Centre, sizeType, text)
}

// rest draws what is left of the bar.
func (b Pen) rest(p *page.Page, box page.BoxID, r page.Rect, rest units.MM) {
	if r.W <= 0.05 {
		return
	}
	p.Frame(box, r, 0, restFill)
	text := page.Clean(b.Words.Say("saw.rest") + " " + b.Show.AtMost(rest).Num)
	w := sizeType.Width(text)
	free := 0.0
	if w+1.6 <= r.W {
		free = w + 1.6
		p.Write(box, r.X+0.8, r.Y+BarHeight/2+1.1, w+0.01, page.Left, sizeType, text)
	}
	for x := r.X + free + 1; x+BarHeight/3 < r.Right(); x += 2.4 {
		p.Line(box, x, r.Bottom(), x+BarHeight/3, r.Y, 0.1, 0.5)
	}
}

// Legend tells the pieces of a bar from left to right, in lines no wider than w.
func (b Pen) Legend(pat *Pattern, w float64) []string {
	var lines []string
	line := ""
	add := func(part string) {
		joined := part
		if line != "" {
			joined = line + "  ·  " + part
		}
		if line != "" && sizeType.Width(page.Clean(joined)) > w {
			lines = append(lines, line)
			joined = part
		}
		line = joined
	}
	for _, r := range pat.Runs {
		add(b.label(r))
	}
	add(b.Words.Say("saw.rest") + " " + b.Show.AtMost(pat.Rest).Num)
	return append(lines, line)
}

func corners(r page.Rect) []page.Point {
	return []page.Point{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.Right(), Y: r.Bottom()}, {X: r.X, Y: r.Bottom()}}
}
