package rates

import (
	"strings"
	"testing"

	"seamtally/batch/list"
)

// A cell that holds no value is refused with what it holds, which nobody wrote and so is
// not quoted; for a number and a word alike.
func TestACellThatHoldsNoValue(t *testing.T) {
	for _, key := range []string{"operating_factor", "size_means"} {
		for want, cell := range map[string]list.Cell{
			"cannot be read: the cell holds a formula without a stored result": {Kind: list.NoValue},
			"cannot be read: the cell holds the date 2026-02-01":               {Kind: list.Date, Text: "2026-02-01", Value: 46054},
		} {
			src := csvSource(true, "key;value", key+";1")
			cell.Col = 2
			src.Sheets[0].Rows[1].Cells[1] = cell
			shop := defaultShop(t)
			problems := shop.ReadFile(src, "")
			if len(problems) != 1 {
				t.Fatalf("%s: %+v", key, problems)
			}
			if line := problems[0].Line(); !strings.Contains(line, "the value of "+key+" "+want+";") || strings.Contains(line, "(read ") {
				t.Error(line)
			}
		}
	}
}
