package weld

import (
	"math"

	"seamtally/batch/units"
)

// Fillet is a fillet or lap weld: a triangle in the corner of two parts. The legs
// lie along the parts and meet at the root; a leg is not a throat.
type Fillet struct {
	LegA  units.MM     // along the part whose edge meets (the web)
	LegB  units.MM     // along the other part (the flange)
	Angle units.Degree // between the fusion faces; 90 for a tee
}

func (f Fillet) check() error {
	return first(
		over("leg", f.LegA, maxLeg, "mm"),
		over("leg", f.LegB, maxLeg, "mm"),
		within("angle between the parts", f.Angle, 20, 160, "°"),
	)
}

// Drawn returns the area of a flat-faced fillet in square millimetres.
//
//	A = 1/2 zA zB sin ψ        (AREA-1)
//
// Symbols: zA, zB legs along the two parts [mm], nominal; ψ angle between the
// fusion faces [°]. With equal legs at 90° it is z²/2.
// Valid: 0 < z <= 200 mm, 20 <= ψ <= 160°. The design codes treat 60 to 120° as a
// fillet; outside that the caller says so.
// Assumes: flat face, no gap at the root, legs measured along the parts.
// Source: geometry of a triangle.
// Basis: derived.
// Accuracy: exact for the ideal triangle; handbook weights agree to their rounding.
// Errors: [ErrRange] for a leg or an angle outside the limits, zero and negative included.
func (f Fillet) Drawn() (units.MM2, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	return units.MM2(0.5 * float64(f.LegA) * float64(f.LegB) * math.Sin(radians(f.Angle))), nil
}

// Face returns the width of the flat face from toe to toe in millimetres.
//
//	w = √(zA² + zB² − 2 zA zB cos ψ)        (AREA-3)
//
// Symbols: zA, zB legs [mm], nominal; ψ angle between the fusion faces [°].
// Valid: as [Fillet.Drawn].
// Assumes: flat face.
// Source: geometry, law of cosines.
// Basis: derived.
// Accuracy: exact for the ideal triangle.
// Errors: [ErrRange] as [Fillet.Drawn].
func (f Fillet) Face() (units.MM, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	a, b := float64(f.LegA), float64(f.LegB)
	return units.MM(math.Sqrt(a*a + b*b - 2*a*b*math.Cos(radians(f.Angle)))), nil
}

// Throat returns the throat in millimetres: the shortest way from the root to
// the flat face.
//
//	a = zA zB sin ψ / w, or the shorter leg where the foot lies beside the face        (AREA-4)
//
// Symbols: zA, zB legs [mm], nominal; ψ angle between the fusion faces [°]; w face
// width [mm] by AREA-3. With equal legs it is z cos(ψ/2): 0.707 z at 90°.
// Valid: as [Fillet.Drawn].
// Assumes: flat face, no penetration beyond the root.
// Source: geometry. IS 800:2007 Table 22 rounds z cos(ψ/2) down by bands of ψ.
// Basis: derived.
// Accuracy: exact for the ideal triangle.
// Errors: [ErrRange] as [Fillet.Drawn].
func (f Fillet) Throat() (units.MM, error) {
	w, err := f.Face()
	if err != nil {
		return 0, err
	}
	a, b, psi := float64(f.LegA), float64(f.LegB), radians(f.Angle)
	if short, long := min(a, b), max(a, b); long*math.Cos(psi) > short {
		return units.MM(short), nil
	}
	return units.MM(a * b * math.Sin(psi) / float64(w)), nil
}

// LegOfThroat returns the leg of an equal-legged fillet in millimetres for a throat.
//
//	z = a / cos(ψ/2)        (AREA-5)
//
// Symbols: a throat [mm], nominal; ψ angle between the fusion faces [°].
// Valid: 0 < a <= 200 mm, 20 <= ψ <= 160°.
// Assumes: equal legs, flat face.
// Source: geometry; the inverse of AREA-4.
// Basis: derived.
// Accuracy: exact for the ideal triangle: 1.414 a at 90°, where shops say 1.4.
// Errors: [ErrRange] for a throat or an angle outside the limits.
func LegOfThroat(throat units.MM, angle units.Degree) (units.MM, error) {
	err := first(over("throat", throat, maxLeg, "mm"), within("angle between the parts", angle, 20, 160, "°"))
	if err != nil {
		return 0, err
	}
	return units.MM(float64(throat) / math.Cos(radians(angle)/2)), nil
}

