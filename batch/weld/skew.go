package weld

import "seamtally/batch/units"

// SkewPair is a plate that leans on another, welded on both sides: one fillet in
// the acute corner, one in the obtuse. It stands for both by their mean, so that
// twice its area is the metal of the joint.
type SkewPair struct{ Acute, Obtuse Fillet }

// mean returns the mean of two areas, or the first error.
func mean(a, b units.MM2, errA, errB error) (units.MM2, error) {
	if err := first(errA, errB); err != nil {
		return 0, err
	}
	return (a + b) / 2, nil
}

// Drawn returns the mean area of the two fillets in square millimetres.
//
//	A = (A1 + A2) / 2, each by AREA-1 with ψ and 180° − ψ        (AREA-16)
//
// Symbols: A1, A2 areas of the fillets in the acute and the obtuse corner [mm²]; ψ
// angle between the parts [°].
// Valid: as [Fillet.Drawn] for both.
// Assumes: the plate is cut to fit, its edge lies flat on the other part.
// Source: geometry.
// Basis: derived.
// Accuracy: exact for the ideal triangles. Equal legs give equal areas; a throat asks for longer legs in the obtuse corner.
// Errors: [ErrRange] as [Fillet.Drawn].
func (p SkewPair) Drawn() (units.MM2, error) {
	a, errA := p.Acute.Drawn()
	b, errB := p.Obtuse.Drawn()
	return mean(a, b, errA, errB)
}

// Made returns the mean area of the two fillets as made, in square millimetres.
//
//	A = (A1 + A2) / 2, each by AREA-6 with ψ and 180° − ψ        (AREA-17)
//
// Symbols: A1, A2 areas of the fillets as made [mm²]; ψ angle between the parts [°].
// Valid: as [Fillet.Made] for both.
// Assumes: as [SkewPair.Drawn]; the same allowances on both sides.
// Source: geometry.
// Basis: derived.
// Accuracy: exact for the assumed shapes.
// Errors: [ErrRange] as [Fillet.Made].
func (p SkewPair) Made(a Allowances) (units.MM2, error) {
	x, errA := p.Acute.Made(a)
	y, errB := p.Obtuse.Made(a)
	return mean(x, y, errA, errB)
}

// Faces returns the face of the acute side.
func (p SkewPair) Faces() []units.MM { return p.Acute.Faces() }

// Outline returns the triangle of the acute side.
func (p SkewPair) Outline() []Point { return p.Acute.Outline() }
