package plan

import (
	"cmp"
	"slices"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/tables"
)

// checker collects the checks of one joint. Each names its rule by a code; the
// rule's words, source and remedy come from the table of check rules.
type checker struct {
	c   *catalog
	out []finding.Check
}

// ruleBook holds the check rules by code for the family of codes in use.
type ruleBook map[string][]*tables.CheckRule

func readRuleBook(set *tables.Set, aws bool) ruleBook {
	own := "iso"
	if aws {
		own = "aws"
	}
	book := ruleBook{}
	for i := range set.CheckRules {
		r := &set.CheckRules[i]
		if r.Codes == "both" || r.Codes == own {
			book[r.Code] = append(book[r.Code], r)
		}
	}
	return book
}

// at returns the row of a rule for a value: the one whose range holds it, over
// the lower limit and up to the upper; nil if none does.
func (b ruleBook) at(code string, value float64) *tables.CheckRule {
	for _, r := range b[code] {
		if value > r.Over-1e-9 && (r.To == 0 || value <= r.To+1e-9) && (r.Over == 0 || value > r.Over+1e-9 || len(b[code]) == 1) {
			return r
		}
	}
	return nil
}

// first returns the only row of a rule, or its first.
func (b ruleBook) first(code string) *tables.CheckRule {
	if rows := b[code]; len(rows) > 0 {
		return rows[0]
	}
	return nil
}

// say adds a check under a rule; a rule that the family of codes does not have is
// silent.
func (k *checker) say(r *tables.CheckRule, level finding.Level, format string, args ...any) {
	if r == nil {
		return
	}
	c := finding.Check{Code: r.Code, Level: level, Rule: r.Rule, Source: r.Source, Basis: r.Basis, Do: r.Do}
	c.Say(format, args...)
	k.out = append(k.out, c)
}

// sayf is say with the first row of a code.
func (k *checker) sayf(code string, level finding.Level, format string, args ...any) {
	k.say(k.c.book.first(code), level, format, args...)
}

// sayFrom is sayf for a figure that has its own source and basis.
func (k *checker) sayFrom(code string, level finding.Level, source, basis, format string, args ...any) {
	r := k.c.book.first(code)
	if r == nil {
		return
	}
	own := *r
	own.Source, own.Basis = source, basis
	k.say(&own, level, format, args...)
}

// check judges a joint that has settings.
func (c *catalog) check(p *Plan, t *task, o *outcome, of *offer) {
	k := &checker{c: c, out: c.said[:0]}
	k.materials(t)
	k.sizes(t)
	k.stitches(t)
	k.feeding(o)
	k.place(t)
	k.choice(t, o, of)
	k.passes(t, o)
	k.machine(t, o, p)
	k.heat(t, o, p)
	k.quality(t)
	k.slips(t)
	k.coats(t)
	k.list(t)
	p.Checks, c.said = t.form.shared(o.way, k.out), k.out
}

// checkBare judges a joint without settings: what is missing comes first.
func (c *catalog) checkBare(p *Plan, t *task) {
	k := &checker{c: c}
	k.missing(p, t)
	k.materials(t)
	if t.noArea == "" {
		k.sizes(t)
		k.stitches(t)
	}
	k.place(t)
	k.slips(t)
	k.coats(t)
	k.list(t)
	p.Checks = k.out
	p.Cautions = c.cautions(t, nil)
}

// missing says what keeps the joint from having settings.
func (k *checker) missing(p *Plan, t *task) {
	why := p.NoSettings
	switch {
	case t.noArea != "" && t.noAreaCode == "size-blank", t.noArea != "" && t.noAreaCode == "thickness-blank":
		k.sayf(t.noAreaCode, finding.Warning, "%s", why)
	case t.noArea != "":
		k.sayf(t.noAreaCode, finding.Warning, "%s", why)
	case t.j.Material == "" && t.j.Material2 == "":
		k.sayf("material-blank", finding.Note, "%s", why)
	case t.mat == nil || t.j.Material2 != "" && t.mat2 == nil:
		k.sayf("material-unknown", finding.Warning, "%s", why)
	case t.notToBeWelded():
		k.sayf("not-weldable", finding.Error, "%s", why)
	case len(t.pair) == 0:
		k.sayf("no-filler", finding.Error, "%s", why)
	case t.thin <= 0:
		k.sayf("thickness-blank", finding.Note, "%s", why)
	case t.made <= 0:
		k.sayf("no-area", finding.Note, "%s", why)
	case t.pos < 0:
		k.sayf("position-unknown", finding.Error, "%s", why)
	case t.wish.code == unmet || t.wish.problem == "" && t.proc != nil:
		k.sayf(unmet, finding.Error, "%s", why)
	case t.wish.problem != "":
		k.sayf("word-unknown", finding.Error, "%s", why)
	default:
		k.sayReason(k.c.nearest(t), finding.Error, why)
	}
}

