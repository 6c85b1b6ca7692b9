package plan

import (
	"slices"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// scene is a check that needs a wish, a shop or a whole list to speak.
type scene struct {
	code    string
	yes, no []joint.Joint
	shop    func(*tables.Set, *rates.Shop) // of yes; no has the shop as it comes
	always  bool                           // no has the changed shop too
}

func one(j joint.Joint) []joint.Joint { return []joint.Joint{j} }

func scenes() []scene {
	named := func(j joint.Joint, change func(*joint.Joint)) []joint.Joint { return one(changed(j, change)) }
	good := one(filletJoint(6, 10, "PB"))
	ask := func(material, position, process, wire, gas string, leg, thick float64) []joint.Joint {
		return one(asked(material, position, process, wire, gas, leg, thick))
	}
	stitched := func(count int, length float64) []joint.Joint {
		return named(filletJoint(5, 8, "PB"), func(j *joint.Joint) {
			j.Sides, j.Length = 2, units.MM(length)
			j.Stitch = &joint.Stitch{Count: count, Segment: 50, Gap: 100, Pitch: 150, Staggered: true}
		})
	}
	only := func(names ...string) func(*tables.Set, *rates.Shop) {
		return func(_ *tables.Set, s *rates.Shop) { s.Machines = names }
	}
	cet := func(v float64) func(*tables.Set, *rates.Shop) {
		return func(_ *tables.Set, s *rates.Shop) { s.CET, s.PreheatMethod = map[string]float64{"S355": v}, "cet" }
	}
	binding := func(set *tables.Set, _ *rates.Shop) {
		set.Procedures = []tables.Procedure{{Number: "SP-7", Process: "135", Filler: "G3Si1", Dia: 1.2, Gas: "M21", Positions: "PA PB", TLow: 6, THigh: 20,
			CurrentLow: 220, CurrentHigh: 260, VoltageLow: 26, VoltageHigh: 29, TravelLow: 300, TravelHigh: 600, HeatHigh: 1.8, Preheat: 80}}
	}
	wps := func(leg, t float64, number string) []joint.Joint {
		return named(filletJoint(leg, t, "PB"), func(j *joint.Joint) { j.WPS = number })
	}
	s355 := func(leg, t float64) []joint.Joint {
		return named(filletJoint(leg, t, "PB"), func(j *joint.Joint) { j.Material = "S355" })
	}
	other := filletJoint(6, 10, "PB")
	other.Mark = "U"
	twin := good[0].Apart()
	twin.Place.Row = 7
	return []scene{
		{code: "mark-twice", yes: []joint.Joint{twin, good[0]}, no: []joint.Joint{twin, other}},
		{code: "stitch-count", yes: stitched(5, 1000), no: stitched(7, 1000)},
		{code: "stitch-stagger", yes: stitched(7, 1000), no: stitched(7, 1030)},
		{code: "no-area", yes: named(buttJoint(joint.SquareButt, 3, "PA"), func(j *joint.Joint) { j.GapGiven = true }), no: named(buttJoint(joint.SquareButt, 3, "PA"), func(j *joint.Joint) { j.Gap, j.GapGiven = 1, true }),
			shop: func(_ *tables.Set, s *rates.Shop) { s.CapHeight, s.RootHeight = 0, 0 }, always: true},
		{code: "size-bad", yes: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Angle = 179.9 }), no: good},
		{code: "kind-outside", yes: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Kind = "spot" }), no: good},
		{code: "weld-care", yes: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Material = "S460" }), no: s355(6, 10)},
		{code: "machine-none", yes: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Wire = "G3Si1 1.6" }), no: good, shop: only("MIG 200 single-phase")},
		{code: "machine-duty", yes: one(filletJoint(6, 10, "PB")), no: good, shop: func(_ *tables.Set, s *rates.Shop) {
			s.Machines, s.OperatingFactor = []string{"MIG 350 three-phase"}, 0.9
		}},
		{code: "machine-long-run", yes: named(filletJoint(8, 12, "PB"), func(j *joint.Joint) { j.Length = 6000 }), no: good, shop: only("MIG 350 three-phase"), always: true},
		{code: "wish-position", yes: ask("S235", "PD", "spray", "", "", 6, 8), no: ask("S235", "PB", "spray", "", "", 6, 8)},
		{code: "nothing-fits", yes: ask("S235", "PF", "", "", "", 6, 8), no: good, shop: func(_ *tables.Set, s *rates.Shop) { s.Wires = onlyWire(s, "G3Si1", 1.6) }},
		{code: "wire-to-buy", yes: ask("2205", "PB", "", "", "", 6, 8), no: ask("2205", "PB", "", "2209 1.0", "", 6, 8)},
		{code: "wire-softer", yes: named(buttJoint(joint.SingleV, 12, "PA"), func(j *joint.Joint) { j.Material = "S690" }), no: named(buttJoint(joint.SingleV, 12, "PA"), func(j *joint.Joint) { j.Material, j.Wire = "S690", "ER110S-G 1.2" })},
		{code: "not-in-stock", yes: ask("S355", "PB", "", "E71T-11 1.2", "", 6, 8), no: good},
		{code: "no-price", yes: ask("S355", "PB", "", "E71T-11 1.2", "", 6, 8), no: good, shop: func(_ *tables.Set, s *rates.Shop) {
			s.Values = slices.DeleteFunc(slices.Clone(s.Values), func(v rates.Value) bool { return strings.HasPrefix(v.Key, "wire_price") })
		}},
		{code: "gas-not-needed", yes: ask("S355", "PB", "", "E71T-11 1.2", "M21", 6, 8), no: ask("S355", "PB", "", "E71T-11 1.2", "", 6, 8)},
		{code: "gas-stainless", yes: ask("304L", "PB", "", "", "82/18", 4, 4), no: ask("304L", "PB", "", "", "M12", 4, 4)},
		{code: "gas-cored", yes: ask("S355", "PB", "", "E70C-6M 1.2", "CO2", 6, 8), no: ask("S355", "PB", "", "E70C-6M 1.2", "M21", 6, 8)},
		{code: "gas-transfer", yes: ask("S355", "PB", "spray", "", "CO2", 6, 8), no: ask("S355", "PB", "spray", "", "M21", 6, 8)},
		{code: "filler-never", yes: ask("5083", "PB", "", "4043 1.2", "", 6, 8), no: ask("5083", "PB", "", "5356 1.2", "", 6, 8)},
		{code: "wire-single-run", yes: ask("S235", "PB", "", "E71T-GS 0.9", "", 8, 8), no: ask("S235", "PB", "", "E71T-GS 0.9", "", 3, 3)},
		{code: "braze", yes: ask("galvanised", "PB", "973", "", "", 2, 1), no: ask("galvanised", "PB", "135", "", "", 2, 1)},
		{code: "braze-uncoated", yes: ask("S235", "PB", "973", "", "", 2, 1), no: ask("galvanised", "PB", "973", "", "", 2, 1)},
		{code: "site-flow", yes: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Where, j.Process = joint.Site, "135" }), no: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Where, j.Process = joint.Site, "114" })},
		{code: "plate-thin-for-wire", yes: ask("S235", "PB", "136", "", "", 2, 1), no: ask("S235", "PB", "136", "", "", 6, 10)},
		{code: "leg-small-for-wire", yes: ask("S235", "PB", "", "G3Si1 0.6", "", 0.7, 0.8), no: ask("S235", "PB", "", "G3Si1 0.6", "", 1.5, 0.8)},
		{code: "mode-low", yes: ask("S235", "PB", "spray", "G3Si1 1.2", "M21", 2, 1.5), no: ask("S235", "PB", "spray", "G3Si1 1.2", "M21", 6, 10)},
		{code: "travel-fast", yes: ask("S235", "PF", "", "E71T-1 1.2", "", 2, 4), no: ask("S235", "PF", "", "E71T-1 1.2", "", 6, 10)},
		{code: "travel-slow", yes: ask("S235", "PD", "", "T 46 2 P 1.2", "", 8, 12), no: ask("S235", "PD", "", "T 46 2 P 1.2", "", 6, 12)},
		{code: "preheat-certificate", yes: one(filletJoint(6, 10, "PB")), no: one(filletJoint(4, 5, "PB")), always: true, shop: func(_ *tables.Set, s *rates.Shop) { s.PreheatMethod = "cet" }},
		{code: "preheat-methods", yes: one(filletJoint(8, 20, "PB")), no: s355(8, 40), always: true, shop: func(_ *tables.Set, s *rates.Shop) { s.PreheatMethod = "cet" }},
		{code: "preheat-unknown", yes: s355(8, 20), no: s355(8, 20), shop: cet(0.7)},
		{code: "cooling-fast", yes: named(filletJoint(4, 12, "PB"), func(j *joint.Joint) { j.Material = "S690" }), no: good},
		{code: "cooling-slow", yes: named(filletJoint(8, 4, "PB"), func(j *joint.Joint) { j.Material = "S690" }), no: good},
		{code: "heat-high", yes: named(filletJoint(8, 12, "PB"), func(j *joint.Joint) { j.Material = "430" }), no: named(filletJoint(3, 3, "PB"), func(j *joint.Joint) { j.Material = "430" })},
		{code: "heat-low", yes: one(filletJoint(3, 6, "PB")), no: one(filletJoint(8, 10, "PB")), shop: wantsHeat, always: true},
		{code: "procedure-binds", yes: wps(6, 12, "SP-7"), no: good, shop: binding, always: true},
		{code: "procedure-unmet", yes: wps(6, 40, "SP-7"), no: wps(6, 12, "SP-7"), shop: binding, always: true},
		{code: "procedure-unknown", yes: wps(6, 12, "SP-8"), no: wps(6, 12, "SP-7"), shop: binding, always: true},
		{code: "gun-soft", yes: ask("6082", "PB", "", "4043 1.2", "", 4, 5), no: ask("S235", "PB", "", "G3Si1 1.2", "", 4, 5)},
		{code: "gun-hard", yes: ask("5083", "PB", "", "5356 1.0", "", 4, 5), no: ask("5083", "PB", "", "5356 1.2", "", 4, 5)},
		{code: "spool-large", yes: one(filletJoint(3, 3, "PB")), no: one(filletJoint(3, 3, "PB")), shop: func(_ *tables.Set, s *rates.Shop) {
			s.Machines = []string{"MIG 200 single-phase"}
		}},
		{code: "part-thickness", yes: named(filletJoint(4, 8, "PB"), func(j *joint.Joint) { j.Part1, j.T1 = "SHS 60x60x4", 6 }), no: named(filletJoint(4, 8, "PB"), func(j *joint.Joint) { j.Part1, j.T1 = "SHS 60x60x4", 4 })},
		{code: "unit-part", yes: named(filletJoint(4, 8, "PB"), func(j *joint.Joint) { j.Part1 = "FL 8x2" }), no: named(filletJoint(4, 8, "PB"), func(j *joint.Joint) { j.Part1 = "FL 80x8" })},
		{code: "part-grade", yes: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Part1, j.Lent1 = "P1", &joint.Lent{Section: "FL 100x10", Material: "S355"} }),
			no: named(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Part1, j.Lent1 = "P1", &joint.Lent{Section: "FL 100x10", Material: "S235JR"} })},
		{code: hintTurn, yes: one(filletJoint(8, 12, "PF")), no: one(filletJoint(8, 12, "PB"))},
		{code: hintDouble, yes: one(buttJoint(joint.SingleV, 25, "PA")), no: one(buttJoint(joint.SingleV, 8, "PA"))},
		{code: hintPrep, yes: named(buttJoint(joint.SingleV, 15, "PA"), func(j *joint.Joint) { j.Angle = 80 }), no: one(buttJoint(joint.SingleV, 15, "PA"))},
		{code: hintOneRun, yes: one(filletJoint(10, 20, "PB")), no: one(filletJoint(16, 20, "PB"))},
		{code: hintOneOver, yes: one(filletJoint(6, 12, "PB")), no: one(buttJoint(joint.SingleV, 12, "PA"))},
	}
}

