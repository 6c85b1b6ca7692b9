package sketch

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// grooves are the kinds with a prepared or square groove.
var grooves = []joint.Kind{joint.SquareButt, joint.SingleV, joint.SingleBevel, joint.DoubleV, joint.DoubleBevel,
	joint.SingleU, joint.SingleJ, joint.DoubleU, joint.DoubleJ}

// runsOf shares an area between passes in layers of one, two, three ... beads.
func runsOf(area float64, n int, side int, first int) []plan.Run {
	var out []plan.Run
	layer, bead := 1, 1
	for i := range n {
		out = append(out, plan.Run{Number: first + i, Layer: layer, Bead: bead, Side: side, Area: units.MM2(area / float64(n))})
		if bead++; bead > layer {
			layer, bead = layer+1, 1
		}
	}
	return out
}

func filletPlan(z, cap float64, sides, passes int) *plan.Plan {
	area := z*z/2 + cap
	return &plan.Plan{Manner: &plan.Manner{
		Prep: plan.Prep{Kind: joint.Fillet, LegA: units.MM(z), LegB: units.MM(z), WeldLegA: units.MM(z), WeldLegB: units.MM(z),
			Throat: units.MM(z / math.Sqrt2), T1: 8, T2: 10, Angle: 90},
		Area: units.MM2(area), Runs: runsOf(area, passes, 1, 1)},
		Joint: &joint.Joint{Detail: &joint.Detail{Sides: sides}},
	}
}

// near compares areas within a thousandth.
func near(t rapid.TB, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-3*math.Max(want, 1) {
		t.Errorf("%s: %.4f mm², want %.4f", what, got, want)
	}
}

func TestFilletPassesHaveTheirAreas(t *testing.T) {
	for passes := 1; passes <= 10; passes++ {
		p := filletPlan(12, 6, 1, passes)
		s, ok := Build(p)
		if !ok || len(s.Beads) != passes {
			t.Fatalf("%d passes: %d beads, %v", passes, len(s.Beads), ok)
		}
		near(t, "seam", s.Seam(), 72) // the flat triangle of legs of 12 mm
		for i, b := range s.Beads {
			near(t, "pass", b.Outline.Area(), 72*float64(p.Runs[i].Area)/float64(p.Area))
			if b.Number != i+1 {
				t.Errorf("bead %d is number %d", i, b.Number)
			}
		}
	}
}

// The drawn weld without a cap is the triangle of the legs, on the plates.
func TestFilletStandsOnItsPlates(t *testing.T) {
	s, _ := Build(filletPlan(6, 0, 1, 1))
	_, high := s.Bounds()
	low, up := bounds(s.Beads[0].Outline)
	if low != (Point{0, 0}) || math.Abs(up.X-6) > 1e-9 || math.Abs(up.Y-6) > 1e-9 {
		t.Errorf("the weld lies from %v to %v, want 0,0 to 6,6", low, up)
	}
	if plate := s.Plates[0].Outline; high.Y < 6 || plate[2].Y != 0 || plate[0].Y != -10 {
		t.Errorf("the plate t2 does not lie from -10 to 0: %v", plate)
	}
	if w := s.Plates[1].Outline[0].X - s.Plates[1].Outline[3].X; math.Abs(w-8) > 1e-9 {
		t.Errorf("the plate t1 is %.2f mm thick, want 8", w)
	}
}

func bounds(g Polygon) (Point, Point) {
	return func() (Point, Point) { s := Sketch{Beads: []Bead{{Outline: g}}}; return s.Bounds() }()
}

func TestSecondSideIsDrawnButNotCounted(t *testing.T) {
	for _, k := range []joint.Kind{joint.Fillet, joint.Lap} {
		for _, angle := range []units.Degree{90, 60, 120} {
			p := filletPlan(6, 2, 2, 3)
			p.Prep.Kind, p.Prep.Angle = k, angle
			want := 18.0
			if k == joint.Fillet {
				want *= math.Sin(float64(angle) * math.Pi / 180)
			}
			s, _ := Build(p)
			near(t, string(k), s.Seam(), want)
			other := 0.0
			for _, b := range s.Beads {
				if b.Mirror {
					other += b.Outline.Area()
				}
			}
			near(t, string(k)+" second side", other, want)
		}
	}
}

func TestGrooveFacesAndAngle(t *testing.T) {
	p := &plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: joint.SingleV, T1: 12, T2: 12, Angle: 60, Gap: 2, RootFace: 2, Depth: 10}}, Joint: &joint.Joint{Detail: &joint.Detail{}}}
	// 12 x 2 of gap and 10² tan 30° of the V.
	want := 24 + 100*math.Tan(math.Pi/6)
	p.Area = units.MM2(want)
	p.Runs = runsOf(want, 3, 1, 1)
	s, ok := Build(p)
	if !ok {
		t.Fatal("not drawn")
	}
	near(t, "single V", s.Seam(), want)
	low, high := s.Bounds()
	if low.Y < -12-1e-6 || high.Y > 1e-6 {
		t.Errorf("without allowance nothing stands out of the plate: %v %v", low, high)
	}
	if c := s.Corners[0]; math.Abs(c.Degrees-60) > 1e-9 {
		t.Errorf("the angle is %.2f°, want 60", c.Degrees)
	}
}

