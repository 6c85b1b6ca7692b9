package pack

import (
	"bytes"
	"strconv"
	"strings"
)

// measureRest looks at what stands around the rows: merges, tables, pictures.
func (l *Leaf) measureRest(s *Shape) error {
	tail, err := pieces(s.tail, 2)
	if err != nil {
		return strange("the end of the sheet is damaged: %s", plainly(err))
	}
	if _, err := pieces(s.head, 0); err != nil {
		return strange("the beginning of the sheet is damaged: %s", plainly(err))
	}
	for _, p := range tail {
		switch p.name {
		case "mergeCells":
			s.reachMerges(s.tail[p.start:p.end])
		case "autoFilter":
			s.Filtered = true
			s.reach(p.attr("ref"))
		case "sheetProtection":
			s.Guarded = true
		case "pageSetup":
			s.Printed = true
		}
	}
	return l.reachRelated(s)
}

func (s *Shape) reachMerges(text []byte) {
	for {
		i := bytes.Index(text, []byte("mergeCell "))
		if i < 0 {
			return
		}
		end := bytes.IndexByte(text[i:], '>')
		if end < 0 {
			return
		}
		s.reach(string(attrText(text[i:i+end], "ref")))
		text = text[i+end:]
	}
}

// reach widens the sheet to a range such as "A1:F9". Banners over whole rows are
// left out: our cells never stand in a row that holds only a banner.
func (s *Shape) reach(ref string) {
	_, last, _ := strings.Cut(ref, ":")
	if last == "" {
		last = ref
	}
	if col, _, ok := cellRef([]byte(strings.ReplaceAll(last, "$", ""))); ok && col <= farCol {
		s.LastCol = max(s.LastCol, col)
	}
}

// reachRelated widens the sheet to its tables and to what floats over its cells.
func (l *Leaf) reachRelated(s *Shape) error {
	owner := strings.ReplaceAll(l.file.Name, `\`, "/")
	f := l.u.files[clean(relsOf(owner))]
	if f == nil {
		return nil
	}
	rels, err := l.u.open(f.Name)
	if err != nil {
		return err
	}
	for _, r := range rels.root.all("Relationship") {
		kind := r.attr("Type")
		kind = kind[strings.LastIndexByte(kind, '/')+1:]
		if kind != "table" && kind != "drawing" {
			continue
		}
		p, err := l.u.open(resolve(owner, r.attr("Target")))
		if err != nil {
			continue // a dangling or damaged neighbour stays as it is
		}
		if kind == "table" {
			s.reach(p.root.attr("ref"))
			s.Filtered = true
			continue
		}
		s.reachAnchors(p)
	}
	return nil
}

func (s *Shape) reachAnchors(drawing *part) {
	for _, anchor := range drawing.root.kids {
		to := anchor.child("to")
		if to == nil || to.child("col") == nil {
			continue
		}
		c := to.child("col")
		col, err := strconv.Atoi(strings.TrimSpace(string(drawing.data[c.open:c.shut])))
		if err == nil && col < farCol {
			s.LastCol = max(s.LastCol, col+1)
		}
	}
}
