package workbook

import (
	"fmt"

	"seamtally/batch/compare"
	"seamtally/batch/workbook/look"
)

// Compare returns a workbook of what two lists differ in: a sheet of sums and a
// sheet of joints. Differences are live formulas on the two amounts.
func Compare(d *compare.Difference, opt PlainOptions) ([]byte, error) {
	book := look.NewBook("", "")
	b := &binder{f: book.File, title: "Two lists compared: " + footerText(d.New.File), about: "Estimates, with the same shop values for both lists",
		left: d.Old.File + " > " + d.New.File, version: opt.Version, paper: opt.Paper, date: opt.Date}
	c := &comparing{d: d, us: opt.US}
	grids := []*look.Grid{c.sums(look.NewGrid(book, "Difference")), c.joints(look.NewGrid(book, "Joints compared"))}
	return b.whole(book, grids)
}

// comparing draws the sheets of a comparison.
type comparing struct {
	d  *compare.Difference
	us bool
}

// measures are the four figures that a joint or a list comes to.
func (c *comparing) measures() []struct {
	name, format string
	of           func(compare.Amount) float64
} {
	return []struct {
		name, format string
		of           func(compare.Amount) float64
	}{
		{"Seam " + metre.name(c.us), "#,##0.00", func(a compare.Amount) float64 { return metre.show(float64(a.Seam), c.us) }},
		{"Weld metal " + kilo.name(c.us), "#,##0.00", func(a compare.Amount) float64 { return kilo.show(float64(a.WeldMetal), c.us) }},
		{"Labour h", "#,##0.00", func(a compare.Amount) float64 { return float64(a.Labour) / 60 }},
		{"Price " + c.d.Currency, money2, func(a compare.Amount) float64 { return float64(a.Price) }},
	}
}

// sums sets the two lists side by side as wholes.
func (c *comparing) sums(g *look.Grid) *look.Grid {
	d := c.d
	g.Widths = []float64{30, 16, 16, 16, 60}
	g.Text(1, 1, look.Title, "Two lists compared")
	g.Text(2, 1, look.Sub, d.Old.File+" before, "+d.New.File+" now; both worked with the same shop values.")
	row := 4
	g.Section(row, 5, "In all")
	row++
	for i, s := range []string{"", "Before", "Now", "Difference"} {
		g.Text(row, i+1, []look.Role{look.Head, look.HeadNum, look.HeadNum, look.HeadNum}[i], s)
	}
	put := func(name, format string, before, now float64, note string) {
		row++
		g.Text(row, 1, look.Plain, name)
		g.Number(row, 2, look.Calc, format, "", before)
		g.Number(row, 3, look.Calc, format, "", now)
		g.Number(row, 4, look.Total, format, fmt.Sprintf("C%d-B%d", row, row), now-before)
		if note != "" {
			g.Text(row, 5, look.Sub, note)
		}
	}
	put("Joints", "0", float64(d.Old.Joints), float64(d.New.Joints), rejectedText(d))
	for _, m := range c.measures() {
		put(m.name, m.format, m.of(d.Old.All), m.of(d.New.All), c.about(m.name))
	}
	put("of it change-overs "+d.Currency, money2, float64(d.Old.ChangeOvers.Price), float64(d.New.ChangeOvers.Price), "between wires, gases and machines; they belong to no joint")
	row += 2
	g.Section(row, 5, "What became of the joints")
	for _, n := range []struct {
		what, note string
		count      int
	}{
		{"Added", "in the new list only", len(d.Added)}, {"Removed", "in the old list only", len(d.Removed)},
		{"Changed", "the list says something else of them", len(d.Changed)},
		{"Planned otherwise", "the list says the same; the choice for the whole list came out otherwise", len(d.Replanned)},
		{"The same", "", d.Same},
	} {
		row++
		g.Text(row, 1, look.Plain, n.what)
		g.Number(row, 2, look.Calc, "0", "", float64(n.count))
		if n.note != "" {
			g.Text(row, 3, look.Sub, n.note)
		}
	}
	return g
}

// about says of the money that it is not whole where joints have none.
func (c *comparing) about(name string) string {
	if name == "Price "+c.d.Currency && !(c.d.Old.All.Priced && c.d.New.All.Priced) {
		return "joints without settings have metal and metres only and no price"
	}
	return ""
}

func rejectedText(d *compare.Difference) string {
	if d.Old.Rejected+d.New.Rejected == 0 {
		return ""
	}
	return fmt.Sprintf("not compared, because they could not be worked: %d rows before, %d now", d.Old.Rejected, d.New.Rejected)
}

// joints lists every joint that is not the same in both.
func (c *comparing) joints(g *look.Grid) *look.Grid {
	g.Widths = []float64{17, 13, 13, 8, 8, 46, 10, 10, 10, 12, 12, 12}
	g.Freeze, g.Titles = 4, 4
	g.Text(1, 1, look.Title, "Joints that differ")
	g.Text(2, 1, look.Sub, "Rows are those of the two lists; seam, weld metal and labour are what the joint adds or takes away, with its sign.")
	g.Text(3, 4, look.Quiet, "Row")
	g.Text(3, 7, look.Quiet, "Difference")
	g.Text(3, 10, look.Quiet, "Price "+c.d.Currency)
	for i, s := range []string{"What became of it", "Mark", "Assembly", "before", "now", "What differs", metre.name(c.us) + " seam", kilo.name(c.us) + " weld", "hours", "before", "now", "difference"} {
		role := look.Head
		if i == 3 || i == 4 || i > 5 {
			role = look.HeadNum
		}
		g.Text(4, i+1, role, s)
	}
	row := 4
	for _, block := range []struct {
		what string
		list []compare.Line
	}{{"added", c.d.Added}, {"removed", c.d.Removed}, {"changed", c.d.Changed}, {"planned otherwise", c.d.Replanned}} {
		for i := range block.list {
			row++
			c.joint(g, row, block.what, &block.list[i])
		}
	}
	return g
}

func (c *comparing) joint(g *look.Grid, row int, what string, l *compare.Line) {
	g.Text(row, 1, look.Plain, what)
	g.Text(row, 2, look.Plain, l.Mark)
	g.Text(row, 3, look.Plain, l.Assembly)
	for i, n := range []int{l.OldRow, l.NewRow} {
		if n > 0 {
			g.Number(row, 4+i, look.Calc, "0", "", float64(n))
		}
	}
	text := ""
	for i, f := range l.Fields {
		if i > 0 {
			text += "; "
		}
		text += f.Words()
	}
	g.Text(row, 6, look.Wrap, text)
	by := l.By()
	measures := c.measures()
	for k, m := range measures[:3] {
		g.Number(row, 7+k, look.Calc, "+"+m.format+";-"+m.format+";0", "", m.of(by))
	}
	money := measures[3]
	if l.OldRow > 0 && l.Old.Priced {
		g.Number(row, 10, look.Calc, money.format, "", money.of(l.Old))
	}
	if l.NewRow > 0 && l.New.Priced {
		g.Number(row, 11, look.Calc, money.format, "", money.of(l.New))
	}
	if by.Priced {
		g.Number(row, 12, look.Total, "+"+money2+";-"+money2+";0", fmt.Sprintf("N(K%d)-N(J%d)", row, row), money.of(l.New)-money.of(l.Old))
	}
}
