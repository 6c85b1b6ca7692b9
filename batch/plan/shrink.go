package plan

import (
	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// shrinkStep is one estimate of transverse shrinkage with its working.
type shrinkStep struct {
	id, formula, numbers, source, basis string
	value                               units.MM
}

// shrinkage estimates how much one seam draws the parts together across itself,
// in mm, by every published form that fits: the lowest and the highest are the
// range that a cutter allows for. Free plates of carbon steel only.
func shrinkage(t *task, working bool) []shrinkStep {
	say := func(numbers func() string) string {
		if !working {
			return ""
		}
		return numbers()
	}
	if t.metal != "carbon steel" || t.noArea != "" || t.made <= 0 || t.thin <= 0 {
		return nil
	}
	switch t.prep.Kind {
	case joint.Fillet, joint.Lap:
		return shrinkFillet(t, say)
	case joint.Edge, joint.Plug, joint.Slot, joint.FlareBevel, joint.FlareV:
		return nil
	}
	var out []shrinkStep
	thick := units.MM(t.thin)
	if v, err := weld.ShrinkButtLow(units.MM2(t.made), thick); err == nil {
		out = append(out, shrinkStep{"SHRINK-4", "S = 0.1 A/t", say(func() string { return "0.1 x " + number(t.made, 2) + " / " + n2(thick) }), "method statement citing AWS D1.1:2020 and Blodgett (extract)", "published", v})
	}
	if v, err := weld.ShrinkButt(units.MM2(t.made), thick, max(t.prep.Gap, 0)); err == nil {
		out = append(out, shrinkStep{"SHRINK-1", "S = 0.2 A/t + 0.05 g", say(func() string {
			return "0.2 x " + number(t.made, 2) + " / " + n2(thick) + " + 0.05 x " + n2(max(t.prep.Gap, 0))
		}), "second-hand chart crediting Spraragen and Ettinger", "memory", v})
	}
	return out
}

// shrinkFillet estimates the part that the fillets stand on; stitches count for
// the share of the length that they take.
func shrinkFillet(t *task, say func(func() string) string) []shrinkStep {
	leg, plate := units.MM(t.leg), t.prep.T2
	if plate <= 0 {
		plate = units.MM(t.thin)
	}
	sides := max(t.j.Sides, 1)
	share := float64(sides) / 2 * t.weldedShare()
	formula, f, id := "S = 1.02 z/t", weld.ShrinkTee, "SHRINK-2"
	if t.prep.Kind == joint.Lap {
		formula, f, id = "S = 1.52 z/t", weld.ShrinkLap, "SHRINK-5"
	}
	var out []shrinkStep
	if v, err := f(leg, plate); err == nil {
		out = append(out, shrinkStep{id, formula + " for two fillets, times the share welded", say(func() string { return n2(leg) + " / " + n2(plate) + " x " + number(share, 3) }), "AWS Welding Handbook", "memory", v * units.MM(share)})
	}
	if v, err := weld.ShrinkFilletRule(sides, leg, plate); err == nil {
		out = append(out, shrinkStep{"SHRINK-6", "S = 0.8 n, times the share welded", say(func() string { return "0.8 x " + number(float64(sides), 0) + " x " + number(t.weldedShare(), 3) }), "TWI FAQ weld shrinkage allowance", "published", v * units.MM(t.weldedShare())})
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
func shrinkRange(t *task) *[2]units.MM {
	steps := shrinkage(t, false)
	if len(steps) == 0 {
		return nil
	}
	out := [2]units.MM{steps[0].value, steps[0].value}
	for _, s := range steps[1:] {
		out[0], out[1] = min(out[0], s.value), max(out[1], s.value)
	}
	return &out
}
