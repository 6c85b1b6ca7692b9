package workbook

import (
	"fmt"
	"math"
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

// partHeads are the columns of the sheet of parts.
type partHead struct {
	text string
	unit unit
	wide float64
	num  bool
}

var partHeads = []partHead{
	{"Part", none, 9, false}, {"Section", none, 18, false}, {"Material", none, 10, false}, {"Length", mm, 11, true}, {"Pieces", none, 8, true},
	{"", kiloM, 8, true}, {"Mass", kilo, 10, true}, {"Perimeter", mm, 13, true}, {"Paint", square, 9, true},
	{"Seam", metre, 9, true}, {"Weld", kilo, 9, true}, {"Shrink", mm, 11, true}, {"to", mm, 8, true}, {"Bevel", metre, 9, true},
	{"Edges and ends", none, 27, false}, {"Strip first", none, 11, false}, {"First in", none, 10, false}, {"Checks", none, 34, false}, {"Weight and perimeter from", none, 27, false},
}

// partsSheet gives the cut list back worked out, on the user's own cells where they
// are numbers of the same workbook.
func (o *output) partsSheet() *look.Grid {
	b := o.l.job.Parts
	g := look.NewGrid(o.l.book, o.parts)
	g.Freeze, g.Titles = 4, 4
	g.Text(1, 1, look.Title, "Parts")
	g.Text(2, 1, look.Sub, "The cut list worked out: all pieces of a part together; paint on all faces that show; seam and weld metal of the joints that name it, on both parts of a seam; what its welds shorten one piece by, least and most; edges to bevel.")
	for i, h := range partHeads {
		g.Widths = append(g.Widths, h.wide)
		role, text := look.Head, h.text
		if u := h.unit.name(o.l.us); u != "" {
			text = strings.TrimSpace(text + " " + u)
		}
		if h.num {
			role = look.HeadNum
		}
		g.Text(4, i+1, role, text)
	}
	for i := range b.List.Parts {
		o.partLine(g, 5+i, i)
	}
	o.partTotals(g, 5, 4+len(b.List.Parts))
	o.assemblyBlock(g, g.Rows()+2)
	return g
}

func (o *output) partLine(g *look.Grid, row, i int) {
	p, r, us := &o.l.job.Parts.List.Parts[i], &o.l.job.Parts.Results[i], o.l.us
	num := func(col int, u unit, format, formula string, v float64, known bool) {
		if !known {
			return
		}
		role := look.Calc
		if formula == "" {
			role = look.Plain
		}
		g.Number(row, col, role, format, o.live(formula), u.show(v, us))
	}
	g.Text(row, 1, look.Plain, p.Mark)
	g.Text(row, 2, look.Plain, p.Section.Designation)
	g.Text(row, 3, look.Plain, p.Material)
	length, qty := o.cutCell(p, "length", float64(p.Length)), o.cutCell(p, "qty", float64(p.Qty))
	if length != "" {
		length = mm.wrap(length, us)
	}
	num(4, mm, "#,##0.0", length, float64(p.Length), p.Length > 0)
	num(5, none, "#,##0", qty, float64(p.Qty), true)
	num(6, kiloM, "0.000", "", r.KgM, r.KgM > 0)
	cell := func(col string, u unit) string { return u.metricOf(col+itoa(row), us) }
	mass := math.Round(r.KgM*float64(p.Length)/1000*float64(p.Qty)*1e3) / 1e3
	num(7, kilo, "#,##0.00", agreed(mass, float64(r.Mass), kilo.wrap(rounded(cell("F", kiloM)+"*"+cell("D", mm)+"/1000*E"+itoa(row), 3), us)), float64(r.Mass), r.Mass > 0)
	num(8, mm, "#,##0.0", "", float64(r.Perimeter), r.Perimeter > 0)
	faces := 0.0
	if p.Plate {
		faces = 2 * float64(p.Width) * float64(p.Section.Web) / 1e6
	}
	paint := math.Round((float64(r.Perimeter)*float64(p.Length)/1e6+faces)*float64(p.Qty)*1e4) / 1e4
	body := cell("H", mm) + "*" + cell("D", mm) + "/1000000"
	if faces > 0 {
		body = "(" + body + "+" + exact(faces) + ")"
	}
	num(9, square, "#,##0.00", agreed(paint, r.Paint, square.wrap(rounded(body+"*E"+itoa(row), 4), us)), r.Paint, r.Paint > 0)
	num(10, metre, "#,##0.00", "", float64(r.Seam), r.Seam > 0)
	num(11, kilo, "0.000", "", float64(r.WeldMetal), r.WeldMetal > 0)
	if r.Shrink != nil {
		num(12, mm, "0.00", "", float64(r.Shrink[0]), true)
		num(13, mm, "0.00", "", float64(r.Shrink[1]), true)
	}
	num(14, metre, "0.00", "", float64(r.Bevel), r.Bevel > 0)
	g.Text(row, 15, look.Wrap, o.edgesText(r))
	g.Text(row, 16, look.Plain, r.Strip)
	g.Text(row, 17, look.Plain, r.Earliest)
	g.Text(row, 18, look.Wrap, partChecks(r.Checks))
	g.Text(row, 19, look.Quiet, p.Section.Basis+": "+p.Section.Source)
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
	if o.l.cut == nil || want == 0 {
		return ""
	}
	for i := range o.l.cut.Rows {
		r := &o.l.cut.Rows[i]
		if r.Number != p.Place.Row {
			continue
		}
		for _, c := range o.l.job.Parts.List.Columns {
			cell := r.At(c.Col)
			if c.Key != key || cell.Kind != list.Number || cell.Percent {
				continue
			}
			for _, f := range factors {
				if !agree(cell.Value*f, want) || key == "qty" && f != 1 {
					continue
				}
				ref := quoteSheet(o.l.cut.Name) + "!$" + pack.ColumnName(c.Col) + "$" + itoa(r.Number)
				if f == 1 {
					return ref
				}
				return ref + "*" + exact(f)
			}
		}
	}
	return ""
}

func (o *output) edgesText(r *parts.Result) string {
	var said []string
	size := func(v units.MM) string { return trimmed(mm.show(float64(v), o.l.us)) + " " + mm.name(o.l.us) }
	for _, e := range r.Edges {
		text := fmt.Sprintf("%s: %s, %s°, root face %s", e.Joint, e.Groove, trimmed(float64(e.Angle)), size(e.RootFace))
		if e.Both {
			text += ", both faces"
		}
		said = append(said, text)
	}
	for _, e := range r.Ends {
		what := "end to the drawing"
		if e.Copes {
			what = fmt.Sprintf("saddle on %s at %s°", size(e.On), trimmed(float64(e.Angle)))
		}
		said = append(said, fmt.Sprintf("%s: %s (%d)", e.Joint, what, e.Count))
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
func (o *output) partTotals(g *look.Grid, from, to int) {
	t, us := &o.l.job.Parts.Totals, o.l.us
	row := to + 1
	g.Text(row, 1, look.TotalTxt, "Total")
	sum := func(col string) string { return o.live("SUM(" + col + itoa(from) + ":" + col + itoa(to) + ")") }
	for col := 2; col <= len(partHeads); col++ {
		switch col {
		case 5:
			g.Number(row, col, look.Total, "#,##0", sum("E"), float64(t.Pieces))
		case 7:
			g.Number(row, col, look.Total, "#,##0.00", sum("G"), kilo.show(float64(t.Mass), us))
		case 9:
			g.Number(row, col, look.Total, "#,##0.00", sum("I"), square.show(t.Paint, us))
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
	for i, s := range []string{"Assembly", "Pieces", "Mass " + kilo.name(us), "Weld " + kilo.name(us), per} {
		role := look.HeadNum
		if i == 0 {
			role = look.Head
		}
		g.Text(row+1, i+1, role, s)
	}
	for k, a := range o.l.job.Parts.Assemblies {
		at := row + 2 + k
		g.Text(at, 1, look.Plain, orDash(a.Name))
		g.Number(at, 2, look.Plain, "#,##0", "", float64(a.Pieces))
		g.Number(at, 3, look.Plain, "#,##0.00", "", kilo.show(float64(a.Mass), us))
		g.Number(at, 4, look.Plain, "#,##0.000", "", kilo.show(float64(a.WeldMetal), us))
		if a.Mass > 0 && a.WeldMetal > 0 {
			g.Number(at, 5, look.Calc, "0.0", o.live(fmt.Sprintf("D%d/C%d*%s", at, at, exact(factor))), kilo.show(float64(a.WeldMetal), us)/kilo.show(float64(a.Mass), us)*factor)
		}
	}
}

func orDash(s string) string {
	if s == "" {
		return "not named"
	}
	return s
}
