// Package picture draws what a welder sees: the cross-section of a joint to scale
// with its passes and sizes, its welding symbol, how it lies and how the torch is
// held.
package picture

import (
	"math"
	"slices"
	"strconv"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
	"seamtally/batch/traveller/sketch"
	"seamtally/templates"
)

// scales are the scales a picture may have: paper over part.
var scales = []struct {
	factor float64
	text   string
}{
	{10, "10 : 1"}, {8, "8 : 1"}, {7, "7 : 1"}, {6, "6 : 1"}, {5, "5 : 1"}, {4.5, "4.5 : 1"}, {4, "4 : 1"}, {3.5, "3.5 : 1"},
	{3, "3 : 1"}, {2.75, "2.75 : 1"}, {2.5, "2.5 : 1"}, {2.25, "2.25 : 1"}, {2, "2 : 1"}, {1.75, "1.75 : 1"},
	{1.5, "1.5 : 1"}, {1.25, "1.25 : 1"}, {1, "1 : 1"}, {0.75, "3 : 4"}, {2.0 / 3, "2 : 3"}, {0.6, "3 : 5"}, {0.5, "1 : 2"},
	{0.4, "2 : 5"}, {1.0 / 3, "1 : 3"}, {0.25, "1 : 4"}, {0.2, "1 : 5"}, {0.1, "1 : 10"}, {0.05, "1 : 20"}, {0.02, "1 : 50"}, {0.01, "1 : 100"},
}

// Margins of a picture inside its frame, for dimensions.
const (
	figureSide = 14
	figureTop  = 5
	figureFoot = 8
	figureDim  = 8   // more where dimensions or an angle stand above or below
	lowDim     = 6.5 // the same in a low frame
	lowFrame   = 46  // height up to which a frame is low
)

// Type of a picture's words: one who reads the scale must come close anyway.
var (
	words = page.Style{Face: page.Regular, Size: 9.5}
	small = page.Style{Face: page.Regular, Size: 8, Grey: 0.25}
)

// Greys of a picture.
const (
	plateGrey = 0.87
	beadGrey  = 1
)

// Pen is what every picture of a document is drawn with.
type Pen struct {
	Words templates.Words
	Show  show.Figures
	AWS   bool // welding symbols by AWS A2.4 instead of ISO 2553
}

// drawing is a cross-section being drawn: true millimetres to paper.
type drawing struct {
	Pen
	p      *page.Page
	box    page.BoxID
	frame  page.Rect
	origin page.Point // paper place of the sketch's origin
	scale  float64
	text   string      // the scale, in words
	taken  []page.Rect // areas of labels already set
	lines  []stroke    // dimension lines and the like: no label crosses them
	edges  []stroke    // edges of parts and passes: labels keep off where they can
	later  []func()    // labels, set when all lines are known
}

// stroke is a straight line on paper.
type stroke struct{ a, b page.Point }

// CrossSection draws the joint into a frame. What the plan does not know well
// enough to draw is said in words.
func (b Pen) CrossSection(p *page.Page, frame page.Rect, pl *plan.Plan) {
	box := p.Box("picture", frame)
	p.Frame(box, frame, 0.25, page.None)
	s, ok := sketch.Build(pl)
	if !ok {
		lines := page.Wrap(words, b.Words.Say("picture.none"), frame.W-10, 3)
		p.Lines(box, frame.X+5, frame.Y+frame.H/2, frame.W-10, words, lines)
		return
	}
	f, spot := b.placeWithSymbol(p, box, frame, s, pl)
	f.plates(s)
	f.beads(s)
	f.caption(pl)
	if spot.W > 0 {
		f.symbol(pl, spot.Rect, spot.tail)
		f.taken = append(f.taken, spot.Rect)
	}
	for _, d := range s.Dims {
		f.dimension(d)
	}
	for _, c := range s.Corners {
		f.corner(c, s)
	}
	for _, set := range f.later {
		set()
	}
	for _, n := range s.Notes {
		f.note(n)
	}
	f.sides(s, pl)
	f.numbers(s)
}

