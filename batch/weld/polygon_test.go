package weld

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/units"
)

// shoelace is the area of a polygon by its corners: a second way to every area.
func shoelace(p []Point) float64 {
	sum := 0.0
	for i, a := range p {
		b := p[(i+1)%len(p)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum / 2
}

func TestAreasAgreeWithThePolygonsOfTheirOutlines(t *testing.T) {
	// An arc drawn with 24 chords lies outside or inside its circle by a small
	// part of the radius squared; straight shapes must agree exactly.
	for name, c := range map[string]struct {
		s      Section
		within float64
	}{
		"fillet":              {Fillet{6, 6, 90}, 1e-9},
		"unequal fillet":      {Fillet{6, 8, 90}, 1e-9},
		"acute fillet":        {Fillet{6, 8, 60}, 1e-9},
		"obtuse fillet":       {Fillet{5, 8, 120}, 1e-9},
		"corner":              {Corner{4, 6, 90}, 1e-9},
		"skew corner":         {Corner{4, 6, 70}, 1e-9},
		"square butt":         {SquareButt(3, 1), 1e-9},
		"partial square":      {SquareButt(10, 1).Partial(4), 1e-9},
		"single V":            {SingleV(12, 2, 2, 60), 1e-9},
		"partial V":           {SingleV(20, 0, 2, 60).Partial(8), 1e-9},
		"single bevel":        {SingleBevel(12, 3, 1, 45), 1e-9},
		"double V":            {SingleV(20, 2, 2, 60).Doubled(0.5), 1e-9},
		"uneven double V":     {SingleV(20, 2, 2, 60).Doubled(2.0 / 3), 1e-9},
		"double bevel":        {SingleBevel(20, 2, 2, 45).Doubled(0.5), 1e-9},
		"single U":            {SingleU(25, 2, 3, 20, 6), 0.1},
		"single J":            {SingleJ(25, 2, 3, 15, 8), 0.1},
		"double U":            {SingleU(40, 2, 3, 20, 6).Doubled(0.5), 0.2},
		"U within its radius": {SingleU(5, 1, 2, 20, 6), 0.1},
		"flare bevel":         {Flare{Radius: 10}, 0.2},
		"flare bevel half":    {Flare{Radius: 10, Fill: 5, Gap: 1}, 0.1},
		"flare V":             {Flare{Radius: 8, V: true}, 0.2},
		"edge":                {Edge{3, 4, 2}, 0.1},
	} {
		area, err := c.s.Drawn()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if got := shoelace(c.s.Outline()); math.Abs(got-float64(area)) > c.within {
			t.Errorf("%s: polygon %.4f, formula %.4f", name, got, area)
		}
		if faces := c.s.Faces(); len(faces) == 0 {
			t.Errorf("%s has no face", name)
		}
	}
}

// anySection draws a section of every kind with random sizes: what a list may hold.
func anySections(t *rapid.T) map[string]Section {
	mm := func(low, high float64, name string) units.MM {
		return units.MM(rapid.Float64Range(low, high).Draw(t, name))
	}
	thick := mm(1, 80, "thickness")
	face := units.MM(rapid.Float64Range(0, 0.5).Draw(t, "face")) * thick
	gap, radius := mm(0, 6, "gap"), mm(0.5, 12, "radius")
	angle := units.Degree(rapid.Float64Range(1, 70).Draw(t, "angle"))
	share := rapid.Float64Range(0.2, 0.8).Draw(t, "share")
	legA, legB := mm(1, 40, "leg a"), mm(1, 40, "leg b")
	skew := units.Degree(rapid.Float64Range(30, 150).Draw(t, "skew"))
	prepared := units.MM(rapid.Float64Range(0.05, 0.45).Draw(t, "prepared")) * thick
	reach := prepared + units.MM(rapid.Float64Range(0, 0.05).Draw(t, "reach"))*thick
	fill := units.MM(rapid.Float64Range(0.05, 1).Draw(t, "fill")) * radius
	out := map[string]Section{
		"fillet": Fillet{legA, legB, skew}, "corner": Corner{legA, legB, skew}, "edge": Edge{legA, legB, mm(0.5, 10, "throat")},
		"flare bevel": Flare{Radius: radius, Gap: gap, Fill: fill}, "flare V": Flare{Radius: radius, Gap: gap, Fill: fill, V: true},
	}
	both := SquareButt(thick, gap)
	both.BackWelded = true
	out["square both sides, partial"] = both.Partial(prepared)
	for name, g := range map[string]Groove{
		"square": SquareButt(thick, gap), "V": SingleV(thick, gap, face, angle), "bevel": SingleBevel(thick, gap, face, angle),
		"U": SingleU(thick, gap, face, angle, radius), "J": SingleJ(thick, gap, face, angle, radius),
	} {
		out[name], out[name+" partial"], out[name+" deeper than prepared"] = g, g.Partial(prepared), g.Partial(prepared).Reaching(reach)
		if name != "square" {
			d := g.Doubled(share)
			out["double "+name], out["double "+name+" partial"], out["double "+name+" deeper"] = d, d.Partial(prepared), d.Partial(prepared).Reaching(reach)
		}
	}
	return out
}

// Every kind with random sizes: the exact area lies within what the chords of an
// arc can differ from it, a sixth of the cube of a step times the radius squared
// for each of four arcs.
func TestEveryKindAgreesWithThePolygonOfItsOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for name, s := range anySections(t) {
			area, err := s.Drawn()
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			within := 1e-9 * math.Max(1, float64(area))
			step := math.Pi / 2 / arcSteps
			switch x := s.(type) {
			case Groove:
				r := math.Max(float64(x.Front.RadiusA), float64(x.Back.RadiusA))
				within += 4 * r * r * step * step * step / 12 * arcSteps
			case Flare:
				within += 2 * float64(x.Radius*x.Radius) * step * step * step / 12 * arcSteps
			case Edge:
				within += float64(area) / (arcSteps * arcSteps) // a parabola in equal steps: 1/n² of the whole
			}
			if got := shoelace(s.Outline()); math.Abs(got-float64(area)) > within*(1+1e-9) {
				t.Fatalf("%s: polygon %.6f, formula %.6f, within %.6f: %+v", name, got, area, within, s)
			}
		}
	})
}

