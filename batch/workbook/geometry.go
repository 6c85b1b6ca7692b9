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

// legFormula reads a leg from the user's cell: as it stands, or from a throat.
func legFormula(r *row) string {
	leg := float64(r.p.Prep.LegA)
	for _, key := range []string{"leg", "size"} {
		if link := r.link(key, leg); link != "" {
			return link
		}
	}
	half := math.Cos(float64(angleOf(r)) / 2 * math.Pi / 180)
	for _, key := range []string{"throat", "size"} {
		if link := r.link(key, float64(r.j.Size.A)); link != "" && r.j.Size.Means == joint.Throat {
			return choose(leg, way{link + "/COS(RADIANS([angle_deg])/2)", float64(r.j.Size.A) / half})
		}
	}
	return ""
}

// legBFormula follows leg A where both are the same.
func legBFormula(r *row) string {
	if r.p.Prep.LegA > 0 && r.p.Prep.LegA == r.p.Prep.LegB {
		return "[leg_a_mm]"
	}
	return ""
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

func depthFormula(r *row) string {
	p := r.p.Prep
	rest := thinOf(r) - float64(p.RootFace)
	return choose(float64(p.Depth),
		way{thinText(r) + "-[root_face_mm]", rest},
		way{"(" + thinText(r) + "-[root_face_mm])/2", rest * 0.5})
}

func depthFormula2(r *row) string {
	p := r.p.Prep
	if p.Depth2 == 0 {
		return ""
	}
	return choose(float64(p.Depth2),
		way{thinText(r) + "-[root_face_mm]-[depth_mm]", thinOf(r) - float64(p.RootFace) - float64(p.Depth)})
}

// seamsOf is the number of separate seams: a fillet welded from two sides is two
// of them, a groove is one whatever its sides.
func seamsOf(r *row) float64 {
	if r.j.Sides == 2 && isFillet(r.p.Prep.Kind) {
		return 2 * float64(max(r.j.Qty, 1))
	}
	return float64(max(r.j.Qty, 1))
}

func seamsFormula(r *row) string {
	if isFillet(r.p.Prep.Kind) {
		return choose(seamsOf(r), way{"[qty]*[sides]", float64(r.j.Qty * r.j.Sides)})
	}
	return choose(seamsOf(r), way{"[qty]", float64(r.j.Qty)})
}

// seamRaw is the metres welded before they are rounded.
func seamRaw(r *row) float64 {
	if r.p.Segments > 0 && r.j.Stitch != nil {
		return float64(r.p.Segments) * float64(r.j.Stitch.Segment) / 1000 * seamsOf(r)
	}
	return float64(lengthUsed(r)) / 1000 * seamsOf(r)
}

// stitchGap is the clear distance between stitches, stated or from the pitch.
func stitchGap(r *row) float64 {
	s := r.j.Stitch
	if s.Gap <= 0 && s.Pitch > s.Segment {
		return float64(s.Pitch - s.Segment)
	}
	return float64(s.Gap)
}

// segmentsFormula counts the stitches that fit, where the note states no number.
func segmentsFormula(r *row) string {
	if r.j.Stitch == nil || r.j.Stitch.Count > 0 || r.p.Segments == 0 {
		return ""
	}
	seg, gap := float64(r.j.Stitch.Segment), stitchGap(r)
	fit := math.Floor((float64(lengthUsed(r))+gap)/(seg+gap) + 1e-9)
	return choose(float64(r.p.Segments), way{"MAX(INT(([length_mm]+[stitch_gap_mm])/([stitch_mm]+[stitch_gap_mm])+0.000000001),0)", fit})
}

func seamFormula(r *row) string {
	if r.p.Segments > 0 && r.j.Stitch != nil {
		return "[seams]*[segments]*[stitch_mm]/1000"
	}
	return "[seams]*[length_mm]/1000"
}

// grownFormula gives a leg as it is made, with the shop's allowances.
func grownFormula(leg string, legs func(*row) (drawn, made units.MM)) func(*row) string {
	return func(r *row) string {
		drawn, made := legs(r)
		s := r.shop()
		over, fit := float64(drawn+s.Overweld), float64(s.FitGap)
		return choose(float64(made),
			way{"[" + leg + "]+{overweld_mm}+{gap_mm}", over + fit},
			way{"[" + leg + "]+{overweld_mm}", over},
			way{"[" + leg + "]+{overweld_mm}+[gap_mm]", over + float64(r.p.Prep.Gap)})
	}
}

// drawnFormula gives the area of one seam as drawn (AREA-1, AREA-7, AREA-9).
func drawnFormula(r *row) string {
	want := float64(r.p.AreaDrawn)
	p := r.p.Prep
	if isFillet(p.Kind) {
		// The sine of an outside corner is that of the angle between its edges too.
		return choose(want, way{"[leg_a_mm]*[leg_b_mm]*SIN(RADIANS([angle_deg]))/2",
			float64(p.LegA) * float64(p.LegB) * sin(angleOf(r)) / 2})
	}
	edges, bevel, ok := grooveEdges(r)
	if !ok {
		return ""
	}
	flanks := edges.area * (float64(p.Depth)*float64(p.Depth) + float64(p.Depth2)*float64(p.Depth2)) * bevel
	gap := float64(p.Gap)
	t := edges.areaText
	return choose(want,
		way{"[gap_mm]*" + thinText(r) + t, gap*thinOf(r) + flanks},
		way{"[gap_mm]*([depth_mm]+[depth2_mm])" + t, gap*float64(p.Depth+p.Depth2) + flanks},
		way{"[gap_mm]*" + exact(float64(r.j.Size.A)) + t, gap*float64(r.j.Size.A) + flanks})
}

// edges are the bevelled edges of a groove: a V has two, a bevel one.
type edges struct {
	area, mouth         float64
	areaText, mouthText string // of the flanks; %s stands for a depth
}

func grooveEdges(r *row) (edges, float64, bool) {
	p := r.p.Prep
	if p.Radius > 0 {
		return edges{}, 0, false
	}
	const squares = "([depth_mm]^2+[depth2_mm]^2)*TAN(RADIANS([angle_deg]"
	switch p.Kind {
	case joint.SquareButt:
		return edges{}, 0, true
	case joint.SingleV, joint.DoubleV:
		return edges{1, 2, "+" + squares + "/2))", "*2*TAN(RADIANS([angle_deg]/2))"}, tan(p.Angle / 2), true
	case joint.SingleBevel, joint.DoubleBevel:
		return edges{0.5, 1, "+" + squares + "))/2", "*TAN(RADIANS([angle_deg]))"}, tan(p.Angle), true
	}
	return edges{}, 0, false
}

// madeFormula gives the area of one seam with the shop's allowances (AREA-6,
// AREA-8, AREA-10).
func madeFormula(r *row) string {
	want := float64(r.p.Area)
	p := r.p.Prep
	s := r.shop()
	if isFillet(p.Kind) {
		a, b := float64(p.WeldLegA), float64(p.WeldLegB)
		area, turn := a*b*sin(angleOf(r))/2, 2*a*b*cos(angleOf(r))
		const text = "[made_a_mm]*[made_b_mm]*SIN(RADIANS([angle_deg]))/2+2/3*{convexity}*([made_a_mm]^2+[made_b_mm]^2"
		const turnText = "2*[made_a_mm]*[made_b_mm]*COS(RADIANS([angle_deg])))"
		return choose(want,
			way{text + "-" + turnText, area + 2.0/3*s.Convexity*(a*a+b*b-turn)},
			way{text + "+" + turnText, area + 2.0/3*s.Convexity*(a*a+b*b+turn)})
	}
	e, bevel, ok := grooveEdges(r)
	if !ok {
		return ""
	}
	drawn, gap := float64(r.p.AreaDrawn), float64(p.Gap)
	front := 2.0 / 3 * (gap + e.mouth*float64(p.Depth)*bevel + 2) * float64(s.CapHeight)
	back := 2.0 / 3 * (gap + e.mouth*float64(p.Depth2)*bevel + 2) * float64(s.CapHeight)
	root := 2.0 / 3 * (gap + 2) * float64(s.RootHeight)
	frontText := "[area_drawn_mm2]+2/3*([gap_mm]" + mouthText(e, "[depth_mm]") + "+2)*{cap_height_mm}"
	backText := "+2/3*([gap_mm]" + mouthText(e, "[depth2_mm]") + "+2)*{cap_height_mm}"
	return choose(want,
		way{frontText + "+2/3*([gap_mm]+2)*{root_height_mm}", drawn + front + root},
		way{frontText + backText, drawn + front + back},
		way{frontText, drawn + front})
}

func mouthText(e edges, depth string) string {
	if e.mouthText == "" {
		return ""
	}
	return "+" + depth + e.mouthText
}