// A weld of partial penetration has no root to stand out below: all that its area has
// beyond the groove is cap.
func TestPartialPenetrationHasNoRootBead(t *testing.T) {
	of := func(depth units.MM) float64 {
		j := &joint.Joint{Detail: &joint.Detail{Size: joint.Size{A: depth, Means: joint.Penetration}}}
		p := &plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: joint.SingleBevel, T1: 16, T2: 16, Angle: 45, RootFace: 8, Depth: 8}, Area: 45}, Joint: j}
		p.Runs = runsOf(45, 2, 1, 1)
		s, ok := Build(p)
		if !ok {
			t.Fatal("not drawn")
		}
		near(t, "metal", s.Seam(), 45)
		low, _ := s.Bounds()
		return low.Y
	}
	if low := of(8); low < -16-1e-6 {
		t.Errorf("8 mm deep in 16 mm: drawn down to %.2f mm", low)
	}
	if low := of(16); low > -16-1e-6 {
		t.Errorf("welded through 16 mm: no root bead, lowest %.2f mm", low)
	}
}

// Passes drawn add up to the area planned, whatever the groove.
func TestGroovePassesAddUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		k := rapid.SampledFrom(grooves).Draw(rt, "kind")
		thick := rapid.Float64Range(2, 60).Draw(rt, "t")
		face := rapid.Float64Range(0, thick/4).Draw(rt, "face")
		r := plan.Prep{Kind: k, T1: units.MM(thick), T2: units.MM(thick), Gap: units.MM(rapid.Float64Range(0.2, 6).Draw(rt, "gap")),
			RootFace: units.MM(face), Angle: units.Degree(rapid.Float64Range(10, 90).Draw(rt, "angle")), Radius: units.MM(rapid.Float64Range(0, 8).Draw(rt, "r"))}
		p := &plan.Plan{Manner: &plan.Manner{Prep: r}, Joint: &joint.Joint{Detail: &joint.Detail{Sides: 1}}}
		c := measures(p)
		groove := c.region(c.profile(c.left), c.profile(c.right), p).Area()
		total := groove * rapid.Float64Range(1, 1.4).Draw(rt, "over")
		n := rapid.IntRange(1, 12).Draw(rt, "passes")
		p.Area = units.MM2(total)
		p.Runs = runsOf(total, n, 1, 1)
		if c.double {
			share := rapid.Float64Range(0.35, 0.65).Draw(rt, "share")
			p.Runs = append(runsOf(total*share, n, 1, 1), runsOf(total*(1-share), n, 2, n+1)...)
		}
		s, ok := Build(p)
		if !ok {
			rt.Fatal("not drawn")
		}
		near(rt, string(k), s.Seam(), total)
		for i, b := range s.Beads {
			near(rt, "pass", b.Outline.Area(), float64(p.Runs[i].Area))
		}
	})
}

// The root of a double groove lies between its sides: side 1 above, side 2 below.
func TestDoubleGrooveSides(t *testing.T) {
	p := &plan.Plan{Manner: &plan.Manner{Prep: plan.Prep{Kind: joint.DoubleV, T1: 20, T2: 20, Angle: 60, Gap: 2, RootFace: 2, Depth: 9, Depth2: 9}, Area: 150}, Joint: &joint.Joint{Detail: &joint.Detail{}}}
	p.Runs = append(runsOf(80, 3, 1, 1), runsOf(70, 3, 2, 4)...)
	for i := range p.Runs {
		p.Runs[i].Layer = i%3 + 1
	}
	s, _ := Build(p)
	for i := 1; i < 3; i++ {
		if s.Beads[i].Outline.Centre().Y <= s.Beads[i-1].Outline.Centre().Y {
			t.Errorf("pass %d does not lie above pass %d", i+1, i)
		}
	}
	if s.Beads[3].Outline.Centre().Y <= s.Beads[5].Outline.Centre().Y || s.Beads[3].Outline.Centre().Y >= s.Beads[0].Outline.Centre().Y {
		t.Error("side 2 is not built up downwards from below the root")
	}
}

