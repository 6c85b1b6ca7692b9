package traveller

import (
	"strconv"
	"strings"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/wrap"
	"seamtally/batch/units"
)

// Heights of a template's pages, and the column kept free for the upright check line.
const (
	wrapTitle  = 22
	wrapFoot   = 54 // figure, steps and table of the first page
	wrapSheet  = 9  // heading of a sheet that is all template
	checkStrip = 9
	checkRight = 14
	// mostSheets is how many sheets anyone would glue together; a larger line is laid
	// out on the tube by its figures.
	mostSheets = 24
)

// lying returns the builder for pages that lie on their long side.
func (b *builder) lying() *builder {
	own := *b
	own.w, own.h = b.h, b.w
	own.width = own.w - marginLeft - marginRight
	own.foot = own.h - marginEdge - footHeight - 1
	return &own
}

// wraps lays out the templates of all tubes that are cut to sit on others.
func (b *builder) wraps(all []wrap.Template) {
	own := b.lying()
	for i := range all {
		p := own.newPage(own.wrapHead(all, i, 0, 1))
		if i == 0 {
			p.Mark(0, b.say("wrap.title"))
		}
		p.Mark(1, markList(all[i].Marks, 12))
		own.wrapFirst(p, all, i)
	}
}

func (b *builder) wrapHead(all []wrap.Template, i, part, of int) head {
	t := &all[i]
	h := head{
		assembly: strings.Join(t.Assemblies, ", "), drawing: strings.Join(t.Drawings, ", "), rev: strings.Join(t.Revs, ", "),
		sheet: b.say("wrap.head", strconv.Itoa(i+1), strconv.Itoa(len(all))),
	}
	if of > 1 {
		h.sheet = b.say("wrap.headpart", strconv.Itoa(i+1), strconv.Itoa(part), strconv.Itoa(of))
	}
	return h
}

func (b *builder) wrapPen() wrap.Pen { return wrap.Pen{Words: b.words, Show: b.show} }

// wrapFirst lays out the page that says what a template is and how to use it. A
// template that is small enough stands on it, a larger one follows on sheets of
// its own.
func (b *builder) wrapFirst(p *page.Page, all []wrap.Template, i int) {
	t := &all[i]
	width := b.width - checkRight
	b.wrapTitle(p, page.Rect{X: b.left, Y: b.top, W: b.width, H: wrapTitle}, t)
	foot := page.Rect{X: b.left, Y: b.foot - checkStrip - wrapFoot, W: width, H: wrapFoot}
	area := page.Rect{X: b.left, Y: b.top + wrapTitle, W: width, H: foot.Y - b.top - wrapTitle - 1.5}
	b.checkLines(p)
	if w, h := t.Size(); w <= area.W && h <= area.H {
		b.wrapFooter(p, foot, t, 1)
		b.wrapPen().Draw(p, t.Windows(area)[0], t)
		return
	}
	sheets := t.Windows(page.Rect{X: b.left, Y: b.top + wrapSheet, W: width, H: b.foot - b.top - wrapSheet - checkStrip - 1.5})
	if len(sheets) > mostSheets {
		sheets = nil
	}
	b.wrapFooter(p, foot, t, len(sheets))
	b.wrapOverview(p, area, t, sheets)
	for k, win := range sheets {
		b.wrapPart(b.newPage(b.wrapHead(all, i, k+1, len(sheets))), t, win, k+1)
	}
}

// wrapOverview stands on the first page for a template that does not fit there.
func (b *builder) wrapOverview(p *page.Page, area page.Rect, t *wrap.Template, sheets []wrap.Window) {
	box := p.Box("overview words", page.Rect{X: area.X, Y: area.Y, W: area.W, H: 7})
	key := "wrap.plan"
	switch len(sheets) {
	case 0:
		key = "wrap.large"
	case 1:
		key, sheets = "wrap.next", nil
	}
	p.Write(box, area.X, area.Y+5, area.W, page.Left, title, b.say(key))
	b.wrapPen().Overview(p, page.Rect{X: area.X, Y: area.Y + 8, W: area.W, H: area.H - 9}, t, sheets)
}

