package workbook

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/price"
)

// need skips a test where a program is absent, and fails it where everything must
// be there.
func need(t testing.TB, program string) {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") != "" {
			t.Fatalf("%s is not installed", program)
		}
		t.Skipf("%s is not installed", program)
	}
}

var storedValue = regexp.MustCompile(`(<f[^>]*/>|<f[^>]*>[^<]*</f>)<v>[^<]*</v>`)

// withoutValues returns the workbook with the stored value of every formula
// taken out, so that whoever opens it must work it out.
func withoutValues(t testing.TB, data []byte) []byte {
	t.Helper()
	bodies := partsOf(t, data)
	for name, body := range bodies {
		if strings.Contains(name, "worksheets/") {
			bodies[name] = storedValue.ReplaceAll(body, []byte("$1"))
		}
	}
	return zipped(t, data, bodies)
}

// recalculated returns the workbooks as another spreadsheet program works them out.
// All go through one start of it, which takes longer than the work.
func recalculated(t testing.TB, books ...[]byte) [][]byte {
	t.Helper()
	need(t, "soffice")
	dir := t.TempDir()
	args := []string{"--headless", "-env:UserInstallation=file://" + filepath.Join(dir, "profile"),
		"--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", filepath.Join(dir, "out")}
	for i, data := range books {
		in := filepath.Join(dir, "in"+itoa(i)+".xlsx")
		must(t, os.WriteFile(in, withoutValues(t, data), 0o644))
		args = append(args, in)
	}
	if said, err := exec.Command("soffice", args...).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	var out [][]byte
	for i := range books {
		data, err := os.ReadFile(filepath.Join(dir, "out", "in"+itoa(i)+".xlsx"))
		must(t, err)
		out = append(out, data)
	}
	return out
}

func opened(t testing.TB, data []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{RawCellValue: true})
	must(t, err)
	t.Cleanup(func() { _ = f.Close() })
	return f
}

// sameFigures compares every formula of workbooks with what another program works
// out for it. It returns how many there are in each.
func sameFigures(t *testing.T, books ...[]byte) []int {
	t.Helper()
	var counts []int
	for i, theirs := range recalculated(t, books...) {
		counts = append(counts, sameFormulas(t, i, opened(t, books[i]), opened(t, theirs)))
	}
	return counts
}

// sameFormulas compares one workbook, the n-th of several.
func sameFormulas(t *testing.T, n int, ours, theirs *excelize.File) int {
	t.Helper()
	count, bad := 0, 0
	for _, sheet := range ours.GetSheetList() {
		rows, err := ours.GetRows(sheet)
		must(t, err)
		for r := range rows {
			for c := range rows[r] {
				cell, _ := excelize.CoordinatesToCellName(c+1, r+1)
				formula, err := ours.GetCellFormula(sheet, cell)
				must(t, err)
				if formula == "" {
					continue
				}
				want, _ := ours.GetCellValue(sheet, cell)
				if want == "" {
					continue // the user's own formula, which never had a stored value
				}
				count++
				got, err := theirs.GetCellValue(sheet, cell)
				must(t, err)
				if !sameFigure(want, got) {
					if bad++; bad <= 20 {
						t.Errorf("workbook %d, %s!%s: stored %q, worked out %q by =%s", n, sheet, cell, want, got, formula)
					}
				}
			}
		}
	}
	if bad > 20 {
		t.Errorf("%d formulas of %d differ", bad, count)
	}
	return count
}

func sameFigure(a, b string) bool {
	x, errA := strconv.ParseFloat(a, 64)
	y, errB := strconv.ParseFloat(b, 64)
	if errA != nil || errB != nil {
		return a == b
	}
	return math.Abs(x-y) <= 1e-9*math.Max(math.Abs(x), math.Abs(y))
}

func TestAnotherProgramAgrees(t *testing.T) {
	t.Parallel()
	var books [][]byte
	for _, c := range []struct {
		name string
		data []byte
		opts price.Options
	}{
		{"metric.xlsx", fixtureXLSX(t), price.Options{}},
		{"us.xlsx", fixtureXLSX(t), price.Options{US: true}},
		{"metric.csv", fixtureCSV(), price.Options{}},
		{"aws.xlsx", fixtureXLSX(t), price.Options{Codes: "aws"}},
		{"aws-us.csv", fixtureCSV(), price.Options{US: true, Codes: "aws"}},
		{"kinds.csv", []byte(kindsOfMany()), price.Options{}},
	} {
		books = append(books, built(t, c.name, c.data, c.opts))
	}
	for i, n := range sameFigures(t, books...) {
		if n < 300 {
			t.Errorf("workbook %d has only %d formulas", i, n)
		} else {
			t.Logf("%d formulas agree to 1e-9", n)
		}
	}
}

func TestValuesOnlyHasNoFormulaOfOurs(t *testing.T) {
	f := opened(t, built(t, "list.csv", fixtureCSV(), price.Options{ValuesOnly: true}))
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		must(t, err)
		for r := range rows {
			for c := range rows[r] {
				cell, _ := excelize.CoordinatesToCellName(c+1, r+1)
				if formula, _ := f.GetCellFormula(sheet, cell); formula != "" {
					t.Fatalf("%s!%s holds =%s", sheet, cell, formula)
				}
			}
		}
	}
}
