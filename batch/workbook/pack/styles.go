package pack

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// styleOrder is the order in which the format wants the sections of a stylesheet.
var styleOrder = []string{"numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs",
	"cellStyles", "dxfs", "tableStyles", "colors", "extLst"}

// merged is a stylesheet with the donor's styles behind the user's own.
type merged struct {
	data   []byte
	styles []int // donor style -> style in the merged sheet
	dxfs   int   // by how much conditional styles moved
}

// mergeStyles puts the donor's styles behind the user's own: the user's keep
// their numbers, so every cell of theirs looks as before. A style that stands
// there already, as in a workbook that this tool wrote before, is used and not
// put in once more.
func mergeStyles(user, donor *part) (merged, error) {
	if user.root.name != "styleSheet" {
		return merged{}, strange("the stylesheet is a %s", user.root.name)
	}
	m := styleMerge{user: user, donor: donor, formats: map[string]string{}}
	m.numFmts() // first, as the order is: a stylesheet without sections takes them all at one place
	moved := map[string][]int{"fontId": m.section("fonts"), "fillId": m.section("fills"), "borderId": m.section("borders")}
	out := merged{styles: m.xfs(moved), dxfs: m.dxfs()}
	if total := m.count("cellXfs") + len(out.styles); total > 64000 {
		return merged{}, strange("the workbook has %d cell styles already, more do not fit", m.count("cellXfs"))
	}
	out.data = apply(user.data, m.edits)
	return out, nil
}

type styleMerge struct {
	user, donor *part
	edits       []edit
	formats     map[string]string // donor number format -> number in the merged sheet
}

func (m *styleMerge) donorKids(name string) []*node {
	if s := m.donor.root.child(name); s != nil {
		return s.kids
	}
	return nil
}

func (m *styleMerge) count(name string) int {
	if s := m.user.root.child(name); s != nil {
		return len(s.kids)
	}
	return 0
}

// section puts the donor's elements of a section behind the user's, as far as
// they are not there, and returns where each is found.
func (m *styleMerge) section(name string) []int {
	return m.fill(name, func(k *node) (text, same string) {
		return m.graft(string(m.donor.data[k.start:k.end])), alike(m.donor.data, k, nil)
	})
}

// fill does so for any section; what gives the text of an element, and the form
// in which two are compared.
func (m *styleMerge) fill(name string, what func(*node) (text, same string)) []int {
	had := map[string]int{}
	if s := m.user.root.child(name); s != nil {
		for i, k := range s.kids {
			if form := alike(m.user.data, k, nil); !has(had, form) {
				had[form] = i
			}
		}
	}
	total := m.count(name)
	var added strings.Builder
	var at []int
	for _, k := range m.donorKids(name) {
		text, form := what(k)
		if !has(had, form) {
			had[form] = total
			added.WriteString(text)
			total++
		}
		at = append(at, had[form])
	}
	m.add(name, added.String(), total)
	return at
}

func has[V any](m map[string]V, key string) bool {
	_, ok := m[key]
	return ok
}

// alike writes an element so that two which say the same are the same text: without
// prefixes, its attributes in order. put changes the value of an attribute.
func alike(data []byte, n *node, put func(name, value string) string) string {
	var attrs []string
	for _, a := range n.attrs {
		if a.Name.Space == "xmlns" || a.Name.Local == "xmlns" {
			continue
		}
		value := a.Value
		if put != nil {
			value = put(a.Name.Local, value)
		}
		attrs = append(attrs, fmt.Sprintf("%s:%s=%q", a.Name.Space, a.Name.Local, value))
	}
	slices.Sort(attrs)
	var b strings.Builder
	b.WriteString(n.name + "(" + strings.Join(attrs, " ") + "){")
	for _, k := range n.kids {
		b.WriteString(alike(data, k, nil))
	}
	if len(n.kids) == 0 {
		b.Write(data[n.open:n.shut])
	}
	return b.String() + "}"
}

