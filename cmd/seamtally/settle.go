package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/save"
	"seamtally/batch/settle"
)

// settleOptions are those of the working commands and the file for the new values.
func settleOptions() []cli.Flag {
	shop := &cli.StringFlag{Name: "new-shop", Usage: "`FILE`write a shop file with the values that the records gave", Category: groupOutput}
	return append([]cli.Flag{shop}, workingOptions()...)
}

// settle shows planned against what the floor wrote back.
func (p program) settle(c *cli.Context) (int, error) {
	lists := c.Args().Slice()
	if len(lists) != 1 {
		return batch.WrongUsage, batch.Usagef("settle needs one list, for example `seamtally settle frame-worked.xlsx`")
	}
	job, err := p.jobOf(c, lists)
	if err != nil {
		return batch.WrongUsage, err
	}
	s, err := batch.Settle(c.Context, job)
	if err != nil {
		return batch.CodeOf(err), err
	}
	switch {
	case c.Bool("json"):
		_, err = fmt.Fprintf(p.out, "%s", s.Document)
	case !c.Bool("quiet"):
		err = say(p.out, settled(&s))
	}
	path := c.String("new-shop")
	if err != nil || path == "" || c.Bool("dry-run") {
		return s.Code, err
	}
	if code, err := p.saveIn(c, filepath.Dir(path), []save.File{{Name: filepath.Base(path), Data: s.ShopFile, Judge: sameAs(s.ShopFile)}}); err != nil {
		return code, err
	}
	return s.Code, nil
}

// settled words a settlement: each joint with a record, the shop's values, and
// last what was left out.
func settled(s *batch.Settlement) string {
	var b strings.Builder
	r := &s.Settled
	if len(r.Joints) == 0 {
		fmt.Fprintf(&b, "%s holds no records of the floor. Fill in the columns headed Floor in the worked workbook, then settle that.\n", s.Job.List.File)
		return b.String()
	}
	fmt.Fprintf(&b, "%s: %d of %d joints have records\n\n", s.Job.List.File, len(r.Joints), len(s.Job.Plans))
	fmt.Fprintf(&b, "%-16s %5s  %23s  %23s  %23s\n", "", "", "arc time, min", "welder's time, min", "wire, kg")
	fmt.Fprintf(&b, "%-16s %5s  %7s %7s %7s  %7s %7s %7s  %7s %7s %7s\n", "mark", "row", "planned", "actual", "", "planned", "actual", "", "planned", "actual", "")
	for i := range r.Joints {
		settledLine(&b, &r.Joints[i])
	}
	b.WriteString("\nWhat the records say of the shop (95 % interval)\n")
	for _, f := range r.Factors {
		b.WriteString("  " + factorLine(&f) + "\n")
	}
	for _, o := range r.Left {
		fmt.Fprintf(&b, "  not compared: %s, row %d: %s\n", oneLine(o.Mark), o.Row, o.Why)
	}
	b.WriteString("Records tell how this shop worked on these joints; they do not make the next job alike.\n")
	return b.String()
}

func settledLine(b *strings.Builder, j *settle.Joint) {
	arc, labour, wire := j.Planned()
	fmt.Fprintf(b, "%-16s %5d ", oneLine(j.Mark), j.Record.Row)
	pair(b, arc, float64(j.Record.Arc), 1)
	pair(b, labour, float64(j.Record.Labour), 1)
	pair(b, wire, float64(j.Record.Wire), 3)
	b.WriteString("\n")
}

// pair writes planned, actual and the difference in per cent; a dash where
// nothing was recorded.
func pair(b *strings.Builder, planned, actual float64, decimals int) {
	if actual <= 0 || planned <= 0 {
		fmt.Fprintf(b, " %7.*f %7s %7s ", decimals, planned, "-", "")
		return
	}
	fmt.Fprintf(b, " %7.*f %7.*f %+6.0f%% ", decimals, planned, decimals, actual, 100*(actual/planned-1))
}

func factorLine(f *settle.Factor) string {
	if !f.Fitted {
		return fmt.Sprintf("%s: %s", f.Name, f.Sentence)
	}
	unit := f.Unit
	if unit == "ratio" || strings.HasPrefix(unit, "share") {
		unit = ""
	}
	text := fmt.Sprintf("%s: %.3g %s(%.3g to %.3g), planned with %.3g; %d records", f.Name, f.Value, orSpace(unit), f.Low, f.High, f.Planned, f.Records)
	if f.Sentence != "" {
		text += "; " + f.Sentence
	}
	return text
}

func orSpace(unit string) string {
	if unit == "" {
		return ""
	}
	return unit + " "
}
