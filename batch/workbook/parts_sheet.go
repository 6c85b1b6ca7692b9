package workbook

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// Units of parts.
var (
	kiloM  = unit{"kg/m", "lb/ft", 0.45359237 / 0.3048, "0.000"}
	square = unit{"m²", "ft²", 0.09290304, "0.00"}
)

// cutSheetOf finds the sheet of the cut list where it stands in the list's own
// workbook: its cells can then be linked.
func cutSheetOf(src *list.Source, job *price.Job) *list.Sheet {
	if job.Parts == nil || src.Format == list.CSV || job.Parts.List.SHA256 != src.SHA256 {
		return nil
	}
	for i := range src.Sheets {
		if src.Sheets[i].Name == job.Parts.List.Sheet {
			return &src.Sheets[i]
		}
	}
	return nil
}

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
	{"Edges and ends", none, 30, false}, {"Strip first", none, 11, false}, {"First in", none, 10, false}, {"Bars fit?", none, 10, false}, {"Checks", none, 34, false}, {"Weight and perimeter from", none, 40, false},
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
	g.Text(3, 1, look.Sub, "Shrink is what the welds shorten one piece by, least and most; it is not in the length.")
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
	o.assemblyBlock(g, g.Rows()+2)
	return g
}

// partRange is a column of the sheet of parts over all parts.
func (o *output) partRange(col int) string {
	return fmt.Sprintf("$%s$%d:$%s$%d", pack.ColumnName(col), partsFrom, pack.ColumnName(col), partsFrom-1+len(o.l.job.Parts.List.Parts))
}

