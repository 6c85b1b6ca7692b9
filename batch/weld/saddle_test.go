package weld

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/units"
)

// The same curve as points on the branch, summed chord by chord: a second way
// that knows no slopes.
func saddleByChords(d, chord, degrees float64) float64 {
	const n = 20000
	r, big, theta := d/2, chord/2, degrees*math.Pi/180
	at := func(i int) (x, y, z float64) {
		s, c := math.Sincos(2 * math.Pi * float64(i) / n)
		y = math.Sqrt(big*big - r*r*c*c)
		return r * c, y, y*math.Cos(theta)/math.Sin(theta) + r*s/math.Sin(theta)
	}
	sum := 0.0
	for i := range n {
		x1, y1, z1 := at(i)
		x2, y2, z2 := at(i + 1)
		sum += math.Sqrt((x2-x1)*(x2-x1) + (y2-y1)*(y2-y1) + (z2-z1)*(z2-z1))
	}
	return sum
}

func TestSaddlesOfTheFigures(t *testing.T) {
	rows := shared(t, "saddle-length")
	for _, row := range rows {
		d, angle := units.MM(number(t, row["branch_d_mm"])), units.Degree(number(t, row["theta_deg"]))
		var got units.MM
		var err error
		if row["chord_d_mm"] == "flat" {
			got, err = FaceLength(d, angle)
		} else {
			got, err = SaddleLength(d, units.MM(number(t, row["chord_d_mm"])), angle)
		}
		if want := number(t, row["exact_length_mm"]); err != nil || math.Abs(float64(got)-want) > 0.001*want {
			t.Errorf("%s on %s at %s°: %.3f, figures %.2f (%v)", row["branch_d_mm"], row["chord_d_mm"], row["theta_deg"], got, want, err)
		}
	}
	t.Logf("%d of %d saddle lengths held to 0.1 %%", len(rows), len(rows))
}

func TestTheSaddleIsTheSumOfItsChords(t *testing.T) {
	for _, c := range [][3]float64{{48.3, 114.3, 90}, {88.9, 168.3, 45}, {168.3, 323.9, 30}, {60.3, 61, 75}, {60.3, 60.3, 90}, {60.3, 60.3, 40}} {
		got, err := SaddleLength(units.MM(c[0]), units.MM(c[1]), units.Degree(c[2]))
		want := saddleByChords(c[0], c[1], c[2])
		if err != nil || math.Abs(float64(got)-want) > 2e-4*want {
			t.Errorf("%v: %.4f, by chords %.4f (%v)", c, got, want, err)
		}
	}
	// Two tubes of one diameter at a right angle meet in two ellipses that cross, of
	// semi-axes r and r√2; half of each is the seam. Their perimeter by Ramanujan's series.
	r := 30.15
	a, b := r*math.Sqrt2, r
	h := (a - b) * (a - b) / ((a + b) * (a + b))
	ellipse := math.Pi * (a + b) * (1 + 3*h/(10+math.Sqrt(4-3*h)))
	if got, err := SaddleLength(60.3, 60.3, 90); err != nil || math.Abs(float64(got)-ellipse) > 2e-4*ellipse {
		t.Errorf("tubes of one diameter: %.3f, ellipse %.3f (%v)", got, ellipse, err)
	}
}

func TestAWideChordIsAFlatFace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := units.MM(rapid.Float64Range(10, 50).Draw(t, "branch"))
		angle := units.Degree(rapid.Float64Range(30, 90).Draw(t, "angle"))
		flat, err1 := FaceLength(d, angle)
		wide, err2 := SaddleLength(d, 5000, angle)
		square, err3 := RoundPerimeter(d)
		if err := first(err1, err2, err3); err != nil || math.Abs(float64(wide-flat)) > 1e-3*float64(flat) || flat < square*(1-1e-9) {
			t.Fatalf("flat %v, on a chord of 5 m %v, square cut %v (%v)", flat, wide, square, err)
		}
		chord := d * units.MM(rapid.Float64Range(1, 10).Draw(t, "chord over branch"))
		saddle, err := SaddleLength(d, chord, angle)
		if err != nil || saddle < flat*(1-1e-4) {
			t.Fatalf("on a chord of %v %v, on a flat face %v (%v)", chord, saddle, flat, err)
		}
	})
}

// The superficial area that the tables of hollow sections print is the way round
// times a metre. The tables' own precision is three or four decimals of a square
// metre; some of them round the way round itself.
func TestWaysRoundOfHollowSectionsOfTheFigures(t *testing.T) {
	held, total := 0, 0
	compare := func(name, printed string, got units.MM, err error) {
		total++
		if err != nil || !near(float64(got)/1000, printed, number(t, printed), 0.005) {
			t.Errorf("%s: %.4f m²/m, printed %s (%v)", name, float64(got)/1000, printed, err)
			return
		}
		held++
	}
	for _, row := range shared(t, "sections-hollow-rect") {
		if row["published_surface_m2_per_m"] == "" || row["ro_mm"] == "" {
			continue
		}
		got, err := BoxPerimeter(units.MM(number(t, row["h_mm"])), units.MM(number(t, row["b_mm"])), units.MM(number(t, row["ro_mm"])))
		compare(row["designation"], row["published_surface_m2_per_m"], got, err)
	}
	for _, row := range shared(t, "sections-hollow-circular") {
		if row["published_surface_m2_per_m"] == "" {
			continue
		}
		got, err := RoundPerimeter(units.MM(number(t, row["d_mm"])))
		compare(row["designation"], row["published_surface_m2_per_m"], got, err)
	}
	t.Logf("%d of %d ways round held", held, total)
}

func TestAllRoundLengthsAreFinite(t *testing.T) {
	anything := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-10, 1000), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, 5e-324}))
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := anything.Draw(t, "a"), anything.Draw(t, "b"), anything.Draw(t, "c")
		for name, f := range map[string]func() (units.MM, error){
			"saddle": func() (units.MM, error) { return SaddleLength(units.MM(a), units.MM(b), units.Degree(c)) },
			"face":   func() (units.MM, error) { return FaceLength(units.MM(a), units.Degree(b)) },
			"round":  func() (units.MM, error) { return RoundPerimeter(units.MM(a)) },
			"box":    func() (units.MM, error) { return BoxPerimeter(units.MM(a), units.MM(b), units.MM(c)) },
		} {
			v, err := f()
			if err != nil && !errors.Is(err, ErrRange) || err == nil && (math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) || v <= 0) {
				t.Fatalf("%s of %v %v %v: %v (%v)", name, a, b, c, v, err)
			}
		}
	})
}
