package parts

import (
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

// threeSizes reads a plate that is written with all three sizes, in mm: the
// smallest is its thickness, the largest its length. A unit behind any size is that of
// all, and wins over that of the list; two units are not read.
func (f *fields) threeSizes(text string, inches bool) (thick, width, length float64, ok bool) {
	plain := measure.Plain(section.Ungraded(text))
	m := reThree.FindStringSubmatch(plain)
	if m == nil {
		return 0, 0, 0, false
	}
	between, m := m[1], m[2:]
	metric, inch := false, strings.Contains(plain, "/")
	for k := 1; k < len(m); k += 2 {
		metric = metric || strings.EqualFold(m[k], "mm")
		inch = inch || m[k] != "" && !strings.EqualFold(m[k], "mm")
	}
	if metric && inch {
		return 0, 0, 0, false
	}
	unit := measure.MM
	if inch || inches && !metric {
		unit = measure.Inch
	}
	if strings.HasSuffix(between, ".") && (unit == measure.Inch || between != ".") {
		m[0] = "." + m[0] // PL .375, and PL.375 in inches; that of Bl.10 shortens the word
	}
	var sizes []float64
	for k := 0; k < len(m); k += 2 {
		q, bad := measure.Parse(strings.TrimSpace(m[k]), measure.Style{Mark: '.'})
		if bad != nil || q.Num <= 0 {
			return 0, 0, 0, false
		}
		sizes = append(sizes, q.MM(unit))
	}
	sort.Float64s(sizes)
	return sizes[0], sizes[1], sizes[2], true
}

// cutPlate makes the part of a plate's three sizes. The length column, where it
// repeats one of them, says which is the length.
func (f *fields) cutPlate(e *joint.Entry, p *Part, thick, width, length float64) {
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
