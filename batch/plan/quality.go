package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/units"
	"seamtally/tables"
)

// qualityLimits returns a joint's quality level and the limits that it sets.
func (c *catalog) qualityLimits(t *task) (level, kind string, limits []tables.QualityLimit) {
	level = strings.ToUpper(strings.TrimSpace(t.j.Quality))
	if level == "" || c.aws || t.thin <= 0 || t.noArea != "" || t.holeDepth > 0 {
		return level, "", nil
	}
	kind = "butt"
	if t.family == fillet && t.leg > 0 {
		kind = "fillet"
	}
	return level, kind, c.set.QualityLimits(level, kind, units.MM(t.thin))
}

// quality tells what the quality level asks of the finished weld, in words that
// hold for every joint of the level, and judges a stated gap by it.
func (k *checker) quality(t *task) {
	level, kind, limits := k.c.qualityLimits(t)
	said := make([]string, 0, len(limits))
	for _, q := range limits {
		said = append(said, limitWords(&q))
		if limit := float64(q.Limit(t.sizeFor(q.Of))); q.Number == gapNumber && t.j.GapGiven && t.fitGap > limit+slackSize {
			k.sayFrom("quality-gap", finding.Warning, q.Source, q.Basis, "gap of %s; level %s bears %s here", mmText(t.fitGap), level, mmText(limit))
		}
	}
	if len(said) > 0 {
		k.sayFrom("quality-level", finding.Note, k.qualitySource(level), k.qualityBasis(level), "level %s in %s welds, at most: %s (a throat, b width of the face, t thickness; each joint's own figures stand in explain)", level, kind, strings.Join(said, ", "))
	}
}

// gapNumber is the number of ISO 6520-1 for an incorrect root gap of a fillet.
const gapNumber = "617"

// limitWords writes a limit as the standard does: "convexity 1 mm + 0.15 b, at most 4 mm".
func limitWords(q *tables.QualityLimit) string {
	share := number(q.Times, 3) + " " + q.Of
	switch {
	case q.Most == 0:
		return q.Imperfection + " none"
	case q.Times == 0:
		return q.Imperfection + " " + mmText(float64(q.Most))
	case q.Add == 0:
		return fmt.Sprintf("%s %s up to %s", q.Imperfection, share, mmText(float64(q.Most)))
	}
	return fmt.Sprintf("%s %s + %s up to %s", q.Imperfection, mmText(float64(q.Add)), share, mmText(float64(q.Most)))
}

// quality shows the limits of the joint's own size.
func (w *working) quality() {
	level, _, limits := w.c.qualityLimits(w.t)
	for _, q := range limits {
		size := w.t.sizeFor(q.Of)
		w.step("QUALITY-"+q.Number, fmt.Sprintf("%s, level %s, at most", q.Imperfection, level), limitWords(&q), fmt.Sprintf("%s = %s", q.Of, n2(size)), n2(q.Limit(size))+" mm", q.Source, q.Basis)
	}
}

// sizeFor is the size of the weld that a limit goes by: throat, width or thickness.
func (t *task) sizeFor(of string) units.MM {
	switch {
	case of == "a":
		return t.prep.Throat
	case of == "t":
		return units.MM(t.thin)
	case t.leg > 0:
		return units.MM(math.Hypot(float64(t.prep.LegA), float64(t.prep.LegB)))
	}
	return units.MM(t.widthAt(&t.sides[0], 1))
}

// qualitySource names the sources of a level's limits.
func (k *checker) qualitySource(level string) string {
	var out []string
	for _, q := range k.c.set.Qualities {
		if q.Level == level && !slices.Contains(out, q.Source) {
			out = append(out, q.Source)
		}
	}
	return strings.Join(out, "; ")
}

// qualityBasis is memory where any limit of the level is recalled.
func (k *checker) qualityBasis(level string) string {
	if slices.ContainsFunc(k.c.set.Qualities, func(q tables.QualityLimit) bool { return q.Level == level && q.Basis == "memory" }) {
		return "memory"
	}
	return "published"
}
