package workbook

import (
	"strconv"
	"strings"
)

// live returns a formula, or none where only values are wanted.
func (o *output) live(formula string) string {
	if !o.l.live {
		return ""
	}
	return formula
}

// unitOf is the unit of a column of the joints.
func (o *output) unitOf(key string) unit { return o.l.cols[o.l.at[key]].unit }

// sum adds up a column of the joints, in metric units and rounded as every output
// rounds it, shown in the column's own unit.
func (o *output) sum(key string, decimals int) string {
	u := o.unitOf(key)
	return o.live(u.wrap(rounded(u.metricOf("SUM("+o.l.columnRange(key)+")", o.l.us), decimals), o.l.us))
}

// sumBy adds up a column over the rows whose name in another column is that of a
// cell. Names that a criterion could take for a number, a wildcard or a
// comparison are compared letter by letter.
func (o *output) sumBy(key, by, nameCell string, plain bool, decimals int) string {
	u := o.unitOf(key)
	names, values := o.l.columnRange(by), o.l.columnRange(key)
	formula := "SUMPRODUCT(--EXACT(" + names + "," + nameCell + ")," + values + ")"
	if plain {
		formula = "SUMIF(" + names + "," + nameCell + "," + values + ")"
	}
	return o.live(u.wrap(rounded(u.metricOf(formula, o.l.us), decimals), o.l.us))
}

func (o *output) countBy(by, nameCell string, plain bool) string {
	if plain {
		return o.live("COUNTIF(" + o.l.columnRange(by) + "," + nameCell + ")")
	}
	return o.live("SUMPRODUCT(--EXACT(" + o.l.columnRange(by) + "," + nameCell + "))")
}

// plainNames tells whether the names of a group can stand as criteria.
func plainNames(names []string) bool {
	seen := map[string]bool{}
	for _, n := range names {
		fold := strings.ToLower(n)
		if n == "" || seen[fold] || len(n) > 200 || strings.ContainsAny(n, `*?~<>=^$|\[]+{}"`) || n != strings.TrimSpace(n) {
			return false
		}
		if n[0] >= '0' && n[0] <= '9' || n[0] == '.' || n[0] == '-' || n[0] == '\'' {
			return false
		}
		if _, err := strconv.ParseFloat(n, 64); err == nil || fold == "true" || fold == "false" {
			return false
		}
		seen[fold] = true
	}
	return true
}
