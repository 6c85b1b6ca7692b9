package parts

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// Plausible limits of what a cut list of ordinary structures holds, common
// practice: outside them the unit is more likely wrong than the part unusual.
const (
	longestPiece  = 30_000 // mm
	shortestPiece = 3
	widestPlate   = 6_000
	thickestPlate = 300
	thinnestPlate = 0.4
)

// widestFlat is the width in mm to which flats are rolled as bars; wider ones are
// cut from plate. Source: EN 10058. Basis: memory.
const widestFlat = 150

// reWeldSize is a size as drawings write it at a weld: z4, a3, s8, 1/4.
var reWeldSize = regexp.MustCompile(`^(?i:[zas] ?\d+(?:[.,]\d+)?|\d/\d+"?)$`)

// fields reads the rows of one list.
type fields struct {
	*Reader
	opt   Options
	list  *List
	first map[string]int  // folded assembly and mark -> index of the first part
	cold  []string        // rows of hollow sections taken as formed cold
	once  []finding.Place // rows without a quantity
}

// part reads one row; what is wrong is told, and errors reject the row.
func (f *fields) part(e *joint.Entry) {
	p := Part{Place: e.Place(), Qty: 1}
	p.Mark, p.Standard, p.Note = e.Name(), e.Text("standard"), e.Text("note")
	p.Assembly, p.Material = e.Text("assembly"), e.Text("material")
	if p.Assembly == "" {
		p.Assembly = e.Group()
	}
	if p.Material == "" && f.opt.Material != "" {
		p.Material = f.opt.Material
		p.assume("material", p.Material, "blank: the shop's own", "shop value default_material")
	}
	p.Qty = e.Quantity()
	f.shape(e, &p)
	f.length(e, &p)
	f.judge(e, &p)
	if e.Bad() {
		if p.Mark != "" {
			f.list.Refused[markKey(p.Mark)] = p.Place
		}
		return
	}
	f.twice(e, &p)
	if e.Has("qty") && e.Text("qty") == "" {
		f.once = append(f.once, p.Place)
	}
	f.list.Parts = append(f.list.Parts, p)
}

// blanks tells where the quantity is blank among rows most of which have one: they are
// taken as one piece.
func (f *fields) blanks() {
	if 2*len(f.once) > len(f.list.Parts) {
		return
	}
	for _, place := range f.once {
		for _, c := range f.list.Columns {
			if c.Key == "qty" {
				place.Col, place.Header = c.Col, c.Header
			}
		}
		f.list.Problems = append(f.list.Problems, finding.Problem{Place: place, Level: finding.Warning, Code: "no-quantity",
			Text: "the quantity is blank: taken as one piece", Want: "how many identical parts there are", Hint: "write the quantity, 1 where it is one"})
	}
}

func (p *Part) assume(key, value, why, basis string) {
	p.Assumed = append(p.Assumed, joint.Assumption{Key: key, Value: value, Why: why, Basis: basis})
}

const wantSection = "a section such as SHS 60x60x4, IPE 200, L 50x50x5, FL 100x10 or PL 10x200"

// shape finds the section: from its designation, or from width and thickness.
func (f *fields) shape(e *joint.Entry, p *Part) {
	p.Written = e.Text("section")
	width, thick := f.size(e, "width", 1, widestPlate), f.size(e, "thickness", thinnestPlate, thickestPlate)
	switch {
	case e.Bad():
		return
	case p.Written == "" && thick == 0 && !e.Has("section") && !e.Has("thickness"):
		e.Missing("section", "the parts' sections")
	case p.Written == "" && thick == 0:
		e.Say(finding.Error, "section", "no-section", "", "the row names no section", wantSection, "write the section, or width and thickness of the plate")
	case p.Written == "":
		f.plate(e, p, width, thick)
	default:
		f.designated(e, p, width, thick)
	}
}