// sides names the two sides of a weld that has passes on both, so that the table of
// passes and the sign-off can speak of them.
func (f *drawing) sides(s sketch.Sketch, pl *plan.Plan) {
	if slices.ContainsFunc(s.Beads, func(b sketch.Bead) bool { return b.Mirror }) {
		f.twins(s)
		return
	}
	if !slices.ContainsFunc(pl.Runs, func(r plan.Run) bool { return r.Side == 2 }) {
		return
	}
	low, high := math.Inf(1), math.Inf(-1) // the plates, left to right
	deep := 0.0
	for _, p := range s.Plates {
		for _, q := range p.Outline {
			low, high, deep = min(low, q.X), max(high, q.X), min(deep, q.Y)
		}
	}
	for k, key := range []string{"run.side1", "run.side2"} {
		text := f.Words.Say(key)
		half := words.Width(page.Clean(text)) / 2
		y := [2]float64{f.at(sketch.Point{}).Y - 2.6, f.at(sketch.Point{Y: deep}).Y + 2.9}[k]
		left, right := f.at(sketch.Point{X: low}).X, f.at(sketch.Point{X: high}).X
		f.label(words, text, []page.Point{{X: right - half, Y: y}, {X: left + half, Y: y}, {X: right + half + 1, Y: y}, {X: left - half - 1, Y: y}})
	}
}

// twins names the two sides of a weld that is the same on both: the side with the
// dimensions is the first.
func (f *drawing) twins(s sketch.Sketch) {
	for k, key := range []string{"run.side1", "run.side2"} {
		text := f.Words.Say(key)
		half := words.Width(page.Clean(text)) / 2
		var places []page.Point
		for _, b := range s.Beads {
			if b.Mirror != (k == 1) {
				continue
			}
			low, high := page.Point{X: math.Inf(1), Y: math.Inf(1)}, page.Point{X: math.Inf(-1), Y: math.Inf(-1)}
			for _, q := range f.outline(b.Outline) {
				low, high = page.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}, page.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
			}
			middle := (low.X + high.X) / 2
			for _, dy := range []float64{2.9, 4.5, 6.5, 9, 12} {
				places = append(places, page.Point{X: middle, Y: high.Y + dy}, page.Point{X: low.X - half, Y: high.Y + dy}, page.Point{X: high.X + half, Y: high.Y + dy})
			}
			places = append(places, page.Point{X: low.X - half - 1, Y: low.Y}, page.Point{X: high.X + half + 1, Y: low.Y}, page.Point{X: middle, Y: low.Y - 3})
		}
		f.label(words, text, places)
	}
}

// symbolSpot is where a symbol stands, and its tail.
type symbolSpot struct {
	page.Rect
	tail string
}

// mostSteps is by how many scales a sketch is made smaller to give its symbol room, and
// asides are by what part of the free width it moves out of the middle before that.
const mostSteps = 5

var asides = []float64{0, 0.35, -0.35, 0.6, -0.6}

// placeWithSymbol places the sketch at the largest scale that leaves a corner free
// for the welding symbol, at best with its tail; where none does, the sketch stands
// at the largest scale without a symbol.
func (b Pen) placeWithSymbol(p *page.Page, box page.BoxID, frame page.Rect, s sketch.Sketch, pl *plan.Plan) (*drawing, symbolSpot) {
	for step := range mostSteps {
		for _, aside := range asides {
			f := b.place(p, box, frame, s, step, aside)
			tails := []string{f.symbolTail(pl), ""}
			if step < 2 { // first a little smaller, only then without the tail
				tails = tails[:1]
			}
			for _, tail := range tails {
				if r, ok := f.symbolCorner(f.parts(s), f.symbolWidth(pl, tail)); ok {
					return f, symbolSpot{r, tail}
				}
			}
		}
	}
	return b.place(p, box, frame, s, 0, 0), symbolSpot{}
}

// place chooses the largest scale at which the sketch fits, or one that is some
// steps smaller, and sets the sketch into the middle or a part of the free width aside.
func (b Pen) place(p *page.Page, box page.BoxID, frame page.Rect, s sketch.Sketch, smaller int, aside float64) *drawing {
	low, high := s.Bounds()
	top, foot := margins(s, frame.H)
	w, h := frame.W-2*figureSide, frame.H-top-foot
	f := &drawing{Pen: b, p: p, box: box, frame: frame, scale: min(w/(high.X-low.X), h/(high.Y-low.Y))}
	f.text = b.Words.Say("picture.fit")
	for i := range scales {
		sc := scales[min(i+smaller, len(scales)-1)]
		if (high.X-low.X)*scales[i].factor <= w && (high.Y-low.Y)*scales[i].factor <= h {
			f.scale, f.text = sc.factor, sc.text
			break
		}
	}
	f.origin = page.Point{
		X: frame.X + figureSide + w/2 - (low.X+high.X)/2*f.scale + aside*(w-(high.X-low.X)*f.scale)/2,
		Y: frame.Y + top + h/2 + (low.Y+high.Y)/2*f.scale,
	}
	return f
}

