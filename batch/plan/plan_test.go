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
	return joint.Joint{
		Mark: "T", Qty: 1, Length: 1000,
		Detail: &joint.Detail{
			Sides: 1, Kind: joint.Fillet, Position: position, Material: "S235", Size: joint.Size{Means: joint.Leg, A: units.MM(leg)}, T1: units.MM(thick), T2: units.MM(thick),
		},
	}
}

// buttJoint is a butt of a kind in a thickness, a metre long.
func buttJoint(kind joint.Kind, thick float64, position string) joint.Joint {
	return joint.Joint{
		Mark: "T", Qty: 1, Length: 1000,
		Detail: &joint.Detail{
			Sides: 1, Kind: kind, Position: position, Material: "S235", T1: units.MM(thick), T2: units.MM(thick),
		},
	}
}
