package weld

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/units"
)

// point is where a point of the template comes to lie once it is wrapped round the
// branch: the chord's axis is that of z, the axes cross at the origin. It knows
// nothing of the formula of the cut.
func point(w Wrap, branch, angle float64, x units.MM) (px, py, pz float64) {
	r, theta := branch/2, angle*math.Pi/180
	along := float64(w.Tip() + w.At(x))
	phi := math.Pi/2 + float64(x)/r
	u, v := r*math.Cos(phi), r*math.Sin(phi) // across the plane of the axes, and in it
	return u, along*math.Sin(theta) - v*math.Cos(theta), along*math.Cos(theta) + v*math.Sin(theta)
}

// Every point of the line lies on the chord's outside and on the branch's.
func TestTheCutLiesOnBothTubes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := rapid.Float64Range(20, 1000).Draw(t, "chord")
		branch := chord * rapid.Float64Range(0.05, 1).Draw(t, "branch over chord")
		angle := rapid.OneOf(rapid.Float64Range(30, 90), rapid.Just(90.0)).Draw(t, "angle")
		w, err := SaddleWrap(units.MM(branch), units.MM(chord), units.Degree(angle))
		if err != nil {
			t.Fatal(err)
		}
		theta := angle * math.Pi / 180
		for i := range 97 {
			x := w.Round() * units.MM(i) / 96
			px, py, pz := point(w, branch, angle, x)
			onChord := math.Hypot(px, py) - chord/2
			along := py*math.Sin(theta) + pz*math.Cos(theta) // on the branch's axis
			onBranch := math.Sqrt(max(0, px*px+py*py+pz*pz-along*along)) - branch/2
			if math.Abs(onChord) > 1e-9 || math.Abs(onBranch) > 1e-9*chord {
				t.Fatalf("at x %v: %g off the chord, %g off the branch", x, onChord, onBranch)
			}
		}
	})
}

// Both halves of the line are mirror images, nothing lies before the longest point,
// something lies on it, and nothing lies further back than the heel.
func TestTheCutIsEvenAndReachesItsLongestPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := units.MM(rapid.Float64Range(20, 1000).Draw(t, "chord"))
		branch := chord * units.MM(rapid.Float64Range(0.05, 1).Draw(t, "branch over chord"))
		angle := units.Degree(rapid.Float64Range(30, 90).Draw(t, "angle"))
		saddle, err1 := SaddleWrap(branch, chord, angle)
		face, err2 := FaceWrap(branch, angle)
		if err := first(err1, err2); err != nil {
			t.Fatal(err)
		}
		for _, w := range []Wrap{saddle, face} {
			least, most, back := math.Inf(1), 0.0, 0.0
			const n = 2000
			for i := range n + 1 {
				x := w.Round() * units.MM(i) / n
				y := float64(w.At(x))
				back = math.Min(back, float64(w.along(w.r, math.Cos(float64(x)/w.r))-w.least()))
				least, most = min(least, y), max(most, y)
				if other := float64(w.At(w.Round() - x)); math.Abs(y-other) > 1e-9*float64(chord) {
					t.Fatalf("at %v %v, at its mirror %v", x, y, other)
				}
			}
			// The longest point of equal tubes is a corner between two steps.
			corner := math.Pi * float64(branch) / n * 3
			if back < -1e-9*float64(chord) || least > corner || math.Abs(most-float64(w.Depth())) > 1e-9*float64(chord) {
				t.Fatalf("%v on %v at %v: from %v to %v, deepest %v", branch, chord, angle, least, most, w.Depth())
			}
		}
	})
}

// The limits known by other ways: a square branch is R − √(R² − r²) deep; equal
// tubes at a right angle meet in two planes at 45°; a thin branch meets a flat face.
func TestLimitsOfTheCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		big := rapid.Float64Range(10, 500).Draw(t, "chord's radius")
		r := big * rapid.Float64Range(0.02, 1).Draw(t, "branch over chord")
		angle := rapid.Float64Range(30, 90).Draw(t, "angle")
		square, err1 := SaddleWrap(units.MM(2*r), units.MM(2*big), 90)
		equal, err2 := SaddleWrap(units.MM(2*r), units.MM(2*r), 90)
		thin, err3 := SaddleWrap(units.MM(2*r), 5000, units.Degree(angle))
		face, err4 := FaceWrap(units.MM(2*r), units.Degree(angle))
		if err := first(err1, err2, err3, err4); err != nil {
			t.Fatal(err)
		}
		if want := big - math.Sqrt(big*big-r*r); math.Abs(float64(square.Depth())-want) > 1e-9*big {
			t.Fatalf("square: %v deep, want %v", square.Depth(), want)
		}
		if want := 2 * r / math.Tan(angle*math.Pi/180); math.Abs(float64(face.Depth())-want) > 1e-9*big {
			t.Fatalf("face: %v deep, want %v", face.Depth(), want)
		}
		for i := range 49 {
			x := equal.Round() * units.MM(i) / 48
			if want := r * math.Abs(math.Cos(float64(x)/r)); math.Abs(float64(equal.At(x))-want) > 1e-9*r {
				t.Fatalf("equal tubes at %v: %v, want %v", x, equal.At(x), want)
			}
			// The chord's face falls away by r²/2R under the branch's sides.
			if off := math.Abs(float64(thin.At(x) - face.At(x))); off > 1.5*r*r/2500 {
				t.Fatalf("on a chord of 5 m at %v: %v, on a face %v", x, thin.At(x), face.At(x))
			}
		}
	})
}

