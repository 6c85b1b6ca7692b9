package workbook

import (
	"math"
	"sort"
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
	text := "AND("
	for i := range plannedFrom {
		if pair := &plannedFrom[i]; pair.there(r) {
			text += "ABS([" + pair.now + "]-[" + pair.then + "])<0.0001,"
		}
	}
	if cells := r.inWords(); len(cells) > 0 {
		text += "EXACT(" + r.wordsNow(cells) + ",[words_read]),"
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

// inWords lists the user's cells in this row that the plan was made from and that
// no column of figures of ours follows: words, blanks, and numbers that stand for
// a word, such as that of a process.
func (r *row) inWords() []list.Cell {
	if r.src == nil {
		return nil
	}
	var cells []list.Cell
	for _, key := range planKeys {
		for _, c := range r.l.inputs[key] {
			cell := r.src.At(c.Col)
			if cell.Col == 0 {
				cell.Col = c.Col // a blank cell does not know its column
			}
			v, number := r.l.number(r.src.Number, cell)
			if number && !r.followed(key, v) || !number && (cell.Kind == list.Text || cell.Kind == list.Blank) {
				cells = append(cells, cell)
			}
		}
	}
	sort.Slice(cells, func(i, j int) bool { return cells[i].Col < cells[j].Col })
	return cells
}

// millionths is how numbers stand among the words: whole, so that every program
// and every language spells them alike.
const millionths = 1e6

// wordsRead returns those words in one line.
func (r *row) wordsRead() string {
	var words []string
	for _, cell := range r.inWords() {
		text := cell.Text
		if v, number := r.l.number(r.src.Number, cell); number {
			text = strconv.FormatFloat(math.Round(v*millionths), 'f', 0, 64)
		}
		words = append(words, text)
	}
	return strings.Join(words, "|")
}

// wordsNow returns the template that puts the same words together live.
func (r *row) wordsNow(cells []list.Cell) string {
	var refs []string
	for _, cell := range cells {
		ref := r.l.userCell(cell.Col)
		if _, number := r.l.number(r.src.Number, cell); number {
			ref = "ROUND(" + ref + "*1000000,0)"
		}
		refs = append(refs, ref)
	}
	return strings.Join(refs, `&"|"&`)
}
