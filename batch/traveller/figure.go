package traveller

import (
	"math"
	"strconv"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
	"seamtally/batch/units"
)

// scales are the scales a picture may have: paper over part.
var scales = []struct {
	factor float64
	text   string
}{
	{10, "10 : 1"}, {8, "8 : 1"}, {7, "7 : 1"}, {6, "6 : 1"}, {5, "5 : 1"}, {4.5, "4.5 : 1"}, {4, "4 : 1"}, {3.5, "3.5 : 1"},
	{3, "3 : 1"}, {2.75, "2.75 : 1"}, {2.5, "2.5 : 1"}, {2.25, "2.25 : 1"}, {2, "2 : 1"}, {1.75, "1.75 : 1"},
	{1.5, "1.5 : 1"}, {1.25, "1.25 : 1"}, {1, "1 : 1"}, {0.75, "3 : 4"}, {0.5, "1 : 2"}, {0.2, "1 : 5"}, {0.1, "1 : 10"}, {0.05, "1 : 20"}, {0.02, "1 : 50"}, {0.01, "1 : 100"},
}

// Margins of a picture inside its frame, for dimensions.
const (
	figureSide = 14
	figureTop  = 5
	figureFoot = 8
	figureDim  = 8 // more where dimensions or an angle stand above or below
)

// Greys of a picture.
const (
	plateGrey = 0.87
	beadGrey  = 1
)

// drawing is a cross-section being drawn: true millimetres to paper.
type drawing struct {
	*builder
	p      *page.Page
	box    page.BoxID
	frame  page.Rect
	origin page.Point // paper place of the sketch's origin
	scale  float64
	text   string      // the scale, in words
	taken  []page.Rect // areas of labels already set
}

// crossSection draws the joint into a frame. What the plan does not know well
// enough to draw is said in words.
func (b *builder) crossSection(p *page.Page, frame page.Rect, pl *plan.Plan) {
	box := p.Box("picture", frame)
	p.Frame(box, frame, 0.25, page.None)
	s, ok := sketch.Build(pl)
	if !ok {
		lines := page.Wrap(body, b.say("picture.none"), frame.W-10, 3)
		p.Lines(box, frame.X+5, frame.Y+frame.H/2, frame.W-10, body, lines)
		return
	}
	f := b.place(p, box, frame, s)
	f.plates(s)
	f.beads(s)
	f.caption(pl)
	for _, tail := range []string{f.symbolTail(pl), ""} {
		if r, ok := f.symbolCorner(f.parts(s), f.symbolWidth(pl, tail)); ok {
			f.symbol(pl, r, tail)
			f.taken = append(f.taken, r)
			break
		}
	}
	for _, d := range s.Dims {
		f.dimension(d)
	}
	for _, c := range s.Corners {
		f.corner(c, s)
	}
	for _, n := range s.Notes {
		f.note(n)
	}
	f.numbers(s)
}

// place chooses the largest scale at which the sketch fits and centres it.
func (b *builder) place(p *page.Page, box page.BoxID, frame page.Rect, s sketch.Sketch) *drawing {
	low, high := s.Bounds()
	top, foot := margins(s)
	w, h := frame.W-2*figureSide, frame.H-top-foot
	f := &drawing{builder: b, p: p, box: box, frame: frame, scale: min(w/(high.X-low.X), h/(high.Y-low.Y))}
	f.text = b.say("picture.fit")
	for _, sc := range scales {
		if (high.X-low.X)*sc.factor <= w && (high.Y-low.Y)*sc.factor <= h {
			f.scale, f.text = sc.factor, sc.text
			break
		}
	}
	f.origin = page.Point{
		X: frame.X + figureSide + w/2 - (low.X+high.X)/2*f.scale,
		Y: frame.Y + top + h/2 + (low.Y+high.Y)/2*f.scale,
	}
	return f
}

