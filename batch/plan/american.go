package plan

import (
	"regexp"
	"sort"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/tables"
)

// American names positions and wires in the words of finished plans as the American
// codes do: 3F for PF of a fillet, ER70S-6 for G3Si1. Joints of one form share their
// checks, which are worded once.
func American(plans []Plan, set *tables.Set) {
	a := american{set: set, wires: wireNames(set)}
	done := map[*finding.Check]bool{}
	manners := map[*Manner]bool{}
	for i := range plans {
		p := &plans[i]
		say := func(text string) string { return a.say(text, p) }
		for j := range p.Checks {
			if c := &p.Checks[j]; !done[c] {
				done[c] = true
				c.Text, c.More, c.Args = say(c.Text), say(c.More), say(c.Args)
			}
		}
		if manners[p.Manner] {
			continue
		}
		manners[p.Manner] = true
		p.NoSettings = say(p.NoSettings)
		for j := range p.Hints {
			p.Hints[j].Form = say(p.Hints[j].Form)
		}
	}
}

// american turns ISO names into American ones.
type american struct {
	set   *tables.Set
	wires *strings.Replacer
}

// wireNames replaces every filler of the table, the longest name first.
func wireNames(set *tables.Set) *strings.Replacer {
	names := map[string]string{}
	for _, w := range set.Wires {
		names[w.Filler] = w.AWS
	}
	var order []string
	for name, aws := range names {
		if aws != "" {
			order = append(order, name)
		}
	}
	sort.Slice(order, func(i, j int) bool {
		if len(order[i]) != len(order[j]) {
			return len(order[i]) > len(order[j])
		}
		return order[i] < order[j]
	})
	var pairs []string
	for _, name := range order {
		pairs = append(pairs, name, names[name])
	}
	return strings.NewReplacer(pairs...)
}

var isoPosition = regexp.MustCompile(`\b(?:P[A-HJK]|[HJ]-L045)\b`)

func (a *american) say(text string, p *Plan) string {
	if text == "" {
		return text
	}
	groove := true
	switch p.Joint.Kind {
	case joint.Fillet, joint.Lap, joint.Corner:
		groove = false
	case joint.Edge, joint.Plug, joint.Slot, joint.NoKind:
		return a.wires.Replace(text)
	}
	text = isoPosition.ReplaceAllStringFunc(text, func(iso string) string {
		if name := a.set.AWSName(iso, groove); name != "" {
			return name
		}
		return iso
	})
	return a.wires.Replace(text)
}
