package plan

import (
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/tables"
)

// Slacks keep a rule from speaking where a size is the printed one, rounded. A leg
// may be short by what lies between 3/16 in and its metric name of 5 mm.
const (
	slackSize   = 0.05  // mm, of sizes shown with one decimal
	slackLeg    = 0.2   // mm, of legs named in mm or in sixteenths
	slackLarge  = 0.6   // mm, to the next leg that is sold as a size
	slackLength = 0.5   // mm, of lengths shown whole
	slackEdge   = 0.001 // mm: an edge of just 6 mm counts as under 6
)

// sizes judges the weld size against the parts.
func (k *checker) sizes(t *task) {
	if t.holeDepth > 0 {
		k.hole(t)
		return
	}
	if t.family == fillet && t.leg > 0 {
		k.filletSize(t)
		k.filletGap(t)
		return
	}
	if isFlare(t.prep.Kind) {
		k.flare(t)
	}
	if t.prep.Kind == joint.SingleV {
		if r := k.c.book.at("double-saves", t.thin); r != nil {
			k.say(r, finding.Note, "single V in %s", mmText(t.thin))
		}
	}
	k.thinSheet(t)
}

// thinSheet says what thin sheet asks for.
func (k *checker) thinSheet(t *task) {
	if t.thin <= 0 {
		return
	}
	if r := k.c.book.at("thin-sheet", t.thin); r != nil {
		k.say(r, finding.Note, "sheet of %s burns through easily", mmText(t.thin))
	}
}

// filletSize judges leg and throat of a fillet.
func (k *checker) filletSize(t *task) {
	small := min(float64(t.prep.LegA), float64(t.prep.LegB))
	throat := float64(t.prep.Throat)
	if t.thin > 0 {
		if r := k.c.book.at("leg-min", t.thin); r != nil && small < r.Value-slackLeg && small < t.thin-slackSize {
			k.say(r, finding.Warning, "leg %s is below %s, the least on a part of %s", mmText(small), mmText(r.Value), mmText(t.thin))
		}
		if r := k.c.book.at("throat-min", t.thin); r != nil && throat < r.Value-slackSize {
			k.say(r, finding.Warning, "throat %s (leg %s) is below %s between parts of %s and more", mmText(throat), mmText(small), mmText(r.Value), mmText(t.thin))
		}
		k.largeLeg(t)
		k.thinSheet(t)
	}
	if a := float64(t.prep.Angle); t.prep.Kind == joint.Fillet {
		if r := k.c.book.first("angle-fillet"); r != nil && (a < r.Over || a > r.To) {
			k.say(r, finding.Warning, "the parts meet at %s°, and a fillet weld is for 60 to 120°", number(a, 1))
		}
	}
	if t.j.Length > 0 && t.j.Stitch == nil {
		k.shortFillet(t)
	}
}

// value returns the figure of a rule; 0 where the family of codes does not have it.
func (b ruleBook) value(code string) float64 {
	if r := b.first(code); r != nil {
		return r.Value
	}
	return 0
}

// limit returns the rule of a code and the largest, or the smallest, of its rows
// in mm: a row is a length, or so many times the leg, the throat or the thinner part.
func (k *checker) limit(code string, t *task, pick func(a, b float64) float64) (*tables.CheckRule, float64) {
	rows := k.c.book[code]
	if len(rows) == 0 {
		return nil, 0
	}
	most := rows[0].Value * t.measure(rows[0].Unit)
	for _, r := range rows[1:] {
		most = pick(most, r.Value*t.measure(r.Unit))
	}
	return rows[0], most
}

// measure is the size in mm that a rule's figure counts: 1 where it is a length.
func (t *task) measure(unit string) float64 {
	switch unit {
	case "x leg":
		return min(float64(t.prep.LegA), float64(t.prep.LegB))
	case "x throat":
		return float64(t.prep.Throat)
	case "x t":
		return t.thin
	}
	return 1
}

func larger(a, b float64) float64  { return max(a, b) }
func smaller(a, b float64) float64 { return min(a, b) }

// shortFillet judges the length of a continuous fillet.
func (k *checker) shortFillet(t *task) {
	length := float64(t.j.Length)
	if r, least := k.limit("length-min", t, larger); r != nil && length < least-slackLength {
		k.say(r, finding.Note, "the seam of %s is shorter than the %s that a seam which carries load must have", mmText(length), mmText(least))
	}
}

// largeLeg judges a leg that is more than the edge or the parts allow.
func (k *checker) largeLeg(t *task) {
	if t.prep.Kind == joint.Lap && t.prep.T1 > 0 {
		edge := float64(t.prep.T1)
		leg := float64(t.prep.LegA)
		if r := k.c.book.at("leg-edge", edge-slackEdge); r != nil && leg > edge-r.Value+slackSize {
			k.say(r, finding.Warning, "leg %s on an edge of %s: at most %s", mmText(leg), mmText(edge), mmText(edge-r.Value))
			return
		}
	}
	thick := max(float64(t.prep.T1), float64(t.prep.T2))
	if r := k.c.book.first("leg-unlikely"); r != nil && t.leg > r.Value*thick {
		k.say(r, finding.Warning, "leg %s, but the thickest part has only %s", mmText(t.leg), mmText(thick))
		return
	}
	if r := k.c.book.first("leg-large"); r != nil && t.leg > r.Value*t.thin+slackLarge && t.prep.Kind != joint.Corner {
		k.say(r, finding.Note, "leg %s (throat %s) is large for a part of %s", mmText(t.leg), mmText(float64(t.prep.Throat)), mmText(t.thin))
	}
}

// filletGap judges the fit-up gap of a fillet or lap.
func (k *checker) filletGap(t *task) {
	gap := t.fitGap
	if r := k.c.book.first("gap-too-wide"); r != nil && gap > r.Over {
		k.say(r, finding.Error, "fit-up gap of %s, and a fillet bridges %s at most", mmText(gap), mmText(r.Over))
		return
	}
	if r := k.c.book.first("gap-wide"); r != nil && gap > r.Over {
		k.say(r, finding.Warning, "fit-up gap of %s: legs of %s have to become %s, or the throat is too small", mmText(gap), mmText(t.leg), mmText(t.leg+gap))
	}
}

// stitches judges an intermittent weld.
func (k *checker) stitches(t *task) {
	if t.j.Stitch == nil {
		return
	}
	if t.stitchMissing != "" {
		k.sayf("stitch-none", finding.Error, "the stitch note %q puts no segment into %s", t.j.Stitch.Text, t.stitchMissing)
		return
	}
	k.stitchFit(t)
	s := t.stitch
	if r, least := k.limit("stitch-short", t, larger); r != nil && t.leg > 0 && s.segment < least-slackLength {
		k.say(r, finding.Warning, "segments of %s are shorter than %s", mmText(s.segment), mmText(least))
	}
	if r, most := k.limit("stitch-gap", t, smaller); r != nil && t.thin > 0 && s.gap > most+slackLength {
		k.say(r, finding.Warning, "clear gap of %s between segments; where the joint is pulled, %s at most", mmText(s.gap), mmText(most))
	}
	if t.site {
		k.sayf("stitch-outdoor", finding.Note, "intermittent weld on site, where rust creeps in between the segments")
	}
}

// mmText writes millimetres as a person reads them.
func mmText(v float64) string { return numberWith(v, 1, " mm") }
