package plan

import (
	"math"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// shopOf is a shop that has only some of its wires, and any other wires by their prices.
func shopOf(t *testing.T, shop *rates.Shop, keep func(rates.WirePrice) bool, more ...rates.WirePrice) *rates.Shop {
	t.Helper()
	own := *shop
	own.Wires = nil
	for _, w := range shop.Wires {
		if keep(w) {
			own.Wires = append(own.Wires, w)
		}
	}
	own.Wires = append(own.Wires, more...)
	return &own
}

func flareJoint(kind joint.Kind, throat units.MM) joint.Joint {
	return joint.Joint{Mark: "F", Qty: 1, Length: 1000, Detail: &joint.Detail{
		Kind: kind, T1: 6, T2: 8, Sides: 1, Material: "S235", Position: "PA", Size: joint.Size{Means: joint.Throat, A: throat}}}
}

// A flare of R 12 is filled for a throat of 3 mm: h = R - (f R - E), AISC 360 Table J2.2,
// f 5/8 with gas and 5/16 without it: 7.5 and 11.25 mm. What counts is the wire that is
// chosen, not what else the shop has: here a stainless wire that the steel does not take.
func TestFlareIsFilledForTheWireChosen(t *testing.T) {
	set, shop := world(t)
	self := rates.WirePrice{Filler: "T 42 Z W N", Dia: 1.2, PerKg: 8, SpoolKg: 4.5}
	stainless := func(w rates.WirePrice) bool { return w.Filler == "G 19 9 L Si" }
	for name, c := range map[string]struct {
		shop    *rates.Shop
		gasless bool
		deep    units.MM
	}{
		"gas-shielded, a self-shielded one at hand": {shopOf(t, shop, func(w rates.WirePrice) bool { return true }, self), false, 7.5},
		"self-shielded, a stainless one at hand":    {shopOf(t, shop, stainless, self), true, 11.25},
	} {
		for _, again := range []int{1, 3} { // one of a form, and several
			var list []joint.Joint
			for range again {
				list = append(list, flareJoint(joint.FlareBevel, 3))
			}
			for _, p := range Joints(list, set, c.shop, Options{}) {
				if !p.Settings || (p.Gas == "") != c.gasless {
					t.Fatalf("%s: %s in %q: %s", name, p.Filler, p.Gas, p.NoSettings)
				}
				h := float64(c.deep)
				area := 12*h - h*math.Sqrt(144-h*h)/2 - 144*math.Asin(h/12)/2
				if math.Abs(float64(p.Prep.Throat-c.deep)) > 1e-9 || math.Abs(float64(p.AreaDrawn)-area) > 1e-9 {
					t.Errorf("%s: %.3f mm deep, %.3f mm²; want %.3f and %.3f", name, p.Prep.Throat, p.AreaDrawn, c.deep, area)
				}
				laid := 0.0
				for _, r := range p.Runs {
					laid += float64(r.Area)
				}
				if math.Abs(laid-float64(p.Area)) > 1e-6 || math.Abs(float64(p.WeldMetal)/(float64(p.Area)*1e-6*float64(p.Density))-1) > 1e-9 {
					t.Errorf("%s: passes of %.3f mm², area %.3f, metal %.5f kg", name, laid, p.Area, p.WeldMetal)
				}
				if Explain(list, 0, set, c.shop, Options{}).Area != p.Area {
					t.Errorf("%s: explained with another area", name)
				}
			}
		}
	}
}

// The flush throat that a flare is judged by is that of the wire chosen: 5 mm in R 12 is
// less than 7.5 mm with gas and more than 3.75 mm without it.
func TestFlareIsJudgedByTheWireChosen(t *testing.T) {
	set, shop := world(t)
	self := rates.WirePrice{Filler: "T 42 Z W N", Dia: 1.2, PerKg: 8, SpoolKg: 4.5}
	only := shopOf(t, shop, func(w rates.WirePrice) bool { return w.Filler == "G 19 9 L Si" }, self)
	for name, c := range map[string]struct {
		shop *rates.Shop
		told bool
	}{"with gas": {shop, false}, "without": {only, true}} {
		p := Joints([]joint.Joint{flareJoint(joint.FlareBevel, 5)}, set, c.shop, Options{})[0]
		if got := hasCode(p.Checks, "flare-throat"); got != c.told {
			t.Errorf("%s (%s): flare-throat %v", name, p.Filler, got)
		}
	}
}

// A radius under 3/8 in is told of either kind of flare; AISC 360 Table J2.2 says it of the
// flare bevel, so that of the flare V is no published rule.
func TestSmallRadiusIsToldOfEitherFlare(t *testing.T) {
	set, shop := world(t)
	for kind, basis := range map[joint.Kind]string{joint.FlareBevel: "published", joint.FlareV: "derived"} {
		for radius, told := range map[units.MM]bool{8: true, 9.4: true, 9.5: false, 12: false} {
			j := flareJoint(kind, 3)
			j.Radius = radius
			p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
			if got := hasCode(p.Checks, "flare-small"); got != told {
				t.Errorf("%s of R %g: told %v", kind, radius, got)
			}
			for _, c := range p.Checks {
				if c.Code == "flare-small" && c.Basis != basis {
					t.Errorf("%s: basis %q", kind, c.Basis)
				}
			}
		}
	}
}

func hasCode(checks []finding.Check, code string) bool {
	for _, c := range checks {
		if c.Code == code {
			return true
		}
	}
	return false
}
