package weld

import (
	"math"

	"seamtally/batch/units"
)

// Flare is a weld in the flare between a round edge and a flat part (flare
// bevel), or between two round edges (flare V).
type Flare struct {
	Radius units.MM // outside radius of the rounded edge
	Gap    units.MM
	Fill   units.MM // depth of fill from the contact line; zero means flush, a whole radius
	V      bool     // two round edges
}

// FlareFill returns how deep a flare is filled for an effective throat, from the
// contact line, in millimetres: the throat of the flush weld less what the fill lies
// below flush is the throat that is left.
//
//	h = min(R, R − (f R − E))        (AREA-18)
//
// Symbols: R outside radius of the round edge [mm]; E effective throat [mm]; f throat
// of the weld filled flush as a share of R [-].
// Valid: 0 < R <= 1000 mm, 0 < E <= 1000 mm, 0 < f < 1.
// Assumes: the weld melts as deep as the code takes it to; a test shows whether it does.
// Source: AISC 360 Table J2.2: 5/8 R of a flare bevel and 3/4 R of a flare V filled
// flush with gas-shielded wire, 5/16 R and 5/8 R with self-shielded; J2.1: less than
// flush, subtract the greatest depth below it. Solved here for the depth filled.
// Basis: derived.
// Accuracy: that of the shares.
// Errors: [ErrRange] for a figure outside the limits.
func FlareFill(radius, throat units.MM, share float64) (units.MM, error) {
	err := first(
		over("radius of the flare", radius, maxThickness, "mm"),
		over("effective throat", throat, maxThickness, "mm"),
		within("share of the radius", share, 1e-9, 1-1e-9, ""),
	)
	if err != nil {
		return 0, err
	}
	return min(radius, radius-(units.MM(share)*radius-throat)), nil
}

func (f Flare) fill() float64 {
	if f.Fill == 0 {
		return float64(f.Radius)
	}
	return float64(f.Fill)
}

func (f Flare) check() error {
	return first(
		over("radius of the flare", f.Radius, maxThickness, "mm"),
		within("gap", f.Gap, 0, 100, "mm"),
		within("fill", f.fill(), 0, float64(f.Radius)*(1+1e-9), "mm"),
	)
}

// Drawn returns the area of a flare groove weld in square millimetres.
//
//	A = n (R h − h √(R² − h²)/2 − R² asin(h/R)/2) + g h        (AREA-11)
//
// Symbols: R outside radius of the round edge [mm]; h depth of fill from the
// contact line [mm]; n 1 for a flare bevel, 2 for a flare V [-]; g gap [mm].
// Filled flush (h = R) it is n R² (1 − π/4) + g R.
// Valid: 0 < R <= 1000 mm, 0 <= h <= R, 0 <= g <= 100 mm.
// Assumes: the weld reaches the contact line. It seldom does: the throat that the
// codes allow (AISC 360 Table J2.2) is smaller, the metal is at most this.
// Source: geometry, area beside a circle.
// Basis: derived.
// Accuracy: exact for the ideal flare, an upper bound for the metal.
// Errors: [ErrRange] for a dimension outside the limits.
func (f Flare) Drawn() (units.MM2, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	r := float64(f.Radius)
	h := min(f.fill(), r)
	one := r*h - h*math.Sqrt(r*r-h*h)/2 - r*r*math.Asin(h/r)/2
	return units.MM2(f.edges()*one + float64(f.Gap)*h), nil
}

func (f Flare) edges() float64 {
	if f.V {
		return 2
	}
	return 1
}

// Made returns the area of a flare groove weld with its cap, in square millimetres.
//
//	A = A_drawn + 2/3 (m + 2 mm) hc        (AREA-12)
//
// Symbols: A_drawn area by AREA-11 [mm²]; m mouth at the depth of fill [mm]; hc
// height of the cap [mm].
// Valid: as [Flare.Drawn]; hc 0 to 20 mm.
// Assumes: a cap as on a butt weld, no root reinforcement.
// Source: as AREA-10.
// Basis: derived.
// Accuracy: as good as the assumed height.
// Errors: [ErrRange] for a dimension or an allowance outside the limits.
func (f Flare) Made(a Allowances) (units.MM2, error) {
	drawn, err := f.Drawn()
	if err = first(err, a.check()); err != nil {
		return 0, err
	}
	return drawn + units.MM2(bead(float64(f.Faces()[0])+capOverlap, float64(a.CapHeight))), nil
}

// Faces returns the mouth at the depth of fill.
func (f Flare) Faces() []units.MM {
	if f.check() != nil {
		return nil
	}
	r := float64(f.Radius)
	h := min(f.fill(), r)
	return []units.MM{f.Gap + units.MM(f.edges()*(r-math.Sqrt(r*r-h*h)))}
}

// Outline returns the flare with the contact line at the origin, Y towards the face.
func (f Flare) Outline() []Point {
	if f.check() != nil {
		return nil
	}
	r, g := float64(f.Radius), float64(f.Gap)
	h := min(f.fill(), r)
	var round []Point
	for i := 0; i <= arcSteps; i++ {
		phi := math.Asin(h/r) * float64(i) / arcSteps
		round = append(round, Point{g + r*(1-math.Cos(phi)), r * math.Sin(phi)})
	}
	if !f.V {
		return append(round, Point{0, h}, Point{0, 0})
	}
	for i := len(round) - 1; i >= 0; i-- {
		round = append(round, Point{g - round[i].X, round[i].Y})
	}
	return round
}

// Plug is a weld that fills a round hole. Its section is the plan of the hole and
// its seam length is the depth filled, so that area times length is its volume.
type Plug struct{ Diameter units.MM }

