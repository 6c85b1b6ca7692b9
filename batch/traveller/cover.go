package traveller

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/units"
)

// cover lays out the foreman's pages of one assembly; a little closer where that
// saves a page.
func (b *builder) cover(a *setup.Assembly) {
	pages := b.coverPages(a, 1)
	if len(pages) > 1 {
		if closer := b.coverPages(a, coverCloser); len(closer) < len(pages) {
			pages = closer
		}
	}
	b.doc.Pages = append(b.doc.Pages, pages...)
}

// coverCloser is how much lower the rows of a closer cover are.
const coverCloser = 0.86

func (b *builder) coverPages(a *setup.Assembly, rows float64) []*page.Page {
	own := *b
	own.doc = &page.Document{}
	f := own.flow(head{
		assembly: a.Name, drawing: strings.Join(a.Drawings, ", "), rev: strings.Join(a.Revs, ", "), sheet: b.say("head.cover"),
	})
	f.rowShare = rows
	name := b.assemblyName(a)
	f.p.Mark(0, name)
	r, box := f.take("cover title", 13)
	f.p.Write(box, r.X, r.Y+9, r.W, page.Left, page.Style{Face: page.Bold, Size: 26}, name)
	f.totals(a)
	f.order(a)
	f.needs(a)
	f.holds(a)
	f.joints(a)
	if len(a.Stages) > 0 {
		f.knobsToo()
	}
	return own.doc.Pages
}

func (b *builder) assemblyName(a *setup.Assembly) string {
	if a.Name == "" {
		return b.say("assembly.none")
	}
	return a.Name
}

// totals is one line of large figures.
func (f *flow) totals(a *setup.Assembly) {
	f.figures("totals", [][2]string{
		{"total.joints", strconv.Itoa(len(a.Plans))}, {"total.copies", strconv.Itoa(a.Copies)},
		{"total.seam", known(a.Seam > 0, f.show.Seam(a.Seam).String())}, {"total.metal", known(a.WeldMetal > 0, f.show.Mass(a.WeldMetal).String())},
		{"total.arc", f.hours(a.Arc)}, {"total.labour", f.hours(a.Labour)},
	})
}

// known is a figure, or a dash where nobody knows it.
func known(is bool, figure string) string {
	if is {
		return figure
	}
	return "–"
}

// figures is a frame of large figures under their names.
func (f *flow) figures(name string, entries [][2]string) {
	r, box := f.take(name, 19)
	in := page.Rect{X: r.X, Y: r.Y, W: r.W, H: 16}
	parts := make([]float64, len(entries))
	for i := range parts {
		parts[i] = 1
	}
	for i, c := range in.Columns(0, parts...) {
		e := entries[i]
		f.p.Write(box, c.X+1.5, c.Y+4.5, c.W-2, page.Left, label.At(9), f.say(e[0]))
		f.p.Write(box, c.X+1.5, c.Y+12.5, c.W-3, page.Left, page.Style{Face: page.Bold, Size: 16}, e[1])
		if i > 0 {
			f.p.Line(box, c.X, c.Y, c.X, c.Bottom(), 0.25, 0)
		}
	}
	f.p.Frame(box, in, 0.7, page.None)
}

// hours prints a time in hours; a few minutes as what they are, and one that nobody
// knows as a dash.
func (b *builder) hours(v units.Minute) string {
	switch {
	case v == 0:
		return "–"
	case v > 0 && v < 3:
		return b.show.Minutes(v).String()
	}
	return b.show.Fixed(float64(v)/60, 1) + " h"
}

// order says in which order to work so that wire and gas change seldom.
func (f *flow) order(a *setup.Assembly) {
	if len(a.Stages) == 0 {
		return
	}
	f.section(f.say("order.title"), 14)
	lead := f.say("order.changes", strconv.Itoa(a.Changes))
	if a.Saved > 0 {
		lead = f.say("order.saved", strconv.Itoa(a.Changes), strconv.Itoa(a.Saved))
	}
	r, box := f.take("order lead", 5)
	f.p.Write(box, r.X, r.Y+3, r.W, page.Left, body, lead)
	t := table{name: "order", height: 9 * f.rowShare, columns: []column{
		{"order.step", 11, page.Left}, {"order.station", 52, page.Left}, {"order.setups", 24, page.Left},
		{"order.marks", 66, page.Left}, {"order.arc", 16, page.Right}, {"order.done", 16, page.Left},
	}}
	var rows [][]cell
	for i, st := range a.Stages {
		rows = append(rows, f.stageRow(i, st))
	}
	f.rows(t, rows)
	f.gap(3)
}

