package plan

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// A branch is told only where the list says for certain how the tube is cut.
func TestBranchesAreToldWhereTheListIsCertain(t *testing.T) {
	set, shop := world(t)
	for _, c := range []struct {
		name         string
		kind         joint.Kind
		part1, part2 string
		angle        units.Degree
		round        bool
		want         *Branch
	}{
		{"on a chord", joint.Fillet, "CHS 60.3x4", "CHS 168.3x6", 60, true, &Branch{Dia: 60.3, Wall: 4, Chord: 168.3, Angle: 60, AngleGiven: true}},
		{"the wide angle", joint.Fillet, "CHS 60.3x4", "CHS 168.3x6", 135, true, &Branch{Dia: 60.3, Wall: 4, Chord: 168.3, Angle: 45, AngleGiven: true}},
		{"no angle", joint.Fillet, "CHS 60.3x4", "CHS 60.3x4", 0, true, &Branch{Dia: 60.3, Wall: 4, Chord: 60.3, Angle: 90}},
		{"bevelled", joint.SingleBevel, "CHS 60.3x4", "CHS 168.3x6", 0, true, &Branch{Dia: 60.3, Wall: 4, Chord: 168.3, Angle: 90, Bevels: true}},
		{"leaning on a face", joint.Fillet, "CHS 60.3x4", "FL 100x10", 45, true, &Branch{Dia: 60.3, Wall: 4, Angle: 45, AngleGiven: true}},
		{"square on a face", joint.Fillet, "CHS 60.3x4", "FL 100x10", 0, true, nil},
		{"the angle of a groove", joint.SingleBevel, "CHS 60.3x4", "CHS 168.3x6", 45, true, nil},
		{"end to end", joint.SingleV, "CHS 60.3x4", "CHS 60.3x4", 0, true, nil},
		{"wider than its chord", joint.Fillet, "CHS 168.3x6", "CHS 60.3x4", 0, true, nil},
		{"not all round", joint.Fillet, "CHS 60.3x4", "CHS 168.3x6", 60, false, nil},
		{"a mark of somebody's own", joint.Fillet, "CHS 60.3x4", "P-12", 60, true, nil},
		{"a box", joint.Fillet, "SHS 60x60x4", "CHS 168.3x6", 0, true, nil},
	} {
		j := joint.Joint{Mark: "A", Qty: 1, Length: 300, Part1: c.part1, Part2: c.part2, Detail: &joint.Detail{Kind: c.kind, Sides: 1, AllRound: c.round, Size: joint.Size{Means: joint.Leg, A: 5}, T2: 10, Angle: c.angle, Material: "S355", Position: "PB"}}
		got := Joints([]joint.Joint{j}, set, shop, Options{})[0].Branch
		if (got == nil) != (c.want == nil) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
			continue
		}
		if got == nil {
			continue
		}
		if got.Tube == "" || got.On == "" {
			t.Errorf("%s: no designations: %+v", c.name, got)
		}
		c.want.Tube, c.want.On = got.Tube, got.On
		if *got != *c.want {
			t.Errorf("%s: %+v, want %+v", c.name, *got, *c.want)
		}
	}
}
