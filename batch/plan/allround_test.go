package plan

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

func TestTubesAreReadFromTheirDesignations(t *testing.T) {
	for text, want := range map[string]tube{
		"CHS 60.3x4": {60.3, 0, 4}, "60.3x4": {60.3, 0, 4}, "chs 88,9 × 5": {88.9, 0, 5}, "SHS 60x60x4": {60, 60, 4}, "SHS 60x4": {60, 60, 4}, "RHS 100x50x5": {100, 50, 5}, "Ø 48.3x3.2": {48.3, 0, 3.2},
	} {
		if got, ok := tubeOf(text); !ok || got != want {
			t.Errorf("%q is read as %v (%v), want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "60x6", "PL 10", "L 60x60x6", "60x60x6", "CHS 60.3x40", "IPE 200", "RHS 100x5", "A12"} {
		if got, ok := tubeOf(text); ok {
			t.Errorf("%q is read as the tube %v", text, got)
		}
	}
}

// The lengths stand in the figures of saddles; the box is 2 x 120 - (8 - 2π) 8 with
// the radius of twice the wall.
func TestSeamsAllRoundTakeTheirLengthFromTheSections(t *testing.T) {
	set, shop := world(t)
	for _, c := range []struct {
		part1, part2 string
		angle        units.Degree
		want         float64
	}{
		{"CHS 60.3x4", "CHS 168.3x6", 60, 206.08},
		{"CHS 48.3x4", "CHS 114.3x6", 0, 153.59},
		{"CHS 88.9x5", "", 45, 339.62},
		{"CHS 60.3x4", "PL 12", 120, 204.35},
		{"SHS 60x60x4", "PL 12", 0, 240 - (8-2*math.Pi)*8},
	} {
		j := joint.Joint{Mark: "A", Qty: 1, Kind: joint.Fillet, Sides: 1, AllRound: true, Size: joint.Size{Means: joint.Leg, A: 5}, T2: 10, Angle: c.angle, Part1: c.part1, Part2: c.part2, Material: "S355", Position: "PB"}
		before := j
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if got := float64(p.Seam) * 1000; math.Abs(got-c.want) > 0.001*c.want || !p.Settings {
			t.Errorf("%s on %s at %g°: %.2f mm, want %.2f (%s)", c.part1, c.part2, float64(c.angle), got, c.want, p.NoSettings)
		}
		if !reflect.DeepEqual(j, before) {
			t.Error("the list's joint is changed")
		}
		told := false
		for _, a := range p.Assumed {
			told = told || a.Key == "length" && strings.Contains(a.Why, c.part1)
		}
		if !told {
			t.Errorf("%s: the length is not shown as assumed", c.part1)
		}
	}
}

func TestALeaningBoxAsksForItsLength(t *testing.T) {
	set, shop := world(t)
	j := joint.Joint{Mark: "A", Qty: 1, Kind: joint.Fillet, Sides: 1, AllRound: true, Size: joint.Size{Means: joint.Leg, A: 5}, T2: 10, Angle: 60, Part1: "SHS 60x60x4", Material: "S355", Position: "PB"}
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	for _, c := range p.Checks {
		if c.Code == "length-blank" && strings.Contains(c.Text, "SHS 60x60x4") {
			return
		}
	}
	t.Errorf("nothing says why there is no length: %v", p.Checks)
}
