package plan

import (
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// currentOf returns the least current of the passes of a kind in the plan's own mode; 0
// where there are none. An open root is laid in short arc whatever the list asks for.
func currentOf(p *Plan, kind RunKind) units.Amp {
	least := units.Amp(0)
	for _, r := range p.Runs {
		if r.Kind == kind && r.Transfer == p.Transfer && (least == 0 || r.Current < least) {
			least = r.Current
		}
	}
	return least
}

// TestThickerIsNeverLessCurrentWithAllElseHeld grows the thickness alone where the list
// itself says wire, gas and mode, so that nothing is left to the choice: no tolerance,
// in any position. The preparation is stated as well; left out, it would follow the
// thickness.
func TestThickerIsNeverLessCurrentWithAllElseHeld(t *testing.T) {
	set, shop := world(t)
	wires := []struct{ material, wire, gas string }{
		{"S235", "G3Si1 0.8", "M21"}, {"S235", "G3Si1 1.0", "M21"}, {"S235", "G3Si1 1.2", "M21"}, {"S355", "G3Si1 1.0", "CO2"},
		{"S355", "T 46 2 P 1.2", "M21"}, {"304L", "G 19 9 L Si 0.8", ""}, {"304L", "G 19 9 L Si 1.0", ""}, {"5083", "S Al 5356 1.2", ""},
	}
	draws, compared := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		w := rapid.SampledFrom(wires).Draw(rt, "wire")
		mode := rapid.SampledFrom([]string{"short arc", "spray", "pulse"}).Draw(rt, "mode")
		if w.wire == "T 46 2 P 1.2" {
			mode = "136" // its one mode
		}
		position := rapid.SampledFrom(positions[:]).Draw(rt, "position")
		kind := rapid.SampledFrom([]joint.Kind{joint.Fillet, joint.Lap, joint.SquareButt, joint.SingleV, joint.SingleBevel, joint.DoubleV}).Draw(rt, "kind")
		leg, gap := rapid.Float64Range(2, 14).Draw(rt, "leg"), rapid.SampledFrom([]float64{0, 1, 2}).Draw(rt, "gap")
		angle := rapid.SampledFrom([]units.Degree{45, 50, 60}).Draw(rt, "angle")
		thin := rapid.Float64Range(1, 20).Draw(rt, "thin")
		at := func(t float64) Plan {
			j := buttJoint(kind, t, position)
			if kind == joint.Fillet || kind == joint.Lap {
				j.Size = joint.Size{Means: joint.Leg, A: units.MM(leg)}
			}
			j.Gap, j.GapGiven = units.MM(gap), true
			if kind == joint.SingleV || kind == joint.SingleBevel || kind == joint.DoubleV {
				j.Angle, j.RootFace, j.RootFaceGiven = angle, 1, true
			}
			j.Material, j.Wire, j.Gas, j.Process = w.material, w.wire, w.gas, mode
			return Joints([]joint.Joint{j}, set, shop, Options{})[0]
		}
		draws++
		a, b := at(thin), at(thin*rapid.Float64Range(1.001, 2).Draw(rt, "by"))
		if !a.Settings || !b.Settings {
			return // this wire and mode are not for such a part or position
		}
		if a.Transfer != b.Transfer || a.Dia != b.Dia || a.Filler != b.Filler {
			rt.Fatalf("what the list says was not held: %s %v %s, %s %v %s", a.Filler, a.Dia, a.Transfer, b.Filler, b.Dia, b.Transfer)
		}
		for _, pass := range []RunKind{Single, Fill, Cap} {
			x, y := currentOf(&a, pass), currentOf(&b, pass)
			if x == 0 || y == 0 {
				continue
			}
			compared++
			if y < x*(1-1e-9) {
				rt.Fatalf("%s %s leg %v gap %v %s %s: the %s pass of %v mm takes %v A (%d passes), of %v mm %v A (%d)", w.wire, mode, leg, gap, kind, position,
					pass, thin, x, len(a.Runs), b.Joint.T1, y, len(b.Runs))
			}
		}
	})
	if !t.Failed() && compared < draws/10 {
		t.Errorf("%d passes compared in %d draws: most wires and modes were not for their parts", compared, draws)
	}
}