// size reads a width or thickness column; 0 where it is blank or wrong.
func (f *fields) size(e *joint.Entry, key string, low, high float64) float64 {
	mm, ok := e.Length(key, "a "+key+" such as 10 or 3/8\"")
	if !ok {
		return 0
	}
	if strings.ContainsAny(e.Text(key), "xX×х*") { // a length may be a product, 2x500
		e.Say(finding.Error, key, "implausible", e.Text(key), "it names more than one size", "a "+key+" such as 10 or 3/8\"", "write the "+key+" alone, or all sizes under section, such as SHS 60x60x4")
		return 0
	}
	if mm < low || mm > high {
		e.Say(finding.Error, key, "implausible", e.Text(key), "no ordinary part has this "+key+": "+joint.Unlikely(mm, low, high),
			fmt.Sprintf("%g to %g mm", low, high), "correct the cell, or state its unit")
		return 0
	}
	return mm
}

// plate makes the part of a width and a thickness.
func (f *fields) plate(e *joint.Entry, p *Part, width, thick float64) {
	text := "PL " + exact(thick)
	if width > 0 {
		text = "FL " + exact(width) + "x" + exact(thick)
	}
	read := f.section(text)
	p.Section, p.Text, p.Written = read.section, text, strings.TrimPrefix(strings.TrimPrefix(text, "FL "), "PL ")
	f.settlePlate(e, p, width)
}

// designated reads the designation, and compares it with width and thickness where
// the list has them too.
func (f *fields) designated(e *joint.Entry, p *Part, width, thick float64) {
	if t, w, l, ok := f.threeSizes(e, p.Written); ok {
		f.cutPlate(e, p, t, w, l)
		f.grade(e, p)
		return
	}
	read := f.sectionIn(f.words(p), e.Inches("section"))
	switch {
	case read.err == nil:
	case thick > 0 && section.NamesShape(p.Written) && strings.ContainsAny(p.Written, "0123456789"):
		f.unknown(e, p, read.err)
		return
	case thick > 0 && section.NamesShape(p.Written):
		e.Say(finding.Error, "section", "unknown-section", p.Written, "it names a shape without its sizes, and width and thickness alone would be those of a plate", wantSection, "write all the sizes behind the word, such as SHS 60x60x4 or L 50x50x5")
		return
	case thick > 0: // words such as "base plate" beside width and thickness
		p.assume("section", "width x thickness", fmt.Sprintf("%q is no section; width and thickness say what it is", p.Written), "derived")
		f.grade(e, p)
		f.plate(e, p, width, thick)
		return
	default:
		f.unknown(e, p, read.err)
		return
	}
	p.Section, p.Text = read.section, read.text
	if d := read.doubt; d != nil {
		e.Say(finding.Warning, "section", "size-unit", p.Written, d.Text, "sizes with their unit", d.Hint)
	}
	f.formed(p)
	f.grade(e, p)
	if flat := p.Section.Shape == section.Flat; thick > 0 && flat && far(thick, float64(p.Section.Web)) {
		e.Say(finding.Warning, "thickness", "two-sizes", e.Text("thickness"), fmt.Sprintf("the section %s says a thickness of %s mm, the column of thicknesses another; the section is taken", p.Written, number(float64(p.Section.Web))), "the same thickness", "correct one of them")
	} else if width > 0 && flat && p.Section.B > 0 && far(width, float64(p.Section.B)) {
		e.Say(finding.Warning, "width", "two-sizes", e.Text("width"), fmt.Sprintf("the section %s says a width of %s mm, the column of widths another; the section is taken", p.Written, number(float64(p.Section.B))), "the same width", "correct one of them")
	}
	f.settlePlate(e, p, width)
}

