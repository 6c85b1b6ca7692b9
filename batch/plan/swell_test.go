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

// What a bead laid larger than called draws together follows from the bead that is laid:
// of a corner of thin steel the range is 0.1 A/t (SHRINK-4) to 0.2 A/t (SHRINK-1), and so is
// the working of explain.
func TestLargerBeadDrawsTogetherMore(t *testing.T) {
	set, shop := world(t)
	j := changed(filletJoint(1.5, 1.5, "PA"), func(j *joint.Joint) { j.Kind, j.Size.A, j.Process = joint.Corner, 1, "pulse" })
	p := Explain([]joint.Joint{j}, 0, set, shop, Options{})
	if p.AreaCalled <= 0 || p.Shrink == nil {
		t.Fatalf("not laid larger: called %.3f, made %.3f, %s", p.AreaCalled, p.Area, p.NoSettings)
	}
	thin := float64(p.Prep.T1)
	for k, share := range []float64{0.1, 0.2} {
		if want := share * float64(p.Area) / thin; math.Abs(float64(p.Shrink[k])-want) > 1e-9 {
			t.Errorf("estimate %d: %.4f mm, want %.4f", k, p.Shrink[k], want)
		}
	}
	lines, _ := ShrinkLines(&p)
	low, high := math.Inf(1), math.Inf(-1)
	for _, l := range lines {
		v := l.K*float64(p.Area) + l.C
		low, high = min(low, v), max(high, v)
	}
	if math.Abs(low-float64(p.Shrink[0])) > 1e-9 || math.Abs(high-float64(p.Shrink[1])) > 1e-9 {
		t.Errorf("lines give %.4f to %.4f, the plan %.4f to %.4f", low, high, p.Shrink[0], p.Shrink[1])
	}
}

// A small gap does not make a welder run colder than the thickness calls for: a square butt
// is laid with more metal, up to the rule's share, and area, metal and time are those of it.
func TestButtIsLaidWithTheCurrentOfItsThickness(t *testing.T) {
	set, shop := world(t)
	shop.Machines = append(shop.Machines, "MIG 500 three-phase")
	al := changed(buttJoint(joint.SquareButt, 3, "PA"), func(j *joint.Joint) {
		j.Material, j.Wire, j.Gap, j.GapGiven = "5083", "ER5356 1.2", 0.4, true
	})
	both := changed(buttJoint(joint.SquareButt, 9, "PA"), func(j *joint.Joint) {
		j.Wire, j.Gas, j.Sides, j.Gap, j.GapGiven = "G3Si1 1.2", "C1", 2, 1.5, true
	})
	for _, c := range []struct {
		j       joint.Joint
		current float64 // of the anchors for the thickness
		runs    int
	}{{al, 130, 1}, {both, 290, 2}} {
		p := Joints([]joint.Joint{c.j}, set, shop, Options{})[0]
		if math.Abs(p.Current.Start-c.current) > 0.01 || len(p.Runs) != c.runs {
			t.Fatalf("%v mm: %v A in %d runs, want %v", c.j.T1, p.Current.Start, len(p.Runs), c.current)
		}
		sum, minutes := 0.0, 0.0
		for _, r := range p.Runs {
			balance := float64(r.Deposit) / 60 / (float64(p.Density) * 1e-9 * float64(r.Travel))
			if math.Abs(float64(r.Area)/balance-1) > 1e-9 {
				t.Errorf("%v mm: a run of %v mm² lays %v", c.j.T1, r.Area, balance)
			}
			sum, minutes = sum+float64(r.Area), minutes+float64(r.Arc)
		}
		share := float64(p.Area / p.AreaCalled)
		if math.Abs(sum/float64(p.Area)-1) > 1e-9 || share <= 1 || share > 2+1e-9 {
			t.Errorf("%v mm: runs of %v mm² make %v, %v times as called", c.j.T1, sum, p.Area, share)
		}
		if want := float64(p.Area) * 1e-6 * float64(p.Seam) * float64(p.Density); math.Abs(float64(p.WeldMetal)/want-1) > 1e-9 {
			t.Errorf("%v mm: metal %v, want %v", c.j.T1, p.WeldMetal, want)
		}
		if want := minutes * float64(p.Seam); math.Abs(float64(p.Arc)/want-1) > 1e-9 {
			t.Errorf("%v mm: arc %v min, want %v", c.j.T1, p.Arc, want)
		}
		if _, text := saidOf(&p, "bead-through"); text == "" {
			t.Errorf("%v mm: the larger bead is not told", c.j.T1)
		}
	}
	wide := al.Apart()
	wide.Gap = 3 // enough metal to take the current at a pace a hand holds
	if p := Joints([]joint.Joint{wide}, set, shop, Options{})[0]; p.AreaCalled != 0 {
		t.Errorf("a wide gap is laid with %v mm² instead of %v", p.Area, p.AreaCalled)
	}
}
