package weld

import (
	"math"

	"seamtally/batch/units"
)

// Wrap is the line along which a round tube is cut at its end, as a paper wrapped
// round its outside shows it. The line begins and ends at the heel, the side where
// the tube leans over what it stands on; the toe lies in the middle.
//
// The outside is taken because that is where a paper lies and where the seam is
// measured. A cut square to the wall leaves the inner edge standing proud at some
// places: [Wrap.Proud] says by how much.
type Wrap struct {
	r, big   float64 // radii of the branch and, unless flat, of the chord, outside
	sin, cot float64 // of the angle between branch and chord, or branch and face
	flat     bool
}

// SaddleWrap returns the cut of a round branch on a round chord: for a way x round
// the branch from its heel, how far the cut lies back from the longest point of
// the tube, in millimetres.
//
//	s(φ) = √(R² − r² cos² φ) / sin θ + r sin φ cot θ,  φ = π/2 + x / r        (WRAP-1)
//	y(x) = s(φ) − least s        (WRAP-2)
//	least s = √(R² − r²) where that lies between heel and toe, else R / sin θ − r cot θ        (WRAP-3)
//
// Symbols: r half the branch's outside diameter d [mm]; R half the chord's D [mm];
// θ angle between the axes [°]; φ way round the branch [rad]; s way along the
// branch's axis from where the axes cross [mm]; x along the outside of the branch
// [mm], 0 and π d at the heel, π d / 2 at the toe; y along its axis [mm].
// Valid: 0 < d <= D <= 5000 mm, 30 <= θ <= 90°.
// Assumes: round tubes of nominal size, axes that cross, the outside surfaces; a
// gap for the root is not in it.
// Source: geometry, the points of the branch's outside that lie on the chord's.
// Basis: derived.
// Accuracy: exact for the sizes given; the standards let the diameter of a tube be off by 1 %.
// Errors: [ErrRange] for a diameter or an angle outside the limits, a branch wider than its chord included.
func SaddleWrap(branch, chord units.MM, angle units.Degree) (Wrap, error) {
	err := first(
		over("diameter of the chord", chord, maxTube, "mm"),
		over("diameter of the branch", branch, float64(chord), "mm"),
		within("angle of the branch", angle, leastLean, 90, "°"),
	)
	if err != nil {
		return Wrap{}, err
	}
	w := leaning(branch, angle)
	w.big = float64(chord) / 2
	return w, nil
}

// FaceWrap returns the cut of a round tube that stands on a flat face: for a way x
// round it from its heel, how far the cut lies back from the longest point, in
// millimetres. The cut itself is an ellipse.
//
//	y(x) = r cot θ (1 + cos (x / r))        (WRAP-4)
//
// Symbols: r half the outside diameter d [mm]; θ angle between the tube's axis and
// the face [°]; x along the outside [mm], 0 and π d at the heel; y along its axis [mm].
// Valid: 0 < d <= 5000 mm, 30 <= θ <= 90°.
// Assumes: a round tube of nominal size whose whole foot lies on the face.
// Source: geometry, a plane that cuts a cylinder.
// Basis: derived.
// Accuracy: exact for the sizes given.
// Errors: [ErrRange] for a diameter or an angle outside the limits.
func FaceWrap(branch units.MM, angle units.Degree) (Wrap, error) {
	err := first(over("diameter of the branch", branch, maxTube, "mm"), within("angle of the branch", angle, leastLean, 90, "°"))
	if err != nil {
		return Wrap{}, err
	}
	w := leaning(branch, angle)
	w.flat = true
	return w, nil
}

