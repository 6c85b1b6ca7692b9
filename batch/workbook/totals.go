package workbook

import (
	"cmp"
	"fmt"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
)

// besideCharts is how many columns of the sheet stand to the left of its charts.
const besideCharts = 8

// totalsSheet is what the estimator reads first.
func (o *output) totalsSheet() *look.Grid {
	g := look.NewGrid(o.l.book, o.totals)
	g.Widths = []float64{34, 11, 13, 11, 11, 11, 11, 11, 11, 11, 13, 13}
	g.Titles = 1
	job := o.l.job
	g.Text(1, 1, look.Title, "Welding price of "+cmp.Or(job.Opts.Job, job.List.File))
	g.Text(2, 1, look.Sub, strings.TrimSpace(fmt.Sprintf("%s; sheet %s; list %.12s; seamtally %s, tables %s", job.Opts.Date, o.l.sheet, job.List.SHA256, job.Version, job.TablesEdition)))
	o.leftOut(g, 3)
	o.priceBlock(g, 4)
	o.countBlock(g, g.Rows()+2)
	o.spreadBlock(g, g.Rows()+2)
	o.metalBlock(g, g.Rows()+2)
	t := job.Totals
	positions, of := t.ByPosition, "ISO 6947"
	if o.l.aws() {
		positions, of = job.ByShownPosition(), "AWS A3.0"
	}
	for _, b := range []struct {
		title, by string
		sums      []price.Sum
	}{{"By assembly", "by_assembly", t.ByAssembly}, {"By wire", "by_wire", t.ByWire}, {"By gas", "by_gas", t.ByGas},
		{"By process (ISO 4063)", "by_process", t.ByProcess}, {"By position (" + of + ")", "by_position", positions}} {
		o.groupBlock(g, g.Rows()+2, b.title, b.by, b.sums)
	}
	o.exclusions(g, g.Rows()+2)
	o.notYours(g, g.Rows()+2)
	o.needsBlock(g, g.Rows()+2)
	return g
}

// leftOut says before the price what is not in it.
func (o *output) leftOut(g *look.Grid, row int) {
	metal, rows := len(o.l.job.Totals.Unpriced), len(newRejected(o.l))
	if metal+rows == 0 {
		return
	}
	var said []string
	if metal > 0 {
		said = append(said, plural(metal, "joint")+" with metal only")
	}
	if rows > 0 {
		said = append(said, plural(rows, "row")+" not worked")
	}
	g.Over(row, 1, besideCharts, look.Heed, "Not in this price: "+strings.Join(said, " and ")+"; the sheet "+o.checks+" says why.")
}

// heads writes the headers of a block: words left, figures right.
func (o *output) heads(g *look.Grid, row int, texts ...string) {
	for i, s := range texts {
		role := look.HeadNum
		if i == 0 || s == "" || s == "How" || s == "What it is" || s == "Basis" || s == "Unit" || s == "From" {
			role = look.Head
		}
		g.Text(row, i+1, role, s)
	}
}

