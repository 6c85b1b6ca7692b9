package workbook

import (
	"fmt"

	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// SummaryRow is one list of a run of several.
type SummaryRow struct {
	File, Sheet string
	Failed      string // why it was not worked or its outputs not written; empty: it was
	Joints      int
	Totals      price.Totals
	Currency    string
	Buy         []price.BuyLine
}

// Summary returns a workbook that sets all lists of a run side by side, with one
// buy list for them together. Sums are live formulas.
func Summary(rows []SummaryRow, opt PlainOptions) ([]byte, error) {
	book := look.NewBook("", "")
	b := &binder{f: book.File, title: "All lists of a run", about: "Starting points and estimates; each list has its own workbook",
		left: fmt.Sprint(len(rows), " lists"), version: opt.Version, paper: opt.Paper, date: opt.Date}
	s := &summing{rows: rows, us: opt.US}
	return b.whole(book, []*look.Grid{s.lists(look.NewGrid(book, "Lists")), s.buy(look.NewGrid(book, "Buy for all"))})
}

// summing draws the sheets of a summary.
type summing struct {
	rows []SummaryRow
	us   bool
}

// figures are the columns of a list that are summed, in order.
func (s *summing) figures() []struct {
	head, format string
	of           func(*SummaryRow) float64
} {
	return []struct {
		head, format string
		of           func(*SummaryRow) float64
	}{
		{"Joints", "0", func(r *SummaryRow) float64 { return float64(r.Joints) }},
		{"Errors", "0", func(r *SummaryRow) float64 { return float64(r.Totals.Errors) }},
		{"Warnings", "0", func(r *SummaryRow) float64 { return float64(r.Totals.Warnings) }},
		{"Seam " + metre.name(s.us), "#,##0.0", func(r *SummaryRow) float64 { return metre.show(float64(r.Totals.All.Seam), s.us) }},
		{"Weld " + kilo.name(s.us), "#,##0.00", func(r *SummaryRow) float64 { return kilo.show(float64(r.Totals.All.WeldMetal), s.us) }},
		{"Wire " + kilo.name(s.us), "#,##0.00", func(r *SummaryRow) float64 { return kilo.show(float64(r.Totals.All.WireKg), s.us) }},
		{"Gas " + litre.name(s.us), "#,##0", func(r *SummaryRow) float64 { return litre.show(float64(r.Totals.All.GasL), s.us) }},
		{"Arc h", "#,##0.0", func(r *SummaryRow) float64 { return float64(r.Totals.All.Arc) / 60 }},
		{"Labour h", "#,##0.0", func(r *SummaryRow) float64 { return float64(r.Totals.All.Labour+r.Totals.ChangeOverMin) / 60 }},
		{"Cost", money2, func(r *SummaryRow) float64 { return float64(r.Totals.Cost) }},
		{"Price", money2, func(r *SummaryRow) float64 { return float64(r.Totals.Price) }},
	}
}

// lists puts one list on each line and the sums below them.
func (s *summing) lists(g *look.Grid) *look.Grid {
	g.Widths = []float64{30, 14, 8, 8, 10, 11, 11, 11, 11, 9, 10, 13, 13, 10, 44}
	g.Freeze, g.Titles = 4, 4
	g.Text(1, 1, look.Title, "All lists of this run")
	g.Text(2, 1, look.Sub, "Labour and money with the change-overs of each list. Details stand in the workbook of each list.")
	g.Text(4, 1, look.Head, "List")
	g.Text(4, 2, look.Head, "Sheet")
	figures := s.figures()
	for k, f := range figures {
		g.Text(4, 3+k, look.HeadNum, f.head)
	}
	g.Text(4, 3+len(figures), look.Head, "Currency")
	g.Text(4, 4+len(figures), look.Head, "What became of it")
	for i := range s.rows {
		s.list(g, 5+i, &s.rows[i])
	}
	last := 4 + len(s.rows)
	g.Text(last+1, 1, look.TotalTxt, "All lists")
	g.Blank(last+1, 2, look.TotalTxt)
	for k, f := range figures {
		sum, money := 0.0, f.format == money2
		for i := range s.rows {
			if s.rows[i].Failed == "" {
				sum += f.of(&s.rows[i])
			}
		}
		if money && !s.oneCurrency() {
			g.Text(last+1, 3+k, look.TotalTxt, "several")
			continue
		}
		col := pack.ColumnName(3 + k)
		g.Number(last+1, 3+k, look.Total, f.format, fmt.Sprintf("SUM(%s5:%s%d)", col, col, last), sum)
	}
	s.failures(g, last+3)
	return g
}

// failures says in full why a list was not worked.
func (s *summing) failures(g *look.Grid, row int) {
	for i := range s.rows {
		if r := &s.rows[i]; r.Failed != "" {
			g.Text(row, 1, look.Plain, r.Failed)
			row++
		}
	}
}

func (s *summing) list(g *look.Grid, row int, r *SummaryRow) {
	g.Text(row, 1, look.Plain, r.File)
	g.Text(row, 2, look.Plain, r.Sheet)
	figures := s.figures()
	if r.Failed != "" {
		g.Text(row, 4+len(figures), look.Stop, "not worked: see below")
		return
	}
	for k, f := range figures {
		g.Number(row, 3+k, look.Calc, f.format, "", f.of(r))
	}
	g.Text(row, 3+len(figures), look.Plain, r.Currency)
	switch {
	case r.Totals.Errors > 0:
		g.Text(row, 4+len(figures), look.Heed, fmt.Sprintf("worked, with %d errors: see its sheet of checks", r.Totals.Errors))
	case len(r.Totals.Unpriced) > 0:
		g.Text(row, 4+len(figures), look.Heed, fmt.Sprintf("worked; %d joints have no price", len(r.Totals.Unpriced)))
	default:
		g.Text(row, 4+len(figures), look.Plain, "worked")
	}
}

// oneCurrency tells whether money of the lists may be added up.
func (s *summing) oneCurrency() bool {
	seen := ""
	for i := range s.rows {
		if c := s.rows[i].Currency; c != "" {
			if seen != "" && seen != c {
				return false
			}
			seen = c
		}
	}
	return true
}

// buy adds up what the lists need and rounds it up once for all of them.
func (s *summing) buy(g *look.Grid) *look.Grid {
	g.Widths = []float64{9, 30, 12, 7, 12, 10, 9, 12, 14, 14}
	g.Freeze, g.Titles = 4, 4
	g.Text(1, 1, look.Title, "Buy list for all lists")
	g.Text(2, 1, look.Sub, "Rounded up once for all lists together, less what is on hand.")
	for i, h := range []string{"What", "Name", "Need", "Unit", "On hand", "Pack", "Packs", "Remains", "Pack price", "Pay"} {
		role := look.HeadNum
		if i < 2 || i == 3 {
			role = look.Head
		}
		g.Text(4, i+1, role, h)
	}
	var lists [][]price.BuyLine
	for i := range s.rows {
		lists = append(lists, s.rows[i].Buy)
	}
	row := 4
	for _, b := range price.BuyTogether(lists) {
		row++
		s.buyLine(g, row, b)
	}
	return g
}

func (s *summing) buyLine(g *look.Grid, row int, b price.BuyLine) {
	kind := buyKinds[b.What]
	show := func(v float64) float64 { return kind.unit.show(v, s.us) }
	unit := kind.unit.name(s.us)
	if unit == "" {
		unit = b.Unit
	}
	g.Text(row, 1, look.Plain, b.What)
	g.Text(row, 2, look.Plain, b.Name)
	g.Number(row, 3, look.Calc, "#,##0.00", "", show(b.Need))
	g.Text(row, 4, look.Plain, unit)
	g.Number(row, 5, look.Calc, "#,##0.00", "", show(b.OnHand))
	if b.Pack <= 0 {
		g.Text(row, 6, look.Plain, "pack not stated")
		return
	}
	g.Number(row, 6, look.Calc, "#,##0.##", "", show(b.Pack))
	g.Number(row, 7, look.Total, "0", fmt.Sprintf("ROUNDUP(MAX(C%d-E%d,0)/F%d-0.000000001,0)", row, row, row), float64(b.Packs))
	g.Number(row, 8, look.Calc, "#,##0.00", fmt.Sprintf("E%d+G%d*F%d-C%d", row, row, row, row), show(b.OnHand+float64(b.Packs)*b.Pack-b.Need))
	g.Number(row, 9, look.Calc, money2, "", float64(b.PackPrice))
	g.Number(row, 10, look.Calc, money2, fmt.Sprintf("G%d*I%d", row, row), float64(b.Packs)*float64(b.PackPrice))
}
