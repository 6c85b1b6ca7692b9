package weld

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/units"
)

// boxByPolygon sums the outline of a box, corner by corner in small steps, each point
// carried along the axis to where the plane of the cut meets it: a second way that
// knows no sides and no ellipse.
func boxByPolygon(h, b, r, degrees float64) float64 {
	const steps = 4000
	var xs, ys []float64 // x lies in the plane of the lean
	for corner := range 4 {
		cx, cy := h/2-r, b/2-r
		if corner == 1 || corner == 2 {
			cx = -cx
		}
		if corner > 1 {
			cy = -cy
		}
		for i := range steps + 1 {
			s, c := math.Sincos((float64(corner) + float64(i)/steps) * math.Pi / 2)
			xs, ys = append(xs, cx+r*c), append(ys, cy+r*s)
		}
	}
	slope, sum := 1/math.Tan(degrees*math.Pi/180), 0.0
	for i := range xs {
		k := (i + 1) % len(xs)
		dx, dy := xs[k]-xs[i], ys[k]-ys[i]
		sum += math.Sqrt(dx*dx + dy*dy + dx*slope*dx*slope)
	}
	return sum
}

func TestALeaningBoxIsTheSumOfItsOutline(t *testing.T) {
	for _, c := range [][4]float64{{100, 50, 8, 45}, {50, 100, 8, 45}, {60, 60, 8, 45}, {120, 60, 0, 60}, {40, 40, 20, 30}, {80, 80, 10, 90}, {200, 100, 15, 75}} {
		got, err := BoxFaceLength(units.MM(c[0]), units.MM(c[1]), units.MM(c[2]), units.Degree(c[3]))
		if want := boxByPolygon(c[0], c[1], c[2], c[3]); err != nil || math.Abs(float64(got)-want) > 1e-5*want {
			t.Errorf("%v: %.4f, by its outline %.4f (%v)", c, got, want, err)
		}
	}
	// Sharp corners by hand: 2 x 50 + 2 x 100 √2.
	if got, err := BoxFaceLength(100, 50, 0, 45); err != nil || math.Abs(float64(got)-382.8427) > 1e-3 {
		t.Errorf("sharp: %v (%v)", got, err)
	}
}

// A box all of whose corners are round is a round tube; cut square it has its way
// round; the more it leans, and the longer the side in the plane, the longer the seam.
func TestALeaningBoxBetweenItsNeighbours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, b := units.MM(rapid.Float64Range(10, 400).Draw(t, "h")), units.MM(rapid.Float64Range(10, 400).Draw(t, "b"))
		r := units.MM(rapid.Float64Range(0, float64(min(h, b))/2).Draw(t, "r"))
		angle := units.Degree(rapid.Float64Range(30, 89).Draw(t, "angle"))
		leaning, err1 := BoxFaceLength(h, b, r, angle)
		square, err2 := BoxFaceLength(h, b, r, 90)
		round, err3 := BoxPerimeter(h, b, r)
		tube, err4 := BoxFaceLength(b, b, b/2, angle)
		ellipse, err5 := FaceLength(b, angle)
		turned, err6 := BoxFaceLength(b, h, r, angle)
		if err := errors.Join(err1, err2, err3, err4, err5, err6); err != nil {
			t.Fatal(err)
		}
		off := func(a, b units.MM) bool { return math.Abs(float64(a-b)) > 1e-9*float64(b) }
		if off(square, round) || off(tube, ellipse) || leaning < square || h > b && leaning < turned {
			t.Fatalf("leaning %v, square %v of %v, tube %v of %v, turned %v", leaning, square, round, tube, ellipse, turned)
		}
	})
}

func TestALeaningBoxHasLimits(t *testing.T) {
	for _, c := range [][4]float64{{0, 50, 5, 45}, {100, 6000, 5, 45}, {100, 50, 26, 45}, {100, 50, -1, 45}, {100, 50, 5, 29}, {100, 50, 5, 91}, {math.NaN(), 50, 5, 45}, {100, 50, 5, math.Inf(1)}} {
		if v, err := BoxFaceLength(units.MM(c[0]), units.MM(c[1]), units.MM(c[2]), units.Degree(c[3])); !errors.Is(err, ErrRange) {
			t.Errorf("%v: %v (%v)", c, v, err)
		}
	}
}
