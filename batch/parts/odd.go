package parts

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/section"
)

// grade takes in the grade that stands in the designation: it is the part's where its
// own column is blank, and must agree with it where it is not.
func (f *fields) grade(e *joint.Entry, p *Part) {
	said := section.Grade(p.Written)
	column := e.Text("material")
	switch {
	case said == "":
	case column == "":
		p.Material = said
		p.Assumed = slices.DeleteFunc(p.Assumed, func(a joint.Assumption) bool { return a.Key == "material" })
		p.assume("material", said, "blank: the designation names it", "derived")
	case !strings.HasPrefix(markKey(column), markKey(said)) && !strings.HasPrefix(markKey(said), markKey(column)):
		e.Say(finding.Warning, "material", "two-grades", column, fmt.Sprintf("the section %s says %s; the column is taken", p.Written, said), "the same grade", "correct one of them")
	}
}

// usual tells where a steel hollow section has a size in which none is made.
func (f *fields) usual(e *joint.Entry, p *Part) {
	if row, known := f.set.Material(p.Material); known && row.Group != "carbon steel" {
		return
	}
	if near := section.Unusual(&p.Section, f.set); len(near) > 0 {
		e.Say(finding.Warning, "section", "unusual-size", p.Written, fmt.Sprintf("hollow sections are not made in this size (EN 10219, EN 10210 and what is kept in stock); it is worked as %s", p.Section.Designation), strings.Join(near, " or "), "check the sizes; leave them where the tube is made to order")
	}
}

// twice tells about a mark that stands in more than one row.
func (f *fields) twice(e *joint.Entry, p *Part) {
	if p.Mark == "" {
		return
	}
	key := markKey(p.Assembly) + "\x00" + markKey(p.Mark)
	at, ok := f.first[key]
	if !ok {
		f.first[key] = len(f.list.Parts)
		return
	}
	first := &f.list.Parts[at]
	if first.Section.Designation == p.Section.Designation && first.Length == p.Length && strings.EqualFold(first.Material, p.Material) {
		e.Say(finding.Note, "part", "mark-twice", p.Mark, fmt.Sprintf("this mark stands already in row %d with the same section and length; the two quantities are added together", first.Place.Row), "",
			fmt.Sprintf("if that is right nothing need be done; if the row stands twice by mistake delete one; if it is another part give row %d a mark of its own", p.Place.Row))
		return
	}
	e.Say(finding.Warning, "part", "mark-twice", p.Mark, fmt.Sprintf("this mark stands already in row %d as %s of %s mm; both are worked, and joints that name it take the first", first.Place.Row, first.Section.Designation, number(float64(first.Length))), "a mark that means one part", "give each part its own mark")
}
