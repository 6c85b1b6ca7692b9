package pack

import (
	"bytes"
	"io"
	"slices"
	"strconv"
)

// Column is the look of one of our columns beside the user's.
type Column struct {
	Width  float64
	Level  int // outline level; 0 stands outside any fold
	Hidden bool
}

// Annotation is what we put on one of the user's sheets.
type Annotation struct {
	Leaf *Leaf
	// Mark tells this annotation from others in the same workbook: it begins the
	// hidden names that say what on the sheet is ours. See the names of a Place.
	Mark    string
	First   int      // our first column
	Columns []Column // from First on
	Last    int      // last row that gets cells of ours
	// Draw writes our cells of a row, if it has any. It is called once for each row.
	Draw func(p *Pen, row int)
	// Extra is a row that gets cells of ours although the user's file may hold no
	// element for it; 0 for none.
	Extra      int
	Header     int // the row of our headers: three lines tall where the user gave it no height
	FreezeRows int // rows to freeze, where the user froze none; 0 leaves the view alone
	FreezeCols int
	PrintArea  string // set where the user set no print area
	PrintTitle string // rows and columns on every printed page, where the user set none
	Rules      string // conditional formats of our columns, with the donor's style numbers
}

// spliceRows writes the rows of the user's sheet with our cells behind the last
// one of each.
func (l *Leaf) spliceRows(w io.Writer, a *Annotation, styles []int) error {
	s := Shape{Ordered: true}
	p := &Pen{prefix: l.shape.prefix, styles: styles}
	if l.shape.Ordered {
		p.shared = newSharing(l.shape.lastShared+1, a.Last)
	}
	splice := splicer{l: l, a: a, p: p, w: w, extra: a.Extra}
	if err := l.walk(&s, splice.row); err != nil {
		return err
	}
	if splice.err != nil {
		return splice.err
	}
	splice.extraBefore(MaxRow + 1)
	splice.flush()
	return splice.err
}

type splicer struct {
	l     *Leaf
	a     *Annotation
	p     *Pen
	w     io.Writer
	extra int
	err   error
}

// row passes one of the user's rows on, with our cells before its end tag.
func (s *splicer) row(r rowPiece) {
	if s.err != nil {
		return
	}
	s.p.out = append(s.p.out, r.gap...)
	s.extraBefore(r.number)
	if r.number == s.extra {
		s.extra = 0
	}
	s.splice(r)
	if len(s.p.out) > 1<<16 {
		s.flush()
	}
}

func (s *splicer) splice(r rowPiece) {
	p := s.p
	start := len(p.out)
	tag := widenSpans(r.text[:r.tagEnd], s.a.First+len(s.a.Columns)-1)
	if r.number == s.a.Header {
		tag = withHeight(tag)
	}
	if r.closed {
		p.out = append(p.out, bytes.TrimRight(tag[:len(tag)-2], " \t\r\n")...)
		p.out = append(p.out, '>')
	} else {
		end := bytes.LastIndex(r.text, []byte("</"))
		p.out = append(p.out, tag...)
		p.out = append(p.out, r.text[r.tagEnd:end]...)
	}
	before := len(p.out)
	p.At(r.number)
	s.a.Draw(p, r.number)
	switch {
	case len(p.out) == before:
		p.out = append(p.out[:start], r.text...)
	case r.closed:
		p.tag(false, "row")
	default:
		p.out = append(p.out, r.text[bytes.LastIndex(r.text, []byte("</")):]...)
	}
}

// extraBefore writes the extra row, if it is still due, before the row n.
func (s *splicer) extraBefore(n int) {
	if s.extra == 0 || s.extra >= n || !s.l.shape.Ordered || !s.l.shape.Numbered {
		return
	}
	p := s.p
	p.At(s.extra)
	p.out = append(p.out, '<')
	p.out = append(p.out, p.prefix...)
	p.out = append(p.out, `row r="`...)
	p.out = append(p.out, p.row...)
	p.out = append(p.out, `">`...)
	s.a.Draw(p, s.extra)
	p.tag(false, "row")
	s.extra = 0
}

func (s *splicer) flush() {
	if _, err := s.w.Write(s.p.out); err != nil && s.err == nil {
		s.err = err
	}
	s.p.out = s.p.out[:0]
}

// withHeight proposes a height for a row that has none of its own, so that our
// headers are not cut off; programs that fit rows by themselves may do better.
func withHeight(tag []byte) []byte {
	if attrText(tag, "ht") != nil {
		return tag
	}
	end := bytes.LastIndexAny(bytes.TrimRight(tag, ">"), "/")
	if end != len(tag)-2 {
		end = len(tag) - 1
	}
	return slices.Concat(tag[:end], []byte(` ht="47"`), tag[end:])
}

// widenSpans makes the hint of a row's extent reach over our cells.
func widenSpans(tag []byte, last int) []byte {
	from, to, ok := attrSpan(tag, "spans")
	if !ok {
		return tag
	}
	colon := bytes.LastIndexByte(tag[from:to], ':')
	if colon < 0 {
		return tag
	}
	out := append([]byte{}, tag[:from+colon+1]...)
	out = strconv.AppendInt(out, int64(last), 10)
	return append(out, tag[to:]...)
}

// afterRules and afterMargins list what may stand behind conditional formats, and
// behind page margins, on a sheet.
var (
	afterMargins = []string{"headerFooter", "rowBreaks", "colBreaks", "customProperties", "cellWatches", "ignoredErrors",
		"smartTags", "drawing", "legacyDrawing", "legacyDrawingHF", "drawingHF", "picture", "oleObjects", "controls",
		"webPublishItems", "tableParts", "extLst", "AlternateContent"}
	afterRules = append([]string{"dataValidations", "hyperlinks", "printOptions", "pageMargins", "pageSetup"}, afterMargins...)
)

// editTail puts our conditional formats behind the user's own, and a page set-up
// where the user has none.
func editTail(tail []byte, prefix, rules string, printsItself bool) ([]byte, error) {
	list, err := pieces(tail, 2)
	if err != nil {
		return nil, err
	}
	end := bytes.LastIndex(tail, []byte("</"+prefix+"worksheet"))
	if end < 0 {
		return nil, &Strange{Why: "the sheet does not end"}
	}
	place := func(later []string) int {
		at := end
		for i := len(list) - 1; i >= 0 && slices.Contains(later, list[i].name); i-- {
			at = list[i].start
		}
		return at
	}
	edits := []edit{{at: place(afterRules), text: rules}}
	if !printsItself {
		edits = append(edits, edit{at: place(afterMargins), text: "<" + prefix + `pageSetup orientation="landscape" fitToHeight="0"/>`})
	}
	return apply(tail, edits), nil
}