// margins returns the white above and below a sketch in a frame: dimensions need room.
func margins(s sketch.Sketch, frame float64) (top, foot float64) {
	top, foot = figureTop, figureFoot
	more := float64(figureDim)
	if frame < lowFrame {
		more = lowDim
	}
	low, high := s.Bounds()
	for _, d := range s.Dims {
		if d.Away.Y > 0.5 && !d.Inside {
			top = figureTop + more
		}
		if d.Away.Y < -0.5 && d.From.Y-low.Y < (high.Y-low.Y)*0.3 {
			foot = figureFoot + more
		}
	}
	for _, c := range s.Corners {
		if c.At.Y < 0 {
			top = figureTop + more
		}
	}
	return top, foot
}

// at returns the paper place of a point of the sketch.
func (f *drawing) at(q sketch.Point) page.Point {
	return page.Point{X: f.origin.X + q.X*f.scale, Y: f.origin.Y - q.Y*f.scale}
}

func (f *drawing) outline(g []sketch.Point) []page.Point {
	out := make([]page.Point, len(g))
	for i, q := range g {
		out[i] = f.at(q)
	}
	return out
}

// plates draws the parts: grey, a firm outline, a broken line where they go on.
func (f *drawing) plates(s sketch.Sketch) {
	for _, pl := range s.Plates {
		pts := f.outline(pl.Outline)
		fill := plateGrey
		if pl.Name == "backing" {
			fill = 0.7
		}
		f.p.Draw(f.box, page.Shape{Name: "plate " + pl.Name, Points: pts, Closed: true, Fill: fill})
		for i, q := range pts {
			next := pts[(i+1)%len(pts)]
			if pl.Cut[i] {
				f.p.Draw(f.box, page.Shape{Points: ragged(q, next), Line: 0.15, Fill: page.None})
				f.edges = append(f.edges, stroke{q, next})
				continue
			}
			f.p.Line(f.box, q.X, q.Y, next.X, next.Y, 0.35, 0)
			f.edges = append(f.edges, stroke{q, next})
		}
	}
}

// parts returns the areas on paper that plates, beads and dimensions take.
func (f *drawing) parts(s sketch.Sketch) []page.Rect {
	var out []page.Rect
	add := func(g []sketch.Point, margin float64) {
		r := page.Rect{X: math.Inf(1), Y: math.Inf(1)}
		right, bottom := math.Inf(-1), math.Inf(-1)
		for _, q := range f.outline(g) {
			r.X, r.Y = min(r.X, q.X-margin), min(r.Y, q.Y-margin)
			right, bottom = max(right, q.X+margin), max(bottom, q.Y+margin)
		}
		r.W, r.H = right-r.X, bottom-r.Y
		out = append(out, r)
	}
	for _, p := range s.Plates {
		add(p.Outline, 1)
	}
	for _, b := range s.Beads {
		add(b.Outline, 1)
	}
	for _, d := range s.Dims {
		off := sketch.Point{X: d.Away.X, Y: d.Away.Y}.Times(9 / f.scale)
		if d.Name == "z" || d.Inside {
			off = sketch.Point{X: d.Away.X, Y: d.Away.Y}.Times(28 / f.scale)
		}
		add([]sketch.Point{d.From, d.To, d.From.Add(off), d.To.Add(off)}, 3)
	}
	for _, c := range s.Corners {
		if c.At.Y < 0 {
			add([]sketch.Point{{X: 0, Y: 0}}, 18)
		}
	}
	return out
}

// ragged returns a line with two kinks in the middle, the sign of a break.
func ragged(a, b page.Point) []page.Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	l := math.Hypot(dx, dy)
	if l < 3 {
		return []page.Point{a, b}
	}
	ux, uy := dx/l, dy/l
	mid := page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	k := min(1.2, l/6)
	along := func(t, side float64) page.Point {
		return page.Point{X: mid.X + ux*t - uy*side, Y: mid.Y + uy*t + ux*side}
	}
	return []page.Point{a, along(-k, 0), along(-k/3, k), along(k/3, -k), along(k, 0), b}
}

