package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
)

// A corner of 1.5 mm in stainless asks for a bead that no wire lays: the smallest that
// one lays is planned, and metal, wire and time are those of the larger bead, while the
// area as drawn stays.
func TestSmallestBeadOfTheWire(t *testing.T) {
	set, shop := world(t)
	j := changed(filletJoint(1.5, 1.5, "PA"), func(j *joint.Joint) { j.Kind, j.Material, j.Process = joint.Corner, "304", "short arc" })
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	if !p.Settings {
		t.Fatal(p.NoSettings)
	}
	called := 2.0*2.0/2 + 2.0/3*float64(shop.Convexity)*8
	if math.Abs(float64(p.AreaCalled)-called) > 1e-6 || p.AreaDrawn != 1.125 {
		t.Errorf("called %.4f, drawn %.4f", p.AreaCalled, p.AreaDrawn)
	}
	// The window of the wire is 50 to 145 A, of which start settings leave 5 % free; the
	// fastest travel of short arc in flat sheet is 700 mm/min.
	if math.Abs(p.Current.Start-54.75) > 1e-6 || p.Travel.Start > 700*(1+1e-9) {
		t.Errorf("%.2f A at %.1f mm/min", p.Current.Start, p.Travel.Start)
	}
	balance := float64(p.Deposit) / 60 / (float64(p.Density) * 1e-9 * p.Travel.Start)
	if float64(p.Area) <= called || math.Abs(float64(p.Area)/balance-1) > 1e-6 || float64(p.Area) > 1.5*called {
		t.Errorf("area %.4f, balance %.4f", p.Area, balance)
	}
	if want := float64(p.Area) * 1e-6 * float64(p.Seam) * float64(p.Density); math.Abs(float64(p.WeldMetal)/want-1) > 1e-9 {
		t.Errorf("metal %.6f, want %.6f", p.WeldMetal, want)
	}
	if want := 60 * float64(p.WeldMetal) / float64(p.Deposit); math.Abs(float64(p.Arc)/want-1) > 1e-9 {
		t.Errorf("arc %.4f min, want %.4f", p.Arc, want)
	}
	if p.Runs[0].Area != p.Area {
		t.Errorf("run %.4f, area %.4f", p.Runs[0].Area, p.Area)
	}
	j.Process = ""
	j.Size.A = 0.5 // much too small for any wire
	if p := Joints([]joint.Joint{j}, set, shop, Options{})[0]; p.Settings || p.AreaCalled != 0 {
		t.Errorf("a leg of 0.5 mm is laid with %.2f mm²", p.Area)
	}
}