func (o *output) partLine(g *look.Grid, row, i int) {
	p, r, us := &o.l.job.Parts.List.Parts[i], &o.l.job.Parts.Results[i], o.l.us
	cell := func(col int, u unit) string { return u.metricOf(pack.ColumnName(col)+itoa(row), us) }
	num := func(col int, u unit, format, formula string, v float64, known bool) {
		if !known {
			return
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
	g.Text(row, sectionCol, look.Plain, p.Section.Designation)
	g.Text(row, materialCol, look.Plain, p.Material)
	length := o.cutCell(p, "length", float64(p.Length))
	if length != "" {
		length = mm.wrap(length, us)
	}
	num(lengthCol, mm, "#,##0.0", length, float64(p.Length), p.Length > 0)
	num(piecesCol, none, "#,##0", o.cutCell(p, "qty", float64(p.Qty)), float64(p.Qty), true)
	num(weightCol, kiloM, "0.000", "", r.KgM, r.KgM > 0)
	mass, gives := o.massFormula(p, r, cell)
	num(massCol, kilo, "#,##0.00", agreed(gives, float64(r.Mass), mass), float64(r.Mass), r.Mass > 0)
	num(perimeterCol, mm, "#,##0.0", "", float64(r.Perimeter), r.Perimeter > 0)
	paint, gives := o.paintFormula(p, r, cell)
	num(paintCol, square, "#,##0.00", agreed(gives, r.Paint, paint), r.Paint, r.Paint > 0)
	num(seamCol, metre, "#,##0.00", "", float64(r.Seam), r.Seam > 0)
	num(weldCol, kilo, "0.000", "", float64(r.WeldMetal), r.WeldMetal > 0)
	if r.Shrink != nil {
		num(shrinkCol, mm, "0.00", "", float64(r.Shrink[0]), true)
		num(shrinkToCol, mm, "0.00", "", float64(r.Shrink[1]), true)
	}
	num(bevelCol, metre, "0.00", "", float64(r.Bevel), r.Bevel > 0)
	g.Text(row, edgesCol, look.Wrap, o.edgesText(r))
	g.Text(row, stripCol, look.Plain, r.Strip)
	g.Text(row, firstCol, look.Plain, r.Earliest)
	if p.Length > 0 {
		g.Words(row, cutCol, look.Plain, o.live(fmt.Sprintf(`IF(AND(ABS(%s-%s)<0.001,%s=%d),"fits","run again")`, cell(lengthCol, mm), exact(float64(p.Length)), cell(piecesCol, none), p.Qty)), "fits")
	}
	g.Text(row, partChecksCol, look.Wrap, partChecks(r.Checks))
	g.Text(row, fromCol, look.Quiet, p.Section.Basis+": "+p.Section.Source)
}

// massFormula is the mass of all pieces of a line, and what it gives now.
func (o *output) massFormula(p *parts.Part, r *parts.Result, cell func(int, unit) string) (formula string, gives float64) {
	formula = kilo.wrap(rounded(cell(weightCol, kiloM)+"*"+cell(lengthCol, mm)+"/1000*"+cell(piecesCol, none), 3), o.l.us)
	return formula, math.Round(r.KgM*float64(p.Length)/1000*float64(p.Qty)*1e3) / 1e3
}

// paintFormula is the area of all pieces of a line, and what it gives now. Plates are
// painted on their ends as well.
func (o *output) paintFormula(p *parts.Part, r *parts.Result, cell func(int, unit) string) (formula string, gives float64) {
	ends := 0.0
	if p.Plate {
		ends = 2 * float64(p.Width) * float64(p.Section.Web) / 1e6
	}
	one := cell(perimeterCol, mm) + "*" + cell(lengthCol, mm) + "/1000000"
	if ends > 0 {
		one = "(" + one + "+" + exact(ends) + ")"
	}
	formula = square.wrap(rounded(one+"*"+cell(piecesCol, none), 4), o.l.us)
	return formula, math.Round((float64(r.Perimeter)*float64(p.Length)/1e6+ends)*float64(p.Qty)*1e4) / 1e4
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
	if r == nil || want == 0 {
		return ""
	}
	for _, c := range o.l.job.Parts.List.Columns {
		cell := r.At(c.Col)
		if c.Key != key || cell.Kind != list.Number || cell.Percent {
			continue
		}
		ref := quoteSheet(o.l.cut.Name) + "!$" + pack.ColumnName(c.Col) + "$" + itoa(r.Number)
		if agree(cell.Value, want) {
			return ref
		}
		for _, f := range factors {
			if key == "length" && agree(cell.Value*f, want) {
				return ref + "*" + exact(f)
			}
		}
	}
	return ""
}

// edgesText names what is to be prepared, alike edges and ends once.
func (o *output) edgesText(r *parts.Result) string {
	var said []string
	add := func(text string) {
		if !slices.Contains(said, text) {
			said = append(said, text)
		}
	}
	size := func(v units.MM) string { return trimmed(mm.show(float64(v), o.l.us)) + " " + mm.name(o.l.us) }
	for _, e := range r.Edges {
		text := fmt.Sprintf("%s: %s, %s°, face %s", e.Joint, e.Groove, trimmed(float64(e.Angle)), size(e.RootFace))
		if e.Both {
			text += ", both faces"
		}
		add(text)
	}
	for _, e := range r.Ends {
		what := "end to the drawing"
		if e.Copes {
			what = fmt.Sprintf("saddle on %s at %s°", size(e.On), trimmed(float64(e.Angle)))
		}
		add(fmt.Sprintf("%s: %s (%d)", e.Joint, what, e.Count))
	}
	return strings.Join(said, "\n")
}

func trimmed(v float64) string { return exact(math.Round(v*1000) / 1000) }

func partChecks(checks []finding.Check) string {
	var said []string
	for _, c := range checks {
		said = append(said, string(c.Level)+": "+c.Text)
	}
	return strings.Join(said, "\n")
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

// assemblyBlock tells the weld metal on a tonne of each assembly.
func (o *output) assemblyBlock(g *look.Grid, row int) {
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
	of := func(col int) string {
		return "SUMPRODUCT(--EXACT(" + o.partRange(assemblyCol) + "," + name + ")," + o.partRange(col) + ")"
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