// unknown rejects a designation that nobody publishes, with the nearest that are.
func (f *fields) unknown(e *joint.Entry, p *Part, err error) {
	if reWeldSize.MatchString(p.Written) {
		e.Say(finding.Error, "section", "unknown-section", p.Written, "this was read as a cut list, and here stands what looks like the size of a weld, no section", wantSection,
			"in a cut list write the part's section; if this is the joint list, head the column Leg or Throat, and do not name it with --parts: that takes the cut list's file or sheet")
		return
	}
	why, hint := err.Error(), "correct the designation"
	if own := (*section.Error)(nil); errors.As(err, &own) {
		why = "it is no section that is known: " + own.Why
		if len(own.Near) > 0 {
			hint = "the nearest are " + strings.Join(own.Near, ", ") + "; look on the drawing and write the right one"
		}
	}
	e.Say(finding.Error, "section", "unknown-section", p.Written, why, wantSection, hint)
}

// words returns the designation with what another column says of it: whether a hollow
// section was formed cold or finished hot.
func (f *fields) words(p *Part) string {
	text := p.Written
	switch standard := strings.ToUpper(p.Standard); {
	case strings.Contains(standard, "10210") || standard == "HF":
		text += " EN 10210"
	case strings.Contains(standard, "10219") || standard == "CF":
		text += " EN 10219"
	}
	return text
}

// settlePlate decides whether a flat is a bar or cut from plate, and how wide.
func (f *fields) settlePlate(e *joint.Entry, p *Part, width float64) {
	s := &p.Section
	if s.Shape != section.Flat {
		return
	}
	p.Plate = s.Plate || s.B > widestFlat
	if !p.Plate {
		return
	}
	p.Width = s.B
	if p.Width == 0 {
		p.Width = units.MM(width)
		if width > 0 {
			p.Text = "PL " + exact(float64(s.Web)) + "x" + exact(width)
			p.Section = f.section(p.Text).section
			return
		}
		e.Say(finding.Warning, "section", "no-width", p.Written, "the plate has no width, so its mass is not known", "a width beside the thickness", "write the section as PL 10x200, or the width in a column of its own")
	}
}

// length reads the cutting length.
func (f *fields) length(e *joint.Entry, p *Part) {
	want := "a length such as 1250, 1.25 m or 4' 1-1/4\""
	mm, ok := e.Length("length", want)
	switch {
	case p.Length > 0 && ok && far(mm, float64(p.Length)):
		e.Say(finding.Warning, "length", "two-sizes", e.Text("length"), fmt.Sprintf("the section %s says %s mm; the column is taken", p.Written, number(float64(p.Length))), "the same length", "correct one of them")
	case p.Length > 0 && !ok:
		return
	case e.Bad():
		return
	case !e.Has("length"):
		e.Missing("length", "the parts' lengths")
		return
	case !ok:
		e.Say(finding.Error, "length", "no-length", "", "the length is missing", want, "write the length of one piece")
		return
	}
	if mm < shortestPiece || mm > longestPiece {
		e.Say(finding.Error, "length", "implausible", e.Text("length"), joint.Beyond(mm, shortestPiece, "no ordinary piece is this ", "short", "long")+joint.Unlikely(mm, shortestPiece, longestPiece), "a length from 3 mm to 30 m", "correct the length, or state its unit")
		return
	}
	p.Length = units.MM(mm)
}

// judge tells what is odd about a part that can be read.
func (f *fields) judge(e *joint.Entry, p *Part) {
	if e.Bad() {
		return
	}
	s := &p.Section
	if tall := max(s.H, s.B); !p.Plate && s.Shape != section.Flat && s.Shape != section.Bar && p.Length < tall/2 {
		e.Say(finding.Warning, "length", "short-piece", e.Text("length"), fmt.Sprintf("the piece is shorter than half of its section %s is high: %s", s.Designation, joint.Unlikely(float64(p.Length), float64(tall), longestPiece)), "the cutting length", "check the length and its unit")
	}
	f.usual(e, p)
	if p.Mark == "" && e.Has("part") {
		e.Say(finding.Warning, "part", "no-mark", "", "the part has no mark, so no joint can name it", "the part's own name or number", "give it a mark")
	}
}

// markKey brings a mark to the form in which marks are compared.
func markKey(mark string) string { return strings.ReplaceAll(joint.Fold(mark), " ", "") }
