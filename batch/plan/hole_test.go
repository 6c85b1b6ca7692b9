package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// Ten plugs of 20 mm through 12 mm: π 10² x 12 = 3770 mm³ each, 0.2959 kg of steel
// in all at 7850 kg/m³, in three layers of 4 mm.
func TestPlugsAreFilledOnTheSpot(t *testing.T) {
	set, shop := world(t)
	j := joint.Joint{Mark: "P", Qty: 10, Detail: &joint.Detail{Kind: joint.Plug, Sides: 1, Size: joint.Size{Means: joint.Leg, A: 20}, T1: 12, T2: 15, Material: "S355", Position: "PA", Where: joint.Shop}}
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	if !p.Settings || len(p.Runs) != 3 {
		t.Fatalf("settings %v (%s), %d layers; want 3", p.Settings, p.NoSettings, len(p.Runs))
	}
	metal := math.Pi * 100 * 12 * 1e-9 * 7850 * 10
	if math.Abs(float64(p.WeldMetal)-metal) > 1e-9 || math.Abs(metal-0.2959) > 0.0001 {
		t.Errorf("weld metal %.5f kg, want %.5f", p.WeldMetal, metal)
	}
	if minutes := metal / float64(p.Deposit) * 60; math.Abs(float64(p.Arc)-minutes) > 1e-9 {
		t.Errorf("arc %.4f min; the metal at %.2f kg/h takes %.4f", p.Arc, p.Deposit, minutes)
	}
	if p.Travel.Start != 0 || p.HeatMax != 0 || p.Starts != 30 || p.WireKg <= p.WeldMetal || p.GasL <= 0 || p.Cost.Total <= 0 {
		t.Errorf("travel %v, heat %v, %v starts, wire %v, gas %v, cost %v", p.Travel, p.HeatMax, p.Starts, p.WireKg, p.GasL, p.Cost.Total)
	}
	for i, r := range p.Runs {
		if r.Layer != i+1 || r.Bead != 1 {
			t.Errorf("run %d is bead %d of layer %d", r.Number, r.Bead, r.Layer)
		}
	}
	told := false
	for _, c := range p.Checks {
		told = told || c.Code == "hole-fill"
	}
	if !told {
		t.Error("nothing says that the hole is filled on the spot")
	}
}

func TestSlotsTakeTheirLengthOrASecondSize(t *testing.T) {
	set, shop := world(t)
	for _, j := range []joint.Joint{
		{Length: 60, Detail: &joint.Detail{Kind: joint.Slot, Size: joint.Size{Means: joint.Leg, A: 18}}},
		{Detail: &joint.Detail{Kind: joint.Slot, Size: joint.Size{Means: joint.Leg, A: 18, B: 60}}},
	} {
		j.Mark, j.Qty, j.Sides, j.T1, j.T2, j.Material, j.Position = "S", 1, 1, 8, 10, "S235", "PA"
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		want := 18*(60-18) + math.Pi*81
		if !p.Settings || math.Abs(float64(p.AreaDrawn)-want) > 1e-9 || p.Seam != units.Metre(0.008) {
			t.Errorf("%v: area %v, want %.3f; seam %v (%s)", j.Length, p.AreaDrawn, want, p.Seam, p.NoSettings)
		}
	}
}

// A hole whose size or depth is not known has no metres: the length of its row is none.
func TestHoleOfUnknownSizeHasNoSeam(t *testing.T) {
	set, shop := world(t)
	j := joint.Joint{Mark: "P", Qty: 4, Length: 60, Detail: &joint.Detail{Kind: joint.Slot, Sides: 1, T1: 12, T2: 15, Material: "S355", Position: "PA", Where: joint.Shop}}
	if p := Joints([]joint.Joint{j}, set, shop, Options{})[0]; p.Seam != 0 || p.Settings {
		t.Errorf("a slot without a width has %v m of seam, settings %v", p.Seam, p.Settings)
	}
}
