package plan

import (
	"seamtally/batch/finding"
	"seamtally/batch/units"
)

// Imperial words the checks of finished plans, and why a plan has no settings or
// no preheat, in US units. The working of explain stays in the units that its
// formulas and their sources are written in. Joints of one form share their checks,
// which are worded once.
func Imperial(plans []Plan) {
	done := map[*finding.Check]bool{}
	for i := range plans {
		p := &plans[i]
		p.NoSettings, p.PreheatWords = units.Imperial(p.NoSettings), units.Imperial(p.PreheatWords)
		for j := range p.Checks {
			c := &p.Checks[j]
			if done[c] {
				continue
			}
			done[c] = true
			c.Text, c.More, c.Rule, c.Do = units.Imperial(c.Text), units.Imperial(c.More), units.Imperial(c.Rule), units.Imperial(c.Do)
		}
		for j := range p.Hints {
			h := &p.Hints[j]
			h.Form, h.Rule, h.Do = units.Imperial(h.Form), units.Imperial(h.Rule), units.Imperial(h.Do)
		}
	}
}
