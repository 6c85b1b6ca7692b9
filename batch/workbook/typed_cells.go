package workbook

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/parts"
	"seamtally/batch/units"
)

// typedCell is a yellow cell of ours into which a person may type what a joint, or a
// part, is to be.
type typedCell[T any] struct {
	now, then string   // our column, and the one that keeps what was reckoned with
	keys      []string // the user's columns that say the same
	or        []string // those that say it where the first are blank
	most      float64  // beyond it a unit has slipped
	said      func(*T) (v float64, stated bool)
	take      func(*T, float64) bool // false where there is no such figure, or not of that size

	loose bool // then stands only where now follows no cell of the list's
	alone bool // a formula of ours in now reads one of the keys, and nothing else

	follows string // from what the figure always follows, so that the list has none of its own; "": it may
}

// longestTyped is the longest length, and the largest quantity, that is taken from a cell
// of ours, and largestTyped the largest size.
const (
	longestTyped = 1e6
	largestTyped = 1000
)

var sizeKeys = []string{"size", "leg", "throat"}

// typedJoint are the cells beside a list of joints.
var typedJoint = []typedCell[joint.Joint]{
	{now: "length_mm", then: "planned_length_mm", keys: []string{"length"}, most: longestTyped, loose: true,
		said: stated(func(j *joint.Joint) float64 { return float64(j.Length) }), take: takeLength},
	{now: "qty", then: "planned_qty", keys: []string{"qty"}, most: longestTyped, loose: true,
		said: stated(func(j *joint.Joint) float64 { return float64(j.Qty) }), take: func(j *joint.Joint, v float64) bool { return takeQty(&j.Qty, v) }},
	{now: "sides", then: "planned_sides", keys: []string{"sides"}, most: largestTyped, loose: true,
		said: stated(func(j *joint.Joint) float64 { return float64(j.Sides) }), take: takeSides},
	{now: "leg_a_mm", then: "planned_leg_a_mm", keys: sizeKeys, most: largestTyped, said: stated(legSaid(false)), take: takeLegA},
	{now: "leg_b_mm", then: "planned_leg_b_mm", keys: sizeKeys, most: largestTyped, said: stated(legSaid(true)), take: takeLegB},
	{now: "throat_mm", then: "planned_throat_mm", keys: sizeKeys, most: largestTyped,
		said: stated(func(j *joint.Joint) float64 { return float64(j.Size.A) }), take: takeThroat},
	{now: "t1_mm", then: "planned_t1_mm", keys: []string{"t1"}, most: largestTyped, alone: true,
		said: stated(func(j *joint.Joint) float64 { return float64(j.T1) }), take: func(j *joint.Joint, v float64) bool { j.T1 = units.MM(v); return v > 0 }},
	{now: "t2_mm", then: "planned_t2_mm", keys: []string{"t2"}, most: largestTyped, alone: true,
		said: stated(func(j *joint.Joint) float64 { return float64(j.T2) }), take: func(j *joint.Joint, v float64) bool { j.T2 = units.MM(v); return v > 0 }},
	{now: "gap_mm", then: "planned_gap_mm", keys: []string{"gap"}, most: largestTyped, alone: true,
		said: func(j *joint.Joint) (float64, bool) { return float64(j.Gap), j.GapGiven || j.Gap > 0 },
		take: func(j *joint.Joint, v float64) bool { j.Gap, j.GapGiven = units.MM(v), true; return true }},
	{now: "angle_deg", then: "planned_angle_deg", keys: []string{"angle"}, most: largestTyped, alone: true,
		said: stated(func(j *joint.Joint) float64 { return float64(j.Angle) }), take: takeAngle},
	{now: "root_face_mm", then: "planned_root_face_mm", keys: []string{"root_face"}, most: largestTyped,
		said: func(j *joint.Joint) (float64, bool) { return float64(j.RootFace), j.RootFaceGiven || j.RootFace > 0 },
		take: func(j *joint.Joint, v float64) bool { j.RootFace, j.RootFaceGiven = units.MM(v), true; return true }},
	{now: "depth_mm", then: "planned_depth_mm", keys: []string{"depth"}, most: largestTyped,
		said: stated(func(j *joint.Joint) float64 { return float64(j.Depth) }), take: takeDepth},
	{now: "depth2_mm", then: "planned_depth2_mm", follows: "thickness, depth and root face",
		said: func(*joint.Joint) (float64, bool) { return 0, false }, take: func(*joint.Joint, float64) bool { return false }},
	{now: "radius_mm", then: "planned_radius_mm", keys: []string{"radius"}, most: largestTyped,
		said: stated(func(j *joint.Joint) float64 { return float64(j.Radius) }), take: func(j *joint.Joint, v float64) bool { j.Radius = units.MM(v); return v > 0 }},
}

