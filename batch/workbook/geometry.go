package workbook

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

func round6(v float64) float64 { return math.Round(v*1e6) / 1e6 }

func isGroove(k joint.Kind) bool {
	switch k {
	case joint.SquareButt, joint.SingleV, joint.SingleBevel, joint.DoubleV, joint.DoubleBevel,
		joint.SingleU, joint.SingleJ, joint.DoubleU, joint.DoubleJ:
		return true
	}
	return false
}

func isFillet(k joint.Kind) bool {
	return k == joint.Fillet || k == joint.Lap || k == joint.Corner || k == joint.NoKind
}

func isHole(k joint.Kind) bool { return k == joint.Plug || k == joint.Slot }

func isFlare(k joint.Kind) bool { return k == joint.FlareBevel || k == joint.FlareV }

// angleOf is the angle that the area was worked out with.
func angleOf(r *row) units.Degree {
	if r.p.Prep.Angle == 0 && isFillet(r.p.Prep.Kind) && r.p.Prep.LegA > 0 {
		return 90
	}
	return r.p.Prep.Angle
}

func sin(d units.Degree) float64 { return math.Sin(float64(d) * math.Pi / 180) }
func cos(d units.Degree) float64 { return math.Cos(float64(d) * math.Pi / 180) }
func tan(d units.Degree) float64 { return math.Tan(float64(d) * math.Pi / 180) }

// way is one way of writing a quantity as a formula, with the same in Go: the
// formula is used only where both give the plan's own figure.
type way struct {
	template string
	value    float64
}

// choose returns the first formula that gives the figure; none where no formula
// does, and then the cell holds the figure alone.
func choose(want float64, ways ...way) string {
	for _, w := range ways {
		if w.template != "" && agree(w.value, want) {
			return w.template
		}
	}
	return ""
}

// linkAny reads a value from the first of the user's columns that holds it.
func linkAny(r *row, value float64, keys ...string) string {
	for _, key := range keys {
		if link := r.link(key, value); link != "" {
			return link
		}
	}
	return ""
}

// legFormula reads a leg from the user's cell, from the throat, or, where the list
// gives no size, from the edge that is filled.
func legFormula(r *row) string {
	p, size := r.p.Prep, r.j.Size
	leg := float64(p.LegA)
	switch {
	case leg <= 0:
		return ""
	case size.A <= 0:
		return choose(leg, way{"[t1_mm]", float64(p.T1)}, way{"[t2_mm]", float64(p.T2)})
	case !statesThroat(r):
		return linkAny(r, leg, "leg", "size")
	}
	return choose(leg, way{"[throat_mm]/COS(RADIANS(" + betweenText(r) + ")/2)", float64(size.A) / cos(between(r)/2)})
}

// between is the angle between the edges that a fillet or corner fills.
func between(r *row) units.Degree {
	if r.p.Prep.Kind == joint.Corner {
		return 180 - angleOf(r)
	}
	return angleOf(r)
}

func betweenText(r *row) string {
	if r.p.Prep.Kind == joint.Corner {
		return "180-[angle_deg]"
	}
	return "[angle_deg]"
}

// legBFormula follows leg A where both are the same, or the other edge that is
// filled.
func legBFormula(r *row) string {
	p := r.p.Prep
	if p.LegA <= 0 {
		return ""
	}
	if r.j.Size.A <= 0 && p.Kind == joint.Corner {
		t2, half := float64(p.T2), float64(p.T2/2)
		return choose(float64(p.LegB), way{"[t2_mm]", t2}, way{"[t2_mm]/2", half}, way{"[t1_mm]", float64(p.T1)}, way{"[t1_mm]/2", float64(p.T1 / 2)})
	}
	return choose(float64(p.LegB), way{"[leg_a_mm]", float64(p.LegA)})
}

// thinOf is the thinner part, whose thickness a groove is made in.
func thinOf(r *row) float64 {
	a, b := float64(r.p.Prep.T1), float64(r.p.Prep.T2)
	if a <= 0 || b > 0 && b < a {
		return b
	}
	return a
}

func thinText(r *row) string {
	switch {
	case r.p.Prep.T2 <= 0:
		return "[t1_mm]"
	case r.p.Prep.T1 <= 0:
		return "[t2_mm]"
	}
	return "MIN([t1_mm],[t2_mm])"
}

// capHigh and rootHigh are how high the cap and the root stand on the row's
// thickness: the shop's heights, as far as the thinner part bears them.
func capHigh(r *row) way {
	return borne(r, "{cap_height_mm}", "{cap_share}", float64(r.shop().CapOn(units.MM(thinOf(r)))))
}

func rootHigh(r *row) way {
	return borne(r, "{root_height_mm}", "{root_share}", float64(r.shop().RootUnder(units.MM(thinOf(r)))))
}

func borne(r *row, height, share string, high float64) way {
	if thinOf(r) <= 0 {
		return way{height, high}
	}
	return way{"MIN(" + height + "," + share + "*" + thinText(r) + ")", high}
}