// The wrapped line has the length of the seam: another formula of the same curve.
func TestTheCutIsAsLongAsItsSeam(t *testing.T) {
	for _, row := range shared(t, "saddle-length") {
		d, angle := units.MM(number(t, row["branch_d_mm"])), units.Degree(number(t, row["theta_deg"]))
		w, err := FaceWrap(d, angle)
		if row["chord_d_mm"] != "flat" {
			w, err = SaddleWrap(d, units.MM(number(t, row["chord_d_mm"])), angle)
		}
		if err != nil {
			t.Fatal(err)
		}
		const n = 20000
		sum := 0.0
		for i := range n {
			a, b := w.Round()*units.MM(i)/n, w.Round()*units.MM(i+1)/n
			sum += math.Hypot(float64(b-a), float64(w.At(b)-w.At(a)))
		}
		if want := number(t, row["exact_length_mm"]); math.Abs(sum-want) > 0.001*want {
			t.Errorf("%s on %s at %v°: the line is %.3f long, figures %.2f", row["branch_d_mm"], row["chord_d_mm"], angle, sum, want)
		}
	}
}

// Where the inner edge stands proud: at the sides of a square branch, at the toe of
// a leaning one on a face, nowhere where a tube stands square on a face.
func TestTheInnerEdge(t *testing.T) {
	square, _ := SaddleWrap(60, 100, 90)
	h, x, err := square.Proud(5)
	want := math.Sqrt(50*50-25*25) - math.Sqrt(50*50-30*30) // across the sides
	if err != nil || math.Abs(float64(h)-want) > 1e-9 || math.Abs(float64(x-square.Round()/4)) > 0.5 {
		t.Errorf("square branch: %v at %v, want %v at the side (%v)", h, x, want, err)
	}
	leaning, _ := FaceWrap(60, 45)
	if h, x, err = leaning.Proud(5); err != nil || math.Abs(float64(h)-5) > 1e-9 || math.Abs(float64(x-leaning.Round()/2)) > 0.5 {
		t.Errorf("leaning on a face: %v at %v, want 5 at the toe (%v)", h, x, err)
	}
	flat, _ := FaceWrap(60, 90)
	if h, _, err = flat.Proud(5); err != nil || h != 0 || flat.Depth() != 0 {
		t.Errorf("square on a face: proud by %v, deep %v (%v)", h, flat.Depth(), err)
	}
}

func TestMitresHalveTheirCorner(t *testing.T) {
	m, err1 := MitreWrap(60.3, 90)
	f, err2 := FaceWrap(60.3, 45)
	if err1 != nil || err2 != nil || m != f || math.Abs(float64(m.Depth())-60.3) > 1e-9 {
		t.Errorf("a corner of 90° is %v deep, want the diameter (%v, %v)", m.Depth(), err1, err2)
	}
	if straight, err := MitreWrap(60.3, 180); err != nil || straight.Depth() != 0 {
		t.Errorf("a straight run is %v deep (%v)", straight.Depth(), err)
	}
}

func TestCutsOutsideTheirLimitsAreRefused(t *testing.T) {
	anything := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-10, 6000), rapid.SampledFrom([]float64{0, 30, 60, 90, 180, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, 5e-324}))
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := anything.Draw(t, "a"), anything.Draw(t, "b"), anything.Draw(t, "c")
		for name, f := range map[string]func() (Wrap, error){
			"saddle": func() (Wrap, error) { return SaddleWrap(units.MM(a), units.MM(b), units.Degree(c)) },
			"face":   func() (Wrap, error) { return FaceWrap(units.MM(a), units.Degree(c)) },
			"mitre":  func() (Wrap, error) { return MitreWrap(units.MM(a), units.Degree(c)) },
		} {
			w, err := f()
			if err != nil {
				if !errors.Is(err, ErrRange) {
					t.Fatalf("%s of %v %v %v: %v", name, a, b, c, err)
				}
				continue
			}
			h, x, err := w.Proud(units.MM(b))
			for _, v := range []units.MM{w.Round(), w.At(w.Round() / 3), w.Depth(), w.Tip(), h, x} {
				if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
					t.Fatalf("%s of %v %v %v: %v (%v)", name, a, b, c, v, err)
				}
			}
		}
	})
}
