package pack

import (
	"bytes"
	"errors"
	"io"
	"strconv"
)

// window reads a sheet's XML once, from front to back, and hands out pieces of
// it. Only the piece in hand is kept in memory.
type window struct {
	r    io.Reader
	buf  []byte
	a, z int // the unread bytes are buf[a:z]
	eof  bool
}

func newWindow(r io.Reader) *window { return &window{r: r, buf: make([]byte, 1<<18)} }

// maxPiece bounds a head, a row or a tail.
const maxPiece = 256 << 20

var errNested = errors.New("its rows do not stand where they belong")

var errCut = errors.New("its text ends too early")

func (w *window) fill() error {
	if w.eof {
		return errCut
	}
	if w.a > 0 {
		copy(w.buf, w.buf[w.a:w.z])
		w.z -= w.a
		w.a = 0
	}
	if w.z == len(w.buf) {
		if len(w.buf) > maxPiece {
			return errors.New("one row of the sheet is too large")
		}
		w.buf = append(w.buf, make([]byte, len(w.buf))...)
	}
	n, err := w.r.Read(w.buf[w.z:])
	w.z += n
	if err == io.EOF {
		w.eof = true
		return nil
	}
	return err
}

// byteAt returns the i-th unread byte.
func (w *window) byteAt(i int) (byte, error) {
	for w.a+i >= w.z {
		if err := w.fill(); err != nil {
			return 0, err
		}
	}
	return w.buf[w.a+i], nil
}

// indexFrom returns the place of a mark at or behind the i-th unread byte.
func (w *window) indexFrom(i int, mark string) (int, error) {
	for {
		if w.a+i <= w.z {
			if k := bytes.Index(w.buf[w.a+i:w.z], []byte(mark)); k >= 0 {
				return i + k, nil
			}
			i = max(i, w.z-w.a-len(mark)+1)
		}
		if err := w.fill(); err != nil {
			return 0, err
		}
	}
}

// markup is one tag, comment, CDATA section or instruction: buf[a+from:a+to].
type markup struct {
	from, to int
	kind     byte // 's' start tag, 'e' end tag, 'o' self-closed tag, 'x' anything else
	name     []byte
}

// markupFrom returns the first markup at or behind the i-th unread byte.
func (w *window) markupFrom(i int) (markup, error) {
	from, err := w.indexFrom(i, "<")
	if err != nil {
		return markup{}, err
	}
	c, err := w.byteAt(from + 1)
	if err != nil {
		return markup{}, err
	}
	m := markup{from: from, kind: 's'}
	switch c {
	case '!':
		m.kind = 'x'
		m.to, err = w.endOfBang(from)
	case '?':
		m.kind = 'x'
		m.to, err = w.endOf(from+2, "?>")
	case '/':
		m.kind = 'e'
		m.to, err = w.endOf(from+2, ">")
	default:
		m.to, err = w.endOfTag(from + 1)
	}
	if err != nil {
		return m, err
	}
	text := w.buf[w.a+m.from : w.a+m.to]
	if m.kind == 's' && text[len(text)-2] == '/' {
		m.kind = 'o'
	}
	m.name = tagName(text)
	return m, nil
}

func (w *window) endOf(i int, mark string) (int, error) {
	k, err := w.indexFrom(i, mark)
	return k + len(mark), err
}

func (w *window) endOfBang(from int) (int, error) {
	if _, err := w.byteAt(from + 8); err != nil {
		return 0, err
	}
	text := w.buf[w.a+from : w.z]
	switch {
	case bytes.HasPrefix(text, []byte("<!--")):
		return w.endOf(from+4, "-->")
	case bytes.HasPrefix(text, []byte("<![CDATA[")):
		return w.endOf(from+9, "]]>")
	}
	return 0, errors.New("a declaration stands in it")
}

// endOfTag finds the end of a start tag; a > inside a quoted value does not end it.
func (w *window) endOfTag(i int) (int, error) {
	quote := byte(0)
	for ; ; i++ {
		c, err := w.byteAt(i)
		switch {
		case err != nil:
			return 0, err
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			quote = c
		case c == '>':
			return i + 1, nil
		case c == '<':
			return 0, errors.New("a tag stands inside a tag")
		}
	}
}

// take hands out the unread bytes up to the i-th and moves on. The piece is valid
// until the next call.
func (w *window) take(i int) []byte {
	piece := w.buf[w.a : w.a+i]
	w.a += i
	return piece
}

// tagName returns the name, prefix included, in the text of a tag.
func tagName(text []byte) []byte {
	i := 1
	if len(text) > 1 && text[1] == '/' {
		i = 2
	}
	j := i
	for j < len(text) && text[j] > ' ' && text[j] != '>' && text[j] != '/' {
		j++
	}
	return text[i:j]
}

// attrText returns the raw text of an attribute without prefix.
func attrText(tag []byte, name string) []byte {
	if from, to, ok := attrSpan(tag, name); ok {
		return tag[from:to]
	}
	return nil
}

// cellRef reads a reference such as "AB12"; ok is false for anything else.
func cellRef(ref []byte) (col, row int, ok bool) {
	i := 0
	for i < len(ref) && ref[i] >= 'A' && ref[i] <= 'Z' && i < 3 {
		col = col*26 + int(ref[i]-'A') + 1
		i++
	}
	row, err := strconv.Atoi(string(ref[i:]))
	return col, row, err == nil && col > 0 && col <= MaxCol && row > 0 && row <= MaxRow
}

// The size of a sheet.
const (
	MaxCol = 16384
	MaxRow = 1048576
)
