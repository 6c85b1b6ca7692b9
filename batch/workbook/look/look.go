// Package look holds what our cells look like, and a small model of a sheet: a
// grid of typed cells that knows how to write itself. Colours are readable in
// grey, and no colour carries a meaning that does not also stand in words.
package look

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Role says what a cell is for; it decides everything but the number format.
type Role string

// The roles of cells.
const (
	Plain    Role = "plain"    // text
	Wrap     Role = "wrap"     // longer text, wrapped
	Title    Role = "title"    // first line of a sheet
	Sub      Role = "sub"      // second line, what the sheet is for
	Section  Role = "section"  // heading of a block
	Head     Role = "head"     // column header on our own sheets
	HeadNum  Role = "headnum"  // the same over numbers
	Part     Role = "part"     // text under a sum it is part of
	Calc     Role = "calc"     // a number that follows from others
	Total    Role = "total"    // a sum
	TotalTxt Role = "totaltxt" // its label
	Right    Role = "right"    // a word among figures
	Strong   Role = "strong"   // a number that matters among others of its line
	Chosen   Role = "chosen"   // a value that the planner chose: not a formula
	Edit     Role = "edit"     // a cell to change
	EditText Role = "edittext" // the same for words
	Link     Role = "link"     // leads to a cell
	Assumed  Role = "assumed"  // a value that nobody gave
	Quiet    Role = "quiet"    // small print
	Stop     Role = "stop"     // an error, in words too
	Heed     Role = "heed"     // a warning, in words too
	Key      Role = "key"      // the documented key of a column
)

// HeadOf is the role of a header in one of the groups beside the user's list.
func HeadOf(group string) Role { return Role("head:" + group) }

// LabelOf is the role of the group's own label.
func LabelOf(group string) Role { return Role("label:" + group) }

// The palette: dark for words on white, pale for fills. In grey the fills differ
// by at most a shade, the words tell them apart.
const (
	ink     = "1D2B36"
	slate   = "33475B"
	grey    = "5F6B76"
	line    = "B8C2CC"
	paper   = "EEF2F5"
	sand    = "FFF4D6"
	rust    = "8A2C0D"
	rustPal = "FBE3DA"
	ochre   = "6B4E00"
	ochrPal = "FCEFC7"
	sea     = "0B5563"
)

// groupColours are the fills of the header groups.
var groupColours = map[string]string{
	"status": "33475B", "read": "5F6B76", "estimator": "1F4E79", "foreman": "0B5563",
	"welder": "7A4A10", "checks": "6B2F55", "floor": "7C5A00", "plan": "77828C", "user": "44546A",
	"mass": "1F4E79", "seams": "7A4A10", "prepare": "0B5563",
}

type styleKey struct {
	role   Role
	format string
}

// Book makes the donor's styles as they are asked for, each once.
type Book struct {
	File  *excelize.File
	font  string
	size  float64
	known map[styleKey]int
	err   error
	shut  bool
}

// NewBook starts a donor whose cells use the given font.
func NewBook(font, size string) *Book {
	b := &Book{File: excelize.NewFile(), font: "Calibri", size: usualSize, known: map[styleKey]int{}}
	if n, err := strconv.ParseFloat(size, 64); font != "" && err == nil && n >= 6 && n <= 24 {
		b.font, b.size = font, n
	}
	return b
}

// Shut says that the donor has been written: no style can be added any more.
func (b *Book) Shut() { b.shut = true }

// Err returns the first error of the library that makes the donor.
func (b *Book) Err() error { return b.err }

// Note keeps the first error.
func (b *Book) Note(err error) {
	if b.err == nil {
		b.err = err
	}
}

// Style returns the number of a style in the donor.
func (b *Book) Style(role Role, format string) int {
	key := styleKey{role, format}
	if id, ok := b.known[key]; ok {
		return id
	}
	if b.shut {
		b.Note(fmt.Errorf("style %q is asked for after the donor was written", string(role)+" "+format))
		return 0
	}
	style := b.make(role)
	if format != "" {
		custom := format // of its own: every call would make one on the heap
		style.CustomNumFmt = &custom
	}
	id, err := b.File.NewStyle(style)
	b.Note(err)
	b.known[key] = id
	return id
}

func (b *Book) make(role Role) *excelize.Style {
	s := &excelize.Style{
		Font:      &excelize.Font{Family: b.font, Size: b.size, Color: ink},
		Alignment: &excelize.Alignment{Vertical: "top"},
	}
	if group, ok := strings.CutPrefix(string(role), "head:"); ok {
		return b.head(s, groupColours[group])
	}
	if group, ok := strings.CutPrefix(string(role), "label:"); ok {
		s.Font.Bold, s.Font.Color = true, groupColours[group]
		s.Alignment.Vertical = "bottom"
		return s
	}
	plain, isOff := strings.CutSuffix(string(role), string(off))
	if change, ok := changes[Role(plain)]; ok {
		change(s)
	}
	if isOff {
		s.Alignment.Horizontal, s.Alignment.Indent = "left", 1
	}
	return s
}

