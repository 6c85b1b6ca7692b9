package pack

import (
	"fmt"
	"strconv"
	"strings"
)

// editHead returns the head of the user's sheet with the dimension rewritten, our
// columns' widths added, and panes frozen where the user froze none.
func (l *Leaf) editHead(a *Annotation) ([]byte, error) {
	list, err := pieces(l.shape.head, 0)
	if err != nil {
		return nil, err
	}
	h := headEdit{l: l, a: a, head: l.shape.head, found: map[string]piece{}}
	for _, p := range list {
		h.found[p.name] = p
	}
	h.sheetPr()
	h.dimension()
	h.view()
	h.format()
	h.columns()
	return apply(h.head, h.edits), nil
}

type headEdit struct {
	l     *Leaf
	a     *Annotation
	head  []byte
	found map[string]piece
	edits []edit
}

func (h *headEdit) tree(name string) (*node, bool) {
	p, ok := h.found[name]
	if !ok {
		return nil, false
	}
	root, err := parse(h.head[p.start:p.end])
	if err != nil {
		return nil, false
	}
	shift(root, p.start)
	return root, true
}

// shift moves the offsets of a tree that was parsed apart.
func shift(n *node, by int) {
	n.start, n.open, n.shut, n.end = n.start+by, n.open+by, n.shut+by, n.end+by
	for _, k := range n.kids {
		shift(k, by)
	}
}

func (h *headEdit) dimension() {
	n, ok := h.tree("dimension")
	if !ok {
		return
	}
	first := "A1"
	if ref, _, _ := strings.Cut(n.attr("ref"), ":"); ref != "" {
		if _, row, ok := cellRef([]byte(ref)); ok && (h.a.Extra == 0 || row <= h.a.Extra) {
			first = ref
		}
	}
	last := ColumnName(h.a.First+len(h.a.Columns)-1) + strconv.Itoa(max(h.l.shape.LastRow, h.a.Last))
	h.edits = append(h.edits, setAttr(h.head, n, "ref", first+":"+last))
}

// view freezes the header where the user's own view freezes nothing.
func (h *headEdit) view() {
	views, ok := h.tree("sheetViews")
	if !ok || h.a.FreezeRows == 0 || len(views.kids) == 0 {
		return
	}
	v := views.kids[0]
	kind := v.attr("view")
	if v.name != "sheetView" || v.child("pane") != nil || (kind != "" && kind != "normal") {
		return
	}
	corner := ColumnName(h.a.FreezeCols+1) + strconv.Itoa(h.a.FreezeRows+1)
	split, active := "", "bottomLeft"
	if h.a.FreezeCols > 0 {
		split, active = fmt.Sprintf(` xSplit="%d"`, h.a.FreezeCols), "bottomRight"
	}
	pane := fmt.Sprintf(`<%spane%s ySplit="%d" topLeftCell="%s" activePane="%s" state="frozen"/>`,
		h.l.shape.prefix, split, h.a.FreezeRows, corner, active)
	h.edits = append(h.edits, prependInto(v, pane))
}

// sheetPr lets a group of columns fold towards its first one, which stays in
// sight, unless the user has folds of their own; and fits the print to the width
// of a page where the user set no print.
func (h *headEdit) sheetPr() {
	folds, fits := !h.folds(), !h.l.printsItself()
	pr, ok := h.tree("sheetPr")
	q := func(name string) string { return h.l.shape.prefix + name }
	outline, page := "<"+q("outlinePr")+` summaryRight="0"/>`, "<"+q("pageSetUpPr")+` fitToPage="1"/>`
	if !ok {
		text := ""
		if folds {
			text = outline
		}
		if fits {
			text += page
		}
		if text != "" {
			h.edits = append(h.edits, edit{at: h.rootOpen(), text: "<" + q("sheetPr") + ">" + text + "</" + q("sheetPr") + ">"})
		}
		return
	}
	if folds {
		h.inSheetPr(pr, "outlinePr", "summaryRight", "0", outline)
	}
	if fits {
		h.inSheetPr(pr, "pageSetUpPr", "fitToPage", "1", page)
	}
}

// inSheetPr sets an attribute of a child of sheetPr, and makes the child where
// there is none. A self-closed sheetPr takes one child at a time.
func (h *headEdit) inSheetPr(pr *node, child, attr, value, text string) {
	if n := pr.child(child); n != nil {
		h.edits = append(h.edits, setAttr(h.head, n, attr, value))
		return
	}
	if pr.selfClosed() {
		for i := range h.edits {
			if e := &h.edits[i]; e.cut == 2 && e.at == pr.open-2 {
				e.text = strings.Replace(e.text, "</", text+"</", 1)
				return
			}
		}
	}
	h.edits = append(h.edits, placeIn(pr, []string{"tabColor", "outlinePr", "pageSetUpPr"}, child, text))
}

