package traveller

import (
	"cmp"
	"slices"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/traveller/sketch"
	"seamtally/batch/units"
)

// gauge is the size that the gauge must find.
func (f *flow) gauge(box page.BoxID, r page.Rect, p *plan.Plan) {
	key := "gauge"
	switch {
	case picture.KindOf(p) == joint.FlareBevel || picture.KindOf(p) == joint.FlareV:
		key = "gauge.radius"
	case through(p):
		key = "gauge.through"
	}
	text, under := f.gaugeText(p)
	f.tile(box, r, f.say(key), text, "", under)
}

// through tells whether a weld is to go through the whole thickness.
func through(p *plan.Plan) bool {
	return isButt(p) && p.Joint.Size.Means != joint.Penetration && p.Prep.T1 > 0
}

// gaugeText is the least size, and what else is gauged.
func (f *flow) gaugeText(p *plan.Plan) (big, under string) {
	r := p.Prep
	if grow := sketch.Growth(p); grow > 0 && r.LegA > 0 {
		return f.grownText(p, grow)
	}
	switch {
	case r.Kind == joint.Plug || r.Kind == joint.Slot:
		return f.holeText(p)
	case r.LegA > 0 && r.LegB > 0 && r.LegA != r.LegB:
		return "z ≥ " + f.show.Size(r.LegA).Num + " × " + f.show.Size(r.LegB).String(), f.say("gauge.unequal")
	case r.LegA > 0 && p.Joint.Size.Means == joint.Throat:
		return "a ≥ " + f.show.Size(r.Throat).String(), f.say("gauge.leg", f.show.Size(r.LegA).String())
	case r.LegA > 0:
		return "z ≥ " + f.show.Size(r.LegA).String(), f.say("gauge.throat", f.show.Size(r.Throat).String())
	case p.Joint.Size.Means == joint.Penetration:
		return "s ≥ " + f.show.Size(p.Joint.Size.A).String(), f.capWords(p)
	case r.Kind == joint.Edge && r.Throat > 0:
		return "a ≥ " + f.show.Size(r.Throat).String(), f.say("gauge.edge")
	case r.Kind == joint.FlareBevel || r.Kind == joint.FlareV:
		if low := r.Radius - r.Throat; r.Throat > 0 && low > 0.1 {
			return "R " + f.show.Size(r.Radius).String(), f.say("gauge.flare.low", f.show.Size(low).String())
		}
		return "R " + f.show.Size(r.Radius).String(), f.say("gauge.flare")
	case isButt(p) && r.T1 > 0:
		return "s " + f.show.Size(thinnest(r.T1, r.T2)).String(), f.capWords(p)
	}
	return "–", ""
}

// holeText is the hole that is filled, and how deep.
func (f *flow) holeText(p *plan.Plan) (big, under string) {
	size, upper := p.Joint.Size, p.Prep.T1
	if upper == 0 {
		upper = p.Prep.T2
	}
	if size.A <= 0 || p.Prep.Depth <= 0 {
		return "–", ""
	}
	big = "ø " + f.show.Size(size.A).String()
	if length := cmp.Or(p.Joint.Length, size.B); p.Prep.Kind == joint.Slot && length > 0 {
		big = f.show.Size(size.A).Num + " × " + f.show.Size(length).String()
	}
	if p.Prep.Depth < upper {
		return big, f.say("dim.depth") + " " + f.show.Size(p.Prep.Depth).String()
	}
	return big, f.say("gauge.flare")
}

// capWords say what is gauged on a butt weld beside its depth: how high the cap may
// stand, and on the far side the root.
func (f *flow) capWords(p *plan.Plan) string {
	height := "≈ " + f.show.Size(f.job.Shop.CapOn(thinnest(p.Prep.T1, p.Prep.T2))).String()
	if most, ok := p.Most(plan.CapHeight); ok {
		height = "≤ " + f.show.Limit(most).String()
	}
	key := "gauge.cap"
	if slices.ContainsFunc(p.Runs, func(r plan.Run) bool { return r.Side == 2 }) {
		key = "gauge.caps"
	}
	parts := []string{f.say(key, height)}
	if most, ok := p.Most(plan.RootHeight); ok {
		parts = append(parts, f.say("gauge.root", "≤ "+f.show.Limit(most).String()))
	}
	switch {
	case through(p) && p.Prep.Backing == "bar":
		parts = append(parts, f.say("gauge.backing"))
	case through(p) && p.Prep.Under(): // it comes off, and the root is seen
		parts = append(parts, f.say("gauge.fused"))
	}
	return strings.Join(parts, " · ")
}

