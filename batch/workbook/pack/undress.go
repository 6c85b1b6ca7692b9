package pack

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// Hidden names mark what is ours in a workbook that this tool wrote: the columns
// beside each list, and each sheet.
const (
	oursName  = "seamtally_"
	SheetName = oursName + "sheet_"
)

// ColumnsName is the hidden name of the columns of an annotation.
func ColumnsName(mark string) string { return oursName + mark + "columns" }

// printMark is the hidden name that repeats what this tool set of the print of a
// sheet: as long as the two agree, the print is ours to set anew.
func printMark(mark, name string) string {
	if name == "_xlnm.Print_Area" {
		return oursName + mark + "print_area"
	}
	return oursName + mark + "print_titles"
}

// Ours is what this tool put into a workbook, as far as it is still there.
type Ours struct {
	Places []Place         // on the user's own sheets, in the order of the marks asked for
	Sheets map[string]bool // of our own
}

// Place is where our columns stand on one of the user's sheets.
type Place struct {
	Mark        string // of the annotation
	Sheet       string
	First, Last int
}

// On returns the place on a sheet.
func (o *Ours) On(sheet string) (Place, bool) {
	for _, p := range o.Places {
		if p.Sheet == sheet {
			return p, true
		}
	}
	return Place{}, false
}

// FindOurs looks for the marks of this tool; ok is false where no columns are
// marked.
func FindOurs(data []byte, marks ...string) (ours Ours, ok bool) {
	u, err := openBook(data)
	if err != nil {
		return Ours{}, false
	}
	return u.ours(marks)
}

func (u *User) ours(marks []string) (Ours, bool) {
	ours := Ours{Sheets: map[string]bool{}}
	names := u.book.root.child("definedNames")
	if names == nil {
		return ours, false
	}
	found := map[string]Place{}
	for _, n := range names.all("definedName") {
		sheet, ref, ok := splitRef(unescape(string(u.book.data[n.open:n.shut])))
		switch name := n.attr("name"); {
		case !ok:
		case strings.HasPrefix(name, SheetName):
			ours.Sheets[sheet] = true
		default:
			first, last := columnsOf(ref)
			found[name] = Place{Sheet: sheet, First: first, Last: last}
		}
	}
	for _, mark := range marks {
		p, ok := found[ColumnsName(mark)]
		if _, taken := ours.On(p.Sheet); ok && !taken && p.First > 0 && p.Last >= p.First {
			p.Mark = mark
			ours.Places = append(ours.Places, p)
		}
	}
	return ours, len(ours.Places) > 0
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
// lists, our sheets with what hangs on them, our names. What the user has is
// copied as it stands.
func Undress(data []byte, marks ...string) ([]byte, error) {
	u, err := openBook(data)
	if err != nil {
		return nil, err
	}
	ours, ok := u.ours(marks)
	if !ok {
		return nil, strange("our columns are not marked in it")
	}
	un := undress{u: u, ours: ours, dropped: map[string]bool{}, leaves: map[*zip.File]*bare{}}
	for _, p := range ours.Places {
		l, err := u.findLeaf(p.Sheet)
		if err != nil {
			return nil, err
		}
		un.leaves[l.file] = &bare{Place: p, leaf: l}
	}
	un.sheets()
	un.names()
	return un.write()
}

type undress struct {
	u               *User
	ours            Ours
	leaves          map[*zip.File]*bare
	dropped         map[string]bool
	moved           []int // new place of each sheet; -1 for ours
	book, bookRels  []edit
	keptSheetsCount int
}

// bare is one of the user's sheets with our columns to take away.
type bare struct {
	Place
	leaf *Leaf
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
		case un.leaves[f] != nil:
			data, err = un.leaves[f].sheet()
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

// sheet writes the sheet without our columns.
func (b *bare) sheet() ([]byte, error) {
	s := Shape{Ordered: true}
	var rows bytes.Buffer
	err := b.leaf.walk(&s, func(r rowPiece) {
		rows.Write(r.gap)
		b.row(&rows, r)
	})
	if err != nil {
		return nil, strange("the sheet cannot be added to: %s", plainly(err))
	}
	head, err := b.head(s.head)
	if err != nil {
		return nil, err
	}
	tail, err := b.tail(s.tail)
	if err != nil {
		return nil, err
	}
	return bytes.Join([][]byte{head, rows.Bytes(), tail}, nil), nil
}
