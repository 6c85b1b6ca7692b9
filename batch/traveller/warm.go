package traveller

import (
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

// How warm the joint must be stands in one place on every sheet: large where it is
// heated, and in one firm line where it is not, because a sheet that says nothing
// leaves it open.
const (
	warmHeight = 15.0 // with a preheat
	coldHeight = 9.5  // without
)

func (f *flow) preheatHeight(p *plan.Plan) float64 {
	h := coldHeight
	if p.Preheat != nil {
		h = warmHeight
	}
	if f.squeeze >= squeezed && (p.Preheat == nil || f.squeeze >= pressed) {
		h -= 1.5
	}
	return h
}

// preheat says what the joint must reach before the first run and must not pass
// between two.
func (f *flow) preheat(p *plan.Plan) {
	r, box := f.take("preheat", f.preheatHeight(p))
	in := page.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H - 2.5}
	style, base, thick := page.Style{Face: page.Bold, Size: 18}, in.Y+in.H/2+2.4, 1.1
	between := style.At(14)
	if p.Preheat == nil {
		style, base, thick = page.Style{Face: page.Bold, Size: 12}, in.Y+in.H/2+1.6, 0.5
		between = style
	}
	f.p.Frame(box, in, thick, page.None)
	cols := in.Inset(3, 0).Columns(4, 59, 50, 63)
	f.p.Write(box, cols[0].X, base, cols[0].W, page.Left, style, f.preheatWords(p))
	where := cols[2]
	if p.Interpass != nil && (len(p.Runs) > 1 || twoSided(p)) {
		f.p.Write(box, cols[1].X, base, cols[1].W, page.Left, between, f.say("interpass", "≤ "+f.mostWarm(p)))
	} else {
		where = page.Rect{X: cols[1].X, W: cols[2].Right() - cols[1].X}
	}
	if p.Preheat == nil {
		return
	}
	key := "preheat.where"
	if f.show.US {
		key = "preheat.where.us"
	}
	lines := page.Wrap(small, f.say(key), where.W, 3)
	y := in.Y + in.H/2 - small.Leading()*float64(len(lines)-1)/2 + small.Ascent()/2 - 0.3
	f.p.Lines(box, where.X, y, where.W, small, lines)
}

// preheatWords say the preheat, that there is none, or that nobody worked it out.
func (f *flow) preheatWords(p *plan.Plan) string {
	switch {
	case p.Preheat == nil && slices.ContainsFunc(p.Checks, func(c finding.Check) bool { return c.Code == "al-cold" }):
		return f.say("preheat.check", f.say("level."+string(finding.Warning)))
	case p.Preheat != nil:
		return f.say("preheat", "≥ "+f.leastWarm(p))
	case p.PreheatWords == "", strings.HasPrefix(p.PreheatWords, "none"):
		return f.say("preheat.none")
	}
	return f.say("preheat.open")
}

// leastWarm is the temperature that the joint must have, and mostWarm the one that it must
// not pass, of a plan that has them: rounded to what a stick or an instrument shows, but
// not past each other.
func (f *flow) leastWarm(p *plan.Plan) string {
	return f.show.Warm(*p.Preheat, p.Interpass).String()
}

func (f *flow) mostWarm(p *plan.Plan) string {
	return f.show.Cool(*p.Interpass, p.Preheat).String()
}
