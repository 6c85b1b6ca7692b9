package list

import (
	"bytes"
	"io"
	"strconv"
	"unicode/utf8"
)

// token is what the scanner stands on.
type token uint8

const (
	tokEOF token = iota
	tokStart
	tokEnd
	tokText
)

// maxToken caps one tag or one run of text: a cell holds 32,767 characters, and
// each may be written as an entity of ten bytes.
const maxToken = 1 << 20

// scanner reads XML as a stream of tags and text. It is strict about what can
// lose data (nesting, ends, entities) and indifferent to namespaces: a workbook's
// elements are told apart by their local names. It never holds more than a token.
type scanner struct {
	in       io.Reader
	buf      []byte
	pos, end int
	eof      bool
	line     int // line breaks seen, for the place of an error

	name    []byte // local name of the start or end tag
	attrs   []byte // raw attributes of the start tag
	text    []byte // decoded text
	open    []byte // names of the open elements, one after the other
	starts  []int  // where each of them starts in open
	pending bool   // the start tag was empty: its end tag comes next
	spare   []byte
}

func newScanner(in io.Reader) *scanner {
	return &scanner{in: in, buf: make([]byte, 64<<10), line: 1}
}

func (s *scanner) fault(what string) error {
	return damaged("it is not put together as a workbook must be (for whoever mends it: %s in line %d of its XML)", what, s.line)
}

// fill reads more bytes behind the unread ones. It reports whether any came.
func (s *scanner) fill() (bool, error) {
	if s.eof {
		return false, nil
	}
	if s.pos > 0 {
		copy(s.buf, s.buf[s.pos:s.end])
		s.end -= s.pos
		s.pos = 0
	}
	if s.end == len(s.buf) {
		if len(s.buf) >= maxToken {
			return false, s.fault("a single tag or text is longer than a million characters")
		}
		s.buf = append(s.buf, make([]byte, len(s.buf))...)
	}
	n, err := s.in.Read(s.buf[s.end:])
	s.end += n
	if err == io.EOF {
		s.eof = true
		return n > 0, nil
	}
	if err != nil {
		return false, readFault(err)
	}
	return true, nil
}

// find returns the offset from pos of the first mark at or after from.
func (s *scanner) find(from int, mark string) (int, error) {
	for {
		if from < s.end-s.pos {
			if i := bytes.Index(s.buf[s.pos+from:s.end], []byte(mark)); i >= 0 {
				return from + i, nil
			}
			from = max(from, s.end-s.pos-len(mark)+1)
		}
		more, err := s.fill()
		if err != nil {
			return 0, err
		}
		if !more {
			if s.eof {
				return -1, nil
			}
		}
	}
}

// next moves to the next token.
func (s *scanner) next() (token, error) {
	if s.pending {
		s.pending = false
		return tokEnd, s.pop()
	}
	for {
		if s.pos == s.end {
			more, err := s.fill()
			if err != nil {
				return tokEOF, err
			}
			if !more && s.eof && s.pos == s.end {
				if len(s.starts) > 0 {
					return tokEOF, s.fault("the text is cut off")
				}
				return tokEOF, nil
			}
			continue
		}
		if s.buf[s.pos] != '<' {
			if tok, err := s.readText(); tok != tokEOF || err != nil {
				return tok, err
			}
			continue
		}
		tok, skip, err := s.markup()
		if err != nil || !skip {
			return tok, err
		}
	}
}

// readText returns tokText, or tokEOF for white space outside the root element.
func (s *scanner) readText() (token, error) {
	n, err := s.find(0, "<")
	if err != nil {
		return tokEOF, err
	}
	if n < 0 {
		n = s.end - s.pos
	}
	raw := s.buf[s.pos : s.pos+n]
	s.pos += n
	s.line += bytes.Count(raw, []byte("\n"))
	if len(s.starts) == 0 {
		if len(bytes.Trim(raw, " \t\r\n\ufeff")) > 0 {
			return tokEOF, s.fault("text stands outside the elements")
		}
		return tokEOF, nil
	}
	s.text, err = s.unescape(raw)
	return tokText, err
}

// doctype is what is said of a document type.
const doctype = "no spreadsheet program writes such a workbook, and it may be meant to do harm (for whoever looks into it: it holds a document type declaration)"

// markup reads what starts with '<'. skip: it was a comment or the like.
func (s *scanner) markup() (tok token, skip bool, err error) {
	for s.end-s.pos < 9 && !s.eof {
		if _, err := s.fill(); err != nil {
			return tokEOF, false, err
		}
	}
	rest := s.buf[s.pos:s.end]
	switch {
	case bytes.HasPrefix(rest, []byte("<!--")):
		return tokEOF, true, s.skipPast(4, "-->")
	case bytes.HasPrefix(rest, []byte("<?")):
		return tokEOF, true, s.skipPast(2, "?>")
	case bytes.HasPrefix(rest, []byte("<![CDATA[")):
		return s.cdata()
	case bytes.HasPrefix(rest, []byte("<!")):
		return tokEOF, false, refuse("do not open it unless you know who sent it; ask for the list again, saved as .xlsx or CSV", doctype)
	}
	n, err := s.tagEnd()
	if err != nil {
		return tokEOF, false, err
	}
	tag := s.buf[s.pos+1 : s.pos+n]
	s.pos += n + 1
	s.line += bytes.Count(tag, []byte("\n"))
	if len(tag) > 0 && tag[0] == '/' {
		s.name = bytes.TrimRight(tag[1:], " \t\r\n")
		return s.closeTag()
	}
	return s.openTag(tag)
}

