package pack

import (
	"fmt"
	"strconv"
	"strings"
)

// names adds the donor's defined names behind the user's own, and what the user
// has not set of the print of an annotated sheet. Names of a sheet follow it to its place.
func (g *graft) names() {
	root := g.u.book.root
	q := root.qname("definedName")
	count := len(root.child("sheets").all("sheet"))
	var text strings.Builder
	for _, on := range g.on {
		text.WriteString(on.a.printNames(q))
	}
	for _, n := range g.d.definedNames() {
		fmt.Fprintf(&text, `<%s name="%s"`, q, escape(n.attr("name")))
		if at, err := strconv.Atoi(n.attr("localSheetId")); err == nil {
			fmt.Fprintf(&text, ` localSheetId="%d"`, at+count)
		}
		if n.attr("hidden") != "" || strings.HasPrefix(n.attr("name"), oursName) {
			text.WriteString(` hidden="1"`)
		}
		fmt.Fprintf(&text, ">%s</%s>", g.d.book.data[n.open:n.shut], q)
	}
	if own := root.child("definedNames"); own != nil {
		g.book = append(g.book, appendInto(own, text.String()))
		return
	}
	all := root.qname("definedNames")
	g.book = append(g.book, placeIn(root, bookOrder, "definedNames", "<"+all+">"+text.String()+"</"+all+">"))
}

// printNames are the names for what is printed of a sheet, where the user has none,
// each with the hidden one that marks it as ours.
func (a *Annotation) printNames(q string) string {
	if a.Leaf.namesPrint() {
		return ""
	}
	var text strings.Builder
	for _, p := range []struct{ name, ref string }{{"_xlnm.Print_Area", a.PrintArea}, {"_xlnm.Print_Titles", a.PrintTitle}} {
		if p.ref != "" {
			fmt.Fprintf(&text, `<%s name="%s" localSheetId="%d">%s</%s>`, q, p.name, a.Leaf.at(), escape(p.ref), q)
			fmt.Fprintf(&text, `<%s name="%s" hidden="1">%s</%s>`, q, printMark(a.Mark, p.name), escape(p.ref), q)
		}
	}
	return text.String()
}
