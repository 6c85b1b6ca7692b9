package workbook

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
)

// The codes of what is told of figures typed into our cells: taken, and not taken.
const (
	TypedBeside   = "typed-in-our-column"
	ChangedBeside = "changed-in-our-column"
)

// taken lists a figure as taken from our cell.
func (t *typing[T]) taken(c *typedCell[T], j *T, r list.Row, now list.Cell, own string) {
	h, said := t.heads[c.now], "the list says nothing"
	if own != "" {
		said = "the list says " + own
	}
	key, all := c.keys[0], t.assumed(j)
	*all = slices.DeleteFunc(slices.Clone(*all), func(a joint.Assumption) bool { return a.Key == key })
	*all = append(*all, joint.Assumption{Key: key, Value: strings.TrimSpace(exact(round6(now.Value)) + " " + h.unit), Why: "typed into our column; " + said, Basis: "typed"})
	t.out = append(t.out, finding.Problem{
		Place: t.place(r, h), Level: finding.Note, Code: TypedBeside,
		Text: fmt.Sprintf("%s is taken as %s, typed into our column; %s", h.text, exact(round6(now.Value)), said),
		Read: now.Text, Hint: "it holds until the list says something else; write it into your own column to have it there"})
}

// whyNot says why a number is not taken.
func (t *typing[T]) whyNot(c *typedCell[T], listed float64, stated, moved bool) string {
	switch {
	case moved && stated:
		return "the list was changed as well, and holds: " + exact(round6(listed/t.heads[c.now].per))
	case moved:
		return "the list was changed as well, and holds: it says nothing now"
	}
	if c.follows != "" {
		return "it follows from " + c.follows
	}
	return "this " + t.noun + " has no such figure of its own, or not of that size"
}

// tell says that what was typed into our cell is not taken.
func (t *typing[T]) tell(c *typedCell[T], r list.Row, now list.Cell, why string) {
	h, to, do := t.heads[c.now], "", "write the new figure into your own column and run again"
	if now.Kind == list.Number {
		to = " to " + exact(round6(now.Value))
	}
	if c.follows != "" {
		do = "change " + c.follows + " instead and run again"
	}
	t.out = append(t.out, finding.Problem{
		Place: t.place(r, h), Level: finding.Warning, Code: ChangedBeside,
		Text: fmt.Sprintf("%s was changed%s in our column and is not taken: %s", h.text, to, why),
		Read: now.Text, Want: "the change in your own column", Hint: do})
}

// tellTouched tells of a cell of ours that holds no number, or none that was typed. An
// emptied one leaves the word to the list, which loses nothing.
func (t *typing[T]) tellTouched(c *typedCell[T], j *T, r list.Row, now list.Cell, done touch) {
	h := t.heads[c.now]
	p := finding.Problem{Place: t.place(r, h), Level: finding.Warning, Code: ChangedBeside, Read: now.Text, Want: "a number" + inUnit(h.unit)}
	switch done {
	case emptied:
		p.Level, p.Code, p.Want = finding.Note, TypedBeside, ""
		p.Text = h.text + " was emptied in our column: what the list says holds"
		if listed, stated := c.said(j); stated {
			p.Text += ", " + exact(round6(listed/h.per))
		} else {
			p.Text += ", which is nothing, and the run fills it in"
		}
		p.Hint = "if another figure is meant, type it there or into your own column"
	case formulated:
		p.Text = h.text + " holds a formula of yours in our column, and is not taken: the next workbook would not have it"
		p.Hint = "type the figure that it gives, or write the formula into your own column, and run again"
	default:
		p.Text = h.text + " holds no number in our column, and is not taken"
		p.Hint = "type the number alone" + inUnit(h.unit) + ", or write it into your own column, and run again"
	}
	t.out = append(t.out, p)
}

func inUnit(unit string) string {
	if unit == "" {
		return ""
	}
	return " in " + unit
}

func (t *typing[T]) place(r list.Row, h head) finding.Place {
	return finding.Place{File: t.file, Sheet: t.sheet.Name, Row: r.Number, Col: h.col, Header: h.text}
}
