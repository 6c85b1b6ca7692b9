package weld

import (
	"math"

	"seamtally/batch/units"
)

// Quadrature of the seam of a branch: so many steps round the branch. The rule is
// taken at the middle of each step, so that a branch as wide as its chord is never
// asked at its crown, where the slope has no value.
const saddleSteps = 720

// Lengths of all-round seams lie within these limits.
const (
	maxTube   = 5000.0 // mm, outside
	leastLean = 30.0   // °, a branch that leans more is cut and welded otherwise
)

// SaddleLength returns the seam of a round branch on a round chord in millimetres:
// the curve in which the two outside surfaces meet, their axes crossing.
//
//	L = ∫ √(x'² + y'² + z'²) dφ, φ = 0 to 2π
//	x = r cos φ,  y = √(R² − r² cos² φ),  z = y cot θ + r sin φ / sin θ        (SADDLE-1)
//
// Symbols: r half the branch's outside diameter d [mm]; R half the chord's D [mm];
// θ angle between the axes [°]; φ way round the branch [rad].
// Valid: 0 < d <= D <= 5000 mm, 30 <= θ <= 90°.
// Assumes: round tubes, axes that cross (no offset), the seam on the outside surfaces.
// Source: geometry, the intersection of two cylinders; the arc length by the midpoint rule.
// Basis: derived.
// Accuracy: better than 0.01 %; at d = D 0.02 %.
// Errors: [ErrRange] for a diameter or an angle outside the limits, a branch wider than its chord included.
func SaddleLength(branch, chord units.MM, angle units.Degree) (units.MM, error) {
	err := first(
		over("diameter of the chord", chord, maxTube, "mm"),
		over("diameter of the branch", branch, float64(chord), "mm"),
		within("angle of the branch", angle, leastLean, 90, "°"),
	)
	if err != nil {
		return 0, err
	}
	r, big, sin, cos := float64(branch)/2, float64(chord)/2, math.Sin(radians(angle)), math.Cos(radians(angle))
	return units.MM(around(func(phi float64) (x, y, z float64) {
		s, c := math.Sincos(phi)
		rise := r * r * c * s / math.Sqrt(big*big-r*r*c*c)
		return r * s, rise, rise*cos/sin + r*c/sin
	})), nil
}

// around returns the length of a closed curve from its slopes, by the midpoint rule.
func around(slope func(phi float64) (x, y, z float64)) float64 {
	length := 0.0
	for i := range saddleSteps {
		x, y, z := slope((float64(i) + 0.5) * 2 * math.Pi / saddleSteps)
		length += math.Sqrt(x*x + y*y + z*z)
	}
	return length * 2 * math.Pi / saddleSteps
}

// FaceLength returns the seam of a round branch on a flat face in millimetres: an
// ellipse, or a circle where the branch stands square.
//
//	L = ∫ √(r² sin² φ + r² cos² φ / sin² θ) dφ, φ = 0 to 2π        (SADDLE-2)
//
// Symbols: r half the branch's outside diameter d [mm]; θ angle between the
// branch's axis and the face [°]; φ way round the branch [rad].
// Valid: 0 < d <= 5000 mm, 30 <= θ <= 90°.
// Assumes: a round tube whose whole foot lies on the face.
// Source: geometry, perimeter of an ellipse by the midpoint rule.
// Basis: derived.
// Accuracy: better than 0.001 %.
// Errors: [ErrRange] for a diameter or an angle outside the limits.
func FaceLength(branch units.MM, angle units.Degree) (units.MM, error) {
	err := first(over("diameter of the branch", branch, maxTube, "mm"), within("angle of the branch", angle, leastLean, 90, "°"))
	if err != nil {
		return 0, err
	}
	r, sin := float64(branch)/2, math.Sin(radians(angle))
	return units.MM(around(func(phi float64) (x, y, z float64) {
		s, c := math.Sincos(phi)
		return r * s, 0, r * c / sin
	})), nil
}

// RoundPerimeter returns the way round a round section in millimetres.
//
//	L = π d        (ROUND-1)
//
// Symbols: d outside diameter [mm], nominal.
// Valid: 0 < d <= 5000 mm.
// Assumes: a square cut; the seam on the outside surface.
// Source: geometry.
// Basis: derived.
// Accuracy: exact.
// Errors: [ErrRange] for a diameter outside the limits.
func RoundPerimeter(d units.MM) (units.MM, error) {
	return units.MM(math.Pi * float64(d)), over("diameter", d, maxTube, "mm")
}

// BoxPerimeter returns the way round a square or rectangular section in
// millimetres, its corners rounded.
//
//	L = 2 (h + b) − (8 − 2π) r        (ROUND-2)
//
// Symbols: h, b outside height and width [mm], nominal; r outside corner radius
// [mm], zero for sharp corners.
// Valid: 0 < h, b <= 5000 mm, 0 <= r <= half of the shorter side.
// Assumes: a square cut; the seam on the outside surface.
// Source: geometry; EN 10219-2 gives the superficial area of hollow sections so, with radii by the wall.
// Basis: derived.
// Accuracy: exact for the radius given. The standards allow wide radii: 1 % of the way round for a radius off by the wall.
// Errors: [ErrRange] for a side or a radius outside the limits.
func BoxPerimeter(h, b, r units.MM) (units.MM, error) {
	err := first(
		over("height", h, maxTube, "mm"),
		over("width", b, maxTube, "mm"),
		within("corner radius", r, 0, float64(min(h, b))/2*(1+1e-9), "mm"),
	)
	if err != nil {
		return 0, err
	}
	return 2*(h+b) - units.MM((8-2*math.Pi)*float64(r)), nil
}
