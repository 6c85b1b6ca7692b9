package compare

import (
	"math"
	"strconv"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// fields are what a list says of a joint, in the order of its columns, in words:
// lengths in millimetres however they were written, so that 1/4" and 6.35 mm are
// the same.
var fields = []struct {
	key  string
	text func(*joint.Joint) string
}{
	{"assembly", func(j *joint.Joint) string { return j.Assembly }},
	{"drawing", func(j *joint.Joint) string { return j.Drawing }},
	{"rev", func(j *joint.Joint) string { return j.Rev }},
	{"qty", func(j *joint.Joint) string { return strconv.Itoa(j.Qty) }},
	{"kind", func(j *joint.Joint) string { return string(j.Kind) }},
	{"length", lengthText},
	{"sides", func(j *joint.Joint) string { return strconv.Itoa(j.Sides) }},
	{"stitch", stitchText},
	{"size", sizeText},
	{"t1", func(j *joint.Joint) string { return mmText(j.T1) }},
	{"t2", func(j *joint.Joint) string { return mmText(j.T2) }},
	{"angle", func(j *joint.Joint) string { return measure(float64(j.Angle), "°") }},
	{"gap", func(j *joint.Joint) string { return given(j.Gap, j.GapGiven) }},
	{"root_face", func(j *joint.Joint) string { return given(j.RootFace, j.RootFaceGiven) }},
	{"depth", func(j *joint.Joint) string { return mmText(j.Depth) }},
	{"radius", func(j *joint.Joint) string { return mmText(j.Radius) }},
	{"backing", func(j *joint.Joint) string { return j.Backing }},
	{"material", func(j *joint.Joint) string { return j.Material }},
	{"material2", func(j *joint.Joint) string { return j.Material2 }},
	{"position", func(j *joint.Joint) string { return j.Position }},
	{"where", func(j *joint.Joint) string { return string(j.Where) }},
	{"process", func(j *joint.Joint) string { return j.Process }},
	{"wire", func(j *joint.Joint) string { return j.Wire }},
	{"gas", func(j *joint.Joint) string { return j.Gas }},
	{"machine", func(j *joint.Joint) string { return j.Machine }},
	{"quality", func(j *joint.Joint) string { return j.Quality }},
	{"wps", func(j *joint.Joint) string { return j.WPS }},
	{"ndt", func(j *joint.Joint) string { return j.NDT }},
	{"part1", func(j *joint.Joint) string { return j.Part1 }},
	{"part2", func(j *joint.Joint) string { return j.Part2 }},
	{"note", func(j *joint.Joint) string { return j.Note }},
}

// differing returns what two lists say differently of a joint.
func differing(old, new *joint.Joint) []Field {
	var out []Field
	for _, f := range fields {
		if a, b := f.text(old), f.text(new); a != b {
			out = append(out, Field{f.key, a, b})
		}
	}
	return out
}

// choices are what the planner chooses for a joint.
var choices = []struct {
	key  string
	text func(*plan.Plan) string
}{
	{"wire", func(p *plan.Plan) string { return p.Filler + " " + mmText(p.Dia) }},
	{"gas", func(p *plan.Plan) string { return p.Gas }},
	{"transfer", func(p *plan.Plan) string { return string(p.Transfer) }},
	{"machine", func(p *plan.Plan) string { return p.Machine }},
	{"passes", func(p *plan.Plan) string { return strconv.Itoa(p.Passes()) }},
}

// replanned returns what the planner chose differently.
func replanned(old, new *plan.Plan) []Field {
	var out []Field
	for _, c := range choices {
		if a, b := c.text(old), c.text(new); a != b {
			out = append(out, Field{c.key, a, b})
		}
	}
	return out
}

func measure(v float64, unit string) string {
	if v == 0 {
		return ""
	}
	return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64) + unit
}

func mmText(v units.MM) string { return measure(float64(v), " mm") }

// given keeps a stated 0 apart from nothing stated.
func given(v units.MM, stated bool) string {
	if stated && v == 0 {
		return "0 mm"
	}
	return mmText(v)
}

func lengthText(j *joint.Joint) string {
	switch {
	case j.Mitre > 0:
		return "all round, mitre " + measure(float64(j.Mitre), "°")
	case j.AllRound:
		return "all round, " + mmText(j.Length) // the way round the section, or what the row gives
	}
	return mmText(j.Length)
}

func sizeText(j *joint.Joint) string {
	letter := map[joint.SizeKind]string{joint.Leg: "z", joint.Throat: "a", joint.Penetration: "s"}[j.Size.Means]
	text := measure(float64(j.Size.A), "")
	if text == "" {
		return ""
	}
	if j.Size.B > 0 && j.Size.B != j.Size.A {
		text += " x " + measure(float64(j.Size.B), "")
	}
	return letter + text
}

// stitchText says a stitch note by what it means, not by how it is written.
func stitchText(j *joint.Joint) string {
	s := j.Stitch
	if s == nil {
		return ""
	}
	text := mmText(s.Segment) + " every " + mmText(s.Pitch)
	if s.Count > 0 {
		text = strconv.Itoa(s.Count) + " x " + text
	}
	if s.Staggered {
		text += ", staggered"
	}
	return text
}

// Words says the field as a person reads it: "length: 1000 mm, now 1200 mm".
func (f Field) Words() string {
	was, now := f.Old, f.New
	if was == "" {
		was = "blank"
	}
	if now == "" {
		now = "blank"
	}
	return f.Key + ": " + was + ", now " + now
}
