package parts

import (
	"fmt"
	"math"
	"slices"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// slack is by how much in mm a tube may be wider than what it stands on before the seam
// all round it is doubted: a cap sits inside its tube, a sleeve over its own.
const slack = 12

// fits tells where a tube whose seam goes all round it is larger than the face that it
// stands on: one of the two sizes is wrong, or its unit.
func (m *matcher) fits(i, first, second int) {
	p, on := &m.book.List.Parts[first], &m.book.List.Parts[second]
	j := m.plans[i].Joint
	s := &p.Section
	if !j.AllRound || j.Mitre > 0 || j.Kind != joint.Fillet && j.Kind != joint.NoKind || s.Shape != section.Box && s.Shape != section.Round {
		return
	}
	small, large := min(s.H, s.B)-2*s.Web-slack, max(s.H, s.B)-2*s.Web-slack
	face := &on.Section
	told := false
	switch {
	case face.Shape == section.Flat && on.Plate:
		told = on.Width > 0 && (min(on.Width, on.Length) < small || max(on.Width, on.Length) < large)
	case face.Shape == section.Flat:
		told = min(face.B, on.Length) < small || max(face.B, on.Length) < large
	case face.Shape == section.Box && s.Shape == section.Box || face.Shape != s.Shape && (face.Shape == section.Box || face.Shape == section.Round):
		told = max(face.H, face.B) < small
	}
	if told {
		m.say(i, "part-small", finding.Warning, fmt.Sprintf("the seam goes all round %s (%s), which is larger than %s (%s, %s mm long)", p.Name(), s.Designation, on.Name(), face.Designation, number(float64(on.Length))))
	}
}

// alone tells where a part of which one piece is cut is joined to itself. A piece that
// is rolled or folded to a shell is, by a butt.
func (m *matcher) alone(i int) {
	for _, t := range m.touches[i] {
		if !t.first || !t.second {
			continue
		}
		level := finding.Warning
		if _, butt := preparations[m.plans[t.joint].Joint.Kind]; butt || m.plans[t.joint].Joint.Kind == joint.SquareButt {
			level = finding.Note
		}
		p := &m.book.List.Parts[i]
		m.sayPart(i, "qty", "part-alone", level, fmt.Sprintf("joint %s joins %s to itself, but one piece of it is cut", m.plans[t.joint].Joint.Mark, p.Name()))
		return
	}
}

// What a plate in a wrong unit looks like beside the others, common practice.
const (
	thinSheet  = 3    // mm; thinner is sheet
	fewOthers  = 3    // thicknesses that say what the list is made of
	smallSheet = 400  // mm; a larger one is a cover or a floor
	widestRead = 3100 // mm, of a plate of stock
	longRead   = 12500
)

// thin tells where one small plate is far thinner than all others and would be one of
// them in centimetres or inches. It is a question only where no seam on the part
// has a size that the sheet cannot bear.
func (m *matcher) thin() {
	var sheets []int
	var others []float64
	for i := range m.book.List.Parts {
		p := &m.book.List.Parts[i]
		if p.Section.Shape != section.Flat {
			continue
		}
		if p.Section.Web < thinSheet {
			sheets = append(sheets, i)
		} else {
			others = append(others, float64(p.Section.Web))
		}
	}
	if len(others) < fewOthers || 3*len(sheets) > len(others) {
		return
	}
	least, most := slices.Min(others), slices.Max(others)
	for _, i := range sheets {
		p := &m.book.List.Parts[i]
		if units, ok := otherUnit(p, least, most); ok {
			m.sayPart(i, "section", "part-thin", m.bears(i), fmt.Sprintf("%s is %s mm thick, the other plates and flats of the list are %s to %s mm: %s", p.Name(), number(float64(p.Section.Web)), number(least), number(most), units))
		}
	}
}

// otherUnit says what a plate would be in a larger unit in which it is like the others.
func otherUnit(p *Part, least, most float64) (words string, ok bool) {
	t, b, l := float64(p.Section.Web), float64(p.Section.B), float64(p.Length)
	if p.Plate && p.Width > 0 {
		b = float64(p.Width)
	}
	if b <= 0 || max(b, l) > smallSheet || t > least/3 {
		return "", false
	}
	words = fmt.Sprintf("%s x %s x %s mm as read", number(t), number(b), number(l))
	for _, u := range []struct {
		name string
		mm   float64
	}{{"centimetres", 10}, {"inches", units.MMPerInch}} {
		if thick := t * u.mm; thick >= 0.8*least && thick <= 1.2*most && min(b, l)*u.mm <= widestRead && max(b, l)*u.mm <= longRead {
			words += fmt.Sprintf("; %s x %s x %s mm if it was meant in %s", number(thick), number(b*u.mm), number(l*u.mm), u.name)
			ok = true
		}
	}
	return words, ok
}

// bears returns how loud a thin plate is told: a seam larger than the sheet is thick is
// more than a question.
func (m *matcher) bears(i int) finding.Level {
	thick := float64(m.book.List.Parts[i].Section.Web)
	for _, t := range m.touches[i] {
		if size := m.plans[t.joint].Joint.Size; math.Max(float64(size.A), float64(size.B)) > 1.5*thick {
			return finding.Warning
		}
	}
	return finding.Note
}
