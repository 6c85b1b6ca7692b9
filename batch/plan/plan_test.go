package plan

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// world returns the built-in tables and the shop that states nothing.
func world(t testing.TB) (*tables.Set, *rates.Shop) {
	t.Helper()
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	shop, err := rates.Default(set)
	if err != nil {
		t.Fatal(err)
	}
	return set, &shop
}

// filletJoint is a fillet of a leg between two parts of a thickness, a metre long.
func filletJoint(leg, thick float64, position string) joint.Joint {
	return joint.Joint{Mark: "T", Qty: 1, Sides: 1, Kind: joint.Fillet, Length: 1000, Position: position, Material: "S235",
		Size: joint.Size{Means: joint.Leg, A: units.MM(leg)}, T1: units.MM(thick), T2: units.MM(thick)}
}

// buttJoint is a butt of a kind in a thickness, a metre long.
func buttJoint(kind joint.Kind, thick float64, position string) joint.Joint {
	return joint.Joint{Mark: "T", Qty: 1, Sides: 1, Kind: kind, Length: 1000, Position: position, Material: "S235",
		T1: units.MM(thick), T2: units.MM(thick)}
}

func TestLook(t *testing.T) {
	set, shop := world(t)
	v := buttJoint(joint.SingleV, 12, "PF")
	dv := buttJoint(joint.DoubleV, 20, "PA")
	al := buttJoint(joint.SingleV, 6, "PA")
	al.Material = "5083"
	ss := filletJoint(2, 2, "PB")
	ss.Kind, ss.Material = joint.Lap, "304L"
	for _, j := range []joint.Joint{filletJoint(4, 3.2, "PB"), filletJoint(8, 12, "PB"), filletJoint(12, 20, "PB"), filletJoint(6, 10, "PF"), v, dv, al, ss, buttJoint(joint.SquareButt, 2, "PA")} {
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		t.Logf("%s t%v %s: %s %s %v %s %s %s A=%.1f/%.1f kg=%.3f wire %.3f arc %.2f cost %.2f runs %d %s", j.Kind, j.T1, j.Position, p.NoSettings, p.Filler, p.Dia, p.Gas, p.Transfer, p.Machine, p.AreaDrawn, p.Area, p.WeldMetal, p.WireKg, p.Arc, p.Cost.Total, len(p.Runs), p.Trigger)
		for _, r := range p.Runs {
			t.Logf("   %d L%d B%d S%d %s %s A=%.1f I=%.0f U=%.1f w=%.1f v=%.0f Q=%.2f %s", r.Number, r.Layer, r.Bead, r.Side, r.Kind, r.Transfer, r.Area, r.Current, r.Voltage, r.WireFeed, r.Travel, r.Heat, r.Technique)
		}
	}
}
