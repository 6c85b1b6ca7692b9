package main

import (
	"fmt"
	"io"
	"strings"

	"seamtally/batch/plan"
)

// hinted lists the altered forms that a joint was planned in, what each would save
// and how that was found.
func hinted(w io.Writer, p *plan.Plan) {
	if len(p.Hints) == 0 {
		return
	}
	fmt.Fprint(w, "\nForms that might save money: the joint planned again in each, with wires and gases the list uses already\n")
	for _, h := range p.Hints {
		fmt.Fprintf(w, "  %-14s %s: %s\n", h.Code, h.Form, outcome(h))
		fmt.Fprintf(w, "  %-14s   as called: %s\n", "", side(h.Called))
		fmt.Fprintf(w, "  %-14s   so:        %s\n", "", side(h.Altered))
		fmt.Fprintf(w, "  %-14s   %s [%s]\n", "", oneLine(h.Rule), strings.Trim(h.Basis+": "+h.Source, ": "))
	}
}

// outcome says what an altered form saves, and whether the checks tell of it.
func outcome(h plan.Hint) string {
	text := fmt.Sprintf("%.2f less, %.0f %% of the cost", float64(h.Saved), 100*h.Share)
	switch {
	case h.Costlier:
		text = fmt.Sprintf("%.2f more, %.0f %% of the cost", float64(h.Saved), 100*h.Share)
	case h.Saved < 0:
		text = fmt.Sprintf("saves nothing: %.2f more", -float64(h.Saved))
	}
	switch {
	case h.Told:
		return text + "; told below"
	case h.Ranked && h.Costlier:
		return text + "; told where the list pays most for it"
	case h.Ranked:
		return text + "; not told: others of the list matter more"
	}
	return text + fmt.Sprintf("; not told below %.0f %%", 100*h.Least)
}

func side(s plan.HintSide) string {
	return fmt.Sprintf("%s, %s, %.3g kg weld metal, %.1f min labour, cost %.2f", s.Way, passes(s.Passes), float64(s.WeldMetal), float64(s.Labour), float64(s.Cost))
}
