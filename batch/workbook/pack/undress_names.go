package pack

import (
	"strconv"
	"strings"
)

// names takes our names away and lets those of the user's sheets follow them.
func (un *undress) names() {
	u := un.u
	names := u.book.root.child("definedNames")
	kept := 0
	for _, n := range names.all("definedName") {
		sheet, _, _ := splitRef(unescape(string(u.book.data[n.open:n.shut])))
		at, err := strconv.Atoi(n.attr("localSheetId"))
		local := err == nil && at < len(un.moved)
		switch {
		case strings.HasPrefix(n.attr("name"), oursName), un.ours.Sheets[sheet], local && un.moved[at] < 0, un.ourPrint(n):
			un.book = append(un.book, edit{at: n.start, cut: n.end - n.start})
		default:
			kept++
			if local && un.moved[at] != at {
				un.book = append(un.book, setAttr(u.book.data, n, "localSheetId", strconv.Itoa(un.moved[at])))
			}
		}
	}
	if kept == 0 {
		un.book = append(un.book[:0:0], un.outside(names)...)
		un.book = append(un.book, edit{at: names.start, cut: names.end - names.start})
	}
}

// ourPrint tells whether a name is the print area or the print titles as this
// tool set them.
func (un *undress) ourPrint(n *node) bool {
	name, mark := n.attr("name"), ""
	if name != "_xlnm.Print_Area" && name != "_xlnm.Print_Titles" {
		return false
	}
	for _, b := range un.leaves {
		if n.attr("localSheetId") == strconv.Itoa(b.leaf.at()) {
			mark = printMark(b.Mark, name)
		}
	}
	text := func(n *node) string { return string(un.u.book.data[n.open:n.shut]) }
	for _, k := range un.u.book.root.child("definedNames").all("definedName") {
		if k.attr("name") == mark {
			return text(k) == text(n)
		}
	}
	return false
}

// outside returns the edits that do not lie inside n.
func (un *undress) outside(n *node) []edit {
	var out []edit
	for _, e := range un.book {
		if e.at < n.start || e.at >= n.end {
			out = append(out, e)
		}
	}
	return out
}
