package joint

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
	"seamtally/batch/units"
)

// Plausible limits of what a list of ordinary structures can hold, common practice:
// outside them the unit is more likely wrong than the joint unusual.
const (
	longestSeam  = 100_000 // mm
	shortestSeam = 3
	thickest     = 200
	thinnest     = 0.4
	largestSize  = 40
	smallestSize = 0.8
)

// words reads the columns that are text for ever.
func (w *row) words() {
	j := &w.joint
	j.Mark, j.Assembly, j.Drawing, j.Rev = w.text("mark"), w.text("assembly"), w.text("drawing"), w.text("rev")
	j.Note, j.WPS, j.NDT = w.text("note"), w.text("wps"), w.text("ndt")
	j.Material, j.Material2 = w.text("material"), w.text("material2")
	j.Process, j.Wire, j.Gas, j.Machine = w.text("process"), w.text("wire"), w.text("gas"), w.text("machine")
	j.Part1, j.Part2 = w.text("part1"), w.text("part2")
	j.PartsInch = w.partsInch()
	if j.Assembly == "" {
		j.Assembly = w.group
	}
	if j.Drawing == "" {
		j.Drawing = w.drawing
	}
	if j.Rev == "" {
		j.Rev = w.rev
	}
	if j.Material == "" && j.Material2 == "" && w.opt.Material != "" {
		j.Material = w.opt.Material
		w.assume("material", j.Material, "blank: the shop's own", "shop value default_material")
	}
	cell, c, _ := w.cell("mark")
	switch {
	case cell.Kind == list.Date || cell.Kind == list.Text && measure.IsDate(j.Mark):
		w.say(finding.Error, c, "date", cell.Text, "the mark is a date: spreadsheets turn marks such as 1-2 into dates, and what was written is lost", "the joint's own name or number", "format the cell as text and write the mark again")
	case cell.Percent:
		w.say(finding.Error, c, "percent", cell.Text, "the mark is shown as a percentage", "the joint's own name or number", "format the cell as text and write the mark again")
	case c == nil && w.column("mark") == nil:
		w.missing("mark", "the joints' marks")
	case j.Mark == "" && !w.bad:
		w.say(finding.Error, w.column("mark"), "no-mark", "", "the row has no mark", "the joint's own name or number", "give the joint a mark")
	}
}

// partsInch tells whether what has no unit in the names of the parts is inches.
func (w *row) partsInch() bool {
	for _, key := range []string{"part1", "part2"} {
		if c := w.column(key); c != nil && w.bare(c) == measure.Inch {
			return true
		}
	}
	return false
}

// kind reads the kind of joint; a code for full penetration may stand under the size.
func (w *row) kind() {
	cell, c, ok := w.cell("kind")
	if !ok {
		return
	}
	said, known := w.kindSays(cell.Text)
	if !known {
		w.say(finding.Error, c, "unknown-kind", cell.Text, "this kind of joint is not known",
			"fillet, lap, corner, edge, square butt, single V, single bevel, double V, double bevel, single U, single J, flare bevel, flare V, plug or slot", w.nearestKind(cell.Text))
		return
	}
	w.joint.Kind, w.joint.AllRound = said.kind, said.round
	w.partial = said.part
	if said.bar {
		w.joint.Backing = "bar"
		w.assume("backing", "bar", `the kind says so: "`+cell.Text+`"`, "derived")
	}
	w.joint.Open = openOf(w.joint.Kind, cell.Text)
	if said.sides > 0 {
		w.joint.Sides = said.sides
		w.assume("sides", strconv.Itoa(said.sides), "the kind says "+sidesText(said.sides)+`: "`+cell.Text+`"`, "derived")
	}
}

func (w *row) nearestKind(text string) string {
	folded := fold(text)
	if rest, twice := strings.CutPrefix(folded, "2x "); twice {
		return "2x may mean both sides or two welds: write " + rest + " alone, and 2 under sides or under quantity"
	}
	best, found := "", ""
	for spelling, v := range w.spellings.words["kind"] {
		if len(spelling) > 3 && strings.Contains(folded, spelling) && (len(spelling) > len(best) || len(spelling) == len(best) && spelling < best) {
			best, found = spelling, v
		}
	}
	if found != "" {
		return `did you mean "` + found + `"? Write the kind alone; what else there is to say of the joint has columns of its own, such as sides and length`
	}
	return "write the kind that its weld is prepared as; if none fits, leave the joint out and price it by hand"
}

// size reads the weld size from the size columns; two columns that both speak are compared.
func (w *row) size() {
	for i := range w.cols {
		c := &w.cols[i]
		if c.Key != "size" {
			continue
		}
		cell := w.At(c.Col)
		if !filled(cell) || w.unreadable(cell, c, `a size such as 6, z6, a4 or 1/4"`) {
			continue
		}
		if v, known := w.word("kind", cell.Text); known && cell.Kind == list.Text {
			if w.joint.Kind == NoKind {
				w.joint.Kind = Kind(v)
			}
			continue
		}
		w.oneSize(cell, c)
	}
}

// reTwoLegs are two whole numbers that may be meant as two legs: 6/8.
var reTwoLegs = regexp.MustCompile(`^\d{1,2} ?/ ?\d{1,2}$`)

