package traveller

import (
	"strconv"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/traveller/show"
	"seamtally/batch/units"
)

const (
	signHead = 13.5
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
func (f *flow) abreast(lines int) bool { return lines > fewLines || f.squeeze.close() && lines > 1 }

// fewSigned is how many rows of sign-off a sheet makes room for whose lines go on
// to another page anyway.
const fewSigned = 8

// signHeight returns the height of the lines of a set-up, or of as many as a
// sheet is to make room for.
func (f *flow) signHeight(lines int) float64 {
	if f.abreast(lines) {
		return tableHead + f.squeeze.halfRow()*float64(min((lines+1)/2, f.signed))
	}
	if f.squeeze.close() {
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
		t.split, t.height = len(signHalf), f.squeeze.halfRow()
		for i := 0; i < len(lines); i += 2 {
			row := append(signShort(lines[i]), make([]cell, len(signHalf)-2)...)
			if i+1 < len(lines) {
				row = append(row, signShort(lines[i+1])...)
			}
			rows = append(rows, row)
		}
	}
	if t.split == 0 && !f.squeeze.close() {
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
