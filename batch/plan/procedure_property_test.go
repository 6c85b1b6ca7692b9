package plan

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/tables"
)

// drawProcedure draws a procedure with some ranges open and others narrow.
func drawProcedure(r *rapid.T) tables.Procedure {
	p := tables.Procedure{Number: "SP-7"}
	kind := rapid.SampledFrom([]struct{ process, filler, gas string }{
		{"135", "G3Si1", "M21"}, {"", "G3Si1", ""}, {"136", "T 46 2 P", "M21"}, {"", "", "C1"}, {"138", "T 46 4 M", "M21"}, {"", "", ""},
	}).Draw(r, "wire")
	p.Process, p.Filler, p.Gas = kind.process, kind.filler, kind.gas
	ends := func(what string, least, most float64) (low, high float64) {
		open := rapid.IntRange(0, 3).Draw(r, what)
		a, b := rapid.Float64Range(least, most).Draw(r, what), rapid.Float64Range(least, most).Draw(r, what)
		low, high = min(a, b), max(a, b)
		if open&1 != 0 {
			low = 0
		}
		if open&2 != 0 {
			high = 0
		}
		return low, high
	}
	low, high := ends("A", 60, 320)
	p.CurrentLow, p.CurrentHigh = units.Amp(low), units.Amp(high)
	low, high = ends("V", 16, 32)
	p.VoltageLow, p.VoltageHigh = units.Volt(low), units.Volt(high)
	low, high = ends("travel", 80, 900)
	p.TravelLow, p.TravelHigh = units.MMMin(low), units.MMMin(high)
	low, high = ends("heat", 0.1, 3)
	p.HeatLow, p.HeatHigh = units.KJMM(low), units.KJMM(high)
	return p
}

// TestNoRunLeavesItsProcedure: over random joints and procedures every run lies in
// every range, or the joint has no settings and says which limit stands in the way.
func TestNoRunLeavesItsProcedure(t *testing.T) {
	set, shop := world(t)
	worked, refused := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		proc := drawProcedure(r)
		own := *set
		own.Procedures = []tables.Procedure{proc}
		at := rapid.SampledFrom([]string{"PA", "PB", "PC", "PF", "PG"}).Draw(r, "position")
		thick := units.MM(rapid.Float64Range(2, 25).Draw(r, "t"))
		j := filletJoint(math.Ceil(rapid.Float64Range(0.4, 0.9).Draw(r, "leg")*float64(thick)+1), float64(thick), at)
		switch rapid.IntRange(0, 3).Draw(r, "kind") {
		case 0:
			j = buttJoint(joint.SingleV, float64(thick), at)
		case 1:
			j = joint.Joint{Mark: "P", Qty: 2, Detail: &joint.Detail{Kind: joint.Plug, Sides: 1, Size: joint.Size{Means: joint.Leg, A: thick + 8}, T1: thick, T2: thick, Material: "S355", Position: "PA", Where: joint.Shop}}
		}
		p := Joints(named(j), &own, shop, Options{})[0]
		if !p.Settings {
			refused++
			if !strings.Contains(p.NoSettings, "procedure SP-7: ") || strings.Contains(p.NoSettings, "NaN") || strings.Contains(p.NoSettings, "Inf") || strings.Contains(p.NoSettings, "to 0 ") {
				r.Fatalf("no settings, and %q says little", p.NoSettings)
			}
			return
		}
		worked++
		for _, run := range p.Runs {
			for k, v := range []float64{float64(run.Current), float64(run.Voltage), float64(run.Travel), float64(run.Heat)} {
				of := rangesOf(&proc)[k]
				if k >= 2 && v == 0 && p.Prep.Kind == joint.Plug && proc.TravelLow+proc.TravelHigh == 0 && proc.HeatLow+proc.HeatHigh == 0 {
					continue
				}
				if v < of.low*(1-1e-6) || of.high > 0 && v > of.high*(1+1e-6) {
					r.Fatalf("run %d: %s of %g outside %s", run.Number, of.what, v, of.allowed())
				}
			}
		}
		for _, w := range []struct {
			w  Window
			of limitRange
		}{{p.Current, rangesOf(&proc)[0]}, {p.Voltage, rangesOf(&proc)[1]}, {p.Travel, rangesOf(&proc)[2]}} {
			if w.w.Low > w.w.Start*(1+1e-9) || w.w.High < w.w.Start*(1-1e-9) {
				r.Fatalf("the window of the %s, %+v, does not hold its start", w.of.what, w.w)
			}
			if w.w.Low < w.of.low*(1-1e-6) || w.of.high > 0 && w.w.High > w.of.high*(1+1e-6) {
				r.Fatalf("the window of the %s, %+v, leaves %s", w.of.what, w.w, w.of.allowed())
			}
		}
	})
	if worked == 0 || refused == 0 {
		t.Errorf("%d worked, %d refused", worked, refused)
	}
	t.Log(fmt.Sprint(worked, " worked, ", refused, " refused"))
}
