package parts

import (
	"cmp"
	"fmt"
	"slices"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/section"
	"seamtally/tables"
)

// touch is a joint that names a part.
type touch struct {
	joint  int
	first  bool // as the part whose edge meets
	second bool
}

// newMatcher prepares the comparison of the joints with the cut list.
func newMatcher(l *List, plans []plan.Plan, set *tables.Set) *matcher {
	b := &Book{List: *l, Results: make([]Result, len(l.Parts))}
	m := &matcher{book: b, index: NewIndex(l), plans: plans, set: set, rules: map[string]*tables.CheckRule{}, touches: make([][]touch, len(l.Parts)), named: map[string]bool{}}
	for i := range set.CheckRules {
		if r := &set.CheckRules[i]; m.rules[r.Code] == nil {
			m.rules[r.Code] = r
		}
	}
	return m
}

// match compares the two lists.
func (m *matcher) match() {
	for i := range m.plans {
		m.joint(i)
	}
	if len(m.plans) > 0 {
		m.untouched()
		m.quantities()
	}
	m.thin()
}

type matcher struct {
	book     *Book
	index    *Index
	plans    []plan.Plan
	set      *tables.Set
	rules    map[string]*tables.CheckRule
	touches  [][]touch
	named    map[string]bool // designations that joints name
	anyPart  bool            // some joint names a part
	problems []finding.Problem
}

// joint notes which parts a joint touches, and tells what it names in vain.
func (m *matcher) joint(i int) {
	j := m.plans[i].Joint
	first, ok1 := m.part(i, "part1", j.Part1)
	second, ok2 := m.part(i, "part2", j.Part2)
	for k, part := range [...]int{first, second} {
		if [...]bool{ok1, ok2}[k] && m.tooShort(i, part) {
			break
		}
	}
	if ok1 && ok2 {
		m.fits(i, first, second)
	}
	if ok1 {
		m.touch(first, touch{i, true, ok2 && second == first})
	}
	if ok2 && (!ok1 || second != first) {
		m.touch(second, touch{i, false, true})
	}
}

// tooShort tells about a seam that is longer than all edges of a part together: two
// along it, and once round each end.
func (m *matcher) tooShort(i, part int) bool {
	p := &m.book.List.Parts[part]
	round := 2 * (p.Width + p.Section.Web) // of a plate
	if s := &p.Section; !p.Plate {
		round = max(s.Perimeter, 2*(s.H+s.B))
	}
	length := m.plans[i].Joint.Length
	told := p.Length > 0 && round > 0 && length > 2*(p.Length+round)
	if told {
		m.say(i, "part-seam", finding.Warning, fmt.Sprintf("the seam is %s mm long, which is more than all edges of %s (%s, %s mm long) together", number(float64(length)), p.Name(), p.Section.Designation, number(float64(p.Length))))
	}
	return told
}

func (m *matcher) touch(part int, t touch) {
	m.touches[part] = append(m.touches[part], t)
	r := &m.book.Results[part]
	r.Joints = append(r.Joints, t.joint)
	if r.Earliest == "" {
		r.Earliest = m.plans[t.joint].Joint.Assembly
	}
}

// part finds what a joint's words mean: a mark, or a section that one part of the
// list has.
func (m *matcher) part(i int, key, words string) (part int, ok bool) {
	if words == "" {
		return 0, false
	}
	m.anyPart = true
	j := m.plans[i].Joint
	if part, ok = m.index.Find(words, j.Assembly); ok {
		return part, true
	}
	if place, refused := m.book.List.Refused[markKey(words)]; refused {
		m.say(i, "part-refused", finding.Warning, fmt.Sprintf("%s is %q, row %d of the cut list, which could not be read", key, words, place.Row))
		return 0, false
	}
	read, err := section.ParseIn(words, j.PartsInch, m.set)
	if err != nil {
		m.say(i, "part-missing", finding.Warning, fmt.Sprintf("%s is %q, which is neither a mark of the cut list nor a section%s", key, words, m.near(words)))
		return 0, false
	}
	m.named[read.Designation] = true
	switch all := m.index.bySection[read.Designation]; len(all) {
	case 0:
		m.say(i, "part-missing", finding.Warning, fmt.Sprintf("%s is the section %s, and no part in the cut list is of that section", key, read.Designation))
		return 0, false
	case 1:
		return all[0], true
	default:
		m.say(i, "part-ambiguous", finding.Note, fmt.Sprintf("%s is the section %s, which %d parts of the cut list have: the weld is counted on none of them", key, read.Designation, len(all)))
		return 0, false
	}
}

func (m *matcher) near(words string) string {
	var marks []string
	for i := range m.book.List.Parts {
		if mark := m.book.List.Parts[i].Mark; mark != "" {
			marks = append(marks, mark)
		}
	}
	if near := finding.Nearest(words, marks); near != "" {
		return "; the nearest mark is " + near
	}
	return ""
}

func (m *matcher) check(code string, level finding.Level, text string) finding.Check {
	c := finding.Check{Code: code, Level: level, Text: text}
	if r := m.rules[code]; r != nil {
		c.Rule, c.Do, c.Source, c.Basis = r.Rule, r.Do, r.Source, r.Basis
	}
	return c
}

// say adds a check to the plan of a joint.
func (m *matcher) say(i int, code string, level finding.Level, text string) {
	m.plans[i].Checks = append(m.plans[i].Checks, m.check(code, level, text))
}

