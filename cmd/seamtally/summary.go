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
	"seamtally/batch/units"
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
	t, in := &job.Parts.Totals, unitsOf(job)
	text := fmt.Sprintf("  cut list: %s, %s, %.1f %s, %.2f %s² to paint", plural(t.Rows, "row"), plural(t.Pieces, "piece"), float64(t.Mass)/in.kg, in.mass, t.Paint/(in.metre*in.metre), in.length)
	if t.WeldPerTonne > 0 {
		text += fmt.Sprintf(", %.1f %s of weld metal a %s", t.WeldPerTonne*in.perTonne, in.mass, in.tonne)
	}
	if t.Bars > 0 {
		text += fmt.Sprintf("\n  %s to buy, no plan needs fewer than %d", plural(t.Bars, "bar"), t.LowerBound)
	}
	if t.Cost > 0 {
		text += fmt.Sprintf("\n  material %.2f %s for %.1f %s, apart from the welding price", float64(t.Cost), job.Shop.Currency, float64(t.BoughtKg)/in.kg, in.mass)
	}
	return text + "\n"
}

func weldTotals(job *price.Job) string {
	t, in := job.Totals, unitsOf(job)
	text := fmt.Sprintf("%s\n  %.2f %s of seam, %.2f %s weld metal, %s, %.1f h labour; cost %.2f, price %.2f %s\n", tally(job),
		float64(t.All.Seam)/in.metre, in.length, float64(t.All.WeldMetal)/in.kg, in.mass, arcHours(&t), float64(t.All.Labour)/60, float64(t.Cost), float64(t.Price), job.Shop.Currency)
	if t.ChangeOverMin > 0 {
		text += fmt.Sprintf("  and %.1f h for %s of wire, gas or machine\n", float64(t.ChangeOverMin)/60, plural(t.ChangeOvers, "change"))
	}
	if s := t.Spread; s.Draws > 0 {
		text += fmt.Sprintf("  nine in ten prices within the spreads of the shop values: %.0f to %.0f %s, half of them above %.0f; %s moves it most\n", float64(s.Low), float64(s.High), job.Shop.Currency, float64(s.Mid), s.Factors[0].Key)
	}
	if n := t.Needs; n != nil {
		text += fmt.Sprintf("  the machine must give %.0f A at %.0f %% of ten minutes, %.1f V, %.*f %s of wire; %.1f kW from the mains\n", float64(n.Current), 100*n.Share, float64(n.Volts), in.feedDecimals, float64(n.Feed)/in.feed, in.speed, n.Supply)
	}
	text += toBuy(job, in) + leftOut(job)
	for _, p := range job.Problems {
		if p.Code == batch.NotAnnotated || p.Code == batch.TypedBeside || p.Code == batch.ChangedBeside {
			text += fmt.Sprintf("  %s%s; %s\n", marked(p.Place), p.Text, p.Hint)
		}
	}
	if n := len(t.NotYours); n > 0 {
		text += fmt.Sprintf("  %d values behind the price are defaults and not your own (sheet Totals)\n", n)
	}
	return text
}

// arcHours says how long the arc burns, and how long that is in the labour, where site work
// makes it more: the sheet Totals has it so.
func arcHours(t *price.Totals) string {
	text := fmt.Sprintf("%.1f h arc", float64(t.All.Arc)/60)
	if with := fmt.Sprintf("%.1f h", float64(t.Labour.Arc)/60); !strings.HasPrefix(text, with) {
		text += " (" + with + " with the site factor)"
	}
	return text
}

// marked names a cell before a sentence about it; "" without a cell.
func marked(place finding.Place) string {
	if place.Cell() == "" {
		return ""
	}
	return "cell " + place.Cell() + ": "
}

// leftOut names what the price does not hold.
func leftOut(job *price.Job) (text string) {
	if marks := job.Totals.Unpriced; len(marks) > 0 {
		text += fmt.Sprintf("  not in the price, metal and metres only: %s (`seamtally check` says why)\n", oneLine(finding.Few(marks, fewNamed)))
	}
	if rows := price.RejectedRows(&job.List); len(rows) > 0 {
		text += fmt.Sprintf("  not in the price, not worked: %s\n", oneLine(finding.Few(rows, fewNamed)))
	}
	if n := price.Preheated(job); n > 0 {
		text += fmt.Sprintf("  not in the price: time and fuel for preheating %s\n", plural(n, "joint"))
	}
	return text
}

// seen are the units that people see in a summary, and how many of ours make one.
type seen struct {
	length, mass, speed, volume string
	metre, kg, feed, litre      float64
	feedDecimals                int
	tonne                       string
	perTonne                    float64 // kilograms a tonne in these units; a ton is 2000 lb
}

func unitsOf(job *price.Job) seen {
	if job.Opts.US {
		return seen{"ft", "lb", "in/min", "ft³", 0.3048, 0.45359237, 0.0254, 28.316846592, 0, "ton", 2}
	}
	return seen{"m", "kg", "m/min", "l", 1, 1, 1, 1, 1, "tonne", 1}
}

// toBuy says how many whole packs of wire and gas the job needs, and what they cost
// beside what the price holds of them.
func toBuy(job *price.Job, in seen) string {
	var parts []string
	var paid, used units.Money
	for _, l := range job.Buy {
		paid, used = paid+l.Cost, used+l.UsedCost
		if l.Packs > 0 && l.What != "tip" {
			parts = append(parts, fmt.Sprintf("%d x %s %s", l.Packs, pack(&l, in), l.Name))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return fmt.Sprintf("  to buy: %s; %.2f %s to pay, tips included, of which this job uses %.2f\n", strings.Join(parts, ", "), float64(paid), job.Shop.Currency, float64(used))
}

// pack is what one pack holds: in inches a spool in whole pounds, a cylinder in whole
// cubic feet.
func pack(l *price.BuyLine, in seen) string {
	switch {
	case l.Unit == "kg" && in.kg != 1:
		return fmt.Sprintf("%.0f %s", l.Pack/in.kg, in.mass)
	case l.Unit == "l" && in.litre != 1:
		return fmt.Sprintf("%.0f %s", l.Pack/in.litre, in.volume)
	}
	return number(l.Pack) + " " + l.Unit
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