func (s *scanner) skipPast(from int, mark string) error {
	n, err := s.find(from, mark)
	if err != nil {
		return err
	}
	if n < 0 {
		return s.fault("the text is cut off")
	}
	s.line += bytes.Count(s.buf[s.pos:s.pos+n], []byte("\n"))
	s.pos += n + len(mark)
	return nil
}

func (s *scanner) cdata() (token, bool, error) {
	const open = len("<![CDATA[")
	n, err := s.find(open, "]]>")
	if err != nil {
		return tokEOF, false, err
	}
	if n < 0 || len(s.starts) == 0 {
		return tokEOF, false, s.fault("the text is cut off")
	}
	s.text = s.buf[s.pos+open : s.pos+n]
	s.pos += n + 3
	return tokText, false, nil
}

// tagEnd finds the '>' of the tag at pos, which may stand in a quoted value too.
func (s *scanner) tagEnd() (int, error) {
	from, quote := 1, byte(0)
	for {
		for i := s.pos + from; i < s.end; i++ {
			switch c := s.buf[i]; {
			case quote != 0:
				if c == quote {
					quote = 0
				}
			case c == '>':
				return i - s.pos, nil
			case c == '"' || c == '\'':
				quote = c
			case c == '<':
				return 0, s.fault("a tag is not closed")
			}
		}
		from = s.end - s.pos
		more, err := s.fill()
		if err != nil {
			return 0, err
		}
		if !more && s.eof {
			return 0, s.fault("the text is cut off")
		}
	}
}

func (s *scanner) openTag(tag []byte) (token, bool, error) {
	if n := len(tag); n > 0 && tag[n-1] == '/' {
		s.pending, tag = true, tag[:n-1]
	}
	n := bytes.IndexAny(tag, " \t\r\n")
	if n < 0 {
		n = len(tag)
	}
	if n == 0 {
		return tokEOF, false, s.fault("a tag has no name")
	}
	if len(s.starts) >= 256 {
		return tokEOF, false, s.fault("elements are nested more than 256 deep")
	}
	s.starts = append(s.starts, len(s.open))
	s.open = append(s.open, tag[:n]...)
	s.name, s.attrs = local(tag[:n]), tag[n:]
	return tokStart, false, nil
}

func (s *scanner) closeTag() (token, bool, error) {
	if len(s.starts) == 0 || !bytes.Equal(s.open[s.starts[len(s.starts)-1]:], s.name) {
		return tokEOF, false, s.fault("an element is closed that is not open")
	}
	return tokEnd, false, s.pop()
}

func (s *scanner) pop() error {
	start := s.starts[len(s.starts)-1]
	s.name = local(s.open[start:])
	s.open, s.starts = s.open[:start], s.starts[:len(s.starts)-1]
	return nil
}

func (s *scanner) depth() int { return len(s.starts) }

func local(name []byte) []byte {
	if i := bytes.IndexByte(name, ':'); i >= 0 {
		return name[i+1:]
	}
	return name
}

// attr returns the raw value of an attribute by its local name, nil if absent.
// The result is valid until the next token.
func (s *scanner) attr(name string) []byte { return s.find1(name, false) }

// linked is attr for an attribute with a prefix, such as r:id beside id.
func (s *scanner) linked(name string) []byte { return s.find1(name, true) }

func (s *scanner) find1(name string, prefixed bool) []byte {
	rest := s.attrs
	for {
		rest = bytes.TrimLeft(rest, " \t\r\n")
		eq := bytes.IndexByte(rest, '=')
		if eq < 0 {
			return nil
		}
		key := bytes.TrimRight(rest[:eq], " \t\r\n")
		rest = bytes.TrimLeft(rest[eq+1:], " \t\r\n")
		if len(rest) == 0 || rest[0] != '"' && rest[0] != '\'' {
			return nil
		}
		stop := bytes.IndexByte(rest[1:], rest[0])
		if stop < 0 {
			return nil
		}
		value := rest[1 : 1+stop]
		rest = rest[stop+2:]
		colon := bytes.IndexByte(key, ':')
		if string(key[colon+1:]) == name && (colon >= 0) == prefixed {
			return value
		}
	}
}

// attrText is attr with its entities resolved.
func (s *scanner) attrText(name string) (string, error) {
	value, err := s.unescape(s.attr(name))
	return string(value), err
}

// unescape resolves entities; unknown ones are a fault.
func (s *scanner) unescape(raw []byte) ([]byte, error) {
	amp := bytes.IndexByte(raw, '&')
	if amp < 0 {
		return raw, nil
	}
	out := s.spare[:0]
	for amp >= 0 {
		out = append(out, raw[:amp]...)
		raw = raw[amp+1:]
		semi := bytes.IndexByte(raw, ';')
		r := rune(-1)
		if semi > 0 {
			r = entity(string(raw[:semi]))
		}
		if r < 0 {
			return nil, s.fault("an unknown character entity stands")
		}
		out = utf8.AppendRune(out, r)
		raw = raw[semi+1:]
		amp = bytes.IndexByte(raw, '&')
	}
	out = append(out, raw...)
	s.spare = out
	return out, nil
}

func entity(name string) rune {
	switch name {
	case "amp":
		return '&'
	case "lt":
		return '<'
	case "gt":
		return '>'
	case "quot":
		return '"'
	case "apos":
		return '\''
	}
	if len(name) < 2 || name[0] != '#' {
		return -1
	}
	base, digits := 10, name[1:]
	if digits[0] == 'x' {
		base, digits = 16, digits[1:]
	}
	n, err := strconv.ParseUint(digits, base, 32)
	if err != nil || n > utf8.MaxRune || n == 0 {
		return -1
	}
	return rune(n)
}
