package wrap

import (
	"math"
	"strconv"

	"seamtally/batch/traveller/page"
)

// The tube seen from the side, in radii of the chord. A thin branch is drawn
// thicker than it is, so that its lines can be told apart.
const (
	leastBranch = 0.42
	flatBranch  = 0.6
	flatPlate   = 0.35
)

// view is the figure: z along the chord, y up, both in units of its own.
type view struct {
	Pen
	p        *page.Page
	box      page.BoxID
	t        *Template
	r        float64 // of the branch
	sin, cos float64
	scale    float64
	origin   page.Point
}

// Figure draws the tube on what it sits on, with the names of the lines, into a
// frame. It is not to scale.
func (b Pen) Figure(p *page.Page, frame page.Rect, t *Template) {
	v := &view{Pen: b, p: p, t: t, box: p.Box("figure", frame), r: flatBranch}
	if t.Chord > 0 {
		v.r = max(leastBranch, float64(t.Dia/t.Chord))
	}
	v.sin, v.cos = math.Sincos(float64(t.Angle) * math.Pi / 180)
	p.Frame(v.box, frame, 0.25, page.None)
	v.place(frame.Inset(3, 3))
	v.parts()
	v.labels()
}

// along is the way along the branch's axis to the cut; q as in the formulas: 1 at
// the heel, -1 at the toe.
func (v *view) along(q float64) float64 {
	if v.t.Chord == 0 {
		return v.r * q * v.cos / v.sin
	}
	return math.Sqrt(max(0, 1-v.r*v.r*(1-q*q)))/v.sin + v.r*q*v.cos/v.sin
}

// flat returns the figure's place of a point of the branch's outline or face.
func (v *view) flat(along, q float64) page.Point {
	return page.Point{X: along*v.cos + v.r*q*v.sin, Y: along*v.sin - v.r*q*v.cos}
}

func (v *view) paper(q page.Point) page.Point {
	return page.Point{X: v.origin.X + q.X*v.scale, Y: v.origin.Y - q.Y*v.scale}
}

func (v *view) on(along, q float64) page.Point { return v.paper(v.flat(along, q)) }

// tip is the way along the axis of the longest point, base that of the base line, end
// that of the upper end of the picture.
func (v *view) tip() float64 {
	least := math.Inf(1)
	for i := range 101 {
		least = min(least, v.along(float64(i)/50-1))
	}
	return least
}

func (v *view) base() float64 { return v.along(1) + 0.75*v.r + 0.25 }
func (v *view) end() float64  { return v.base() + 0.5*v.r + 0.15 }

// chord returns the figure's outline of what the branch sits on.
func (v *view) chord() (low, high page.Point) {
	left, right := min(v.flat(v.along(-1), -1).X, -v.r)-0.95, max(v.flat(v.along(1), 1).X, v.r)+0.95
	if v.t.Chord == 0 {
		return page.Point{X: left, Y: -flatPlate}, page.Point{X: right, Y: 0}
	}
	return page.Point{X: left, Y: -0.25}, page.Point{X: right, Y: 1}
}

// place chooses the scale at which all fits and centres it.
func (v *view) place(r page.Rect) {
	low, high := v.chord()
	for _, q := range []page.Point{v.flat(v.end(), 1), v.flat(v.end(), -1)} {
		low.X, high.X = min(low.X, q.X), max(high.X, q.X)
		high.Y = max(high.Y, q.Y)
	}
	v.scale = min(r.W/(high.X-low.X), r.H/(high.Y-low.Y))
	v.origin = page.Point{X: r.X + r.W/2 - (low.X+high.X)/2*v.scale, Y: r.Y + r.H/2 + (low.Y+high.Y)/2*v.scale}
}

func (v *view) stroke(width, dash float64, points ...page.Point) {
	v.p.Draw(v.box, page.Shape{Points: points, Line: width, Dash: dash, Fill: page.None})
}

func (v *view) parts() {
	low, high := v.chord()
	a, b := v.paper(page.Point{X: low.X, Y: high.Y}), v.paper(page.Point{X: high.X, Y: low.Y})
	v.p.Draw(v.box, page.Shape{Points: []page.Point{a, {X: b.X, Y: a.Y}, b, {X: a.X, Y: b.Y}}, Closed: true, Fill: 0.87})
	v.stroke(0.35, 0, a, page.Point{X: b.X, Y: a.Y})
	if v.t.Chord == 0 {
		v.stroke(0.35, 0, page.Point{X: a.X, Y: b.Y}, b)
	} else {
		axis := v.paper(page.Point{})
		v.stroke(0.12, 1.6, page.Point{X: a.X, Y: axis.Y}, page.Point{X: b.X, Y: axis.Y})
	}
	var foot []page.Point
	for i := range 41 {
		q := float64(i)/20 - 1
		foot = append(foot, v.on(v.along(q), q))
	}
	outline := append(append([]page.Point{}, foot...), v.on(v.end(), 1), v.on(v.end(), -1))
	v.p.Draw(v.box, page.Shape{Points: outline, Closed: true, Fill: 1})
	wrapped := append(append([]page.Point{}, foot...), v.on(v.base(), 1), v.on(v.base(), -1))
	v.p.Draw(v.box, page.Shape{Points: wrapped, Closed: true, Fill: 0.94})
	v.stroke(0.35, 0, v.on(v.end(), -1), foot[0])
	v.stroke(0.35, 0, v.on(v.end(), 1), foot[len(foot)-1])
	v.stroke(0.6, 0, foot...)
	v.stroke(0.12, 1.6, v.on(v.along(0), 0), v.on(v.end(), 0))
	v.stroke(0.5, 0, v.on(v.base(), -1), v.on(v.base(), 1))
	v.stroke(0.2, 0.9, v.on(v.tip(), -1), v.on(v.tip(), 1))
}

