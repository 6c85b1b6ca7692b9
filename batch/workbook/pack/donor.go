package pack

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"sort"
	"strings"
)

// Sheet is one sheet of our own: its frame (widths, panes, print set-up) comes
// from the donor, its cells are written here.
type Sheet struct {
	Name string
	Draw func(p *Pen)
	Size string // "A1:F20"
}

// donor is a workbook of ours whose sheets have no rows yet.
type donor struct {
	names  []string // of all parts, sorted
	parts  map[string][]byte
	styles *part
	book   *part
	sheets []donorSheet
}

type donorSheet struct {
	Sheet
	path       string
	head, tail []byte
}

func openDonor(data []byte, sheets []Sheet, charts map[string]Cache) (*donor, error) {
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, err
	}
	d := &donor{parts: map[string][]byte{}}
	for _, f := range zr.File {
		if d.parts[f.Name], err = readSome(f, maxSmall); err != nil {
			return nil, err
		}
		d.names = append(d.names, f.Name)
	}
	sort.Strings(d.names)
	d.fillCharts(charts)
	if d.styles, err = d.open("xl/styles.xml"); err != nil {
		return nil, err
	}
	if d.book, err = d.open("xl/workbook.xml"); err != nil {
		return nil, err
	}
	return d, d.openSheets(sheets)
}

func (d *donor) open(name string) (*part, error) {
	root, err := parse(d.parts[name])
	if err != nil {
		return nil, fmt.Errorf("part %s of the donor: %w", name, err)
	}
	return &part{data: d.parts[name], root: root}, nil
}

func (d *donor) openSheets(sheets []Sheet) error {
	rels, err := d.open("xl/_rels/workbook.xml.rels")
	if err != nil {
		return err
	}
	paths := map[string]string{}
	for _, r := range rels.root.all("Relationship") {
		paths[r.attr("Id")] = resolve("xl/workbook.xml", r.attr("Target"))
	}
	for i, s := range d.book.root.child("sheets").all("sheet") {
		if i >= len(sheets) || sheets[i].Name != s.attr("name") {
			return fmt.Errorf("sheet %d of the donor is %q", i, s.attr("name"))
		}
		ds := donorSheet{Sheet: sheets[i], path: paths[s.attr("id")]}
		if err := ds.split(d.parts[ds.path]); err != nil {
			return err
		}
		d.sheets = append(d.sheets, ds)
	}
	return nil
}

func (d *donor) definedNames() []*node {
	if names := d.book.root.child("definedNames"); names != nil {
		return names.all("definedName")
	}
	return nil
}

// split cuts a sheet without rows around the place of its rows.
func (s *donorSheet) split(data []byte) error {
	const closed, open, end = "<sheetData/>", "<sheetData>", "</sheetData>"
	if i := bytes.Index(data, []byte(closed)); i >= 0 {
		s.head = append(bytes.Clone(data[:i]), open...)
		s.tail = append([]byte(end), data[i+len(closed):]...)
		return nil
	}
	i, j := bytes.Index(data, []byte(open)), bytes.Index(data, []byte(end))
	if i < 0 || j < i {
		return fmt.Errorf("sheet %q of the donor has no rows", s.Name)
	}
	s.head, s.tail = bytes.Clone(data[:i+len(open)]), bytes.Clone(data[j:])
	return nil
}

// write writes the whole sheet with its rows.
func (s *donorSheet) write(to io.Writer, styles []int, dxfs int) error {
	p := &Pen{styles: styles, to: to}
	p.out = append(p.out, withSize(s.head, s.Size)...)
	s.Draw(p)
	p.EndRow()
	p.out = append(p.out, moveDxfs(s.tail, dxfs)...)
	p.flush()
	return p.err
}

// unselect keeps the sheet from opening together with the user's own.
func (s *donorSheet) unselect() {
	for _, mark := range []string{` tabSelected="1"`, ` tabSelected="true"`} {
		s.head = bytes.ReplaceAll(s.head, []byte(mark), nil)
	}
}

// withSize rewrites the dimension: readers that trust it would see one cell only.
func withSize(head []byte, size string) []byte {
	i := bytes.Index(head, []byte("<dimension"))
	if i < 0 || size == "" {
		return head
	}
	end := i + bytes.IndexByte(head[i:], '>') + 1
	if bytes.HasPrefix(head[end:], []byte("</dimension>")) {
		end += len("</dimension>")
	}
	return apply(head, []edit{{at: i, cut: end - i, text: `<dimension ref="` + size + `"/>`}})
}

// moveDxfs shifts the numbers of the conditional styles in a sheet's tail.
func moveDxfs(tail []byte, by int) []byte {
	const mark = ` dxfId="`
	if by == 0 || !bytes.Contains(tail, []byte(mark)) {
		return tail
	}
	var out strings.Builder
	rest := string(tail)
	for {
		i := strings.Index(rest, mark)
		if i < 0 {
			out.WriteString(rest)
			return []byte(out.String())
		}
		i += len(mark)
		j := i + strings.IndexByte(rest[i:], '"')
		n := 0
		fmt.Sscan(rest[i:j], &n)
		fmt.Fprintf(&out, "%s%d", rest[:i], n+by)
		rest = rest[j:]
	}
}
