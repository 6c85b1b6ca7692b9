package traveller

import (
	"strconv"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
)

// joints is the joint table of the assembly, in the order of the list.
func (f *flow) joints(a *setup.Assembly) {
	sheet := map[*plan.Plan]int{}
	for _, s := range a.Setups() {
		for _, p := range s.Plans {
			sheet[p] = s.Number
		}
	}
	t := table{name: "joints", height: 10 * f.rowShare, columns: f.atLeastHeads([]column{
		{"col.mark", 21.5, page.Left}, {"col.joint", 35, page.Left}, {"col.length", 19.5, page.Left}, {"col.position", f.positionWidth(a), page.Left},
		{"col.sheet", 8, page.Left}, {"col.runs", 8, page.Right}, {"col.arc", 16.5, page.Right}, {"col.done", 9, page.Left},
		{"col.checked", 9, page.Left}, {"col.welder", 10, page.Left}, {"col.heat", 12, page.Left}, {"col.lot", 9, page.Left}, {"col.repair", 9, page.Left},
	})}
	f.jointWidth = t.width(f.width, 1) - 1.6 - signIndent
	var rows [][]cell
	for _, p := range a.Plans {
		rows = append(rows, f.jointRow(p, sheet[p]))
	}
	f.section(f.say("joints.title"), tableHead+t.height)
	for i, at := range f.rows(t, rows) {
		c := at.cells[1]
		f.pen.Sign(at.p, at.box, page.Point{X: c.X + 0.8, Y: c.Y + c.H/2 - 0.3}, a.Plans[i])
	}
}

// signIndent is the room for the sign of a joint before its words.
const signIndent = picture.SignWidth + 1.2

// positionWidth is the part of the table that the longest name of a position needs.
func (f *flow) positionWidth(a *setup.Assembly) float64 {
	w := 7.5
	for _, p := range a.Plans {
		w = max(w, min(body.Width(page.Clean(f.names.Position(p)))+2, 14))
	}
	return w
}

func (f *flow) jointRow(p *plan.Plan, sheet int) []cell {
	j := p.Joint
	runs, arc, labour := "", "", ""
	if len(p.Runs) > 0 {
		runs = strconv.Itoa(len(p.Runs))
	}
	if p.Arc > 0 {
		arc, labour = f.show.Minutes(p.Arc).String(), f.show.Minutes(p.Cost.Labour.Total).String()
	}
	wire := f.say("col.nosettings")
	if p.Settings {
		filler := f.names.Filler(p.Filler) + " " + f.show.DiaShort(p.Dia, p.Filler)
		wire = joinParts([]string{filler, p.Gas})
		if small.Width(page.Clean(wire)) > f.jointWidth { // the gas stands with the steps above
			wire = filler
		}
	}
	times := ""
	if j.Qty > 1 {
		times = "× " + strconv.Itoa(j.Qty)
	}
	if j.Sides > 1 {
		times = strings.TrimPrefix(times+", "+f.say("col.sides"), ", ")
	}
	kind, size := f.say("kind."+string(picture.KindOf(p))), f.sizeText(p)
	what, under := joinWords(kind, size), wire
	if body.At(page.MinSize).Width(page.Clean(what)) > f.jointWidth { // then the size stands alone
		what = size
		if both := joinParts([]string{kind, wire}); small.Width(page.Clean(both)) <= f.jointWidth {
			under = both
		}
	}
	return []cell{
		{text: j.Mark, bold: true}, {text: what, under: under, indent: signIndent},
		{text: f.show.Length(j.Length).String(), under: times}, {text: f.names.Position(p)},
		{text: strconv.Itoa(sheet)}, {text: runs}, {text: arc, under: labour},
	}
}

// sizeText is the size in few letters: "z 6".
func (f *flow) sizeText(p *plan.Plan) string {
	r := p.Prep
	switch {
	case r.Kind == joint.Plug && p.Joint.Size.A > 0:
		return "ø " + f.show.Size(p.Joint.Size.A).Num
	case r.LegA > 0 && p.Joint.Size.Means == joint.Throat:
		return "a " + f.show.Size(r.Throat).Num
	case r.LegA > 0 && r.LegB > 0 && r.LegB != r.LegA:
		return "z " + f.show.Size(r.LegA).Num + "×" + f.show.Size(r.LegB).Num
	case r.LegA > 0:
		return "z " + f.show.Size(r.LegA).Num
	case p.Joint.Size.Means == joint.Penetration:
		return "s " + f.show.Size(p.Joint.Size.A).Num
	case r.T1 > 0:
		return "t " + f.show.Size(r.T1).Num
	}
	return ""
}

// joinWords puts two words side by side, the second only if there is one.
func joinWords(a, b string) string { return strings.TrimSpace(a + " " + b) }
