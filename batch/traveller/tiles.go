package traveller

import (
	"strconv"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
)

// pictureRow puts the cross-section beside size, runs and position.
func (f *flow) pictureRow(s setup.Setup, h float64) {
	p := s.Pattern()
	r, _ := f.take("picture row", h)
	cols := page.Rect{X: r.X, Y: r.Y, W: r.W, H: h - 2.5}.Columns(3, 122, 60)
	f.pen.CrossSection(f.p, cols[0], p)
	right := cols[1]
	box := f.p.Box("size", right)
	// The gauge size comes first and largest.
	y := right.Y
	for i, share := range [3]float64{0.41, 0.28, 0.31} {
		r := page.Rect{X: right.X, Y: y, W: right.W, H: right.H * share}
		f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
		[3]func(page.BoxID, page.Rect, *plan.Plan){f.gauge, f.runsTile, f.positionTile}[i](box, r, p)
		y += r.H
	}
	f.p.Line(box, right.X, right.Bottom(), right.Right(), right.Bottom(), 0.25, 0)
}

// tile is a figure to be read at arm's length: a label, the figure, words beside
// it and one line below, or two. The figure is as large as the tile allows.
func (f *flow) tile(box page.BoxID, r page.Rect, name, figure, beside, under string) {
	named, head, foot := label.At(9), 4.6, 4.3
	if r.H < 14 {
		named, head, foot = label, 3.5, 3.6
	}
	f.p.Write(box, r.X, r.Y+head-0.9, r.W, page.Left, named, name)
	style, lines := body, []string{under}
	if got, _ := page.Fit(body, under, r.W); got.Size < 8.5 {
		style = small
		lines = page.Wrap(small, under, r.W, 2)
		foot += small.Leading() * float64(len(lines)-1)
	}
	f.p.Lines(box, r.X, r.Bottom()-1-style.Leading()*float64(len(lines)-1), r.W, style, lines)
	top, room := r.Y+head, r.H-head-foot
	s := page.Style{Face: page.Bold, Size: max(page.MinSize, min(30, room/(1.12*page.MMPerPoint)))}
	base := top + room/2 + (s.Ascent()-s.Descent())/2
	w := r.W
	if beside != "" {
		w *= 0.4
	}
	got := f.p.Write(box, r.X, base, w, page.Left, s, figure)
	if beside != "" {
		x := min(got.Width(page.Clean(figure)), w) + 3
		f.p.Write(box, r.X+x, base, r.W-x, page.Left, body, beside)
	}
}

// runsTile is the number of passes and, beside it, the shade of the filter.
func (f *flow) runsTile(box page.BoxID, r page.Rect, p *plan.Plan) {
	if p.FilterShade > 0 {
		const share = 0.36
		at := page.Rect{X: r.Right() - r.W*share, Y: r.Y, W: r.W * share, H: r.H}
		f.p.Line(box, at.X-1, at.Y+1, at.X-1, at.Bottom()-1, 0.25, 0)
		f.tile(box, page.Rect{X: at.X + 0.5, Y: at.Y, W: at.W - 0.5, H: at.H}, f.say("fact.shade"), strconv.Itoa(p.FilterShade), "", "")
		r.W -= at.W + 2
	}
	key := "runs.seam"
	if p.Joint.Sides == 2 && p.Prep.LegA > 0 {
		key = "runs.side"
	}
	switch n := len(p.Runs); n {
	case 0:
		f.tile(box, r, f.say("runs"), "–", "", "")
	case 1:
		f.tile(box, r, f.say("runs"), "1", f.say(key+".one"), f.phrase(p.Technique))
	default:
		f.tile(box, r, f.say("runs"), strconv.Itoa(n), f.say(key), f.phrase(p.Technique))
	}
}

// positionTile shows how the joint lies.
func (f *flow) positionTile(box page.BoxID, r page.Rect, p *plan.Plan) {
	words := ""
	if key := "position." + p.Joint.Position; f.words.Has(key) {
		words = f.say(key)
	}
	size := r.H - 3.5
	f.tile(box, page.Rect{X: r.X, Y: r.Y, W: r.W - size - 2, H: r.H}, f.say("position"), dash(f.names.Position(p)), "", words)
	picture.Icon{P: f.p, Box: box, At: page.Point{X: r.Right() - size - 0.5, Y: r.Y + 1.5}, Size: size}.Position(p.Joint.Position, picture.KindOf(p))
}
