package workbook

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// The columns of the sheet of parts.
const (
	partCol = 1 + iota
	assemblyCol
	sectionCol
	materialCol
	lengthCol
	piecesCol
	weightCol
	massCol
	perimeterCol
	paintCol
	seamCol
	weldCol
	shrinkCol
	shrinkToCol
	bevelCol
	edgesCol
	stripCol
	firstCol
	cutCol
	partChecksCol
	fromCol
)

// partHeads are their headers, from left to right.
var partHeads = []struct {
	text string
	unit unit
	wide float64
	num  bool
}{
	{"Part", none, 9, false}, {"Assembly", none, 12, false}, {"Section", none, 18, false}, {"Material", none, 10, false}, {"Length", mm, 11, true}, {"Pieces", none, 8, true},
	{"", kiloM, 8, true}, {"Mass", kilo, 11, true}, {"Perimeter", mm, 14, true}, {"Paint", square, 9, true},
	{"Seam", metre, 9, true}, {"Weld", kilo, 9, true}, {"Shrink", mm, 11, true}, {"to", mm, 8, true}, {"Bevel", metre, 9, true},
	{"Edges and ends", none, 44, false}, {"Strip first", none, 16, false}, {"First in", none, 10, false}, {"Bars fit?", none, 10, false}, {"Checks", none, 34, false}, {"Weight from", none, 15, false},
}

// partsFrom is the row of the first part.
const partsFrom = 5

// partsSheet gives the cut list back worked out, on the user's own cells where they
// are numbers of the same workbook.
func (o *output) partsSheet() *look.Grid {
	b := o.l.job.Parts
	g := look.NewGrid(o.l.book, o.parts)
	g.Freeze, g.Titles, g.Names, g.Split = partsFrom-1, partsFrom-1, sectionCol, edgesCol
	g.Last = partsFrom - 1 + len(b.List.Parts)
	g.Text(1, 1, look.Title, "Parts")
	g.Text(2, 1, look.Sub, "The cut list worked out, all pieces of a part together. Paint is on all faces; seam and weld metal are those of the joints that name the part, on both parts of a seam.")
	g.Text(3, 1, look.Sub, o.aboutWelds())
	for i, h := range partHeads {
		g.Widths = append(g.Widths, h.wide)
		role, text := look.Head, h.text
		if u := h.unit.name(o.l.us); u != "" {
			text = strings.TrimSpace(text + " " + u)
		}
		if h.num {
			role = look.HeadNum
		}
		g.Text(partsFrom-1, i+1, role, text)
	}
	for i := range b.List.Parts {
		o.partLine(g, partsFrom+i, i)
	}
	o.partTotals(g)
	return g
}

// aboutWelds says what the columns hold that come from the joints, or why they are
// empty: one line that fits the paper.
func (o *output) aboutWelds() string {
	for i := range o.l.job.Parts.Results {
		if o.l.job.Parts.Results[i].Seam > 0 {
			return "Shrink is what the welds shorten one piece by, least and most; it is not in the length. Where weights and perimeters are from is named on the sheet " + o.basis + "."
		}
	}
	return "No joint names a part, so nothing is known here of seams, weld metal, shrinkage and bevels: name the two parts of each joint in columns part 1 and part 2 of the list."
}

// partRange is a column of the sheet of parts over all parts.
func (o *output) partRange(col int) string {
	return fmt.Sprintf("$%s$%d:$%s$%d", pack.ColumnName(col), partsFrom, pack.ColumnName(col), partsFrom-1+len(o.l.job.Parts.List.Parts))
}

