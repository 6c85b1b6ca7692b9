package traveller

import (
	"strconv"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/traveller/show"
	"seamtally/batch/traveller/sketch"
	"seamtally/batch/units"
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
	for i, share := range [3]float64{0.38, 0.29, 0.33} {
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
	s := page.Style{Face: page.Bold, Size: min(30, room/(1.12*page.MMPerPoint))}
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

// gauge is the size that the gauge must find, or the thickness to be joined.
func (f *flow) gauge(box page.BoxID, r page.Rect, p *plan.Plan) {
	key := "gauge"
	switch {
	case picture.KindOf(p) == joint.FlareBevel || picture.KindOf(p) == joint.FlareV:
		key = "gauge.radius"
	case isButt(p) && p.Joint.Size.Means != joint.Penetration:
		key = "gauge.through"
	}
	text, under := f.gaugeText(p)
	f.tile(box, r, f.say(key), text, "", under)
}

func (f *flow) gaugeText(p *plan.Plan) (big, under string) {
	r := p.Prep
	if grow := sketch.Growth(p); grow > 0 && r.LegA > 0 {
		return f.grownText(p, grow)
	}
	switch {
	case r.LegA > 0 && r.LegB > 0 && r.LegA != r.LegB:
		return "z " + f.show.Size(r.LegA).Num + " × " + f.show.Size(r.LegB).String(), f.say("gauge.unequal")
	case r.LegA > 0 && p.Joint.Size.Means == joint.Throat:
		return "a " + f.show.Size(r.Throat).String(), f.say("gauge.leg", f.show.Size(r.LegA).String())
	case r.LegA > 0:
		return "z " + f.show.Size(r.LegA).String(), f.say("gauge.throat", f.show.Size(r.Throat).String())
	case p.Joint.Size.Means == joint.Penetration:
		return "s " + f.show.Size(p.Joint.Size.A).String(), f.prepLine(p)
	case r.Kind == joint.Edge && r.Throat > 0:
		return "a " + f.show.Size(r.Throat).String(), f.say("gauge.edge")
	case r.Kind == joint.FlareBevel || r.Kind == joint.FlareV:
		return "R " + f.show.Size(r.Radius).String(), f.say("gauge.flare")
	case isButt(p) && r.T1 > 0:
		return f.show.Size(thinnest(r.T1, r.T2)).String(), f.say("gauge.full") + " · " + f.prepLine(p)
	}
	return "–", ""
}

// grownText is the gauge size of a fillet over a wide gap: the legs are longer by
// the gap, and what the drawing asks for stands under them.
func (f *flow) grownText(p *plan.Plan, grow units.MM) (big, under string) {
	r := p.Prep
	asked := "z " + f.show.Size(r.LegA).Num
	big = "z " + f.show.Size(r.LegA+grow).String()
	if r.LegB > 0 && r.LegA != r.LegB {
		asked += " × " + f.show.Size(r.LegB).Num
		big = "z " + f.show.Size(r.LegA+grow).Num + " × " + f.show.Size(r.LegB+grow).String()
	}
	if p.Joint.Size.Means == joint.Throat {
		asked = "a " + f.show.Size(r.Throat).Num
	}
	return big, f.say("gauge.gap", asked, f.show.Size(grow).String())
}

func thinnest(a, b units.MM) units.MM {
	if a == 0 || b == 0 {
		return max(a, b)
	}
	return min(a, b)
}

// prepLine says the preparation in one line.
func (f *flow) prepLine(p *plan.Plan) string {
	r := p.Prep
	parts := []string{}
	if r.Angle > 0 && r.Kind != joint.SquareButt {
		parts = append(parts, show.Num(float64(r.Angle), 1)+"°")
	}
	parts = append(parts, f.say("dim.gap")+" "+f.show.Size(r.Gap).String())
	if r.Kind != joint.SquareButt {
		parts = append(parts, f.say("dim.face")+" "+f.show.Size(r.RootFace).String())
	}
	if r.Backing != "" {
		parts = append(parts, f.say("backing."+r.Backing))
	}
	return strings.Join(parts, " · ")
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
