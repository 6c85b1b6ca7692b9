package workbook

import (
	"math"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
)

// cutGroups are the groups of our columns beside a cut list, those that the joints
// have too left out.
var cutGroups = []group{
	{"mass", "Mass and paint", "what the parts weigh, and what is painted"},
	{"seams", "Welds on it", "what the joints that name the part put on it"},
	{"prepare", "Before welding", "edges, ends, coating, and what to add to the length"},
}

// Units of parts.
var (
	kiloM  = unit{"kg/m", "lb/ft", 0.45359237 / 0.3048, "0.000"}
	square = unit{"m²", "ft²", 0.09290304, "0.00"}
)

// Decimals of figures of a part, as package parts rounds them.
const (
	partKg    = 3
	partWeld  = 6
	partMetre = 4
	partPaint = 4
)

// cutColumns returns all our columns beside a cut list, in order. What joints put on
// the parts is left out where there are none.
func cutColumns(joints bool) []columnBeside[cutRow] {
	cols := append(cutRead(), cutMass()...)
	if joints {
		cols = slices.Concat(cols, cutSeams(), cutPrepare())
	}
	cols = slices.Concat(cols, cutChecks(), cutPlan())
	for i := range cols {
		cols[i].result = !slices.Contains(cutOwn, cols[i].key)
	}
	return cols
}

// cutOwn are the keys of columns that the results file does not have.
var cutOwn = []string{"status", "fits", "mass_each_kg", "joints", "bevels", "shrink_by", "worst", "planned_length_mm", "planned_qty", "cut_words", "typed"}

func cutWord(group, key, head string, width float64, get func(*cutRow) string, about string) columnBeside[cutRow] {
	return columnBeside[cutRow]{key: key, head: head, group: group, width: width, role: look.Plain, fold: true, words: get, about: about}
}

func cutNumber(group, key, head string, u unit, format string, get func(*cutRow) float64, formula func(*cutRow) string, about string) columnBeside[cutRow] {
	role := look.Calc
	if formula == nil {
		role = look.Chosen
	}
	return columnBeside[cutRow]{key: key, head: head, unit: u, group: group, width: 10, format: format, role: role, fold: true,
		number: func(r *cutRow) (float64, bool) { v := get(r); return v, v > 0 }, formula: formula, about: about}
}

// inSight keeps the first column of a group out of its fold.
func inSight(cols []columnBeside[cutRow]) []columnBeside[cutRow] {
	cols[0].fold = false
	return cols
}

func cutRead() []columnBeside[cutRow] {
	length := func(r *cutRow) float64 { return float64(r.p.Length) }
	qty := func(r *cutRow) float64 { return float64(r.p.Qty) }
	status := cutWord("status", "status", "Status", 22, (*cutRow).status, "worked, or not worked, with the number of errors and warnings; the column Checks says why")
	fits := cutWord("status", "fits", "Bars fit?", 11, func(*cutRow) string { return "fits" }, "\"run again\" where section, length or quantity is not what the bars were cut for")
	fits.formula = (*cutRow).fits
	status.fold, fits.fold = false, false
	read := []columnBeside[cutRow]{
		cutWord("read", "part", "Part", 12, func(r *cutRow) string { return r.p.Mark }, "as read"),
		cutWord("read", "assembly", "Assembly", 14, func(r *cutRow) string { return r.p.Assembly }, "as read, or from the group row above"),
		cutWord("read", "section", "Section", 18, func(r *cutRow) string { return r.c.l.called(r.p.Section.Designation) }, "the section as understood"),
		cutWord("read", "material", "Material", 11, func(r *cutRow) string { return r.p.Material }, "as read, or the shop's own"),
		cutNumber("read", "length_mm", "Length", mm, "#,##0.0", length, func(r *cutRow) string { return r.link("length", length(r)) }, "of one piece"),
		cutNumber("read", "qty", "Pieces", none, "#,##0", qty, func(r *cutRow) string { return r.link("qty", qty(r)) }, "from the list's own cell where that is a number"),
	}
	read[4].role, read[5].role = look.Edit, look.Edit
	return append([]columnBeside[cutRow]{status, fits}, inSight(read)...)
}

func cutMass() []columnBeside[cutRow] {
	each := func(r *cutRow) float64 { return r.r.KgM * float64(r.p.Length) / 1000 }
	return inSight([]columnBeside[cutRow]{
		cutNumber("mass", "mass_kg", "Mass", kilo, "#,##0.00", func(r *cutRow) float64 { return float64(r.r.Mass) }, massFormula, "of all pieces: kg/m x length x pieces (PARTS-4), cut square"),
		cutNumber("mass", "mass_each_kg", "Mass each", kilo, "#,##0.000", each, func(*cutRow) string { return "[kg_m]*[length_mm]/1000" }, "of one piece"),
		cutNumber("mass", "paint_m2", "Paint", square, "#,##0.00", func(r *cutRow) float64 { return r.r.Paint }, paintFormula, "surface of all pieces: perimeter x length (PARTS-5); of plates all faces (PARTS-6)"),
		cutNumber("mass", "perimeter_mm", "Perimeter", mm, "#,##0.0", func(r *cutRow) float64 { return float64(r.r.Perimeter) }, nil, "outside, of the section"),
		cutWord("mass", "source", "Weight from", 30, func(r *cutRow) string { return r.p.Section.Origin() }, "basis and source of weight and perimeter"),
		cutNumber("mass", "kg_m", "", kiloM, "0.000", func(r *cutRow) float64 { return r.r.KgM }, nil, "of the section, or of a strip of the plate"),
	})
}