func (f *drawing) beads(s sketch.Sketch) {
	for _, b := range s.Beads {
		pts := f.outline(b.Outline)
		f.p.Draw(f.box, page.Shape{
			Name: "pass " + strconv.Itoa(b.Number), Points: pts, Closed: true, Line: 0.35, Fill: beadGrey,
		})
		for i, q := range pts {
			f.edges = append(f.edges, stroke{q, pts[(i+1)%len(pts)]})
		}
	}
}

// label writes a text centred on the first of the places where it is free of
// everything, else on the first where it only lies over an edge, which then gives
// way to it. It returns that place, and whether there was one.
func (f *drawing) label(s page.Style, text string, places []page.Point) (page.Point, bool) {
	text = page.Clean(text)
	for _, strict := range []bool{true, false} {
		for _, c := range places {
			r := f.labelArea(s, text, c)
			if !f.free(r) || crossed(r, f.lines) || strict && crossed(r, f.edges) {
				continue
			}
			if !strict {
				f.p.Frame(f.box, r.Inset(0.2, 0.2), 0, 1)
			}
			f.write(s, text, c)
			return c, true
		}
	}
	return page.Point{}, false
}

// write sets a clean text centred on a place.
func (f *drawing) write(s page.Style, text string, c page.Point) {
	w := s.Width(text)
	f.taken = append(f.taken, f.labelArea(s, text, c))
	f.p.Write(f.box, c.X-w/2, c.Y+s.Ascent()/2-0.3, w+0.01, page.Left, s, text)
}

// labelArea is what a text centred on a place covers, with a little air.
func (f *drawing) labelArea(s page.Style, text string, c page.Point) page.Rect {
	w, cap := s.Width(text), s.Ascent()
	return page.Rect{X: c.X - w/2 - 0.4, Y: c.Y - cap/2 - 0.4, W: w + 0.8, H: cap + s.Descent() + 0.6}
}

// crossed tells whether one of the lines runs through an area.
func crossed(r page.Rect, lines []stroke) bool {
	for _, l := range lines {
		if through(r, l) {
			return true
		}
	}
	return false
}

// through clips a line against the four sides of an area: what is left of it lies
// inside.
func through(r page.Rect, l stroke) bool {
	from, to := 0.0, 1.0
	dx, dy := l.b.X-l.a.X, l.b.Y-l.a.Y
	for _, side := range [4][2]float64{
		{-dx, l.a.X - r.X}, {dx, r.Right() - l.a.X}, {-dy, l.a.Y - r.Y}, {dy, r.Bottom() - l.a.Y},
	} {
		switch rate, room := side[0], side[1]; {
		case rate == 0 && room < 0:
			return false
		case rate < 0:
			from = max(from, room/rate)
		case rate > 0:
			to = min(to, room/rate)
		}
	}
	return from < to
}

func (f *drawing) free(r page.Rect) bool {
	in := f.frame.Inset(0.5, 0.5)
	if r.X < in.X || r.Y < in.Y || r.Right() > in.Right() || r.Bottom() > in.Bottom() {
		return false
	}
	for _, t := range f.taken {
		if r.X < t.Right() && t.X < r.Right() && r.Y < t.Bottom() && t.Y < r.Bottom() {
			return false
		}
	}
	return true
}

// caption says scale and what the picture shows, at its foot.
func (f *drawing) caption(pl *plan.Plan) {
	text := f.Words.Say("picture.scale", f.text)
	if len(pl.Runs) > 1 {
		text = f.Words.Say("picture.order") + " · " + text
	}
	if pl.Prep.T1 == 0 || pl.Prep.T2 == 0 {
		text += " · " + f.Words.Say("picture.thickness")
	}
	if pl.Joint.Sides == 2 && (pl.Prep.Kind == joint.Fillet || pl.Prep.Kind == joint.Lap) {
		text += " · " + f.Words.Say("picture.both")
	}
	y := f.frame.Bottom() - 1.6
	w := f.frame.W - 4
	f.p.Write(f.box, f.frame.X+2, y, w, page.Left, small, text)
	f.taken = append(f.taken, page.Rect{X: f.frame.X, Y: y - 3.4, W: f.frame.W, H: 5})
}
