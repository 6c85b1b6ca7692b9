package parts

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// The structure worked by hand in DEVELOPERS.md comes out the same. Tolerance: the
// rounding of the figures on paper, 0.1 %.
func TestStructureByHand(t *testing.T) {
	set, shop := world(t)
	l := understood(t, set, "part,section,material,length,qty\nA,SHS 60x60x4 CF,S235,2000,4\nB,SHS 60x60x4 CF,S235,1950,2\nP,PL 10x200,S235,200,4\n", Options{})
	plans := plan.Joints(NewIndex(l).Lend([]joint.Joint{fillet("W", "P", "A", 4, 200)}), set, shop, plan.Options{})
	b, _ := Work(l, plans, set, shop)
	g := &b.Groups[0]
	got := map[string]float64{
		"section, mm²": float64(l.Parts[0].Section.Area), "kg/m": b.Results[0].KgM, "mass, kg": float64(b.Totals.Mass), "paint, m²": b.Totals.Paint,
		"weld metal, kg": float64(b.Totals.WeldMetal), "weld metal, kg/t": b.Totals.WeldPerTonne,
		"bars": float64(g.Bars), "waste of bars, mm": float64(g.Waste), "material, money": float64(b.Totals.Cost),
	}
	for what, want := range byHand(t) {
		v, known := got[what]
		if !known || math.Abs(v/want-1) > 0.001 {
			t.Errorf("%s: %v, by hand %v", what, v, want)
		}
		delete(got, what)
	}
	if len(got) > 0 {
		t.Errorf("not worked by hand: %v", got)
	}
}

// byHand reads the last column of the table.
func byHand(t *testing.T) map[string]float64 {
	t.Helper()
	text, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(text), "## A structure worked by hand\n")
	if !ok {
		t.Fatal("DEVELOPERS.md has no structure worked by hand")
	}
	rest, _, _ = strings.Cut(rest, "\n## ")
	out := map[string]float64{}
	for _, line := range strings.Split(rest, "\n") {
		cells := strings.Split(line, "|")
		if len(cells) != 5 {
			continue
		}
		if v, err := strconv.ParseFloat(strings.TrimSpace(cells[3]), 64); err == nil {
			out[strings.TrimSpace(cells[1])] = v
		}
	}
	return out
}
