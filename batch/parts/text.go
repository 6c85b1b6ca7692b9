package parts

import (
	"fmt"
	"math"
	"regexp"
	"sort"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/joint/measure"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// number writes a figure to a hundredth, without needless noughts.
func number(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}

// exact writes a size so that it reads back the same.
func exact(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }

// far tells whether two sizes differ by more than their rounding.
func far(a, b float64) bool { return math.Abs(a-b) > 0.5 }

// One size of a plate with its unit, and a plate with all three: PL 10x200x300. What stands
// between word and sizes is kept, for a point there may be that of a fraction.
const onePlateSize = `([\d.,/ -]*\d) ?(mm|"|in\.?|inch(?:es)?)?`

var reThree = regexp.MustCompile(`(?i)^(?:PL|PLT|PLATE|BL|BLECH|FL|FLT|FLAT|CHAPA|BLACHA|ЛИСТ|TÔLE|LAMIERA)([. -]*)` +
	onePlateSize + ` ?x ?` + onePlateSize + ` ?x ?` + onePlateSize + `$`)

// threeSizes reads a plate that is written with all three sizes, in mm: the smallest is
// its thickness, the largest its length. A unit behind any size is that of all, and wins
// over that of the list, unless the others make no plate in it; two units are not read.
func (f *fields) threeSizes(e *joint.Entry, text string) (thick, width, length float64, ok bool) {
	plain := measure.Plain(section.Ungraded(text))
	m := reThree.FindStringSubmatch(plain)
	if m == nil {
		return 0, 0, 0, false
	}
	between, m := m[1], m[2:]
	inches := e.Inches("section")
	marks, metric, inch := 0, false, false
	for k := 0; k < len(m); k += 2 {
		fraction := strings.Contains(m[k], "/")
		millimetres := strings.EqualFold(m[k+1], "mm")
		metric = metric || millimetres
		inch = inch || fraction || m[k+1] != "" && !millimetres
		if fraction || m[k+1] != "" {
			marks++
		}
	}
	if metric && inch {
		return 0, 0, 0, false
	}
	if strings.HasSuffix(between, ".") && (inch || inches && !metric || between != ".") {
		m[0] = "." + m[0] // PL .375, and PL.375 in inches; that of Bl.10 shortens the word
	}
	var sizes []float64
	for k := 0; k < len(m); k += 2 {
		q, bad := measure.Parse(strings.TrimSpace(m[k]), measure.Style{Mark: '.'})
		if bad != nil || q.Num <= 0 {
			return 0, 0, 0, false
		}
		sizes = append(sizes, q.Num)
	}
	sort.Float64s(sizes)
	per, ok := f.perSize(e, text, sizes, marks, metric, inch)
	return sizes[0] * per, sizes[1] * per, sizes[2] * per, ok
}

// perSize decides how many millimetres one of the sizes of a plate is; not ok where it
// refuses the plate, which it tells.
func (f *fields) perSize(e *joint.Entry, text string, sizes []float64, marks int, metric, inch bool) (mm float64, ok bool) {
	of := "PL " + exact(sizes[0]) + "x" + exact(sizes[1])
	if metric {
		return 1, true
	}
	if inch {
		all := f.section(of + " IN")
		if marks < len(sizes) && (all.err != nil || !section.Ordinary(&all.section, true, f.set)) {
			e.Say(finding.Error, "section", "mixed-units", text, fmt.Sprintf("one size is in inches and others have no unit; with all in inches it would be a plate of %s x %s x %s mm", number(sizes[0]*units.MMPerInch), number(sizes[1]*units.MMPerInch), number(sizes[2]*units.MMPerInch)),
				"all sizes in one unit", "write all three in millimetres, such as PL 10x200x300, or a mark of inches behind each")
			return 0, true
		}
		return units.MMPerInch, true
	}
	read := f.sectionIn(of, e.Inches("section"))
	if read.err != nil {
		return 0, false
	}
	if d := read.doubt; d != nil {
		e.Say(finding.Warning, "section", "size-unit", text, d.Text, "sizes with their unit", d.Hint)
	}
	if strings.HasSuffix(read.text, " IN") {
		return units.MMPerInch, true
	}
	return 1, true
}

// cutPlate makes the part of a plate's three sizes. The length column, where it
// repeats one of them, says which is the length.
func (f *fields) cutPlate(e *joint.Entry, p *Part, thick, width, length float64) {
	if e.Bad() {
		return
	}
	if mm, given := e.Length("length", "a length"); given && !far(mm, width) && far(mm, length) {
		width, length = length, width
	}
	if thick < thinnestPlate || thick > thickestPlate || length > longestPiece {
		e.Say(finding.Error, "section", "implausible", p.Written, "no ordinary plate has these sizes", wantSection, "correct the sizes, or state their unit")
		return
	}
	p.Text = "PL " + exact(thick) + "x" + exact(width)
	read := f.section(p.Text)
	if read.err != nil {
		f.unknown(e, p, read.err)
		return
	}
	p.Section, p.Plate, p.Width, p.Length = read.section, true, units.MM(width), units.MM(length)
}