// metalBlock sets the metal that is drawn against the metal that is laid.
func (o *output) metalBlock(g *look.Grid, at int) {
	t, us := o.l.job.Totals, o.l.us
	kg := o.unitOf("weld_kg")
	g.Section(at, besideCharts, "Metal")
	put := func(name string, v float64, unit, format, formula, how string) {
		at++
		g.Text(at, 1, look.Plain, name)
		g.Number(at, 2, look.Calc, format, formula, v)
		g.Text(at, 3, look.Plain, unit)
		g.Text(at, 5, look.Sub, how)
	}
	put("Seam welded", metre.show(float64(t.All.Seam), us), metre.name(us), "#,##0.0", o.sum("seam_m", price.MetreDecimals), "all copies, sides and stitches")
	seamAt := at
	put("Weld metal as drawn", kg.show(float64(t.DrawnKg), us), kg.name(us), "#,##0.00", o.sum("drawn_kg", price.KgDecimals), "the geometry alone")
	put("Weld metal deposited", kg.show(float64(t.All.WeldMetal), us), kg.name(us), "#,##0.00", o.sum("weld_kg", price.KgDecimals), "with the shop's allowances")
	over := fmt.Sprintf("SUM(%s)-SUM(%s)", o.l.columnRange("weld_kg"), o.l.columnRange("drawn_kg"))
	put("Added by allowances", kg.show(t.OverweldKg, us), kg.name(us), "#,##0.00",
		o.live(kg.wrap(rounded(kg.metricOf("("+over+")", us), price.KgDecimals), us)), "overweld, convexity, caps, fit-up gap")
	if t.DrawnKg > 0 {
		put("Added, share of drawn", t.OverweldKg/float64(t.DrawnKg), "", "0%", o.live(fmt.Sprintf("B%d/B%d", at, at-2)), "")
	}
	put("What the allowances cost", t.OverweldCost, o.l.job.Shop.Currency, money2, o.sum("over_cost", price.MoneyDecimals), "cost of overwelding, margin apart (OVER-1)")
	if seam, metal := metre.show(float64(t.All.Seam), us), kg.show(float64(t.All.WeldMetal), us); len(t.Unpriced) == 0 && seam > 0 && metal > 0 {
		cur := o.l.job.Shop.Currency
		put("Price per "+metre.name(us)+" of seam", float64(t.Price)/seam, cur, money2, o.live(fmt.Sprintf("C%d/B%d", o.priceAt, seamAt)), "to compare jobs by; every joint is in the price")
		put("Price per "+kg.name(us)+" of weld metal", float64(t.Price)/metal, cur, money2, o.live(fmt.Sprintf("C%d/B%d", o.priceAt, seamAt+2)), "")
	}
	put("Wire to buy", kg.show(float64(t.All.WireKg), us), kg.name(us), "#,##0.00", o.sum("wire_kg", price.KgDecimals), "see the buy list for whole spools")
	put("Gas", litre.show(float64(t.All.GasL), us), litre.name(us), "#,##0", o.sum("gas_l", price.LitreDecimals), "see the buy list for whole cylinders")
	put("Energy", float64(t.All.Energy), "kWh", "#,##0.0", o.sum("energy_kwh", price.KWhDecimals), "")
}

// countBlock counts rows and findings, and live the plans that fit no longer.
func (o *output) countBlock(g *look.Grid, at int) {
	t, worked, metal := o.l.job.Totals, 0, 0
	o.l.rows(func(_ int, r *row) {
		if r.p.Settings {
			worked++
		} else {
			metal++
		}
	})
	g.Section(at, besideCharts, "Rows and checks")
	put := func(name string, v int, formula, how string, role look.Role) {
		at++
		g.Text(at, 1, role, name)
		g.Number(at, 2, look.Calc, "0", formula, float64(v))
		g.Text(at, 5, look.Sub, how)
	}
	put("Joints worked and priced", worked, "", "rows with settings, time and money", look.Plain)
	put("Joints with metal only", metal, "", "not in the price; their checks say why", look.Plain)
	put("Rows not worked", len(newRejected(o.l)), "", "see the sheet "+o.checks, look.Plain)
	put("Errors", t.Errors, "", "each needs an answer before welding", errorRole(t.Errors))
	put("Warnings", t.Warnings, "", "each needs a look", look.Plain)
	put("Notes", t.Notes, "", "", look.Plain)
	put("Plans to run again", 0, o.live("COUNTIF("+o.l.columnRange("fits")+`,"run again")`), "live: rows whose plan no longer fits", look.Plain)
}

func errorRole(n int) look.Role {
	if n > 0 {
		return roleOf(finding.Error)
	}
	return look.Plain
}

// groupBlock adds the joints up under the names of one column.
func (o *output) groupBlock(g *look.Grid, at int, title, by string, sums []price.Sum) {
	if len(sums) == 0 {
		return
	}
	us, cur := o.l.us, o.l.job.Shop.Currency
	g.Section(at, lastCol, title)
	o.heads(g, at+1, "Name", "Joints", "Copies", "Seam "+metre.name(us), "Weld "+kilo.name(us), "Wire "+kilo.name(us),
		"Gas "+litre.name(us), "Arc h", "Labour h", "kWh", "Cost "+cur, "Price "+cur)
	names := make([]string, len(sums))
	for i, s := range sums {
		names[i] = o.shownName(by, s.Name)
	}
	plain := plainNames(names)
	if by == "by_assembly" {
		o.assemblies = span{at + 2, at + 1 + len(sums)}
	}
	for i, s := range sums {
		o.groupLine(g, at+2+i, by, s, plain)
	}
}

