package traveller

import (
	"slices"
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
)

// blankRow is the height of a row of boxes to be filled in.
func (f *flow) blankRow() float64 {
	return [...]float64{8.8, 7.4, 7.4, 6.8, 6.8, 6.8, 6.6}[f.squeeze]
}

// testBeadHeight is the height of the test bead.
func (f *flow) testBeadHeight(p *plan.Plan) float64 {
	h := 14.4 + 2*f.blankRow()
	if !f.ticksBeside(p) {
		h += tickRow + goodStyle.Leading()*float64(len(f.goodLines(p))-1)
	}
	return h
}

const tickRow = 4.8

// testTitle is the style of the title: smaller where it would leave no room beside it for
// how a good one looks.
func (f *flow) testTitle(p *plan.Plan) page.Style {
	big := title.At(12)
	switch words := f.testTitleText(p); {
	case f.squeeze >= pressed:
		return title.At(10)
	case !mixed(p) && big.Width(page.Clean(words))+testGap+small.At(page.MinSize).Width(page.Clean(f.goodWords(p))) > f.width:
		return title.At(10.5)
	}
	return big
}

// testGap is between the title and what stands beside it.
const testGap = 4

// testBead stands before what the joint itself needs, because it comes first: how a
// good one looks, the line of checks before starting and the boxes for what was really
// set, on the test piece and on the joint.
func (f *flow) testBead(p *plan.Plan) {
	r, box := f.take("test bead", f.testBeadHeight(p))
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.6, 0)
	f.p.Write(box, r.X, r.Y+5, r.W, page.Left, f.testTitle(p), f.testTitleText(p))
	x, y := r.X+f.ticksFrom(p), r.Y+5
	if !f.ticksBeside(p) {
		for i, line := range f.goodLines(p) {
			if i > 0 {
				y += goodStyle.Leading()
			}
			f.p.Write(box, x, y, r.Right()-x, page.Right, goodStyle, line)
		}
		x, y = r.X, y+tickRow
	}
	for _, text := range f.startWords(p) {
		w := small.Width(text)
		picture.Tick(f.p, box, x, y-0.1, 2.6)
		f.p.Write(box, x+3.6, y-0.2, w+0.1, page.Left, small, text)
		x += w + tickGap
	}
	f.blanks(box, page.Rect{X: r.X, Y: y + 2, W: r.W, H: 4.9 + 2*f.blankRow()}, p)
}

var goodStyle = small.At(8.5)

// goodWords say how a good test bead looks and sounds: where the passes are laid in more
// than one mode, of each.
func (f *flow) goodWords(p *plan.Plan) string {
	key := goodBead(p)
	if key != "good.arc" {
		return f.say(key)
	}
	modes := modesOf(p)
	if len(modes) == 1 {
		return f.say(key, f.arcWords(modes[0]))
	}
	var parts []string
	for _, mode := range modes {
		runs := slices.DeleteFunc(slices.Clone(p.Runs), func(r plan.Run) bool { return r.Transfer != mode })
		parts = append(parts, f.kindNames(runs)+" – "+f.arcWords(mode))
	}
	return f.say(key, strings.Join(parts, "; "))
}

// arcWords say how an arc sounds and what it throws, each mode for itself: the coarse drops
// of one are no fault there and would be one in the next.
func (f *flow) arcWords(mode plan.Transfer) string { return f.say("arc." + string(mode)) }

// goodLines are those words beside the title: in one line, or where they are long in two.
func (f *flow) goodLines(p *plan.Plan) []string {
	text := f.goodWords(p)
	if !mixed(p) && small.At(page.MinSize).Width(page.Clean(text)) <= f.width-f.ticksFrom(p) {
		return []string{text}
	}
	return page.Wrap(goodStyle, text, f.width-f.ticksFrom(p), 3)
}

// mixed tells whether a good bead sounds otherwise in some passes than in others.
func mixed(p *plan.Plan) bool { return goodBead(p) == "good.arc" && len(modesOf(p)) > 1 }

// modesOf are the modes the passes are laid in, in the order of the passes.
func modesOf(p *plan.Plan) []plan.Transfer {
	var modes []plan.Transfer
	for _, r := range p.Runs {
		if r.Transfer != "" && !slices.Contains(modes, r.Transfer) {
			modes = append(modes, r.Transfer)
		}
	}
	if len(modes) == 0 {
		return []plan.Transfer{p.Transfer}
	}
	return modes
}

