package plan

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// slips judges numbers that look like another unit, or a throat read as a leg.
func (k *checker) slips(t *task) {
	for _, part := range []struct {
		code, what string
		size       float64
	}{
		{"unit-thickness", "a thickness", float64(t.prep.T1)}, {"unit-thickness", "a thickness", float64(t.prep.T2)},
		{"unit-length", "a seam", float64(t.j.Length)},
	} {
		if r := k.c.book.first(part.code); r != nil && part.size > 0 && (part.size < r.Over || part.size > r.To) {
			k.say(r, finding.Warning, fmt.Sprintf("%s of %s", part.what, mmText(part.size)))
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
	if spokenOf(t.j, painted) {
		k.sayf("paint", finding.Warning, "the row speaks of paint or another coating")
	}
	if spokenOf(t.j, narrow) {
		k.sayf("confined", finding.Warning, "the row speaks of welding inside something")
	}
}

// painted and narrow are the words that tell of a coating and of a confined space.
var (
	painted = []string{"paint", "primer", "primed", "coated", "lackier", "grundier", "peint", "pintad", "vernic"}
	narrow  = []string{"confined", "inside tank", "inside the tank", "inside vessel", "inside the vessel", "manhole", "in tank", "behälter innen"}
)

// bareGrade is the most letters that a material has which says no more than its
// grade: most rows are told apart by it without looking for words.
const bareGrade = 8

// spokenOf tells whether the row's own words hold one of the words.
func spokenOf(j *joint.Joint, words []string) bool {
	if j.Note == "" && len(j.Material) <= bareGrade && len(j.Material2) <= bareGrade {
		return false
	}
	text := strings.ToLower(j.Note + " " + j.Material + " " + j.Material2)
	if strings.Contains(text, "zinc") || strings.Contains(text, "unpainted") || strings.Contains(text, "paint after") {
		return false // zinc has its own check; paint that comes later does no harm
	}
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}
