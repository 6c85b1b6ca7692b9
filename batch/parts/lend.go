package parts

import (
	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// Index finds the parts that joints name.
type Index struct {
	list      *List
	byMark    map[string][]int // folded mark -> parts
	bySection map[string][]int // designation -> parts
}

// NewIndex prepares a cut list for look-up.
func NewIndex(l *List) *Index {
	x := &Index{list: l, byMark: map[string][]int{}, bySection: map[string][]int{}}
	for i := range l.Parts {
		p := &l.Parts[i]
		if p.Mark != "" {
			x.byMark[markKey(p.Mark)] = append(x.byMark[markKey(p.Mark)], i)
		}
		x.bySection[p.Section.Designation] = append(x.bySection[p.Section.Designation], i)
	}
	return x
}

// Find returns the part that a joint's words name by its mark: that of the joint's
// own assembly where several have it, else the first.
func (x *Index) Find(words, assembly string) (part int, ok bool) {
	all := x.byMark[markKey(words)]
	if words == "" || len(all) == 0 {
		return 0, false
	}
	for _, i := range all {
		if assembly != "" && markKey(x.list.Parts[i].Assembly) == markKey(assembly) {
			return i, true
		}
	}
	return all[0], true
}

// Thickness returns the thickness where a weld on the part would sit: of its web,
// wall or leg, and of its flange; zero where the words name no part.
func (x *Index) Thickness(words, assembly string) (web, flange units.MM) {
	i, ok := x.Find(words, assembly)
	if !ok {
		return 0, 0
	}
	s := &x.list.Parts[i].Section
	return s.Web, s.Flange
}

// Lend gives the joints what the cut list says of their parts: the section, from
// which the planner takes thickness and seam, and the grade where the row has none.
// The joints given are not changed.
func (x *Index) Lend(joints []joint.Joint) []joint.Joint {
	out := make([]joint.Joint, len(joints))
	copy(out, joints)
	for i := range out {
		j := &out[i]
		j.Lent1, j.Lent2 = x.lent(j.Part1, j.Assembly), x.lent(j.Part2, j.Assembly)
		lendGrade(j)
	}
	return out
}

func (x *Index) lent(words, assembly string) *joint.Lent {
	i, ok := x.Find(words, assembly)
	if !ok {
		return nil
	}
	p := &x.list.Parts[i]
	return &joint.Lent{Section: p.Text, Material: p.Material}
}

// lendGrade takes the grades of the parts where the row states none: the shop's own
// grade is for rows of which nothing says better.
func lendGrade(j *joint.Joint) {
	grade1, grade2 := gradeOf(j.Lent1), gradeOf(j.Lent2)
	if grade1 == "" {
		grade1, grade2 = grade2, ""
	}
	if grade1 == "" || j.Material2 != "" || j.Material != "" && !assumed(j, "material") {
		return
	}
	kept := make([]joint.Assumption, 0, len(j.Assumed)+2)
	for _, a := range j.Assumed {
		if a.Key != "material" {
			kept = append(kept, a)
		}
	}
	*j = j.Apart()
	j.Material = grade1
	kept = append(kept, joint.Assumption{Key: "material", Value: grade1, Why: "blank: that of its part in the cut list", Basis: "derived", Kin: "blank: that of its part in the cut list"})
	if grade2 != "" && !sameWords(grade1, grade2) {
		j.Material2 = grade2
		kept = append(kept, joint.Assumption{Key: "material2", Value: grade2, Why: "blank: that of its second part in the cut list", Basis: "derived", Kin: "blank: that of its second part in the cut list"})
	}
	j.Assumed = kept
}

func gradeOf(l *joint.Lent) string {
	if l == nil {
		return ""
	}
	return l.Material
}

func assumed(j *joint.Joint, key string) bool {
	for _, a := range j.Assumed {
		if a.Key == key {
			return true
		}
	}
	return false
}

func sameWords(a, b string) bool { return markKey(a) == markKey(b) }
