package plan

import (
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// slips judges numbers that look like another unit, or a throat read as a leg.
func (k *checker) slips(t *task) {
	for _, part := range []struct {
		code, text string
		size       float64
	}{
		{"unit-thickness", "a thickness of %s is not usual", float64(t.prep.T1)}, {"unit-thickness", "a thickness of %s is not usual", float64(t.prep.T2)},
		{"unit-length", "a seam of %s is not usual", float64(t.j.Length)},
	} {
		if r := k.c.book.first(part.code); r != nil && part.size > 0 && (part.size < r.Over || part.size > r.To) {
			k.say(r, finding.Warning, part.text, mmText(part.size))
		}
	}
	k.legOrThroat(t)
}

// legOrThroat doubts a bare number that was read as the leg: too small for the
// parts as a leg, and not as a throat.
func (k *checker) legOrThroat(t *task) {
	if t.family != fillet || t.leg <= 0 || t.j.Size.Means != joint.Leg || !readBare(t.j) {
		return
	}
	leg := float64(t.prep.LegA)
	taken := leg / max(float64(t.prep.Throat), 1e-9) * leg // the leg, were the number the throat
	small := k.belowLeast(t.thin, leg, float64(t.prep.Throat))
	if small && !k.belowLeast(t.thin, taken, leg) {
		k.sayf("leg-or-throat", finding.Note, "%s was read as the leg, which is small for %s; as the throat it would be a leg of %s", mmText(leg), mmText(t.thin), mmText(taken))
	}
}

// readBare tells whether the reader had to decide what the size means.
func readBare(j *joint.Joint) bool {
	return slices.ContainsFunc(j.Assumed, func(a joint.Assumption) bool { return a.Key == "size" })
}

// belowLeast tells whether a fillet is below the least that the codes ask for a thickness.
func (k *checker) belowLeast(thin, leg, throat float64) bool {
	if r := k.c.book.at("leg-min", thin); r != nil && leg < min(r.Value-slackLeg, thin) {
		return true
	}
	r := k.c.book.at("throat-min", thin)
	return r != nil && throat < r.Value-slackSize
}

// coats judges paint and the place that the row's words tell of.
func (k *checker) coats(t *task) {
	if k.c.spoken(t.j, "paint") {
		k.sayf("paint", finding.Warning, "the row speaks of paint or another coating")
	}
	if k.c.spoken(t.j, "confined") {
		k.sayf("confined", finding.Warning, "the row speaks of welding inside something")
	}
}

// bareGrade is the most letters that a material has which says no more than its
// grade: most rows are told apart by it without looking for words.
const bareGrade = 8

// spoken tells whether the row's own words hold one that the table of words knows
// for a condition. Zinc has its own check, and paint that comes later does no harm.
func (c *catalog) spoken(j *joint.Joint, condition string) bool {
	if j.Note == "" && len(j.Material) <= bareGrade && len(j.Material2) <= bareGrade {
		return false
	}
	text := strings.ToLower(j.Note + " " + j.Material + " " + j.Material2)
	holds := func(w string) bool { return strings.Contains(text, w) }
	return slices.ContainsFunc(c.conditions[condition], holds) && !slices.ContainsFunc(c.conditions["no harm"], holds)
}

// readConditions compiles the words that tell of a coating or a confined space.
func (c *catalog) readConditions() {
	c.conditions = map[string][]string{}
	for _, w := range c.set.Words {
		if w.Use == "condition" {
			c.conditions[w.Value] = append(c.conditions[w.Value], strings.ToLower(w.Spelling))
		}
	}
}
