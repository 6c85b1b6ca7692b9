package traveller

import (
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
	"seamtally/batch/units"
)

// checkLines draws a line of 100 mm along and one across every page of a template,
// and one of 4 in beside the first where inches are about.
func (b *builder) checkLines(p *page.Page) {
	r := page.Rect{X: b.left, Y: b.foot - checkStrip + 0.5, W: b.width, H: checkStrip - 0.5}
	box := p.Box("check lines", r)
	y := r.Y + 3
	x := b.checkLine(p, box, r.X+0.5, y, 100, "100 mm")
	if b.show.US || b.job.Opts.Paper == "letter" {
		b.checkLine(p, box, x+4, y, 4*units.MMPerInch, "4 in")
	}
	p.Write(box, r.X, r.Bottom()-0.6, r.W, page.Left, small, b.say("wrap.check"))
	up := page.Rect{X: b.left + b.width - checkRight + 2, Y: b.top + wrapTitle, W: checkRight - 2, H: 110}
	side := p.Box("check line up", up)
	bottom := up.Y + 106
	p.Write(side, up.X, up.Y+4, up.W, page.Right, small, "100 mm")
	ruler(p, side, page.Point{X: up.Right() - 4, Y: bottom}, page.Point{X: 0, Y: -1}, 100, 10)
}

// checkLine draws a line along the page and what it must measure; it returns where
// the words end.
func (b *builder) checkLine(p *page.Page, box page.BoxID, x, y, length float64, text string) float64 {
	tick := 10.0
	if text == "4 in" {
		tick = units.MMPerInch
	}
	ruler(p, box, page.Point{X: x, Y: y}, page.Point{X: 1}, length, tick)
	w := strong.Width(text)
	p.Write(box, x+length+2, y+1.2, w+0.1, page.Left, strong, text)
	return x + length + 2 + w
}

// ruler draws a line with end strokes and ticks across it.
func ruler(p *page.Page, box page.BoxID, from, way page.Point, length, tick float64) {
	to := page.Point{X: from.X + way.X*length, Y: from.Y + way.Y*length}
	p.Draw(box, page.Shape{Name: "check " + show.Figures{}.Num(length, 1), Points: []page.Point{from, to}, Line: 0.25, Fill: page.None})
	for at := 0.0; at <= length+1e-6; at += tick {
		half := 1.0
		if at == 0 || at > length-1e-6 {
			half = 2.2
		}
		q := page.Point{X: from.X + way.X*at, Y: from.Y + way.Y*at}
		p.Line(box, q.X-way.Y*half, q.Y-way.X*half, q.X+way.Y*half, q.Y+way.X*half, 0.2, 0)
	}
}
