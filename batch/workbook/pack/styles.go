package pack

import (
	"fmt"
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

// mergeStyles appends the donor's styles to the user's: the user's own keep
// their numbers, so every cell of theirs looks as before.
func mergeStyles(user, donor *part) (merged, error) {
	if user.root.name != "styleSheet" {
		return merged{}, strange("the stylesheet is a %s", user.root.name)
	}
	m := styleMerge{user: user, donor: donor, formats: map[string]string{}}
	fonts, fills, borders := m.section("fonts"), m.section("fills"), m.section("borders")
	m.numFmts()
	first := m.count("cellXfs")
	m.xfs(fonts, fills, borders)
	out := merged{dxfs: m.section("dxfs")}
	for i := range m.donorKids("cellXfs") {
		out.styles = append(out.styles, first+i)
	}
	if first+len(out.styles) > 64000 {
		return merged{}, strange("the workbook has %d cell styles already, more do not fit", first)
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

// section appends all the donor's elements of a section as they are and returns
// how many the user had.
func (m *styleMerge) section(name string) int {
	had := m.count(name)
	var text strings.Builder
	for _, k := range m.donorKids(name) {
		text.WriteString(m.graft(string(m.donor.data[k.start:k.end])))
	}
	m.add(name, text.String(), had+len(m.donorKids(name)))
	return had
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

// numFmts appends the donor's own number formats under free numbers.
func (m *styleMerge) numFmts() {
	next := 164
	if s := m.user.root.child("numFmts"); s != nil {
		for _, k := range s.kids {
			if id, err := strconv.Atoi(k.attr("numFmtId")); err == nil && id < 1<<30 {
				next = max(next, id+1)
			}
		}
	}
	var text strings.Builder
	for _, k := range m.donorKids("numFmts") {
		m.formats[k.attr("numFmtId")] = strconv.Itoa(next)
		text.WriteString(m.graft(fmt.Sprintf(`<numFmt numFmtId="%d" formatCode="%s"/>`, next, escape(k.attr("formatCode")))))
		next++
	}
	m.add("numFmts", text.String(), m.count("numFmts")+len(m.donorKids("numFmts")))
}

// xfs appends the donor's cell formats with their numbers moved.
func (m *styleMerge) xfs(fonts, fills, borders int) {
	var text strings.Builder
	for _, k := range m.donorKids("cellXfs") {
		text.WriteString(m.graft(m.xf(k, map[string]int{"fontId": fonts, "fillId": fills, "borderId": borders})))
	}
	m.add("cellXfs", text.String(), m.count("cellXfs")+len(m.donorKids("cellXfs")))
}

func (m *styleMerge) xf(k *node, move map[string]int) string {
	var b strings.Builder
	b.WriteString("<xf")
	for _, a := range k.attrs {
		value := a.Value
		if by, ok := move[a.Name.Local]; ok {
			n, _ := strconv.Atoi(value)
			value = strconv.Itoa(n + by)
		}
		if id, ok := m.formats[value]; ok && a.Name.Local == "numFmtId" {
			value = id
		}
		fmt.Fprintf(&b, ` %s="%s"`, a.Name.Local, escape(value))
	}
	if k.selfClosed() {
		return b.String() + "/>"
	}
	return b.String() + ">" + string(m.donor.data[k.open:k.shut]) + "</xf>"
}
