package price

import (
	"fmt"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// WeldingOnly is the exclusion that every price carries.
const WeldingOnly = "Welding only: cutting, bending, straightening, blasting, painting, transport and erection are not in this price."

// heated is the preheat from which somebody has to light a torch: below it a
// joint is only dried or brought to the warmth of the shop.
const heated units.Celsius = 50

// shownMarks is how many marks a sentence names before it counts the rest.
const shownMarks = 8

// exclusions returns what the price leaves out, one sentence each, to be copied
// into a quote.
func exclusions(job *Job, unpriced []string) []string {
	out := []string{
		WeldingOnly,
		"Base material, drawings, weld testing, procedure and welder qualification are not in this price; nor is tax.",
	}
	site := 0
	for i := range job.Plans {
		if onSite(&job.Plans[i]) {
			site++
		}
	}
	if site > 0 {
		out = append(out, fmt.Sprintf("Access, lifting, shelter and power on site are not in this price (%s on site).", count(site, "joint")))
	}
	if preheat := Preheated(job); preheat > 0 {
		out = append(out, fmt.Sprintf("Time and fuel for preheating %s are not in this price.", count(preheat, "joint")))
	}
	if len(unpriced) > 0 {
		out = append(out, fmt.Sprintf("%s with metal but no settings, so not in this price: %s.", count(len(unpriced), "joint"), finding.Few(unpriced, shownMarks)))
	}
	if rejected := RejectedRows(&job.List); len(rejected) > 0 {
		out = append(out, fmt.Sprintf("%s of the list that could not be read, so not in this price: %s.", count(len(rejected), "row"), finding.Few(rejected, shownMarks)))
	}
	return out
}

// Preheated counts the joints that somebody has to light a torch for.
func Preheated(job *Job) int {
	n := 0
	for i := range job.Plans {
		if p := job.Plans[i].Preheat; p != nil && *p >= heated {
			n++
		}
	}
	return n
}

// RejectedRows names the rows that were not worked, by mark or else by number.
func RejectedRows(l *joint.List) []string {
	var out []string
	for _, o := range l.Others {
		switch {
		case o.Fate != joint.Rejected:
		case o.Mark != "":
			out = append(out, o.Mark)
		default:
			out = append(out, fmt.Sprintf("row %d", o.Row))
		}
	}
	return out
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
