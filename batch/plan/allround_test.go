package plan

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

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
		{"IPE 200", "PL 12", 0, 768},     // EN 10365: 0.768 m² of a metre
		{"HEA 120", "PL 12", 0, 677},     // as printed: 0.677
		{"L 60x60x6", "PL 12", 0, 233.1}, // 2 x 120 less the roundings of 8 and 2 x 4 mm
		{"FL 80x10", "PL 12", 0, 180},
	} {
		j := joint.Joint{Mark: "A", Qty: 1, Part1: c.part1, Part2: c.part2, Detail: &joint.Detail{Kind: joint.Fillet, Sides: 1, AllRound: true, Size: joint.Size{Means: joint.Leg, A: 5}, T2: 10, Angle: c.angle, Material: "S355", Position: "PB"}}
		before := j.Apart()
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

// The angle of a groove is that between its edges: a tube with a bevelled end does not
// lean by it, and its seam is no longer. The list is told how the angle was taken.
func TestAGrooveAngleIsNoLean(t *testing.T) {
	set, shop := world(t)
	for _, c := range []struct {
		kind         joint.Kind
		part1, part2 string
		want         float64
	}{
		{joint.SingleV, "SHS 60x60x4", "SHS 60x60x4", 240 - (8-2*math.Pi)*8},
		{joint.SingleBevel, "SHS 60x60x4", "PL 12", 240 - (8-2*math.Pi)*8},
		{joint.SingleV, "CHS 88.9x5", "CHS 88.9x5", math.Pi * 88.9},
		{joint.SingleBevel, "CHS 48.3x4", "CHS 114.3x6", 153.59},
		{joint.SingleBevel, "IPE 200", "PL 12", 768},
	} {
		straight := joint.Joint{Mark: "A", Qty: 1, Part1: c.part1, Part2: c.part2, Detail: &joint.Detail{Kind: c.kind, Sides: 1, AllRound: true, Material: "S355", Position: "PA"}}
		if got := float64(Joints([]joint.Joint{straight}, set, shop, Options{})[0].Seam) * 1000; math.Abs(got-c.want) > 0.001*c.want {
			t.Errorf("%s of %s on %s: %.2f mm, want %.2f", c.kind, c.part1, c.part2, got, c.want)
		}
		j := joint.Joint{Mark: "A", Qty: 1, Part1: c.part1, Part2: c.part2, Detail: &joint.Detail{Kind: c.kind, Sides: 1, AllRound: true, Angle: 50, Material: "S355", Position: "PA"}}
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if got := float64(p.Seam) * 1000; math.Abs(got-c.want) > 0.001*c.want {
			t.Errorf("%s of %s on %s, groove of 50°: %.2f mm, want %.2f", c.kind, c.part1, c.part2, got, c.want)
		}
		told := false
		for _, a := range p.Assumed {
			told = told || a.Key == "length" && strings.Contains(a.Why, "50° is the angle of the groove")
		}
		if !told {
			t.Errorf("%s of %s on %s: %v does not say how the angle was taken", c.kind, c.part1, c.part2, p.Assumed)
		}
	}
}

func TestALeaningBeamAsksForItsLength(t *testing.T) {
	set, shop := world(t)
	j := joint.Joint{Mark: "A", Qty: 1, Part1: "IPE 200", Detail: &joint.Detail{Kind: joint.Fillet, Sides: 1, AllRound: true, Size: joint.Size{Means: joint.Leg, A: 5}, T2: 10, Angle: 60, Material: "S355", Position: "PB"}}
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	for _, c := range p.Checks {
		if c.Code == "length-blank" && strings.Contains(c.Text, "IPE 200") {
			return
		}
	}
	t.Errorf("nothing says why there is no length: %v", p.Checks)
}

// Sections give the thicknesses that the row leaves blank; what the row says wins.
func TestSectionsGiveThicknesses(t *testing.T) {
	set, shop := world(t)
	for _, c := range []struct {
		part1, part2 string
		t1, t2       units.MM
		said         units.MM
	}{
		{"IPE 200", "HEA 200", 5.6, 10, 0}, {"PL10", "SHS 100x100x5", 10, 5, 0}, {"L60x6", "труба 114,3х5", 6, 5, 0}, {"IPE 200", "HEA 200", 8, 10, 8}, {"K-17", "A3", 0, 0, 0},
	} {
		j := joint.Joint{Mark: "A", Qty: 1, Length: 300, Part1: c.part1, Part2: c.part2, Detail: &joint.Detail{Kind: joint.Fillet, Sides: 1, Size: joint.Size{Means: joint.Leg, A: 4}, T1: c.said, Material: "S235", Position: "PB"}}
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if p.Prep.T1 != c.t1 || p.Prep.T2 != c.t2 {
			t.Errorf("%s on %s: %v on %v mm, want %v on %v", c.part1, c.part2, p.Prep.T1, p.Prep.T2, c.t1, c.t2)
		}
	}
}

// A designation that nobody publishes is told with the nearest ones.
func TestAllRoundAnUnknownSection(t *testing.T) {
	set, shop := world(t)
	j := joint.Joint{Mark: "A", Qty: 1, Part1: "IPE 210", Detail: &joint.Detail{Kind: joint.Fillet, Sides: 1, AllRound: true, Size: joint.Size{Means: joint.Leg, A: 5}, T1: 6, Material: "S355", Position: "PB"}}
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	for _, c := range p.Checks {
		if strings.Contains(c.Text, "IPE 200") && strings.Contains(c.Text, "IPE 220") {
			return
		}
	}
	t.Errorf("the nearest sections are not named: %v", p.Checks)
}

// Boxes that lean, and mitred corners of two tubes: straight sides in the plane of the
// lean are longer by 1 / sin of the angle between axis and cut, the four corners
// together are an ellipse, whose perimeter is that of Ramanujan's series.
func TestSeamsOfMitredCorners(t *testing.T) {
	set, shop := world(t)
	ellipse := func(a, b float64) float64 {
		h := (a - b) * (a - b) / ((a + b) * (a + b))
		return math.Pi * (a + b) * (1 + 3*h/(10+math.Sqrt(4-3*h)))
	}
	box := func(long, short, r, degrees float64) float64 {
		sin := math.Sin(degrees * math.Pi / 180)
		return 2*(short-2*r) + 2*(long-2*r)/sin + ellipse(r/sin, r)
	}
	for _, c := range []struct {
		kind         joint.Kind
		part1, part2 string
		angle, mitre units.Degree
		want         float64 // 0: refused
	}{
		{joint.SquareButt, "RHS 100x50x4", "RHS 100x50x4", 0, 45, box(100, 50, 8, 45)},
		{joint.SingleV, "SHS 60x60x4", "SHS 60x60x4", 60, 22.5, box(60, 60, 8, 67.5)},
		{joint.Fillet, "RHS 100x50x4", "", 0, 45, box(100, 50, 8, 45)},
		{joint.SquareButt, "CHS 88.9x5", "CHS 88.9x5", 0, 45, ellipse(44.45*math.Sqrt2, 44.45)},
		{joint.Fillet, "SHS 60x60x4", "PL 12", 60, 0, box(60, 60, 8, 60)},
		{joint.Fillet, "RHS 100x50x4", "PL 12", 120, 0, box(100, 50, 8, 60)},
		{joint.SquareButt, "RHS 100x50x4", "RHS 120x60x4", 0, 45, 0},
		{joint.SquareButt, "IPE 200", "IPE 200", 0, 45, 0},
	} {
		j := joint.Joint{Mark: "A", Qty: 1, Part1: c.part1, Part2: c.part2, Detail: &joint.Detail{Kind: c.kind, Sides: 1, AllRound: true, Mitre: c.mitre, Size: joint.Size{Means: joint.Leg, A: 5}, T2: 10, Angle: c.angle, Material: "S355", Position: "PA"}}
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if got := float64(p.Seam) * 1000; math.Abs(got-c.want) > 0.001*c.want+0.06 {
			t.Errorf("%s and %s at %g°, mitre %g°: %.2f mm, want %.2f (%v)", c.part1, c.part2, float64(c.angle), float64(c.mitre), got, c.want, p.Checks)
		}
		if round := strings.HasPrefix(c.part1, "CHS"); (p.Branch != nil) != round || round && p.Branch.Mitre != 45 {
			t.Errorf("%s: branch %+v", c.part1, p.Branch)
		}
	}
}

// Alike cuts share a template; a mitre is not the same as a tube on a flat face.
func TestTemplatesAreNumberedInTheOrderOfTheList(t *testing.T) {
	branches := []*Branch{nil, {Tube: "CHS 60.3x4", Dia: 60.3, Chord: 114.3, Angle: 90}, {Tube: "CHS 60.3x4", Dia: 60.3, Chord: 114.3, Angle: 90, On: "CHS 114.3x5"},
		{Tube: "CHS 60.3x4", Dia: 60.3, Chord: 114.3, Angle: 12}, {Tube: "CHS 60.3x4", Dia: 60.3, Angle: 45}, {Tube: "CHS 60.3x4", Dia: 60.3, Angle: 45, Mitre: 45}}
	plans := make([]Plan, len(branches))
	for i := range plans {
		plans[i].Manner = &Manner{Branch: branches[i]}
	}
	if got, want := Templates(plans), []int{0, 1, 1, 0, 2, 3}; !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
