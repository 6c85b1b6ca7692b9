package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/parts"
	"seamtally/batch/price"
)

// checkLists reads and judges the lists and writes nothing.
func (p program) checkLists(c *cli.Context) (int, error) {
	job, err := p.jobOf(c, c.Args().Slice())
	if err != nil {
		return batch.WrongUsage, err
	}
	return p.work(c, job, batch.Judge, p.judgement)
}

// judgement shows how a list was understood, then what is wrong with it, the
// most serious last, where the eye rests.
func (p program) judgement(c *cli.Context, w io.Writer, r batch.Result) error {
	if c.Bool("csv") {
		findings, err := batch.Findings(r.Job)
		if err == nil {
			err = say(w, string(findings))
		}
		return err
	}
	var b strings.Builder
	if !c.Bool("quiet") {
		if len(r.Job.List.Joints) > 0 || r.Job.Parts == nil {
			understood(&b, r.Job)
		}
		cutRead(&b, r.Job.Parts)
		assumed(&b, r.Job)
		stitches(&b, r.Job)
		procedures(&b, r.Job)
	}
	levels := []finding.Level{finding.Note, finding.Warning, finding.Error}
	if c.Bool("quiet") {
		levels = levels[2:]
	}
	for _, level := range levels {
		problems(&b, r.Job, level)
		checks(&b, r.Job, level)
	}
	if !c.Bool("quiet") {
		fmt.Fprintf(&b, "%s\n", tally(r.Job))
	}
	return say(w, b.String())
}

// understood echoes how the list and each of its columns was read.
func understood(b *strings.Builder, job *price.Job) {
	l := &job.List
	readAs(b, l.File, l.Sheet, fmt.Sprintf("%d rows read, %d joints", l.RowsRead, len(l.Joints)), l.HeaderRows[0], l.Columns)
	fates(b, l.Others, "joints")
}

// readAs tells where a list stands and how each of its columns was taken.
func readAs(b *strings.Builder, file, sheet, rows string, header int, columns []joint.Column) {
	b.WriteString(file)
	if sheet != "" {
		fmt.Fprintf(b, ", sheet %s", sheet)
	}
	b.WriteString(": " + rows)
	if header > 0 {
		fmt.Fprintf(b, ", header in row %d", header)
	}
	b.WriteString("\n\nColumns\n")
	for _, col := range columns {
		key := orElse(col.Key, "passed through")
		if col.Unit != "" {
			key += " in " + col.Unit
		}
		fmt.Fprintf(b, "  %-3s %-24s %-22s %s\n", finding.ColumnName(col.Col), oneLine(col.Header), key, col.Why)
	}
}

// cutRead tells how the cut list was understood.
func cutRead(b *strings.Builder, book *parts.Book) {
	if book == nil {
		return
	}
	l := &book.List
	if b.Len() > 0 {
		b.WriteString("\n")
	}
	readAs(b, "Cut list "+l.File, l.Sheet, fmt.Sprintf("%d rows read, %d parts", l.RowsRead, len(l.Parts)), l.HeaderRows[0], l.Columns)
	fates(b, l.Others, "parts")
}

// fates lists the rows that are no joints, or no parts, so that none is lost in silence.
func fates(b *strings.Builder, others []joint.OtherRow, of string) {
	if len(others) == 0 {
		return
	}
	b.WriteString("\nRows that are no " + of + "\n")
	for _, o := range others {
		fmt.Fprintf(b, "  row %-5d %-16s %s\n", o.Row, o.Fate, oneLine(o.Text))
	}
}

// assumed counts the values that the list did not give.
func assumed(b *strings.Builder, job *price.Job) {
	all := joint.TakenAlike(job.Assumed())
	if len(all) == 0 {
		return
	}
	b.WriteString("\nTaken where the list is silent\n")
	for _, t := range all {
		var marks []string
		for _, i := range t.Joints {
			marks = append(marks, shownMark(job.Plans[i].Joint.Mark))
		}
		fmt.Fprintf(b, "  %s\n", oneLine(fmt.Sprintf("%s %s for %s (%s)", t.Key, t.Value, finding.Few(marks, fewNamed), t.Why)))
	}
}

// stitches shows the metres that each stitch note was taken to mean.
func stitches(b *strings.Builder, job *price.Job) {
	head := "\nStitch welds\n"
	for i := range job.Plans {
		p := &job.Plans[i]
		if p.Joint.Stitch == nil {
			continue
		}
		fmt.Fprintf(b, "%s  %s: %s is %d segments a side, %.3f m welded in all\n", head, oneLine(shownMark(p.Joint.Mark)), oneLine(p.Joint.Stitch.Text), p.Segments, float64(p.Seam))
		head = ""
	}
}

func problems(b *strings.Builder, job *price.Job, level finding.Level) {
	head := "\n" + heading[level] + " about the list\n"
	for _, line := range problemLines(job.Problems, level) {
		fmt.Fprintf(b, "%s  %s\n", head, line)
		head = ""
	}
}

// checks groups the checks that say the same about several joints.
func checks(b *strings.Builder, job *price.Job, level finding.Level) {
	joints, order := map[string][]string{}, []string{}
	for i := range job.Plans {
		p := &job.Plans[i]
		for _, c := range p.Checks {
			if c.Level != level {
				continue
			}
			text := checkText(c)
			if joints[text] == nil {
				order = append(order, text)
			}
			name := fmt.Sprintf("%s (row %d)", shownMark(p.Joint.Mark), p.Joint.Place.Row)
			if all := joints[text]; len(all) == 0 || all[len(all)-1] != name { // both parts may say the same
				joints[text] = append(all, name)
			}
		}
	}
	if len(order) > 0 {
		fmt.Fprintf(b, "\n%s about joints\n", heading[level])
	}
	for _, text := range order {
		fmt.Fprintf(b, "  %s: %s\n", oneLine(about(joints[text])), text)
	}
}

var heading = map[finding.Level]string{finding.Error: "Errors", finding.Warning: "Warnings", finding.Note: "Notes"}

// checkText words a check with what to do and what it rests on.
func checkText(c finding.Check) string {
	text := c.Text
	if c.Do != "" {
		text += "; " + c.Do
	}
	if rests := strings.Trim(c.Basis+": "+c.Source, ": "); rests != "" {
		text += " [" + rests + "]"
	}
	return oneLine(text)
}

// tally counts the findings of a job in one line.
func tally(job *price.Job) string {
	n := job.Totals
	what := fmt.Sprintf("%d joints", len(job.List.Joints))
	if len(job.List.Joints) == 0 && job.Parts != nil {
		what = plural(len(job.Parts.List.Parts), "part")
	}
	return fmt.Sprintf("%s: %s; %s, %s, %s", job.List.File, what,
		plural(n.Errors, "error"), plural(n.Warnings, "warning"), plural(n.Notes, "note"))
}

// fewNamed is how many marks a line names before it counts the rest.
const fewNamed = 5

func plural(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return fmt.Sprint(n, " ", word)
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
