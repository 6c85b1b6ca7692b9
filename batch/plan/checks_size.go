package plan

import (
	"fmt"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
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
	if t.prep.Kind == joint.SingleV {
		if r := k.c.book.at("double-saves", t.thin); r != nil {
			k.say(r, finding.Note, fmt.Sprintf("single V in %s", mmText(t.thin)))
		}
	}
	if t.thin > 0 {
		k.say(k.c.book.at("thin-sheet", t.thin), finding.Note, fmt.Sprintf("sheet of %s", mmText(t.thin)))
	}
}

// filletSize judges leg and throat of a fillet.
func (k *checker) filletSize(t *task) {
	small := min(float64(t.prep.LegA), float64(t.prep.LegB))
	throat := float64(t.prep.Throat)
	if t.thin > 0 {
		if r := k.c.book.at("leg-min", t.thin); r != nil && small < r.Value-0.2 && small < t.thin-0.05 {
			k.say(r, finding.Warning, fmt.Sprintf("leg %s is below %s, the least for %s", mmText(small), mmText(r.Value), mmText(t.thin)))
		}
		if r := k.c.book.at("throat-min", t.thin); r != nil && throat < r.Value-0.05 {
			k.say(r, finding.Warning, fmt.Sprintf("throat %s (leg %s) is below %s between parts of %s and more", mmText(throat), mmText(small), mmText(r.Value), mmText(t.thin)))
		}
		k.largeLeg(t)
		k.say(k.c.book.at("thin-sheet", t.thin), finding.Note, fmt.Sprintf("sheet of %s", mmText(t.thin)))
	}
	if a := float64(t.prep.Angle); t.prep.Kind == joint.Fillet {
		if r := k.c.book.first("angle-fillet"); r != nil && (a < r.Over || a > r.To) {
			k.say(r, finding.Warning, fmt.Sprintf("the parts meet at %s°", number(a, 1)))
		}
	}
	if length := float64(t.j.Length); length > 0 && t.j.Stitch == nil {
		k.shortFillet(length, small, throat)
	}
}

// shortFillet judges the length of a continuous fillet.
func (k *checker) shortFillet(length, leg, throat float64) {
	r := k.c.book.first("length-min")
	if r == nil {
		return
	}
	least := max(r.Value, 6*throat)
	if k.c.aws {
		least = r.Value * leg
	}
	if length < least-0.5 {
		k.say(r, finding.Note, fmt.Sprintf("the seam of %s is shorter than %s", mmText(length), mmText(least)))
	}
}

// largeLeg judges a leg that is more than the edge or the parts allow.
func (k *checker) largeLeg(t *task) {
	if t.prep.Kind == joint.Lap && t.prep.T1 > 0 {
		edge := float64(t.prep.T1)
		leg := float64(t.prep.LegA)
		if r := k.c.book.at("leg-edge", edge-0.001); r != nil && leg > edge-r.Value+0.05 {
			k.say(r, finding.Warning, fmt.Sprintf("leg %s on an edge of %s: at most %s", mmText(leg), mmText(edge), mmText(edge-r.Value)))
			return
		}
	}
	thick := max(float64(t.prep.T1), float64(t.prep.T2))
	if r := k.c.book.first("leg-unlikely"); r != nil && t.leg > r.Value*thick {
		k.say(r, finding.Warning, fmt.Sprintf("leg %s on parts of %s at most", mmText(t.leg), mmText(thick)))
		return
	}
	if r := k.c.book.first("leg-large"); r != nil && t.leg > r.Value*t.thin+0.6 && t.prep.Kind != joint.Corner {
		k.say(r, finding.Note, fmt.Sprintf("leg %s on a part of %s", mmText(t.leg), mmText(t.thin)))
	}
}

// filletGap judges the fit-up gap of a fillet or lap.
func (k *checker) filletGap(t *task) {
	gap := t.fitGap
	if r := k.c.book.first("gap-too-wide"); r != nil && gap > r.Over {
		k.say(r, finding.Error, fmt.Sprintf("fit-up gap %s", mmText(gap)))
		return
	}
	if r := k.c.book.first("gap-wide"); r != nil && gap > r.Over {
		k.say(r, finding.Warning, fmt.Sprintf("fit-up gap %s: legs of %s become %s", mmText(gap), mmText(t.leg), mmText(t.leg+gap)))
	}
}

// stitches judges an intermittent weld.
func (k *checker) stitches(t *task) {
	if t.j.Stitch == nil {
		return
	}
	if t.stitchMissing != "" {
		k.sayf("stitch-none", finding.Error, "%s", t.stitchMissing)
		return
	}
	k.stitchFit(t)
	s := t.stitch
	if r := k.c.book.first("stitch-short"); r != nil && t.leg > 0 {
		least := max(r.Value, 6*float64(t.prep.Throat))
		if k.c.aws {
			least = max(r.Value, 4*t.leg)
		}
		if s.segment < least-0.5 {
			k.say(r, finding.Warning, fmt.Sprintf("segments of %s are shorter than %s", mmText(s.segment), mmText(least)))
		}
	}
	if r := k.c.book.first("stitch-gap"); r != nil && t.thin > 0 {
		times := 16.0
		if k.c.aws {
			times = 24
		}
		if most := min(r.Value, times*t.thin); s.gap > most+0.5 {
			k.say(r, finding.Warning, fmt.Sprintf("clear gap of %s between segments, at most %s in tension", mmText(s.gap), mmText(most)))
		}
	}
	if t.site {
		k.sayf("stitch-outdoor", finding.Note, "intermittent weld on site")
	}
}

// mmText writes millimetres as a person reads them.
func mmText(v float64) string { return number(v, 1) + " mm" }
