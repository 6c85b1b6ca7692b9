package plan

import "seamtally/batch/finding"

// cold judges whether a butt that is to be welded through gets the current that its
// thickness calls for: a small bead is laid so fast that the hand's limit, not the
// parts, sets the current, and the edges may stay unmelted behind it.
func (k *checker) cold(t *task, o *outcome) {
	r := k.c.book.first("butt-cold")
	if r == nil || !t.prep.Kind.IsButt() || t.prep.Throat < t.thinner() {
		return
	}
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		called := g.wanted * k.c.upward(t)
		if g.kind == Fill || g.current >= r.Value*called || !g.hurried() {
			continue
		}
		k.say(r, finding.Warning, "%s A where parts of %s call for %s A: a run as small as %s mm² cannot be laid with more than that, at %s mm/min, and the edges may stay unmelted",
			number(g.current, 0), mmText(t.thin), number(called, 0), number(g.area, 1), number(g.travel, 0))
		return
	}
}

// hurried tells whether the hand's fastest travel sets the current of a group.
func (g *group) hurried() bool {
	r := g.hand()
	return r != nil && g.travel >= r.High*(1-1e-6)
}

// coldAluminium judges whether thick aluminium, which takes the heat away, gets the
// current that the parts call for in its strongest run.
func (k *checker) coldAluminium(t *task, o *outcome) {
	r := k.c.book.at("al-cold", t.thin)
	if r == nil || t.metal != "aluminium" || t.holeDepth > 0 {
		return
	}
	most := 0.0
	for i := range o.groups[:o.count] {
		most = max(most, o.groups[i].current)
	}
	if most < r.Value*o.wanted {
		k.say(r, finding.Warning, "%s A at most where aluminium of %s calls for %s A", number(most, 0), mmText(t.thin), number(o.wanted, 0))
	}
}