// grownText is the gauge size of a fillet over a wide gap: the legs are longer by
// the gap, and what the drawing asks for stands under them.
func (f *flow) grownText(p *plan.Plan, grow units.MM) (big, under string) {
	r := p.Prep
	asked := "z " + f.show.Size(r.LegA).Num
	big = "z ≥ " + f.show.Size(r.LegA+grow).String()
	if r.LegB > 0 && r.LegA != r.LegB {
		asked += " × " + f.show.Size(r.LegB).Num
		big = "z ≥ " + f.show.Size(r.LegA+grow).Num + " × " + f.show.Size(r.LegB+grow).String()
	}
	if p.Joint.Size.Means == joint.Throat {
		asked = "a " + f.show.Size(r.Throat).Num
	}
	return big, f.say("gauge.gap", asked, f.show.Size(grow).String())
}

func thinnest(a, b units.MM) units.MM {
	if a == 0 || b == 0 {
		return max(a, b)
	}
	return min(a, b)
}

// fitUp says what the fitter must find before the first run: how long the seam is, how
// it is prepared and how far the parts stand apart.
func (f *flow) fitUp(s setup.Setup) string {
	p := s.Pattern()
	parts := []string{f.lengths(s)}
	_, bounded := p.Most(plan.FitGap)
	switch k := picture.KindOf(p); {
	case k == joint.Fillet || k == joint.Lap || bounded:
		parts = append(parts, f.filletGap(p))
	case k == joint.FlareBevel || k == joint.FlareV || !isButt(p):
	default:
		parts = append(parts, f.prepParts(p)...)
	}
	return joinParts(parts)
}

// lengths is the length of the seams of a set-up, one side, from the shortest on.
func (f *flow) lengths(s setup.Setup) string {
	low, high := units.MM(0), units.MM(0)
	for _, p := range s.Plans {
		if l := p.Joint.Length; l > 0 {
			if low == 0 || l < low {
				low = l
			}
			high = max(high, l)
		}
	}
	switch from, to := f.show.Length(low), f.show.Length(high); {
	case low == 0:
		return ""
	case from.Num != to.Num:
		return f.say("fit.long", f.say("band", from.Num, to.String()))
	default:
		return f.say("fit.long", to.String())
	}
}

// filletGap is the fit-up gap of a fillet or a lap and the most that its quality
// level bears.
func (f *flow) filletGap(p *plan.Plan) string {
	gap := f.job.Shop.FitGap
	if p.Joint.GapGiven {
		gap = max(p.Joint.Gap, 0)
	}
	text := f.show.Size(gap).String()
	if most, ok := p.Most(plan.FitGap); ok {
		text = f.show.List(text, "≤ "+f.show.Limit(most).String())
	}
	return f.say("fit.gap", text)
}

// prepParts are the preparation of a groove.
func (f *flow) prepParts(p *plan.Plan) []string {
	r := p.Prep
	known := r.T1 > 0 || r.T2 > 0 // without a thickness nothing is taken for what the list leaves open
	var parts []string
	if known || p.Joint.GapGiven {
		parts = append(parts, f.say("fit.gap", f.show.Size(r.Gap).String()))
	}
	if r.Kind != joint.SquareButt && r.Angle > 0 {
		parts = append(parts, f.show.Num(float64(r.Angle), 1)+"°")
	}
	if r.Kind != joint.SquareButt && (known || p.Joint.RootFaceGiven) {
		parts = append(parts, f.say("dim.face")+" "+f.show.Size(r.RootFace).String())
	}
	if r.Backing != "" {
		parts = append(parts, f.say("backing."+r.Backing))
	}
	return parts
}