func (w *row) oneSize(cell list.Cell, c *column) {
	unit := w.bare(c)
	var size Size
	var told bool
	var bad *measure.Fault
	if cell.Kind == list.Number {
		size = Size{A: units.MM(w.typed(cell, c)), Text: cell.Text}
		if c.means != "" && c.means != "either" {
			size.Means, told = SizeKind(c.means), true
		}
	} else {
		size, told, bad = w.writtenSize(cell.Text, c, unit)
	}
	if bad != nil {
		if reTwoLegs.MatchString(measure.Plain(cell.Text)) {
			bad = &measure.Fault{Text: bad.Text, Hint: "write two unequal legs as 6x8, or one decimal number"}
		}
		w.fault(c, "bad-size", cell.Text, bad, `a size such as 6, z6, a4, 6x8 or 1/4"`)
		return
	}
	if mm := float64(size.A); mm < smallestSize || mm > largestSize || size.B != 0 && (float64(size.B) < smallestSize || size.B > largestSize) {
		w.say(finding.Error, c, "implausible", cell.Text, beyond(mm, smallestSize, "no ordinary weld is this ", "small", "large")+readings(mm, smallestSize, largestSize), "a size from 0.8 to 40 mm", "correct the size, or state its unit")
		return
	}
	if cell.Kind == list.Text && !strings.ContainsAny(cell.Text, `"'m/`) {
		w.noteBare(c, unit)
	}
	if !told {
		w.untold(&size, c)
	}
	if old := w.joint.Size; old.Means != NoSize {
		w.twoSizes(old, size, c, cell.Text)
		return
	}
	w.joint.Size = size
}

// untold settles what a bare number means where neither cell nor header says it.
func (w *row) untold(size *Size, c *column) {
	kind, bare := w.joint.Kind, `a bare number under "`+c.Header+`" of a `
	switch {
	case kind == Plug || kind == Slot:
		size.Means = Leg
		w.assume("size", "width of the hole", bare+string(kind)+" is taken as the diameter or width of the hole", "common-practice")
	case kind == FlareBevel || kind == FlareV:
		size.Means = Throat
		w.assume("size", string(Throat), bare+string(kind)+" is taken as its effective throat, which is less than it is filled deep", "common-practice")
	case kind == Edge:
		size.Means = Throat
		w.assume("size", string(Throat), bare+string(kind)+" is taken as how deep it is filled", "common-practice")
	case kind.IsButt() || kind == anyButt:
		size.Means = Penetration
		w.assume("size", "penetration", bare+"butt is taken as its penetration", "common-practice")
	default:
		size.Means = SizeKind(w.opt.sizeMeans())
		w.sizesTaken.add(w.place(w.Number, c))
		w.assume("size", string(size.Means), `a bare number under "`+c.Header+`" is taken as the `+string(size.Means), "shop value size_means")
	}
}

// twoSizes compares a leg and a throat that both stand in the row.
func (w *row) twoSizes(a, b Size, c *column, read string) {
	leg := func(s Size) float64 {
		if s.Means == Throat {
			return float64(s.A) * math.Sqrt2
		}
		return float64(s.A)
	}
	if a.Means == Penetration || b.Means == Penetration || a.B != 0 || b.B != 0 || math.Abs(leg(a)-leg(b)) <= 0.75 {
		return
	}
	w.say(finding.Error, c, "two-sizes", read, "the row gives two sizes that do not belong together: "+a.Text+" and "+b.Text,
		"one size, or a leg that is 1.41 times the throat", "delete the wrong one, or correct it")
}

// length reads the seam length; feet and inches in two columns are added.
func (w *row) length() {
	any, figure, total := false, false, 0.0
	want := "a length such as 1250, 1.25 m or 2' 6\""
	var first *column
	read := ""
	for i := range w.cols {
		c := &w.cols[i]
		if c.Key != "length" {
			continue
		}
		cell := w.At(c.Col)
		if first == nil {
			first = c
		}
		if !filled(cell) || w.unreadable(cell, c, want) {
			any = any || filled(cell)
			continue
		}
		any, read = true, cell.Text
		if cell.Kind == list.Text {
			if _, ok := w.word("allround", cell.Text); ok {
				w.joint.AllRound = true
				continue
			}
			if w.mitred(cell.Text, c) {
				continue
			}
		}
		mm, ok := w.oneLength(cell, c, want)
		if !ok {
			return
		}
		figure = true
		total += mm
	}
	switch {
	case w.joint.AllRound && total <= 0 && w.joint.Part1 == "":
		w.say(finding.Error, first, "all-round", read, "the seam goes all round, but the row names no section", "a length, or a section in part1", "write the length of the seam")
	case w.joint.AllRound && !any:
		w.assume("length", "all round", "blank, and the kind says so", "derived")
	case w.joint.AllRound && !figure:
	case w.joint.Kind == Plug && total <= 0 && !w.bad: // a hole has no seam length
		return
	case first == nil:
		w.missing("length", "the seams' lengths")
	case !any:
		w.say(finding.Error, first, "no-length", "", "the length is missing", want, "write the length of the seam")
	case w.bad && total == 0:
	case total <= 0:
		w.say(finding.Error, first, "bad-length", read, "a seam must be longer than zero", want, "write the length of the seam")
	case total > longestSeam || total < shortestSeam:
		w.say(finding.Error, first, "implausible", read, beyond(total, shortestSeam, "no ordinary seam is this ", "short", "long")+readings(total, shortestSeam, longestSeam), "a length from 3 mm to 100 m", "correct the length, or state its unit")
	}
	w.joint.Length = units.MM(total)
	if first != nil && first.total && w.joint.Qty > 1 {
		w.totalled++
	}
}

func (w *row) oneLength(cell list.Cell, c *column, want string) (float64, bool) {
	if cell.Kind == list.Number {
		return w.typed(cell, c), true
	}
	unit := w.bare(c)
	if q, _ := measure.Parse(cell.Text, w.style); q.Unit == measure.None {
		w.noteBare(c, unit)
	}
	mm, bad := lengthOf(cell.Text, unit, w.style)
	if bad != nil {
		w.fault(c, "bad-length", cell.Text, bad, want)
		return 0, false
	}
	return mm, true
}
