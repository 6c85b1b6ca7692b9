package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
)

// A welder who reads American codes knows the process by its letters: the sheet names
// them, beside the number that workbook and results have, and the tail of the symbol by
// AWS has them alone.
func TestProcessIsNamedByTheCodes(t *testing.T) {
	for _, c := range []struct{ codes, symbols, station, tail string }{
		{"iso", "iso", "136 · spray", "136"},
		{"aws", "aws", "FCAW-G (136) · spray", "FCAW-G"},
		{"iso", "aws", "136 · spray", "FCAW-G"},
		{"aws", "iso", "FCAW-G (136) · spray", "136"},
	} {
		look := metric
		look.Codes, look.Symbols = c.codes, c.symbols
		sheet := sheetOf(faultless(t, jobOf(t, []joint.Joint{leg("W-1", 6, 8, 10, 500, "PB")}, look)), "W-1")
		if got := said(sheet, "station"); !strings.Contains(got, c.station) {
			t.Errorf("codes %s: %q does not say %q", c.codes, got, c.station)
		}
		if !saidIn(sheet, "picture", c.tail) {
			t.Errorf("symbols %s: no tail %q in %q", c.symbols, c.tail, said(sheet, "picture"))
		}
	}
}
