// Package compare sets two revisions of a joint list side by side: which joints
// were added, removed or changed, in what, and what that makes in metres,
// kilograms, hours and money. It reads two priced jobs and changes neither.
//
// Read compare.go, then match.go (which joint is which) and fields.go (what the
// list says of a joint).
package compare

import (
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/units"
)

// Amount is what a joint, or a whole list, comes to: all copies together.
type Amount struct {
	Seam      units.Metre
	WeldMetal units.Kg
	Labour    units.Minute
	Price     units.Money
	Priced    bool // false: metal and metres only, the money is not known
}

// Field is one thing that the two lists say differently of a joint.
type Field struct{ Key, Old, New string }

// Line is one joint in either list or in both.
type Line struct {
	Mark, Assembly string
	OldRow, NewRow int // 0: not in that list
	Fields         []Field
	Old, New       Amount
}

// Side is one of the two lists as a whole, change-overs included in its money
// and hours.
type Side struct {
	File, Sheet, SHA256 string
	Joints              int
	Rejected            int // rows that could not be worked and so are not compared
	All                 Amount
	ChangeOvers         Amount // the part of All that belongs to no joint
}

// Difference is all that two lists differ in. A joint stands in one of the four
// lists, or is counted in Same.
type Difference struct {
	Old, New  Side
	Currency  string
	Added     []Line // in the order of the new list
	Removed   []Line // in the order of the old list
	Changed   []Line // the list says something else of it
	Replanned []Line // the list says the same, the choice for the whole list comes out otherwise
	Same      int
}

// Lists compares two revisions of a list, worked with the same shop values.
func Lists(old, new *price.Job) Difference {
	d := Difference{Old: sideOf(old), New: sideOf(new), Currency: new.Shop.Currency}
	pairs := match(old.Plans, new.Plans)
	for k := range new.Plans {
		line := lineOf(nil, &new.Plans[k])
		if pairs[k] < 0 {
			d.Added = append(d.Added, line)
			continue
		}
		before := &old.Plans[pairs[k]]
		line = lineOf(before, &new.Plans[k])
		if line.Fields = differing(before.Joint, new.Plans[k].Joint); len(line.Fields) > 0 {
			d.Changed = append(d.Changed, line)
			continue
		}
		if line.Fields = replanned(before, &new.Plans[k]); len(line.Fields) > 0 || line.Old != line.New {
			d.Replanned = append(d.Replanned, line)
			continue
		}
		d.Same++
	}
	kept := make([]bool, len(old.Plans))
	for _, i := range pairs {
		if i >= 0 {
			kept[i] = true
		}
	}
	for i := range old.Plans {
		if !kept[i] {
			d.Removed = append(d.Removed, lineOf(&old.Plans[i], nil))
		}
	}
	return d
}

// lineOf describes a joint by its plans in either list; nil: not in that list.
func lineOf(old, new *plan.Plan) Line {
	var l Line
	for _, side := range []struct {
		p      *plan.Plan
		row    *int
		amount *Amount
	}{{old, &l.OldRow, &l.Old}, {new, &l.NewRow, &l.New}} {
		if side.p == nil {
			continue
		}
		l.Mark, l.Assembly = side.p.Joint.Mark, side.p.Joint.Assembly
		*side.row, *side.amount = side.p.Joint.Place.Row, amountOf(side.p)
	}
	return l
}

func amountOf(p *plan.Plan) Amount {
	return Amount{Seam: p.Seam, WeldMetal: p.WeldMetal, Labour: p.Cost.Labour.Total, Price: p.Cost.Price, Priced: price.Priced(p)}
}

func sideOf(job *price.Job) Side {
	t := &job.Totals
	s := Side{File: job.List.File, Sheet: job.List.Sheet, SHA256: job.List.SHA256, Joints: len(job.Plans)}
	for _, o := range job.List.Others {
		if o.Fate == joint.Rejected {
			s.Rejected++
		}
	}
	s.ChangeOvers = Amount{Labour: t.ChangeOverMin, Price: t.ChangeOverPrice, Priced: true}
	s.All = Amount{Seam: t.All.Seam, WeldMetal: t.All.WeldMetal, Labour: t.All.Labour + t.ChangeOverMin, Price: t.Price, Priced: len(t.Unpriced) == 0}
	return s
}

// Less returns what is left of a when b is taken away. It is priced where both are.
func (a Amount) Less(b Amount) Amount {
	return Amount{
		Seam: price.Round(a.Seam-b.Seam, price.MetreDecimals), WeldMetal: price.Round(a.WeldMetal-b.WeldMetal, price.KgDecimals),
		Labour: price.Round(a.Labour-b.Labour, price.MinuteDecimals), Price: price.Round(a.Price-b.Price, price.MoneyDecimals),
		Priced: a.Priced && b.Priced,
	}
}

// By returns what a line changes: the new amount less the old, where a joint that
// is in one list only counts whole.
func (l *Line) By() Amount {
	by := l.New.Less(l.Old)
	if l.OldRow == 0 {
		by.Priced = l.New.Priced
	}
	if l.NewRow == 0 {
		by.Priced = l.Old.Priced
	}
	return by
}
