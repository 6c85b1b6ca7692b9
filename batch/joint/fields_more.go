package joint

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
	"seamtally/batch/units"
)

// thicknesses reads t1 and t2.
func (w *row) thicknesses() {
	for _, f := range []struct {
		key  string
		into *units.MM
	}{{"t1", &w.joint.T1}, {"t2", &w.joint.T2}} {
		key, into := f.key, f.into
		mm, ok := w.millimetres(key, "a thickness such as 6 or 1/4\"")
		if !ok {
			continue
		}
		if mm < thinnest || mm > thickest {
			cell, c, _ := w.cell(key)
			w.say(finding.Error, c, "implausible", cell.Text, beyond(mm, thinnest, "no ordinary part is this ", "thin", "thick")+readings(mm, thinnest, thickest), "a thickness from 0.4 to 200 mm", "correct the thickness, or state its unit")
			continue
		}
		*into = units.MM(mm)
	}
	w.oneThickness()
}

// oneThickness says what is taken where a list has both thicknesses and a row gives one:
// the other part is as thick. A part that is named brings its own.
func (w *row) oneThickness() {
	j := &w.joint
	why := "blank: taken as thick as the other part"
	_, one, first := w.cell("t1")
	_, other, second := w.cell("t2")
	switch {
	case one == nil || other == nil || first == second: // one column, or both filled, or none
	case j.T2 > 0 && !first && j.Part1 == "":
		w.assume("t1", "as t2", why, "common-practice")
	case j.T1 > 0 && !second && j.Part2 == "":
		w.assume("t2", "as t1", why, "common-practice")
	}
}

// preparation reads angle, gap, root face, depth, radius and backing.
func (w *row) preparation() {
	j := &w.joint
	w.angle()
	for _, f := range []struct {
		key  string
		into *units.MM
		most float64
	}{{"gap", &j.Gap, 30}, {"root_face", &j.RootFace, 30}, {"depth", &j.Depth, 200}, {"radius", &j.Radius, 300}} {
		mm, ok := w.millimetres(f.key, "a length of zero or more")
		if !ok {
			continue
		}
		if mm < 0 || mm > f.most {
			cell, c, _ := w.cell(f.key)
			w.say(finding.Error, c, "implausible", cell.Text, "this is out of range: "+readings(mm, 0, f.most), "0 to "+trim(f.most)+" mm", "correct the cell, or state its unit")
			continue
		}
		*f.into = units.MM(mm)
		j.GapGiven = j.GapGiven || f.key == "gap"
		j.RootFaceGiven = j.RootFaceGiven || f.key == "root_face"
	}
	if text := w.text("backing"); text != "" {
		v, ok := w.word("backing", text)
		if !ok {
			w.say(finding.Warning, w.column("backing"), "unknown-backing", text, "this backing is not known and is left out of account", "bar, copper, ceramic or gouge", "write bar (it stays), copper or ceramic (they come off) or gouge (gouged from the back and welded); leave the cell empty if there is none or it is another sort")
		}
		j.Backing = v
	}
	if w.partial && j.Depth == 0 && j.Size.Means != Penetration {
		w.say(finding.Error, w.column("kind"), "no-depth", w.text("kind"), "a groove of partial penetration has a depth, and none is given", "a size such as s8, or a depth", "write the penetration under size, such as s8 or (8), or the depth of the preparation under depth")
	}
}

func (w *row) angle() {
	cell, c, ok := w.cell("angle")
	want := "an angle in degrees, 5 to 180"
	if !ok || w.unreadable(cell, c, want) {
		return
	}
	v := cell.Value
	if cell.Kind == list.Text {
		q, bad := measure.Parse(cell.Text, w.style)
		if bad != nil || q.Unit != measure.None && q.Unit != measure.Deg {
			w.say(finding.Error, c, "bad-angle", cell.Text, "it is no angle", want, "write the angle of the drawing as a number of degrees, such as 60; of a groove that of the whole opening")
			return
		}
		v = q.Num
	}
	if v < 5 || v > 180 {
		w.say(finding.Error, c, "bad-angle", cell.Text, "no joint has this angle", want, "write the angle of the drawing, such as 60; for a groove the whole opening, both sides together")
		return
	}
	w.joint.Angle = units.Degree(v)
}