// materials judges the parent metals and the filler.
func (k *checker) materials(t *task) {
	if t.mat == nil {
		return
	}
	for _, m := range []*tables.Material{t.mat, t.mat2} {
		if m == nil || m == t.mat2 && t.mat2 == t.mat {
			continue
		}
		if m.Weldable == "care" {
			k.sayf("weld-care", finding.Warning, "%s: %s", m.Grade, m.Note)
		}
		if m.Coated == "zinc" && !t.brazed() {
			k.sayf("zinc", finding.Warning, "%s is zinc coated", m.Grade)
		}
	}
	if t.mat2 != nil && t.mat.Family != t.mat2.Family && len(t.pair) > 0 {
		code := "dissimilar"
		if t.mat.Group == t.mat2.Group {
			code = "alloys-differ"
		}
		k.sayf(code, finding.Note, "%s meets %s: %s, %s", t.mat.Grade, t.mat2.Grade, t.pair[0].Filler, t.pair[0].Reason)
	}
}

// place judges where and in which position the joint is welded.
func (k *checker) place(t *task) {
	if t.site && !t.gasless {
		k.sayf(k.c.outdoors(t, "site-wind", "site-wind-screens"), finding.Warning, "welded on site with shielding gas, which wind blows away")
	}
	if t.pos >= 0 && fillsPlate(t.prep.Kind) && (positions[t.pos] == "PB" || positions[t.pos] == "PD") {
		k.sayf("position-butt", finding.Warning, "a butt weld in %s, which is a position of fillet welds", positions[t.pos])
	}
	if t.posNote != "" && t.pos >= 0 {
		k.sayf("position-pipe", finding.Note, "position %s is planned with the settings of %s", t.posNote, positions[t.pos])
	}
}

// fillsPlate tells whether a joint lies between two edges in one plane: a bevel or J may
// stand on a plate, and then in a fillet's position.
func fillsPlate(kind joint.Kind) bool {
	switch kind {
	case joint.SquareButt, joint.SingleV, joint.DoubleV, joint.SingleU, joint.DoubleU:
		return true
	}
	return false
}

// outdoors returns the rule for metals that have a wire that shields itself, or the one
// for those where screens are all that helps.
func (c *catalog) outdoors(t *task, wire, screens string) string {
	for _, f := range t.pair {
		if slices.ContainsFunc(c.set.Wires, func(w tables.Wire) bool { return w.Filler == f.Filler && w.Gasless() }) {
			return wire
		}
	}
	return screens
}

// list judges what only the row and its list can tell.
func (k *checker) list(t *task) {
	if t.j.WPS != "" {
		k.procedure(t)
	}
	if t.twin > 0 {
		k.sayf("mark-twice", finding.Warning, "the mark %s stands in row %d too", t.j.Mark, t.twin)
	}
	if t.seam <= 0 && t.noArea == "" && t.stitchMissing == "" {
		k.sayf("length-blank", finding.Note, "%s", cmp.Or(t.noRound, "the length of the seam is not known"))
	}
	k.parts(t)
}

// twins returns of each joint whose mark stands above it already the row of the
// first with that mark.
func twins(joints []joint.Joint) map[int]int {
	seen, out := make(map[string]int, len(joints)), map[int]int{}
	for i := range joints {
		mark := joints[i].Mark
		if first, ok := seen[mark]; ok && mark != "" {
			out[i] = joints[first].Place.Row
			continue
		}
		seen[mark] = i
	}
	return out
}
