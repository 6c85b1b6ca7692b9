package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/compare"
)

// compareLists shows what two revisions of a list differ in.
func (p program) compareLists(c *cli.Context) (int, error) {
	lists := c.Args().Slice()
	if len(lists) != 2 {
		return batch.WrongUsage, batch.Usagef("compare needs two lists, the older one first, for example `seamtally compare frame-a.xlsx frame-b.xlsx`")
	}
	job, err := p.jobOf(c, lists)
	if err != nil {
		return batch.WrongUsage, err
	}
	result, err := batch.Compare(c.Context, job)
	for _, said := range result.Said {
		p.complain("%s", said)
	}
	if err != nil {
		return batch.CodeOf(err), err
	}
	if c.Bool("json") {
		_, err := fmt.Fprintf(p.out, "%s", result.Document)
		return result.Code, err
	}
	if c.Bool("quiet") {
		return result.Code, nil
	}
	return result.Code, say(p.out, compared(&result))
}

// compared words a comparison: each joint that differs, then the sums, where the
// eye rests.
func compared(r *batch.Comparison) string {
	d := &r.Difference
	var b strings.Builder
	fmt.Fprintf(&b, "%s before, %s now\n", d.Old.File, d.New.File)
	for _, block := range []struct {
		head  string
		lines []compare.Line
	}{{"Added", d.Added}, {"Removed", d.Removed}, {"Changed", d.Changed}, {"Planned otherwise: the list says the same, the choice for the whole list came out otherwise", d.Replanned}} {
		if len(block.lines) > 0 {
			fmt.Fprintf(&b, "\n%s\n", block.head)
		}
		for i := range block.lines {
			fmt.Fprintf(&b, "  %s\n", oneLine(lineText(&block.lines[i], d.Currency)))
		}
	}
	fmt.Fprintf(&b, "\n%d added, %d removed, %d changed, %d planned otherwise, %d the same\n", len(d.Added), len(d.Removed), len(d.Changed), len(d.Replanned), d.Same)
	if n := d.Old.Rejected + d.New.Rejected; n > 0 {
		fmt.Fprintf(&b, "not compared, because they could not be worked: %d rows before, %d now (`seamtally check` says why)\n", d.Old.Rejected, d.New.Rejected)
	}
	sums(&b, d)
	if r.Written != "" {
		fmt.Fprintf(&b, "  wrote %s\n", filepath.ToSlash(r.Written))
	} else {
		b.WriteString("  nothing was written (--dry-run)\n")
	}
	return b.String()
}

// lineText says of one joint where it stands, what differs and what that makes.
func lineText(l *compare.Line, currency string) string {
	var rows, fields []string
	if l.OldRow > 0 {
		rows = append(rows, fmt.Sprintf("row %d before", l.OldRow))
	}
	if l.NewRow > 0 {
		rows = append(rows, fmt.Sprintf("row %d now", l.NewRow))
	}
	for _, f := range l.Fields {
		fields = append(fields, f.Words())
	}
	by := l.By()
	parts := []string{fmt.Sprintf("%+.2f m", float64(by.Seam)), fmt.Sprintf("%+.3f kg", float64(by.WeldMetal)), fmt.Sprintf("%+.2f h", float64(by.Labour)/60)}
	if by.Priced {
		parts = append(parts, fmt.Sprintf("%+.2f %s", float64(by.Price), currency))
	} else {
		parts = append(parts, "price not known")
	}
	text := fmt.Sprintf("%s (%s): ", l.Mark, strings.Join(rows, ", "))
	if len(fields) > 0 {
		text += strings.Join(fields, "; ") + "; "
	}
	return text + strings.Join(parts, ", ")
}

// sums sets the two lists side by side as wholes.
func sums(b *strings.Builder, d *compare.Difference) {
	fmt.Fprintf(b, "\n  %-18s %12s %12s %12s\n", "", "before", "now", "difference")
	by := d.New.All.Less(d.Old.All)
	for _, s := range []struct {
		name          string
		was, now, dif float64
		decimals      int
	}{
		{"seam, m", float64(d.Old.All.Seam), float64(d.New.All.Seam), float64(by.Seam), 2},
		{"weld metal, kg", float64(d.Old.All.WeldMetal), float64(d.New.All.WeldMetal), float64(by.WeldMetal), 2},
		{"labour, h", float64(d.Old.All.Labour) / 60, float64(d.New.All.Labour) / 60, float64(by.Labour) / 60, 1},
		{"price, " + d.Currency, float64(d.Old.All.Price), float64(d.New.All.Price), float64(by.Price), 2},
	} {
		fmt.Fprintf(b, "  %-18s %12.*f %12.*f %+12.*f\n", s.name, s.decimals, s.was, s.decimals, s.now, s.decimals, s.dif)
	}
	if !by.Priced {
		b.WriteString("  joints without settings have metal and metres only and are not in the price\n")
	}
}
