package workbook

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// lengthUsed is the length that gives the metres of the plan: the list's own, or
// the way round a section. A slot without a length has it in its size.
func lengthUsed(r *row) units.MM {
	length := r.j.Length
	if r.p.Joint != nil {
		length = r.p.Joint.Length
	}
	if r.p.Prep.Kind == joint.Slot && length <= 0 {
		return r.j.Size.B
	}
	return length
}

// wayAlong is the way that one seam is welded: its length, of a hole the depth filled.
func wayAlong(r *row) (float64, string) {
	if isHole(r.p.Prep.Kind) {
		return float64(r.p.Prep.Depth), "[depth_mm]"
	}
	return float64(lengthUsed(r)), "[length_mm]"
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
	length, _ := wayAlong(r)
	return length / 1000 * seamsOf(r)
}

func seamFormula(r *row) string {
	if r.p.Segments > 0 && r.j.Stitch != nil {
		return "[seams]*[segments]*[stitch_mm]/1000"
	}
	_, text := wayAlong(r)
	return "[seams]*" + text + "/1000"
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
	length, text := wayAlong(r)
	fit := math.Floor((length+gap)/(seg+gap) + 1e-9)
	return choose(float64(r.p.Segments), way{"MAX(INT((" + text + "+[stitch_gap_mm])/([stitch_mm]+[stitch_gap_mm])+0.000000001),0)", fit})
}

// startsFormula counts how often the arc is struck.
func startsFormula(r *row) string {
	if !r.p.Settings {
		return ""
	}
	passes, perM := float64(r.p.Passes()), r.shop().SeamStartsPerM
	if r.p.Segments > 0 {
		return choose(r.p.Starts, way{"[seams]*[segments]*[passes]", seamsOf(r) * float64(r.p.Segments) * passes})
	}
	length, text := wayAlong(r)
	return choose(r.p.Starts, way{"[seams]*MAX(1,{seam_starts_per_m}*" + text + "/1000)*[passes]",
		seamsOf(r) * max(1, perM*length/1000) * passes})
}
