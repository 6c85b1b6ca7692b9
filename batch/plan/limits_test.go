package plan

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"seamtally/batch/joint"
)

// The limits that a sheet prints are those of the joint's own size: 0.5 mm + 0.2 a of
// a fillet's gap, 1 mm + 0.6 g of a root in an open gap g of level C; a root has none
// where it is backed or welded from behind, and nothing has any without a level.
func TestLimitsAreOfTheJointsOwnSize(t *testing.T) {
	set, shop := world(t)
	v := joint.Joint{Mark: "V", Qty: 1, Length: 500, Detail: &joint.Detail{Sides: 1, Kind: joint.SingleV, T1: 12, T2: 12, Gap: 2, GapGiven: true, Material: "S355", Position: "PA", Quality: "C"}}
	fillet := filletJoint(5, 500, "PB")
	fillet.Material, fillet.Quality = "S355", "C"
	gouged, backed, bare := v.Apart(), v.Apart(), v.Apart()
	gouged.Backing, backed.Backing, bare.Quality = "gouge", "bar", ""
	for name, c := range map[string]struct {
		j      joint.Joint
		number string
		want   float64 // negative: none
	}{
		"gap of a fillet": {fillet, FitGap, 0.5 + 0.2*5*math.Sqrt2/2}, "root of a V": {v, RootHeight, 2.2}, "no cap on a fillet": {fillet, CapHeight, -1},
		"gouged": {gouged, RootHeight, -1}, "on a bar": {backed, RootHeight, -1}, "no level": {bare, CapHeight, -1},
	} {
		p := Joints([]joint.Joint{c.j}, set, shop, Options{})[0]
		got, ok := p.Most(c.number)
		if ok != (c.want >= 0) || ok && math.Abs(float64(got)-c.want) > 1e-9 {
			t.Errorf("%s: %v, %v, want %.4f", name, got, ok, c.want)
		}
	}
}

// What a check says to strip is what the sheet says to clean.
func TestZincIsStrippedAsWideAsItIsCleaned(t *testing.T) {
	set, shop := world(t)
	j := filletJoint(4, 500, "PB")
	j.Material = "S235 galvanised"
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	for _, c := range p.Checks {
		if want := fmt.Sprintf("%g mm each side", float64(p.CleanWidth)); c.Code == "zinc" && !strings.Contains(c.Do, want) {
			t.Errorf("%q, and the sheet cleans %s", c.Do, want)
		}
	}
	if !saysCode(&p, "zinc") || p.CleanWidth != 100 {
		t.Errorf("cleaned %v wide, checks %v", p.CleanWidth, p.Checks)
	}
}
