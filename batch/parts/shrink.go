package parts

import (
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// shrinks is what one joint shortens one piece by, and how it was found.
type shrinks struct {
	low, high     float64
	across, along bool
}

// Shortening along a seam in mm per metre that is published beside SHRINK-3.
const (
	alongButt   = 1.0     // 3 mm in 3 m. Source: TWI FAQ weld shrinkage allowance. Basis: published.
	alongFillet = 1.0 / 3 // 1 mm in 3 m. Source: second-hand chart. Basis: memory.
)

// shrinkOf returns what one joint shortens one piece of a part by, lowest and
// highest estimate, in millimetres.
//
//	across  s = f S        (PARTS-10)
//	along   s = l δ / 1000        (PARTS-11)
//
// Symbols: S shrinkage across one seam, lowest and highest of SHRINK-1, 2, 4, 5
// and 6 [mm]; f = 1 for the part that a fillet stands on, 1/2 for each of two parts
// joined edge to edge or lapped, 0 for a part that stands on another [-]; l length
// of one seam [mm]; δ from SHRINK-3, and 1 mm/m for butts or 1/3 mm/m for fillets.
// Valid: free parts of carbon steel.
// Assumes: a seam longer than the section is wide runs along the piece; of any
// other nobody says, so that the range holds both; seams of a piece add up.
// Source: TWI FAQ weld shrinkage allowance for 3 mm in 3 m of butt; the other
// constants are recalled.
// Basis: memory.
// Accuracy: estimating only: an allowance to be corrected by the shop's own measure.
// Errors: none; what is not known adds nothing.
func shrinkOf(p *plan.Plan, part *Part, t touch) shrinks {
	if p.MetalGroup != "carbon steel" || p.Joint.Length <= 0 {
		return shrinks{}
	}
	var across [2]float64
	if p.Shrink != nil {
		f := shareOfPart(p, t)
		across = [2]float64{float64(p.Shrink[0]) * f, float64(p.Shrink[1]) * f}
	}
	if p.Joint.AllRound && (!t.second || p.Joint.Mitre > 0) {
		return shrinks{} // the end of the piece, which nothing shortens along it
	}
	along := alongOf(p, part)
	if wide := max(part.Section.H, part.Section.B, part.Width); p.Joint.Length > wide*1.05 {
		return shrinks{low: along[0], high: along[1], along: along[1] > 0}
	}
	return shrinks{low: min(along[0], across[0]), high: max(along[1], across[1]), across: across[1] > 0, along: along[1] > 0}
}

// shareOfPart is the share of the shrinkage across a seam that shortens the part.
func shareOfPart(p *plan.Plan, t touch) float64 {
	switch {
	case p.Prep.Kind == joint.Fillet && t.second:
		return 1
	case p.Prep.Kind == joint.Fillet:
		return 0
	case t.first && t.second:
		return 1
	}
	return 0.5
}

// alongOf returns the lowest and the highest estimate of what a seam shortens a
// part by along itself.
func alongOf(p *plan.Plan, part *Part) [2]float64 {
	rate, sides := alongButt, 1
	if p.Prep.Kind == joint.Fillet || p.Prep.Kind == joint.Lap {
		rate, sides = alongFillet, max(p.Joint.Sides, 1)
	}
	if p.Area <= 0 {
		return [2]float64{}
	}
	metres := float64(p.Joint.Length) / 1000 * shareWelded(p)
	out := [2]float64{rate * float64(sides) * metres, rate * float64(sides) * metres}
	if v, err := weld.ShrinkLong(p.Area*units.MM2(sides), part.Section.Area); err == nil {
		out[0], out[1] = min(out[0], v*metres), max(out[1], v*metres)
	}
	return out
}

// shareWelded is the welded length of a stitched seam over its whole length.
func shareWelded(p *plan.Plan) float64 {
	if p.Joint.Stitch == nil || p.Segments <= 0 {
		return 1
	}
	return min(1, float64(p.Segments)*float64(p.Joint.Stitch.Segment)/float64(p.Joint.Length))
}

// shrinkSum gathers which ways stand in an allowance.
type shrinkSum struct{ across, along bool }

func (s *shrinkSum) add(one shrinks) {
	s.across, s.along = s.across || one.across, s.along || one.along
}

func (s *shrinkSum) words() string {
	var ways []string
	if s.across {
		ways = append(ways, "across a seam f S (PARTS-10)")
	}
	if s.along {
		ways = append(ways, "along a seam l δ / 1000 (PARTS-11)")
	}
	return strings.Join(ways, ", ")
}
