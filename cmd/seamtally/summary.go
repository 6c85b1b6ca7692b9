package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/finding"
	"seamtally/batch/price"
)

// summary says what a run made of a list: the rows that could not be worked on
// standard error, then totals and files on standard output.
func (p program) summary(c *cli.Context, w io.Writer, r batch.Result) error {
	var wrong strings.Builder
	problems(&wrong, r.Job, finding.Error)
	checks(&wrong, r.Job, finding.Error)
	if wrong.Len() > 0 {
		_ = say(p.err, strings.TrimPrefix(wrong.String(), "\n")) // Nowhere is left to report that standard error is gone.
	}
	if c.Bool("quiet") {
		return nil
	}
	return say(w, totals(r.Job)+written(r))
}

func totals(job *price.Job) string {
	if len(job.List.Joints) == 0 && job.Parts != nil {
		return tally(job) + "\n" + cutTotals(job)
	}
	return weldTotals(job) + cutTotals(job)
}

// cutTotals says what the cut list comes to; empty where there is none.
func cutTotals(job *price.Job) string {
	if job.Parts == nil {
		return ""
	}
	t := &job.Parts.Totals
	text := fmt.Sprintf("  cut list: %s, %s, %.1f kg, %.2f m² to paint", plural(t.Rows, "row"), plural(t.Pieces, "piece"), float64(t.Mass), t.Paint)
	if t.WeldPerTonne > 0 {
		text += fmt.Sprintf(", %.1f kg of weld metal a tonne", t.WeldPerTonne)
	}
	if t.Bars > 0 {
		text += fmt.Sprintf("\n  %s to buy, no plan needs fewer than %d", plural(t.Bars, "bar"), t.LowerBound)
	}
	if t.Cost > 0 {
		text += fmt.Sprintf("\n  material %.2f %s for %.1f kg, apart from the welding price", float64(t.Cost), job.Shop.Currency, float64(t.BoughtKg))
	}
	return text + "\n"
}

func weldTotals(job *price.Job) string {
	t := job.Totals
	text := fmt.Sprintf("%s\n  %.2f m of seam, %.2f kg weld metal, %.1f h arc, %.1f h labour; cost %.2f, price %.2f %s\n",
		tally(job), float64(t.All.Seam), float64(t.All.WeldMetal), float64(t.All.Arc)/60, float64(t.All.Labour)/60, float64(t.Cost), float64(t.Price), job.Shop.Currency)
	if t.ChangeOverMin > 0 {
		text += fmt.Sprintf("  and %.1f h for %s of wire, gas or machine\n", float64(t.ChangeOverMin)/60, plural(t.ChangeOvers, "change"))
	}
	if s := t.Spread; s.Draws > 0 {
		text += fmt.Sprintf("  nine in ten prices within the spreads of the shop values: %.0f to %.0f %s; %s moves it most\n", float64(s.Low), float64(s.High), job.Shop.Currency, s.Factors[0].Key)
	}
	if n := t.Needs; n != nil {
		text += fmt.Sprintf("  the machine must give %.0f A at %.0f %% of ten minutes, %.1f V, %.1f m/min of wire; %.1f kW from the mains\n", float64(n.Current), 100*n.Share, float64(n.Volts), float64(n.Feed), n.Supply)
	}
	text += toBuy(job.Buy)
	if n := len(t.Unpriced); n > 0 {
		text += fmt.Sprintf("  not in the price, metal and metres only: %s (`seamtally check` says why)\n", someOf(t.Unpriced))
	}
	for _, p := range job.Problems {
		if p.Code == batch.NotAnnotated {
			text += fmt.Sprintf("  %s; %s\n", p.Text, p.Hint)
		}
	}
	if n := len(t.NotYours); n > 0 {
		text += fmt.Sprintf("  %d values behind the price are defaults and not your own (sheet Totals)\n", n)
	}
	return text
}

// toBuy says in one line how many whole packs of wire and gas the job needs.
func toBuy(lines []price.BuyLine) string {
	var parts []string
	for _, l := range lines {
		if l.Packs > 0 && l.What != "tip" {
			parts = append(parts, fmt.Sprintf("%d x %s %s %s", l.Packs, number(l.Pack), l.Unit, l.Name))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "  to buy: " + strings.Join(parts, ", ") + "\n"
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func written(r batch.Result) string {
	if len(r.Written) == 0 {
		return "  nothing was written (--dry-run)\n"
	}
	var b strings.Builder
	for _, path := range r.Written {
		fmt.Fprintf(&b, "  wrote %s\n", filepath.ToSlash(path))
	}
	return b.String()
}