// wrapPart lays out a sheet that is all template.
func (b *builder) wrapPart(p *page.Page, t *wrap.Template, w wrap.Window, number int) {
	r := page.Rect{X: b.left, Y: b.top, W: b.width, H: wrapSheet - 1}
	box := p.Box("template title", r)
	text := b.wrapPen().Title(t)
	if w.Cols*w.Rows > 1 {
		p.Write(box, r.X, r.Y+5, 14, page.Left, title.At(14), "("+strconv.Itoa(number)+")")
		r.X, r.W = r.X+14, r.W-14
	}
	p.Write(box, r.X, r.Y+5, r.W, page.Left, title.At(12), text)
	b.checkLines(p)
	b.wrapPen().Draw(p, w, t)
}

// wrapTitle names the joints and the tube, with the figures to check against.
func (b *builder) wrapTitle(p *page.Page, r page.Rect, t *wrap.Template) {
	box := p.Box("template title", r)
	cols := r.Columns(5, 92, 170)
	l := cols[0]
	p.Write(box, l.X, l.Y+7.5, l.W, page.Left, page.Style{Face: page.Bold, Size: 20}, markList(t.Marks, 4))
	p.Write(box, l.X, l.Y+13.2, l.W, page.Left, strong, b.wrapPen().Names(t))
	p.Write(box, l.X, l.Y+17.8, l.W, page.Left, small.At(8.5), b.say("wrap.lead"))
	facts := b.wrapFacts(t)
	in := page.Rect{X: cols[1].X, Y: r.Y + 0.5, W: cols[1].W, H: r.H - 3}
	p.Frame(box, in, 0.5, page.None)
	for row := range 2 {
		line := page.Rect{X: in.X, Y: in.Y + float64(row)*in.H/2, W: in.W, H: in.H / 2}
		for k, c := range line.Columns(0, 1, 1, 1, 1) {
			f := facts[row*4+k]
			p.Write(box, c.X+1.5, c.Y+3.5, c.W-2, page.Left, label, f[0])
			p.Write(box, c.X+1.5, c.Y+8, c.W-2, page.Left, strong.At(10.5), f[1])
			if k > 0 {
				p.Line(box, c.X, c.Y, c.X, c.Bottom(), 0.15, 0.4)
			}
		}
	}
	p.Line(box, in.X, in.Y+in.H/2, in.Right(), in.Y+in.H/2, 0.15, 0.4)
}

func (b *builder) wrapFacts(t *wrap.Template) [8][2]string {
	chord, tip := b.show.Size(t.Chord).String(), b.show.Size(t.Line.Tip()).String()
	switch {
	case t.Mitre > 0:
		chord = b.say("saw.end.mitre", b.show.Num(float64(t.Mitre), 1))
	case t.Chord == 0:
		chord = b.say("wrap.face")
	}
	angle := "wrap.angle"
	if !t.AngleGiven {
		angle = "wrap.angletaken"
	}
	return [8][2]string{
		{b.say("wrap.dia"), b.show.Size(t.Dia).String()}, {b.say("wrap.wall"), b.show.Size(t.Wall).String()},
		{b.say("wrap.chord"), chord}, {b.say(angle), b.show.Num(float64(t.Angle), 1) + "°"},
		{b.say("wrap.round"), b.show.Size(t.Line.Round()).String()}, {b.say("wrap.base"), b.show.Size(t.Base).String()},
		{b.say("wrap.tip"), tip}, {b.say("wrap.pieces"), strconv.Itoa(t.Pieces)},
	}
}

// wrapFooter is the figure, the steps and the line in figures.
func (b *builder) wrapFooter(p *page.Page, r page.Rect, t *wrap.Template, sheets int) {
	stations := t.Stations()
	blocks := (len(stations) + perBlock - 1) / perBlock
	figures := float64(blocks) * blockWidth
	cols := r.Columns(4, 58, r.W-58-figures-8, figures)
	b.wrapPen().Figure(p, cols[0], t)
	b.wrapSteps(p, cols[1], t, sheets)
	for k := range blocks {
		part := stations[k*perBlock : min(len(stations), (k+1)*perBlock)]
		b.stations(p, page.Rect{X: cols[2].X + blockWidth*float64(k), Y: r.Y, W: blockWidth - 2, H: r.H}, t, part)
	}
}

