package workbook

import (
	"fmt"
	"sort"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// levels, gravest first.
var levels = []finding.Level{finding.Error, finding.Warning, finding.Note}

// newRejected lists the rows that were not worked.
func newRejected(l *layout) []joint.OtherRow {
	var out []joint.OtherRow
	for _, o := range l.job.List.Others {
		if o.Fate == joint.Rejected {
			out = append(out, o)
		}
	}
	return out
}

// checksSheet has one line for each check, then each problem of reading, then
// how every column and stitch note was understood.
func (o *output) checksSheet() *look.Grid {
	g := look.NewGrid(o.l.book, o.checks)
	g.Widths = []float64{10, 13, 8, 68, 38, 38, 44, 16, 19}
	g.Freeze, g.Titles = 4, 1 // the header is that of the first table only
	t := o.l.job.Totals
	g.Text(1, 1, look.Title, "Checks")
	g.Text(2, 1, look.Sub, fmt.Sprintf("%s, %s, %s. A check flags, it never approves: the governing code, the qualified procedure and the engineer decide.",
		plural(t.Errors, "error"), plural(t.Warnings, "warning"), plural(t.Notes, "note")))
	g.Text(3, 1, look.Sub, "The cells named are those of the sheet "+o.l.sheet+", where no other sheet stands beside them.")
	for i, s := range []string{"Level", "Mark", "Cell", "What was found", "What to do", "Rule", "Source", "Basis", "Code"} {
		g.Text(4, i+1, look.Head, s)
	}
	at := o.planChecks(g, 5)
	at = o.readingProblems(g, at+1)
	list := &o.l.job.List
	at = o.columnsRead(g, at+1, "How each column was understood", list.Columns)
	at = o.stitchesRead(g, at+1)
	at = o.otherRows(g, at+1, "joint", list.RowsRead, list.Others, finding.Place{Sheet: o.l.sheet})
	if b := o.l.job.Parts; b != nil {
		cut := &b.List
		at = o.columnsRead(g, at+1, "How each column of the cut list was understood", cut.Columns)
		o.otherRows(g, at+1, "part", cut.RowsRead, cut.Others, finding.Place{File: cut.File, Sheet: cut.Sheet})
	}
	return g
}

// planCheck is one check of one joint.
type planCheck struct{ joint, check int32 }

// gravestFirst lists the checks of all plans, gravest first, in the order of the list.
func (l *layout) gravestFirst() []planCheck {
	var out []planCheck
	for _, level := range levels {
		for i := range l.job.Plans {
			for k := range l.job.Plans[i].Checks {
				if l.job.Plans[i].Checks[k].Level == level {
					out = append(out, planCheck{int32(i), int32(k)})
				}
			}
		}
	}
	return out
}

// planChecks leaves room for the checks of all plans.
func (o *output) planChecks(g *look.Grid, at int) int {
	all := o.l.gravestFirst()
	if len(all) == 0 {
		g.Text(at, 1, look.Plain, "No check has anything to say about a joint.")
		return at + 1
	}
	for _, role := range []look.Role{look.Plain, look.Heed, look.Stop, look.Link, look.Wrap, look.Sub} {
		for _, format := range []string{"", "@"} {
			o.l.style(role, format)
			o.l.style(look.Off(role), format)
		}
	}
	g.Later(at, len(all), 9, func(row int) { o.planCheck(g, row, all[row-at]) })
	return at + len(all)
}

func (o *output) planCheck(g *look.Grid, at int, which planCheck) {
	j, c := &o.l.job.List.Joints[which.joint], &o.l.job.Plans[which.joint].Checks[which.check]
	o.checkHead(g, at, c.Level, j.Mark, finding.Place{Sheet: o.l.sheet, Row: j.Place.Row, Col: o.markCol()})
	for i, s := range [...]string{joined(c.Text, c.More), c.Do, c.Rule, c.Source} {
		g.Text(at, i+4, look.Wrap, s)
	}
	g.Text(at, 8, look.Plain, c.Basis)
	g.Text(at, 9, look.Sub, c.Code)
}

func (o *output) checkHead(g *look.Grid, at int, level finding.Level, mark string, place finding.Place) {
	g.Text(at, 1, roleOf(level), string(level))
	g.Text(at, 2, look.Plain, mark)
	cell := place.Cell()
	if cell == "" && place.Row > 0 {
		cell = "A" + itoa(place.Row)
	}
	o.link(g, at, 3, place, cell)
}

// markCol is the user's column of marks; the first column where there is none.
func (o *output) markCol() int {
	for _, c := range o.l.inputs["mark"] {
		return c.Col
	}
	return 1
}

// link leads to a cell of the list or of a cut list in the same workbook; other
// places are named.
func (o *output) link(g *look.Grid, row, col int, place finding.Place, cell string) {
	sheet := ""
	switch {
	case o.l.cut != nil && place.Sheet == o.l.cut.Name:
		sheet = o.l.cut.Name
	case place.Sheet == o.l.sheet || isOf(place, o.l.job.List.File, o.l.job.List.Sheet):
		sheet = o.l.sheet
	}
	switch {
	case cell == "":
		g.Text(row, col, look.Plain, "")
	case !o.l.live || sheet == "":
		g.Text(row, col, look.Plain, cell)
	default:
		g.Words(row, col, look.Link, `HYPERLINK("#`+quoteText(quoteSheet(sheet))+`!`+cell+`","`+cell+`")`, cell)
	}
}

// quoteText doubles the quotes of a text that stands in a formula.
func quoteText(s string) string { return strings.ReplaceAll(s, `"`, `""`) }

// readingProblems writes what was wrong with, or assumed about, the input.
func (o *output) readingProblems(g *look.Grid, at int) int {
	problems := append([]finding.Problem{}, o.l.job.Problems...)
	if len(problems) == 0 {
		return at
	}
	order := map[finding.Level]int{finding.Error: 0, finding.Warning: 1, finding.Note: 2}
	sort.SliceStable(problems, func(i, j int) bool { return order[problems[i].Level] < order[problems[j].Level] })
	g.Section(at, 9, "Reading the list and the shop values")
	for i, s := range []string{"Level", "Column", "Cell", "What is wrong or was taken", "What to do", "What was read", "What was expected", "File, sheet", "Code"} {
		g.Text(at+1, i+1, look.Head, s)
	}
	at += 2
	for _, p := range problems {
		o.checkHead(g, at, p.Level, p.Place.Header, p.Place)
		for i, s := range []string{p.Text, p.Hint, p.Read, p.Want} {
			g.Text(at, i+4, look.Wrap, s)
		}
		g.Text(at, 8, look.Wrap, strings.Trim(p.Place.File+", "+p.Place.Sheet, ", "))
		g.Text(at, 9, look.Sub, p.Code)
		at++
	}
	return at
}

// columnsRead echoes how each column was understood.
func (o *output) columnsRead(g *look.Grid, at int, title string, columns []joint.Column) int {
	if len(columns) == 0 {
		return at
	}
	g.Section(at, 9, title)
	for i, s := range []string{"Column", "Taken as", "Unit", "Header as it stands", "Why", "", "", "", ""} {
		g.Text(at+1, i+1, look.Head, s)
	}
	at += 2
	for _, c := range columns {
		key := c.Key
		if key == "" {
			key = "(kept)"
		}
		g.Line(at, look.Plain, pack.ColumnName(c.Col), key, c.Unit)
		g.Text(at, 4, look.Wrap, c.Header)
		g.Text(at, 5, look.Wrap, c.Why)
		at++
	}
	return at
}

// stitchesRead says how many metres each stitch note gives.
func (o *output) stitchesRead(g *look.Grid, at int) int {
	started := false
	o.l.rows(func(_ int, r *row) {
		s := r.j.Stitch
		if s == nil {
			return
		}
		if !started {
			g.Section(at, 9, "What each stitch note gives")
			for i, h := range []string{"Note", "Mark", "Cell", "Understood as", "Metres", "", "", "", ""} {
				g.Text(at+1, i+1, look.Head, h)
			}
			at, started = at+2, true
		}
		g.Text(at, 1, look.Wrap, s.Text)
		g.Text(at, 2, look.Plain, r.j.Mark)
		o.link(g, at, 3, finding.Place{Sheet: o.l.sheet}, "A"+itoa(r.j.Place.Row))
		kind := "gap between stitches, as ISO 2553 writes it"
		if s.ByPitch {
			kind = "pitch centre to centre, as AWS A2.4 writes it"
		}
		g.Text(at, 4, look.Wrap, fmt.Sprintf("%d stitches of %g mm, %g mm apart, pitch %g mm: %s", r.p.Segments,
			round6(float64(s.Segment)), round6(stitchGap(r)), round6(float64(s.Segment)+stitchGap(r)), kind))
		g.Text(at, 5, look.Wrap, fmt.Sprintf("%.3f m of weld in all (%s)", float64(r.p.Seam), copies(r.j.Qty)))
		at++
	})
	return at
}

func copies(n int) string {
	if n <= 1 {
		return "1 copy"
	}
	return itoa(n) + " copies"
}

// fates in words.
var fateWords = map[joint.RowFate]string{
	joint.TitleRow: "title above the list", joint.HeaderRow: "header", joint.UnitsRow: "units", joint.GroupRow: "names a group",
	joint.TotalRow: "a total, not a joint", joint.RepeatRow: "header repeated", joint.TrailingRow: "below the list", joint.Rejected: "not worked",
}

// otherRows lists the rows that are not worked joints, or parts, so that nothing is
// lost.
func (o *output) otherRows(g *look.Grid, at int, of string, read int, others []joint.OtherRow, place finding.Place) int {
	if len(others) == 0 {
		return at
	}
	g.Section(at, 9, fmt.Sprintf("Rows that are not %ss: %d of %d", of, len(others), read))
	for i, h := range []string{"Row", "", "Cell", "What stands in it", "Taken as", "", "", "", ""} {
		g.Text(at+1, i+1, look.Head, h)
	}
	at += 2
	for _, r := range others {
		g.Number(at, 1, look.Calc, "0", "", float64(r.Row))
		o.link(g, at, 3, place, "A"+itoa(r.Row))
		g.Text(at, 4, look.Wrap, r.Text)
		g.Text(at, 5, look.Plain, strings.Replace(fateWords[r.Fate], "joint", of, 1))
		at++
	}
	return at
}

// joined is what a check found with what stands behind it.
func joined(text, more string) string {
	if more == "" {
		return text
	}
	return text + ". " + more
}
