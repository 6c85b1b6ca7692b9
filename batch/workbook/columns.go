package workbook

import (
	"slices"

	"seamtally/batch/workbook/look"
)

// group is one of the parts that our columns fold into.
type group struct {
	key, name string
	about     string
}

// The groups, in the order in which they stand beside the user's list: from what
// was read to what it costs, what to buy, what to set, what to look at, and the
// planner's own figures that the formulas use.
var groups = []group{
	{"status", "Status", "whether the row was worked, and whether the plan still fits what stands in the row"},
	{"read", "As read", "what the list says, in one unit; change a yellow cell to see what follows"},
	{"estimator", "Estimator", "hours and money; the first column is the price"},
	{"foreman", "Foreman", "wire, gas and machine"},
	{"welder", "Welder", "starting points for a test bead"},
	{"checks", "Checks", "what to look at; the sheet of checks has them one by one"},
	{"floor", "Floor", "what the floor writes down; `seamtally settle` compares it with the plan"},
	{"plan", "Plan's own", "figures that the planner chose or worked out; the formulas read them"},
}

// columnBeside is one of our columns beside rows of a kind. The value of a cell comes from the plan, in
// metric units; the formula, where there is one, follows from cells of the row,
// from the rates and from the plan's own columns, and gives the same value.
type columnBeside[R any] struct {
	key    string // result key, or a name of our own that no result has
	head   string // what people read, without the unit
	unit   unit
	group  string
	width  float64
	format string
	result bool // a result key, as the results file has it
	fold   bool // hidden when the group is folded; false for what stays in sight
	// steady marks a column whose cell is the same, row number apart, for all joints
	// that share a plan.Manner: value and formula follow from the manner, the joint's
	// form and the shop, not from lengths, quantities, names or the user's cells.
	steady bool
	role   look.Role
	number func(*R) (float64, bool) // nil for a column of words
	words  func(*R) string
	// formula is a template: [key] is the cell of that column in this row, {key}
	// the rate of that name. Empty: the value stands alone.
	formula func(*R) string
	about   string // for the Basis sheet: what it is, or the equation in words
}

// column stands beside a joint.
type column = columnBeside[row]

// always returns the same template for every row that has settings.
func always(template string) func(*row) string {
	return func(r *row) string {
		if !r.p.Settings {
			return ""
		}
		return template
	}
}

// columnsOf returns all our columns for a list, in order.
func columnsOf(l *layout) []column {
	var all []column
	all = append(all, statusColumns(l)...)
	all = append(all, readColumns(l)...)
	all = append(all, estimatorColumns(l)...)
	all = append(all, foremanColumns()...)
	all = append(all, welderColumns()...)
	all = append(all, checkColumns()...)
	all = append(all, floorColumns()...)
	all = append(all, planColumns()...)
	if len(l.job.List.Typed) > 0 {
		all = append(all, typedColumn())
	}
	return all
}

// known is a number that is there whenever it is not zero: zero means unknown.
func known[T ~float64](get func(*row) T) func(*row) (float64, bool) {
	return func(r *row) (float64, bool) {
		v := float64(get(r))
		return v, v != 0
	}
}

// steady marks columns as such, all or those with the keys given.
func steady(cols []column, keys ...string) []column {
	for i := range cols {
		cols[i].steady = cols[i].steady || len(keys) == 0 || slices.Contains(keys, cols[i].key)
	}
	return cols
}

// settled is a number that is there whenever the joint has settings, zero included.
func settled[T ~float64](get func(*row) T) func(*row) (float64, bool) {
	return func(r *row) (float64, bool) {
		if !r.p.Settings {
			return 0, false
		}
		return float64(get(r)), true
	}
}
