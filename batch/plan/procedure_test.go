package plan

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// bound is a shop whose table has one procedure: 1.2 mm solid wire in M21, PA and
// PB, 6 to 20 mm, 220 to 260 A, 26 to 29 V, 300 to 600 mm/min, up to 1.8 kJ/mm,
// preheat 80 °C. The figures are this test's own.
func bound(t *testing.T, change func(*tables.Procedure)) (*tables.Set, *rates.Shop) {
	t.Helper()
	set, shop := world(t)
	p := tables.Procedure{Number: "SP-7", Process: "135", Filler: "G3Si1", Dia: 1.2, Gas: "M21", Positions: "PA PB", TLow: 6, THigh: 20,
		CurrentLow: 220, CurrentHigh: 260, VoltageLow: 26, VoltageHigh: 29, TravelLow: 300, TravelHigh: 600, HeatHigh: 1.8, Preheat: 80}
	if change != nil {
		change(&p)
	}
	own := *set
	own.Procedures = []tables.Procedure{p}
	return &own, shop
}

func named(j joint.Joint) []joint.Joint {
	j = j.Apart()
	j.WPS = "sp-7"
	return []joint.Joint{j}
}

// TestProcedureBinds plans fillets of all sizes that a procedure covers: every run
// lies inside every range of it.
func TestProcedureBinds(t *testing.T) {
	set, shop := bound(t, nil)
	worked := 0
	for leg := 4.0; leg <= 12; leg++ {
		p := Joints(named(filletJoint(leg, 12, "PB")), set, shop, Options{})[0]
		if !p.Settings {
			continue
		}
		worked++
		if p.Process != "135" || p.Filler != "G3Si1" || p.Dia != 1.2 || p.Gas != "M21" {
			t.Errorf("z%g: %s %s %g %s", leg, p.Process, p.Filler, p.Dia, p.Gas)
		}
		if p.Preheat == nil || *p.Preheat != 80 {
			t.Errorf("z%g: the procedure asks for 80 °C, the plan for %v", leg, p.Preheat)
		}
		for _, r := range p.Runs {
			if r.Current < 219.99 || r.Current > 260.01 || r.Voltage < 26 || r.Voltage > 29 || r.Travel < 299.9 || r.Travel > 600.1 || r.Heat > 1.8001 {
				t.Errorf("z%g run %d outside: %g A, %g V, %g mm/min, %g kJ/mm", leg, r.Number, r.Current, r.Voltage, r.Travel, r.Heat)
			}
		}
		for _, w := range []struct {
			what      string
			w         Window
			low, high float64
		}{{"current", p.Current, 220, 260}, {"voltage", p.Voltage, 26, 29}, {"travel", p.Travel, 300, 600}} {
			if w.w.Low < w.low-1e-6 || w.w.High > w.high+1e-6 || w.w.Start < w.w.Low || w.w.Start > w.w.High {
				t.Errorf("z%g: the window of the %s, %+v, leaves the procedure", leg, w.what, w.w)
			}
		}
		if !saysCode(&p, "procedure-binds") {
			t.Errorf("z%g: nothing says that the procedure binds", leg)
		}
	}
	if worked < 5 {
		t.Errorf("only %d of 9 sizes were planned inside the procedure", worked)
	}
}

// TestProcedureIsNoCompromise: what a procedure does not cover is an error that
// names the limit, and the joint has no settings.
func TestProcedureIsNoCompromise(t *testing.T) {
	wish := func(change func(*joint.Joint)) joint.Joint {
		j := filletJoint(6, 12, "PB")
		change(&j)
		return j
	}
	for _, c := range []struct {
		what   string
		joint  joint.Joint
		change func(*tables.Procedure)
		says   string
	}{
		{"thickness", filletJoint(4, 4, "PB"), nil, "the thinner part is 4 mm"},
		{"position", filletJoint(6, 12, "PF"), nil, "the position is PF"},
		{"gas of the list", wish(func(j *joint.Joint) { j.Gas = "C1" }), nil, "the list asks for gas"},
		{"wire of the list", wish(func(j *joint.Joint) { j.Wire = "G3Si1 1.0" }), nil, "the list asks for wire"},
		{"process of the list", wish(func(j *joint.Joint) { j.Process = "136" }), nil, "the list asks for process"},
		{"heat", filletJoint(6, 12, "PB"), func(p *tables.Procedure) { p.HeatHigh = 0.3 }, "kJ/mm"},
		{"travel", filletJoint(6, 12, "PB"), func(p *tables.Procedure) { p.TravelLow, p.TravelHigh = 850, 900 }, "mm/min"},
		{"a range turned round", filletJoint(6, 12, "PB"), func(p *tables.Procedure) { p.VoltageLow, p.VoltageHigh = 29, 20 }, "a range of voltage from 29 to 20"},
		{"volts of another mode", filletJoint(6, 12, "PB"), func(p *tables.Procedure) { p.VoltageLow, p.VoltageHigh = 14, 17 }, "wants other volts"},
		{"current", filletJoint(6, 12, "PB"), func(p *tables.Procedure) { p.CurrentLow, p.CurrentHigh = 600, 700 }, "leave no current"},
	} {
		set, shop := bound(t, c.change)
		p := Joints(named(c.joint), set, shop, Options{})[0]
		if p.Settings || !saysCode(&p, unmet) || !strings.Contains(p.NoSettings, c.says) {
			t.Errorf("%s: settings %v, %q, want %q", c.what, p.Settings, p.NoSettings, c.says)
		}
		if p.WeldMetal <= 0 {
			t.Errorf("%s: the metal is known all the same", c.what)
		}
	}
}

// TestUnknownProcedureBindsNothing: a number that is not in the table is passed on,
// with a warning where the shop has procedures: it may be a slip of the pen.
func TestUnknownProcedureBindsNothing(t *testing.T) {
	set, shop := bound(t, nil)
	j := filletJoint(6, 12, "PF")
	j.WPS = "OTHER"
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	if !p.Settings || !saysCode(&p, "procedure-unknown") || strings.Contains(textOf(&p, "procedure-unknown"), "nearest") {
		t.Errorf("settings %v, checks %v", p.Settings, p.Checks)
	}
	j.WPS = "SP7"
	if p = Joints([]joint.Joint{j}, set, shop, Options{})[0]; !strings.Contains(textOf(&p, "procedure-unknown"), "the nearest is SP-7") {
		t.Errorf("checks %v", p.Checks)
	}
	set, shop = world(t)
	if p = Joints([]joint.Joint{j}, set, shop, Options{})[0]; !p.Settings || !saysCode(&p, "wps-governs") {
		t.Errorf("settings %v, checks %v", p.Settings, p.Checks)
	}
}

func saysCode(p *Plan, code string) bool {
	for _, c := range p.Checks {
		if c.Code == code {
			return true
		}
	}
	return false
}
