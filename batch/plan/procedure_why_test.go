package plan

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/tables"
)

// TestEveryRunOutsideIsNamed: a V of 12 mm with an open root has runs of several
// sizes; a limit that all leave names them all, and an open end is no zero.
func TestEveryRunOutsideIsNamed(t *testing.T) {
	v := joint.Joint{Mark: "V", Qty: 1, Length: 500, Detail: &joint.Detail{Kind: joint.SingleV, Sides: 1, T1: 12, T2: 12, Angle: 60, Gap: 2, RootFace: 1, Material: "S355", Position: "PA", Where: joint.Shop}}
	for _, c := range []struct {
		what   string
		change func(*tables.Procedure)
		says   []string
	}{
		{"heat above", func(p *tables.Procedure) { p.HeatHigh = 0.2 }, []string{"the root", "each fill or cap run", "up to 0.2 kJ/mm, no limit below"}},
		{"heat below", func(p *tables.Procedure) { p.HeatLow, p.HeatHigh = 9, 0 }, []string{"the root", "each fill or cap run", "from 9 kJ/mm up, no limit above"}},
		{"travel", func(p *tables.Procedure) { p.TravelLow, p.TravelHigh, p.HeatHigh = 700, 0, 0 }, []string{"mm/min"}},
		{"thickness", func(p *tables.Procedure) { p.TLow, p.THigh = 0, 10 }, []string{"the thinner part is 12 mm; the procedure is for up to 10 mm, no limit below"}},
	} {
		set, shop := bound(t, func(p *tables.Procedure) {
			p.CurrentLow, p.CurrentHigh, p.VoltageLow, p.VoltageHigh = 0, 0, 0, 0
			p.TravelLow, p.TravelHigh = 0, 0
			c.change(p)
		})
		p := Joints(named(v), set, shop, Options{})[0]
		for _, s := range c.says {
			if !strings.Contains(p.NoSettings, s) {
				t.Errorf("%s: %q lacks %q", c.what, p.NoSettings, s)
			}
		}
		if p.Settings || strings.Contains(p.NoSettings, " 0 to") || strings.Contains(p.NoSettings, "to 0 ") || strings.Contains(p.NoSettings, " 0 mm") {
			t.Errorf("%s: settings %v, %q", c.what, p.Settings, p.NoSettings)
		}
	}
}

// TestPipePositionIsItsOwn: a procedure for PH binds a joint in PH, though it is
// planned as PF, and one for PF only does not.
func TestPipePositionIsItsOwn(t *testing.T) {
	for at, want := range map[string]bool{"PH PJ": true, "PF PG": false, "": true} {
		set, shop := bound(t, func(p *tables.Procedure) {
			*p = tables.Procedure{Number: "SP-7", Process: "135", Filler: "G3Si1", Gas: "M21", Positions: at}
		})
		if p := Joints(named(filletJoint(4, 8, "PH")), set, shop, Options{})[0]; p.Settings != want {
			t.Errorf("%q: settings %v, %s", at, p.Settings, p.NoSettings)
		}
	}
}

// TestHolesKeepToTheProcedure: in a plug or slot, travel and heat of the round stay
// inside the limits, or the joint has no settings.
func TestHolesKeepToTheProcedure(t *testing.T) {
	worked := 0
	for _, kind := range []joint.Kind{joint.Plug, joint.Slot} {
		for _, size := range []units.MM{10, 14, 20, 30} {
			for _, heat := range []units.KJMM{0.2, 0.8, 1.5, 2.5} {
				set, shop := bound(t, func(p *tables.Procedure) {
					p.CurrentLow, p.CurrentHigh, p.VoltageLow, p.VoltageHigh, p.HeatHigh = 180, 280, 20, 32, heat
				})
				j := joint.Joint{Mark: "P", Qty: 1, Length: 60, Detail: &joint.Detail{Kind: kind, Sides: 1, Size: joint.Size{Means: joint.Leg, A: size}, T1: 8, T2: 12, Material: "S355", Position: "PA", Where: joint.Shop}}
				p := Joints(named(j), set, shop, Options{})[0]
				if !p.Settings {
					if !saysCode(&p, unmet) {
						t.Errorf("%s %g, %g kJ/mm: %q", kind, size, heat, p.NoSettings)
					}
					continue
				}
				worked++
				for _, r := range p.Runs {
					if r.Travel < 299.9 || r.Travel > 600.1 || r.Heat <= 0 || float64(r.Heat) > float64(heat)*1.0001 {
						t.Errorf("%s %g, %g kJ/mm: travel %g, heat %g", kind, size, heat, r.Travel, r.Heat)
					}
				}
			}
		}
	}
	if worked < 8 || worked == 32 {
		t.Errorf("%d of 32 worked", worked)
	}
}

// TestEveryReasonIsTold: thickness, position and gas may all be outside at once.
func TestEveryReasonIsTold(t *testing.T) {
	set, shop := bound(t, nil)
	j := filletJoint(3, 4, "PF")
	j.Gas = "C1"
	p := Joints(named(j), set, shop, Options{})[0]
	for _, s := range []string{"the list asks for gas", "the thinner part is 4 mm", "the position is PF"} {
		if !strings.Contains(p.NoSettings, s) || strings.Count(p.NoSettings, "procedure SP-7") != 1 {
			t.Errorf("%q lacks %q", p.NoSettings, s)
		}
	}
}
