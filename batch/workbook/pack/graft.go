package pack

import (
	"archive/zip"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// bookOrder is the order of what a workbook part holds.
var bookOrder = []string{"fileVersion", "fileSharing", "workbookPr", "workbookProtection", "bookViews",
	"sheets", "functionGroups", "externalReferences", "definedNames", "calcPr", "oleSize",
	"customWorkbookViews", "pivotCaches", "smartTagPr", "smartTagTypes", "webPublishing",
	"fileRecoveryPr", "webPublishObjects", "extLst"}

// Annotate makes the user's workbook with our cells on the sheets named and our
// sheets behind the user's own. Parts we do not touch are copied as they are. What is
// strange in the file is found before anything is written.
func Annotate(u *User, on []*Annotation, donorBytes []byte, sheets []Sheet, charts map[string]Cache) (Writer, error) {
	d, err := openDonor(donorBytes, sheets, charts)
	if err != nil {
		return nil, err
	}
	g := &graft{u: u, d: d, changed: map[string][]byte{}, leaves: map[*zip.File]*grafted{}}
	for _, a := range on {
		g.on = append(g.on, &grafted{a: a})
	}
	if err := g.styles(); err != nil {
		return nil, err
	}
	g.mark = g.freeMark()
	g.sheets()
	g.calcChain()
	if err := g.props(); err != nil {
		return nil, err
	}
	g.names()
	g.apply()
	return g.write, g.openLeaves()
}

// graft collects what is put into the user's package.
type graft struct {
	u       *User
	on      []*grafted
	leaves  map[*zip.File]*grafted
	d       *donor
	mark    string // stem of the names of our parts, not used by the user
	merged  merged
	changed map[string][]byte // new content of the user's parts, by clean name
	fresh   []freshPart
	dropped map[string]bool

	userOwn *part // the user's own custom properties, or nil

	types, rootRels, book, bookRels []edit
	typeText, bookRelText           strings.Builder
}

// grafted is one of the user's sheets with our cells: what goes around its rows.
type grafted struct {
	a          *Annotation
	head, tail []byte
}

// openLeaves makes the beginning and the end of each annotated sheet ready.
func (g *graft) openLeaves() error {
	for _, on := range g.on {
		l, err := on.a.Leaf, error(nil)
		if g.leaves[l.file] != nil {
			return strange("two sheets share one part")
		}
		g.leaves[l.file] = on
		if on.head, err = l.editHead(on.a); err != nil {
			return err
		}
		on.tail, err = editTail(l.shape.tail, l.shape.prefix, string(moveDxfs([]byte(on.a.Rules), g.merged.dxfs)), l.printsItself())
		if err != nil {
			return err
		}
	}
	return nil
}

// freshPart is a part of ours: its bytes, or who writes them where they are many.
type freshPart struct {
	name  string
	data  []byte
	write func(io.Writer) error
}

func (g *graft) styles() error {
	if g.u.styles == nil {
		return strange("the workbook has no stylesheet")
	}
	var err error
	g.merged, err = mergeStyles(g.u.styles, g.d.styles)
	g.changed[clean(g.u.styles.file.Name)] = g.merged.data
	return err
}

// freeMark returns a stem for part names that no part of the user's begins with.
func (g *graft) freeMark() string {
	for n := 1; ; n++ {
		mark := "seamtally" + strconv.Itoa(n) + "-"
		free := true
		for name := range g.u.files {
			free = free && !strings.Contains(name, mark)
		}
		if free {
			return mark
		}
	}
}

// add takes a part of ours into the package.
func (g *graft) add(name, kind string, data []byte) {
	g.fresh = append(g.fresh, freshPart{name: name, data: data})
	g.declare(name, kind)
}

// declare gives a part of ours its type.
func (g *graft) declare(name, kind string) {
	if kind == "" && !g.relsTyped() {
		kind = relsType
	}
	if kind != "" {
		g.typeText.WriteString(override(g.u.types.root, "/"+name, kind))
	}
}

// relsTyped tells whether the package gives relationship parts their type by
// their extension, as most do.
func (g *graft) relsTyped() bool {
	for _, d := range g.u.types.root.all("Default") {
		if strings.EqualFold(d.attr("Extension"), "rels") {
			return true
		}
	}
	return false
}

const (
	relsType    = "application/vnd.openxmlformats-package.relationships+xml"
	sheetType   = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"
	drawingType = "application/vnd.openxmlformats-officedocument.drawing+xml"
	chartType   = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml"
)

// sheets adds our sheets with what hangs on them, and lists them in the workbook.
func (g *graft) sheets() {
	list := g.u.book.root.child("sheets")
	maxID := 0
	for _, s := range list.all("sheet") {
		if id, err := strconv.Atoi(s.attr("sheetId")); err == nil {
			maxID = max(maxID, id)
		}
	}
	var text strings.Builder
	for i := range g.d.sheets {
		s := &g.d.sheets[i]
		s.unselect()
		name := fmt.Sprintf("xl/worksheets/%ssheet%d.xml", g.mark, i+1)
		g.fresh = append(g.fresh, freshPart{name: name, write: func(w io.Writer) error { return s.write(w, g.merged.styles, g.merged.dxfs) }})
		g.declare(name, sheetType)
		g.relate(s.path, name)
		id := g.freeID(fmt.Sprintf("rIdSeamtally%d", i+1))
		g.bookRelText.WriteString(relation(g.u.bookRels.root, id, "worksheet", "/"+name))
		fmt.Fprintf(&text, `<%s xmlns:seamtallyr="%s" name="%s" sheetId="%d" seamtallyr:id="%s"/>`,
			list.qname("sheet"), relNS, escape(s.Name), maxID+i+1, id)
	}
	g.book = append(g.book, appendInto(list, text.String()))
}

func (g *graft) freeID(id string) string {
	for _, r := range g.u.bookRels.root.kids {
		if r.attr("Id") == id {
			return g.freeID(id + "x")
		}
	}
	return id
}

// relate copies the relationships of a donor part, and the parts they lead to,
// under names of our own.
func (g *graft) relate(from, to string) {
	rels, err := g.d.open(relsOf(from))
	if err != nil {
		return
	}
	var edits []edit
	for _, r := range rels.root.all("Relationship") {
		old := resolve(from, r.attr("Target"))
		dir, base, _ := cutLast(old, "/")
		name := dir + "/" + g.mark + base
		kind := map[string]string{"drawings": drawingType, "charts": chartType}[dir[strings.LastIndex(dir, "/")+1:]]
		g.add(name, kind, g.d.parts[old])
		g.relate(old, name)
		edits = append(edits, setAttr(rels.data, r, "Target", "/"+name))
	}
	g.add(relsOf(to), "", apply(rels.data, edits))
}

func cutLast(s, sep string) (before, after string, ok bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return "", s, false
	}
	return s[:i], s[i+len(sep):], true
}

