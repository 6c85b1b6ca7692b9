package pack

import (
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Formula is a formula cut at the places where the row number goes in:
// "A§*B§" is {"A", "*B", ""}. The pieces are escaped for XML already.
type Formula struct {
	pieces []string
	known  sharedKey // where it was shared last, and under which number
	number int
}

// NewFormula cuts a formula at the mark §.
func NewFormula(text string) *Formula {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text))
	return &Formula{pieces: strings.Split(b.String(), "§")}
}

// Pen writes the cells of one sheet.
type Pen struct {
	out    []byte
	prefix string
	styles []int // donor style -> style in the final workbook
	row    []byte
	inRow  bool

	shared *sharing // formulas that repeat down a column; nil: each is written out

	behind int  // where the last cell goes on behind its reference
	bound  bool // the last cell names its row, or formulas below refer to it

	to  io.Writer // where full rows go; nil: they are kept
	err error
}

// StartRow opens a row of our own sheets; a height is a proposal, 0 leaves it to
// the program.
func (p *Pen) StartRow(n int, height float64) {
	p.EndRow()
	if p.to != nil && len(p.out) > 1<<16 {
		p.flush()
	}
	p.At(n)
	p.out = append(p.out, `<row r="`...)
	p.out = append(p.out, p.row...)
	if height > 0 {
		p.out = append(p.out, `" ht="`...)
		p.out = strconv.AppendFloat(p.out, height, 'g', -1, 64)
	}
	p.out = append(p.out, `">`...)
	p.inRow = true
}

// flush hands on what was written so far.
func (p *Pen) flush() {
	if _, err := p.to.Write(p.out); err != nil && p.err == nil {
		p.err = err
	}
	p.out = p.out[:0]
}

// EndRow closes the row of our own sheets.
func (p *Pen) EndRow() {
	if p.inRow {
		p.out = append(p.out, `</row>`...)
	}
	p.inRow = false
}

// At sets the row of the next cells.
func (p *Pen) At(row int) { p.row = strconv.AppendInt(p.row[:0], int64(row), 10) }

func (p *Pen) open(col string, style int, kind string) {
	p.out = append(p.out, '<')
	p.out = append(p.out, p.prefix...)
	p.out = append(p.out, `c r="`...)
	p.out = append(p.out, col...)
	p.out = append(p.out, p.row...)
	p.behind, p.bound = len(p.out), false
	if style > 0 || (len(p.styles) > 0 && p.styles[0] > 0) {
		p.out = append(p.out, `" s="`...)
		p.out = strconv.AppendInt(p.out, int64(p.style(style)), 10)
	}
	if kind != "" {
		p.out = append(p.out, `" t="`...)
		p.out = append(p.out, kind...)
	}
	p.out = append(p.out, '"')
}

// Last returns what stands behind the reference of the cell written last, for Again;
// ok is false where it would be another in another row.
func (p *Pen) Last() (cell string, ok bool) { return string(p.out[p.behind:]), !p.bound }

// Again writes a cell as Last returned it.
func (p *Pen) Again(col, cell string) {
	p.out = append(p.out, '<')
	p.out = append(p.out, p.prefix...)
	p.out = append(p.out, `c r="`...)
	p.out = append(p.out, col...)
	p.out = append(p.out, p.row...)
	p.out = append(p.out, cell...)
}

// Written is how many bytes are waiting to be handed on.
func (p *Pen) Written() int { return len(p.out) }

func (p *Pen) style(s int) int {
	if s < len(p.styles) {
		return p.styles[s]
	}
	return s
}

func (p *Pen) tag(open bool, name string) {
	p.out = append(p.out, '<')
	if !open {
		p.out = append(p.out, '/')
	}
	p.out = append(p.out, p.prefix...)
	p.out = append(p.out, name...)
	p.out = append(p.out, '>')
}

// Blank writes a cell that has only a style.
func (p *Pen) Blank(col string, style int) {
	p.open(col, style, "")
	p.out = append(p.out, '/', '>')
}

// Number writes a number, with the formula it follows from where there is one. A
// number that is not finite is left blank: empty means unknown.
func (p *Pen) Number(col string, style int, f *Formula, v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		p.Blank(col, style)
		return
	}
	if v == 0 {
		v = 0 // no minus zero
	}
	p.open(col, style, "")
	p.out = append(p.out, '>')
	p.formula(col, f)
	if p.prefix == "" { // as nearly always: a sheet has millions of numbers
		p.out = append(p.out, "<v>"...)
		p.out = strconv.AppendFloat(p.out, v, 'g', -1, 64)
		p.out = append(p.out, "</v></c>"...)
		return
	}
	p.tag(true, "v")
	p.out = strconv.AppendFloat(p.out, v, 'g', -1, 64)
	p.tag(false, "v")
	p.tag(false, "c")
}

