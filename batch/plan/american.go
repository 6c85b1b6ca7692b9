package plan

import (
	"regexp"
	"slices"
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
		own := a.ownWords(p)
		say := func(text string) string { return own.spare(text, func(ours string) string { return a.say(ours, p) }) }
		for j := range p.Checks {
			c := &p.Checks[j]
			if done[c] {
				continue
			}
			done[c] = true
			if !slices.Contains(othersNames, c.Code) {
				c.Text, c.Args = say(c.Text), say(c.Args)
			}
			if !slices.Contains(saidOnce, c.Code) { // of those, the marks of the other joints stand there
				c.More = say(c.More)
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

// othersNames are the codes of checks that name nothing but what the list or the shop
// calls its own: a mark may well be PA.
var othersNames = []string{"mark-twice", "part-thickness", "part-grade", "unit-part", "procedure-unknown", "wps-governs", "stitch-none", "machine-duty", "machine-long-run"}

// ownWords are what a list and its shop call things by, the longest first: they stay as
// they were written.
type ownWords []string

// ownWords returns the own words of a plan that could be taken for a position or a wire.
// One that is nothing else is no longer told from our own, and is not kept.
func (a *american) ownWords(p *Plan) ownWords {
	j := p.Joint
	all := []string{j.Mark, j.WPS, j.Part1, j.Part2, j.Material, j.Material2, j.Machine, p.Machine}
	for i := range a.set.Procedures {
		all = append(all, a.set.Procedures[i].Number)
	}
	for i := range a.set.Machines {
		all = append(all, a.set.Machines[i].Name)
	}
	var out ownWords
	for _, text := range all {
		text = strings.TrimSpace(text)
		if text == isoPosition.FindString(text) || a.isWire(text) || a.wires.Replace(text) == text && !isoPosition.MatchString(text) {
			continue
		}
		out = append(out, text)
	}
	slices.SortStableFunc(out, func(x, y string) int { return len(y) - len(x) })
	return out
}

// isWire tells whether a name is that of a wire and nothing else, with its diameter or
// without: "G3Si1 1.0" as the number of a procedure.
func (a *american) isWire(text string) bool {
	for _, w := range a.set.Wires {
		if dia, ok := strings.CutPrefix(text, w.Filler); ok && strings.Trim(dia, " 0123456789.,m") == "" && (dia == "" || dia[0] == ' ') {
			return true
		}
	}
	return false
}

// spare has a text said, but for what stands in quotes in it, which is quoted from the
// list, and for the own words.
func (own ownWords) spare(text string, say func(string) string) string {
	if text == "" {
		return text
	}
	if from := strings.IndexByte(text, '"'); from >= 0 {
		if to := strings.IndexByte(text[from+1:], '"'); to >= 0 {
			to += from + 2
			return own.spare(text[:from], say) + text[from:to] + own.spare(text[to:], say)
		}
	}
	for k, word := range own {
		if before, after, found := strings.Cut(text, word); found {
			return own[k:].spare(before, say) + word + own[k:].spare(after, say)
		}
	}
	return say(text)
}
