package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// TestSpatterOfTheGas: minutes stated for a mode under one gas are priced where that
// gas is used. A metre at 3 min/m more costs 3/60 of the hour with overhead more.
func TestSpatterOfTheGas(t *testing.T) {
	set, shop := world(t)
	j := filletJoint(6, 12, "PB")
	j.Wire, j.Gas = "T 46 2 P 1.2", "C1"
	cost := func(minutes float64) units.Money {
		own := *shop
		own.SpatterMinM = map[string]float64{"spray": 0.2, "spray.C1": minutes}
		p := Joints([]joint.Joint{j}, set, &own, Options{})[0]
		if !p.Settings || p.Gas != "C1" || p.Transfer != Spray {
			t.Fatalf("%s %s %s", p.Gas, p.Transfer, p.NoSettings)
		}
		return p.Cost.Total
	}
	want := 3.0 / 60 * float64(shop.LabourCostPerHour())
	if got := float64(cost(3) - cost(0)); math.Abs(got-want) > 1e-9 {
		t.Errorf("3 min/m of spatter cost %g, want %g", got, want)
	}
}
