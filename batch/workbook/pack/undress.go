package pack

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// Hidden names mark what is ours in a workbook that this tool wrote: the columns
// beside the list, and each sheet.
const (
	oursName    = "seamtally_"
	ColumnsName = oursName + "columns"
	SheetName   = oursName + "sheet_"
)

// printMarks are hidden names that repeat what this tool set of the print of the
// list: as long as the two agree, the print is ours to set anew.
var printMarks = map[string]string{"_xlnm.Print_Area": oursName + "print_area", "_xlnm.Print_Titles": oursName + "print_titles"}

// Ours is what this tool put into a workbook, as far as it is still there.
type Ours struct {
	Sheet       string // the sheet of the list
	First, Last int    // our columns on it
	Sheets      map[string]bool
}

// FindOurs looks for the marks of this tool; ok is false where the columns are
// not marked.
func FindOurs(data []byte) (ours Ours, ok bool) {
	u, err := openBook(data)
	if err != nil {
		return Ours{}, false
	}
	return u.ours()
}

func (u *User) ours() (Ours, bool) {
	ours := Ours{Sheets: map[string]bool{}}
	names := u.book.root.child("definedNames")
	if names == nil {
		return ours, false
	}
	for _, n := range names.all("definedName") {
		sheet, ref, ok := splitRef(unescape(string(u.book.data[n.open:n.shut])))
		switch name := n.attr("name"); {
		case !ok:
		case name == ColumnsName:
			ours.Sheet = sheet
			ours.First, ours.Last = columnsOf(ref)
		case strings.HasPrefix(name, SheetName):
			ours.Sheets[sheet] = true
		}
	}
	return ours, ours.First > 0 && ours.Last >= ours.First
}

// splitRef cuts 'A sheet'!$B:$C.
func splitRef(text string) (sheet, ref string, ok bool) {
	i := strings.LastIndexByte(text, '!')
	if i < 1 {
		return "", "", false
	}
	sheet, ref = text[:i], text[i+1:]
	if strings.HasPrefix(sheet, "'") && strings.HasSuffix(sheet, "'") && len(sheet) > 2 {
		sheet = strings.ReplaceAll(sheet[1:len(sheet)-1], "''", "'")
	}
	return sheet, ref, !strings.Contains(ref, "#REF")
}

// columnsOf reads $B:$C or $B$1:$C$9.
func columnsOf(ref string) (first, last int) {
	a, b, _ := strings.Cut(strings.ReplaceAll(ref, "$", ""), ":")
	first, _, _ = cellRef([]byte(strings.TrimRight(a, "0123456789") + "1"))
	last, _, _ = cellRef([]byte(strings.TrimRight(b, "0123456789") + "1"))
	return first, last
}

// Undress takes out of a workbook what this tool put in: our columns beside the
// list, our sheets with what hangs on them, our names. What the user has is
// copied as it stands.
func Undress(data []byte) ([]byte, error) {
	u, err := openBook(data)
	if err != nil {
		return nil, err
	}
	ours, ok := u.ours()
	if !ok {
		return nil, strange("our columns are not marked in it")
	}
	if err := u.findSheet(u.bookName(), ours.Sheet); err != nil {
		return nil, err
	}
	un := undress{u: u, ours: ours, dropped: map[string]bool{}}
	un.sheets()
	un.names()
	return un.write()
}

type undress struct {
	u               *User
	ours            Ours
	dropped         map[string]bool
	moved           []int // new place of each sheet; -1 for ours
	book, bookRels  []edit
	keptSheetsCount int
}

// sheets takes our sheets off the workbook's list, with their parts.
func (un *undress) sheets() {
	u := un.u
	for _, s := range u.book.root.child("sheets").all("sheet") {
		if !un.ours.Sheets[s.attr("name")] {
			un.moved = append(un.moved, un.keptSheetsCount)
			un.keptSheetsCount++
			continue
		}
		un.moved = append(un.moved, -1)
		un.book = append(un.book, edit{at: s.start, cut: s.end - s.start})
		for _, r := range u.bookRels.root.all("Relationship") {
			if r.attr("Id") == s.attr("id") {
				un.bookRels = append(un.bookRels, edit{at: r.start, cut: r.end - r.start})
				un.drop(resolve(u.bookName(), r.attr("Target")))
			}
		}
	}
	un.activeTab()
}

// drop leaves a part of ours out, and what only it leads to: drawings and charts.
func (un *undress) drop(name string) {
	un.dropped[clean(name)] = true
	rels, err := un.u.open(relsOf(name))
	if err != nil {
		return
	}
	un.dropped[clean(rels.file.Name)] = true
	for _, r := range rels.root.all("Relationship") {
		target := resolve(name, r.attr("Target"))
		if r.attr("TargetMode") != "External" && (strings.Contains(target, "drawings/") || strings.Contains(target, "charts/")) {
			un.drop(target)
		}
	}
}

// activeTab opens the first sheet where the one that was open is gone.
func (un *undress) activeTab() {
	views := un.u.book.root.child("bookViews")
	if views == nil {
		return
	}
	for _, v := range views.kids {
		at, err := strconv.Atoi(v.attr("activeTab"))
		if err != nil || at >= len(un.moved) {
			continue
		}
		un.book = append(un.book, setAttr(un.u.book.data, v, "activeTab", strconv.Itoa(max(un.moved[at], 0))))
	}
}

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
	mark := printMarks[n.attr("name")]
	if mark == "" || n.attr("localSheetId") != strconv.Itoa(un.u.sheetAt()) {
		return false
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

func (un *undress) write() ([]byte, error) {
	u := un.u
	var types []edit
	for _, o := range u.types.root.all("Override") {
		if un.dropped[clean(o.attr("PartName"))] {
			types = append(types, edit{at: o.start, cut: o.end - o.start})
		}
	}
	changed := map[string][]byte{
		clean(u.types.file.Name):    apply(u.types.data, types),
		clean(u.book.file.Name):     apply(u.book.data, un.book),
		clean(u.bookRels.file.Name): apply(u.bookRels.data, un.bookRels),
	}
	var out bytes.Buffer
	p := newPacker(&out)
	for _, f := range u.zip.File {
		name := clean(f.Name)
		data, ok := changed[name]
		var err error
		switch {
		case un.dropped[name]:
		case f == u.sheet:
			data, err = un.sheet()
			if err == nil {
				err = p.put(f.Name, data)
			}
		case ok:
			err = p.put(f.Name, data)
		default:
			err = p.zip.Copy(f)
		}
		if err != nil {
			return nil, fmt.Errorf("part %s: %w", f.Name, err)
		}
	}
	if err := p.zip.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// sheet writes the sheet of the list without our columns.
func (un *undress) sheet() ([]byte, error) {
	s := Shape{Ordered: true}
	var rows bytes.Buffer
	err := un.u.walk(&s, func(r rowPiece) {
		rows.Write(r.gap)
		un.row(&rows, r)
	})
	if err != nil {
		return nil, strange("the sheet cannot be added to: %s", plainly(err))
	}
	head, err := un.head(s.head)
	if err != nil {
		return nil, err
	}
	tail, err := un.tail(s.tail)
	if err != nil {
		return nil, err
	}
	return bytes.Join([][]byte{head, rows.Bytes(), tail}, nil), nil
}
