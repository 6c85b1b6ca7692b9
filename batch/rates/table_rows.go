package rates

import (
	"fmt"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// halfRow says what a row of the shop table lacks.
func halfRow(line int, row tables.ShopValue) string {
	switch {
	case row.Key == "" && row.Value == "":
		return fmt.Sprintf("row %d: neither a name nor a value; delete the row or fill both", line)
	case row.Key == "":
		return fmt.Sprintf("row %d: the value %q stands without a name; write the name under key, or delete the row", line, row.Value)
	}
	return fmt.Sprintf("row %d: %s has no value; write it, or compare the table with that of `seamtally tables shop`", line, row.Key)
}

// namedIn is the table that knows the names in a value of the shop table.
var namedIn = map[string]string{"stock_wires": "wires", "stock_gases": "gases", "machines": "machines", "default_material": "materials"}

// tableHint says what helps where the shop table names what another table lacks: most
// often that other table is the user's own, and its row was misspelt or is gone.
func tableHint(key string, p finding.Problem) string {
	table := namedIn[key]
	if table == "" {
		return p.Hint
	}
	return fmt.Sprintf("if %s.csv is a table of your own, correct the name there or put its row back; or else take the name out of %s in a shop.csv of your own, in the folder of --tables (`seamtally tables shop` prints it)", table, key)
}

// ruleHint shows the whole of a setting: its blank needs quotation marks on a command line.
func (e entry) ruleHint() string {
	if e.from == "--set" {
		return `write --set missing_size=ask, or the rule in quotation marks, as in --set "missing_size=0.7 t_min"`
	}
	return "write ask or a rule such as 0.7 t_min"
}
