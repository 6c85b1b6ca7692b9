package workbook

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/units"
)

// fitsFormula compares the row with what its plan was made from. A cell that gives
// no number any more fits no plan.
func fitsFormula(r *row) string {
	if !r.p.Settings {
		return ""
	}
	pattern := r.fitPattern()
	if known, ok := r.l.fits[pattern]; ok {
		return known
	}
	text := r.comparison()
	if !pattern.many {
		r.l.fits[pattern] = text
	}
	return text
}

// comparison puts the formula of fitsFormula together.
func (r *row) comparison() string {
	text := "AND("
	for i := range plannedFrom {
		if pair := &plannedFrom[i]; pair.there(r) {
			text += "ABS([" + pair.now + "]-[" + pair.then + "])<0.0001,"
		}
	}
	if words := r.inWords(); len(words) > 0 {
		text += "EXACT(" + r.wordsNow(words) + ",[words_read]),"
	}
	if r.p.Travel.High > 0 {
		text += "[travel_mm_min]>=[travel_low_mm_min]*0.99999,[travel_mm_min]<=[travel_high_mm_min]*1.00001,"
	}
	if r.p.HeatRange[0] > 0 {
		text += "[heat_kj_mm]>=[heat_low_kj_mm]*0.99999,"
	}
	if r.p.HeatRange[1] > 0 {
		text += "[heat_kj_mm]<=[heat_high_kj_mm]*1.00001,"
	}
	return `IFERROR(IF(` + text + `TRUE),"fits","run again"),"run again")`
}

// planned is a number that the plan was made from, beside the one that stands in
// the row now.
type planned struct {
	now, then, head string
	value           func(*row) (float64, bool)
}

// there tells whether the row has a cell for the number.
func (p *planned) there(r *row) bool {
	_, ok := p.value(r)
	return ok
}

var plannedFrom = []planned{
	{"leg_a_mm", "planned_leg_a_mm", "Planned leg A", known(func(r *row) units.MM { return r.p.Prep.LegA })},
	{"leg_b_mm", "planned_leg_b_mm", "Planned leg B", known(func(r *row) units.MM { return r.p.Prep.LegB })},
	{"throat_mm", "planned_throat_mm", "Planned throat", known(throatUsed)},
	{"t1_mm", "planned_t1_mm", "Planned t1", known(func(r *row) units.MM { return r.p.Prep.T1 })},
	{"t2_mm", "planned_t2_mm", "Planned t2", known(func(r *row) units.MM { return r.p.Prep.T2 })},
	{"gap_mm", "planned_gap_mm", "Planned gap", gapUsed},
	{"angle_deg", "planned_angle_deg", "Planned angle", known(angleOf)},
	{"root_face_mm", "planned_root_face_mm", "Planned root face", rootFaceUsed},
	{"depth_mm", "planned_depth_mm", "Planned depth", known(func(r *row) units.MM { return r.p.Prep.Depth })},
	{"depth2_mm", "planned_depth2_mm", "Planned depth 2", known(func(r *row) units.MM { return r.p.Prep.Depth2 })},
	{"radius_mm", "planned_radius_mm", "Planned radius", known(radiusUsed)},
}

// followed tells whether a number of the user's is followed by a column of figures
// of ours, by which a change is seen. How many pieces there are and how long moves
// the price, not the plan; but a slot's length is a size, and a groove welded from
// both sides is another groove. A nought is no length in any unit, so none of ours
// reads it.
func (r *row) followed(key string, v float64) bool {
	switch key {
	case "qty":
		return true
	case "length":
		return r.p.Prep.Kind != joint.Slot
	case "sides":
		return isFillet(r.p.Prep.Kind)
	case "size", "leg", "throat", "t1", "t2", "angle", "gap", "root_face", "depth", "radius":
		return v != 0
	}
	return false
}

// planCell is a column of the user's that an input which decides a plan stands in.
type planCell struct {
	key string
	col int
}

// planCells returns those columns from the left to the right.
func (l *layout) planCells() []planCell {
	var out []planCell
	for _, key := range planKeys {
		for _, c := range l.inputs[key] {
			out = append(out, planCell{key, c.Col})
		}
	}
	slices.SortStableFunc(out, func(a, b planCell) int { return cmp.Compare(a.col, b.col) })
	return out
}

// word is a cell of the user's that a plan was made from and that no column of
// figures of ours follows.
type word struct {
	col    int
	text   string
	value  float64
	number bool // it is a number that stands for a word, such as that of a process
}

// inWords lists the words of a row: words, blanks, and numbers that stand for a word.
func (r *row) inWords() []word {
	if r.worded || r.src == nil {
		return r.words
	}
	r.worded = true
	r.words = slices.Grow(r.words[:0], len(r.l.decisive))
	for k, c := range r.l.decisive {
		w, cell := word{col: c.col}, r.src.At(c.col)
		w.text = cell.Text
		w.value, w.number = r.l.number(r.src.Number, cell)
		if w.number && !r.followed(c.key, w.value) || !w.number && (cell.Kind == list.Text || cell.Kind == list.Blank) {
			r.words = append(r.words, w)
			r.pattern.word(k, w.number)
		}
	}
	return r.words
}

// millionths is how numbers stand among the words: whole, so that every program
// and every language spells them alike.
const millionths = 1e6

// wordsRead returns those words in one line.
func (r *row) wordsRead() string {
	var line strings.Builder
	for i, w := range r.inWords() {
		if i > 0 {
			line.WriteByte('|')
		}
		if w.number {
			w.text = strconv.FormatFloat(math.Round(w.value*millionths), 'f', 0, 64)
		}
		line.WriteString(w.text)
	}
	return line.String()
}

// wordsNow returns the template that puts the same words together live.
func (r *row) wordsNow(words []word) string {
	var refs []string
	for _, w := range words {
		ref := r.l.userCell(w.col)
		if w.number {
			ref = "ROUND(" + ref + "*1000000,0)"
		}
		refs = append(refs, ref)
	}
	return strings.Join(refs, `&"|"&`)
}

// fitPattern tells which parts the comparison of a row has: rows of one pattern
// have the same formula.
type fitPattern struct {
	figures uint32
	words   [2]uint64
	many    bool // more columns than the pattern holds
}

// word notes that the k-th decisive column is a word, or a number that stands for one.
func (f *fitPattern) word(k int, number bool) {
	if k >= 64 {
		f.many = true
		return
	}
	f.words[0] |= 1 << k
	if number {
		f.words[1] |= 1 << k
	}
}

// fitPattern returns the pattern of a row.
func (r *row) fitPattern() fitPattern {
	r.inWords()
	f := r.pattern
	for i := range plannedFrom {
		if plannedFrom[i].there(r) {
			f.figures |= 1 << i
		}
	}
	for i, has := range []bool{r.p.Travel.High > 0, r.p.HeatRange[0] > 0, r.p.HeatRange[1] > 0} {
		if has {
			f.figures |= 1 << (len(plannedFrom) + i)
		}
	}
	return f
}