// MitreWrap returns the cut of one of two equal round tubes that meet at a corner,
// in millimetres back from the longest point: each is cut by the plane that halves
// the angle between them.
//
//	y(x) = r cot (γ / 2) (1 + cos (x / r))        (WRAP-5)
//
// Symbols: r half the outside diameter d [mm]; γ angle between the two axes [°],
// 180 where one goes on as the other; x along the outside [mm], 0 and π d on the
// inside of the corner; y along the axis [mm].
// Valid: 0 < d <= 5000 mm, 60 <= γ <= 180°.
// Assumes: two tubes of one diameter whose axes meet.
// Source: geometry, WRAP-4 for half the angle.
// Basis: derived.
// Accuracy: exact for the sizes given.
// Errors: [ErrRange] for a diameter or an angle outside the limits.
func MitreWrap(tube units.MM, corner units.Degree) (Wrap, error) {
	if err := within("angle of the corner", corner, 2*leastLean, 180, "°"); err != nil {
		return Wrap{}, err
	}
	return FaceWrap(tube, corner/2)
}

func leaning(branch units.MM, angle units.Degree) Wrap {
	sin, cos := math.Sincos(radians(angle))
	if angle == 90 {
		cos = 0 // and not the 6e-17 that the library gives
	}
	return Wrap{r: float64(branch) / 2, sin: sin, cot: cos / sin}
}

// Round returns the length of the line's paper: the way round the tube, in millimetres.
func (w Wrap) Round() units.MM { return units.MM(2 * math.Pi * w.r) }

// At returns how far the cut lies back from the longest point of the tube, in
// millimetres, at a way round its outside from the heel.
func (w Wrap) At(x units.MM) units.MM {
	return units.MM(max(0, w.along(w.r, math.Cos(float64(x)/w.r))-w.least()))
}

// Depth returns how far the cut lies back at its deepest, in millimetres. The way
// along the axis is convex in sin φ, so that the deepest point is the heel.
func (w Wrap) Depth() units.MM { return w.At(0) }

// Tip returns the way along the tube's axis from where it crosses the chord's
// axis, or the face, to the longest point of the tube, in millimetres. It is below
// zero where the tube reaches beyond that crossing.
func (w Wrap) Tip() units.MM { return units.MM(w.least()) }

// along is the way along the axis (WRAP-1) of a point at the radius given; q is
// sin φ, 1 at the heel and -1 at the toe.
func (w Wrap) along(radius, q float64) float64 {
	if w.flat {
		return radius * q * w.cot
	}
	return math.Sqrt(max(0, w.big*w.big-radius*radius*(1-q*q)))/w.sin + radius*q*w.cot
}

// least is the way along the axis of the longest point (WRAP-3).
func (w Wrap) least() float64 {
	if w.flat {
		return -w.r * w.cot
	}
	waist := math.Sqrt(w.big*w.big - w.r*w.r)
	if q := -w.cot * waist / w.r; q > -1 {
		return waist
	}
	return w.along(w.r, -1)
}

// Proud returns by how much, along the axis and at most, the inner edge stands
// proud of its place after a cut square to the wall, in millimetres, and the way x
// round the outside where it does: that much has to be ground off inside until the
// outer edge touches.
//
//	h(φ) = s(φ) at the radius r − t, less s(φ) at r        (WRAP-6)
//
// Symbols: t wall [mm]; r half the outside diameter [mm]; s, φ as in WRAP-1.
// Valid: 0 < t <= r.
// Assumes: the cut follows the outer line with the torch pointing at the tube's axis.
// Source: geometry.
// Basis: derived.
// Accuracy: the largest of 720 places round the tube; 0.1 % of the value.
// Errors: [ErrRange] for a wall outside the limits.
func (w Wrap) Proud(wall units.MM) (h, x units.MM, err error) {
	if err := over("wall of the branch", wall, w.r, "mm"); err != nil {
		return 0, 0, err
	}
	for i := range saddleSteps/2 + 1 {
		phi := 2 * math.Pi * float64(i) / saddleSteps
		q := math.Cos(phi)
		if now := units.MM(w.along(w.r-float64(wall), q) - w.along(w.r, q)); now > h+1e-9 {
			h, x = now, units.MM(phi*w.r)
		}
	}
	return h, x, nil
}
