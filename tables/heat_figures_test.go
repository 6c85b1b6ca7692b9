package tables

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/units"
)

// heatFigures reads a file of published figures beside the repository.
func heatFigures(t *testing.T, name string) []map[string]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "shared", "figures", name+".csv"))
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

func heatFigure(s string) float64 { v, _ := strconv.ParseFloat(s, 64); return v }

// Every row of the category table stands in ours with its temperature.
func TestPreheatCategoriesAreThoseOfTheFigures(t *testing.T) {
	facts := loadedFacts(t)
	n := 0
	for _, row := range heatFigures(t, "preheat-categories") {
		category, _, _ := strings.Cut(row["category"], "/")
		to := heatFigure(row["to_incl_mm"])
		if to == 0 {
			to = 500
		}
		got, ok := facts.Preheat(category, units.MM(to))
		if !ok || math.Abs(float64(got.Min)-heatFigure(row["min_C"])) > 1e-9 {
			t.Errorf("%s to %g mm: %v %v, printed %s", row["category"], to, got.Min, ok, row["min_C"])
		}
		n++
	}
	t.Logf("%d rows held", n)
}

var thicknessRange = regexp.MustCompile(`^(?:<=|>)?(\d+)(?:-(\d+))?$`)

// The limits of the standards are those of the figures: highest CEV and carbon of
// each grade and quality that both name. Rows of old editions, of product analysis
// and of rules in words are not limits of a grade.
func TestSteelLimitsAreThoseOfTheFigures(t *testing.T) {
	facts := loadedFacts(t)
	compared, agree := 0, 0
	for _, row := range heatFigures(t, "cev-and-composition-limits") {
		m := thicknessRange.FindStringSubmatch(row["thickness_mm"])
		if m == nil || !strings.HasPrefix(row["standard"], "EN 100") || strings.Contains(row["standard"], "1993") {
			continue
		}
		thick := heatFigure(m[1])
		if strings.HasPrefix(row["thickness_mm"], ">") {
			thick++
		}
		for grade := range strings.SplitSeq(row["grade"], ",") {
			grade = strings.TrimSuffix(strings.TrimSpace(strings.Split(grade, "/")[0]), "H")
			most := SteelLimit{}
			found := false
			for _, l := range facts.Limits {
				if Says(l.Name(), grade) && l.At(units.MM(thick)) && strings.Contains(row["standard"], strings.TrimPrefix(strings.Split(l.Standard, ",")[0], "EN ")) {
					found = true
					most.CEV, most.C = max(most.CEV, l.CEV), max(most.C, l.C)
				}
			}
			if !found {
				continue
			}
			for _, x := range []struct {
				what, printed string
				got           float64
			}{{"CEV", row["CEV_max"], most.CEV}, {"C", row["C_max"], most.C}} {
				want := heatFigure(x.printed)
				if want == 0 {
					continue
				}
				compared++
				if math.Abs(x.got-want) < 1e-9 {
					agree++
				} else {
					t.Errorf("%s %s %s: %s %.3f, figures %s", row["standard"], grade, row["thickness_mm"], x.what, x.got, x.printed)
				}
			}
		}
	}
	if compared < 60 {
		t.Errorf("only %d limits were compared", compared)
	}
	t.Logf("%d of %d limits agree", agree, compared)
}

func loadedFacts(t *testing.T) *Facts {
	t.Helper()
	files, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	facts, err := loadFacts(files)
	if err != nil {
		t.Fatal(err)
	}
	return &facts
}
