package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/plan"
)

// explain shows one joint of a list step by step.
func (p program) explain(c *cli.Context) (int, error) {
	args := c.Args().Slice()
	if len(args) != 2 {
		return batch.WrongUsage, batch.Usagef("explain needs a list and the mark of a joint, for example `seamtally explain frame.xlsx W12`")
	}
	job, err := p.jobOf(c, args[:1])
	if err != nil {
		return batch.WrongUsage, err
	}
	list, plans, err := batch.Explain(c.Context, job, args[1])
	if err != nil {
		return batch.CodeOf(err), err
	}
	if c.Bool("json") {
		return p.printJSON(map[string]any{"schema": batch.Schema, "list": list, "joints": plans})
	}
	var b strings.Builder
	for i := range plans {
		explained(&b, list, &plans[i])
	}
	return batch.Worked, say(p.out, b.String())
}

func explained(w io.Writer, list string, p *plan.Plan) {
	j := p.Joint
	fmt.Fprintf(w, "Joint %s (%s, row %d): %s\n", oneLine(j.Mark), list, j.Place.Row, orElse(string(p.Prep.Kind), string(j.Kind)))
	if !p.Settings {
		fmt.Fprintf(w, "No settings: %s\n", oneLine(strings.TrimPrefix(p.NoSettings, "no settings: ")))
	}
	if taken := append(j.Assumed[:len(j.Assumed):len(j.Assumed)], p.Assumed...); len(taken) > 0 {
		fmt.Fprint(w, "\nTaken where the list is silent\n")
		for _, a := range taken {
			fmt.Fprintf(w, "  %s\n", oneLine(fmt.Sprintf("%s = %s: %s [%s]", a.Key, a.Value, a.Why, a.Basis)))
		}
	}
	fmt.Fprint(w, "\nStep by step\n")
	for _, s := range p.Steps {
		fmt.Fprintf(w, "  %-10s %s: %s\n", s.ID, s.What, oneLine(working(s)))
		fmt.Fprintf(w, "  %-10s   [%s]\n", "", oneLine(strings.Trim(s.Basis+": "+s.Source, ": ")))
	}
	considered(w, p)
	hinted(w, p)
	if len(p.Checks) > 0 {
		fmt.Fprint(w, "\nChecks\n")
		for _, c := range p.Checks {
			fmt.Fprintf(w, "  %-8s %s\n", c.Level, checkText(c))
			if c.More != "" {
				fmt.Fprintf(w, "  %-8s %s\n", "", oneLine(c.More))
			}
		}
	}
	fmt.Fprint(w, "\nSettings are starting points for a test bead; the qualified procedure comes first.\n")
}

// working is "A = z²/2 = 6²/2 = 18.0 mm²"; parts that are empty are left out.
func working(s plan.Step) string {
	var parts []string
	for _, part := range []string{s.Formula, s.Numbers, s.Result} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, " = ")
}

// considered lists the ways of welding that were weighed and why each won or lost.
func considered(w io.Writer, p *plan.Plan) {
	if len(p.Options) == 0 {
		return
	}
	fmt.Fprint(w, "\nWays of welding it that were considered\n")
	for _, o := range p.Options {
		verdict := "lost"
		switch {
		case o.Chosen:
			verdict = "chosen"
		case !o.Feasible:
			verdict = "cannot"
		}
		fmt.Fprintf(w, "  %-7s %s\n", verdict, way(o))
		if o.Why != "" {
			fmt.Fprintf(w, "          %s\n", oneLine(o.Why))
		}
	}
}

func way(o plan.Option) string {
	text := fmt.Sprintf("%s %s %.1f mm, %s, %s", o.Process, o.Filler, float64(o.Dia), orElse(o.Gas, "no gas"), o.Transfer)
	if o.Machine != "" {
		text += ", " + o.Machine
	}
	if o.Feasible {
		text += fmt.Sprintf(": %.0f A, %s, %.1f min arc, cost %.2f", float64(o.Current), passes(o.Passes), float64(o.Arc), float64(o.Cost))
	}
	return text
}

func passes(n int) string {
	if n == 1 {
		return "1 pass"
	}
	return fmt.Sprint(n, " passes")
}