func (f *flow) stageRow(i int, st setup.Stage) []cell {
	var marks []string
	for _, s := range st.Setups {
		marks = append(marks, s.Marks()...)
	}
	first, last := st.Setups[0].Number, st.Setups[len(st.Setups)-1].Number
	sheets := strconv.Itoa(first)
	if last > first {
		sheets += "–" + strconv.Itoa(last)
	}
	w := (f.width*66/185 - 1.6)
	lines := append(page.Wrap(body.At(8.5), strings.Join(marks, ", "), w, 2), "", "")
	return []cell{
		{text: strconv.Itoa(i + 1), bold: true},
		{text: joinParts([]string{f.names.Filler(st.Station.Filler), f.show.Dia(st.Station.Dia, st.Station.Filler)}), under: joinParts([]string{st.Station.Gas, f.phrase(st.Station.Machine)})},
		{text: sheets}, {text: lines[0], under: lines[1]}, {text: f.show.Minutes(st.Arc).String()}, {},
	}
}

// needs lists what to draw from the stores for this assembly.
func (f *flow) needs(a *setup.Assembly) {
	if len(a.Wires)+len(a.Gases) == 0 {
		return
	}
	f.section(f.say("needs.title"), tableHead+8)
	t := table{name: "needs", height: 7.5 * f.rowShare, columns: []column{
		{"needs.what", 62, page.Left}, {"needs.amount", 30, page.Right}, {"needs.packs", 50, page.Left}, {"needs.lot", 43, page.Left},
	}}
	var rows [][]cell
	for _, n := range a.Wires {
		rows = append(rows, []cell{
			{text: joinParts([]string{f.say("needs.wire"), f.names.Filler(n.Name), f.show.Dia(n.Dia, n.Name)}), bold: false},
			{text: f.show.Mass(n.Kg).String(), bold: true},
			{text: f.packs(float64(n.Kg), n.Pack, "needs.spools", f.show.Pack(units.Kg(n.Pack)))},
		})
	}
	rows = append(rows, f.tips(a)...)
	for _, n := range a.Gases {
		rows = append(rows, []cell{
			{text: joinParts([]string{f.say("needs.gas"), n.Name})}, {text: f.show.Gas(n.L).String(), bold: true},
			{text: f.packs(float64(n.L), n.Pack, "needs.cylinders", f.show.Gas(units.Litre(n.Pack)).String())},
		})
	}
	f.rows(t, rows)
	f.gap(3)
}

// tips are the contact tips by diameter, from the arc time and a tip's life.
func (f *flow) tips(a *setup.Assembly) [][]cell {
	life := f.job.Shop.TipLifeH
	if life <= 0 {
		return nil
	}
	var dias []units.MM
	arc, wire := map[units.MM]units.Minute{}, map[units.MM]string{}
	for _, n := range a.Wires {
		if !slices.Contains(dias, n.Dia) {
			dias, wire[n.Dia] = append(dias, n.Dia), n.Name
		}
		arc[n.Dia] += n.Arc
	}
	var rows [][]cell
	for _, d := range dias {
		count := strconv.Itoa(int(math.Ceil(float64(arc[d]) / 60 / life)))
		rows = append(rows, []cell{{text: joinParts([]string{f.say("needs.tip"), f.show.Dia(d, wire[d])})}, {text: count, bold: true}, {text: f.say("needs.tiplife", f.show.Num(life, 1))}})
	}
	return rows
}

// packs says how many packs an amount is, to a tenth, rounded up.
func (f *flow) packs(amount, pack float64, key, size string) string {
	if pack <= 0 {
		return ""
	}
	return f.say(key, f.show.Fixed(math.Ceil(amount/pack*10)/10, 1), size)
}

// holds are the points at which work stops, is witnessed or recorded.
func (f *flow) holds(a *setup.Assembly) {
	f.section(f.say("hold.title"), tableHead+9)
	t := table{name: "hold", height: 8 * f.rowShare, columns: []column{
		{"hold.kind", 23, page.Left}, {"hold.what", 100, page.Left}, {"hold.initials", 32, page.Left}, {"hold.date", 30, page.Left},
	}}
	var rows [][]cell
	for _, h := range f.holdPoints(a) {
		rows = append(rows, []cell{{text: f.say(h[0]), bold: true}, {text: f.say(h[1])}})
	}
	f.rows(t, rows)
	f.gap(3)
}

// holdPoints returns kind and text of the points that this assembly needs.
func (f *flow) holdPoints(a *setup.Assembly) [][2]string {
	var butt, heat, ndt bool
	for _, p := range a.Plans {
		butt = butt || isButt(p) && len(p.Runs) != 1 // nothing is laid over the only pass
		heat = heat || p.Preheat != nil
		ndt = ndt || strings.TrimSpace(p.Joint.NDT) != ""
	}
	out := [][2]string{{"hold.stop", "hold.material"}, {"hold.stop", "hold.gap"}}
	if heat {
		out = append(out, [2]string{"hold.record", "hold.preheat"})
	}
	if butt {
		out = append(out, [2]string{"hold.witness", "hold.root"})
	}
	out = append(out, [2]string{"hold.stop", "hold.visual"})
	if ndt {
		out = append(out, [2]string{"hold.stop", "hold.ndt"})
	}
	return append(out, [2]string{"hold.stop", "hold.release"})
}

func isButt(p *plan.Plan) bool {
	switch picture.KindOf(p) {
	case joint.Fillet, joint.Lap, joint.Corner, joint.Edge, joint.Plug, joint.Slot, joint.NoKind:
		return false
	}
	return true
}
