package batch

import (
	"context"
	"path/filepath"
	"regexp"
	"testing"

	"seamtally/batch/price"
)

// Whoever works in US units reads no metric figure in a check of any sample, or in what was taken for it, and
// whoever works in metric units reads all of them.
func TestChecksReadInTheUnitsAskedFor(t *testing.T) {
	lists, err := filepath.Glob("../samples/*/*.[cx]*")
	if err != nil || len(lists) == 0 {
		t.Fatal("no samples", err)
	}
	metric := regexp.MustCompile(`\d ?(mm|°C|kJ/mm|l/min|m/min|kg|m/s|km/h)($|[^\pL])`)
	worked, found := 0, map[bool]int{}
	for _, name := range lists {
		for _, us := range []bool{false, true} {
			job := Job{Lists: []string{name}, DryRun: true, Looks: price.Options{US: us, Codes: "aws"}}
			job.Done = func(r Result) {
				if r.Job == nil {
					return
				}
				worked++
				for i := range r.Job.Plans {
					p := &r.Job.Plans[i]
					var texts []string
					for _, c := range p.Checks {
						texts = append(texts, c.Text, c.More, c.Rule, c.Do)
					}
					for _, a := range p.Assumed {
						texts = append(texts, a.Value, a.Why)
					}
					for _, text := range texts {
						if bad := metric.FindString(text); bad != "" {
							if found[us]++; us {
								t.Errorf("%s, %s: %q in %q", filepath.Base(name), p.Joint.Mark, bad, text)
							}
						}
					}
				}
			}
			if _, err := Judge(context.Background(), job); err != nil {
				t.Fatal(err)
			}
		}
	}
	if worked < 6 || found[false] < 50 {
		t.Errorf("%d lists worked, %d metric figures: nothing was compared", worked, found[false])
	}
}