// typedPart are the cells beside a cut list. The size of a plate may say its length too.
var typedPart = []typedCell[parts.Part]{
	{now: "length_mm", then: "planned_length_mm", keys: []string{"length"}, or: []string{"section"}, most: longestTyped, alone: true,
		said: stated(func(p *parts.Part) float64 { return float64(p.Length) }), take: func(p *parts.Part, v float64) bool { return p.CutTo(units.MM(v)) }},
	{now: "qty", then: "planned_qty", keys: []string{"qty"}, most: longestTyped, alone: true,
		said: stated(func(p *parts.Part) float64 { return float64(p.Qty) }), take: func(p *parts.Part, v float64) bool { return takeQty(&p.Qty, v) }},
}

// stated takes a figure as stated by the list where it is not nought.
func stated[T any](get func(*T) float64) func(*T) (float64, bool) {
	return func(row *T) (float64, bool) { v := get(row); return v, v > 0 }
}

func takeLength(j *joint.Joint, v float64) bool {
	if j.AllRound && j.Length <= 0 || v <= 0 {
		return false // all round, the section says how long
	}
	j.Length = units.MM(v)
	return true
}

func takeQty(qty *int, v float64) bool {
	if v < 1 || v != math.Trunc(v) {
		return false
	}
	*qty = int(v)
	return true
}

func takeSides(j *joint.Joint, v float64) bool {
	if v != 1 && v != 2 {
		return false
	}
	j.Sides = int(v)
	return true
}

// legSaid returns what the list says of a leg; 0 where it states none.
func legSaid(second bool) func(*joint.Joint) float64 {
	return func(j *joint.Joint) float64 {
		switch {
		case j.Size.Means != joint.Leg:
			return 0
		case second && j.Size.B > 0:
			return float64(j.Size.B)
		}
		return float64(j.Size.A)
	}
}

func takeLegA(j *joint.Joint, v float64) bool {
	if v <= 0 || !isFillet(j.Kind) {
		return false
	}
	second := j.Size.B
	if j.Size.Means != joint.Leg {
		second = 0
	}
	j.Size = joint.Size{Means: joint.Leg, A: units.MM(v), B: second, Text: "z" + exact(v)}
	return true
}

func takeLegB(j *joint.Joint, v float64) bool {
	if v <= 0 || !isFillet(j.Kind) || j.Size.Means != joint.Leg || j.Size.A <= 0 {
		return false
	}
	j.Size.B, j.Size.Text = units.MM(v), "z"+exact(float64(j.Size.A))+"x"+exact(v)
	return true
}

// takeThroat takes what stands in the column of throats: for some kinds of joint that
// is the size that is stated, whatever it means.
func takeThroat(j *joint.Joint, v float64) bool {
	if v <= 0 || isFillet(j.Kind) && j.Size.Means != joint.Throat {
		return false
	}
	j.Size.A = units.MM(v)
	if letter := map[joint.SizeKind]string{joint.Throat: "a", joint.Penetration: "s"}[j.Size.Means]; letter != "" {
		j.Size.Text = letter + exact(v)
	}
	return true
}

func takeAngle(j *joint.Joint, v float64) bool {
	j.Angle = units.Degree(v)
	return v > 0 && v < 180
}

// takeDepth leaves a depth alone that follows from a stated penetration.
func takeDepth(j *joint.Joint, v float64) bool {
	if v <= 0 || j.Size.Means == joint.Penetration {
		return false
	}
	j.Depth = units.MM(v)
	return true
}