// partLine writes one part. A figure that stands beside the cut list is taken from
// there: it is worked out once.
func (o *output) partLine(g *look.Grid, row, i int) {
	p, r, us := &o.l.job.Parts.List.Parts[i], &o.l.job.Parts.Results[i], o.l.us
	cell := func(col int, u unit) string { return u.metricOf(pack.ColumnName(col)+itoa(row), us) }
	num := func(col int, key string, u unit, format, formula string, v float64, known bool) {
		if !known {
			return
		}
		if link := o.linked(key, p.Place.Row); link != "" {
			formula = link
		}
		role := look.Calc
		if formula == "" {
			role = look.Plain
		}
		if us && u.usFormat != "" {
			format = u.usFormat
		}
		g.Number(row, col, role, format, o.live(formula), u.show(v, us))
	}
	g.Text(row, partCol, look.Plain, p.Mark)
	g.Text(row, assemblyCol, look.Plain, p.Assembly)
	g.Text(row, sectionCol, look.Plain, o.l.called(p.Section.Designation))
	g.Text(row, materialCol, look.Plain, p.Material)
	length := o.cutCell(p, "length", float64(p.Length))
	if length != "" {
		length = mm.wrap(length, us)
	}
	num(lengthCol, "length_mm", mm, "#,##0.0", length, float64(p.Length), p.Length > 0)
	num(piecesCol, "qty", none, "#,##0", o.cutCell(p, "qty", float64(p.Qty)), float64(p.Qty), true)
	num(weightCol, "kg_m", kiloM, "0.000", "", r.KgM, r.KgM > 0)
	num(massCol, "mass_kg", kilo, "#,##0.00", massOnSheet(p, r, cell, us), float64(r.Mass), r.Mass > 0)
	num(perimeterCol, "perimeter_mm", mm, "#,##0.0", "", float64(r.Perimeter), r.Perimeter > 0)
	num(paintCol, "paint_m2", square, "#,##0.00", paintOnSheet(p, r, cell, us), r.Paint, r.Paint > 0)
	num(seamCol, "seam_m", metre, "#,##0.00", "", float64(r.Seam), r.Seam > 0)
	num(weldCol, "weld_kg", kilo, "0.000", "", float64(r.WeldMetal), r.WeldMetal > 0)
	if r.Shrink != nil {
		num(shrinkCol, "shrink_low_mm", mm, "0.00", "", float64(r.Shrink[0]), true)
		num(shrinkToCol, "shrink_high_mm", mm, "0.00", "", float64(r.Shrink[1]), true)
	}
	num(bevelCol, "bevel_m", metre, "0.00", "", float64(r.Bevel), r.Bevel > 0)
	g.Text(row, edgesCol, look.Wrap, strings.Join(append(edgeTexts(r, us), endTexts(r, us)...), "; "))
	g.Text(row, stripCol, look.Plain, r.Strip)
	g.Text(row, firstCol, look.Plain, r.Earliest)
	if p.Length > 0 {
		fits := o.linked("fits", p.Place.Row)
		if fits == "" {
			fits = fmt.Sprintf(`IF(AND(ABS(%s-%s)<0.001,%s=%d),"fits","run again")`, cell(lengthCol, mm), exact(float64(p.Length)), cell(piecesCol, none), p.Qty)
		}
		g.Words(row, cutCol, look.Plain, o.live(fits), "fits")
	}
	g.Text(row, partChecksCol, look.Wrap, partChecks(r.Checks))
	g.Text(row, fromCol, look.Quiet, p.Section.Basis)
}

// massOnSheet is the mass of all pieces of a line, where no cell beside the cut list
// has it.
func massOnSheet(p *parts.Part, r *parts.Result, cell func(int, unit) string, us bool) string {
	step := math.Pow(10, partKg)
	gives := math.Round(r.KgM*float64(p.Length)/1000*float64(p.Qty)*step) / step
	return agreed(gives, float64(r.Mass), kilo.wrap(rounded(cell(weightCol, kiloM)+"*"+cell(lengthCol, mm)+"/1000*"+cell(piecesCol, none), partKg), us))
}

// paintTemplate is the area of all pieces of a line, and what it gives now. Plates are
// painted on their ends as well.
func paintTemplate(p *parts.Part, r *parts.Result) (template string, gives float64) {
	ends := 0.0
	if p.Plate {
		ends = 2 * float64(p.Width) * float64(p.Section.Web) / 1e6
	}
	one := "[perimeter_mm]*[length_mm]/1000000"
	if ends > 0 {
		one = "(" + one + "+" + exact(ends) + ")"
	}
	step := math.Pow(10, partPaint)
	gives = math.Round((float64(r.Perimeter)*float64(p.Length)/1e6+ends)*float64(p.Qty)*step) / step
	return rounded(one+"*[qty]", partPaint), gives
}