// margins returns the white above and below a sketch: dimensions need room.
func margins(s sketch.Sketch) (top, foot float64) {
	top, foot = figureTop, figureFoot
	low, high := s.Bounds()
	for _, d := range s.Dims {
		if d.Away.Y > 0.5 && !d.Inside {
			top = figureTop + figureDim
		}
		if d.Away.Y < -0.5 && d.From.Y-low.Y < (high.Y-low.Y)*0.3 {
			foot = figureFoot + figureDim
		}
	}
	for _, c := range s.Corners {
		if c.At.Y < 0 {
			top = figureTop + figureDim
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
				continue
			}
			f.p.Line(f.box, q.X, q.Y, next.X, next.Y, 0.35, 0)
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
		f.p.Draw(f.box, page.Shape{
			Name: "pass " + strconv.Itoa(b.Number), Points: f.outline(b.Outline), Closed: true, Line: 0.35, Fill: beadGrey,
		})
	}
}

// numbers writes the number of each pass where it lies, or, where the passes are
// too thin for that, beside the weld with a line to the pass.
func (f *drawing) numbers(s sketch.Sketch) {
	var later []sketch.Bead
	for _, b := range s.Beads {
		if b.Number == 0 {
			continue
		}
		size := 8.0
		if math.Sqrt(b.Outline.Area())*f.scale > 9 {
			size = 11
		}
		if !f.roomy(b) {
			later = append(later, b)
			continue
		}
		if _, ok := f.label(page.Style{Face: page.Bold, Size: size}, strconv.Itoa(b.Number), []page.Point{f.at(b.Outline.Centre())}); !ok {
			later = append(later, b)
		}
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, b := range s.Beads {
		for _, q := range f.outline(b.Outline) {
			left, right = min(left, q.X), max(right, q.X)
		}
	}
	for _, b := range later {
		f.numberBeside(b, left, right)
	}
}

// roomy tells whether a number of the smallest type stands inside a pass.
func (f *drawing) roomy(b sketch.Bead) bool {
	lowX, highX, lowY, highY := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, q := range b.Outline {
		lowX, highX = min(lowX, q.X), max(highX, q.X)
		lowY, highY = min(lowY, q.Y), max(highY, q.Y)
	}
	return (highX-lowX)*f.scale > 2 && (highY-lowY)*f.scale > 2.6
}

// numberBeside writes a pass number to the left or right of the weld, odd numbers
// on one side and even ones on the other, with a line to the pass.
func (f *drawing) numberBeside(b sketch.Bead, left, right float64) {
	c := f.at(b.Outline.Centre())
	edges := [2]float64{right, left}
	if b.Number%2 == 0 {
		edges = [2]float64{left, right}
	}
	var places []page.Point
	for _, edge := range edges {
		way := math.Copysign(1, edge-c.X)
		for _, dx := range []float64{3, 5, 7, 9, 12, 16} {
			for _, dy := range []float64{0, -2, 2, -4, 4, -6, 6} {
				places = append(places, page.Point{X: edge + way*dx, Y: c.Y + dy})
			}
		}
	}
	at, ok := f.label(page.Style{Face: page.Bold, Size: page.MinSize}, strconv.Itoa(b.Number), places)
	if !ok {
		return
	}
	end := 1.6
	if at.X > c.X {
		end = -1.6
	}
	f.p.Line(f.box, c.X, c.Y, at.X+end, at.Y, 0.12, 0)
	f.p.Circle(f.box, c, 0.35, 0, 0)
}

// label writes a text centred on the first of the places where it is free. It
// returns that place, and whether there was one.
func (f *drawing) label(s page.Style, text string, places []page.Point) (page.Point, bool) {
	text = page.Clean(text)
	w, cap := s.Width(text), s.Ascent()
	for _, c := range places {
		r := page.Rect{X: c.X - w/2 - 0.4, Y: c.Y - cap/2 - 0.4, W: w + 0.8, H: cap + s.Descent() + 0.6}
		if !f.free(r) {
			continue
		}
		f.taken = append(f.taken, r)
		f.p.Write(f.box, c.X-w/2, c.Y+cap/2-0.3, w+0.01, page.Left, s, text)
		return c, true
	}
	return page.Point{}, false
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

// dimName returns how a dimension is marked: z6, a4.2, t 10.
func (f *drawing) dimName(d sketch.Dim) string {
	v := f.show.size(units.MM(d.Value)).Num
	switch d.Name {
	case "z", "a", "s":
		return d.Name + " " + v
	case "g":
		return f.say("dim.gap") + " " + v
	case "c":
		return f.say("dim.face") + " " + v
	case "h":
		return f.say("dim.depth") + " " + v
	case "r":
		return "R " + v
	}
	return v
}

// dimension draws a dimension line beside the points it measures.
func (f *drawing) dimension(d sketch.Dim) {
	from, to := f.at(d.From), f.at(d.To)
	away := page.Point{X: d.Away.X, Y: -d.Away.Y}
	if d.Inside {
		f.throat(d, from, to, away)
		return
	}
	off := 4.5
	if d.Name == "z" && away.X > 0 {
		off = f.clearOf(from, to, away)
	}
	a, b := shift(from, away, off), shift(to, away, off)
	f.p.Line(f.box, from.X, from.Y, shift(from, away, off+1).X, shift(from, away, off+1).Y, 0.12, 0.3)
	f.p.Line(f.box, to.X, to.Y, shift(to, away, off+1).X, shift(to, away, off+1).Y, 0.12, 0.3)
	f.span(a, b)
	f.keepClear(a, b)
	f.keepClear(from, a)
	f.keepClear(to, b)
	s := page.Style{Face: page.Bold, Size: 9.5}
	w := s.Width(page.Clean(f.dimName(d)))
	mid := page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	gapX, gapY := w/2+1.4, 3.2
	var places []page.Point
	for k := range 4 {
		more := float64(k) * 3.5
		places = append(places,
			page.Point{X: mid.X + away.X*(gapX+more), Y: mid.Y + away.Y*(gapY+more)},
			page.Point{X: mid.X + away.X*gapX - away.Y*(gapX+more), Y: mid.Y + away.Y*gapY + away.X*(gapY+more)},
			page.Point{X: mid.X + away.X*gapX + away.Y*(gapX+more), Y: mid.Y + away.Y*gapY - away.X*(gapY+more)})
	}
	f.label(s, f.dimName(d), places)
}

// clearOf keeps the leg's dimension line beyond the toe of an equal fillet.
func (f *drawing) clearOf(from, to, away page.Point) float64 {
	return math.Hypot(to.X-from.X, to.Y-from.Y)*1.1 + 13
}

// keepClear keeps labels off a dimension line.
func (f *drawing) keepClear(a, b page.Point) {
	f.taken = append(f.taken, page.Rect{
		X: min(a.X, b.X) - 0.3, Y: min(a.Y, b.Y) - 0.3, W: math.Abs(a.X-b.X) + 0.6, H: math.Abs(a.Y-b.Y) + 0.6,
	})
}

func shift(p, dir page.Point, by float64) page.Point {
	return page.Point{X: p.X + dir.X*by, Y: p.Y + dir.Y*by}
}

// span draws a dimension line with its arrows: inside where there is room, else
// from outside.
func (f *drawing) span(a, b page.Point) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l >= 5 {
		mid := page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
		f.p.Arrow(f.box, mid, a, 0.18, 1.8)
		f.p.Arrow(f.box, mid, b, 0.18, 1.8)
		return
	}
	if l == 0 {
		return
	}
	u := page.Point{X: (b.X - a.X) / l, Y: (b.Y - a.Y) / l}
	f.p.Line(f.box, a.X, a.Y, b.X, b.Y, 0.18, 0)
	f.p.Arrow(f.box, f.held(shift(a, u, -3.5)), a, 0.18, 1.6)
	f.p.Arrow(f.box, f.held(shift(b, u, 3.5)), b, 0.18, 1.6)
}

// held keeps a point inside the frame.
func (f *drawing) held(q page.Point) page.Point {
	return page.Point{
		X: max(f.frame.X, min(f.frame.Right(), q.X)),
		Y: max(f.frame.Y, min(f.frame.Bottom(), q.Y)),
	}
}

// throat draws the throat through the weld and carries its label outside.
func (f *drawing) throat(d sketch.Dim, from, to, away page.Point) {
	s := page.Style{Face: page.Bold, Size: 9.5}
	w := s.Width(page.Clean(f.dimName(d)))
	var places []page.Point
	for k := range 6 {
		places = append(places, shift(to, away, 6+w/2+float64(k)*2.5))
	}
	end := shift(to, away, 3)
	if c, ok := f.label(s, f.dimName(d), places); ok {
		end = shift(c, away, -w/2-1)
	}
	f.p.Draw(f.box, page.Shape{Points: []page.Point{from, end}, Line: 0.18, Grey: 0.45, Fill: page.None, Dash: 0.9})
}

// note writes the size of a plate that is cut short inside it.
func (f *drawing) note(n sketch.Note) {
	f.label(page.Style{Face: page.Bold, Size: 9.5}, f.show.size(units.MM(n.Value)).Num, []page.Point{f.at(n.At)})
}

// corner draws an included angle: an arc and the degrees.
func (f *drawing) corner(c sketch.Corner, s sketch.Sketch) {
	at := f.held(f.at(c.At))
	r := f.reach(c, s)
	arc := page.Arc(at, r, -c.To, -c.From)
	inside := arc[:0:0]
	for _, q := range arc {
		inside = append(inside, f.held(q))
	}
	f.p.Draw(f.box, page.Shape{Points: inside, Line: 0.18, Fill: page.None})
	for _, t := range []float64{c.From, c.To} {
		end := page.Point{X: at.X + (r+1)*math.Cos(t), Y: at.Y - (r+1)*math.Sin(t)}
		f.p.Draw(f.box, page.Shape{Points: []page.Point{at, f.held(end)}, Line: 0.12, Grey: 0.3, Fill: page.None, Dash: 0.8})
	}
	var places []page.Point
	for k := range 9 {
		d := r + 4 + float64(k/3)*2.5
		t := c.From + (c.To-c.From)*[3]float64{0.5, 0.3, 0.7}[k%3]
		places = append(places, page.Point{X: at.X + d*math.Cos(t), Y: at.Y - d*math.Sin(t)})
	}
	f.label(page.Style{Face: page.Bold, Size: 9.5}, num(c.Degrees, 1)+"°", places)
}

// reach returns the radius of an angle's arc: beyond the plates' surface, inside
// the frame.
func (f *drawing) reach(c sketch.Corner, s sketch.Sketch) float64 {
	depth := -c.At.Y * f.scale
	if c.At.Y == 0 {
		far := 0.0
		for _, b := range s.Beads {
			if b.Mirror {
				continue
			}
			for _, q := range b.Outline {
				far = max(far, q.Sub(c.At).Len()*f.scale)
			}
		}
		return min(far+12, f.frame.W)
	}
	slope := max(math.Sin((c.From+c.To)/2), 0.3)
	return min((depth+4.5)/slope, f.at(c.At).Y-f.frame.Y-6)
}

// caption says scale and what the picture shows, at its foot.
func (f *drawing) caption(pl *plan.Plan) {
	text := f.say("picture.scale", f.text)
	if len(pl.Runs) > 1 {
		text = f.say("picture.order") + " · " + text
	}
	if pl.Prep.T1 == 0 || pl.Prep.T2 == 0 {
		text += " · " + f.say("picture.thickness")
	}
	if pl.Joint.Sides == 2 && (pl.Prep.Kind == joint.Fillet || pl.Prep.Kind == joint.Lap) {
		text += " · " + f.say("picture.both")
	}
	y := f.frame.Bottom() - 1.6
	w := f.frame.W - 4
	f.p.Write(f.box, f.frame.X+2, y, w, page.Left, label, text)
	f.taken = append(f.taken, page.Rect{X: f.frame.X, Y: y - 3.4, W: f.frame.W, H: 5})
}
