package weld

import (
	"math"

	"seamtally/batch/units"
)

// Side is the preparation of one side of a butt weld. The two edges may differ:
// a V has two equal bevels, a bevel or J joint has one and none.
type Side struct {
	Depth          units.MM     // from the surface to the root face
	BevelA, BevelB units.Degree // of the two edges, from the square cut
	RadiusA        units.MM     // root radius of edge A (U and J)
	RadiusB        units.MM
}

// Groove is a butt weld of any preparation: square, V, bevel, U or J, from one
// side or both. What is neither depth nor depth of the other side is root face.
type Groove struct {
	Thickness units.MM
	Gap       units.MM
	Front     Side
	Back      Side
	// Fused is how deep the gap is filled; zero means through the thickness.
	Fused units.MM
	// BackWelded says that a square or single groove is welded from the back too.
	BackWelded bool
	// OpenRoot says that the root hangs free: no backing, no second side.
	OpenRoot bool
	// FormedRoot says that a grooved bar or strip lies under the root, which forms its
	// reinforcement and comes off.
	FormedRoot bool
}

// SquareButt returns a butt of square edges.
func SquareButt(t, gap units.MM) Groove { return Groove{Thickness: t, Gap: gap, OpenRoot: true} }

// SingleV returns a V of an included angle.
func SingleV(t, gap, rootFace units.MM, included units.Degree) Groove {
	return Groove{Thickness: t, Gap: gap, OpenRoot: true,
		Front: Side{Depth: t - rootFace, BevelA: included / 2, BevelB: included / 2}}
}

// SingleBevel returns a bevel on one of the two edges.
func SingleBevel(t, gap, rootFace units.MM, bevel units.Degree) Groove {
	return Groove{Thickness: t, Gap: gap, OpenRoot: true, Front: Side{Depth: t - rootFace, BevelA: bevel}}
}

// SingleU returns a U of an included angle and a root radius.
func SingleU(t, gap, rootFace units.MM, included units.Degree, radius units.MM) Groove {
	g := SingleV(t, gap, rootFace, included)
	g.Front.RadiusA, g.Front.RadiusB = radius, radius
	return g
}

// SingleJ returns a J on one of the two edges.
func SingleJ(t, gap, rootFace units.MM, bevel units.Degree, radius units.MM) Groove {
	g := SingleBevel(t, gap, rootFace, bevel)
	g.Front.RadiusA = radius
	return g
}

// Doubled returns the same preparation from both sides; share is the front's
// part of the thickness less the root face, one half where the sides are equal.
func (g Groove) Doubled(share float64) Groove {
	deep := g.Front.Depth
	g.Back, g.OpenRoot = g.Front, false
	g.Front.Depth = units.MM(float64(deep) * share)
	g.Back.Depth = deep - g.Front.Depth
	return g
}

// Partial returns the groove prepared and filled to a depth only, measured from
// the surface; a double groove has that depth on each side.
func (g Groove) Partial(depth units.MM) Groove {
	if g.Front.BevelA > 0 || g.Front.RadiusA > 0 {
		g.Front.Depth = depth
	}
	g.Fused, g.OpenRoot = depth, false
	if g.twoSided() {
		g.Fused = 2 * depth
		if g.Back.Depth > 0 {
			g.Back.Depth = depth
		}
	}
	return g
}

// Reaching returns a partial groove whose weld goes deeper than its preparation:
// a gap is filled so deep, a closed root face is melted and takes no metal. A
// groove welded from both sides reaches so deep from each.
func (g Groove) Reaching(depth units.MM) Groove {
	if g.twoSided() {
		depth *= 2
	}
	g.Fused = max(g.Fused, min(depth, g.Thickness))
	return g
}

// twoSided tells whether the back is welded.
func (g Groove) twoSided() bool { return g.Back.Depth > 0 || g.BackWelded }

func (s Side) check() error {
	return first(
		within("preparation depth", s.Depth, 0, maxThickness, "mm"),
		within("bevel", s.BevelA, 0, 75, "°"),
		within("bevel", s.BevelB, 0, 75, "°"),
		within("root radius", s.RadiusA, 0, 50, "mm"),
		within("root radius", s.RadiusB, 0, 50, "mm"),
	)
}

func (g Groove) check() error {
	return first(
		over("thickness", g.Thickness, maxThickness, "mm"),
		within("gap", g.Gap, 0, 100, "mm"),
		g.Front.check(),
		g.Back.check(),
		within("depth of both preparations together", g.Front.Depth+g.Back.Depth, 0, float64(g.Thickness)*(1+1e-9), "mm"),
		within("fused depth", g.Fused, 0, float64(g.Thickness)*(1+1e-9), "mm"),
	)
}

// filled is the height over which the gap holds weld metal.
func (g Groove) filled() float64 {
	if g.Fused == 0 {
		return float64(g.Thickness)
	}
	return max(float64(g.Fused), float64(g.Front.Depth+g.Back.Depth))
}