func TestOtherKinds(t *testing.T) {
	for _, c := range []struct {
		kind joint.Kind
		prep plan.Prep
		area units.MM2
	}{
		{joint.Lap, plan.Prep{LegA: 3, T1: 3, T2: 4, Angle: 90}, 4.5},
		{joint.Corner, plan.Prep{LegA: 4, T1: 4, T2: 4}, 8},
		{joint.Edge, plan.Prep{T1: 3, T2: 3}, 8},
		{joint.FlareBevel, plan.Prep{T1: 4, T2: 6, Radius: 8}, 24},
		{joint.FlareV, plan.Prep{T1: 4, T2: 4, Radius: 8}, 20},
		{joint.Plug, plan.Prep{T1: 6, T2: 8}, 72},
		{joint.Slot, plan.Prep{T1: 6, T2: 8}, 72},
	} {
		c.prep.Kind = c.kind
		p := &plan.Plan{Manner: &plan.Manner{Prep: c.prep, Area: c.area, Runs: runsOf(float64(c.area), 3, 1, 1)}, Joint: &joint.Joint{Detail: &joint.Detail{Sides: 1}}}
		s, ok := Build(p)
		if !ok || len(s.Plates) != 2 && c.kind != joint.Plug && c.kind != joint.Slot {
			t.Errorf("%s: %d plates, %v", c.kind, len(s.Plates), ok)
		}
		near(t, string(c.kind), s.Seam(), float64(c.area))
	}
}

// Whatever a plan holds, the sketch is finite or there is none.
func TestAnyPlanIsSafe(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mm := func(name string) units.MM {
			return units.MM(rapid.OneOf(rapid.Float64Range(-5, 500), rapid.SampledFrom([]float64{0, 1e-9, math.NaN(), math.Inf(1)})).Draw(rt, name))
		}
		kinds := append([]joint.Kind{joint.Fillet, joint.Lap, joint.Corner, joint.Edge, joint.FlareBevel, joint.FlareV, joint.Plug, joint.NoKind}, grooves...)
		p := &plan.Plan{Manner: &plan.Manner{
			Prep: plan.Prep{Kind: rapid.SampledFrom(kinds).Draw(rt, "kind"), LegA: mm("a"), LegB: mm("b"), WeldLegA: mm("wa"), WeldLegB: mm("wb"),
				Throat: mm("throat"), T1: mm("t1"), T2: mm("t2"), Angle: units.Degree(mm("angle")), Gap: mm("gap"), RootFace: mm("face"),
				Depth: mm("d"), Depth2: mm("d2"), Radius: mm("r")},
			Area: units.MM2(mm("area")), Runs: runsOf(float64(mm("runs")), rapid.IntRange(0, 5).Draw(rt, "n"), rapid.IntRange(1, 2).Draw(rt, "side"), 1)},
			Joint: &joint.Joint{Detail: &joint.Detail{Sides: rapid.IntRange(0, 2).Draw(rt, "sides")}},
		}
		s, ok := Build(p)
		if ok && !s.finite() {
			rt.Fatalf("not finite: %+v", s)
		}
	})
}

// A bar lies on the undersides of both parts: of unequal ones the thicker stands above the
// weld, which fills the thickness of the thinner, and no part reaches into the bar.
func TestBarLiesOnBothUndersides(t *testing.T) {
	for _, kind := range grooves {
		for _, backing := range []string{"bar", "copper", "ceramic"} {
			for _, thick := range [][2]units.MM{{10, 20}, {20, 10}, {10, 12}, {10, 10}} {
				p := &plan.Plan{Manner: &plan.Manner{
					Prep: plan.Prep{Kind: kind, T1: thick[0], T2: thick[1], Gap: 6, RootFace: 1, Angle: 45, Radius: 4, Backing: backing},
					Area: 150, Runs: runsOf(150, 3, 1, 1)}, Joint: &joint.Joint{Detail: &joint.Detail{Sides: 1}}}
				s, ok := Build(p)
				if !ok {
					t.Fatalf("%s is not drawn", kind)
				}
				const under = -10 // of the thinner part
				for _, pl := range s.Plates {
					low, high := math.Inf(1), math.Inf(-1)
					for _, q := range pl.Outline {
						low, high = min(low, q.Y), max(high, q.Y)
					}
					want := [2]float64{under, under}
					switch pl.Name {
					case "t1":
						want[1] += float64(thick[0])
					case "t2":
						want[1] += float64(thick[1])
					case "backing":
						want = [2]float64{low, under}
					}
					if math.Abs(low-want[0]) > 1e-9 || math.Abs(high-want[1]) > 1e-9 {
						t.Errorf("%s, %s, %v: %s from %.2f to %.2f, want %.2f to %.2f", kind, backing, thick, pl.Name, low, high, want[0], want[1])
					}
				}
				for _, d := range s.Dims {
					if d.Name == "t1" || d.Name == "t2" {
						if math.Abs(d.To.Sub(d.From).Len()-d.Value) > 1e-9 || math.Abs(min(d.From.Y, d.To.Y)-under) > 1e-9 {
							t.Errorf("%s: %s is measured from %v to %v", kind, d.Name, d.From, d.To)
						}
					}
				}
				near(t, string(kind), s.Seam(), 150)
			}
		}
	}
}