// stitch reads the stitch note.
func (w *row) stitch() {
	cell, c, ok := w.cell("stitch")
	if !ok && w.sizeStitch != "" {
		cell, c, ok = list.Cell{Kind: list.Text, Text: w.sizeStitch}, w.column("size"), true
	}
	want := "count x length (gap) such as 5x50(100), or length-pitch such as 50-150"
	if !ok || w.unreadable(cell, c, want) {
		return
	}
	unit := w.stitchUnit(c)
	st, bad := w.stitchOf(cell.Text, unit, w.style)
	if bad != nil {
		w.fault(c, "bad-stitch", cell.Text, bad, want)
		return
	}
	if st == nil {
		return
	}
	if w.joint.Kind == Plug || w.joint.Kind == Slot {
		w.say(finding.Error, c, "bad-stitch", cell.Text, "a plug or slot fills a hole and has no stitches", "a blank", "write the number of holes under qty, and leave the stitch out")
		return
	}
	if st.Segment < shortestStitch {
		w.say(finding.Error, c, "implausible", cell.Text, "no ordinary stitch is this short: "+readings(float64(st.Segment), shortestStitch, longestSeam), want, "correct the note, or write the unit into it, such as 2in-6in")
		return
	}
	run := float64(st.Segment)
	if st.Count > 1 {
		run += float64(st.Count-1) * float64(st.Pitch)
	}
	if l := float64(w.joint.Length); l > 0 && run > l+0.5 {
		w.say(finding.Error, c, "stitch-too-long", cell.Text, "the stitches need "+trim(run)+" mm, the seam is "+trim(l)+" mm long", want, "correct the note or the length")
		return
	}
	w.joint.Stitch = st
}

// shortestStitch is the least length in mm that a segment can be meant to have.
const shortestStitch = 5

// stitchUnit returns the unit of a bare stitch note in a column without a unit.
// Drawings write it in the unit of the seam it belongs to, so where the length or
// the size is in inches the stitch is too.
func (w *row) stitchUnit(c *column) measure.Unit {
	if c.unit != measure.None {
		return c.unit
	}
	if w.sizeStitch != "" && w.sizeInch {
		return measure.Inch
	}
	for _, key := range []string{"length", "size"} {
		cell, beside, ok := w.cell(key)
		if !ok {
			continue
		}
		unit := beside.unit
		if q, _ := measure.Parse(cell.Text, w.style); q.Unit != measure.None {
			unit = q.Unit
		}
		switch unit {
		case measure.Inch, measure.Foot:
			w.assume("stitch", "in inches", "no unit: as the "+key+" of the row", "common-practice")
			return measure.Inch
		case measure.MM, measure.CM, measure.M:
			return measure.MM
		}
	}
	return w.bare(c)
}

// stand reads position, shop or site, and the quality level.
func (w *row) stand() {
	j := &w.joint
	if text := w.text("position"); text != "" {
		p, why, ok := w.positionOf(text, j.Kind.IsButt())
		hint := "write one of these"
		if strings.ContainsAny(text, "/,;+&(") {
			hint = "write one position; if the seam is welded in several, give each length a row of its own"
		}
		switch {
		case !ok:
			w.say(finding.Error, w.column("position"), "unknown-position", text, "this welding position is not known", "PA to PK, 1F to 4F, 1G to 6G, or words such as flat or vertical up", hint)
		case why != "":
			w.assume("position", p, why, "common-practice")
		}
		j.Position = p
		w.mismatch(text)
	} else {
		j.Position = pick(j.Kind == Fillet || j.Kind == Lap, "PB", "PA")
		w.assume("position", j.Position, "blank: fillets and laps are taken as PB, all others as PA", "common-practice")
	}
	j.Where = Shop
	if text := w.text("where"); text != "" {
		v, ok := w.whereOf(text, w.column("where").Header)
		if !ok {
			w.say(finding.Warning, w.column("where"), "unknown-where", text, "it says neither shop nor site; taken as shop", "shop or site", "write shop or site")
		} else {
			j.Where = Where(v)
		}
	}
	if text := w.text("quality"); text != "" {
		if j.Quality = qualityOf(text); j.Quality == "" {
			w.say(finding.Warning, w.column("quality"), "unknown-quality", text, "the quality level is not B, C or D and is left out of account", "B, C or D", "write B, C or D")
		}
	}
}

var reAWSPosition = regexp.MustCompile(`^[1-6]\s*([FG])`)

// mismatch warns where an AWS position is of the other family of joints.
func (w *row) mismatch(text string) {
	m := reAWSPosition.FindStringSubmatch(strings.ToUpper(text))
	if m == nil || w.joint.Kind == NoKind {
		return
	}
	if w.joint.Kind.IsButt() == (m[1] == "F") && (w.joint.Kind.IsButt() || w.joint.Kind == Fillet || w.joint.Kind == Lap) {
		w.say(finding.Warning, w.column("position"), "position-family", text, "F positions are of fillets, G positions of grooves; the kind says "+string(w.joint.Kind), "a position of the joint's own family", "check kind and position")
	}
}