// goodBead is the key of how a good test bead looks and sounds: by the metal, by the
// slag on it, or by the arc.
func goodBead(p *plan.Plan) string {
	switch {
	case p.MetalGroup == "aluminium":
		return "good.bright"
	case slices.Contains(p.Cautions, "slag"):
		return "good.slag"
	}
	return "good.arc"
}

// tickGap is what a tick takes beside its words.
const tickGap = 6.2

// startWords are the words of what is looked at before starting.
func (f *flow) startWords(p *plan.Plan) []string {
	var out []string
	for _, key := range []string{"start.earth", "start.leads", "start.tip", "start.liner", "start.gas", "start.clean"} {
		if key == "start.gas" && p.Gas == "" || key == "start.leads" && !negative(p) { // a wire may shield itself, and run on the other pole
			continue
		}
		out = append(out, page.Clean(f.say(key)))
	}
	return out
}

// negative tells whether the electrode is the negative pole: torch and work cable are
// exchanged then, which is forgotten both ways.
func negative(p *plan.Plan) bool { return strings.Contains(p.Polarity, "(DC-)") }

// testTitleText says on what the test bead is laid: scrap as thick as each of the parts.
func (f *flow) testTitleText(p *plan.Plan) string {
	t1, t2 := p.Prep.T1, p.Prep.T2
	if t1 <= 0 {
		t1 = t2
	}
	one := f.show.Size(t1)
	switch {
	case t1 <= 0:
		return f.say("test.title")
	case t2 <= 0 || f.show.Size(t2) == one:
		return f.say("test.title.on", one.String())
	}
	return f.say("test.title.on", f.say("test.two", one.Num, f.show.Size(t2).String()))
}

// ticksFrom is where the ticks begin beside the title.
func (f *flow) ticksFrom(p *plan.Plan) float64 {
	return f.testTitle(p).Width(page.Clean(f.testTitleText(p))) + testGap
}

// ticksBeside tells whether the ticks stand beside the title: only where the sheet is
// pressed, because a good test bead is described there.
func (f *flow) ticksBeside(p *plan.Plan) bool {
	if f.squeeze < pressed {
		return false
	}
	w := f.ticksFrom(p)
	for _, text := range f.startWords(p) {
		w += small.Width(text) + tickGap
	}
	return w-2 <= f.width
}

// blanks is the grid that the welder fills in; without a gas it has no boxes for
// it, and a joint that is preheated says so for the test bead too.
func (f *flow) blanks(box page.BoxID, r page.Rect, p *plan.Plan) {
	keys := []string{"blank.feed", "blank.volts", "blank.seconds", "blank.arc", "blank.wire", "blank.wirelot", "blank.ok"}
	cells := r.Columns(0, 25, 18, 18, 21, 21, 21, 34, 20)
	if p.Gas != "" {
		keys = []string{"blank.feed", "blank.volts", "blank.flow", "blank.seconds", "blank.arc", "blank.wire", "blank.wirelot", "blank.gaslot", "blank.ok"}
		cells = r.Columns(0, 25, 15, 15, 15, 18, 18, 18, 22, 22, 17)
	}
	_, per := f.show.Pace(1)
	for i, key := range keys {
		text := f.say(key)
		if key == "blank.seconds" {
			text = f.say(key, per.String())
		}
		c := cells[i+1]
		f.p.Write(box, c.X+0.8, c.Y+3.6, c.W-1.4, page.Left, label, text)
		f.p.Line(box, c.X, c.Y, c.X, c.Bottom(), 0.2, 0)
	}
	for i, key := range []string{"blank.test", "blank.joint"} {
		y := r.Y + 4.9 + float64(i)*f.blankRow()
		f.p.Line(box, r.X, y, r.Right(), y, 0.2, 0)
		w := cells[0].W - 2.2
		if p.Preheat == nil {
			f.p.Write(box, r.X+1.5, y+f.blankRow()/2+1.2, w, page.Left, strong, f.say(key))
			continue
		}
		mid := y + f.blankRow()/2
		if f.blankRow() < 7 { // clear of the line below
			mid -= 0.3
		}
		f.p.Write(box, r.X+1.5, mid-0.3, w, page.Left, strong, f.say(key))
		f.p.Write(box, r.X+1.5, mid+2.9, w, page.Left, small, f.say("blank.warm", "≥ "+f.leastWarm(p)))
	}
	f.p.Frame(box, r, 0.3, page.None)
}
