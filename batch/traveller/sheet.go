package traveller

import (
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
)

// sheet lays out the welder's sheet of one set-up.
func (b *builder) sheet(a *setup.Assembly, s setup.Setup, of int) {
	p := s.Pattern()
	h := head{
		assembly: a.Name, drawing: p.Joint.Drawing, rev: p.Joint.Rev,
		sheet: b.say("head.setup", strconv.Itoa(s.Number), strconv.Itoa(of)), code: b.codeText(p),
	}
	f := b.flow(h)
	f.squeeze, f.signed = f.squeezeFor(s)
	f.p.Mark(1, b.say("mark.setup", strconv.Itoa(s.Number), markList(s.Marks(), 12)))
	f.titleBlock(s)
	f.checks(s, true)
	if p.Settings {
		f.station(p)
		f.dials(p)
	} else {
		f.noSettings(p)
	}
	if p.Settings {
		f.preheat(p)
		f.testBead(p)
	}
	f.pictureRow(s, f.pictureHeight(s))
	if p.Settings {
		f.handling(p)
	}
	f.checks(s, false)
	f.assumed(s)
	f.cautions(p)
	first := f.p
	f.signOff(s)
	if f.p != first && p.Settings {
		f.knobsToo()
	}
}

// pictureHeight gives the picture what the rest of the sheet leaves, within bounds that
// keep it readable: all that is left of the page where what follows goes on to another.
func (f *flow) pictureHeight(s setup.Setup) float64 {
	least, rest := f.squeeze.picture(), f.restHeight(s)
	if p := s.Pattern(); p.Settings && f.room()-least < f.handlingHeight(p) {
		rest = 0
	}
	return max(least, min(98, f.room()-rest))
}

// restHeight is the height of what follows the picture.
func (f *flow) restHeight(s setup.Setup) float64 {
	p := s.Pattern()
	h := f.cautionsHeight(p) + f.checksHeight(s, false) + f.assumedHeight(s) + f.signHeight(p, len(signLines(s.Plans))) + 1
	if p.Settings {
		h += f.handlingHeight(p)
	}
	return h
}

// markList joins marks for a heading; a long list is cut and its size told.
func markList(marks []string, most int) string {
	if len(marks) <= most {
		return strings.Join(marks, ", ")
	}
	return strings.Join(marks[:most], ", ") + " … (" + strconv.Itoa(len(marks)) + ")"
}

// titleBlock names the marks and the joint, and the procedure that governs.
func (f *flow) titleBlock(s setup.Setup) {
	p := s.Pattern()
	r, box := f.take("title", f.squeeze.title())
	cols := r.Columns(titleGap, titleMarks, titleProcedure)
	l := cols[0]
	marks := markList(s.Marks(), 4)
	f.p.Write(box, l.X, l.Y+8.8, l.W, page.Left, markStyle, marks)
	if lines, beside := f.remarkBeside(s); beside {
		x := markStyle.Width(page.Clean(marks)) + remarkIndent
		f.p.Lines(box, l.X+x, l.Y+8.8-float64(len(lines)-1)*remarkStyle.Leading(), l.W-x, remarkStyle, lines)
	}
	f.description(box, page.Rect{X: l.X, Y: l.Y + 11, W: l.W, H: 6}, f.describe(p))
	f.p.Write(box, l.X, l.Y+21.2, l.W, page.Left, strong.At(10.5), f.fitUp(s))
	f.procedure(box, page.Rect{X: cols[1].X, Y: r.Y + 0.5, W: cols[1].W, H: r.H - 3}, p)
}

// The shares of the width that the marks and the procedure beside them take, and the gap
// between the two.
const titleMarks, titleProcedure, titleGap = 124, 56, 5

// description says what the joint is in one line, or in two smaller ones.
func (f *flow) description(box page.BoxID, r page.Rect, text string) {
	s := page.Style{Face: page.Regular, Size: 10.5}
	if got, _ := page.Fit(s, text, r.W); got.Size >= 8.5 {
		f.p.Write(box, r.X, r.Y+4.4, r.W, page.Left, s, text)
		return
	}
	s.Size = 8
	f.p.Lines(box, r.X, r.Y+2, r.W, s, page.Wrap(s, text, r.W, 2))
}

