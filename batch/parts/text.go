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

// reThree is a plate with all three of its sizes: PL 10x200x300.
var reThree = regexp.MustCompile(`(?i)^(?:PL|PLT|PLATE|BL|BLECH|FL|FLT|FLAT|CHAPA|BLACHA|ЛИСТ|TÔLE|LAMIERA)[ .-]*([\d.,/ -]+)(?:mm)? ?x ?([\d.,/ -]+)(?:mm)? ?x ?([\d.,/ -]+?) ?(?:mm|"|in)?$`)

// threeSizes reads a plate that is written with all three sizes, in mm: the
// smallest is its thickness, the largest its length.
func (f *fields) threeSizes(text string, inches bool) (thick, width, length float64, ok bool) {
	plain := measure.Plain(text)
	m := reThree.FindStringSubmatch(plain)
	if m == nil {
		return 0, 0, 0, false
	}
	unit := measure.MM
	if inches || strings.ContainsAny(plain, `"/`) {
		unit = measure.Inch
	}
	var sizes []float64
	for _, one := range m[1:] {
		q, bad := measure.Parse(strings.TrimSpace(one), measure.Style{Mark: '.'})
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
