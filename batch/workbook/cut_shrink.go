package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"seamtally/batch/parts"
)

// partShrink is to how many decimals of a millimetre the allowance is rounded.
const partShrink = 2

// mostShrinks is how many joints a formula of the allowance adds up: more would be
// longer than a person or the format bears.
const mostShrinks = 40

// shrinks adds up what the joints shorten one piece by, the least (0) or the most (1),
// on their own cells of quantity, length, leg and area (PARTS-10, PARTS-11). Empty where
// the joints stand elsewhere, or are too many.
func (r *cutRow) shrinks(k int) string {
	if !r.c.joints || r.r.Shrink == nil || len(r.r.Shrinks) > mostShrinks {
		return ""
	}
	sum, terms := 0.0, make([]string, 0, len(r.r.Shrinks))
	for i := range r.r.Shrinks {
		s := &r.r.Shrinks[i]
		j := r.c.l.row(s.Joint)
		least, most := s.Range(j.p)
		sum += [2]float64{least, most}[k]
		terms = append(terms, r.shrinkTerm(s, j, k))
	}
	text := strings.Join(terms, "+")
	if len(text) > mostFormula {
		return ""
	}
	step := math.Pow(10, partShrink)
	return agreed(math.Round(sum*step)/step, float64(r.r.Shrink[k]), rounded(text, partShrink))
}

// shrinkTerm is what one joint adds.
func (r *cutRow) shrinkTerm(s *parts.Shrink, j *row, k int) string {
	l := r.c.l
	cell := func(key string) string {
		return l.cols[l.at[key]].unit.metricOf(l.sheetRef()+"$"+l.letters[l.at[key]]+"$"+itoa(j.j.Place.Row), l.us)
	}
	pick := [2]string{"MIN", "MAX"}[k]
	length := cell("length_mm")
	along := rate(s, pick, cell)
	if along != "" {
		along = length + "*" + constant(s.Along/1000) + "*" + along
	}
	across := r.acrossTerm(s, j, pick, length, cell)
	text := along
	switch {
	case along == "":
		text = across
	case across != "" && !s.Either:
		text = along + "+" + across
	case across != "" && k == 0:
		text = fmt.Sprintf("MIN(%s,IF(%s>%s,1E+9,%s))", along, length, constant(s.Longest), across)
	case across != "":
		text = fmt.Sprintf("MAX(%s,IF(%s>%s,0,%s))", along, length, constant(s.Longest), across)
	case s.Either && k == 0: // across, a part that stands on another is not drawn together
		text = fmt.Sprintf("IF(%s>%s,%s,0)", length, constant(s.Longest), along)
	}
	return cell("qty") + "/" + itoa(s.Pieces) + "*(" + text + ")"
}

// rate is what a metre along the seam shortens in mm; empty where nothing runs along.
func rate(s *parts.Shrink, pick string, cell func(string) string) string {
	switch {
	case s.Along <= 0:
		return ""
	case s.PerArea > 0:
		return fmt.Sprintf("%s(%s,%s*%s)", pick, constant(s.Rate), constant(s.PerArea), cell("area_mm2"))
	}
	return constant(s.Rate)
}

// acrossTerm is what the seam draws the part together by across itself.
func (r *cutRow) acrossTerm(s *parts.Shrink, j *row, pick, length string, cell func(string) string) string {
	if s.Across <= 0 {
		return ""
	}
	x := "area_mm2"
	if s.OnLeg {
		x = "leg_a_mm"
		if j.p.Prep.LegB > j.p.Prep.LegA {
			x = "leg_b_mm"
		}
	}
	var lines []string
	for _, line := range s.Lines {
		switch {
		case line.K == 0:
			lines = append(lines, constant(line.C))
		case line.C == 0:
			lines = append(lines, constant(line.K)+"*"+cell(x))
		default:
			lines = append(lines, constant(line.K)+"*"+cell(x)+"+"+constant(line.C))
		}
	}
	text := pick + "(" + strings.Join(lines, ",") + ")"
	if s.Strip > 0 {
		text = fmt.Sprintf("MIN(1,%s*%s)*", length, constant(s.Strip)) + text
	}
	if s.Across != 1 {
		text = constant(s.Across) + "*" + text
	}
	return text
}

// constant spells a number of a formula with as many digits as matter.
func constant(v float64) string { return strconv.FormatFloat(v, 'G', 13, 64) }