// Drawn returns the area of a groove filled flush, in square millimetres.
//
//	A = g s + Σ Af
//	Af = d² tan β / 2                                                      straight flank
//	Af = r²/2 (φ − sin φ cos φ) + r h cos β + h² tan β / 2,  h = d − r (1 − sin β)   flank with a root radius        (AREA-9)
//
// Symbols: g gap [mm], after tacking; s height of the filled gap [mm], the
// thickness or the fused depth; d depth of preparation of a side [mm]; β bevel of
// one edge from the square cut [°], half the included angle of a V or U; r root
// radius [mm]; φ = 90° − β angle of the arc [rad]. The sum runs over the two edges of each side.
// Valid: 0 < thickness <= 1000 mm, 0 <= g <= 100 mm, 0 <= β <= 75°, 0 <= r <= 50 mm,
// the depths together not above the thickness. Where the groove is shallower than
// its radius the arc ends at the surface.
// Assumes: edges as prepared, not melted back; the arc starts at the edge of the root face, level with it.
// Source: geometry.
// Basis: derived.
// Accuracy: exact for the drawn shape; published groove elements agree to their rounding.
// Errors: [ErrRange] for a dimension outside the limits. A closed square butt has an area of zero, which is no error.
func (g Groove) Drawn() (units.MM2, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	area := float64(g.Gap) * g.filled()
	for _, s := range []Side{g.Front, g.Back} {
		area += flankOf(s.Depth, s.BevelA, s.RadiusA).area() + flankOf(s.Depth, s.BevelB, s.RadiusB).area()
	}
	return units.MM2(area), nil
}

// Made returns the area of a butt weld with its reinforcement, in square millimetres.
//
//	A = A_drawn + Σ 2/3 (m + 2 mm) hc + 2/3 (g + 2 mm) hr        (AREA-10)
//
// Symbols: A_drawn area by AREA-9 [mm²]; m mouth of a welded face [mm]; hc height
// of the cap [mm]; g gap [mm]; hr height of the root reinforcement [mm], both as the
// thickness bears them: on sheet the planner gives lower ones.
// Valid: as [Groove.Drawn]; heights 0 to 20 mm.
// Assumes: each welded face gets a cap that reaches 1 mm over both edges of its
// mouth; only the root of a weld through the thickness from one side that is open, or
// that a grooved bar forms, stands out; caps are parabolic segments.
// Source: shape of the cap: Filler Metal Data Handbook sec. 8, reinforcement elements; the 2 mm are a shop rule.
// Basis: derived.
// Accuracy: the drawn part exact, the caps as good as the assumed heights.
// Errors: [ErrRange] for a dimension or an allowance outside the limits.
func (g Groove) Made(a Allowances) (units.MM2, error) {
	drawn, err := g.Drawn()
	if err = first(err, a.check()); err != nil {
		return 0, err
	}
	area := float64(drawn)
	for _, mouth := range g.Faces() {
		area += bead(float64(mouth)+capOverlap, float64(a.CapHeight))
	}
	if (g.OpenRoot || g.FormedRoot) && !g.twoSided() && g.Fused == 0 {
		area += bead(float64(g.Gap)+capOverlap, float64(a.RootHeight))
	}
	return units.MM2(area), nil
}

// Faces returns the mouths of the welded faces: the gap and what the flanks open.
func (g Groove) Faces() []units.MM {
	mouth := func(s Side) units.MM {
		return g.Gap + units.MM(flankOf(s.Depth, s.BevelA, s.RadiusA).top()+flankOf(s.Depth, s.BevelB, s.RadiusB).top())
	}
	if g.twoSided() {
		return []units.MM{mouth(g.Front), mouth(g.Back)}
	}
	return []units.MM{mouth(g.Front)}
}

// flank is one prepared edge of one side, from the root face to the surface.
type flank struct{ depth, bevel, radius, arc float64 }

// flankOf measures a flank. The arc is cut off where the groove is shallower than
// the arc is high.
func flankOf(depth units.MM, bevel units.Degree, radius units.MM) flank {
	f := flank{depth: float64(depth), bevel: radians(bevel), radius: float64(radius)}
	if f.radius > 0 && f.depth > 0 {
		f.arc = math.Pi/2 - f.bevel
		if high := f.radius * (1 - math.Cos(f.arc)); high > f.depth {
			f.arc = math.Acos(1 - f.depth/f.radius)
		}
	}
	return f
}

// straight is the height of the straight part above the arc.
func (f flank) straight() float64 { return max(0, f.depth-f.radius*(1-math.Cos(f.arc))) }

// area is the area between the square cut and the flank.
func (f flank) area() float64 {
	if f.depth <= 0 {
		return 0
	}
	h := f.straight()
	round := f.radius * f.radius / 2 * (f.arc - math.Sin(f.arc)*math.Cos(f.arc))
	return round + f.radius*math.Sin(f.arc)*h + h*h*math.Tan(f.bevel)/2
}

// top is how far the flank has opened at the surface.
func (f flank) top() float64 {
	if f.depth <= 0 {
		return 0
	}
	return f.radius*math.Sin(f.arc) + f.straight()*math.Tan(f.bevel)
}
