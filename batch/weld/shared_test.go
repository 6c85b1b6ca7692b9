package weld

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// shared reads a file of published figures that lies beside the repository. Where
// it is absent the test is skipped, unless everything is asked for.
func shared(t *testing.T, name string) []map[string]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "shared", "figures", name+".csv"))
	if err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") == "1" {
			t.Fatal(err)
		}
		t.Skipf("published figures are not beside the repository: %v", err)
	}
	records, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, h := range records[0] {
			row[h] = r[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// number reads "0.5", "1/4" and "7/16".
func number(t *testing.T, s string) float64 {
	t.Helper()
	top, bottom, fraction := strings.Cut(s, "/")
	v, err := strconv.ParseFloat(strings.TrimSpace(top), 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	if !fraction {
		return v
	}
	d, err := strconv.ParseFloat(strings.Fields(bottom)[0], 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	return v / d
}

// rounding returns half a unit of the last printed digit.
func rounding(printed string) float64 {
	_, decimals, _ := strings.Cut(printed, ".")
	return 0.5 * math.Pow(10, -float64(len(decimals)))
}

// near tells whether got agrees with a printed value within its rounding or a
// share of it, whichever is larger.
func near(got float64, printed string, want, share float64) bool {
	return math.Abs(got-want) <= math.Max(rounding(printed), share*math.Abs(want))*(1+1e-9)
}
