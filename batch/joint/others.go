package joint

import (
	"fmt"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/list"
)

// otherLists tells which other sheets read like a list of joints as well: only one
// sheet is worked, and joints that nobody counts are money that nobody asks for.
func (r *reader) otherLists(src *list.Source, taken *list.Sheet) {
	if r.opt.Sheet != "" || !r.dialect.welds {
		return
	}
	var names []string
	for i := range src.Sheets {
		sheet := &src.Sheets[i]
		if sheet == taken || r.opt.Skip != nil && r.opt.Skip(sheet) || !r.holdsJoints(sheet) {
			continue
		}
		name := fmt.Sprintf("%q", sheet.Name)
		if sheet.Hidden {
			name += " (hidden)"
		}
		names = append(names, name)
	}
	if len(names) == 0 {
		return
	}
	r.tell(finding.Warning, r.list.HeaderRows[1], "other-sheets",
		fmt.Sprintf("only the sheet %q is worked; %s as well: %s", taken.Name, readLikeOne(len(names)), strings.Join(names, ", ")),
		"to work another one name it with --sheet; to work all in one run put their rows on one sheet; what is old or a copy may stay")
}

func readLikeOne(n int) string {
	if n == 1 {
		return "this one reads like a joint list"
	}
	return "these read like joint lists"
}

// holdsJoints tells whether a sheet has a header with a mark, a length and what is
// welded, and a row below it that fills all three.
func (r *reader) holdsJoints(sheet *list.Sheet) bool {
	spot, ok := r.findHeader(sheet)
	if !ok {
		return false
	}
	body := sheet.Rows[spot.last+1:]
	at := map[string]int{}
	for _, c := range r.assign(spot, body) {
		at[c.Key] = c.Col
	}
	what, ok := at["kind"]
	if !ok {
		what, ok = at["size"]
		_, thick := at["t1"]
		ok = ok && thick
	}
	for _, row := range body {
		if ok && at[r.dialect.name] > 0 && at["length"] > 0 && filled(row.At(at[r.dialect.name])) && filled(row.At(at["length"])) && filled(row.At(what)) {
			return true
		}
	}
	return false
}
