package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// Every kind from a joint as the reader gives it, with the drawn area by hand. What
// is blank is filled from the table of preparations, which stands in the remark.
func TestKindsByHandGeometry(t *testing.T) {
	set, shop := world(t)
	tan := func(d float64) float64 { return math.Tan(d * math.Pi / 180) }
	sin := func(d float64) float64 { return math.Sin(d * math.Pi / 180) }
	leg := func(a, b float64) joint.Size { return joint.Size{Means: joint.Leg, A: units.MM(a), B: units.MM(b)} }
	pen := func(s float64) joint.Size { return joint.Size{Means: joint.Penetration, A: units.MM(s)} }
	throat := func(a float64) joint.Size { return joint.Size{Means: joint.Throat, A: units.MM(a)} }
	flare := func(r, h float64) float64 { return r*h - h*math.Sqrt(r*r-h*h)/2 - r*r*math.Asin(h/r)/2 }
	for name, c := range map[string]struct {
		j    joint.Joint
		want float64
	}{
		"fillet 6x8":                       {joint.Joint{Detail: &joint.Detail{Kind: joint.Fillet, Size: leg(6, 8), T1: 8, T2: 8}}, 24},
		"fillet z6 at 60":                  {joint.Joint{Detail: &joint.Detail{Kind: joint.Fillet, Size: leg(6, 0), T1: 8, T2: 8, Angle: 60}}, 18 * sin(60)},
		"fillet a4 at 120":                 {joint.Joint{Detail: &joint.Detail{Kind: joint.Fillet, Size: throat(4), T1: 8, T2: 8, Angle: 120}}, 16 * tan(60)},
		"fillet a4 at 60, both sides":      {joint.Joint{Detail: &joint.Detail{Kind: joint.Fillet, Size: throat(4), T1: 8, T2: 8, Angle: 60, Sides: 2}}, 16 * (tan(30) + tan(60)) / 2},
		"lap z4":                           {joint.Joint{Detail: &joint.Detail{Kind: joint.Lap, Size: leg(4, 0), T1: 4, T2: 4}}, 8},
		"corner, blank":                    {joint.Joint{Detail: &joint.Detail{Kind: joint.Corner, T1: 6, T2: 8}}, 24},
		"corner, half open":                {joint.Joint{Detail: &joint.Detail{Kind: joint.Corner, Open: joint.HalfOpen, T1: 6, T2: 8}}, 12},
		"corner z3, closed":                {joint.Joint{Detail: &joint.Detail{Kind: joint.Corner, Open: joint.Closed, Size: leg(3, 0), T1: 6, T2: 6}}, 4.5},
		"edge, blank":                      {joint.Joint{Detail: &joint.Detail{Kind: joint.Edge, T1: 3, T2: 4}}, 2.0 / 3 * 7 * 3},
		"square, gap 1.1":                  {joint.Joint{Detail: &joint.Detail{Kind: joint.SquareButt, T1: 3, T2: 3}}, 3.3},
		"square s4 both, gap 1":            {joint.Joint{Detail: &joint.Detail{Kind: joint.SquareButt, Size: pen(4), T1: 10, T2: 10, Gap: 1, GapGiven: true, Sides: 2}}, 8},
		"V 60, gap 2, face 2":              {joint.Joint{Detail: &joint.Detail{Kind: joint.SingleV, T1: 12, T2: 12}}, 24 + 100*tan(30)},
		"V s8, closed":                     {joint.Joint{Detail: &joint.Detail{Kind: joint.SingleV, Size: pen(8), T1: 20, T2: 20}}, 64 * tan(30)},
		"V 12(8), closed":                  {joint.Joint{Detail: &joint.Detail{Kind: joint.SingleV, Size: pen(8), Depth: 12, T1: 20, T2: 20}}, 144 * tan(30)},
		"V with a bar 45, 6.4, 0":          {joint.Joint{Detail: &joint.Detail{Kind: joint.SingleV, T1: 12, T2: 12, Backing: "bar"}}, 6.4*12 + 144*tan(22.5)},
		"bevel with a bar 30, 4.8, 0":      {joint.Joint{Detail: &joint.Detail{Kind: joint.SingleBevel, T1: 12, T2: 12, Backing: "bar"}}, 4.8*12 + 72*tan(30)},
		"bevel s8, closed":                 {joint.Joint{Detail: &joint.Detail{Kind: joint.SingleBevel, Size: pen(8), T1: 20, T2: 20}}, 32},
		"bevel gouged 45, 1.5, 1.5":        {joint.Joint{Detail: &joint.Detail{Kind: joint.SingleBevel, T1: 12, T2: 12, Backing: "gouge"}}, 18 + 10.5*10.5/2},
		"double V, halves of 23":           {joint.Joint{Detail: &joint.Detail{Kind: joint.DoubleV, T1: 25, T2: 25}}, 50 + 2*11.5*11.5*tan(30)},
		"double V, first side 15":          {joint.Joint{Detail: &joint.Detail{Kind: joint.DoubleV, Depth: 15, T1: 25, T2: 25}}, 50 + (225+64)*tan(30)},
		"double V s8, closed":              {joint.Joint{Detail: &joint.Detail{Kind: joint.DoubleV, Size: pen(8), T1: 30, T2: 30}}, 2 * 64 * tan(30)},
		"double bevel, halves of 23":       {joint.Joint{Detail: &joint.Detail{Kind: joint.DoubleBevel, T1: 25, T2: 25}}, 50 + 11.5*11.5},
		"flare bevel, wall 5, R 10":        {joint.Joint{Detail: &joint.Detail{Kind: joint.FlareBevel, T1: 5, T2: 8}}, 100 * (1 - math.Pi/4)},
		"flare V, R 10 given":              {joint.Joint{Detail: &joint.Detail{Kind: joint.FlareV, T1: 5, T2: 5, Radius: 10}}, 200 * (1 - math.Pi/4)},
		"flare bevel of a tube, 5 filled":  {joint.Joint{Part1: "CHS 26.9x3", Detail: &joint.Detail{Kind: joint.FlareBevel, Size: leg(5, 0), T2: 8}}, 13.45*5 - 5*math.Sqrt(13.45*13.45-25)/2 - 13.45*13.45*math.Asin(5/13.45)/2},
		"flare bevel a4 in R 12, 8.5 deep": {joint.Joint{Detail: &joint.Detail{Kind: joint.FlareBevel, Size: throat(4), T1: 6, T2: 8}}, flare(12, 8.5)},
		"flare bevel a12, more than flush": {joint.Joint{Detail: &joint.Detail{Kind: joint.FlareBevel, Size: throat(12), T1: 6, T2: 8}}, 144 * (1 - math.Pi/4)},
		"flare V a8 in R 12, 11 deep":      {joint.Joint{Detail: &joint.Detail{Kind: joint.FlareV, Size: throat(8), T1: 6, T2: 6}}, 2 * flare(12, 11)},
		"flare bevel a3, self-shielded":    {joint.Joint{Detail: &joint.Detail{Kind: joint.FlareBevel, Size: throat(3), T1: 6, T2: 8, Process: "114"}}, flare(12, 11.25)},
		"plug 14":                          {joint.Joint{Detail: &joint.Detail{Kind: joint.Plug, Size: leg(14, 0), T1: 6, T2: 8}}, 49 * math.Pi},
	} {
		j := c.j.Apart()
		j.Mark, j.Qty, j.Sides, j.Material, j.Position = name, 1, max(j.Sides, 1), "S235", "PA"
		if j.Kind != joint.Plug {
			j.Length = 1000
		}
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if !p.Settings || math.Abs(float64(p.AreaDrawn)-c.want) > 1e-9*c.want {
			t.Errorf("%s: area %.4f, by hand %.4f mm² (%s)", name, p.AreaDrawn, c.want, p.NoSettings)
		}
	}
}

