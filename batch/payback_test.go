package batch

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"testing"

	"seamtally/batch/price"
)

// TestPayBackIsTheDifferenceOfTwoRuns: a shop with a light machine alone is told
// what a heavier one would save, which is what running the list with it says.
func TestPayBackIsTheDifferenceOfTwoRuns(t *testing.T) {
	dir := t.TempDir()
	list := listOf(t, dir, "plates.csv", []string{"W1,A,4,fillet,1200,8,15,15,S235,PB", "W2,A,2,fillet,800,6,10,10,S235,PA", "W3,A,2,fillet,2500,10,20,20,S235,PB"})
	work := func(set ...string) *price.Job {
		t.Helper()
		j := Job{Lists: []string{list}, Set: set, Looks: price.Options{Date: "2026-03-01", Codes: "iso"}}
		tools, err := j.tools()
		if err != nil {
			t.Fatal(err)
		}
		_, job, err := j.work(context.Background(), tools, list)
		if err != nil {
			t.Fatal(err)
		}
		return job
	}
	alone := work("machines=MIG 250 three-phase", "machine_price.MIG 350 three-phase=4000")
	saved := 0
	for _, p := range alone.Totals.PayBack {
		both := work("machines=MIG 250 three-phase; " + p.Machine)
		if want := float64(alone.Totals.Cost - both.Totals.Cost); math.Abs(float64(p.Saves)-math.Max(want, 0)) > 0.03 {
			t.Errorf("%s is said to save %.2f, two runs differ by %.2f", p.Machine, float64(p.Saves), want)
		}
		if p.Saves > 0 {
			saved++
		}
		if p.Machine == "MIG 350 three-phase" && math.Abs(p.Jobs*float64(p.Saves)-4000) > 1e-6 {
			t.Errorf("%g jobs of %g do not make 4000", p.Jobs, float64(p.Saves))
		}
	}
	if saved == 0 || len(alone.Totals.PayBack) != 5 {
		t.Errorf("of the five other machines none saves anything: %+v", alone.Totals.PayBack)
	}
}

// A joint that no machine of the shop welds leaves no sum to compare: how many the
// other machine opens is told instead.
func TestPayBackTellsWhatAMachineOpens(t *testing.T) {
	dir := t.TempDir()
	list := filepath.Join(dir, "heavy.csv")
	text := "Mark,Length mm,Leg mm,t1 mm,Material,Wire\nW1,1200,3,3,S235,\nW2,1200,8,20,S235,G3Si1 1.6\n"
	if err := os.WriteFile(list, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	j := Job{Lists: []string{list}, Set: []string{"machines=MIG 200 single-phase"}, Looks: price.Options{Date: "2026-03-01", Codes: "iso"}}
	tools, err := j.tools()
	if err != nil {
		t.Fatal(err)
	}
	_, job, err := j.work(context.Background(), tools, list)
	if err != nil {
		t.Fatal(err)
	}
	opens := 0
	for _, p := range job.Totals.PayBack {
		opens = max(opens, p.Opens)
		if p.Opens > 0 && p.Saves != 0 {
			t.Errorf("%+v", p)
		}
	}
	if opens != 1 {
		t.Errorf("no machine opens the second joint: %+v", job.Totals.PayBack)
	}
}
