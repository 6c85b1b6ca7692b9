package plan

import (
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// Imperial words the checks of finished plans, and why a plan has no settings or
// no preheat, in US units. The working of explain stays in the units that its
// formulas and their sources are written in. Joints of one form share their checks,
// their manner and what was taken for them, which are worded once.
func Imperial(plans []Plan) {
	done, taken, manners := map[*finding.Check]bool{}, map[*joint.Assumption]bool{}, map[*Manner]bool{}
	for i := range plans {
		p := &plans[i]
		for j := range p.Checks {
			c := &p.Checks[j]
			if done[c] {
				continue
			}
			done[c] = true
			c.Text, c.More, c.Rule, c.Do = units.Imperial(c.Text), units.Imperial(c.More), units.Imperial(c.Rule), units.Imperial(c.Do)
		}
		if manners[p.Manner] {
			continue
		}
		manners[p.Manner] = true
		p.NoSettings, p.PreheatWords = units.Imperial(p.NoSettings), units.Imperial(p.PreheatWords)
		if len(p.Assumed) > 0 && !taken[&p.Assumed[0]] {
			taken[&p.Assumed[0]] = true
			for j := range p.Assumed {
				a := &p.Assumed[j]
				a.Value, a.Why = units.Imperial(a.Value), units.Imperial(a.Why)
			}
		}
		for j := range p.Hints {
			h := &p.Hints[j]
			h.Form, h.Rule, h.Do = units.Imperial(h.Form), units.Imperial(h.Rule), units.Imperial(h.Do)
		}
	}
}