// The made area is the drawn polygon with parabolic caps of a tenth of a
// millimetre's slices on its faces: an independent sum.
func TestCapsAreParabolicSegments(t *testing.T) {
	slices := func(w, h float64) float64 {
		const n = 10000
		sum := 0.0
		for i := range n {
			x := (float64(i) + 0.5) / n
			sum += 4 * h * x * (1 - x) * w / n
		}
		return sum
	}
	rapid.Check(t, func(t *rapid.T) {
		over, convex := rapid.Float64Range(0, 2).Draw(t, "overweld"), rapid.Float64Range(0, 0.2).Draw(t, "convexity")
		high, root := rapid.Float64Range(0, 4).Draw(t, "cap"), rapid.Float64Range(0, 3).Draw(t, "root")
		a := Allowances{Overweld: units.MM(over), Convexity: convex, CapHeight: units.MM(high), RootHeight: units.MM(root)}
		for name, s := range anySections(t) {
			made, err := s.Made(a)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			want := 0.0
			switch x := s.(type) {
			case Fillet:
				g := x.Grown(a)
				w, _ := g.Face()
				area, _ := g.Drawn()
				want = float64(area) + slices(float64(w), convex*float64(w))
			case Corner:
				g := x.triangle()
				g.LegA, g.LegB = g.LegA+a.Overweld, g.LegB+a.Overweld
				w, _ := g.Face()
				area, _ := g.Drawn()
				want = float64(area) + slices(float64(w), convex*float64(w))
			case Edge:
				area, _ := s.Drawn()
				want = float64(area)
			default:
				area, _ := s.Drawn()
				want = float64(area)
				for _, face := range s.Faces() {
					want += slices(float64(face)+2, high)
				}
				if g, ok := s.(Groove); ok && (g.OpenRoot || g.FormedRoot) {
					want += slices(float64(g.Gap)+2, root)
				}
			}
			if math.Abs(float64(made)-want) > 1e-6*math.Max(1, want) {
				t.Fatalf("%s: made %.6f, by slices %.6f", name, made, want)
			}
		}
	})
}
