package workbook

import (
	"math"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/workbook/pack"
)

// typedColumn names the cells that a person typed into, each with what the list said
// then, so that the next run holds on to them for as long as the list says it.
func typedColumn() column {
	return column{key: "typed", head: typedHead, group: "plan", width: 24, fold: true,
		words: func(r *row) string { return r.l.job.List.Typed[r.j.Place.Row] }, about: typedAbout}
}

const (
	typedHead  = "Typed here"
	typedAbout = "yellow cells that somebody typed into, and what the list said: they hold until the list says something else"
)

// TakeTyped takes what somebody typed into the yellow cells of a workbook of ours into
// the joints of its list. The list's own cell holds where it was changed as well, and
// where the joint has no such figure. Whatever was typed is told, taken or not.
func TakeTyped(whole *list.Source, l *joint.List) []finding.Problem {
	t := typing[joint.Joint]{noun: "joint", columns: l.Columns, cells: typedJoint, above: max(l.HeaderRows[1], l.UnitsRow),
		apart: (*joint.Joint).Apart, assumed: func(j *joint.Joint) *[]joint.Assumption { return &j.Assumed }}
	if !t.find(whole, l.Sheet, jointsMark) {
		return nil
	}
	t.all(l.Joints, func(j *joint.Joint) int { return j.Place.Row }, l.Others)
	l.Typed = t.kept
	return t.out
}

// TakeTypedParts does the same for the yellow cells beside a cut list.
func TakeTypedParts(whole *list.Source, l *parts.List) []finding.Problem {
	t := typing[parts.Part]{noun: "part", columns: l.Columns, cells: typedPart, above: max(l.HeaderRows[1], l.UnitsRow),
		apart: func(p *parts.Part) parts.Part { return *p }, assumed: func(p *parts.Part) *[]joint.Assumption { return &p.Assumed }}
	if !t.find(whole, l.Sheet, cutMark) {
		return nil
	}
	t.all(l.Parts, func(p *parts.Part) int { return p.Place.Row }, l.Others)
	l.Typed = t.kept
	return t.out
}

// typing takes over what was typed beside one list.
type typing[T any] struct {
	noun    string // what a row of the list is
	columns []joint.Column
	cells   []typedCell[T]
	above   int // the last row over those of the list
	apart   func(*T) T
	assumed func(*T) *[]joint.Assumption

	file  string
	sheet *list.Sheet
	heads map[string]head
	live  bool // formulas stand in our columns

	kept map[int]string // row -> what was taken, and what the list said then
	out  []finding.Problem
}

// find looks for our columns beside the list; false where there are none.
func (t *typing[T]) find(whole *list.Source, sheet, mark string) bool {
	if whole == nil || whole.Format == list.CSV {
		return false
	}
	ours, ok := pack.FindOurs(whole.Data, marks...)
	if !ok {
		return false
	}
	place, on := ours.On(sheet)
	for i := range whole.Sheets {
		if s := &whole.Sheets[i]; on && s.Name == sheet && place.Mark == mark {
			t.file, t.sheet, t.heads, t.live = whole.File, s, ourHeads(s, place), hasFormulas(s, place)
			return true
		}
	}
	return false
}

// hasFormulas tells whether any cell of our columns is a formula: in a workbook of values
// a number is no sign that somebody typed it.
func hasFormulas(s *list.Sheet, ours pack.Place) bool {
	for _, r := range s.Rows {
		for i := range r.Cells {
			if c := &r.Cells[i]; c.Formula && c.Col >= ours.First && c.Col <= ours.Last {
				return true
			}
		}
	}
	return false
}

func (t *typing[T]) all(worked []T, rowOf func(*T) int, others []joint.OtherRow) {
	at, heading := map[int]*T{}, map[int]bool{}
	for i := range worked {
		at[rowOf(&worked[i])] = &worked[i]
	}
	for _, o := range others {
		heading[o.Row] = o.Fate == joint.TitleRow || o.Fate == joint.HeaderRow || o.Fate == joint.UnitsRow || o.Fate == joint.RepeatRow
	}
	for _, r := range t.sheet.Rows {
		switch row := at[r.Number]; {
		case row != nil:
			t.row(row, r)
		case r.Number > t.above && !heading[r.Number]:
			t.unworked(r)
		}
	}
}