// dxfs finds the donor's conditional styles as a run among the user's, or puts
// them behind; it returns by how much their numbers move.
func (m *styleMerge) dxfs() int {
	var ours, theirs []string
	var text strings.Builder
	for _, k := range m.donorKids("dxfs") {
		ours = append(ours, alike(m.donor.data, k, nil))
		text.WriteString(m.graft(string(m.donor.data[k.start:k.end])))
	}
	if s := m.user.root.child("dxfs"); s != nil {
		for _, k := range s.kids {
			theirs = append(theirs, alike(m.user.data, k, nil))
		}
	}
	for i := 0; i+len(ours) <= len(theirs); i++ {
		if slices.Equal(ours, theirs[i:i+len(ours)]) {
			return i
		}
	}
	m.add("dxfs", text.String(), len(theirs)+len(ours))
	return len(theirs)
}

// graft gives an element the spreadsheet namespace where the user's part spells
// its elements with a prefix.
func (m *styleMerge) graft(text string) string {
	if m.user.root.prefix == "" {
		return text
	}
	end := strings.IndexAny(text, " />")
	return text[:end] + ` xmlns="` + mainNS + `"` + text[end:]
}

// add puts elements into a section, and makes the section where there is none.
func (m *styleMerge) add(name, text string, total int) {
	if text == "" {
		return
	}
	if s := m.user.root.child(name); s != nil {
		m.edits = append(m.edits, setAttr(m.user.data, s, "count", strconv.Itoa(total)), appendInto(s, text))
		return
	}
	q := m.user.root.qname(name)
	section := fmt.Sprintf(`<%s count="%d">%s</%s>`, q, total, text, q)
	m.edits = append(m.edits, placeIn(m.user.root, styleOrder, name, section))
}

// placeIn puts a new child in its place among the ordered children of n.
func placeIn(n *node, order []string, name, text string) edit {
	later := map[string]bool{}
	for i := len(order) - 1; i >= 0 && order[i] != name; i-- {
		later[order[i]] = true
	}
	for _, k := range n.kids {
		if later[k.name] {
			return edit{at: k.start, text: text}
		}
	}
	return appendInto(n, text)
}

// numFmts finds the donor's own number formats among the user's, or puts them
// behind under free numbers.
func (m *styleMerge) numFmts() {
	next, had := 164, map[string]string{}
	if s := m.user.root.child("numFmts"); s != nil {
		for _, k := range s.kids {
			if id, err := strconv.Atoi(k.attr("numFmtId")); err == nil && id < 1<<30 {
				next = max(next, id+1)
				had[k.attr("formatCode")] = k.attr("numFmtId")
			}
		}
	}
	var text strings.Builder
	total := m.count("numFmts")
	for _, k := range m.donorKids("numFmts") {
		code := k.attr("formatCode")
		if !has(had, code) {
			had[code] = strconv.Itoa(next)
			text.WriteString(m.graft(fmt.Sprintf(`<numFmt numFmtId="%d" formatCode="%s"/>`, next, escape(code))))
			next, total = next+1, total+1
		}
		m.formats[k.attr("numFmtId")] = had[code]
	}
	m.add("numFmts", text.String(), total)
}

// xfs does as section does for the donor's cell formats, with their numbers moved.
func (m *styleMerge) xfs(moved map[string][]int) []int {
	put := func(name, value string) string {
		if to, ok := moved[name]; ok {
			if n, err := strconv.Atoi(value); err == nil && n >= 0 && n < len(to) {
				return strconv.Itoa(to[n])
			}
		}
		if id, ok := m.formats[value]; ok && name == "numFmtId" {
			return id
		}
		return value
	}
	return m.fill("cellXfs", func(k *node) (text, same string) {
		return m.graft(m.xf(k, put)), alike(m.donor.data, k, put)
	})
}

func (m *styleMerge) xf(k *node, put func(name, value string) string) string {
	var b strings.Builder
	b.WriteString("<xf")
	for _, a := range k.attrs {
		fmt.Fprintf(&b, ` %s="%s"`, a.Name.Local, escape(put(a.Name.Local, a.Value)))
	}
	if k.selfClosed() {
		return b.String() + "/>"
	}
	return b.String() + ">" + string(m.donor.data[k.open:k.shut]) + "</xf>"
}
