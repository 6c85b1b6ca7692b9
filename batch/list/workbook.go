package list

import (
	"fmt"
	"strings"

	"seamtally/batch/finding"
)

// maxSheets is far above any workbook that holds a joint list.
const maxSheets = 500

// sheetRef is a sheet as the workbook part names it.
type sheetRef struct {
	name, part, kind string
	hidden           bool
}

// readWorkbook reads every worksheet of an .xlsx or .xlsm file. Chart, dialog
// and macro sheets are left out; they hold no cells.
func readWorkbook(src *Source) ([]finding.Problem, error) {
	p, err := openPackage(src.Data)
	if err != nil {
		return nil, err
	}
	src.Format, src.Encoding = XLSX, "UTF-8"
	if p.parts["xl/vbaproject.bin"] != nil {
		src.Format = XLSM
	}
	book := p.bookPart()
	refs, links, err := p.readBook(book, src)
	if err != nil {
		return nil, err
	}
	b := bookReader{pkg: p, src: src}
	if b.styles, err = p.readStyles(links.byKind("styles")); err != nil {
		return nil, err
	}
	if b.strings, err = p.readStrings(links.byKind("sharedStrings")); err != nil {
		return nil, err
	}
	for _, ref := range refs {
		if err := b.addSheet(ref); err != nil {
			return nil, err
		}
	}
	if len(src.Sheets) == 0 {
		return nil, refuse("open it in your spreadsheet program: if the list is there, save it again as .xlsx and try that copy; if not, ask for the list again", "the workbook has no worksheet that can be read")
	}
	return b.problems, nil
}

// bookReader is what the sheets of one workbook share.
type bookReader struct {
	pkg      *pkg
	src      *Source
	styles   []look
	strings  []string
	cells    int
	problems []finding.Problem
}

func (b *bookReader) addSheet(ref sheetRef) error {
	switch {
	case ref.kind != "worksheet":
		return nil
	case b.pkg.parts[partName(ref.part)] == nil:
		b.problems = append(b.problems, finding.Problem{
			Place: finding.Place{Sheet: ref.name}, Level: finding.Warning, Code: "sheet-missing",
			Text: fmt.Sprintf("the workbook names a sheet %q whose content is not in the file", ref.name),
			Hint: "open the workbook in your spreadsheet program and save it again"})
		return nil
	}
	sheet, err := b.readSheet(ref)
	if err != nil {
		return err
	}
	b.src.Sheets = append(b.src.Sheets, sheet)
	return nil
}

// bookPart finds the workbook part by the package's own relationships.
func (p *pkg) bookPart() string {
	if links, err := p.readLinks("_rels/.rels", ""); err == nil {
		if part := links.byKind("officeDocument"); part != "" && p.parts[partName(part)] != nil {
			return part
		}
	}
	return "xl/workbook.xml"
}

// readBook reads the list of sheets and the date system.
func (p *pkg) readBook(book string, src *Source) ([]sheetRef, linkSet, error) {
	links, err := p.readLinks(relsOf(book), book)
	if err != nil {
		return nil, nil, err
	}
	s, closer, err := p.scan(book)
	if err != nil {
		return nil, nil, err
	}
	defer closer.Close()
	var refs []sheetRef
	for {
		tok, err := s.next()
		if err != nil {
			return nil, nil, inPart(err, book)
		}
		if tok == tokEOF {
			return refs, links, nil
		}
		if tok != tokStart {
			continue
		}
		switch string(s.name) {
		case "workbookPr":
			src.Date1904 = truth(s.attr("date1904"))
		case "sheet":
			if s.depth() != 3 {
				continue
			}
			ref, err := sheetOf(s, links)
			if err != nil {
				return nil, nil, err
			}
			if refs = append(refs, ref); len(refs) > maxSheets {
				return nil, nil, refuse("save the list alone in a new workbook", "the workbook has more than %d sheets", maxSheets)
			}
		}
	}
}

func sheetOf(s *scanner, links linkSet) (sheetRef, error) {
	link := links[string(s.linked("id"))]
	state := string(s.attr("state"))
	name, err := s.attrText("name")
	return sheetRef{name: name, part: link.target, kind: link.kind, hidden: state == "hidden" || state == "veryHidden"}, err
}

// link is one relationship; its kind is the last word of its type.
type link struct{ kind, target string }

type linkSet map[string]link

// byKind returns the target of the only relationship of a kind, "" if none.
func (l linkSet) byKind(kind string) string {
	best := ""
	for _, one := range l {
		if strings.EqualFold(one.kind, kind) && (best == "" || one.target < best) {
			best = one.target
		}
	}
	return best
}

func relsOf(part string) string {
	i := strings.LastIndexByte(part, '/')
	return part[:i+1] + "_rels/" + part[i+1:] + ".rels"
}

// readLinks reads a relationships part; a missing one is an empty set.
func (p *pkg) readLinks(rels, from string) (linkSet, error) {
	links := linkSet{}
	if p.parts[partName(rels)] == nil {
		return links, nil
	}
	s, closer, err := p.scan(rels)
	if err != nil {
		return nil, err
	}
	defer closer.Close()
	for {
		tok, err := s.next()
		if err != nil {
			return nil, inPart(err, rels)
		}
		if tok == tokEOF {
			return links, nil
		}
		if tok != tokStart || string(s.name) != "Relationship" || string(s.attr("TargetMode")) == "External" {
			continue
		}
		target, err := s.attrText("Target")
		if err != nil {
			return nil, inPart(err, rels)
		}
		kind := string(s.attr("Type"))
		links[string(s.attr("Id"))] = link{kind: kind[strings.LastIndexByte(kind, '/')+1:], target: resolve(from, target)}
	}
}

func truth(value []byte) bool {
	v := string(value)
	return v == "1" || v == "true" || v == "on"
}

// inPart adds to a refusal which part of the package it is about.
func inPart(err error, part string) error {
	r, ok := err.(*Refusal)
	if !ok {
		return readFault(err)
	}
	if !strings.Contains(r.Text, "part ") {
		r.Text += fmt.Sprintf(" (part %s)", part)
	}
	return r
}