// calcChain drops the list of calculation order: it does not know our formulas,
// and every program builds it anew.
func (g *graft) calcChain() {
	g.dropped = map[string]bool{}
	for _, r := range g.u.bookRels.root.all("Relationship") {
		if !strings.HasSuffix(r.attr("Type"), "/relationships/calcChain") {
			continue
		}
		g.dropped[clean(resolve(g.u.book.file.Name, r.attr("Target")))] = true
		g.bookRels = append(g.bookRels, edit{at: r.start, cut: r.end - r.start})
	}
	for _, o := range g.u.types.root.all("Override") {
		if g.dropped[clean(o.attr("PartName"))] {
			g.types = append(g.types, edit{at: o.start, cut: o.end - o.start})
		}
	}
}

// props declares the properties part that carries the stamp, or finds the user's.
func (g *graft) props() error {
	if f := g.u.files[clean(propsName)]; f != nil {
		var err error
		g.userOwn, err = g.u.open(f.Name)
		return err
	}
	g.typeText.WriteString(override(g.u.types.root, "/"+propsName, propsType))
	g.rootRels = append(g.rootRels, appendInto(g.u.rootRels.root,
		relation(g.u.rootRels.root, "rIdSeamtallyStamp", "custom-properties", "/"+propsName)))
	return nil
}

// apply works the edits into the user's small parts.
func (g *graft) apply() {
	u := g.u
	g.types = append(g.types, appendInto(u.types.root, g.typeText.String()))
	g.bookRels = append(g.bookRels, appendInto(u.bookRels.root, g.bookRelText.String()))
	for _, c := range []struct {
		p     *part
		edits []edit
	}{{u.types, g.types}, {u.rootRels, g.rootRels}, {u.book, g.book}, {u.bookRels, g.bookRels}} {
		g.changed[clean(c.p.file.Name)] = apply(c.p.data, c.edits)
	}
}

// write puts the package together, in the user's own order of parts.
func (g *graft) write(to io.Writer) error {
	p := newPacker(to)
	for _, f := range g.u.zip.File {
		name := clean(f.Name)
		data, changed := g.changed[name]
		var err error
		switch {
		case g.dropped[name] || name == clean(propsName):
		case g.leaves[f] != nil:
			err = g.writeSheet(p, f.Name, g.leaves[f])
		case changed:
			err = p.put(f.Name, data)
		default:
			err = p.zip.Copy(f)
		}
		if err != nil {
			return fmt.Errorf("part %s: %w", f.Name, err)
		}
	}
	for _, part := range g.fresh {
		if err := p.add(part); err != nil {
			return err
		}
	}
	return p.finish(g.userOwn)
}

func (g *graft) writeSheet(p *packer, name string, on *grafted) error {
	w, err := p.create(name)
	if err != nil {
		return err
	}
	if _, err := w.Write(on.head); err != nil {
		return err
	}
	if err := on.a.Leaf.spliceRows(w, on.a, g.merged.styles); err != nil {
		return err
	}
	_, err = w.Write(on.tail)
	return err
}