// labels names the lines, the angle and the way from the base line to the tube's end.
func (v *view) labels() {
	t := v.t
	names := t.centres()
	style := page.Style{Face: page.Bold, Size: 8.5}
	heel, toe, middle := v.on(v.along(1), 1), v.on(v.along(-1), -1), v.on((v.along(0)+v.base())/2, 0)
	v.name(style, names[0].name, page.Point{X: heel.X + 1.5, Y: heel.Y + 3.4}, page.Left)
	aside := 1.5
	if t.Square() { // the dimension runs down beside it
		aside += beside
	}
	v.name(style, names[2].name, page.Point{X: toe.X - aside, Y: toe.Y + 3.4}, page.Right)
	v.name(style, names[1].name, page.Point{X: middle.X + 0.8, Y: middle.Y + 1}, page.Left)
	if !t.Square() {
		v.stroke(0.15, 0, page.Arc(heel, 7, -float64(t.Angle)*math.Pi/180, 0)...)
	}
	half := float64(t.Angle) * math.Pi / 360
	degrees := v.Show.Num(float64(t.Angle), 1) + "°"
	v.text(style, degrees, page.Point{X: heel.X + 11*math.Cos(half), Y: heel.Y - 11*math.Sin(half) + 1.2}, page.Centre)
	v.measure(style)
}

// beside is how far from the toe the dimension stands, in millimetres of paper.
const beside = 5.0

// measure draws the dimension beside the toe, its figure nearer to the base line than to
// what the tube sits on.
func (v *view) measure(style page.Style) {
	off := 1 + beside/(v.scale*v.r)
	a, b := v.on(v.base(), -off), v.on(v.tip(), -off)
	mid := page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	v.p.Arrow(v.box, mid, a, 0.18, 1.8)
	v.p.Arrow(v.box, mid, b, 0.18, 1.8)
	v.stroke(0.12, 0, v.on(v.base(), -1), v.on(v.base(), -off-1/(v.scale*v.r)))
	v.stroke(0.12, 0, v.on(v.tip(), -1), v.on(v.tip(), -off-1/(v.scale*v.r)))
	v.text(style, v.Show.Size(v.t.Base).String(), page.Point{X: a.X + 0.35*(b.X-a.X) - 1.5, Y: a.Y + 0.35*(b.Y-a.Y)}, page.Right)
}

func (v *view) name(s page.Style, key string, at page.Point, a page.Align) {
	v.text(s, v.Words.Say(key), at, a)
}

// text writes a text at a point, inside the frame.
func (v *view) text(s page.Style, text string, at page.Point, a page.Align) {
	w := s.Width(page.Clean(text)) + 0.01
	switch a {
	case page.Centre:
		at.X -= w / 2
	case page.Right:
		at.X -= w
	}
	in := v.p.Boxes[v.box].Rect
	at.X = max(in.X+0.5, min(in.Right()-w-0.5, at.X))
	v.p.Write(v.box, at.X, at.Y, w, page.Left, s, text)
}

// Overview draws the whole paper small, with the sheets it is spread over, numbered.
func (b Pen) Overview(p *page.Page, frame page.Rect, t *Template, all []Window) {
	box := p.Box("overview", frame)
	w, h := t.Size()
	k := min(frame.W/w, frame.H/h)
	at := func(x, y float64) page.Point {
		return page.Point{X: frame.X + (frame.W-w*k)/2 + (x+side)*k, Y: frame.Y + (frame.H+h*k)/2 - (y+below)*k}
	}
	var line []page.Point
	for _, q := range t.cut() {
		line = append(line, at(q.X, q.Y))
	}
	body := append(append([]page.Point{}, line...), at(t.Round(), 0), at(0, 0))
	p.Draw(box, page.Shape{Points: body, Closed: true, Fill: 0.9})
	p.Draw(box, page.Shape{Points: line, Line: 0.5, Fill: page.None})
	for i, win := range all {
		xs, ys := win.joins()
		left, right, low, high := win.X, win.X+win.Paper.W, win.Y, win.Y+win.Paper.H
		for _, x := range xs {
			if x < (left+right)/2 {
				left = x
			} else {
				right = x
			}
		}
		for _, y := range ys {
			if y < (low+high)/2 {
				low = y
			} else {
				high = y
			}
		}
		a, c := at(left, high), at(right, low)
		p.Frame(box, page.Rect{X: a.X, Y: a.Y, W: c.X - a.X, H: c.Y - a.Y}, 0.2, page.None)
		number := page.Style{Face: page.Bold, Size: 11}
		p.Write(box, a.X, (a.Y+c.Y)/2+1.4, c.X-a.X, page.Centre, number, strconv.Itoa(i+1))
	}
}