// formula writes a formula out, or refers to the cell above it where the same one
// was written.
func (p *Pen) formula(col string, f *Formula) {
	if f == nil {
		return
	}
	p.out = append(p.out, '<')
	p.out = append(p.out, p.prefix...)
	p.out = append(p.out, 'f')
	if p.shared != nil && len(f.pieces) > 1 && p.share(col, f) {
		p.out = append(p.out, '/', '>')
		return
	}
	p.bound = len(f.pieces) > 1
	p.out = append(p.out, '>')
	for i, piece := range f.pieces {
		if i > 0 {
			p.out = append(p.out, p.row...)
		}
		p.out = append(p.out, piece...)
	}
	p.tag(false, "f")
}

// Text writes a text: a plain string where there is no formula, so that nothing
// in it ever comes alive; else the stored result of the formula.
func (p *Pen) Text(col string, style int, f *Formula, s string) {
	s = Plain(s)
	if f == nil && s == "" {
		p.Blank(col, style)
		return
	}
	if f == nil {
		p.plainText(col, style, s)
	} else {
		p.open(col, style, "str")
		p.out = append(p.out, '>')
		p.formula(col, f)
		p.tag(true, "v")
		p.escaped(s)
		p.tag(false, "v")
	}
	p.tag(false, "c")
}

// plainText writes a text that no formula gives.
func (p *Pen) plainText(col string, style int, s string) {
	p.open(col, style, "inlineStr")
	p.out = append(p.out, '>')
	p.tag(true, "is")
	p.out = append(p.out, '<')
	p.out = append(p.out, p.prefix...)
	p.out = append(p.out, 't')
	if s != strings.TrimSpace(s) || strings.ContainsAny(s, "\n\t") {
		p.out = append(p.out, ` xml:space="preserve"`...)
	}
	p.out = append(p.out, '>')
	p.escaped(s)
	p.tag(false, "t")
	p.tag(false, "is")
}

// escaped writes a text with what XML asks to be spelled otherwise.
func (p *Pen) escaped(s string) {
	from := 0
	for i := 0; i < len(s); i++ {
		instead := ""
		switch s[i] {
		case '&':
			instead = "&amp;"
		case '<':
			instead = "&lt;"
		case '>':
			instead = "&gt;"
		case '_':
			if !looksEscaped(s[i:]) {
				continue
			}
			instead = "_x005F_"
		default:
			continue
		}
		p.out = append(p.out, s[from:i]...)
		p.out = append(p.out, instead...)
		from = i + 1
	}
	p.out = append(p.out, s[from:]...)
}

// looksEscaped tells whether a text holds, by chance, what the format takes for
// an escaped character: _x0041_ would be shown as A.
func looksEscaped(s string) bool {
	if len(s) < 7 || s[1] != 'x' || s[6] != '_' {
		return false
	}
	_, err := strconv.ParseUint(s[2:6], 16, 32)
	return err == nil
}

// maxText is the most characters, in UTF-16 units, that a cell holds.
const maxText = 32767

// Plain returns a text fit for a cell: valid UTF-8, no control characters but
// tab and line feed, at most 32,767 characters with the cut shown.
func Plain(s string) string {
	if len(s) <= maxText && plainASCII(s) {
		return s
	}
	s = strings.ToValidUTF8(s, "\uFFFD")
	if strings.IndexFunc(s, unfit) >= 0 {
		s = strings.Map(func(r rune) rune {
			if unfit(r) {
				return -1
			}
			return r
		}, strings.ReplaceAll(s, "\r\n", "\n"))
	}
	if len(s) <= maxText {
		return s
	}
	return cut(s)
}

func plainASCII(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

func unfit(r rune) bool {
	return (r < ' ' && r != '\t' && r != '\n') || (r >= 0x7F && r < 0xA0) || r == 0xFFFE || r == 0xFFFF
}

func cut(s string) string {
	count, keep := 0, 0
	for i, r := range s {
		count += utf16.RuneLen(r)
		if count < maxText {
			keep = i + utf8.RuneLen(r)
		}
	}
	if count <= maxText {
		return s
	}
	return s[:keep] + "…"
}
