package traveller

import (
	"slices"
	"strconv"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/units"
)

const (
	signTitle = 7 // over the table, where there is room
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
	// Where a seam has two sides, whoever welded each of them signs for it.
	signWideSides = []column{
		{"sign.mark", 25, page.Left}, {"sign.copy", 12, page.Left}, {"sign.length", 18, page.Left}, {"sign.arc", 14, page.Left},
		{"sign.heat", 19, page.Left}, {"sign.gap", 12, page.Left}, {"run.side1", 18, page.Left}, {"run.side2", 18, page.Left},
		{"sign.date", 18, page.Left}, {"sign.visual", 15, page.Left}, {"sign.repair", 18, page.Left},
	}
	signHalfSides = []column{
		{"sign.mark", 20, page.Left}, {"sign.copy", 10.5, page.Left}, {"sign.gap", 9.5, page.Left},
		{"run.side1", 14, page.Left}, {"run.side2", 14, page.Left}, {"sign.date", 12.5, page.Left}, {"sign.visual", 12.5, page.Left},
	}
)

// signTable is the table of the lines to be signed, without its rows.
func (f *flow) signTable(p *plan.Plan, lines int) table {
	t := table{name: "sign-off", height: f.squeeze.signRow(), columns: signWide}
	if twoSided(p) {
		t.columns, t.over = signWideSides, []over{{"sign.welder", 6, 7}}
	}
	if !f.abreast(lines) {
		return t
	}
	half := signHalf
	if twoSided(p) {
		half = signHalfSides
		t.over = []over{{"sign.welder", 3, 4}, {"sign.welder", 3 + len(half), 4 + len(half)}}
	}
	t.columns = slices.Concat(half, half)
	t.split, t.height = len(half), f.squeeze.halfRow()
	return t
}

// twoSided tells whether a seam is welded from two sides.
func twoSided(p *plan.Plan) bool {
	return p.Joint.Sides == 2 || slices.ContainsFunc(p.Runs, func(r plan.Run) bool { return r.Side == 2 })
}

// abreast tells whether the lines stand in two columns.
func (f *flow) abreast(lines int) bool { return lines > fewLines || f.squeeze.close() && lines > 1 }

// fewSigned is how many rows of sign-off a sheet makes room for whose lines go on
// to another page anyway.
const fewSigned = 8

// signHeight returns the height of the lines of a set-up, or of as many as a
// sheet is to make room for.
func (f *flow) signHeight(p *plan.Plan, lines int) float64 {
	t := f.signTable(p, lines)
	if t.split > 0 {
		return t.headHeight() + t.height*float64(min((lines+1)/2, f.signed))
	}
	if f.squeeze.close() {
		return t.headHeight() + t.height*float64(lines)
	}
	return signTitle + t.headHeight() + t.height*float64(lines)
}

// signOff is a line for every mark and copy.
func (f *flow) signOff(s setup.Setup) {
	lines := signLines(s.Plans)
	t := f.signTable(s.Pattern(), len(lines))
	var rows [][]cell
	for i := 0; i < len(lines); i++ {
		if t.split == 0 {
			rows = append(rows, f.signCells(lines[i]))
			continue
		}
		row := append(signShort(lines[i]), make([]cell, t.split-2)...)
		if i++; i < len(lines) {
			row = append(row, signShort(lines[i])...)
		}
		rows = append(rows, row)
	}
	if t.split == 0 && !f.squeeze.close() {
		f.section(f.say("sign.title"), t.headHeight()+f.squeeze.signRow())
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
		arc = f.show.Minutes(l.plan.Arc / units.Minute(qty)).String()
	}
	length := f.show.Length(units.MM(float64(l.plan.Seam) * 1000 / float64(qty))).String()
	return []cell{{text: l.mark, bold: true}, {text: l.copy}, {text: length}, {text: arc}}
}
