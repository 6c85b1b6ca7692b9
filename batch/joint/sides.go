package joint

import (
	"slices"
	"strconv"

	"seamtally/batch/finding"
	"seamtally/batch/list"
)

// sides reads whether one side or both are welded.
func (w *row) sides() {
	cell, c, ok := w.cell("sides")
	if ok {
		v, known := w.word("sides", cell.Text)
		if cell.Kind == list.Number && (cell.Value == 1 || cell.Value == 2) {
			v, known = strconv.Itoa(int(cell.Value)), true
		}
		if !known {
			w.say(finding.Error, c, "bad-sides", cell.Text, "it is not a number of sides", "1 or 2, one or both", "write 1 or 2")
			return
		}
		w.takeSides(int(v[0]-'0'), c, cell.Text)
	}
	if w.joint.Sides == 0 {
		w.joint.Sides = 1
		w.assume("sides", "1", "blank: welded on one side", "common-practice")
	}
}

// takeSides takes what a cell says of the sides. Where the kind or the size says
// otherwise the later cell counts, and it is told.
func (w *row) takeSides(n int, c *column, read string) {
	if was := w.joint.Sides; was != 0 && was != n {
		w.say(finding.Warning, c, "two-sides", read, "another cell of the row says "+sidesText(was)+", this one "+sidesText(n)+"; this one counts", "one number of sides", "correct the one that is wrong")
	}
	if w.joint.Sides != n {
		w.joint.Assumed = slices.DeleteFunc(w.joint.Assumed, func(a Assumption) bool { return a.Key == "sides" })
	}
	w.joint.Sides = n
}

func sidesText(n int) string { return pick(n == 2, "both sides", "one side") }
