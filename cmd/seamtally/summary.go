package main

import (
	"fmt"
	"io"
	"path/filepath"
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
	t := job.Totals
	text := fmt.Sprintf("%s\n  %.2f m of seam, %.2f kg weld metal, %.1f h arc, %.1f h labour; cost %.2f, price %.2f %s\n",
		tally(job), float64(t.All.Seam), float64(t.All.WeldMetal), float64(t.All.Arc)/60, float64(t.All.Labour)/60, float64(t.Cost), float64(t.Price), job.Shop.Currency)
	if n := len(t.Unpriced); n > 0 {
		text += fmt.Sprintf("  not in the price, metal and metres only: %s (`seamtally check` says why)\n", someOf(t.Unpriced))
	}
	if n := len(t.NotYours); n > 0 {
		text += fmt.Sprintf("  %d values behind the price are defaults and not your own (sheet Totals)\n", n)
	}
	return text
}

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