// groupLine writes one name of a group. Joints is a count of rows, copies of pieces.
func (o *output) groupLine(g *look.Grid, row int, by string, s price.Sum, plain bool) {
	us, cell := o.l.us, fmt.Sprintf("$A%d", row)
	g.Text(row, 1, look.Plain, o.shownName(by, s.Name))
	g.Number(row, 2, look.Calc, "0", o.countBy(by, cell, plain), float64(s.Joints))
	for i, c := range []struct {
		key, format string
		decimals    int
		v           float64
	}{
		{"qty", "0", 0, float64(s.Copies)},
		{"seam_m", "#,##0.0", price.MetreDecimals, float64(s.Seam)},
		{"weld_kg", "#,##0.00", price.KgDecimals, float64(s.WeldMetal)},
		{"wire_kg", "#,##0.00", price.KgDecimals, float64(s.WireKg)},
		{"gas_l", "#,##0", price.LitreDecimals, float64(s.GasL)},
		{"arc_min", "#,##0.00", price.MinuteDecimals, float64(s.Arc)},
		{"labour_min", "#,##0.00", price.MinuteDecimals, float64(s.Labour)},
		{"energy_kwh", "#,##0.0", price.KWhDecimals, float64(s.Energy)},
		{"cost", money2, price.MoneyDecimals, float64(s.Cost)},
		{"price", money2, price.MoneyDecimals, float64(s.Price)},
	} {
		formula, v := o.sumBy(c.key, by, cell, plain, c.decimals), o.unitOf(c.key).show(c.v, us)
		if c.key == "arc_min" || c.key == "labour_min" {
			v /= 60
			if formula != "" {
				formula += "/60"
			}
		}
		g.Number(row, i+3, look.Calc, c.format, formula, v)
	}
}

// notYours lists the defaults that move money and that the shop has not stated.
func (o *output) notYours(g *look.Grid, at int) {
	list := o.l.job.Totals.NotYours
	g.Section(at, lastCol, fmt.Sprintf("Not yours: %d built-in figures that move this price", len(list)))
	g.Text(at+1, 1, look.Sub, "State your own on the sheet "+o.rates+", in a shop file, or with --set; what you change on the sheet moves the price at once.")
	heads := make([]string, lastCol)
	heads[0], heads[1], heads[2], heads[3], heads[aboutCol-1] = "Key", "Value", "Unit", "Basis", "What it is"
	o.heads(g, at+2, heads...)
	for i, v := range list {
		row := at + 3 + i
		g.Text(row, 1, look.Plain, v.Key)
		switch {
		case v.IsNum:
			g.Number(row, 2, look.Calc, "General", o.live(o.rateFormula(v.Key)), v.Num)
			g.Text(row, 3, look.Plain, o.unitText(v.Unit))
		case len(v.Text) <= shortValue:
			g.Text(row, 2, look.Right, v.Text)
		default:
			g.Over(row, 2, 3, look.Wrap, v.Text)
		}
		g.Text(row, 4, look.Plain, v.Basis)
		about := v.Note
		if v.Source != "" {
			about = strings.TrimPrefix(about+". Source: "+v.Source, ". ")
		}
		if about != "" {
			g.Over(row, aboutCol, lastCol, look.Quiet, about)
		}
	}
}

// The columns of Totals where a sentence about a value begins and where the sheet
// ends, and how long a word may be that stands among the figures.
const (
	aboutCol   = 6
	lastCol    = 12
	shortValue = 10
)

// unitText names the shop's currency in the unit of a rate, and shortens what no
// column has room for.
func (o *output) unitText(unit string) string {
	unit = strings.ReplaceAll(unit, "money", o.l.job.Shop.Currency)
	return strings.Replace(unit, "share of", "of", 1)
}

// rateFormula is the name of a rate's cell, if it has one.
func (o *output) rateFormula(key string) string { return o.l.rateNames[key] }

// exclusions are sentences to paste into a quote.
func (o *output) exclusions(g *look.Grid, at int) {
	g.Section(at, lastCol, "Exclusions and assumptions, ready to paste")
	lines := append([]string{}, o.l.job.Totals.Exclusions...)
	lines = append(lines, o.assumptions()...)
	for i, s := range lines {
		g.Over(at+1+i, 1, lastCol, look.Wrap, s)
	}
}

// assumptions says what was taken for what the list left out, counted.
func (o *output) assumptions() []string {
	var out []string
	for _, t := range joint.TakenAlike(o.l.job.Assumed()) {
		out = append(out, fmt.Sprintf("Assumed for %s: %s %s (%s; %s).", plural(len(t.Joints), "row"), t.Key, t.Value, t.Why, t.Basis))
	}
	return out
}

// shownName is the name of a group as its rows bear it.
func (o *output) shownName(by, name string) string {
	if at := strings.LastIndexByte(strings.TrimSuffix(name, " mm"), ' '); by == "by_wire" && at > 0 {
		return o.l.names.Filler(name[:at]) + name[at:]
	}
	return name
}
