package traveller

import (
	"strconv"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/traveller/show"
	"seamtally/batch/units"
)

// blankRow is the height of a row of boxes to be filled in.
func (f *flow) blankRow() float64 {
	return [...]float64{8.8, 7.4, 6.8}[f.squeeze]
}

func (f *flow) testBeadHeight() float64 { return 13.4 + 2*f.blankRow() }

// testBead is the line of checks before starting and the boxes for what was
// really set, on the test piece and on the joint.
func (f *flow) testBead(p *plan.Plan) {
	r, box := f.take("test bead", f.testBeadHeight())
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.6, 0)
	f.p.Write(box, r.X, r.Y+5, 62, page.Left, title, f.say("test.title"))
	x := r.X + 64
	for _, key := range []string{"start.earth", "start.tip", "start.liner", "start.gas", "start.clean"} {
		if key == "start.gas" && p.Gas == "" {
			continue // the wire shields itself
		}
		text := f.say(key)
		w := small.Width(page.Clean(text))
		if x+4+w > r.Right() {
			break
		}
		picture.Tick(f.p, box, x, r.Y+4.9, 2.6)
		f.p.Write(box, x+3.6, r.Y+4.8, w+0.1, page.Left, small, text)
		x += w + 6.5
	}
	f.blanks(box, page.Rect{X: r.X, Y: r.Y + 7, W: r.W, H: 4.9 + 2*f.blankRow()}, p)
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
		f.p.Write(box, r.X+1.5, y+f.blankRow()/2-0.3, w, page.Left, strong, f.say(key))
		f.p.Write(box, r.X+1.5, y+f.blankRow()/2+2.9, w, page.Left, small, f.say("blank.warm", f.show.Temp(*p.Preheat).String()))
	}
	f.p.Frame(box, r, 0.3, page.None)
}

const (
	signHead = 13.5
	halfRow  = 7.6 // of lines two abreast
	// mostCopies is how many copies of one mark have a line of their own; the
	// rest are counted on one line more.
	mostCopies = 60
)

// signLine is one line to be signed: a copy of a joint.
type signLine struct {
	mark, copy string
	plan       *plan.Plan
}

func signLines(plans []*plan.Plan) []signLine {
	var out []signLine
	for _, p := range plans {
		qty := max(p.Joint.Qty, 1)
		for i := 1; i <= min(qty, mostCopies); i++ {
			out = append(out, signLine{p.Joint.Mark, strconv.Itoa(i) + "/" + strconv.Itoa(qty), p})
		}
		if qty > mostCopies {
			out = append(out, signLine{p.Joint.Mark, strconv.Itoa(mostCopies+1) + "–" + strconv.Itoa(qty), p})
		}
	}
	return out
}

// fewLines is up to how many lines the sign-off has room for a heat number, the
// gap found and the repair on each; more lines stand two abreast.
const fewLines = 4

var (
	signWide = []column{
		{"sign.mark", 25, page.Left}, {"sign.copy", 12, page.Left}, {"sign.length", 19, page.Left}, {"sign.arc", 15, page.Left},
		{"sign.heat", 24, page.Left}, {"sign.gap", 14, page.Left}, {"sign.welder", 23, page.Left},
		{"sign.date", 20, page.Left}, {"sign.visual", 16, page.Left}, {"sign.repair", 19, page.Left},
	}
	signHalf = []column{
		{"sign.mark", 24, page.Left}, {"sign.copy", 11, page.Left}, {"sign.gap", 10, page.Left},
		{"sign.welder", 18, page.Left}, {"sign.date", 16, page.Left}, {"sign.visual", 13, page.Left},
	}
)

// abreast tells whether the lines stand in two columns.
func (f *flow) abreast(lines int) bool { return lines > fewLines || f.squeeze.tight() && lines > 1 }

// fewSigned is how many rows of sign-off a sheet makes room for whose lines go on
// to another page anyway.
const fewSigned = 8

// signHeight returns the height of the lines of a set-up, or of as many as a
// sheet is to make room for.
func (f *flow) signHeight(lines int) float64 {
	if f.abreast(lines) {
		return tableHead + halfRow*float64(min((lines+1)/2, f.signed))
	}
	if f.squeeze.tight() {
		return tableHead + f.squeeze.signRow()*float64(lines)
	}
	return signHead + f.squeeze.signRow()*float64(lines)
}

// signOff is a line for every mark and copy.
func (f *flow) signOff(s setup.Setup) {
	lines := signLines(s.Plans)
	t := table{name: "sign-off", height: f.squeeze.signRow(), columns: signWide}
	var rows [][]cell
	if !f.abreast(len(lines)) {
		for _, l := range lines {
			rows = append(rows, f.signCells(l))
		}
	} else {
		t.columns = append(append([]column{}, signHalf...), signHalf...)
		t.split, t.height = len(signHalf), halfRow
		for i := 0; i < len(lines); i += 2 {
			row := append(signShort(lines[i]), make([]cell, len(signHalf)-2)...)
			if i+1 < len(lines) {
				row = append(row, signShort(lines[i+1])...)
			}
			rows = append(rows, row)
		}
	}
	if t.split == 0 && !f.squeeze.tight() {
		f.section(f.say("sign.title"), tableHead+f.squeeze.signRow())
	}
	t.more = f.say("sign.more")
	t.again = f.say("sign.again", strconv.Itoa(s.Number), markList(s.Marks(), 4))
	f.rows(t, rows)
}

func signShort(l signLine) []cell { return []cell{{text: l.mark, bold: true}, {text: l.copy}} }

func (f *flow) signCells(l signLine) []cell {
	qty := max(l.plan.Joint.Qty, 1)
	arc := ""
	if l.plan.Arc > 0 {
		arc = show.Minutes(l.plan.Arc / units.Minute(qty)).String()
	}
	length := f.show.Length(units.MM(float64(l.plan.Seam) * 1000 / float64(qty))).String()
	return []cell{{text: l.mark, bold: true}, {text: l.copy}, {text: length}, {text: arc}}
}
