package batch_test

import (
	"context"
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch"
	"seamtally/batch/plan"
)

// worked are the joints that are worked by hand in DEVELOPERS.md, with the row of
// the list that each heading stands for.
var worked = map[string]string{
	"z4 on 3.2 mm, PB, S235": "H1,fillet,1000,z4,3.2,PB,S235",
	"z8 on 12 mm, PB, S355":  "H2,fillet,1000,z8,12,PB,S355",
	"V of 12 mm, PF, S355":   "H3,single V,1000,,12,PF,S355",
}

// TestWorkedByHand holds every step of the working against the sums made on
// paper. UPDATE_DOCS=1 writes what explain says beside them; the sums themselves
// are never written by the program.
func TestWorkedByHand(t *testing.T) {
	path := "../DEVELOPERS.md"
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(data), "\n")
	seen := 0
	for i := 0; i < len(lines); i++ {
		row, ok := worked[strings.TrimPrefix(lines[i], "### ")]
		if !ok || !strings.HasPrefix(lines[i], "### ") {
			continue
		}
		seen++
		t.Run(lines[i][4:], func(t *testing.T) { compareSteps(t, lines[i+1:], explainRow(t, row).Steps) })
	}
	if seen != len(worked) {
		t.Errorf("%d of %d joints worked by hand were found", seen, len(worked))
	}
	if now := strings.Join(lines, "\n"); now != string(data) {
		if os.Getenv("UPDATE_DOCS") == "" {
			t.Fatal("explain says other words than DEVELOPERS.md; look why, then UPDATE_DOCS=1")
		}
		if err := os.WriteFile(path, []byte(now), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// explainRow plans the list of the three joints with the built-in shop and
// returns the one of a row.
func explainRow(t *testing.T, row string) plan.Plan {
	t.Helper()
	file := filepath.Join(t.TempDir(), "hand.csv")
	text := "mark,kind,length,size,thickness,position,material\n" + strings.Join(slices.Sorted(maps.Values(worked)), "\n") + "\n"
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	mark, _, _ := strings.Cut(row, ",")
	_, plans, err := batch.Explain(context.Background(), batch.Job{Lists: []string{file}}, mark)
	if err != nil {
		t.Fatal(err)
	}
	return plans[0]
}

// compareSteps goes down the table below a heading, one row a step, and puts the
// words of explain into its last column.
func compareSteps(t *testing.T, lines []string, steps []plan.Step) {
	at := 0
	for i, line := range lines {
		if strings.HasPrefix(line, "#") {
			break
		}
		cells := strings.Split(line, " | ")
		if len(cells) != 4 || strings.HasPrefix(line, "| step") {
			continue
		}
		if at >= len(steps) {
			t.Fatalf("explain has %d steps, the table more", len(steps))
		}
		s := steps[at]
		at++
		if id := strings.TrimPrefix(cells[0], "| "); id != s.ID {
			t.Fatalf("step %d is %s by hand and %s in explain", at, id, s.ID)
		}
		agree(t, s, cells[2])
		cells[3] = s.Result + " |"
		lines[i] = strings.Join(cells, " | ")
	}
	if at != len(steps) {
		t.Errorf("the table has %d steps, explain %d; the next is %s", at, len(steps), steps[min(at, len(steps)-1)].ID)
	}
}

// figure finds the numbers of a result, those inside a name (M21) left out.
var figure = regexp.MustCompile(`(?:^|[^\p{L}\d.])(\d+(?:\.\d+)?)`)

// agree compares the numbers of a hand result, in their order, with the first of
// the step's, to one unit in the last digit of the coarser; a result without
// numbers must stand in the step's words.
func agree(t *testing.T, s plan.Step, hand string) {
	t.Helper()
	mine, theirs := figure.FindAllStringSubmatch(hand, -1), figure.FindAllStringSubmatch(s.Result, -1)
	if len(mine) == 0 && !strings.Contains(s.Result, hand) {
		t.Errorf("%s: %q by hand, %q in explain", s.ID, hand, s.Result)
	}
	if len(theirs) < len(mine) {
		t.Errorf("%s: %q by hand, %q in explain", s.ID, hand, s.Result)
		return
	}
	for k := range mine {
		a, b := mine[k][1], theirs[k][1]
		x, _ := strconv.ParseFloat(a, 64)
		y, _ := strconv.ParseFloat(b, 64)
		if unit := max(lastDigit(a), lastDigit(b)); math.Abs(x-y) > unit*1.001 {
			t.Errorf("%s (%s): %s by hand, %s in explain", s.ID, s.What, hand, s.Result)
		}
	}
}

// lastDigit returns the worth of a number's last digit: 0.01 of "3.11".
func lastDigit(s string) float64 {
	_, decimals, _ := strings.Cut(s, ".")
	return math.Pow10(-len(decimals))
}