// sayPart adds a check to a part, and the same to the problems of the lists.
func (m *matcher) sayPart(i int, key, code string, level finding.Level, text string) {
	c := m.check(code, level, text)
	m.book.Results[i].Checks = append(m.book.Results[i].Checks, c)
	m.problems = append(m.problems, m.book.List.problem(i, key, c))
}

// problem words a check about a part as a problem with its place.
func (l *List) problem(part int, key string, c finding.Check) finding.Problem {
	p := &l.Parts[part]
	place := p.Place
	for _, col := range l.Columns {
		if col.Key == key {
			place.Col, place.Header = col.Col, col.Header
		}
	}
	return finding.Problem{Place: place, Level: c.Level, Code: c.Code, Read: p.Name(), Text: c.Text, Hint: c.Do}
}

// untouched tells which parts no joint names. A list whose joints name no parts at
// all says so once.
func (m *matcher) untouched() {
	if !m.anyPart {
		l := &m.book.List
		m.problems = append(m.problems, finding.Problem{Place: finding.Place{File: l.File, Sheet: l.Sheet, Row: l.HeaderRows[1]}, Level: finding.Note, Code: "joints-name-no-parts",
			Text: "no joint names a part, so seams and weld metal are not counted on the parts", Hint: "give the joint list the columns part1 and part2 with the marks of the cut list"})
		return
	}
	for i := range m.touches {
		p := &m.book.List.Parts[i]
		if len(m.touches[i]) > 0 || m.named[p.Section.Designation] || m.twin(i) || p.Mark == "" && m.book.List.hasMarks() {
			continue // that a part has no mark is told already
		}
		name := p.Name()
		if name != p.Section.Designation {
			name += " (" + p.Section.Designation + ")"
		}
		m.sayPart(i, "part", "part-unused", finding.Warning, fmt.Sprintf("no joint of %s touches %s", m.jointList(), name))
	}
}

// hasMarks tells whether the list has a column of marks.
func (l *List) hasMarks() bool {
	return slices.ContainsFunc(l.Columns, func(c joint.Column) bool { return c.Key == "part" })
}

// jointList names the list that the joints stand in.
func (m *matcher) jointList() string {
	place := m.plans[0].Joint.Place
	place.Row, place.Col, place.Header = 0, 0, ""
	return cmp.Or(place.String(), "the joint list")
}

// twin tells whether another row has the same mark, and joints that name it.
func (m *matcher) twin(i int) bool {
	for _, k := range m.index.byMark[markKey(m.book.List.Parts[i].Mark)] {
		if k != i && m.book.List.Parts[i].Mark != "" && len(m.touches[k]) > 0 {
			return true
		}
	}
	return false
}

// quantities compares how often joints stand on a part with how often it is cut.
//
//	sum of the joints' quantities that have the part first = k x pieces, k whole   (PARTS-1)
//	joints on the part in all >= pieces                                            (PARTS-2)
//
// A joint between two pieces of one part counts twice. Assumes: pieces that are
// alike are welded alike. Basis: derived.
func (m *matcher) quantities() {
	for i := range m.touches {
		pieces := m.pieces(i)
		if pieces == 1 {
			m.alone(i)
		}
		if len(m.touches[i]) == 0 || pieces < 2 {
			continue
		}
		m.uneven(i, pieces)
	}
}

func (m *matcher) uneven(i, pieces int) {
	first, all := 0, 0
	var odd []int
	for _, t := range m.touches[i] {
		n := max(m.plans[t.joint].Joint.Qty, 1)
		if t.first && t.second { // two pieces of one part meet
			n *= 2
		}
		all += n
		if t.first {
			first += n
			if n%pieces != 0 {
				odd = append(odd, t.joint)
			}
		}
	}
	p := &m.book.List.Parts[i]
	switch {
	case first%pieces != 0:
		for _, k := range odd {
			m.say(k, "part-quantity", finding.Warning, fmt.Sprintf("the joint has a quantity of %d, but the cut list has %d pieces of %s", max(m.plans[k].Joint.Qty, 1), pieces, p.Name()))
		}
		m.sayPart(i, "qty", "part-quantity", finding.Warning, fmt.Sprintf("the cut list has %d pieces of %s, but the joints with %s in part1 have a quantity of %d in all, which does not share out evenly (%s)", pieces, p.Name(), p.Name(), first, m.marks(odd)))
	case all < pieces:
		m.sayPart(i, "qty", "part-quantity", finding.Warning, fmt.Sprintf("the cut list has %d pieces of %s, but the joints that name it have a quantity of %d in all", pieces, p.Name(), all))
	}
}

// pieces returns how often a part is cut, rows with the same mark and sizes together.
func (m *matcher) pieces(i int) int {
	p, n := &m.book.List.Parts[i], 0
	for _, k := range m.index.alike(i) {
		n += m.book.List.Parts[k].Qty
	}
	return max(n, p.Qty)
}

// alike returns the rows that are the same part: mark, section, length, assembly.
func (x *Index) alike(i int) []int {
	p := &x.list.Parts[i]
	if p.Mark == "" {
		return []int{i}
	}
	var out []int
	for _, k := range x.byMark[markKey(p.Mark)] {
		o := &x.list.Parts[k]
		if o.Section.Designation == p.Section.Designation && o.Length == p.Length && sameWords(o.Assembly, p.Assembly) {
			out = append(out, k)
		}
	}
	return out
}

func (m *matcher) marks(joints []int) string {
	var out []string
	for _, k := range joints {
		out = append(out, m.plans[k].Joint.Mark)
	}
	return finding.Few(out, fewNamed)
}
