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

func TestStraightGroovesAgreeWithTheirPolygons(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.Float64Range(1, 80).Draw(t, "thickness")
		face := rapid.Float64Range(0, 0.5).Draw(t, "face") * thick
		gap := rapid.Float64Range(0, 6).Draw(t, "gap")
		angle := rapid.Float64Range(1, 70).Draw(t, "angle")
		share := rapid.Float64Range(0.2, 0.8).Draw(t, "share")
		for _, g := range []Groove{
			SingleV(units.MM(thick), units.MM(gap), units.MM(face), units.Degree(angle)),
			SingleBevel(units.MM(thick), units.MM(gap), units.MM(face), units.Degree(angle)),
			SingleV(units.MM(thick), units.MM(gap), units.MM(face), units.Degree(angle)).Doubled(share),
			SingleBevel(units.MM(thick), units.MM(gap), units.MM(face), units.Degree(angle)).Doubled(share),
		} {
			area, err := g.Drawn()
			if err != nil {
				t.Fatal(err)
			}
			if got := shoelace(g.Outline()); math.Abs(got-float64(area)) > 1e-9*math.Max(1, float64(area)) {
				t.Fatalf("polygon %.9f, formula %.9f", got, area)
			}
		}
	})
}
