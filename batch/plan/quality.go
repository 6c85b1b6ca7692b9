package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/units"
	"seamtally/batch/weld"
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

// ownLimits are the limits of a joint's level that its own shape can offend: no root
// stands out over a flat backing, under a second side or where the metal stops short.
func (c *catalog) ownLimits(t *task) (level string, limits []tables.QualityLimit) {
	level, _, limits = c.qualityLimits(t)
	g, groove := t.shape.section.(weld.Groove)
	if groove && (t.prep.Backing == "" || t.prep.FormsRoot()) && t.j.Sides != 2 && g.Back.Depth == 0 && g.Fused == 0 {
		return level, limits
	}
	return level, slices.DeleteFunc(limits, func(q tables.QualityLimit) bool { return q.Number == RootHeight })
}

// quality tells what the quality level asks of the finished weld, in words that
// hold for every joint of the level, and judges a stated gap by it.
func (k *checker) quality(t *task) {
	level, kind, limits := k.c.qualityLimits(t)
	said := make([]string, 0, len(limits))
	for _, q := range limits {
		said = append(said, limitWords(&q))
		if limit := float64(q.Limit(t.sizeFor(q.Of))); q.Number == FitGap && t.j.GapGiven && t.fitGap > limit+slackSize {
			k.sayFrom("quality-gap", finding.Warning, q.Source, q.Basis, "gap of %s between the parts; quality level %s allows %s here", mmText(t.fitGap), level, mmText(limit))
		}
	}
	if len(said) > 0 {
		k.sayFrom("quality-level", finding.Note, k.qualitySource(level), k.qualityBasis(level), "level %s in %s welds, at most: %s (a throat, b width of the face, g gap, t thickness; `seamtally explain` with list and mark shows each joint's own figures)", level, kind, strings.Join(said, ", "))
	}
}

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
	level, limits := w.c.ownLimits(w.t)
	for _, q := range limits {
		size := w.t.sizeFor(q.Of)
		w.step("QUALITY-"+q.Number, fmt.Sprintf("%s, level %s, at most", q.Imperfection, level), limitWords(&q), fmt.Sprintf("%s = %s", q.Of, n2(size)), n2(q.Limit(size))+" mm", q.Source, q.Basis)
	}
}

// limitsOf returns the figures of the joint's own size.
func (c *catalog) limitsOf(t *task) []Limit {
	_, limits := c.ownLimits(t)
	out := make([]Limit, 0, len(limits))
	for _, q := range limits {
		out = append(out, Limit{q.Number, q.Limit(t.sizeFor(q.Of))})
	}
	return out
}

// sizeFor is the size of the weld that a limit goes by: throat, width, width of the
// root or thickness. The root is taken no wider than the gap it is laid into.
func (t *task) sizeFor(of string) units.MM {
	switch {
	case of == "a":
		return t.prep.Throat
	case of == "g":
		return max(t.prep.Gap, 0)
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
