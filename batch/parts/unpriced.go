package parts

import (
	"fmt"
	"slices"
	"strconv"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// unpriced tells, once for each, for which materials there is no price, and which rows
// were taken as carbon steel.
func (w *worker) unpriced() {
	l, blank := &w.book.List, 0
	var names []string
	rows := map[string][]int{} // by folded name: the parts of it
	for i := range l.Parts {
		words := l.Parts[i].Material
		if words == "" {
			blank++
			continue
		}
		if key := markKey(words); w.metal(words).price <= 0 {
			if rows[key] == nil {
				names = append(names, words)
			}
			rows[key] = append(rows[key], i)
		}
	}
	if blank > 0 {
		place := finding.Place{File: l.File, Sheet: l.Sheet, Row: l.HeaderRows[1]}
		w.problems = append(w.problems, finding.Problem{Place: place, Level: finding.Note, Code: "material-blank",
			Text: fmt.Sprintf("%s no material: mass and price are taken as of carbon steel", rowsNoun(blank, "names", "name")), Hint: "name the grade in a column of its own, or set the shop value default_material"})
	}
	w.book.Totals.Unpriced = append(w.book.Totals.Unpriced, names...)
	for _, name := range names {
		w.problems = append(w.problems, w.noPrice(name, rows[markKey(name)]))
	}
}

// noPrice tells, at the first part of a material without a price, what that part and the
// others of it come to.
func (w *worker) noPrice(name string, of []int) finding.Problem {
	l := &w.book.List
	first := &l.Parts[of[0]]
	place := first.Place
	for _, c := range l.Columns {
		if c.Key == "material" && !slices.ContainsFunc(first.Assumed, func(a joint.Assumption) bool { return a.Key == "material" }) {
			place.Col, place.Header = c.Col, c.Header
		}
	}
	what := "this part is"
	if len(of) > 1 {
		others := make([]string, 0, len(of)-1)
		for _, i := range of[1:] {
			others = append(others, strconv.Itoa(l.Parts[i].Place.Row))
		}
		row := "row "
		if len(others) > 1 {
			row = "rows "
		}
		what = "this part and " + row + finding.Few(others, othersNamed) + " are"
	}
	return finding.Problem{Place: place, Level: finding.Warning, Code: "material-price", Read: name,
		Text: fmt.Sprintf("there is no price for the material %q: %s left out of the material cost, the weight reckoned as of steel", name, what), Hint: "use a grade that `seamtally tables materials` lists"}
}

// othersNamed is how many of the other rows a sentence names.
const othersNamed = 5

func rowsNoun(n int, one, many string) string {
	if n == 1 {
		return "1 part " + one
	}
	return fmt.Sprintf("%d parts %s", n, many)
}
