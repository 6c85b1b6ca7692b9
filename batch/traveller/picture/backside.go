package picture

import (
	"math"
	"slices"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

// far is what a welding symbol shows on the side of the line away from the arrow.
type far uint8

const (
	nothing  far = iota
	sameSign     // the joint is prepared, or a fillet laid, on both sides
	backRun      // a run from the back on the root of a groove prepared on one side
	stays        // a backing that is fused in and stays
	comesOff     // a backing that is taken off after welding
)

// farOf tells what the other side of a joint's symbol shows. A groove prepared on one
// side and welded from both has a back run there, no second groove.
func farOf(pl *plan.Plan) far {
	kind := KindOf(pl)
	switch {
	case isDouble(kind):
		return sameSign
	case pl.Prep.Backing == "bar":
		return stays
	case pl.Prep.Under():
		return comesOff
	case isSingle(kind) && (pl.Joint.Sides == 2 || pl.Prep.Backing == "gouge"):
		if len(pl.Runs) > 0 && !slices.ContainsFunc(pl.Runs, func(r plan.Run) bool { return r.Side == 2 }) {
			return nothing // of a part of the thickness only: nothing is laid at its back
		}
		return backRun
	case kind == joint.SquareButt && pl.Joint.Sides != 2 && pl.Prep.Backing == "gouge":
		return backRun
	case pl.Joint.Sides == 2:
		return sameSign
	}
	return nothing
}

// isSingle tells whether a groove is prepared on one side.
func isSingle(k joint.Kind) bool {
	switch k {
	case joint.SingleV, joint.SingleBevel, joint.SingleU, joint.SingleJ:
		return true
	}
	return false
}

// Measures of what stands opposite the sign.
const (
	backingHeight = 3.2
	dashedBelow   = 0.9 // the line for the other side, below the firm one
)

// opposite draws what the other side has that is not the sign again: ISO 2553 has a
// half circle for the back run, a rectangle with M for a backing that stays and with
// MR for one that comes off; AWS A2.4 the same half circle, a rectangle without a
// letter, and with R. By ISO it stands below the dashed line, which is the other
// side's; by AWS above the line.
func (w *weldSymbol) opposite(f *drawing) {
	base, down := w.line+dashedBelow, 1.0
	if w.aws {
		base, down = w.line, -1
	}
	middle := w.x + sign/2
	switch w.far {
	case backRun:
		var ps []page.Point
		for i := range 13 {
			t := math.Pi * float64(i) / 12
			ps = append(ps, page.Point{X: middle + sign/2*math.Cos(t), Y: base + down*sign/2*math.Sin(t)})
		}
		f.p.Draw(f.box, page.Shape{Name: "back run", Points: ps, Closed: true, Line: 0.3, Fill: page.None})
	case stays, comesOff:
		letter := backingLetter(w.far, w.aws)
		wide := max(symbolStyle.Width(letter)+1.4, sign+0.6)
		top := min(base, base+down*backingHeight)
		f.p.Draw(f.box, page.Shape{Name: "backing " + letter, Points: []page.Point{
			{X: middle - wide/2, Y: top}, {X: middle + wide/2, Y: top}, {X: middle + wide/2, Y: top + backingHeight}, {X: middle - wide/2, Y: top + backingHeight},
		}, Closed: true, Line: 0.3, Fill: page.None})
		f.p.Write(f.box, middle-symbolStyle.Width(letter)/2, top+backingHeight/2+symbolStyle.Ascent()/2-0.35, symbolStyle.Width(letter)+0.1, page.Left, symbolStyle, letter)
	}
}

// backingLetter is the letter inside the rectangle of a backing.
func backingLetter(w far, aws bool) string {
	switch {
	case aws && w == comesOff:
		return "R"
	case aws:
		return ""
	case w == comesOff:
		return "MR"
	}
	return "M"
}