// paintOnSheet is the same formula on the cells of the line.
func paintOnSheet(p *parts.Part, r *parts.Result, cell func(int, unit) string, us bool) string {
	template, gives := paintTemplate(p, r)
	text := expand(template, func(key string) string {
		switch key {
		case "perimeter_mm":
			return cell(perimeterCol, mm)
		case "length_mm":
			return cell(lengthCol, mm)
		}
		return cell(piecesCol, none)
	}, nil)
	return agreed(gives, r.Paint, square.wrap(text, us))
}

// agreed returns a formula where it gives what was worked out, else none.
func agreed(gives, want float64, formula string) string {
	if !agree(gives, want) {
		return ""
	}
	return formula
}

// cutCell links a number of the cut list where the user's own cell is that number
// in some unit; empty where it is not.
func (o *output) cutCell(p *parts.Part, key string, want float64) string {
	r := rowAt(o.l.cut, p.Place.Row)
	col, factor := ownNumber(&o.l.job.Parts.List, r, key, want)
	if col == 0 {
		return ""
	}
	return times(quoteSheet(o.l.cut.Name)+"!$"+pack.ColumnName(col)+"$"+itoa(r.Number), col, factor)
}

// edgeTexts name the edges to be bevelled, alike ones once with their joints.
func edgeTexts(r *parts.Result, us bool) []string {
	var said byJoint
	for _, e := range r.Edges {
		said.add(e.Joint, e.Groove+", "+bevelText(&e, us))
	}
	return said.texts()
}

// byJoint gathers what is said of joints, so that alike ones are told once.
type byJoint struct{ what, joints []string }

func (b *byJoint) add(joint, what string) {
	i := slices.Index(b.what, what)
	switch {
	case i < 0:
		b.what, b.joints = append(b.what, what), append(b.joints, joint)
	case !strings.Contains(", "+b.joints[i]+", ", ", "+joint+", "):
		b.joints[i] += ", " + joint
	}
}

func (b *byJoint) texts() []string {
	out := make([]string, len(b.what))
	for i := range out {
		out[i] = b.joints[i] + ": " + b.what[i]
	}
	return out
}

// bevelsText names the bevels of a part, alike ones once.
func bevelsText(r *parts.Result, us bool) string {
	var said []string
	for _, e := range r.Edges {
		said = add(said, bevelText(&e, us))
	}
	return strings.Join(said, "; ")
}

func bevelText(e *parts.Edge, us bool) string {
	text := trimmed(float64(e.Angle)) + "°, face " + sized(e.RootFace, us)
	if e.Depth > 0 {
		text += ", depth " + sized(e.Depth, us)
	}
	if e.Both {
		text += ", both faces"
	}
	return text
}

// endTexts name the ends that are not cut square by joint, alike ones once.
func endTexts(r *parts.Result, us bool) []string {
	var said byJoint
	for _, e := range r.Ends {
		what := "end to the drawing"
		switch {
		case !e.Copes && e.Angle > 0:
			what = fmt.Sprintf("mitre %s°", trimmed(math.Abs(90-float64(e.Angle))))
		case e.Copes:
			what = fmt.Sprintf("saddle on %s at %s°", sized(e.On, us), trimmed(float64(e.Angle)))
		}
		if e.Template > 0 {
			what += ", template " + itoa(e.Template)
		}
		said.add(e.Joint, fmt.Sprintf("%s (%d)", what, e.Count))
	}
	return said.texts()
}

// add appends a text that is not there yet.
func add(said []string, text string) []string {
	if slices.Contains(said, text) {
		return said
	}
	return append(said, text)
}

func trimmed(v float64) string { return exact(math.Round(v*1000) / 1000) }

func partChecks(checks []finding.Check) string {
	var said []string
	for _, c := range checks {
		said = append(said, string(c.Level)+": "+c.Text)
	}
	return strings.Join(said, "; ")
}

