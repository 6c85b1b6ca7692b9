package parts

import (
	"math"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// Shrink is what one joint shortens one piece of a part by, taken apart: a spreadsheet
// follows length, leg, area and quantity by it.
type Shrink struct {
	Joint  int // index into the joints
	Pieces int // of the part, all its rows together

	Along   float64 // length that runs along over the length of the seam, times the share welded
	Rate    float64 // mm/m by rule, of all sides of the joint
	PerArea float64 // mm/m for 1 mm² of a seam's area by SHRINK-3; 0: outside its limits

	Across  float64 // f, or twice f all round
	Lines   []plan.ShrinkLine
	OnLeg   bool    // Lines hang on the larger leg, not on the area
	Strip   float64 // share of the section that 1 mm of seam crosses; 0: all of it
	Either  bool    // along or across: nobody says
	Longest float64 // mm; a longer seam runs along. 0: it does not matter
}

// Shortening along a seam in mm per metre that is published beside SHRINK-3.
const (
	alongButt   = 1.0     // 3 mm in 3 m. Source: TWI FAQ weld shrinkage allowance. Basis: published.
	alongFillet = 1.0 / 3 // 1 mm in 3 m. Source: second-hand chart. Basis: memory.
)

// aBitWider is by how much a seam must be longer than its section is wide to run along.
const aBitWider = 1.05

// shrinkOf returns what one joint shortens one piece of a part by; nil where it does not.
func shrinkOf(p *plan.Plan, part *Part, t touch, pieces int) *Shrink {
	if p.MetalGroup != "carbon steel" || p.Joint.Length <= 0 {
		return nil
	}
	round := p.Joint.AllRound
	if round && (!t.second || p.Joint.Mitre > 0) {
		return nil // the end of the piece, which nothing shortens along it
	}
	s := &Shrink{Joint: t.joint, Pieces: pieces}
	s.along(p, part)
	s.across(p, part, t)
	switch {
	case round:
		s.Along, s.Across, s.Strip = s.Along/2, s.Across*2, s.Strip/4
	default:
		s.Either = true
		s.Longest = float64(max(part.Section.H, part.Section.B, part.Width)) * aBitWider
	}
	if s.Along <= 0 && s.Across <= 0 {
		return nil
	}
	return s
}

// along fills in what the seam shortens the part by along itself.
func (s *Shrink) along(p *plan.Plan, part *Part) {
	if p.Area <= 0 {
		return
	}
	s.Along, s.Rate = plan.WeldedShare(p), alongButt
	sides := 1
	if p.Prep.Kind == joint.Fillet || p.Prep.Kind == joint.Lap {
		sides = max(p.Joint.Sides, 1)
		s.Rate = alongFillet * float64(sides)
	}
	if v, err := weld.ShrinkLong(p.Area*units.MM2(sides), part.Section.Area); err == nil {
		s.PerArea = v / float64(p.Area)
	}
}

// across fills in what the seam draws the part together by across itself.
func (s *Shrink) across(p *plan.Plan, part *Part, t touch) {
	s.Lines, s.OnLeg = plan.ShrinkLines(p)
	if len(s.Lines) == 0 {
		return
	}
	s.Across = shareOfPart(p, t)
	thick := p.Prep.T1
	if t.second {
		thick = p.Prep.T2
	}
	if part.Section.Area > 0 {
		s.Strip = float64(thick) / float64(part.Section.Area)
	}
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

// Range returns what the joint shortens one piece by, lowest and highest, in mm.
//
//	across  s = f S min(1, l t / Ap)        (PARTS-10)
//	along   s = l δ / 1000                  (PARTS-11)
//
// Symbols: S shrinkage across one seam, lowest and highest of SHRINK-1, 2, 4, 5
// and 6 [mm]; f = 1 for the part that a fillet stands on, 1/2 for each of two parts
// joined edge to edge or lapped, 0 for a part that stands on another [-]; l length
// of one seam [mm]; t thickness of the part at the seam [mm]; Ap its section [mm²]; δ
// from SHRINK-3, and 1 mm/m for butts or 1/3 mm/m for fillets.
// Valid: free parts of carbon steel.
// Assumes: a seam draws the strip of the section that it crosses, l t, and the rest of
// the section holds it back: their common shortening is the mean by area. A seam longer
// than the section is wide runs along the piece; of a shorter one nobody says, so that
// the range holds both ways. A seam all round another part runs along with half of its
// length and across with a quarter on each side. Seams of a piece add up, and so do the
// ends of their ranges: the seams of one detail all run one way, and the error of a
// formula is the same in all of them, so that neither averages out.
// Source: balance of forces in an elastic bar; TWI FAQ weld shrinkage allowance for 3 mm
// in 3 m of butt; the other constants are recalled.
// Basis: memory.
// Accuracy: estimating only: an allowance to be corrected by the shop's own measure.
// Errors: none; what is not known adds nothing.
func (s *Shrink) Range(p *plan.Plan) (low, high float64) {
	length := float64(p.Joint.Length)
	each := float64(max(p.Joint.Qty, 1)) / float64(s.Pieces)
	along, across := s.alongRange(p, length), s.acrossRange(p, length)
	switch {
	case !s.Either:
		low, high = along[0]+across[0], along[1]+across[1]
	case length > s.Longest:
		low, high = along[0], along[1]
	default:
		low, high = min(along[0], across[0]), max(along[1], across[1])
	}
	return each * low, each * high
}

func (s *Shrink) alongRange(p *plan.Plan, length float64) [2]float64 {
	rates := [2]float64{s.Rate, s.Rate}
	if byArea := s.PerArea * float64(p.Area); s.PerArea > 0 {
		rates = [2]float64{min(s.Rate, byArea), max(s.Rate, byArea)}
	}
	metres := length / 1000 * s.Along
	return [2]float64{metres * rates[0], metres * rates[1]}
}

func (s *Shrink) acrossRange(p *plan.Plan, length float64) [2]float64 {
	if s.Across == 0 {
		return [2]float64{}
	}
	x := float64(p.Area)
	if s.OnLeg {
		x = float64(max(p.Prep.LegA, p.Prep.LegB))
	}
	low, high := math.Inf(1), 0.0
	for _, l := range s.Lines {
		low, high = min(low, l.K*x+l.C), max(high, l.K*x+l.C)
	}
	f := s.Across
	if s.Strip > 0 {
		f *= min(1, length*s.Strip)
	}
	return [2]float64{f * low, f * high}
}

// shrinkWords say which formulas stand in an allowance.
func shrinkWords(all []Shrink) string {
	across, along := false, false
	for i := range all {
		across, along = across || all[i].Across > 0, along || all[i].Along > 0
	}
	var ways []string
	if across {
		ways = append(ways, "across a seam f S min(1, l t / Ap) (PARTS-10)")
	}
	if along {
		ways = append(ways, "along a seam l δ / 1000 (PARTS-11)")
	}
	return strings.Join(ways, ", ")
}
