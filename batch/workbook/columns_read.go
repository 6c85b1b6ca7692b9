package workbook

import (
	"strconv"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/workbook/look"
)

func itoa(n int) string { return strconv.Itoa(n) }

// statusColumns say what became of the row.
func statusColumns(*layout) []column {
	return []column{
		{key: "status", head: "Status", group: "status", width: 34, role: look.Plain,
			words: (*row).status, about: "worked, metal only, or not worked, with the number of errors and warnings; the column Checks says why"},
		{key: "fits", head: "Plan fits?", group: "status", width: 11, role: look.Plain,
			words: func(r *row) string {
				if !r.p.Settings {
					return ""
				}
				return "fits"
			},
			formula: fitsFormula,
			about:   "\"run again\" where the row differs from what was planned, or the travel speed or the heat input leaves its range"},
	}
}

// readColumns are the list's own figures in one unit.
func readColumns(l *layout) []column {
	positions := "ISO 6947"
	if l.aws() {
		positions = "AWS A3.0, where it has a name for the kind of joint; else ISO 6947"
	}
	word := func(key, head string, width float64, result bool, get func(*row) string, about string) column {
		return column{key: key, head: head, group: "read", width: width, role: look.Plain, result: result, fold: true, words: get, about: about}
	}
	length := func(key, head string, get func(*row) units.MM, formula func(*row) string, about string) column {
		return column{key: key, head: head, unit: mm, group: "read", width: 9, format: "0.##", role: look.Edit, fold: true,
			number: known(get), formula: formula, about: about}
	}
	count := func(key, head string, result bool, get func(*row) int) column {
		return column{key: key, head: head, group: "read", width: 7, format: "0", role: look.Edit, result: result, fold: true,
			number:  func(r *row) (float64, bool) { return float64(get(r)), get(r) > 0 },
			formula: func(r *row) string { return r.count(key, float64(get(r))) }, about: "from the list's own cell where that is a number"}
	}
	mark := word("mark", "Mark", 12, true, func(r *row) string { return r.j.Mark }, "as read")
	mark.fold = false
	return steady([]column{
		mark,
		{key: "row", head: "Row", group: "read", width: 6, format: "0", role: look.Calc, result: true, fold: true,
			number: func(r *row) (float64, bool) { return float64(r.j.Place.Row), true }, about: "row of the sheet or line of the file"},
		word("assembly", "Assembly", 14, true, func(r *row) string { return r.j.Assembly }, "as read, or from the group row above"),
		word("kind", "Kind", 11, true, func(r *row) string { return string(r.j.Kind) }, "kind of joint as understood"),
		count("qty", "Qty", true, func(r *row) int { return r.j.Qty }),
		count("sides", "Sides", false, func(r *row) int { return r.j.Sides }),
		length("length_mm", "Length", lengthUsed, func(r *row) string { return r.link("length", float64(lengthUsed(r))) },
			"seam length of one joint, one side"),
		word("size_read", "Size read", 9, false, sizeText, "the size as it was understood: z leg, a throat, s penetration"),
		length("leg_a_mm", "Leg A", func(r *row) units.MM { return r.p.Prep.LegA }, legFormula, "leg along the part whose edge meets"),
		length("leg_b_mm", "Leg B", func(r *row) units.MM { return r.p.Prep.LegB }, legBFormula, "leg along the other part"),
		length("throat_mm", "Throat or hole", throatUsed, throatFormula, "throat or penetration where the list states one; bead of an edge, effective throat of a flare (its fill where the size is a leg), diameter of a plug, width of a slot"),
		length("t1_mm", "t1", func(r *row) units.MM { return r.p.Prep.T1 }, func(r *row) string { return r.link("t1", float64(r.p.Prep.T1)) }, "thickness of the part whose edge meets"),
		length("t2_mm", "t2", func(r *row) units.MM { return r.p.Prep.T2 }, func(r *row) string { return r.link("t2", float64(r.p.Prep.T2)) }, "thickness of the other part"),
		{key: "angle_deg", head: "Angle", unit: degree, group: "read", width: 7, format: "0.#", role: look.Edit, fold: true, number: known(angleOf),
			formula: func(r *row) string { return r.count("angle", float64(angleOf(r))) }, about: "groove: included angle; fillet: angle between the parts"},
		{key: "gap_mm", head: "Gap", unit: mm, group: "read", width: 7, format: "0.##", role: look.Edit, fold: true, number: gapUsed,
			formula: func(r *row) string { return r.link("gap", float64(r.p.Prep.Gap)) }, about: "root gap of a groove, fit-up gap of a fillet"},
		{key: "root_face_mm", head: "Root face", unit: mm, group: "read", width: 7, format: "0.##", role: look.Edit, fold: true, number: rootFaceUsed,
			formula: rootFaceFormula, about: "height of the edge that is not bevelled"},
		length("depth_mm", "Depth", func(r *row) units.MM { return r.p.Prep.Depth }, depthFormula, "depth of preparation from the first side; depth filled of a hole"),
		length("depth2_mm", "Depth 2", func(r *row) units.MM { return r.p.Prep.Depth2 }, depthFormula2, "depth of preparation from the second side"),
		length("radius_mm", "Radius", radiusUsed, radiusFormula, "at the root of a U or J; of the round edge of a flare"),
		word("material", "Material", 14, false, func(r *row) string { return r.j.Material }, "as read; the group it belongs to decides wire and settings"),
		word("position", "Position", 8, false, func(r *row) string { return r.l.names.Position(r.p) }, positions),
		word("where", "Where", 7, false, whereOf, "shop or site"),
		word("assumed", "Assumed", 36, false, (*row).assumed, "what the list did not say, and what was taken for it"),
	}, "kind", "size_read", "leg_b_mm", "material", "position", "where")
}

// gapUsed is the gap where there is one or the list says that there is none.
func gapUsed(r *row) (float64, bool) { return float64(r.p.Prep.Gap), r.hasGap() }

// rootFaceUsed is the root face of a groove, nought included.
func rootFaceUsed(r *row) (float64, bool) {
	return float64(r.p.Prep.RootFace), isGroove(r.p.Prep.Kind)
}

func whereOf(r *row) string {
	if r.j.Where == "" {
		return string(joint.Shop)
	}
	return string(r.j.Where)
}

func sizeText(r *row) string {
	letter := map[joint.SizeKind]string{joint.Leg: "z", joint.Throat: "a", joint.Penetration: "s"}[r.j.Size.Means]
	if letter == "" {
		return ""
	}
	shown := func(v units.MM) string { return exact(round6(mm.show(float64(v), r.l.us))) }
	text := letter + shown(r.j.Size.A)
	if r.j.Size.B > 0 && r.j.Size.B != r.j.Size.A {
		text += "x" + shown(r.j.Size.B)
	}
	return text
}

// checkColumns hold the row's checks in one line.
func checkColumns() []column {
	return []column{
		{key: "worst", head: "Gravest", group: "checks", width: 9, role: look.Plain, about: "gravest level among the checks",
			words: func(r *row) string {
				if len(r.p.Checks) == 0 {
					return ""
				}
				return string(r.worst())
			}},
		{key: "checks", head: "Checks", group: "checks", width: 90, role: look.Plain, fold: true, result: true, words: (*row).checkText,
			about: "errors first, then warnings, then notes"},
	}
}

// roleOf colours a status by the gravest check; the words say it too.
func roleOf(level finding.Level) look.Role {
	switch level {
	case finding.Error:
		return look.Stop
	case finding.Warning:
		return look.Heed
	}
	return look.Plain
}