// finish fills in what may be defaulted and asks for what may not.
func (w *row) finish() {
	j := &w.joint
	if w.bad {
		return
	}
	switch {
	case j.Kind == NoKind:
		w.say(finding.Error, w.column("kind"), "no-kind", "", "neither a kind of joint nor a size is given", "a kind, or a size (then a fillet is taken)", "write the kind or the size")
	case (j.Kind == Fillet || j.Kind == Lap || (j.Kind == Corner || j.Kind == Edge) && j.T1 == 0 && j.T2 == 0) && j.Size.Means == NoSize:
		w.missingSize()
	case j.Kind.IsButt() && j.T1 == 0 && j.Depth == 0 && j.Size.Means == NoSize && j.Part1 == "":
		w.say(finding.Error, w.column("t1"), "no-thickness", "", "a "+string(j.Kind)+" needs a thickness: without it there is no groove to fill", "a thickness", "write the thickness of the thinner part")
	}
	if (j.Kind == Fillet || j.Kind == Lap) && j.Angle == 0 {
		w.assume("angle", "90", "blank: the parts stand square", "common-practice")
	}
	w.remarkDoubts()
}

// defaultKind takes a fillet where only a size is given, and a preparation where
// the list says no more than butt.
func (w *row) defaultKind() {
	j := &w.joint
	switch {
	case j.Kind == anyButt:
		w.resolveButt()
	case j.Kind == NoKind && j.Size.Means == Penetration && !w.bad:
		w.say(finding.Error, w.column("kind"), "no-kind", "", fmt.Sprintf("the size %q is a penetration, which only a groove has, and no kind of joint is given", j.Size.Text), "a kind such as single V or single bevel", "write the kind, or the leg (z) or throat (a) of a fillet")
	case (j.Kind == Fillet || j.Kind == Lap) && j.Size.Means == Penetration && !w.bad:
		w.say(finding.Error, w.column("size"), "bad-size", j.Size.Text, "a "+string(j.Kind)+" has a leg or a throat, not a penetration", "a size such as z6 or a4", "look on the drawing: for a fillet write its leg (z6) or throat (a4); if the penetration is right, write the groove, such as single bevel, in the column of kinds")
	case j.Kind == NoKind && j.Size.Means != NoSize && !filled(w.At(w.colOf("kind"))):
		j.Kind = Fillet
		w.assume("kind", string(Fillet), "blank, and a size is given", "common-practice")
	}
}

// anyButt is a butt of which the list says no more, until resolveButt has chosen.
const anyButt Kind = "butt"

// resolveButt chooses a preparation for a butt of which no more is said.
func (w *row) resolveButt() {
	j := &w.joint
	t1, _ := w.lentThickness()
	switch t := float64(t1); {
	case t > 0 && t <= 4:
		j.Kind = SquareButt
	case t > 20:
		j.Kind = DoubleV
	default:
		j.Kind = SingleV
	}
	w.assume("kind", string(j.Kind), "the list says only that it is a butt: square to 4 mm, single V to 20 mm, double V above", "common-practice")
}

var reShare = regexp.MustCompile(`^([\d.]+)\s*\*?\s*t_?min$`)

// missingSize asks, or applies the shop's rule.
func (w *row) missingSize() {
	rule := strings.ToLower(strings.TrimSpace(w.opt.MissingSize))
	m := reShare.FindStringSubmatch(rule)
	thin, other := w.lentThickness()
	if other > 0 && (thin == 0 || other < thin) {
		thin = other
	}
	c := w.column("size")
	if m == nil || thin == 0 {
		write := "write the size"
		if c == nil {
			write = "write it into a column headed size"
		}
		w.say(finding.Error, c, "no-size", "", "the weld size is missing: look on the drawing for the leg or the throat", `a size such as z6 or a4`, write+", or give one rule for all that are missing: --set \"missing_size=0.7 t_min\", t_min being the thinner part")
		return
	}
	share, err := strconv.ParseFloat(m[1], 64)
	if err != nil || share <= 0 || share > 2 {
		w.say(finding.Error, c, "no-size", "", "the weld size is missing and missing_size is no rule that can be used: "+w.opt.MissingSize, "ask, or a rule such as 0.7 t_min", "correct missing_size")
		return
	}
	w.joint.Size = Size{Means: SizeKind(w.opt.sizeMeans()), A: units.MM(share * float64(thin)), Text: rule}
	w.assume("size", trim(float64(w.joint.Size.A))+" mm "+string(w.joint.Size.Means), "missing: by the shop's rule "+rule, "shop value missing_size")
	w.say(finding.Warning, c, "assumed-size", "", "the weld size is missing; "+trim(float64(w.joint.Size.A))+" mm "+string(w.joint.Size.Means)+" is taken by the shop's rule "+rule, "a size from the drawing", "confirm the size before anything is welded")
}

// lentThickness returns the thicknesses of the row, and those of its parts where a
// cut list has them and the row is silent.
func (w *row) lentThickness() (t1, t2 units.MM) {
	j := &w.joint
	t1, t2 = j.T1, j.T2
	if w.opt.Thickness == nil {
		return t1, t2
	}
	if t1 == 0 {
		t1, _ = w.opt.Thickness(j.Part1, j.Assembly)
	}
	if t2 == 0 {
		_, t2 = w.opt.Thickness(j.Part2, j.Assembly)
	}
	return t1, t2
}
