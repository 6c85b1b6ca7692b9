package workbook

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/units"
	"seamtally/batch/workbook/pack"
)

// typedCell is a yellow cell of ours into which a person may type what the joint is to be.
type typedCell struct {
	now, then string   // our column, and the one that keeps what the plan was made from
	keys      []string // the user's columns that say the same
	said      func(*joint.Joint) float64
	take      func(*joint.Joint, float64) bool // false where the joint has no such figure
}

// The codes of what is told of figures typed into our cells: taken, and not taken.
const (
	TypedBeside   = "typed-in-our-column"
	ChangedBeside = "changed-in-our-column"
)

var (
	sizeKeys   = []string{"size", "leg", "throat"}
	typedCells = []typedCell{
		{"length_mm", "planned_length_mm", []string{"length"}, func(j *joint.Joint) float64 { return float64(j.Length) }, takeLength},
		{"qty", "planned_qty", []string{"qty"}, func(j *joint.Joint) float64 { return float64(j.Qty) }, takeQty},
		{"sides", "planned_sides", []string{"sides"}, func(j *joint.Joint) float64 { return float64(j.Sides) }, takeSides},
		{"leg_a_mm", "planned_leg_a_mm", sizeKeys, legSaid(false), takeLegA},
		{"leg_b_mm", "planned_leg_b_mm", sizeKeys, legSaid(true), takeLegB},
		{"throat_mm", "planned_throat_mm", sizeKeys, func(j *joint.Joint) float64 { return float64(j.Size.A) }, takeThroat},
		{"t1_mm", "planned_t1_mm", []string{"t1"}, func(j *joint.Joint) float64 { return float64(j.T1) }, func(j *joint.Joint, v float64) bool { j.T1 = units.MM(v); return v > 0 }},
		{"t2_mm", "planned_t2_mm", []string{"t2"}, func(j *joint.Joint) float64 { return float64(j.T2) }, func(j *joint.Joint, v float64) bool { j.T2 = units.MM(v); return v > 0 }},
		{"gap_mm", "planned_gap_mm", []string{"gap"}, func(j *joint.Joint) float64 { return float64(j.Gap) }, func(j *joint.Joint, v float64) bool { j.Gap, j.GapGiven = units.MM(v), true; return true }},
		{"angle_deg", "planned_angle_deg", []string{"angle"}, func(j *joint.Joint) float64 { return float64(j.Angle) }, takeAngle},
		{"root_face_mm", "planned_root_face_mm", []string{"root_face"}, func(j *joint.Joint) float64 { return float64(j.RootFace) },
			func(j *joint.Joint, v float64) bool { j.RootFace, j.RootFaceGiven = units.MM(v), true; return true }},
		{"depth_mm", "planned_depth_mm", []string{"depth"}, func(j *joint.Joint) float64 { return float64(j.Depth) }, takeDepth},
		{"radius_mm", "planned_radius_mm", []string{"radius"}, func(j *joint.Joint) float64 { return float64(j.Radius) }, func(j *joint.Joint, v float64) bool { j.Radius = units.MM(v); return v > 0 }},
	}
)

// longest is the longest length that is taken from a cell of ours, in millimetres, and
// largest the largest size: beyond them a unit has slipped.
const (
	longestTyped = 1e6
	largestTyped = 1000
)

func takeLength(j *joint.Joint, v float64) bool {
	if j.AllRound && j.Length <= 0 || v <= 0 || v > longestTyped {
		return false // all round, the section says how long
	}
	j.Length = units.MM(v)
	return true
}