// wantsHeat has every metal want 0.8 kJ/mm, as a user's own table may.
func wantsHeat(set *tables.Set, _ *rates.Shop) {
	set.HeatLimits = slices.Clone(set.HeatLimits)
	for i := range set.HeatLimits {
		set.HeatLimits[i].HeatMin = 0.8
	}
}

// onlyWire keeps one wire of the shop.
func onlyWire(s *rates.Shop, filler string, dia units.MM) []rates.WirePrice {
	first := s.Wires[0]
	first.Filler, first.Dia = filler, dia
	return []rates.WirePrice{first}
}

// speaks plans a list and tells whether any joint has a check of the code.
func speaks(t *testing.T, s *scene, list []joint.Joint, own bool, codes string) bool {
	t.Helper()
	set, shop := world(t)
	mine := *set
	if own && s.shop != nil {
		s.shop(&mine, shop)
	}
	opt := Options{Codes: codes}
	plans := Joints(list, &mine, shop, opt)
	Hints(plans, &mine, shop, opt)
	for i := range plans {
		if c, said := checkOf(&plans[i], s.code); said {
			if c.Rule == "" || c.Do == "" || c.Text == "" || c.Basis == "" {
				t.Errorf("%s lacks rule, basis or what to do: %+v", s.code, c)
			}
			return true
		}
	}
	if own && testing.Verbose() {
		for i := range plans {
			t.Logf("%s: %s; %s %v %v", s.code, codesOf(&plans[i]), plans[i].NoSettings, plans[i].Filler, plans[i].T85)
		}
	}
	return false
}

