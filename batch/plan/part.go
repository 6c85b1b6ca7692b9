package plan

import (
	"fmt"
	"math"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// partText returns what a part's section is read from: what the cut list says of
// it, else its own words.
func partText(words string, lent *joint.Lent) string {
	if lent != nil {
		return lent.Section
	}
	return words
}

// partName names a part to a person: its mark with the section behind it, where the
// cut list knows it.
func partName(words string, lent *joint.Lent) string {
	if lent == nil || lent.Section == words {
		return words
	}
	return words + " (" + lent.Section + ")"
}

// conflict is what a joint says of a part against what the part is.
type conflict struct {
	code, format string
	args         []any
}

// sameThickness is how far in mm a stated thickness may lie from the part's: inch
// sizes are often written rounded to a tenth.
const sameThickness = 0.25

// clash compares what the row states with its parts; the row's own words hold.
func (c *catalog) clash(t *task, j *joint.Joint, first, second known) {
	t.clashThickness("t1", j.T1, partName(j.Part1, j.Lent1), first)
	t.clashThickness("t2", j.T2, partName(j.Part2, j.Lent2), second)
	t.clashUnit(j.Part1, j.Lent1, first)
	t.clashUnit(j.Part2, j.Lent2, second)
	own2 := j.Material2
	if own2 == "" {
		own2 = j.Material
	}
	c.clashGrade(t, j.Material, partName(j.Part1, j.Lent1), j.Lent1)
	c.clashGrade(t, own2, partName(j.Part2, j.Lent2), j.Lent2)
}

func (t *task) clashThickness(key string, stated units.MM, name string, k known) {
	if stated <= 0 || k.err != nil || k.Shape == section.Bar {
		return
	}
	for _, own := range []units.MM{k.Web, k.Flange} {
		if math.Abs(float64(stated-own)) <= sameThickness {
			return
		}
	}
	own := mm(k.Web)
	if k.Flange != k.Web {
		own = fmt.Sprintf("%s (web) or %s (flange)", mm(k.Web), mm(k.Flange))
	}
	t.clashes = append(t.clashes, conflict{"part-thickness", "%s is %s in the row, but %s is %s thick; the row is taken", []any{key, mm(stated), name, own}})
}

// clashUnit notes a part whose sizes name no unit and would be another part in the other.
func (t *task) clashUnit(words string, lent *joint.Lent, k known) {
	if lent == nil && k.doubt != nil && k.doubt.Other != "" {
		t.clashes = append(t.clashes, conflict{"unit-part", "%s names no unit and is read as %s; in the other unit it would be %s", []any{words, k.Designation + " mm", k.doubt.Other}})
	}
}

// clashGrade compares the grade of the row with that of the cut list.
func (c *catalog) clashGrade(t *task, stated, name string, lent *joint.Lent) {
	if lent == nil || lent.Material == "" || stated == "" || strings.EqualFold(stated, lent.Material) {
		return
	}
	a, b := c.material(stated), c.material(lent.Material)
	if a != nil && b != nil && a.Grade == b.Grade {
		return
	}
	t.clashes = append(t.clashes, conflict{"part-grade", "the row says %s, but the cut list has %s of %s; the row is taken", []any{stated, name, lent.Material}})
}

// parts tells what the row and its parts say against each other.
func (k *checker) parts(t *task) {
	for _, c := range t.clashes {
		k.sayf(c.code, finding.Warning, c.format, c.args...)
	}
}