// grownFormula gives a leg as it is made, with the shop's allowances. A corner has
// no gap to bridge; a gap that the list gives stands in place of the shop's.
func grownFormula(leg string, legs func(*row) (drawn, made units.MM)) func(*row) string {
	return func(r *row) string {
		drawn, made := legs(r)
		s := r.shop()
		over := float64(drawn + s.Overweld)
		plain := way{"[" + leg + "]+{overweld_mm}", over}
		switch {
		case r.p.Prep.Kind == joint.Corner:
			return choose(float64(made), plain)
		case r.j.GapGiven:
			return choose(float64(made), way{"[" + leg + "]+{overweld_mm}+[gap_mm]", over + float64(r.p.Prep.Gap)}, plain)
		}
		return choose(float64(made), way{"[" + leg + "]+{overweld_mm}+{gap_mm}", over + float64(s.FitGap)}, plain)
	}
}

// drawnFormula gives the area of one seam as drawn (AREA-1, 7, 9, 11, 13 to 16).
func drawnFormula(r *row) string {
	k := r.p.Prep.Kind
	switch {
	case isFillet(k):
		return filletDrawn(r)
	case isGroove(k):
		return grooveDrawn(r)
	}
	return otherDrawn(r)
}

// madeFormula gives the area of one seam with the shop's allowances (AREA-6, 8, 10,
// 12 to 15, 17).
func madeFormula(r *row) string {
	text := calledFormula(r)
	if text == "" || r.p.AreaCalled <= 0 {
		return text
	}
	return "MAX(" + text + "," + exact(float64(r.p.Area)) + ")" // the wire lays no smaller bead
}

// areaCalled is the area with allowances before the wire makes it larger.
func areaCalled(r *row) float64 {
	if r.p.AreaCalled > 0 {
		return float64(r.p.AreaCalled)
	}
	return float64(r.p.Area)
}

func calledFormula(r *row) string {
	k := r.p.Prep.Kind
	switch {
	case isFillet(k):
		return filletMade(r)
	case isGroove(k):
		return grooveMade(r)
	}
	return otherMade(r)
}

// filletDrawn is the triangle of the legs. Both sides of a leaning part that are
// asked for by their throat have other legs in the acute than in the obtuse corner.
func filletDrawn(r *row) string {
	p := r.p.Prep
	throat := float64(r.j.Size.A)
	// The sine of an outside corner is that of the angle between its edges too.
	return choose(float64(r.p.AreaDrawn),
		way{"[leg_a_mm]*[leg_b_mm]*SIN(RADIANS([angle_deg]))/2", float64(p.LegA) * float64(p.LegB) * sin(angleOf(r)) / 2},
		way{"[throat_mm]^2/SIN(RADIANS([angle_deg]))", ratio(throat*throat, sin(angleOf(r)))})
}

// filletMade is the triangle of the legs as made and the cap on its face. On both
// sides of a leaning part the caps lie across the acute and the obtuse corner.
func filletMade(r *row) string {
	p, c := r.p.Prep, r.shop().Convexity
	a, b := float64(p.WeldLegA), float64(p.WeldLegB)
	triangle, turn := a*b*sin(angleOf(r))/2, 2*a*b*cos(angleOf(r))
	const cap = "+2/3*{convexity}*([made_a_mm]^2+[made_b_mm]^2"
	const text = "[made_a_mm]*[made_b_mm]*SIN(RADIANS([angle_deg]))/2" + cap
	const turnText = "2*[made_a_mm]*[made_b_mm]*COS(RADIANS([angle_deg])))"
	inside := way{text + "-" + turnText, triangle + 2.0/3*c*(a*a+b*b-turn)}
	outside := way{text + "+" + turnText, triangle + 2.0/3*c*(a*a+b*b+turn)}
	if p.Kind == joint.Corner {
		inside, outside = outside, inside
	}
	both := way{text + ")", triangle + 2.0/3*c*(a*a+b*b)}
	if p.Kind == joint.Fillet && r.j.Sides == 2 && angleOf(r) != 90 {
		return choose(areaCalled(r), both, leaningMade(r))
	}
	return choose(areaCalled(r), inside, outside)
}

// leaningMade is the mean of both sides of a leaning part whose legs follow from
// one throat.
func leaningMade(r *row) way {
	p := r.p.Prep
	s, half := sin(angleOf(r)), sin(angleOf(r)/2)
	a := float64(p.WeldLegA)
	b := ratio(float64(r.j.Size.A), half) + a - float64(p.LegA)
	face := 2.0 / 3 * r.shop().Convexity
	const other = "([throat_mm]/SIN(RADIANS([angle_deg])/2)+[made_a_mm]-[leg_a_mm])"
	const angle = "RADIANS([angle_deg])"
	return way{"(SIN(" + angle + ")/4+2/3*{convexity}*(1-COS(" + angle + ")))*[made_a_mm]^2+(SIN(" + angle + ")/4+2/3*{convexity}*(1+COS(" + angle + ")))*" + other + "^2",
		(s/4+face*(1-cos(angleOf(r))))*a*a + (s/4+face*(1+cos(angleOf(r))))*b*b}
}
