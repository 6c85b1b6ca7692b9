package joint

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
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
		if sheet == taken || r.isCutList(sheet) || !r.holdsJoints(sheet) {
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

// isCutList tells whether a sheet is known to hold another list.
func (r *reader) isCutList(sheet *list.Sheet) bool {
	return r.opt.Skip != nil && r.opt.Skip(sheet) ||
		slices.ContainsFunc(r.opt.CutSheets, func(name string) bool { return strings.EqualFold(name, sheet.Name) })
}

func readLikeOne(n int) string {
	if n == 1 {
		return "this one reads like a joint list"
	}
	return "these read like joint lists"
}

// holdsJoints tells whether a sheet has a header with a mark, a length and what is
// welded, and a row below it that fills all three as a joint does: with a word for a kind
// of joint, or with the size of a weld and a thickness. Bolts and parts have columns of
// the same names.
func (r *reader) holdsJoints(sheet *list.Sheet) bool {
	spot, ok := r.findHeader(sheet)
	if !ok {
		return false
	}
	body := sheet.Rows[spot.last+1:]
	at := map[string]column{}
	for _, c := range r.assign(spot, body) {
		at[c.Key] = c
	}
	name, length := at[r.dialect.name].Col, at["length"].Col
	if name == 0 || length == 0 {
		return false
	}
	for _, row := range body {
		if filled(row.At(name)) && filled(row.At(length)) && (r.namesKind(row, at["kind"]) || r.sizesWeld(row, at["size"], at["t1"])) {
			return true
		}
	}
	return false
}

// namesKind tells whether a row has a word for a kind of joint.
func (r *reader) namesKind(row list.Row, kind column) bool {
	if kind.Col == 0 {
		return false
	}
	_, known := r.kindOf(row.At(kind.Col).Text)
	return known
}

// sizesWeld tells whether a row has a size that a weld can have, and a thickness.
func (r *reader) sizesWeld(row list.Row, size, thick column) bool {
	if size.Col == 0 || thick.Col == 0 || !filled(row.At(size.Col)) || !filled(row.At(thick.Col)) {
		return false
	}
	unit, style := measure.MM, measure.Style{}
	switch {
	case size.unit != measure.None:
		unit = size.unit
	case r.opt.Inches:
		unit = measure.Inch
	}
	if _, bad := measure.Parse(row.At(thick.Col).Text, style); bad != nil {
		return false
	}
	weld, _, bad := sizeOf(row.At(size.Col).Text, size.means, unit, style)
	return bad == nil && weld.A >= smallestSize && weld.A <= largestSize
}
