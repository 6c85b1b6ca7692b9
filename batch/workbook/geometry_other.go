package workbook

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// throatUsed is the figure behind an area that is neither a leg nor a depth: a
// throat or a penetration that the list states, the bead of an edge, the throat or,
// where the list calls it a leg, the fill of a flare, the width of a hole.
func throatUsed(r *row) units.MM {
	k, size := r.p.Prep.Kind, r.j.Size
	switch {
	case isFlare(k) && size.A <= 0:
		return units.MM(r.p.Prep.ThroatShare) * r.p.Prep.Radius
	case k == joint.Edge && size.A <= 0:
		return r.p.Prep.Throat
	case k == joint.Edge, isFlare(k):
		return size.A
	case isHole(k):
		return size.A
	case statesThroat(r):
		return size.A
	}
	return 0
}

// statesThroat tells whether the size of a fillet or groove is a throat or a
// penetration: a bare number is a leg in a fillet only.
func statesThroat(r *row) bool {
	size, k := r.j.Size, r.p.Prep.Kind
	if size.A <= 0 || size.Means == joint.Leg {
		return false
	}
	return size.Means != joint.NoSize || isGroove(k) || k == joint.Corner
}

func throatFormula(r *row) string {
	v := float64(throatUsed(r))
	if v <= 0 {
		return ""
	}
	if r.j.Size.A > 0 {
		return linkAny(r, v, "throat", "size")
	}
	if isFlare(r.p.Prep.Kind) {
		return choose(v, way{"[radius_mm]*" + exact(r.p.Prep.ThroatShare), float64(r.p.Prep.Radius) * r.p.Prep.ThroatShare})
	}
	return choose(v, way{thinText(r), thinOf(r)})
}

// radiusUsed is the radius of a rounded root or of the round edge of a flare.
func radiusUsed(r *row) units.MM {
	if hasArc(r) || isFlare(r.p.Prep.Kind) {
		return r.p.Prep.Radius
	}
	return 0
}

// radiusFormula reads the radius from the user's cell, or takes the multiple of
// the wall that a hollow section is bent with.
func radiusFormula(r *row) string {
	p := r.p.Prep
	v := float64(p.Radius)
	if r.j.Radius > 0 || !isFlare(p.Kind) {
		return r.link("radius", v)
	}
	wall, text := float64(p.T1), "[t1_mm]"
	if wall <= 0 {
		wall, text = float64(p.T2), "[t2_mm]"
	}
	times := round6(ratio(v, wall))
	if times*10 != math.Round(times*10) {
		return "" // half of a round section, not a multiple of its wall
	}
	return choose(v, way{text + "*" + exact(times), wall * times})
}

// otherDrawn gives the area of what is neither fillet nor groove (AREA-11, 13 to 15).
func otherDrawn(r *row) string {
	p, want := r.p.Prep, float64(r.p.AreaDrawn)
	w := float64(r.j.Size.A)
	switch p.Kind {
	case joint.Edge:
		t1, t2, text := float64(p.T1), float64(p.T2), "([t1_mm]+[t2_mm])"
		switch {
		case t1 <= 0:
			t1, text = t2, "2*[t2_mm]"
		case t2 <= 0:
			t2, text = t1, "2*[t1_mm]"
		}
		return choose(want, way{"2/3*" + text + "*[throat_mm]", 2.0 / 3 * (t1 + t2) * float64(throatUsed(r))})
	case joint.Plug:
		return choose(want, way{"PI()*[throat_mm]^2/4", math.Pi * w * w / 4})
	case joint.Slot:
		return choose(want, way{"[throat_mm]*([length_mm]-[throat_mm])+PI()*[throat_mm]^2/4", w*(float64(lengthUsed(r))-w) + math.Pi*w*w/4})
	case joint.FlareBevel, joint.FlareV:
		return flareDrawn(r)
	}
	return ""
}

// flareFill is how deep a flare is filled for its throat, never deeper than its radius
// (AREA-18), and half of the chord at it.
func flareFill(r *row) (h float64, fill, chord string) {
	radius, share := float64(r.p.Prep.Radius), r.p.Prep.ThroatShare
	h, fill = math.Min(float64(throatUsed(r)), radius), "MIN([throat_mm],[radius_mm])"
	if share > 0 {
		h, fill = math.Min(radius, radius-(share*radius-float64(throatUsed(r)))), "MIN([radius_mm],[radius_mm]*"+exact(1-share)+"+[throat_mm])"
	}
	return h, fill, "SQRT([radius_mm]^2-" + fill + "^2)"
}

func flareEdges(r *row) (float64, string) {
	if r.p.Prep.Kind == joint.FlareV {
		return 2, "2*"
	}
	return 1, ""
}

// flareDrawn is what lies beside one or two round edges, and the gap (AREA-11).
func flareDrawn(r *row) string {
	radius, gap := float64(r.p.Prep.Radius), float64(r.p.Prep.Gap)
	if radius <= 0 {
		return ""
	}
	h, fill, chord := flareFill(r)
	n, times := flareEdges(r)
	one := radius*h - h*math.Sqrt(radius*radius-h*h)/2 - radius*radius*math.Asin(h/radius)/2
	text := times + "([radius_mm]*" + fill + "-" + fill + "*" + chord + "/2-[radius_mm]^2*ASIN(" + fill + "/[radius_mm])/2)"
	if !r.hasGap() {
		return choose(float64(r.p.AreaDrawn), way{text, n * one})
	}
	return choose(float64(r.p.AreaDrawn), way{text + "+[gap_mm]*" + fill, n*one + gap*h})
}

// hasGap tells whether the row has a gap that can be changed.
func (r *row) hasGap() bool { return r.p.Prep.Gap > 0 || r.j.GapGiven }

// otherMade adds the cap of a flare (AREA-12); edges and holes get no allowance.
func otherMade(r *row) string {
	drawn := float64(r.p.AreaDrawn)
	if !isFlare(r.p.Prep.Kind) {
		return choose(areaCalled(r), way{"[area_drawn_mm2]", drawn})
	}
	radius := float64(r.p.Prep.Radius)
	h, _, chord := flareFill(r)
	n, times := flareEdges(r)
	mouth := float64(max(0, r.p.Prep.Gap)) + n*(radius-math.Sqrt(radius*radius-h*h))
	gap := ""
	if r.hasGap() {
		gap = "[gap_mm]+"
	}
	high := capHigh(r)
	return choose(areaCalled(r), way{"[area_drawn_mm2]+2/3*(" + gap + times + "([radius_mm]-" + chord + ")+2)*" + high.template,
		drawn + 2.0/3*(mouth+2)*high.value})
}
