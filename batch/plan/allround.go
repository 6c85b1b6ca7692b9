package plan

import (
	"errors"
	"fmt"

	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// known is a designation once read: the section, or why it is none.
type known struct {
	section.Section
	doubt *section.Doubt
	err   error
}

// designation is the words of a part, and whether sizes of it without a unit are inches.
type designation struct {
	text   string
	inches bool
}

// sectionOf reads the designation of a part, each once: what the cut list lends has its
// unit, what the row says is in the unit of the row.
func (c *catalog) sectionOf(words string, lent *joint.Lent, inches bool) known {
	a := designation{partText(words, lent), inches && lent == nil}
	k, ok := c.sections[a]
	if ok {
		return k
	}
	if lent != nil {
		k.Section, k.err = section.Parse(a.text, c.set)
	} else {
		var read section.Reading
		read, k.err = section.ParseIn(a.text, a.inches, c.set)
		k.Section, k.doubt = read.Section, read.Doubt
	}
	if c.sections == nil {
		c.sections = map[designation]known{}
	}
	c.sections[a] = k
	return k
}

// takeSection takes from the designations of the parts what the row leaves blank:
// their thicknesses, and the seam that goes all round the first. The joint of the
// list is not changed; the plan's is a copy. A part that is no designation is a
// mark of somebody's own and says nothing here.
func (c *catalog) takeSection(t *task) {
	j := t.j.Apart()
	first, second := known{err: errNoPart}, known{err: errNoPart}
	if j.Part1 != "" {
		first = c.sectionOf(j.Part1, j.Lent1, j.PartsInch)
	}
	if j.Part2 != "" {
		second = c.sectionOf(j.Part2, j.Lent2, j.PartsInch)
	}
	c.clash(t, &j, first, second)
	if j.T1 == 0 && first.err == nil && first.Web > 0 {
		j.T1 = first.Web
		t.assumeKin("t1", mm(first.Web), "blank: the "+wallWord(&first.Section)+" of "+partName(j.Part1, j.Lent1), "derived", "blank: the wall, leg, web or thickness of the first part")
	}
	if j.T2 == 0 && second.err == nil {
		j.T2 = second.Flange
		t.assumeKin("t2", mm(second.Flange), "blank: the "+faceWord(&second.Section)+" of "+partName(j.Part2, j.Lent2), "derived", "blank: the wall, leg, flange or thickness of the second part")
	}
	if j.AllRound && j.Length <= 0 {
		length, how, err := roundOf(first, second, &j)
		if err != nil {
			t.noRound = fmt.Sprintf("the seam all round %s is not worked out: %v", j.Part1, err)
		} else {
			j.Length = length
			t.assumeKin("length", mm(length), how, "derived", "blank: all round the first part")
		}
	}
	t.branch = branchOf(first, second, &j)
	t.j = &j
}

var errNoPart = fmt.Errorf("no part is named")

// wallWord names what stands with its edge at the weld; faceWord what it stands on.
func wallWord(s *section.Section) string {
	switch s.Shape {
	case section.Round, section.Box:
		return "wall"
	case section.Angle:
		return "leg"
	case section.Beam, section.Channel, section.Tee:
		return "web"
	}
	return "thickness"
}

func faceWord(s *section.Section) string {
	if w := wallWord(s); w != "web" {
		return w
	}
	return "flange"
}

// roundOf returns the seam all round a section that stands on the second part:
// on a round tube the curve in which the two meet, on anything else a flat face.
func roundOf(first, second known, j *joint.Joint) (length units.MM, how string, err error) {
	if bad := (*section.Error)(nil); j.Lent1 == nil && errors.As(first.err, &bad) && len(bad.Near) == 0 {
		return 0, "", fmt.Errorf("no part and no section of that name is known") // nor anything like it
	}
	if first.err != nil {
		return 0, "", first.err
	}
	if j.Mitre > 0 {
		return mitreOf(first, second, j)
	}
	length, how, err = standing(first, second, j)
	if err == nil && j.Angle > 0 && !leans(j) {
		how += fmt.Sprintf("; %s° is the angle of the groove and says nothing of a lean: write mitre 45, or the length, where the end is cut aslant", n2(j.Angle))
	}
	return length, how, err
}

// leans tells whether the angle of a joint is that between its parts: that of a groove
// lies between its edges.
func leans(j *joint.Joint) bool {
	switch j.Kind {
	case joint.Fillet, joint.Lap, joint.Corner, joint.Edge, joint.NoKind:
		return j.Angle > 0
	}
	return false
}

// standing returns the seam all round the first part as it stands on the second.
func standing(first, second known, j *joint.Joint) (length units.MM, how string, err error) {
	angle := units.Degree(90)
	if leans(j) {
		angle = min(j.Angle, 180-j.Angle)
	}
	lean := ""
	if angle != 90 {
		lean = fmt.Sprintf(" at %s°", n2(angle))
	}
	switch {
	case first.Shape == section.Round && second.err == nil && endToEnd[j.Kind] && alikeTubes(&first.Section, &second.Section):
		length, err = weld.FaceLength(first.H, 90)
		return length, "all round " + partName(j.Part1, j.Lent1) + ", end to end", err
	case first.Shape == section.Round && second.err == nil && second.Shape == section.Round && first.H > second.H:
		return 0, "", fmt.Errorf("%s is wider than %s, on which it stands, so look whether the two are exchanged", partName(j.Part1, j.Lent1), partName(j.Part2, j.Lent2))
	case first.Shape == section.Round && second.err == nil && second.Shape == section.Round:
		length, err = weld.SaddleLength(first.H, second.H, angle)
		return length, "all round " + partName(j.Part1, j.Lent1) + " on " + partName(j.Part2, j.Lent2) + lean + ": where the two tubes meet", err
	case first.Shape == section.Round:
		length, err = weld.FaceLength(first.H, angle)
		return length, "all round " + partName(j.Part1, j.Lent1) + " on a flat face" + lean, err
	case angle != 90 && first.Shape == section.Box:
		return leaning(first, angle, "all round "+partName(j.Part1, j.Lent1)+" on a flat face"+lean)
	case angle != 90:
		return 0, "", fmt.Errorf("a section that is no tube and leans needs its length in the list")
	case first.Perimeter <= 0:
		return 0, "", fmt.Errorf("a plate without its width has no seam all round")
	}
	corners := ""
	if first.Shape == section.Box {
		corners = fmt.Sprintf(" with corners of radius %s", mm(first.Root))
		if first.Cold {
			corners += ", cold formed"
		}
	}
	return first.Perimeter, "all round " + partName(j.Part1, j.Lent1) + corners + ", all its outside", nil
}

// endToEnd are the kinds of a butt joint in which two tubes that are alike lie in line.
var endToEnd = map[joint.Kind]bool{joint.SquareButt: true, joint.SingleV: true, joint.DoubleV: true, joint.SingleU: true, joint.DoubleU: true}

// mitreOf returns the seam all round the mitred ends of two tubes that are alike.
func mitreOf(first, second known, j *joint.Joint) (length units.MM, how string, err error) {
	angle := 90 - j.Mitre
	how = "all round the mitred ends of " + partName(j.Part1, j.Lent1) + fmt.Sprintf(", each cut %s° off square", n2(j.Mitre))
	switch {
	case second.err == nil && !alikeTubes(&first.Section, &second.Section):
		return 0, "", fmt.Errorf("%s and %s are not alike, so that a mitre does not fit", partName(j.Part1, j.Lent1), partName(j.Part2, j.Lent2))
	case first.Shape == section.Round:
		length, err = weld.FaceLength(first.H, angle)
		return length, how + ": an ellipse", err
	case first.Shape == section.Box:
		return leaning(first, angle, how)
	}
	return 0, "", fmt.Errorf("a section that is no tube needs the length of its mitre in the list")
}

// alikeTubes tells whether two tubes have the same outside.
func alikeTubes(a, b *section.Section) bool {
	return a.Shape == b.Shape && a.H == b.H && a.B == b.B
}

// leaning returns the way round the end of a box that is cut aslant. Nobody says over
// which side it leans: the longer one is taken, which gives the longer seam.
func leaning(first known, angle units.Degree, how string) (units.MM, string, error) {
	long, short := max(first.H, first.B), min(first.H, first.B)
	length, err := weld.BoxFaceLength(long, short, first.Root, angle)
	if err != nil || long == short {
		return length, how + ": sides in the plane of the lean longer by 1 / cos", err
	}
	other, err := weld.BoxFaceLength(short, long, first.Root, angle)
	return length, how + fmt.Sprintf(": its side of %s taken in the plane of the lean; %s if it is the other", mm(long), mm(other)), err
}
