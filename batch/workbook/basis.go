package workbook

import (
	"fmt"
	"sort"
	"strings"

	"seamtally/batch/workbook/look"
)

// deferral stands wherever settings are shown.
var deferral = []string{
	"Settings are starting points for a test bead on scrap of the same thickness, never a welding procedure.",
	"The governing code, the qualified procedure (WPS) and licensed practice come first; where they differ from this workbook, they hold.",
	"Whether a weld is strong enough is the engineer's judgement. Checks flag; nothing here approves.",
	"Protect eyes, skin and lungs; ventilate; strip zinc and paint first; check gas, earth and cables before striking an arc.",
}

// equations are the formulas behind the columns, by their ids.
var equations = [][3]string{
	{"AREA-1", "A = ½ zA zB sin ψ", "fillet and lap as drawn; geometry"},
	{"AREA-6", "A = ½ zA' zB' sin ψ + ⅔ c w'²,  z' = z + overweld + gap", "fillet and lap as made; c convexity, w' face width"},
	{"AREA-7, 8", "as AREA-1 and AREA-6 for an outside corner, whose edges open to 180° − ψ", "the gap does not lengthen the legs"},
	{"AREA-9", "A = g s + Σ d² tan β / 2 over the bevelled edges", "groove filled flush; g gap, s height, d depth, β bevel; root radius adds its arc"},
	{"AREA-10", "A = A drawn + Σ ⅔ (m + 2 mm) hc + ⅔ (g + 2 mm) hr", "groove as made; m mouth, hc cap height, hr root height, each at most its share of the thinner part"},
	{"METAL", "m = A L ρ", "weld metal; L metres welded, ρ density of the weld metal"},
	{"WIRE", "wire = m / efficiency × (1 + waste);  metres = kg / linear mass", "what is bought"},
	{"DEPO-1", "D = w q η", "deposition rate; w wire feed, q mass of a metre of wire, η efficiency"},
	{"TIME", "t = m / D", "arc time"},
	{"TRAVEL-1", "v = D / (ρ A pass)", "travel speed of a pass"},
	{"HEAT", "E = U I / v;  Q = k E", "arc energy and heat input (EN 1011-1)"},
	{"GAS", "gas = flow × (t + starts × (pre-flow + post-flow))", "starts: stitches × passes, or per metre of a continuous seam"},
	{"COST-1", "labour = (joints + fit-up + cleaning + between passes + arc / min(operating factor, duty) × (1 + rework)) × site factor", "minutes"},
	{"COST-2 to 7", "money of labour (with overhead), wire, gas, energy, power, tips, spatter and slag", "each in its column"},
	{"COST-8, 9", "cost = sum of the five;  price = cost / (1 − margin)", "margin is a share of the price"},
	{"OVER-1", "(1 − A drawn / A)(arc labour + wire + gas + power + tips)", "what the allowances cost"},
}

// partEquations are those behind the figures of the parts.
var partEquations = [][3]string{
	{"PARTS-3, 4", "q = q steel ρ / 7850;  m = q l n / 1000", "mass per metre in another metal; mass of n pieces cut square"},
	{"PARTS-5, 6", "S = P l n / 10⁶;  plate S = (2 b l + 2 t (b + l)) n / 10⁶", "surface that is painted; P perimeter, b width, t thickness"},
	{"PARTS-7", "w = 1000 m weld / m", "weld metal of a tonne of structure"},
	{"PARTS-8, 9", "edge angle = α / 2 of a V or U, α of a bevel or J;  metres = n l / 1000", "edges to be bevelled; α included angle of the groove"},
	{"PARTS-10", "s = f S", "shortening across a seam, recalled; f 1 for the part that a fillet stands on, 1/2 for each of two parts edge to edge or lapped"},
	{"PARTS-11", "s = l δ / 1000", "shortening along a seam, recalled; δ mm a metre, 1 for butts and 1/3 for fillets"},
}

// basisWords explain the four words that stand beside figures.
var basisWords = [][2]string{
	{"published", "stands in a document that is named beside it"},
	{"common-practice", "what shops do; no document"},
	{"derived", "worked out from others; the working is shown"},
	{"memory", "recalled or second-hand; check it before money or safety depends on it"},
	{"shop", "stated by the shop itself"},
}