func takeQty(j *joint.Joint, v float64) bool {
	if v < 1 || v != math.Trunc(v) || v > longestTyped {
		return false
	}
	j.Qty = int(v)
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

// typedColumn names the cells that a person typed into, each with what the list said
// then, so that the next run holds on to them for as long as the list says it.
func typedColumn() column {
	return column{key: "typed", head: "Typed here", group: "plan", width: 24, fold: true,
		words: func(r *row) string { return r.l.job.List.Typed[r.j.Place.Row] },
		about: "yellow cells that somebody typed into, and what the list said: they hold until the list says something else"}
}

// TakeTyped takes what somebody typed into the yellow cells of a workbook of ours into
// the joints of its list. The list's own cell holds where it was changed as well, and
// where the joint has no such figure. Each is told.
func TakeTyped(whole *list.Source, l *joint.List) []finding.Problem {
	if whole == nil || whole.Format == list.CSV {
		return nil
	}
	ours, ok := pack.FindOurs(whole.Data, marks...)
	if !ok {
		return nil
	}
	place, on := ours.On(l.Sheet)
	for i := range whole.Sheets {
		if s := &whole.Sheets[i]; on && s.Name == l.Sheet && place.Mark == jointsMark {
			t := typing{file: whole.File, sheet: s, list: l, heads: ourHeads(s, place)}
			return t.all()
		}
	}
	return nil
}

// typing takes over what was typed beside one list.
type typing struct {
	file  string
	sheet *list.Sheet
	list  *joint.List
	heads map[string]head
	out   []finding.Problem
}

func (t *typing) all() []finding.Problem {
	at := map[int]*joint.Joint{}
	for i := range t.list.Joints {
		at[t.list.Joints[i].Place.Row] = &t.list.Joints[i]
	}
	for _, r := range t.sheet.Rows {
		if j := at[r.Number]; j != nil {
			t.row(j, r)
		}
	}
	return t.out
}

// row takes over what was typed into one row.
func (t *typing) row(j *joint.Joint, r list.Row) {
	before := saidBefore(r.At(t.heads["typed"].col).Text)
	var kept []string
	for k := range typedCells {
		c := &typedCells[k]
		now, then := r.At(t.heads[c.now].col), r.At(t.heads[c.then].col)
		if t.heads[c.now].col == 0 || now.Formula || now.Kind != list.Number || !finiteCell(now.Value) {
			continue
		}
		own := t.own(c, r)
		text, held := before[c.now]
		typed := then.Kind == list.Number && !agree(now.Value, then.Value)
		if !typed && !held {
			continue
		}
		value := round6(now.Value * t.heads[c.now].per)
		listed := c.said(j)
		moved := held && text != own || !held && listed > 0 && own != "" && !nearly(listed, then.Value*t.heads[c.then].per)
		if moved && !typed {
			continue // typed long ago; the list has been changed since and holds
		}
		if moved || nearly(listed, value) || !t.take(c, j, value) {
			if !nearly(listed, value) {
				t.tell(c, r, now, listed, moved)
			}
			continue
		}
		kept = append(kept, c.now+"="+strings.ReplaceAll(own, ";", ","))
		t.taken(c, j, r, now, own)
	}
	if len(kept) > 0 {
		if t.list.Typed == nil {
			t.list.Typed = map[int]string{}
		}
		t.list.Typed[r.Number] = strings.Join(kept, "; ")
	}
}

// take changes the joint where it has such a figure.
func (t *typing) take(c *typedCell, j *joint.Joint, value float64) bool {
	if value < 0 || value > longestTyped || c.now != "length_mm" && c.now != "qty" && value > largestTyped {
		return false
	}
	changed := j.Apart()
	if !c.take(&changed, value) {
		return false
	}
	*j = changed
	return true
}

// own is what the user's cells say of the same figure.
func (t *typing) own(c *typedCell, r list.Row) string {
	var said []string
	for _, col := range t.list.Columns {
		if slices.Contains(c.keys, col.Key) {
			if text := strings.TrimSpace(r.At(col.Col).Text); text != "" {
				said = append(said, strings.ReplaceAll(text, ";", ","))
			}
		}
	}
	return strings.Join(said, " ")
}

// taken lists a figure as taken from our cell.
func (t *typing) taken(c *typedCell, j *joint.Joint, r list.Row, now list.Cell, own string) {
	h, said := t.heads[c.now], "the list says nothing"
	if own != "" {
		said = "the list says " + own
	}
	key := c.keys[0]
	j.Assumed = slices.DeleteFunc(slices.Clone(j.Assumed), func(a joint.Assumption) bool { return a.Key == key })
	j.Assumed = append(j.Assumed, joint.Assumption{Key: key, Value: strings.TrimSpace(exact(round6(now.Value)) + " " + h.unit), Why: "typed into our column; " + said, Basis: "typed"})
	t.out = append(t.out, finding.Problem{
		Place: t.place(r, now, h), Level: finding.Note, Code: TypedBeside,
		Text: fmt.Sprintf("%s is taken as %s, typed into our column; %s", h.text, exact(round6(now.Value)), said),
		Read: now.Text, Hint: "it holds until the list says something else; write it into your own column to have it there"})
}

// tell says that a figure typed into our cell is not taken.
func (t *typing) tell(c *typedCell, r list.Row, now list.Cell, listed float64, moved bool) {
	h := t.heads[c.now]
	why := "this joint has no such figure of its own, or not of that size"
	if moved {
		why = "the list was changed as well, and holds: " + exact(round6(listed/h.per))
	}
	t.out = append(t.out, finding.Problem{
		Place: t.place(r, now, h), Level: finding.Warning, Code: ChangedBeside,
		Text: fmt.Sprintf("%s was changed to %s in our column and is not taken: %s", h.text, exact(round6(now.Value)), why),
		Read: now.Text, Want: "the change in your own column", Hint: "write the new figure into your own column and run again"})
}

func (t *typing) place(r list.Row, now list.Cell, h head) finding.Place {
	return finding.Place{File: t.file, Sheet: t.sheet.Name, Row: r.Number, Col: now.Col, Header: h.text}
}

// saidBefore reads the column of what was typed before: our column's key, and what the
// list said then.
func saidBefore(text string) map[string]string {
	out := map[string]string{}
	for _, part := range strings.Split(text, "; ") {
		if key, said, ok := strings.Cut(part, "="); ok {
			out[key] = said
		}
	}
	return out
}

func finiteCell(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// nearly tells whether two figures are the same but for the rounding of an inch.
func nearly(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Max(math.Abs(a), math.Abs(b)) }
