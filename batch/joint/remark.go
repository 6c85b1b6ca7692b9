package joint

import (
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/finding"
)

// remark is what a remark seems to ask for that changes metal and money.
type remark struct {
	stitch, both bool
	orders       []order
}

// reStitchNote is a stitch note among other words: 40x100(200).
var reStitchNote = regexp.MustCompile(`\b\d{1,3}\s*[x×хX]\s*(\d{2,3})\s*\(\s*(\d{2,4})\s*\)`)

// The words of remarks, folded as the remark is.
var (
	stitchWords = foldAll("intermittent", "stitch weld", "skip weld", "hit and miss", "unterbroch", "przerywan", "intermitente", "discontinu", "interrompu", "intermittente",
		"прерывист", "перервн", "переривчаст", "шахматн")
	bothWords = foldAll("both sides", "beidseit", "obustron", "dwustron", "ambos lados", "ambas caras", "entrambi i lati", "deux côtés", "dois lados",
		"двусторон", "с двух сторон", "двосторон", "з двох боків")
)

func foldAll(words ...string) (out []string) {
	for _, w := range words {
		out = append(out, fold(w))
	}
	return out
}

func anyOf(text string, words []string) bool {
	for _, w := range words {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}

// mostRemarks is how many remarks are kept: lists repeat theirs.
const mostRemarks = 4096

// remarkOf reads a remark.
func (r *reader) remarkOf(text string) remark {
	if known, ok := r.remarks[text]; ok {
		return known
	}
	t := fold(text)
	found := remark{stitch: anyOf(t, stitchWords) || noteOfStitch(text), both: anyOf(t, bothWords), orders: ordersOf(text)}
	if len(r.remarks) < mostRemarks {
		r.remarks[text] = found
	}
	return found
}

// noteOfStitch tells whether a stitch note stands in a text: a bolt such as
// 4x20(80) reads alike, so a person decides.
func noteOfStitch(text string) bool {
	m := reStitchNote.FindStringSubmatch(text)
	if m == nil {
		return false
	}
	segment, _ := strconv.Atoi(m[1])
	gap, _ := strconv.Atoi(m[2])
	return segment >= 10 && gap >= 10
}

// orderWords are what is told of each order: nothing of the price is changed.
var orderWords = map[order]struct{ code, text, want, hint string }{
	takenOut:   {"remark-removed", "the remark says that this weld is left out; the row is worked and priced", "rows that are to be welded", "take the row out of the list; if it is to be welded, take the word out of the remark"},
	byOthers:   {"remark-others", "the remark says that others do this weld; the row is worked and priced", "rows that this shop welds", "take the row out of the list if this shop does not weld it; else take the word out of the remark"},
	otherHand:  {"remark-hand", "the remark asks for the opposite hand as well; the quantity is taken as it stands", "the quantity of both hands together", "double the quantity if it counts one hand, or give the other hand a row of its own"},
	preheating: {"remark-preheat", "the remark states a preheat; it is not taken, and time, gas and cooling are worked with the preheat that is worked out", "a preheat in a procedure", "put the least preheat into the sheet Procedures of the shop file and name the procedure under WPS"},
}

// remarkDoubts tells where the remark asks for what the row's own columns do not say:
// nothing is taken from a remark, and nothing of it is passed over in silence.
func (w *row) remarkDoubts() {
	j := &w.joint
	if j.Note == "" {
		return
	}
	c, found := w.column("note"), w.remarkOf(j.Note)
	if found.stitch && j.Stitch == nil {
		w.say(finding.Warning, c, "remark-stitch", j.Note, "the remark speaks of an intermittent weld; the row is worked as a continuous one", "a stitch note in its own column", "write it into a column Stitch, such as 5x50(100), or take the word out")
	}
	for _, o := range found.orders {
		said := orderWords[o]
		w.say(finding.Warning, c, said.code, j.Note, said.text, said.want, said.hint)
	}
	if found.both && j.Sides == 1 && !filled(w.At(w.colOf("sides"))) {
		w.say(finding.Warning, c, "remark-sides", j.Note, "the remark speaks of both sides; the row is worked with one", "1 or 2 in a column Sides", "write 2 into a column Sides if both are welded")
	}
}
