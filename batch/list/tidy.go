package list

import (
	"bytes"
)

// tidyCell is a cell as nearly all programs write it: reference, style and type in
// this order, then a value or a plain text and nothing else. Cells are read so
// twice as fast; any other goes the long way, through the scanner.
type tidyCell struct {
	col    int
	style  int
	kind   string
	value  []byte
	text   []byte // of an inline string
	length int    // bytes of the whole element
}

// tidyCell looks whether a tidy cell of the row stands next. Nothing is taken yet.
func (r *sheetReader) tidyCell(row int) (t tidyCell, ok bool) {
	if r.pending {
		return t, false
	}
	whole := r.buf[r.pos:r.end]
	rest, ok := bytes.CutPrefix(whole, []byte(`<c r="`))
	if !ok {
		return t, false
	}
	end := bytes.IndexByte(rest, '"')
	if end < 0 {
		return t, false
	}
	col, at, ok := parseRef(rest[:end])
	if !ok || at != row || col > maxCols {
		return t, false
	}
	t.col, rest = col, rest[end+1:]
	if rest, ok = t.attributes(rest); !ok {
		return t, false
	}
	if rest, ok = t.content(rest); !ok {
		return t, false
	}
	t.length = len(whole) - len(rest)
	return t, true
}

// attributes takes style and type, up to the end of the start tag, not included.
func (t *tidyCell) attributes(rest []byte) ([]byte, bool) {
	if after, ok := bytes.CutPrefix(rest, []byte(` s="`)); ok {
		n := 0
		for n < len(after) && digit(after[n]) && n < 6 {
			t.style = t.style*10 + int(after[n]-'0')
			n++
		}
		if n == 0 || n == len(after) || after[n] != '"' {
			return nil, false
		}
		rest = after[n+1:]
	}
	if after, ok := bytes.CutPrefix(rest, []byte(` t="`)); ok {
		end := bytes.IndexByte(after, '"')
		if end < 0 {
			return nil, false
		}
		switch string(after[:end]) {
		case "s":
			t.kind = "s"
		case "inlineStr":
			t.kind = "inlineStr"
		case "n":
		default:
			return nil, false
		}
		rest = after[end+1:]
	}
	return rest, true
}

// content takes what stands in the element, and its end tag.
func (t *tidyCell) content(rest []byte) ([]byte, bool) {
	for _, nothing := range [...]string{"/>", "></c>"} {
		if after, ok := bytes.CutPrefix(rest, []byte(nothing)); ok {
			return after, true
		}
	}
	into, open, end := &t.value, "><v>", "</v></c>"
	if t.kind == "inlineStr" {
		into, open, end = &t.text, "><is><t>", "</t></is></c>"
	}
	rest, ok := bytes.CutPrefix(rest, []byte(open))
	if !ok {
		return nil, false
	}
	n := bytes.IndexByte(rest, '<')
	if n < 0 || bytes.IndexByte(rest[:n], '&') >= 0 || bytes.IndexByte(rest[:n], '\n') >= 0 {
		return nil, false
	}
	*into = rest[:n]
	return bytes.CutPrefix(rest[n:], []byte(end))
}

// take reads the tidy cell that stands next into the row.
func (r *sheetReader) take(t tidyCell) error {
	c := Cell{Col: t.col}
	r.value, r.inline = append(r.value[:0], t.value...), unescapeX(r.words.of(t.text))
	r.pos += t.length
	s, err := r.content(&c, t.kind, r.lookOf(t.style), len(t.value) > 0)
	if err == nil && c.Kind != Blank {
		r.spans, r.filled = append(r.spans, s), append(r.filled, c)
	}
	return err
}

// words are texts that stand in many cells, each kept once.
type words map[string]string

// mostWords is how many are kept: a column of marks holds no text twice.
const mostWords = 4096

func (w words) of(text []byte) string {
	if known, ok := w[string(text)]; ok {
		return known
	}
	own := string(text)
	if len(w) < mostWords {
		w[own] = own
	}
	return own
}
