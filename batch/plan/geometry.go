package plan

import (
	"fmt"
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// shape is the cross-section of one seam with what the planner needs to know of it.
type shape struct {
	section weld.Section
	family  int
	leg     float64    // of a fillet as drawn: the larger one; 0 for grooves
	depths  [2]float64 // preparation depth of each side of a groove
	shares  [2]float64 // share of the drawn area on each side
}

// assume notes a value that the list did not give.
func (t *task) assume(key, value, why, basis string) {
	t.assumeKin(key, value, why, basis, "")
}

// assumeKin is assume for what is told together with others of the same kin.
func (t *task) assumeKin(key, value, why, basis, kin string) {
	t.assumed = append(t.assumed, joint.Assumption{Key: key, Value: value, Why: why, Basis: basis, Kin: kin})
}

// shapeOf turns the joint's sizes into a cross-section. What it cannot know it
// says in a sentence instead.
func (c *catalog) shapeOf(t *task) (shape, coded) {
	p := &t.prep
	switch p.Kind {
	case joint.Fillet, joint.Lap:
		t.fitGap = float64(c.shop.FitGap)
		if t.j.GapGiven {
			t.fitGap = max(0, float64(t.j.Gap))
		}
		return c.filletShape(t)
	case joint.Corner:
		return c.cornerShape(t)
	case joint.SquareButt, joint.SingleV, joint.SingleBevel, joint.DoubleV, joint.DoubleBevel,
		joint.SingleU, joint.SingleJ, joint.DoubleU, joint.DoubleJ:
		return c.grooveShape(t)
	}
	return c.otherShape(t)
}

// filletShape reads leg or throat; a lap without a size is taken as filled to the
// edge of its upper sheet.
func (c *catalog) filletShape(t *task) (shape, coded) {
	p, size := &t.prep, t.j.Size
	if p.Angle == 0 {
		p.Angle = 90
	}
	switch {
	case size.A > 0 && size.Means == joint.Throat, size.A > 0 && size.Means == joint.Penetration:
		leg, err := weld.LegOfThroat(size.A, p.Angle)
		if err != nil {
			return shape{}, coded{"size-bad", "the throat cannot be turned into a leg: " + err.Error()}
		}
		p.LegA, p.LegB = leg, leg
	case size.A > 0:
		p.LegA, p.LegB = size.A, size.A
		if size.B > 0 {
			p.LegB = size.B
		}
	case p.Kind == joint.Lap && p.T1 > 0:
		p.LegA, p.LegB = p.T1, p.T1
		t.assume("size", mm(p.T1), "blank: a lap is taken as filled to the edge of its upper sheet", "common-practice")
	default:
		return shape{}, coded{"size-blank", "no weld size is given"}
	}
	f := weld.Fillet{LegA: p.LegA, LegB: p.LegB, Angle: p.Angle}
	throat, err := f.Throat()
	if err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	grown := f.Grown(c.allowances(t))
	p.Throat, p.WeldLegA, p.WeldLegB = throat, grown.LegA, grown.LegB
	if p.Kind == joint.Fillet && t.j.Sides == 2 && p.Angle != 90 {
		return t.skewShape(f)
	}
	return shape{section: f, family: fillet, leg: float64(max(p.LegA, p.LegB)), shares: [2]float64{1, 0}}, coded{}
}

// cornerShape fills the corner of two square-cut edges to the leg given, or flush
// with both faces.
func (c *catalog) cornerShape(t *task) (shape, coded) {
	p, size := &t.prep, t.j.Size
	if p.Angle == 0 {
		p.Angle = 90
	}
	switch {
	case size.A > 0 && size.Means == joint.Leg:
		p.LegA, p.LegB = size.A, size.A
		if size.B > 0 {
			p.LegB = size.B
		}
	case size.A > 0:
		leg, err := weld.LegOfThroat(size.A, 180-p.Angle)
		if err != nil {
			return shape{}, coded{"size-bad", "the throat cannot be turned into a leg: " + err.Error()}
		}
		p.LegA, p.LegB = leg, leg
	case t.j.Open == joint.Closed:
		return shape{}, coded{"size-blank", "a closed corner has no groove: the leg or throat of its bead must be given"}
	case t.thinner() > 0:
		t.openCorner()
	default:
		return shape{}, coded{"size-blank", "no weld size and no thickness is given"}
	}
	k := weld.Corner{LegA: p.LegA, LegB: p.LegB, Angle: p.Angle}
	throat, err := weld.Fillet{LegA: k.LegA, LegB: k.LegB, Angle: 180 - k.Angle}.Throat()
	if err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	p.Throat = throat
	p.WeldLegA, p.WeldLegB = p.LegA+c.shop.Overweld, p.LegB+c.shop.Overweld
	return shape{section: k, family: fillet, leg: float64(max(p.LegA, p.LegB)), shares: [2]float64{1, 0}}, coded{}
}

// openCorner takes the legs of an outside corner that is filled flush from the
// thicknesses: in a half-open corner the first edge lies over half of the second.
func (t *task) openCorner() {
	p := &t.prep
	p.LegA, p.LegB = cmpOr(p.T1, p.T2), cmpOr(p.T2, p.T1)
	if t.j.Open == joint.HalfOpen {
		p.LegB /= 2
		t.assume("size", mm(p.LegA)+" x "+mm(p.LegB), "blank: a half-open corner, filled flush: a whole edge and half of the other", "common-practice")
		return
	}
	t.assume("size", mm(p.LegA)+" x "+mm(p.LegB), "blank: an outside corner is taken as open and filled flush", "common-practice")
}

func cmpOr(a, b units.MM) units.MM {
	if a > 0 {
		return a
	}
	return b
}

// doubles are the kinds that are prepared from both sides.
var doubles = map[joint.Kind]bool{joint.DoubleV: true, joint.DoubleBevel: true, joint.DoubleU: true, joint.DoubleJ: true}

// grooveShape takes the preparation from the list, and what is silent there from
// the table of usual preparations.
func (c *catalog) grooveShape(t *task) (shape, coded) {
	thick := t.thinner()
	if thick <= 0 {
		return shape{}, coded{"thickness-blank", "no thickness is given: the area of a groove needs one"}
	}
	c.fillPrep(t, thick)
	if why := t.cannotCut(thick); why != "" {
		return shape{}, coded{"size-bad", why}
	}
	g := t.groove(thick)
	drawn, err := g.Drawn()
	if err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	t.prep.Throat = units.MM(grooveThroat(g))
	if size := t.j.Size; g.Fused > 0 && size.Means == joint.Penetration && size.A > 0 {
		t.prep.Throat = size.A // a preparation deeper than the penetration gives no more
	}
	s := shape{section: g, family: butt, shares: [2]float64{1, 0}, depths: [2]float64{float64(thick), 0}}
	if g.Back.Depth > 0 || g.BackWelded {
		s.shares[0] = frontShare(g, float64(drawn))
		s.shares[1] = 1 - s.shares[0]
		front := float64(thick) * s.shares[0]
		if g.Back.Depth > 0 {
			front = float64(g.Front.Depth) + float64(thick-g.Front.Depth-g.Back.Depth)/2
		}
		s.depths = [2]float64{front, float64(thick) - front}
	}
	return s, coded{}
}

// cannotCut says why the stated root face or depth leaves no groove to cut.
func (t *task) cannotCut(thick units.MM) string {
	p := &t.prep
	switch {
	case p.Kind == joint.SquareButt:
		return ""
	case t.j.RootFaceGiven && p.RootFace >= thick:
		return fmt.Sprintf("a root face of %s leaves no groove in %s", mm(p.RootFace), mm(thick))
	case t.j.Depth > thick:
		return fmt.Sprintf("a preparation %s deep is deeper than the part of %s", mm(t.j.Depth), mm(thick))
	case doubles[p.Kind] && t.j.Depth > 0 && t.j.Depth >= thick-p.RootFace && t.partialDepth(thick) == 0:
		return fmt.Sprintf("a first side %s deep leaves nothing for the second in %s with a root face of %s", mm(t.j.Depth), mm(thick), mm(p.RootFace))
	case doubles[p.Kind] && t.j.Depth > thick/2 && t.partialDepth(thick) > 0:
		return fmt.Sprintf("two preparations %s deep do not fit %s", mm(t.j.Depth), mm(thick))
	}
	return ""
}

// grooveThroat is how deep a groove weld goes.
func grooveThroat(g weld.Groove) float64 {
	if g.Fused > 0 {
		return float64(g.Fused)
	}
	return float64(g.Thickness)
}

// frontShare returns the share of the drawn area that the front side fills. A
// square butt welded from both sides is halved; a single groove keeps its whole
// area in front but for the back run's cap.
func frontShare(g weld.Groove, drawn float64) float64 {
	if g.Back.Depth == 0 {
		if g.Front.Depth == 0 {
			return 0.5
		}
		return 0.85
	}
	filled := g.Thickness
	if g.Fused > 0 {
		filled = max(g.Fused, g.Front.Depth+g.Back.Depth)
	}
	rest := (filled - g.Front.Depth - g.Back.Depth) / 2
	front := weld.Groove{Thickness: g.Front.Depth + rest, Gap: g.Gap, Front: g.Front}
	area, err := front.Drawn()
	if err != nil || drawn <= 0 {
		return 0.5
	}
	return math.Min(0.95, math.Max(0.05, float64(area)/drawn))
}

// prepWith says which of the usual preparations is meant: with a bar, gouged from
// the back, or for a part of the thickness only.
func (t *task) prepWith(thick units.MM) string {
	switch {
	case t.partialDepth(thick) > 0:
		return tables.PrepPartial
	case t.prep.Under():
		return tables.PrepBar
	case t.prep.Backing == "gouge":
		return tables.PrepGouge
	}
	return ""
}

// fillPrep completes angle, gap, root face and radius from the table.
func (c *catalog) fillPrep(t *task, thick units.MM) {
	p := &t.prep
	row, ok := c.set.Prep(string(p.Kind), t.prepWith(thick), t.metal, thick)
	if !ok {
		return
	}
	note := "blank: usual preparation for this thickness"
	if p.Angle == 0 && row.Angle > 0 {
		p.Angle = row.Angle
		t.assumeKin("angle", fmt.Sprintf("%g°", float64(row.Angle)), note, row.Basis, note)
	}
	if !t.j.GapGiven {
		p.Gap = row.Gap
		t.assumeKin("gap", mm(row.Gap), note, row.Basis, note)
	}
	if !t.j.RootFaceGiven && p.Kind != joint.SquareButt && row.With != tables.PrepPartial && (t.j.Depth == 0 || doubles[p.Kind]) {
		p.RootFace = min(row.RootFace, thick/2)
		t.assumeKin("root_face", mm(p.RootFace), note, row.Basis, note)
	}
	if p.Radius == 0 && row.Radius > 0 {
		p.Radius = row.Radius
		t.assumeKin("radius", mm(row.Radius), note, row.Basis, note)
	}
	t.depthShare = row.DepthShare
}

// groove builds the groove of the prep at a thickness.
func (t *task) groove(thick units.MM) weld.Groove {
	p := &t.prep
	face := min(max(p.RootFace, 0), thick)
	var g weld.Groove
	switch p.Kind {
	case joint.SquareButt:
		g = weld.SquareButt(thick, p.Gap)
	case joint.SingleV, joint.DoubleV:
		g = weld.SingleV(thick, p.Gap, face, p.Angle)
	case joint.SingleBevel, joint.DoubleBevel:
		g = weld.SingleBevel(thick, p.Gap, face, p.Angle)
	case joint.SingleU, joint.DoubleU:
		g = weld.SingleU(thick, p.Gap, face, p.Angle, p.Radius)
	default:
		g = weld.SingleJ(thick, p.Gap, face, p.Angle, p.Radius)
	}
	if doubles[p.Kind] {
		g = g.Doubled(t.frontDepthShare(thick - face))
	}
	g = t.partial(g, thick)
	if p.Backing != "" || t.j.Sides == 2 {
		g.OpenRoot, g.FormedRoot = false, t.j.Sides != 2 && p.FormsRoot()
		g.BackWelded = g.BackWelded || g.Back.Depth == 0 && g.Fused == 0 && (p.Backing == "gouge" || t.j.Sides == 2)
	}
	p.Depth, p.Depth2 = g.Front.Depth, g.Back.Depth
	if p.Kind == joint.SquareButt && g.Fused > 0 && !g.BackWelded {
		p.Depth = g.Fused // square edges are not cut, but filled so deep
	}
	return g
}

// frontDepthShare is side 1's share of the prepared depth of a double groove.
func (t *task) frontDepthShare(prepared units.MM) float64 {
	if t.j.Depth > 0 && prepared > 0 {
		return math.Min(1, float64(t.j.Depth/prepared))
	}
	if t.depthShare > 0 {
		return t.depthShare
	}
	return 0.5
}

// partialDepth returns how deep the metal of one side reaches where it does not
// go through the thickness; 0 where it does.
func (t *task) partialDepth(thick units.MM) units.MM {
	depth := units.MM(0)
	if t.j.Size.A > 0 && t.j.Size.Means != joint.Leg {
		depth = t.j.Size.A
	}
	if !doubles[t.prep.Kind] || depth > 0 {
		depth = max(depth, t.j.Depth)
	}
	through := thick
	if doubles[t.prep.Kind] || t.prep.Kind == joint.SquareButt && t.j.Sides == 2 {
		through = thick / 2
	}
	if depth >= through {
		return 0
	}
	return depth
}

// partial cuts a groove to a stated penetration or depth of preparation that does
// not reach through the thickness. Where both are stated the deeper one is filled
// and the edges are prepared to the depth.
func (t *task) partial(g weld.Groove, thick units.MM) weld.Groove {
	depth := t.partialDepth(thick)
	if depth <= 0 {
		return g
	}
	g.BackWelded = t.prep.Kind == joint.SquareButt && t.j.Sides == 2
	prepared := depth
	if t.j.Depth > 0 {
		prepared = min(t.j.Depth, depth)
	}
	if t.prep.Kind != joint.SquareButt {
		t.prep.RootFace = thick - prepared
		if doubles[t.prep.Kind] {
			t.prep.RootFace = thick - 2*prepared
		}
	}
	return g.Partial(prepared).Reaching(depth)
}

// mm writes a length as a person reads it.
func mm(v units.MM) string { return numberWith(float64(v), 2, " mm") }

// allowances are the shop's additions to the drawn section, cap and root as the
// thinner part bears them; a gap that the list gives for a fillet or lap stands in
// place of the shop's.
func (c *catalog) allowances(t *task) weld.Allowances {
	s, thick := c.shop, t.thinner()
	return weld.Allowances{Overweld: s.Overweld, FitGap: units.MM(t.fitGap), Convexity: s.Convexity,
		CapHeight: s.CapOn(thick), RootHeight: s.RootUnder(thick)}
}
