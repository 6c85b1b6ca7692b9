package traveller

import (
	"math"
	"strconv"

	"seamtally/batch/traveller/cutting"
	"seamtally/batch/traveller/page"
)

const (
	barLeft   = 25.0 // column for how many bars
	tickBox   = 5.0
	tickStep  = 6.2
	legendRow = 3.7
	// mostTicks is how many boxes one would tick; with more bars each is for several.
	mostTicks = 50
)

// bars draws every bar of a section, like ones once with their number.
func (f *flow) bars(s *cutting.Section) {
	width := f.width - barLeft
	over := math.Ceil(float64(s.Longest())/width - 1e-9)
	pen := cutting.Pen{Words: f.words, Show: f.show, Kerf: s.Kerf, Scale: 1 / over}
	note := page.Wrap(small.At(8.5), f.say("saw.scale", "1 : "+strconv.Itoa(int(over))), f.width, 4)
	h := float64(len(note)) * small.At(8.5).Leading()
	f.section(f.say("saw.plan"), h+30)
	r, box := f.take("saw note", h+2)
	f.p.Lines(box, r.X, r.Y+2.6, r.W, small.At(8.5), note)
	for i, pat := range s.Patterns() {
		f.bar(pen, &pat, i+1)
	}
	f.gap(3)
}

// bar draws one pattern: how many, the bar to scale, what its pieces are where
// they cannot hold it, and a box for each bar to tick.
func (f *flow) bar(pen cutting.Pen, pat *cutting.Pattern, number int) {
	l := pen.Layout(pat)
	var legend []string
	if l.Legend {
		legend = pen.Legend(pat, f.width-barLeft)
	}
	ticks, each := ticksFor(pat.Count)
	perRow := int((f.width - barLeft) / tickStep)
	tickRows := 0
	if pat.Count > 1 {
		tickRows = (ticks + perRow - 1) / perRow
	}
	follow := float64(min(len(legend), 6))*legendRow + float64(tickRows)*(tickBox+1.5)
	if f.room() < l.Height+3+follow && f.y > f.top {
		f.turn()
	}
	r, box := f.take("bar "+strconv.Itoa(number), l.Height+2.5)
	x := r.X
	if pat.Count == 1 {
		f.p.Frame(box, page.Rect{X: x, Y: r.Y + 1, W: tickBox, H: tickBox}, 0.35, page.None)
		x += tickBox + 1.6
	}
	w := r.X + barLeft - 1 - x
	f.p.Write(box, x, r.Y+5.2, w, page.Left, title.At(13), strconv.Itoa(pat.Count)+" ×")
	f.p.Write(box, x, r.Y+9.7, w, page.Left, body, f.show.Stock(pat.Stock).String())
	pen.Bar(f.p, box, r.X+barLeft, r.Y+0.5, pat, l)
	for _, line := range legend {
		r, box := f.take("legend", legendRow)
		f.p.Write(box, r.X+barLeft, r.Y+2.6, r.W-barLeft, page.Left, small.At(8.5), line)
	}
	f.ticks(pat.Count, ticks, each, tickRows, perRow)
	f.gap(1.5)
}

// ticksFor returns how many boxes there are for so many bars, and how many bars one
// box is for.
func ticksFor(bars int) (boxes, each int) {
	each = 1
	for bars > mostTicks*each {
		each *= 10
	}
	return (bars + each - 1) / each, each
}

// ticks draws numbered boxes, one for each bar or for each so many.
func (f *flow) ticks(bars, boxes, each, rows, perRow int) {
	if rows == 0 {
		return
	}
	n := 0
	for range rows {
		r, box := f.take("ticks", tickBox+1.5)
		if each > 1 && n == 0 {
			f.p.Lines(box, r.X, r.Y+2.3, barLeft-1, small, page.Wrap(small, f.say("saw.tens", strconv.Itoa(each)), barLeft-1, 2))
		}
		for k := range min(perRow, boxes-n) {
			b := page.Rect{X: r.X + barLeft + float64(k)*tickStep, Y: r.Y + 0.2, W: tickBox, H: tickBox}
			f.p.Frame(box, b, 0.25, page.None)
			f.p.Write(box, b.X, b.Y+3.5, b.W, page.Centre, label, strconv.Itoa(min((n+k+1)*each, bars)))
		}
		n += perRow
	}
}
