package workbook

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// source says what the depth of a groove follows from.
type source int

const (
	fromRootFace source = iota // what the root face leaves
	fromThroat                 // the penetration that the list asks for
	fromDepth                  // the depth that the list states
)

func depthSource(r *row) source {
	p, size := r.p.Prep, r.j.Size
	switch {
	case isHole(p.Kind) || r.j.Depth > 0 && agree(float64(p.Depth), float64(r.j.Depth)):
		return fromDepth
	case size.A > 0 && size.Means != joint.Leg && agree(float64(p.Depth), float64(size.A)) &&
		(p.Kind == joint.SquareButt || partial(r)):
		return fromThroat
	}
	return fromRootFace
}

// partial tells whether a groove is filled for a part of the thickness only.
func partial(r *row) bool {
	return isGroove(r.p.Prep.Kind) && float64(r.p.Prep.Throat) < thinOf(r)*(1-1e-9)
}

// depthFormula gives the depth of preparation of the first side, of a hole the
// depth that is filled.
func depthFormula(r *row) string {
	p := r.p.Prep
	switch depthSource(r) {
	case fromThroat:
		return "[throat_mm]"
	case fromDepth:
		if isHole(p.Kind) && r.j.Depth <= 0 {
			return choose(float64(p.Depth), way{"[t1_mm]", float64(p.T1)}, way{"[t2_mm]", float64(p.T2)})
		}
		return r.link("depth", float64(p.Depth))
	}
	rest := thinOf(r) - float64(p.RootFace)
	return choose(float64(p.Depth),
		way{thinText(r) + "-[root_face_mm]", rest},
		way{"(" + thinText(r) + "-[root_face_mm])/2", rest * 0.5},
		way{"(" + thinText(r) + "-[root_face_mm])*2/3", rest * 2 / 3})
}

func depthFormula2(r *row) string {
	p := r.p.Prep
	if p.Depth2 == 0 {
		return ""
	}
	if partial(r) && depthSource(r) != fromRootFace {
		return choose(float64(p.Depth2), way{"[depth_mm]", float64(p.Depth)})
	}
	return choose(float64(p.Depth2),
		way{thinText(r) + "-[root_face_mm]-[depth_mm]", thinOf(r) - float64(p.RootFace) - float64(p.Depth)})
}

// rootFaceFormula reads the root face from the user's cell, or takes what a stated
// depth leaves.
func rootFaceFormula(r *row) string {
	p := r.p.Prep
	if p.Kind == joint.SquareButt || depthSource(r) == fromRootFace || p.Depth2 > 0 && !partial(r) {
		return r.link("root_face", float64(p.RootFace))
	}
	if p.Depth2 > 0 {
		return choose(float64(p.RootFace), way{thinText(r) + "-2*[depth_mm]", thinOf(r) - 2*float64(p.Depth)})
	}
	return choose(float64(p.RootFace), way{thinText(r) + "-[depth_mm]", thinOf(r) - float64(p.Depth)})
}

// edges are the bevelled edges of a groove: a V has two, a bevel one.
type edges struct {
	n         float64
	bevel     units.Degree // of one edge, from the square cut
	bevelText string
}

func grooveEdges(r *row) edges {
	p := r.p.Prep
	switch p.Kind {
	case joint.SingleV, joint.DoubleV, joint.SingleU, joint.DoubleU:
		return edges{2, p.Angle / 2, "[angle_deg]/2"}
	case joint.SingleBevel, joint.DoubleBevel, joint.SingleJ, joint.DoubleJ:
		return edges{1, p.Angle, "[angle_deg]"}
	}
	return edges{}
}

// times writes a term once for every edge of a side.
func (e edges) times(text string) string {
	if e.n == 2 {
		return "2*" + text
	}
	return text
}

// arcOf is the angle of the arc at the root of a U or J, in degrees: cut off where
// the groove is shallower than the arc is high.
func arcOf(r *row, depth units.MM) (float64, bool) {
	p := r.p.Prep
	if !hasArc(r) || depth <= 0 {
		return 0, false
	}
	c := math.Max(1-float64(depth/p.Radius), sin(grooveEdges(r).bevel))
	return math.Acos(c) * 180 / math.Pi, true
}

// hasArc tells whether the edges of a groove are round at the root.
func hasArc(r *row) bool {
	return isGroove(r.p.Prep.Kind) && r.p.Prep.Radius > 0 && grooveEdges(r).n > 0
}

func arcFormula(depth string) func(*row) string {
	return func(r *row) string {
		return "DEGREES(ACOS(MAX(1-[" + depth + "]/[radius_mm],SIN(RADIANS(" + grooveEdges(r).bevelText + ")))))"
	}
}

