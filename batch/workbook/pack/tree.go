// Package pack works on workbooks as packages of parts: it takes sheets that
// were made apart (the donor) and sets them into a user's workbook without
// rewriting what stands there. Small parts (workbook, styles, relationships,
// content types) receive insertions only; the user's sheet is streamed, each row
// byte for byte, with our cells behind the last one. It knows nothing about welds.
//
// The order to read: tree.go, user.go, styles.go, graft.go, scan.go, splice.go,
// pen.go, write.go.
package pack

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"sort"
	"strings"
)

// node is one element of a small part with the byte offsets of its tags, so that
// text can be put in without touching the rest.
type node struct {
	prefix, name string
	attrs        []xml.Attr
	start, open  int // the start tag is data[start:open]
	shut, end    int // the end tag is data[shut:end]; empty for a self-closed element
	kids         []*node
}

func (n *node) selfClosed() bool { return n.shut == n.end }

// attr returns an attribute by its local name, whatever its prefix.
func (n *node) attr(name string) string {
	for _, a := range n.attrs {
		if a.Name.Local == name && a.Name.Space != "xmlns" {
			return a.Value
		}
	}
	return ""
}

// child returns the first child of that name, or nil.
func (n *node) child(name string) *node {
	for _, k := range n.kids {
		if k.name == name {
			return k
		}
	}
	return nil
}

// all returns the children of that name.
func (n *node) all(name string) []*node {
	var out []*node
	for _, k := range n.kids {
		if k.name == name {
			out = append(out, k)
		}
	}
	return out
}

// qname returns a name with the prefix that this element carries.
func (n *node) qname(name string) string {
	if n.prefix == "" {
		return name
	}
	return n.prefix + ":" + name
}

// maxNodes keeps a hostile part from filling the memory, counted as starts and ends
// of elements and texts. A stylesheet with all the styles a spreadsheet program allows
// has some 400,000.
const maxNodes = 700_000

var errTooMany = errors.New("too many elements")

// parse reads a small part into a tree. It refuses what is not UTF-8, not well
// formed, or carries a document type.
func parse(data []byte) (*node, error) {
	dec := xml.NewDecoder(bytes.NewReader(data))
	top := &node{}
	stack := []*node{top}
	for count := 0; ; count++ {
		start := int(dec.InputOffset())
		tok, err := dec.RawToken()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		if count > maxNodes {
			return nil, errTooMany
		}
		stack, err = grow(stack, tok, start, int(dec.InputOffset()))
		if err != nil {
			return nil, err
		}
	}
	if len(stack) != 1 || len(top.kids) != 1 {
		return nil, errors.New("elements are not closed, or there is not exactly one root")
	}
	return top.kids[0], nil
}

func grow(stack []*node, tok xml.Token, start, end int) ([]*node, error) {
	last := stack[len(stack)-1]
	switch t := tok.(type) {
	case xml.StartElement:
		n := &node{prefix: t.Name.Space, name: t.Name.Local, start: start, open: end}
		n.attrs = append(n.attrs, t.Attr...)
		last.kids = append(last.kids, n)
		return append(stack, n), nil
	case xml.EndElement:
		if len(stack) == 1 || last.name != t.Name.Local || last.prefix != t.Name.Space {
			return nil, fmt.Errorf("element %s is closed by %s", last.name, t.Name.Local)
		}
		last.shut, last.end = start, end
		return stack[:len(stack)-1], nil
	case xml.Directive:
		return nil, errors.New("a document type declaration stands in it")
	}
	return stack, nil
}

// edit replaces data[at:at+cut] by text.
type edit struct {
	at, cut int
	text    string
}

// apply returns the data with all edits made; at one place, what is put in comes
// before what is cut out, else in the order given.
func apply(data []byte, edits []edit) []byte {
	sort.SliceStable(edits, func(i, j int) bool {
		a, b := edits[i], edits[j]
		return a.at < b.at || a.at == b.at && a.cut == 0 && b.cut > 0
	})
	var out bytes.Buffer
	done := 0
	for _, e := range edits {
		out.Write(data[done:e.at])
		out.WriteString(e.text)
		done = e.at + e.cut
	}
	out.Write(data[done:])
	return out.Bytes()
}

// appendInto puts text behind the last child of n.
func appendInto(n *node, text string) edit {
	if !n.selfClosed() {
		return edit{at: n.shut, text: text}
	}
	return edit{at: n.open - 2, cut: 2, text: ">" + text + "</" + n.qname(n.name) + ">"}
}

// prependInto puts text before the first child of n.
func prependInto(n *node, text string) edit {
	if n.selfClosed() {
		return appendInto(n, text)
	}
	return edit{at: n.open, text: text}
}

// setAttr sets an attribute without prefix in n's start tag.
func setAttr(data []byte, n *node, name, value string) edit {
	tag := data[n.start:n.open]
	if from, to, ok := attrSpan(tag, name); ok {
		return edit{at: n.start + from, cut: to - from, text: escape(value)}
	}
	at := n.open - 1
	if tag[len(tag)-2] == '/' {
		at--
	}
	return edit{at: at, text: " " + name + `="` + escape(value) + `"`}
}

// attrSpan finds the value of an attribute in the text of a start tag.
func attrSpan(tag []byte, name string) (from, to int, ok bool) {
	i := 1
	for i < len(tag) {
		q := bytes.IndexAny(tag[i:], `"'`)
		if q < 0 {
			return 0, 0, false
		}
		q += i
		z := bytes.IndexByte(tag[q+1:], tag[q])
		if z < 0 {
			return 0, 0, false
		}
		z += q + 1
		left := bytes.TrimRight(bytes.TrimRight(tag[i:q], " \t\r\n"), "=")
		left = bytes.TrimRight(left, " \t\r\n")
		if at := bytes.LastIndexAny(left, " \t\r\n"); at >= 0 && string(left[at+1:]) == name {
			return q + 1, z, true
		}
		i = z + 1
	}
	return 0, 0, false
}

func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}

// plainly words why a part cannot be read without the words of the library that read it.
func plainly(err error) string {
	var bad *xml.SyntaxError
	if errors.As(err, &bad) {
		return fmt.Sprintf("what stands in line %d of it is not in order", bad.Line)
	}
	return err.Error()
}
