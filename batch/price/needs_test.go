package price

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// TestNeeds is worked on paper: 300 A at 30 V through a source of 85 % draw
// 9000 / 0.85 = 10,588 W; a stitch of 100 mm at 400 mm/min lasts 15 s, a seam of
// 2000 mm is stopped every 500 mm, at 300 mm/min in the slower of two passes 100 s.
func TestNeeds(t *testing.T) {
	shop := shopOf(t, "source_efficiency=0.85", "operating_factor=0.3", "seam_starts_per_m=2")
	hot := planned(&shop, "HOT", "x", "G3Si1", 1.2, "M21", 3, 600, 40)
	hot.Runs = []plan.Run{{Current: 300, Voltage: 30, WireFeed: 9, Travel: 500, Transfer: plan.Spray}, {Current: 130, Voltage: 18, WireFeed: 4, Travel: 300, Transfer: plan.ShortArc}}
	hot.Joint.Length = 2000
	thin := planned(&shop, "THIN", "x", "G3Si1", 0.8, "M21", 3, 600, 40)
	thin.Runs = []plan.Run{{Current: 110, Voltage: 18.5, WireFeed: 11, Travel: 400, Transfer: plan.ShortArc}}
	thin.Joint.Length, thin.Joint.Stitch = 3000, &joint.Stitch{Segment: 100}
	job := priced([]plan.Plan{thin, hot}, shop)
	n := job.Totals.Needs
	if n == nil || n.Current != 300 || n.Mark != "HOT" || n.Feed != 11 || n.Volts != 30 || n.Share != 0.3 {
		t.Fatalf("%+v", n)
	}
	if math.Abs(n.Supply-10.588) > 0.001 || math.Abs(n.LongestS-100) > 1e-9 {
		t.Errorf("supply %g kW, longest run %g s", n.Supply, n.LongestS)
	}
	if len(n.Wires) != 2 || n.Wires[0] != 0.8 || len(n.Modes) != 2 || n.Modes[0] != "short arc" {
		t.Errorf("wires %v, modes %v", n.Wires, n.Modes)
	}
	if job := priced([]plan.Plan{{Manner: &plan.Manner{}, Joint: &joint.Joint{Qty: 1, Detail: &joint.Detail{}}}}, shop); job.Totals.Needs != nil {
		t.Error("a list without settings asks nothing of a machine")
	}
}