func (h *headEdit) folds() bool {
	if cols, ok := h.tree("cols"); ok {
		for _, c := range cols.kids {
			if c.attr("outlineLevel") != "" {
				return true
			}
		}
	}
	return false
}

// rootOpen is where the start tag of the root ends.
func (h *headEdit) rootOpen() int {
	w := window{buf: h.head, z: len(h.head), eof: true}
	for i := 0; ; {
		m, err := w.markupFrom(i)
		if err != nil {
			return h.dataStart()
		}
		if m.kind == 's' {
			return m.to
		}
		i = m.to
	}
}

// format tells the program how deep our columns fold.
func (h *headEdit) format() {
	depth := 0
	for _, c := range h.a.Columns {
		depth = max(depth, c.Level)
	}
	n, ok := h.tree("sheetFormatPr")
	if depth == 0 || !ok {
		return
	}
	had, _ := strconv.Atoi(n.attr("outlineLevelCol"))
	if had < depth {
		h.edits = append(h.edits, setAttr(h.head, n, "outlineLevelCol", strconv.Itoa(depth)))
	}
}

// columns adds the widths of our columns. A width of the user's that covers them
// (a default set over all columns) is cut around ours.
func (h *headEdit) columns() {
	ours := h.columnText()
	first, last := h.a.First, h.a.First+len(h.a.Columns)-1
	cols, ok := h.tree("cols")
	if !ok {
		text := "<" + h.l.shape.prefix + "cols>" + ours + "</" + h.l.shape.prefix + "cols>"
		h.edits = append(h.edits, edit{at: h.dataStart(), text: text})
		return
	}
	placed := false
	for _, c := range cols.kids {
		lo, _ := strconv.Atoi(c.attr("min"))
		hi, _ := strconv.Atoi(c.attr("max"))
		switch {
		case hi < first || placed && lo > last:
		case lo > last:
			h.edits = append(h.edits, edit{at: c.start, text: ours})
			placed = true
		default:
			text := ""
			if lo < first {
				text = h.colRange(c, lo, first-1)
			}
			if !placed {
				text += ours
			}
			if hi > last {
				text += h.colRange(c, last+1, hi)
			}
			placed = true
			h.edits = append(h.edits, edit{at: c.start, cut: c.end - c.start, text: text})
		}
	}
	if !placed {
		h.edits = append(h.edits, appendInto(cols, ours))
	}
}

// colRange returns a width of the user's for another range of columns.
func (h *headEdit) colRange(c *node, lo, hi int) string {
	text := h.head[c.start:c.end]
	root, err := parse(text)
	if err != nil {
		return ""
	}
	text = apply(text, []edit{setAttr(text, root, "min", strconv.Itoa(lo))})
	if root, err = parse(text); err != nil {
		return ""
	}
	return string(apply(text, []edit{setAttr(text, root, "max", strconv.Itoa(hi))}))
}

func (h *headEdit) columnText() string {
	var b strings.Builder
	for i, c := range h.a.Columns {
		fmt.Fprintf(&b, `<%scol min="%d" max="%d" width="%g" customWidth="1"`,
			h.l.shape.prefix, h.a.First+i, h.a.First+i, c.Width)
		if c.Hidden {
			b.WriteString(` hidden="1"`)
		}
		if c.Level > 0 {
			fmt.Fprintf(&b, ` outlineLevel="%d"`, c.Level)
		}
		b.WriteString("/>")
	}
	return b.String()
}

// dataStart is where the start tag of sheetData stands.
func (h *headEdit) dataStart() int {
	return strings.LastIndex(string(h.head), "<"+h.l.shape.prefix+"sheetData")
}

// ColumnName returns the letters of a 1-based column.
func ColumnName(col int) string {
	if col > 0 && col < len(columnNames) {
		return columnNames[col]
	}
	return columnName(col)
}

// columnNames are those of the columns that are in use in nearly every sheet.
var columnNames = func() (names [256]string) {
	for col := range names {
		names[col] = columnName(col)
	}
	return names
}()

func columnName(col int) string {
	name := ""
	for ; col > 0; col = (col - 1) / 26 {
		name = string(rune('A'+(col-1)%26)) + name
	}
	return name
}