// partTotals adds the parts up.
func (o *output) partTotals(g *look.Grid) {
	t, us := &o.l.job.Parts.Totals, o.l.us
	row := partsFrom + len(o.l.job.Parts.List.Parts)
	sum := func(col int, format string, v float64) {
		g.Number(row, col, look.Total, format, o.live("SUM("+o.partRange(col)+")"), v)
	}
	g.Text(row, 1, look.TotalTxt, "Total")
	for col := 2; col <= len(partHeads); col++ {
		switch col {
		case piecesCol:
			sum(col, "#,##0", float64(t.Pieces))
		case massCol:
			sum(col, "#,##0.00", kilo.show(float64(t.Mass), us))
		case paintCol:
			sum(col, "#,##0.00", square.show(t.Paint, us))
		default:
			g.Blank(row, col, look.TotalTxt)
		}
	}
}

// assemblyBlock tells the weld metal on a tonne of each assembly; it returns the row
// behind it.
func (o *output) assemblyBlock(g *look.Grid, row int) int {
	us := o.l.us
	g.Section(row, 6, "By assembly")
	per, factor := "kg/t", 1000.0
	if us {
		per, factor = "lb/ton", 2000
	}
	headLine(g, row+1, 2, []string{"Assembly", "", "Pieces", "Mass " + kilo.name(us), "Weld " + kilo.name(us), per})
	for k, a := range o.l.job.Parts.Assemblies {
		at := row + 2 + k
		pieces, mass, weld := o.assemblySums(at, a)
		name := a.Name
		if name == "" {
			name = price.NoAssembly
		}
		g.Text(at, 1, look.Plain, name)
		g.Blank(at, 2, look.Plain)
		for i, c := range []struct {
			format, formula string
			v               float64
		}{{"#,##0", pieces, float64(a.Pieces)}, {"#,##0.00", mass, kilo.show(float64(a.Mass), us)}, {"#,##0.000", weld, kilo.show(float64(a.WeldMetal), us)}} {
			if c.v > 0 {
				g.Number(at, 3+i, look.Calc, c.format, o.live(c.formula), c.v)
			}
		}
		if a.Mass > 0 && a.WeldMetal > 0 {
			g.Number(at, 6, look.Calc, "0.0", o.live(fmt.Sprintf("E%d/D%d*%s", at, at, exact(factor))), kilo.show(float64(a.WeldMetal), us)/kilo.show(float64(a.Mass), us)*factor)
		}
	}
	return row + 2 + len(o.l.job.Parts.Assemblies)
}

// assemblySums are the formulas that add an assembly up; empty where its name is
// spelled in more than one way, which no spreadsheet adds together.
func (o *output) assemblySums(at int, a parts.Assembly) (pieces, mass, weld string) {
	b, us := o.l.job.Parts, o.l.us
	n, kg := 0, 0.0
	for i := range b.List.Parts {
		if b.List.Parts[i].Assembly == a.Name {
			n += b.List.Parts[i].Qty
			kg += float64(b.Results[i].Mass)
		}
	}
	name := "$A" + itoa(at)
	if a.Name == "" {
		name = `""`
	}
	sheet := quoteSheet(o.parts) + "!"
	of := func(col int) string {
		return "SUMPRODUCT(--EXACT(" + sheet + o.partRange(assemblyCol) + "," + name + ")," + sheet + o.partRange(col) + ")"
	}
	if n == a.Pieces {
		pieces = of(piecesCol)
		mass = agreed(math.Round(kg*1e3)/1e3, float64(a.Mass), kilo.wrap(rounded(kilo.metricOf(of(massCol), us), 3), us))
	}
	metal := 0.0
	o.l.rows(func(_ int, r *row) {
		if r.j.Assembly == a.Name {
			metal += float64(r.p.WeldMetal)
		}
	})
	if len(o.l.job.List.Joints) > 0 {
		weld = agreed(math.Round(metal*1e6)/1e6, float64(a.WeldMetal), o.sumBy("weld_kg", "by_assembly", "$A"+itoa(at), false, price.KgDecimals))
	}
	return pieces, mass, weld
}
