package weld

import (
	"math"

	"seamtally/batch/units"
)

// BoxFaceLength returns the way round the end of a square or rectangular section that
// is cut by a plane aslant, in millimetres: a tube that leans on a flat face, or one of
// two alike that are mitred.
//
//	L = 2 (b − 2r) + 2 (h − 2r) / sin θ + ∫ √(r² sin² φ + r² cos² φ / sin² θ) dφ, φ = 0 to 2π        (ROUND-3)
//
// Symbols: h, b outside height and width [mm], h in the plane of the lean; r outside
// corner radius [mm], zero for sharp corners; θ angle between the axis and the plane
// of the cut [°], 90 for a square cut; φ way round the four corners together [rad].
// Valid: 0 < h, b <= 5000 mm, 0 <= r <= half of the shorter side, 30 <= θ <= 90°.
// Assumes: the plane leans over one side, not over a corner; the seam on the outside
// surface.
// Source: geometry: sides in the plane of the lean grow by 1 / sin θ, corners become
// quarters of an ellipse.
// Basis: derived.
// Accuracy: better than 0.001 % for the radius given.
// Errors: [ErrRange] for a side, a radius or an angle outside the limits.
func BoxFaceLength(h, b, r units.MM, angle units.Degree) (units.MM, error) {
	err := first(
		over("height", h, maxTube, "mm"),
		over("width", b, maxTube, "mm"),
		within("corner radius", r, 0, float64(min(h, b))/2*(1+1e-9), "mm"),
		within("angle of the cut", angle, leastLean, 90, "°"),
	)
	if err != nil {
		return 0, err
	}
	radius, sin := float64(r), math.Sin(radians(angle))
	straight := 2*(float64(b)-2*radius) + 2*(float64(h)-2*radius)/sin
	corners := around(func(phi float64) (x, y, z float64) {
		s, c := math.Sincos(phi)
		return radius * s, 0, radius * c / sin
	})
	return units.MM(straight + corners), nil
}
