package plan

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// The rules of the inch codes are met by the inch sizes themselves: AWS D1.1 asks
// for 3/16 in on plate over 1/4 to 1/2 in, 1/8 in up to 1/4 in (member forum
// quote), and AISC J2.2b leaves 1/16 in of an edge of 1/4 in or more.
func TestInchSizesMeetTheInchRules(t *testing.T) {
	set, shop := world(t)
	in := func(n, d float64) units.MM { return units.FromInch(n / d) }
	for _, c := range []struct {
		kind       joint.Kind
		leg, thick units.MM
		code       string
		want       bool
	}{
		{joint.Fillet, in(3, 16), in(1, 4), "leg-min", false},
		{joint.Fillet, in(1, 8), in(1, 4), "leg-min", false},
		{joint.Fillet, in(3, 16), in(1, 2), "leg-min", false},
		{joint.Fillet, in(1, 8), in(3, 8), "leg-min", true},
		{joint.Fillet, in(1, 4), in(3, 4), "leg-min", false},
		{joint.Fillet, in(1, 4), in(1, 1), "leg-min", true},
		{joint.Fillet, in(5, 16), in(1, 1), "leg-min", false},
		{joint.Fillet, 5, 10, "leg-min", false},
		{joint.Fillet, 4, 10, "leg-min", true},
		{joint.Lap, in(3, 16), in(1, 4), "leg-edge", false},
		{joint.Lap, in(1, 4), in(1, 4), "leg-edge", true},
		{joint.Lap, 6, 8, "leg-edge", false},
		{joint.Lap, 7, 8, "leg-edge", true},
	} {
		j := filletJoint(float64(c.leg), float64(c.thick), "PB")
		j.Kind = c.kind
		got := false
		for _, check := range Joints([]joint.Joint{j}, set, shop, Options{Codes: "aws"})[0].Checks {
			got = got || check.Code == c.code
		}
		if got != c.want {
			t.Errorf("%s leg %.2f on %.2f mm: %s %v, want %v", c.kind, c.leg, c.thick, c.code, got, c.want)
		}
	}
}