// side is one prepared side of a groove: the area between the square cut and its
// edges, and how far they have opened at the surface.
type side struct{ area, top way }

// sideOf measures the edges of one side, all together.
func sideOf(r *row, depth units.MM, depthKey, arcKey string) side {
	e := grooveEdges(r)
	if depth <= 0 || e.n == 0 {
		return side{}
	}
	d, bevel := float64(depth), tan(e.bevel)
	depthText, bevelText := "["+depthKey+"]", "TAN(RADIANS("+e.bevelText+"))"
	if !hasArc(r) {
		half := way{"+" + depthText + "^2*" + bevelText, d * d * bevel}
		if e.n == 1 {
			half = way{half.template + "/2", half.value / 2}
		}
		return side{half, way{"+" + e.times(depthText+"*"+bevelText), e.n * d * bevel}}
	}
	radius := float64(r.p.Prep.Radius)
	arc, _ := arcOf(r, depth)
	phi := arc * math.Pi / 180
	h := math.Max(d-radius*(1-math.Cos(phi)), 0)
	angle := "RADIANS([" + arcKey + "])"
	high := "MAX(" + depthText + "-[radius_mm]*(1-COS(" + angle + ")),0)"
	area := radius*radius*(phi-math.Sin(phi)*math.Cos(phi)) + 2*radius*math.Sin(phi)*h + h*h*bevel
	areaText := "+([radius_mm]^2*(" + angle + "-SIN(" + angle + ")*COS(" + angle + "))+2*[radius_mm]*SIN(" + angle + ")*" + high + "+" + high + "^2*" + bevelText + ")"
	if e.n == 1 {
		area, areaText = area/2, areaText+"/2"
	}
	return side{way{areaText, area},
		way{"+" + e.times("([radius_mm]*SIN("+angle+")+"+high+"*"+bevelText+")"), e.n * (radius*math.Sin(phi) + h*bevel)}}
}

func frontOf(r *row) side { return sideOf(r, r.p.Prep.Depth, "depth_mm", "arc_deg") }
func backOf(r *row) side  { return sideOf(r, r.p.Prep.Depth2, "depth2_mm", "arc2_deg") }

// grooveDrawn is the gap, as high as it is filled, and what the edges open.
func grooveDrawn(r *row) string {
	p := r.p.Prep
	front, back := frontOf(r).area, backOf(r).area
	flanks := way{front.template + back.template, front.value + back.value}
	gap, throat := float64(p.Gap), float64(r.j.Size.A)
	filled := func(text string, high float64) way {
		return way{"[gap_mm]*" + text + flanks.template, gap*high + flanks.value}
	}
	whole := filled(thinText(r), thinOf(r))
	ways := []way{filled("([depth_mm]+[depth2_mm])", float64(p.Depth+p.Depth2))}
	if throat > 0 {
		ways = append(ways, filled("[throat_mm]", throat), filled("MIN(2*[throat_mm],"+thinText(r)+")", math.Min(2*throat, thinOf(r))))
	}
	if !partial(r) {
		ways = append([]way{whole}, ways...)
	}
	return choose(float64(r.p.AreaDrawn), append(ways, whole)...)
}

// grooveMade adds a cap on each welded face, and the root that hangs through where
// nothing holds it.
func grooveMade(r *row) string {
	p, high, below := r.p.Prep, capHigh(r), rootHigh(r)
	drawn, gap := float64(r.p.AreaDrawn), float64(p.Gap)
	capped := func(top way) way {
		return way{"+2/3*([gap_mm]" + top.template + "+2)*" + high.template, 2.0 / 3 * (gap + top.value + 2) * high.value}
	}
	front, back := capped(frontOf(r).top), capped(backOf(r).top)
	root := way{"+2/3*([gap_mm]+2)*" + below.template, 2.0 / 3 * (gap + 2) * below.value}
	ways := []way{
		{"[area_drawn_mm2]" + front.template, drawn + front.value},
		{"[area_drawn_mm2]" + front.template + back.template, drawn + front.value + back.value},
		{"[area_drawn_mm2]" + front.template + root.template, drawn + front.value + root.value},
	}
	first := 0
	switch secondSide := r.j.Sides == 2; {
	case p.Depth2 > 0, secondSide && p.Kind == joint.SquareButt, (secondSide || p.Backing == "gouge") && !partial(r):
		first = 1
	case (p.Backing == "" || p.FormsRoot()) && !secondSide && !partial(r):
		first = 2
	}
	return choose(areaCalled(r), append([]way{ways[first]}, ways...)...)
}