// Drawn returns the plan area of a round hole in square millimetres.
//
//	A = π d² / 4        (AREA-13)
//
// Symbols: d diameter of the hole [mm], nominal.
// Valid: 0 < d <= 200 mm.
// Assumes: a straight hole; the metal is this area times the depth filled.
// Source: geometry.
// Basis: derived.
// Accuracy: exact.
// Errors: [ErrRange] for a diameter outside the limits.
func (p Plug) Drawn() (units.MM2, error) {
	d := float64(p.Diameter)
	return units.MM2(math.Pi * d * d / 4), over("diameter of the plug", p.Diameter, maxLeg, "mm")
}

// Made returns the plan area of a round hole in square millimetres: plugs are
// filled flush and get no allowance.
//
//	A = π d² / 4        (AREA-13)
//
// Symbols: d diameter of the hole [mm], nominal.
// Valid: as [Plug.Drawn].
// Assumes: filled flush.
// Source: geometry.
// Basis: derived.
// Accuracy: exact for a flush plug.
// Errors: [ErrRange] for a diameter or an allowance outside the limits.
func (p Plug) Made(a Allowances) (units.MM2, error) {
	area, err := p.Drawn()
	return area, first(err, a.check())
}

// Faces returns the diameter.
func (p Plug) Faces() []units.MM { return []units.MM{p.Diameter} }

// Outline returns nothing: the plan of a hole is no section of a seam.
func (p Plug) Outline() []Point { return nil }

// Slot is a weld that fills a slotted hole with round ends. As with [Plug] its
// seam length is the depth filled.
type Slot struct {
	Width  units.MM
	Length units.MM // over the round ends
}

// Drawn returns the plan area of a slotted hole in square millimetres.
//
//	A = w (l − w) + π w² / 4        (AREA-14)
//
// Symbols: w width of the slot [mm]; l its length over the round ends [mm], nominal.
// Valid: 0 < w <= 200 mm, w <= l <= 1000 mm.
// Assumes: straight sides, round ends; the metal is this area times the depth filled.
// Source: geometry.
// Basis: derived.
// Accuracy: exact.
// Errors: [ErrRange] for a dimension outside the limits, a slot shorter than wide included.
func (s Slot) Drawn() (units.MM2, error) {
	err := first(
		over("width of the slot", s.Width, maxLeg, "mm"),
		within("length of the slot", s.Length, float64(s.Width), 1000, "mm"),
	)
	if err != nil {
		return 0, err
	}
	w, l := float64(s.Width), float64(s.Length)
	return units.MM2(w*(l-w) + math.Pi*w*w/4), nil
}

// Made returns the plan area of a slotted hole in square millimetres: slots are
// filled flush and get no allowance.
//
//	A = w (l − w) + π w² / 4        (AREA-14)
//
// Symbols: w width of the slot [mm]; l its length over the round ends [mm].
// Valid: as [Slot.Drawn].
// Assumes: filled flush.
// Source: geometry.
// Basis: derived.
// Accuracy: exact for a flush slot.
// Errors: [ErrRange] for a dimension or an allowance outside the limits.
func (s Slot) Made(a Allowances) (units.MM2, error) {
	area, err := s.Drawn()
	return area, first(err, a.check())
}

// Faces returns the width.
func (s Slot) Faces() []units.MM { return []units.MM{s.Width} }

// Outline returns nothing: the plan of a hole is no section of a seam.
func (s Slot) Outline() []Point { return nil }

// Edge is a bead along the flush edges of two parts that lie side by side.
type Edge struct {
	T1, T2 units.MM // thicknesses, the width that the bead covers
	Throat units.MM // height of the bead
}

// Drawn returns the area of an edge weld in square millimetres.
//
//	A = 2/3 (t1 + t2) a        (AREA-15)
//
// Symbols: t1, t2 thicknesses of the parts [mm]; a throat, height of the bead over the edges [mm].
// Valid: 0 < t <= 1000 mm each, 0 < a <= 200 mm.
// Assumes: a parabolic bead over both edges, no melting back counted.
// Source: the shape of the cap in AREA-10.
// Basis: derived.
// Accuracy: estimating only.
// Errors: [ErrRange] for a dimension outside the limits.
func (e Edge) Drawn() (units.MM2, error) {
	err := first(
		over("thickness", e.T1, maxThickness, "mm"),
		over("thickness", e.T2, maxThickness, "mm"),
		over("throat", e.Throat, maxLeg, "mm"),
	)
	if err != nil {
		return 0, err
	}
	return units.MM2(bead(float64(e.T1+e.T2), float64(e.Throat))), nil
}

// Made returns the area of an edge weld in square millimetres: the bead stands
// proud already and gets no allowance.
//
//	A = 2/3 (t1 + t2) a        (AREA-15)
//
// Symbols: t1, t2 thicknesses of the parts [mm]; a throat [mm].
// Valid: as [Edge.Drawn].
// Assumes: as [Edge.Drawn].
// Source: as [Edge.Drawn].
// Basis: derived.
// Accuracy: estimating only.
// Errors: [ErrRange] for a dimension or an allowance outside the limits.
func (e Edge) Made(a Allowances) (units.MM2, error) {
	area, err := e.Drawn()
	return area, first(err, a.check())
}

// Faces returns the width of both edges together.
func (e Edge) Faces() []units.MM { return []units.MM{e.T1 + e.T2} }

// Outline returns the bead over the edges, its foot on the X axis.
func (e Edge) Outline() []Point {
	if _, err := e.Drawn(); err != nil {
		return nil
	}
	w, a := float64(e.T1+e.T2), float64(e.Throat)
	var out []Point
	for i := arcSteps; i >= 0; i-- {
		x := float64(i) / arcSteps
		out = append(out, Point{w * x, 4 * a * x * (1 - x)})
	}
	return out
}
