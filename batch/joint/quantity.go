package joint

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

// mostAlike is the largest quantity of one row that is believed.
const mostAlike = 1_000_000

// quantity reads how many identical joints there are.
func (w *row) quantity() {
	w.joint.Qty = 1
	cell, c, ok := w.cell("qty")
	if !ok && w.column("qty") != nil {
		w.assume("qty", "1", "blank: one of it", "common-practice")
	}
	if !ok || w.unreadable(cell, c, "a whole number of "+w.dialect.all+", at least 1") {
		return
	}
	v, bad := cell.Value, (*measure.Fault)(nil)
	if cell.Kind == list.Text {
		t := bareCount(cell.Text)
		if _, direct := measure.Number(cell.Text, w.style); direct == nil {
			t = cell.Text
		}
		v, bad = measure.Number(t, w.style)
	}
	if bad == nil && v > mostAlike {
		w.say(finding.Error, c, "bad-quantity", cell.Text, "no list has so many alike", fmt.Sprintf("a whole number from 1 to %d", mostAlike), "write how many identical "+w.dialect.all+" there are")
		return
	}
	if bad != nil || v != math.Trunc(v) || v < 1 {
		w.say(finding.Error, c, "bad-quantity", cell.Text, "it is not a whole number of "+w.dialect.all, "a whole number, at least 1", "write how many identical "+w.dialect.all+" there are")
		return
	}
	w.joint.Qty = int(v)
}

// pieces are the words that stand beside a number of pieces and say nothing more.
var pieces = []string{"x", "pc", "pcs", "piece", "pieces", "off", "of", "ea", "each", "nos", "pce", "pces", "set", "sets", "stk", "stck", "st", "stuck", "ks", "szt", "ud", "uds", "pz", fold("шт")}

// bareCount returns a quantity without the words for pieces before and behind it. They
// are taken off whole: the letter O behind a 1 is no word but most likely a nought.
func bareCount(text string) string {
	t := fold(strings.TrimRight(text, ".,"))
	for {
		front := strings.TrimLeftFunc(t, unicode.IsLetter)
		back := strings.TrimRightFunc(t, unicode.IsLetter)
		switch {
		case slices.Contains(pieces, t[:len(t)-len(front)]):
			t = strings.Trim(front, " .")
		case slices.Contains(pieces, t[len(back):]), t[len(back):] == "no": // 4 no.; before it a number has a rank
			t = strings.Trim(back, " .")
		default:
			return t
		}
	}
}