// touch is what somebody did to a cell of ours.
type touch uint8

const (
	untouched  touch = iota // as far as can be seen
	renumbered              // it holds another number
	emptied
	worded     // it holds something else than a number
	formulated // it holds a formula that is not ours
)

// touched tells what was done to a cell of ours since it was written.
func (t *typing[T]) touched(c *typedCell[T], r list.Row, own string) touch {
	if t.heads[c.now].col == 0 || t.heads[c.then].col == 0 {
		return untouched
	}
	now, then := r.At(t.heads[c.now].col), r.At(t.heads[c.then].col)
	stood := then.Kind == list.Number
	same := stood && now.Kind == list.Number && agree(now.Value, then.Value)
	switch {
	case now.Formula && stood && !same && (c.loose || c.alone && own == "" && now.Value != 0):
		return formulated // where ours would have nothing to read
	case now.Formula || same:
		return untouched
	case now.Kind == list.Blank && stood:
		return emptied
	case now.Kind == list.Blank:
		return untouched
	case now.Kind != list.Number || now.Percent || !finiteCell(now.Value):
		return worded
	case !stood && c.loose && !t.live:
		return untouched // the figure of the list's own cell, written without its formula
	}
	return renumbered
}

// row takes over what was typed into one row.
func (t *typing[T]) row(j *T, r list.Row) {
	before := saidBefore(r.At(t.heads["typed"].col).Text)
	var kept []string
	for k := range t.cells {
		c := &t.cells[k]
		own := t.own(c, r)
		text, held := before[c.now]
		now, done := r.At(t.heads[c.now].col), t.touched(c, r, own)
		if done != untouched && done != renumbered {
			t.tellTouched(c, j, r, now, done)
			continue
		}
		if done == untouched && (!held || now.Formula || now.Kind != list.Number) {
			continue
		}
		value := round6(now.Value * t.heads[c.now].per)
		listed, stated := c.said(j)
		moved := held && text != own || !held && stated && own != "" && t.movedSince(c, r, listed)
		if moved && done == untouched || stated && nearly(listed, value) {
			continue // typed long ago, and the list has been changed since and holds; or both say the same
		}
		if moved || !t.take(c, j, value) {
			t.tell(c, r, now, t.whyNot(c, listed, stated, moved))
			continue
		}
		kept = append(kept, c.now+"="+own)
		t.taken(c, j, r, now, own)
	}
	if len(kept) > 0 {
		if t.kept == nil {
			t.kept = map[int]string{}
		}
		t.kept[r.Number] = strings.Join(kept, "; ")
	}
}

// movedSince tells whether the list's own figure is another than that reckoned with.
func (t *typing[T]) movedSince(c *typedCell[T], r list.Row, listed float64) bool {
	then := r.At(t.heads[c.then].col)
	return then.Kind == list.Number && !nearly(listed, then.Value*t.heads[c.then].per)
}

// unworked tells what was typed into a row that is not worked, and so goes nowhere.
func (t *typing[T]) unworked(r list.Row) {
	before := saidBefore(r.At(t.heads["typed"].col).Text)
	for k := range t.cells {
		c := &t.cells[k]
		now, done := r.At(t.heads[c.now].col), t.touched(c, r, t.own(c, r))
		_, held := before[c.now]
		if done == untouched && held && !now.Formula && now.Kind == list.Number {
			done = renumbered
		}
		if done != untouched && done != emptied {
			t.tell(c, r, now, "this row is not worked")
		}
	}
}

// take changes the row of the list where it has such a figure.
func (t *typing[T]) take(c *typedCell[T], j *T, value float64) bool {
	if value < 0 || value > c.most {
		return false
	}
	other := t.apart(j)
	if !c.take(&other, value) {
		return false
	}
	*j = other
	return true
}

// own is what the user's cells say of the same figure.
func (t *typing[T]) own(c *typedCell[T], r list.Row) string {
	for _, keys := range [][]string{c.keys, c.or} {
		var said []string
		for _, col := range t.columns {
			if text := strings.TrimSpace(r.At(col.Col).Text); text != "" && slices.Contains(keys, col.Key) {
				said = append(said, strings.ReplaceAll(text, ";", ","))
			}
		}
		if len(said) > 0 {
			return strings.Join(said, " ")
		}
	}
	return ""
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