// massFormula is the mass of all pieces of a line.
func massFormula(r *cutRow) string {
	step := math.Pow(10, partKg)
	gives := math.Round(r.r.KgM*float64(r.p.Length)/1000*float64(r.p.Qty)*step) / step
	return agreed(gives, float64(r.r.Mass), rounded("[mass_each_kg]*[qty]", partKg))
}

// paintFormula is the surface of all pieces of a line.
func paintFormula(r *cutRow) string {
	text, gives := paintTemplate(r.p, r.r)
	return agreed(gives, r.r.Paint, text)
}

func cutSeams() []columnBeside[cutRow] {
	seam := func(r *cutRow) string {
		return r.fromJoints("seam_m", func(j *row) float64 { return float64(j.p.Seam) }, float64(r.r.Seam), partMetre)
	}
	weld := func(r *cutRow) string {
		return r.fromJoints("weld_kg", func(j *row) float64 { return float64(j.p.WeldMetal) }, float64(r.r.WeldMetal), partWeld)
	}
	return inSight([]columnBeside[cutRow]{
		cutNumber("seams", "seam_m", "Seam", metre, "#,##0.00", func(r *cutRow) float64 { return float64(r.r.Seam) }, seam, "metres welded on all pieces: those of the joints that name the part; a seam between two parts counts on both"),
		cutNumber("seams", "weld_kg", "Weld metal", kilo, "0.000", func(r *cutRow) float64 { return float64(r.r.WeldMetal) }, weld, "likewise"),
		cutWord("seams", "earliest_assembly", "First in", 14, func(r *cutRow) string { return r.r.Earliest }, "the first assembly, in the order of the joints, that needs the part"),
		cutWord("seams", "joints", "Joints", 70, (*cutRow).joints, "marks of the joints that name the part"),
	})
}

// joints are the marks of the joints that name the part, not more than can be read.
func (r *cutRow) joints() string {
	var marks []string
	for _, i := range r.r.Joints {
		marks = append(marks, r.c.l.marks[i])
	}
	return finding.Few(marks, 20)
}

func cutPrepare() []columnBeside[cutRow] {
	shrink := func(key, head string, k int) columnBeside[cutRow] {
		c := cutNumber("prepare", key, head, mm, "0.00", nil, func(r *cutRow) string { return r.shrinks(k) }, "what the welds shorten one piece by, least and most: add it to the cutting length, which it is not in")
		c.number = func(r *cutRow) (float64, bool) {
			if r.r.Shrink == nil {
				return 0, false
			}
			return float64(r.r.Shrink[k]), true
		}
		return c
	}
	us := func(r *cutRow) bool { return r.c.l.us }
	return inSight([]columnBeside[cutRow]{
		cutNumber("prepare", "bevel_m", "Bevel", metre, "0.00", func(r *cutRow) float64 { return float64(r.r.Bevel) }, (*cutRow).bevelled, "edges to be bevelled, all pieces: quantity x length of the joints that ask for it (PARTS-9)"),
		cutWord("prepare", "bevels", "Bevel to", 24, func(r *cutRow) string { return bevelsText(r.r, us(r)) }, "angle on this edge and root face (PARTS-8)"),
		cutWord("prepare", "edges", "Edges", 30, func(r *cutRow) string { return strings.Join(edgeTexts(r.r, us(r)), "; ") }, "the same by joint"),
		cutWord("prepare", "ends", "Ends", 30, func(r *cutRow) string { return strings.Join(endTexts(r.r, us(r)), "; ") }, "ends that are not cut square, by joint, with how many"),
		cutWord("prepare", "strip", "Strip first", 34, func(r *cutRow) string { return r.r.Strip }, "coating to take off before welding"),
		shrink("shrink_low_mm", "Shrinks", 0),
		shrink("shrink_high_mm", "to", 1),
		cutWord("prepare", "shrink_by", "Shrinks by", 30, func(r *cutRow) string { return r.r.ShrinkWords }, "how the allowance was found"),
	})
}

func cutChecks() []columnBeside[cutRow] {
	worst := cutWord("checks", "worst", "Gravest", 9, func(r *cutRow) string {
		if len(r.r.Checks) == 0 {
			return ""
		}
		return string(r.worst())
	}, "gravest level among the checks")
	all := cutWord("checks", "checks", "Checks", 90, func(r *cutRow) string {
		var said []string
		for _, level := range levels {
			for _, c := range r.r.Checks {
				if c.Level == level {
					said = append(said, string(c.Level)+": "+c.Text)
				}
			}
		}
		return strings.Join(said, "; ")
	}, "errors first, then warnings, then notes")
	return inSight([]columnBeside[cutRow]{worst, all})
}

// cutPlan holds what the bars were cut for.
func cutPlan() []columnBeside[cutRow] {
	return []columnBeside[cutRow]{
		cutNumber("plan", "planned_length_mm", "Cut length", mm, "#,##0.0", func(r *cutRow) float64 { return float64(r.p.Length) }, nil, "length that the bars were cut for"),
		cutNumber("plan", "planned_qty", "Cut pieces", none, "#,##0", func(r *cutRow) float64 { return float64(r.p.Qty) }, nil, "pieces that the bars were cut for"),
		cutWord("plan", "cut_words", "Words read", 20, (*cutRow).saidThen, "what the list said of section, width, thickness, material and standard when it was read"),
		cutWord("plan", "typed", typedHead, 24, func(r *cutRow) string { return r.c.l.job.Parts.List.Typed[r.p.Place.Row] }, typedAbout),
	}
}

// sized is a length as people see it, with its unit.
func sized(v units.MM, us bool) string {
	return trimmed(mm.show(float64(v), us)) + " " + mm.name(us)
}
