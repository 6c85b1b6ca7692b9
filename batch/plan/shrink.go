package plan

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// shrinkStep is one estimate of transverse shrinkage with its working.
type shrinkStep struct {
	id, formula, numbers, source, basis string
	value                               units.MM
}

// drawn is what the shrinkage across a seam is reckoned from.
type drawn struct {
	prep   *Prep
	area   units.MM2 // of one seam, as made
	thin   units.MM  // thinner part
	leg    units.MM  // larger leg, as drawn
	sides  int
	welded float64 // share of the length that stitches take
}

// shrinkage estimates how much one seam draws the parts together across itself,
// in mm, by every published form that fits: the lowest and the highest are the
// range that a cutter allows for. The area is that of one seam as it is laid. Free plates
// of carbon steel only.
func shrinkage(t *task, area units.MM2) []shrinkStep {
	d, ok := drawnBy(t, area)
	if !ok {
		return nil
	}
	out := d.steps(nil)
	for i := range out {
		out[i].numbers = d.numbers(out[i].id)
	}
	return out
}

// drawnBy is what the shrinkage across a seam of a task is reckoned from; false where no
// form fits.
func drawnBy(t *task, area units.MM2) (d drawn, ok bool) {
	if t.metal != "carbon steel" || t.noArea != "" || area <= 0 || t.thin <= 0 {
		return d, false
	}
	return drawn{prep: &t.prep, area: area, thin: units.MM(t.thin), leg: units.MM(t.leg), sides: max(t.j.Sides, 1), welded: t.weldedShare()}, true
}

// steps adds the estimates to a list, without their working.
func (d *drawn) steps(out []shrinkStep) []shrinkStep {
	switch d.prep.Kind {
	case joint.Fillet, joint.Lap:
		return d.fillets(out)
	case joint.Edge, joint.Plug, joint.Slot, joint.FlareBevel, joint.FlareV:
		return out
	}
	if v, err := weld.ShrinkButtLow(d.area, d.thin); err == nil {
		out = append(out, shrinkStep{id: "SHRINK-4", formula: "S = 0.1 A/t", source: "method statement citing AWS D1.1:2020 and Blodgett (extract)", basis: "published", value: v})
	}
	if v, err := weld.ShrinkButt(d.area, d.thin, max(d.prep.Gap, 0)); err == nil {
		out = append(out, shrinkStep{id: "SHRINK-1", formula: "S = 0.2 A/t + 0.05 g", source: "second-hand chart crediting Spraragen and Ettinger", basis: "memory", value: v})
	}
	return out
}

// numbers writes out what a form is worked with.
func (d *drawn) numbers(id string) string {
	switch id {
	case "SHRINK-4":
		return "0.1 x " + number(float64(d.area), 2) + " / " + n2(d.thin)
	case "SHRINK-1":
		return "0.2 x " + number(float64(d.area), 2) + " / " + n2(d.thin) + " + 0.05 x " + n2(max(d.prep.Gap, 0))
	case "SHRINK-6":
		return "0.8 x " + number(float64(d.sides), 0) + " x " + number(d.welded, 3)
	}
	return n2(d.leg) + " / " + n2(d.plate()) + " x " + number(d.share(), 3)
}

// plate is the thickness of the part that fillets stand on.
func (d *drawn) plate() units.MM {
	if d.prep.T2 > 0 {
		return d.prep.T2
	}
	return d.thin
}

// share is what of two fillets over the whole length is welded.
func (d *drawn) share() float64 { return float64(d.sides) / 2 * d.welded }

// fillets estimates the part that the fillets stand on; stitches count for the share
// of the length that they take.
func (d *drawn) fillets(out []shrinkStep) []shrinkStep {
	first := shrinkStep{id: "SHRINK-2", formula: "S = 1.02 z/t for two fillets, times the share welded", source: "AWS Welding Handbook", basis: "memory"}
	f := weld.ShrinkTee
	if d.prep.Kind == joint.Lap {
		first.id, first.formula, f = "SHRINK-5", "S = 1.52 z/t for two fillets, times the share welded", weld.ShrinkLap
	}
	if v, err := f(d.leg, d.plate()); err == nil {
		first.value = v * units.MM(d.share())
		out = append(out, first)
	}
	if v, err := weld.ShrinkFilletRule(d.sides, d.leg, d.plate()); err == nil {
		out = append(out, shrinkStep{id: "SHRINK-6", formula: "S = 0.8 n, times the share welded", source: "TWI FAQ weld shrinkage allowance", basis: "published", value: v * units.MM(d.welded)})
	}
	return out
}

// weldedShare returns the welded length over the length of the seam.
func (t *task) weldedShare() float64 {
	if t.stitch.count == 0 || t.j.Length <= 0 {
		return 1
	}
	return min(1, float64(t.stitch.count)*t.stitch.segment/float64(t.j.Length))
}

// shrinkRange returns the lowest and the highest estimate; nil without any.
func shrinkRange(t *task, area units.MM2) *[2]units.MM {
	d, ok := drawnBy(t, area)
	if !ok {
		return nil
	}
	var room [2]shrinkStep
	steps := d.steps(room[:0])
	if len(steps) == 0 {
		return nil
	}
	out := [2]units.MM{steps[0].value, steps[0].value}
	for _, s := range steps[1:] {
		out[0], out[1] = min(out[0], s.value), max(out[1], s.value)
	}
	return &out
}

// ShrinkLine is one estimate of the shrinkage across a seam as a straight line:
// S = K X + C mm, X being the larger leg as drawn in mm of a fillet or lap and the area
// as made in mm² of anything else. A spreadsheet follows a leg or an area by it.
type ShrinkLine struct{ K, C float64 }

// ShrinkLines returns the estimates that are behind a plan's range, and whether they
// hang on the leg. None where the plan has no range.
func ShrinkLines(p *Plan) (lines []ShrinkLine, onLeg bool) {
	if p.Shrink == nil {
		return nil, false
	}
	d := drawn{prep: &p.Prep, area: p.Area, leg: max(p.Prep.LegA, p.Prep.LegB), sides: max(p.Joint.Sides, 1), welded: WeldedShare(p)}
	d.thin = d.prep.T1
	if t2 := d.prep.T2; d.thin <= 0 || t2 > 0 && t2 < d.thin {
		d.thin = t2
	}
	onLeg = d.prep.Kind == joint.Fillet || d.prep.Kind == joint.Lap
	x, more := float64(d.area), d
	if onLeg {
		x = float64(d.leg)
		more.leg *= 0.5 // smaller, so that no form leaves its limits
	} else {
		more.area *= 0.5
	}
	half := more.steps(nil)
	for i, s := range d.steps(nil) {
		k := 2 * float64(s.value-half[i].value) / x
		lines = append(lines, ShrinkLine{K: noNoise(k), C: noNoise(float64(s.value) - k*x)})
	}
	return lines, onLeg
}

// noNoise brings to zero what is left over of a difference of equal numbers.
func noNoise(v float64) float64 {
	if math.Abs(v) < 1e-9 {
		return 0
	}
	return v
}

// WeldedShare is the welded length of a stitched seam over its whole length.
func WeldedShare(p *Plan) float64 {
	if p.Joint.Stitch == nil || p.Segments <= 0 || p.Joint.Length <= 0 {
		return 1
	}
	return min(1, float64(p.Segments)*float64(p.Joint.Stitch.Segment)/float64(p.Joint.Length))
}