// wrapSteps says how the paper is used, in the order in which it is done.
func (b *builder) wrapSteps(p *page.Page, r page.Rect, t *wrap.Template, sheets int) {
	box := p.Box("steps", r)
	p.Write(box, r.X, r.Y+4, r.W, page.Left, title.At(10.5), b.say("wrap.howto"))
	y := r.Y + 8.6
	s := small.At(8.5)
	for i, text := range b.steps(t, sheets) {
		lines := page.Wrap(s, text, r.W-5, 3)
		if y+float64(len(lines)-1)*s.Leading()+s.Descent() > r.Bottom() {
			return
		}
		p.Write(box, r.X, y, 5, page.Left, page.Style{Face: page.Bold, Size: 8.5}, strconv.Itoa(i+1))
		y = p.Lines(box, r.X+5, y, r.W-5, s, lines) + 0.35
	}
}

// steps are the steps for a template on so many sheets; without any the line is
// laid out on the tube by its figures.
func (b *builder) steps(t *wrap.Template, sheets int) (out []string) {
	meet := b.show.AtLeast(units.MM(t.Round() / 100)).String()
	square := b.say("wrap.step.square", b.show.Size(t.Base).String())
	if sheets > 0 {
		around := "wrap.step.wrap"
		if t.Square() {
			around = "wrap.step.wrapsquare"
		}
		out = append(out, b.show.Written(b.inUnits(b.say("wrap.step.print"))))
		if sheets > 1 {
			out = append(out, b.say("wrap.step.join"))
		}
		out = append(out, b.say("wrap.step.cut"), square, b.say(around, meet), b.say("wrap.step.check"))
	} else {
		out = append(out, square, b.say("wrap.step.layout"), b.say("wrap.step.line"))
	}
	if t.Proud > 0.05 {
		out = append(out, b.say("wrap.step.torch", b.show.AtLeast(t.Proud).String(), b.proudSide(t)))
	}
	not := b.say("wrap.step.not")
	if t.Bevels {
		not += " " + b.say("wrap.bevels")
	}
	return append(out, not)
}

// proudSide names the line nearest to where the inner edge stands proud the most.
func (b *builder) proudSide(t *wrap.Template) string {
	switch at := float64(t.ProudAt) / t.Round(); {
	case at > 0.375 && !t.Square():
		return b.say("wrap.toe")
	case at < 0.125 && !t.Square():
		return b.say("wrap.heel")
	}
	return b.say("wrap.side")
}

const (
	perBlock   = 9
	blockWidth = 46
	stationRow = 4.6
)

// stations is the line in figures, for a check of the print and for laying it out
// on the tube by hand.
func (b *builder) stations(p *page.Page, r page.Rect, t *wrap.Template, all []wrap.Station) {
	box := p.Box("stations", r)
	from := "wrap.from"
	if t.Square() {
		from = "wrap.fromcrown"
	}
	p.Line(box, r.X, r.Y+0.2, r.Right(), r.Y+0.2, 0.4, 0)
	keys := []string{"wrap.station", from, "wrap.height"}
	widths := []float64{10, 14, 14}
	free := r.W - float64(len(keys)-1)
	for k, key := range keys {
		widths[k] = max(widths[k], label.Width(page.Clean(b.say(key)))+0.4)
		free -= widths[k]
	}
	for k := range widths {
		widths[k] += max(0, free/float64(len(widths)))
	}
	cells := r.Columns(1, widths...)
	for k, key := range keys {
		p.Write(box, cells[k].X, r.Y+4, cells[k].W, page.Right, label, b.say(key))
	}
	p.Line(box, r.X, r.Y+5.2, r.Right(), r.Y+5.2, 0.4, 0)
	pen := b.wrapPen()
	for i, s := range all {
		y := r.Y + 5.2 + float64(i)*stationRow
		number := strconv.Itoa(s.Number)
		if s.Mirror != s.Number {
			number += ", " + strconv.Itoa(s.Mirror)
		}
		for k, text := range []string{number, pen.Size(s.X), pen.Size(s.Height)} {
			p.Write(box, cells[k].X, y+3.5, cells[k].W, page.Right, small.At(8.5), text)
		}
		p.Line(box, r.X, y+stationRow, r.Right(), y+stationRow, 0.1, 0.5)
	}
}
