package joint

import (
	"fmt"
	"regexp"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

// columnDoubts tells, once for the list, where a column was read in a way that a
// person should confirm.
func (r *reader) columnDoubts(sheet *list.Sheet) {
	header := r.list.HeaderRows[1]
	for i := range r.cols {
		c := &r.cols[i]
		switch {
		case c.near != "" && c.Key != "":
			r.tell(finding.Note, header, "header-slip", fmt.Sprintf("the header %q is read as %q", c.Header, c.near), "correct the header")
		case c.torn && r.used(c, sheet):
			r.tell(finding.Warning, header, "header-contradicts", fmt.Sprintf("column %s, %q, is left aside: its brackets name another column than the words before them", finding.ColumnName(c.Col), c.Header), "write into the header what its figures are, and nothing else")
		case isLength[c.Key] && c.unit == measure.None && foreignUnit.MatchString(c.Header) && r.used(c, sheet):
			r.tell(finding.Warning, header, "header-unit", fmt.Sprintf("the header %q gives a unit that is no unit of length; its numbers are read as %s", c.Header, r.bareName()), foreignHint(c.Header))
		case c.named:
			r.note(header, "names-taken", fmt.Sprintf("column %s, %q, is taken for the names of the joints: its values are names, and no other column has them", finding.ColumnName(c.Col), c.Header), "if that is right nothing need be done; if not, head the column that names the joints mark")
		case c.guess && c.rival != "" && r.used(c, sheet):
			r.tell(finding.Warning, header, "two-columns", fmt.Sprintf("column %s, %q, is not understood and left aside: another column says the length", finding.ColumnName(c.Col), c.Header), "write into the header what its figures are: the size, the length of one joint, or a total")
		case measured[c.rival] && r.used(c, sheet):
			r.tell(finding.Warning, header, "two-columns", fmt.Sprintf("column %s, %q, is left aside: another column already gives the %s", finding.ColumnName(c.Col), c.Header, c.rival),
				"rename or delete the one that does not count; if both belong together, put their product or sum in one column")
		}
	}
	if r.totalled > 0 {
		r.tell(finding.Warning, header, "total-length", "the lengths are headed as totals, and in "+rowsOf(r.totalled)+" the quantity multiplies them again",
			"give the length of one joint, or leave the quantity out if the length already holds all copies")
	}
	r.hidden(sheet)
	r.mergedFigures(sheet)
	r.longest()
}

// A seam is doubted where it is so many times as long as the next longest and that
// long: a nought more than was meant makes ten of it, and few seams in one piece are
// as long as a hall.
const (
	doubtedTimes = 9
	doubtedFrom  = 5000 // mm
	oddTimes     = 5
	oddFrom      = 25000 // mm
	doubtedOf    = 8     // joints, of which one can stand out
)

// longest doubts the one seam that stands out of the list. A seam that goes all round
// has no length yet, and a hole none at all: neither is compared.
func (r *reader) longest() {
	var first, second *Joint
	for i := range r.list.Joints {
		switch j := &r.list.Joints[i]; {
		case j.Length <= 0:
		case first == nil || j.Length > first.Length:
			first, second = j, first
		case second == nil || j.Length > second.Length:
			second = j
		}
	}
	if len(r.list.Joints) < doubtedOf || second == nil {
		return
	}
	if slip := first.Length >= doubtedFrom && first.Length >= doubtedTimes*second.Length; !slip && (first.Length < oddFrom || first.Length < oddTimes*second.Length) {
		return
	}
	for i := range r.cols {
		if c := &r.cols[i]; c.Key == "length" {
			r.list.Problems = append(r.list.Problems, finding.Problem{Place: r.place(first.Place.Row, c), Level: finding.Warning, Code: "length-stands-out",
				Text: fmt.Sprintf("%.1f m is %.0f times the next longest seam of the list, %.1f m", float64(first.Length)/1000, float64(first.Length/second.Length), float64(second.Length)/1000),
				Want: "the length of one joint", Hint: "look whether a digit or a unit slipped; a right length needs no change"})
			return
		}
	}
}

// foreignUnit is a unit in the brackets of a header that no length has. Letters that are
// also signs of a size, such as a, s and t, are none.
var foreignUnit = regexp.MustCompile(`(?i)[(\[] ?(?:kg|lbs?|kn|mpa|kpa|amps?|volts?|eur|€)\.? ?[)\]]`)

// foreignHint shows how the header is written with a unit of length.
func foreignHint(header string) string {
	name := strings.TrimSpace(foreignUnit.ReplaceAllString(header, ""))
	return fmt.Sprintf("write the unit that the numbers have, such as %s (mm) or %s (in); if they are no lengths, head the column as what it holds", name, name)
}

// isLength are the keys whose figures are lengths.
var isLength = map[string]bool{"length": true, "t1": true, "t2": true, "size": true, "gap": true, "root_face": true, "depth": true, "radius": true}

// measured are the keys of which a second column would change metal or money.
var measured = map[string]bool{"qty": true, "length": true, "sides": true, "stitch": true, "t1": true, "size": true, "kind": true, "material": true, "position": true}

func (r *reader) used(c *column, sheet *list.Sheet) bool {
	for _, row := range sheet.Rows {
		if row.Number > r.list.HeaderRows[1] && filled(row.At(c.Col)) {
			return true
		}
	}
	return false
}

// hidden tells about rows that a filter or a hand hid: they are worked like the others.
func (r *reader) hidden(sheet *list.Sheet) {
	hidden := map[int]bool{}
	for _, row := range sheet.Rows {
		if row.Hidden {
			hidden[row.Number] = true
		}
	}
	n := 0
	for i := range r.list.Joints {
		if hidden[r.list.Joints[i].Place.Row] {
			n++
		}
	}
	if n > 0 {
		r.tell(finding.Warning, r.list.HeaderRows[1], "hidden-rows", fmt.Sprintf("%d %s stand in hidden rows and are worked like the others", n, r.dialect.all), "delete the rows that do not count")
	}
}

// mergedFigures tells where one merged length or quantity was taken for each of its rows.
func (r *reader) mergedFigures(sheet *list.Sheet) {
	for _, m := range sheet.Merges {
		if m.LastRow == m.FirstRow || m.FirstRow <= r.list.HeaderRows[1] {
			continue
		}
		for _, key := range []string{"length", "qty"} {
			if c := r.column(key); c != nil && c.Col == m.FirstCol {
				p := r.place(m.FirstRow, c)
				r.list.Problems = append(r.list.Problems, finding.Problem{Place: p, Level: finding.Warning, Code: "merged-figure",
					Text: fmt.Sprintf("one merged cell gives the %s of rows %d to %d; each row is taken to have all of it", key, m.FirstRow, m.LastRow),
					Want: "one figure a row", Hint: "write each row's own figure"})
			}
		}
	}
}

// elsewhere says what to do where the wrong sheet or file was taken for the list.
func (r *reader) elsewhere() string {
	do := "give the right file"
	switch {
	case !r.dialect.welds:
		do = "name the right sheet or file with --parts"
	case r.sheet != "":
		do = "name the right sheet with --sheet"
	}
	return "if this is not the " + r.dialect.list + ", " + do
}

// noColumn refuses a sheet whose header lacks a column that every joint needs.
func (r *reader) noColumn() error {
	var have, lack, unknown []string
	for i := range r.cols {
		switch c := &r.cols[i]; {
		case c.Key != "":
			have = append(have, fmt.Sprintf("%s (%q)", c.Key, shorten(c.Header, 30)))
		case c.Header != "":
			unknown = append(unknown, c.Header)
		}
	}
	for _, key := range r.dialect.lacks {
		if r.absent[key] {
			lack = append(lack, key)
		}
	}
	hint := r.dialect.enough
	if len(unknown) > 0 {
		hint += "; not understood: " + shorten(strings.Join(unknown, ", "), 120)
	}
	hint += "; add a column headed " + strings.Join(lack, " and one headed ") + ", or head the column that holds it so; " + r.elsewhere()
	return &list.Refusal{File: r.file, Hint: hint, Text: fmt.Sprintf("the header in row %d%s names %s, but there is no column for %s",
		r.list.HeaderRows[0], inSheet(r.sheet), strings.Join(have, ", "), strings.Join(lack, " and "))}
}

// rowsOf counts rows: "1 row".
func rowsOf(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprintf("%d rows", n)
}