// Off returns the variant of a role for words that stand beside figures.
func Off(role Role) Role {
	if variant, ok := indented[role]; ok {
		return variant
	}
	return role
}

// off marks the variant of a role that keeps off what stands to its left.
const off Role = " off"

// indented are the roles that have that variant.
var indented = map[Role]Role{Plain: Plain + off, Wrap: Wrap + off, Sub: Sub + off, Quiet: Quiet + off, Head: Head + off,
	TotalTxt: TotalTxt + off, Link: Link + off, Chosen: Chosen + off, Stop: Stop + off, Heed: Heed + off}

func (b *Book) head(s *excelize.Style, colour string) *excelize.Style {
	s.Font.Bold, s.Font.Color = true, "FFFFFF"
	s.Fill = fill(colour)
	s.Alignment = &excelize.Alignment{Vertical: "center", Horizontal: "center", WrapText: true}
	s.Border = []excelize.Border{{Type: "left", Style: 1, Color: "FFFFFF"}}
	return s
}

func fill(colour string) excelize.Fill {
	return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
}

func under(weight int, colour string) []excelize.Border {
	return []excelize.Border{{Type: "bottom", Style: weight, Color: colour}}
}

// changes tell how a role differs from plain text.
var changes = map[Role]func(*excelize.Style){
	Wrap:  func(s *excelize.Style) { s.Alignment.WrapText = true },
	Right: func(s *excelize.Style) { s.Alignment.Horizontal = "right" },
	Part:  func(s *excelize.Style) { s.Alignment.Horizontal, s.Alignment.Indent = "left", 2 },
	Title: func(s *excelize.Style) { s.Font.Bold, s.Font.Size, s.Font.Color = true, s.Font.Size+5, slate },
	Sub:   func(s *excelize.Style) { s.Font.Color = grey },
	Section: func(s *excelize.Style) {
		s.Font.Bold, s.Font.Size, s.Font.Color, s.Border = true, s.Font.Size+1, slate, under(1, slate)
		s.Alignment.Vertical = "bottom"
	},
	Head: func(s *excelize.Style) {
		s.Font.Bold, s.Font.Color, s.Fill, s.Alignment.WrapText = true, "FFFFFF", fill(slate), true
		s.Alignment.Vertical = "center"
	},
	HeadNum: func(s *excelize.Style) {
		s.Font.Bold, s.Font.Color, s.Fill, s.Alignment.WrapText = true, "FFFFFF", fill(slate), true
		s.Alignment.Vertical, s.Alignment.Horizontal = "center", "right"
	},
	Total: func(s *excelize.Style) {
		s.Font.Bold, s.Fill = true, fill(paper)
		s.Border = []excelize.Border{{Type: "top", Style: 1, Color: slate}}
	},
	TotalTxt: func(s *excelize.Style) {
		s.Font.Bold, s.Fill = true, fill(paper)
		s.Border = []excelize.Border{{Type: "top", Style: 1, Color: slate}}
	},
	Strong: func(s *excelize.Style) { s.Font.Bold, s.Fill = true, fill(paper) },
	Chosen: func(s *excelize.Style) { s.Fill = fill(paper) },
	Edit:   editable,
	EditText: func(s *excelize.Style) {
		editable(s)
		s.Alignment.WrapText = true
	},
	Link:    func(s *excelize.Style) { s.Font.Color, s.Font.Underline = sea, "single" },
	Assumed: func(s *excelize.Style) { s.Font.Italic, s.Font.Color = true, sea },
	Quiet:   func(s *excelize.Style) { s.Font.Color, s.Alignment.WrapText = grey, true },
	Key:     func(s *excelize.Style) { s.Font.Color, s.Font.Size = grey, s.Font.Size-2 },
	Stop:    func(s *excelize.Style) { s.Font.Bold, s.Font.Color, s.Fill = true, rust, fill(rustPal) },
	Heed:    func(s *excelize.Style) { s.Font.Color, s.Fill = ochre, fill(ochrPal) },
}

// editable marks a cell to change: yellow, and framed for those who print in grey.
func editable(s *excelize.Style) {
	s.Fill = fill(sand)
	for _, side := range []string{"left", "right", "top", "bottom"} {
		s.Border = append(s.Border, excelize.Border{Type: side, Style: 7, Color: ochre})
	}
}