// basisSheet tells how the numbers are made and how far they may be trusted.
func (o *output) basisSheet() *look.Grid {
	g := look.NewGrid(o.l.book, o.basis)
	g.Widths = []float64{26, 22, 12, 12, 90}
	g.Titles = 1
	job := o.l.job
	g.Text(1, 1, look.Title, "Basis")
	g.Text(2, 1, look.Sub, "How the figures were made, from what, and how far they go.")
	at := o.lines(g, 4, "Read this first", deferral)
	g.Section(at, 5, "Made from")
	for _, p := range [][2]string{{"List", job.List.File}, {"Sheet", job.List.Sheet}, {"SHA-256 of the list", job.List.SHA256},
		{"Date", job.Opts.Date}, {"seamtally", job.Version}, {"Edition of the tables", job.TablesEdition}, {"Units shown", unitsShown(o.l.us)}} {
		at++
		g.Text(at, 1, look.Plain, p[0])
		g.Text(at, 2, look.Plain, p[1])
	}
	at = o.columnsTable(g, at+2)
	at = o.equationTable(g, at+1)
	g.Section(at+1, 5, "What the words of basis mean")
	at++
	for _, w := range basisWords {
		at++
		g.Text(at, 1, look.Plain, w[0])
		g.Text(at, 2, look.Plain, w[1])
	}
	at = o.lines(g, at+2, "Colours", []string{
		"Yellow with a dotted frame: a cell to change. White: follows from others. Grey: chosen by the planner, change it only by running the list again.",
		"Errors and warnings are said in words; the colour only helps to find them.",
	})
	at = o.lines(g, at, "Sources named in this workbook", o.sources())
	o.lines(g, at, "Assumptions", o.assumptions())
	return g
}

func unitsShown(us bool) string {
	if us {
		return "inches, pounds, inches per minute; rates stay metric"
	}
	return "metric"
}

// lines writes a heading and one sentence a line.
func (o *output) lines(g *look.Grid, at int, title string, lines []string) int {
	if len(lines) == 0 {
		return at
	}
	g.Section(at, 5, title)
	for i, s := range lines {
		g.Over(at+1+i, 1, 5, look.Wrap, s)
	}
	return at + len(lines) + 2
}

// columnsTable maps each header beside the list to its documented key.
func (o *output) columnsTable(g *look.Grid, at int) int {
	if !isAlone(o.l.job) {
		at = columnLines(g, at, "Columns beside the list", o.l.cols, o.l.letters, o.l.us)
	}
	if o.cut != nil {
		if !isAlone(o.l.job) {
			at++
		}
		at = columnLines(g, at, "Columns beside the cut list", o.cut.cols, o.cut.letters, o.l.us)
	}
	g.Text(at, 1, look.Sub, "Keys in dark stand in the results file too, in metric units. Formulas and results are metric inside; the header names the unit shown.")
	return at + 1
}

// columnLines writes one line for each column.
func columnLines[R any](g *look.Grid, at int, title string, cols []columnBeside[R], letters []string, us bool) int {
	g.Section(at, 5, title)
	for i, s := range []string{"Header", "Key", "Group", "Column", "What it is"} {
		g.Text(at+1, i+1, look.Head, s)
	}
	at += 2
	for i := range cols {
		c := &cols[i]
		g.Text(at, 1, look.Plain, c.title(us))
		role := look.Plain
		if !c.result {
			role = look.Sub
		}
		g.Text(at, 2, role, c.key)
		g.Text(at, 3, look.Plain, groupName(c.group))
		g.Text(at, 4, look.Plain, letters[i])
		g.Text(at, 5, look.Wrap, c.about)
		at++
	}
	return at
}

func (o *output) equationTable(g *look.Grid, at int) int {
	g.Section(at, 5, "Equations")
	g.Text(at+1, 1, look.Head, "Id")
	g.Over(at+1, 2, 5, look.Head, "Equation (what it gives, and its symbols)")
	at += 2
	all := equations
	if o.l.job.Parts != nil {
		all = append(all[:len(all):len(all)], partEquations...)
	}
	for _, e := range all {
		g.Text(at, 1, look.Plain, e[0])
		g.Over(at, 2, 5, look.Wrap, e[1]+"   ("+e[2]+")")
		at++
	}
	return at
}

// sectionSources say where the weights and perimeters of the sections are from.
func (o *output) sectionSources() []string {
	if o.l.job.Parts == nil {
		return nil
	}
	var said byJoint
	for i := range o.l.job.Parts.List.Parts {
		s := &o.l.job.Parts.List.Parts[i].Section
		if s.Source != "" {
			said.add(o.l.called(s.Designation), fmt.Sprintf("%s (%s)", s.Source, s.Basis))
		}
	}
	out := said.texts()
	for i := range out {
		out[i] = "Sections: " + out[i]
	}
	return out
}

// sources are the documents named by rates and checks, each once, sorted.
func (o *output) sources() []string {
	seen := map[string]bool{}
	for _, v := range o.l.job.Shop.Values {
		if v.Source != "" {
			seen[fmt.Sprintf("%s (%s)", v.Source, v.Basis)] = true
		}
	}
	for _, s := range o.sectionSources() {
		seen[s] = true
	}
	named := map[[2]string]bool{}
	o.l.rows(func(_ int, r *row) {
		for i := range r.p.Checks {
			if c := &r.p.Checks[i]; c.Source != "" {
				named[[2]string{c.Source, c.Basis}] = true
			}
		}
	})
	for n := range named {
		seen[fmt.Sprintf("%s (%s)", n[0], n[1])] = true
	}
	var out []string
	for s := range seen {
		out = append(out, strings.TrimSpace(s))
	}
	sort.Strings(out)
	return out
}