// procedure names the procedure that governs and says whose figures the sheet has, or
// that nobody named one.
func (f *flow) procedure(box page.BoxID, r page.Rect, p *plan.Plan) {
	f.p.Frame(box, r, 0.5, page.None)
	wps := strings.TrimSpace(p.Joint.WPS)
	key := "wps.none.text"
	switch {
	case wps != "" && !p.Settings:
		key = "wps.only"
	case wps != "" && saysCode(p, "procedure-binds"):
		key = "wps.within"
	case wps != "":
		key = "wps.first"
	case !p.Settings:
		key = "wps.none.bare"
	}
	y := r.Y + 11.2
	if wps != "" {
		f.p.Write(box, r.X+2, r.Y+4.4, r.W-4, page.Left, label.At(8.5), f.say("wps.governs"))
		f.p.Write(box, r.X+2, r.Y+11.4, r.W-4, page.Left, page.Style{Face: page.Bold, Size: 18}, wps)
		y = r.Y + 15
	} else {
		f.p.Write(box, r.X+2, r.Y+6.6, r.W-4, page.Left, title, f.say("wps.none"))
	}
	f.p.Lines(box, r.X+2, y, r.W-4, small, page.Wrap(small, f.say(key), r.W-4, 2))
}

// saysCode tells whether a plan has a check of a rule.
func saysCode(p *plan.Plan, code string) bool {
	return slices.ContainsFunc(p.Checks, func(c finding.Check) bool { return c.Code == code })
}

// describe says in one line what the joint is.
func (f *flow) describe(p *plan.Plan) string {
	j := p.Joint
	parts := []string{f.say("kind." + string(picture.KindOf(p)))}
	if j.Sides == 2 {
		parts[0] += ", " + f.say("both.sides")
	}
	if stitch := f.pen.Stitch(p); stitch != "" {
		parts = append(parts, f.say("stitch")+" "+stitch)
	}
	parts = append(parts, f.thicknesses(p), f.material(p))
	if j.Where == joint.Site {
		parts = append(parts, f.say("where.site"))
	}
	if j.Quality != "" {
		parts = append(parts, f.say("quality", j.Quality))
	}
	if j.NDT != "" {
		parts = append(parts, j.NDT)
	}
	return joinParts(parts)
}

func joinParts(parts []string) string {
	var out []string
	for _, s := range parts {
		if strings.TrimSpace(s) != "" {
			out = append(out, strings.TrimSpace(s))
		}
	}
	return strings.Join(out, " · ")
}

func (f *flow) thicknesses(p *plan.Plan) string {
	t1, t2 := p.Prep.T1, p.Prep.T2
	switch {
	case t1 > 0 && t2 > 0 && t1 != t2:
		return f.say("thick.two", f.show.Size(t1).Num, f.show.Size(t2).String())
	case t1 > 0:
		return f.say("thick.one", f.show.Size(t1).String())
	case t2 > 0:
		return f.say("thick.one", f.show.Size(t2).String())
	}
	return f.say("thick.none")
}

func (f *flow) material(p *plan.Plan) string {
	m := strings.TrimSpace(p.Joint.Material)
	if other := strings.TrimSpace(p.Joint.Material2); other != "" && other != m {
		m += " / " + other
	}
	if m == "" {
		m = f.takenText(p.MetalGroup)
	}
	if m == "" {
		return f.say("material.none")
	}
	return m
}

// procedures are the codes of what a named procedure settles by itself: a process of its
// own, a metal that our table does not know.
var procedures = []string{"word-unknown", "material-unknown", "material-blank"}

// whyNone says why there are no settings and that nobody welds before somebody has
// settled it; where a procedure is named that settles it, the frame over it says what
// holds. A metal that must not be arc welded is settled by no procedure.
func (f *flow) whyNone(p *plan.Plan) string {
	text, code := strings.TrimPrefix(strings.TrimSpace(p.NoSettings), "no settings: "), ""
	for _, c := range p.Checks {
		if c.Text == p.NoSettings {
			text, code = strings.TrimPrefix(f.reason(c), "no settings: "), c.Code
			break
		}
	}
	if strings.TrimSpace(p.Joint.WPS) != "" && slices.Contains(procedures, code) {
		return sentence(text)
	}
	return sentence(text) + " " + sentence(f.say("ask.stop"))
}

func (f *flow) whyLines(p *plan.Plan) []string {
	return page.Wrap(body.At(11), f.show.Written(f.whyNone(p)), f.width-10, 4)
}

func (f *flow) noSettingsHeight(p *plan.Plan) float64 {
	return 12 + float64(len(f.whyLines(p)))*body.At(11).Leading()
}

// noSettings takes the place of the dials where the plan has no settings.
func (f *flow) noSettings(p *plan.Plan) {
	lines := f.whyLines(p)
	r, box := f.take("no settings", f.noSettingsHeight(p))
	in := page.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H - 3}
	f.p.Frame(box, in, 0.7, page.None)
	f.p.Write(box, r.X+4, r.Y+6.5, r.W-8, page.Left, title.At(13), f.say("nosettings.title"))
	f.p.Lines(box, r.X+4, r.Y+12, r.W-8, body.At(11), lines)
}