func TestEverySceneSpeaksAndIsSilent(t *testing.T) {
	for _, s := range scenes() {
		for _, codes := range []string{"iso", "aws"} {
			if !speaks(t, &s, s.yes, true, codes) {
				t.Errorf("%s (%s) is silent", s.code, codes)
			}
			if speaks(t, &s, s.no, s.always, codes) {
				t.Errorf("%s (%s) speaks where nothing is wrong", s.code, codes)
			}
		}
	}
}

// ofParts are the rules that compare two lists; package parts has their matrix.
var ofParts = map[string]bool{"part-missing": true, "part-quantity": true, "part-unused": true, "part-ambiguous": true, "part-seam": true, "part-too-long": true,
	"part-refused": true, "part-small": true, "part-alone": true, "part-thin": true}

// Every rule of the table stands in the matrix, with a joint that calls for it and
// one that does not.
func TestEveryRuleStandsInTheMatrix(t *testing.T) {
	set, _ := world(t)
	shown := map[string]bool{}
	for _, r := range matrix() {
		shown[r.code] = true
	}
	for _, s := range scenes() {
		shown[s.code] = true
	}
	for _, r := range set.CheckRules {
		if !shown[r.Code] && !ofParts[r.Code] {
			t.Errorf("%s has no row in the matrix of checks", r.Code)
			shown[r.Code] = true
		}
	}
}