// A V in 12 mm gouged from the back: face 1.5 + 2 mm to sound metal with a radius
// of 4 mm is a segment of 16 acos(0.5/4) - 0.5 √(28 - 12.25) = 21.17 mm². All of
// it is laid again, under a cap as wide as the gouge.
func TestGougedMetalIsReplaced(t *testing.T) {
	set, shop := world(t)
	j := joint.Joint{Mark: "G", Qty: 1, Length: 1000, Detail: &joint.Detail{Sides: 1, Kind: joint.SingleV, T1: 12, T2: 12, Backing: "gouge", Material: "S235", Position: "PA"}}
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	tan30 := math.Tan(math.Pi / 6)
	half := math.Sqrt(2*4*3.5 - 3.5*3.5)
	gouge := 16*math.Acos(0.5/4) - 0.5*half
	drawn := 18 + 10.5*10.5*tan30
	front := 2.0 / 3 * (1.5 + 21*tan30 + 2) * float64(shop.CapHeight)
	back := 2.0 / 3 * (2*half + 2) * float64(shop.CapHeight)
	if want := drawn + front + gouge + back; math.Abs(float64(p.Area)-want) > 1e-9*want {
		t.Errorf("area %.4f, by hand %.4f", p.Area, want)
	}
	side2 := 0.0
	for _, r := range p.Runs {
		if r.Side == 2 {
			side2 += float64(r.Area)
		}
	}
	if math.Abs(side2-gouge-back) > 1e-9*side2 {
		t.Errorf("the back holds %.4f mm², by hand %.4f", side2, gouge+back)
	}
	if u := p.Prep.Gouge; math.Abs(float64(u.Depth)-3.5) > 1e-9 || math.Abs(float64(u.Width)-2*half) > 1e-9 {
		t.Errorf("gouged %v, by hand 3.5 deep and %.4f wide", u, 2*half)
	}
}