// Grown returns the fillet with the legs that the shop will make: each leg plus
// the overweld plus the fit-up gap.
func (f Fillet) Grown(a Allowances) Fillet {
	f.LegA += a.Overweld + a.FitGap
	f.LegB += a.Overweld + a.FitGap
	return f
}

// Made returns the area of the fillet as it will be made, in square millimetres.
//
//	A = 1/2 zA' zB' sin ψ + 2/3 c w'²,  z' = z + overweld + gap        (AREA-6)
//
// Symbols: zA', zB' legs as made [mm]; ψ angle between the fusion faces [°]; c
// convexity, cap height as a share of the face width [-], below zero for a concave
// face; w' face width as made [mm].
// Valid: as [Fillet.Drawn]; overweld and gap 0 to 50 mm, -0.3 <= c <= 0.5.
// Assumes: the cap is a parabolic segment over the whole face; a fit-up gap is
// bridged by longer legs, not filled.
// Source: geometry; a gap adds to the leg by the fillet fit-up clause of AWS D1.1 (quoted in a member forum).
// Basis: derived.
// Accuracy: exact for the assumed shape.
// Errors: [ErrRange] for a size or an allowance outside the limits, or where a
// concave face would take away more than the triangle.
func (f Fillet) Made(a Allowances) (units.MM2, error) {
	return f.made(a, f.Grown(a))
}

// made adds the cap to a grown fillet.
func (f Fillet) made(a Allowances, grown Fillet) (units.MM2, error) {
	err := first(f.check(), a.check())
	if err != nil {
		return 0, err
	}
	area, err := grown.Drawn()
	if err != nil {
		return 0, err
	}
	w, err := grown.Face()
	if err != nil {
		return 0, err
	}
	made := float64(area) + bead(float64(w), a.Convexity*float64(w))
	return units.MM2(made), over("area of a concave fillet", made, math.Inf(1), "mm²")
}

// Faces returns the width of the face; nothing where the sizes are out of range.
func (f Fillet) Faces() []units.MM {
	w, err := f.Face()
	if err != nil {
		return nil
	}
	return []units.MM{w}
}

// Outline returns the triangle: the root at the origin, leg B along X.
func (f Fillet) Outline() []Point {
	if f.check() != nil {
		return nil
	}
	a, psi := float64(f.LegA), radians(f.Angle)
	return []Point{{0, 0}, {float64(f.LegB), 0}, {a * math.Cos(psi), a * math.Sin(psi)}}
}

// Corner is a weld in the outside corner of two parts that meet at their inner
// edges: the square-cut edges are the fusion faces.
type Corner struct {
	LegA, LegB units.MM     // along the two cut edges; the thicknesses where it is filled flush
	Angle      units.Degree // between the parts; 90 for a box corner
}

// triangle returns the fillet of the same shape: square edges of parts at an
// angle ψ open to 180° − ψ.
func (c Corner) triangle() Fillet { return Fillet{c.LegA, c.LegB, 180 - c.Angle} }

// Drawn returns the area of an outside corner weld in square millimetres.
//
//	A = 1/2 zA zB sin(180° − ψ)        (AREA-7)
//
// Symbols: zA, zB legs along the two cut edges [mm], nominal; ψ angle between the parts [°].
// Valid: 0 < z <= 200 mm, 20 <= ψ <= 160°.
// Assumes: square-cut edges that meet at the inner corner, flat face.
// Source: geometry.
// Basis: derived.
// Accuracy: exact for the ideal triangle.
// Errors: [ErrRange] for a leg or an angle outside the limits.
func (c Corner) Drawn() (units.MM2, error) { return c.triangle().Drawn() }

// Made returns the area of an outside corner weld as made, in square millimetres.
//
//	A = 1/2 zA' zB' sin(180° − ψ) + 2/3 c w'²,  z' = z + overweld        (AREA-8)
//
// Symbols: as AREA-6 and AREA-7; a fit-up gap does not lengthen these legs.
// Valid: as [Corner.Drawn] and [Fillet.Made].
// Assumes: as [Fillet.Made].
// Source: geometry.
// Basis: derived.
// Accuracy: exact for the assumed shape.
// Errors: [ErrRange] as [Fillet.Made].
func (c Corner) Made(a Allowances) (units.MM2, error) {
	noGap := a
	noGap.FitGap = 0
	f := c.triangle()
	return f.made(a, f.Grown(noGap))
}

// Faces returns the width of the face.
func (c Corner) Faces() []units.MM { return c.triangle().Faces() }

// Outline returns the triangle: the inner corner at the origin.
func (c Corner) Outline() []Point { return c.triangle().Outline() }
