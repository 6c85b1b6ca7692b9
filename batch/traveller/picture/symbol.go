package picture

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

// Measures of a welding symbol: the sign and where it stands behind the arrow.
const (
	sign         = 3.6 // height and width of the sign itself
	arrowRun     = 6.5 // from the arrow's tip to where the size begins
	symbolHeight = 15
	tailMost     = 14
)

// symbolStyle is the type of a symbol.
var symbolStyle = page.Style{Face: page.Regular, Size: page.MinSize}

// symbolWidth is the width a plan's symbol takes.
func (f *drawing) symbolWidth(pl *plan.Plan, tail string) float64 {
	w := f.signAt(pl) + sign + 5
	w += f.stitchWidth(pl)
	if tail != "" {
		w += 3.5 + min(symbolStyle.Width(page.Clean(tail)), tailMost)
	}
	return w
}

// signAt is how far behind the arrow's tip the sign stands: after the size.
func (f *drawing) signAt(pl *plan.Plan) float64 {
	return arrowRun + max(symbolStyle.Width(page.Clean(f.symbolSize(pl, f.AWS))), 4) + 1.5
}

// weldSymbol draws the joint's welding symbol: by ISO 2553 system A, where the
// continuous line stands for the arrow side and a dashed one for the other, or
// by AWS A2.4, where what stands below the line is on the arrow side.
type weldSymbol struct {
	p    *page.Page
	box  page.BoxID
	aws  bool
	far  far
	line float64 // y of the reference line
	end  float64 // where it ends
	x    float64 // where the sign's left edge stands
	kind joint.Kind
}

// symbol draws the welding symbol of a plan into an area of the picture, with a
// tail if there is one.
func (f *drawing) symbol(pl *plan.Plan, r page.Rect, tail string) {
	j := pl.Joint
	w := weldSymbol{
		p: f.p, box: f.box, aws: f.AWS, kind: KindOf(pl),
		far: farOf(pl), line: r.Y + r.H/2, x: r.X + f.signAt(pl),
	}
	left, right := r.X+arrowRun, r.Right()-1
	if tail != "" {
		wide := min(symbolStyle.Width(page.Clean(tail)), tailMost)
		right -= 2.5 + wide
		f.p.Line(f.box, right, w.line, right+2, w.line-2, 0.25, 0)
		f.p.Line(f.box, right, w.line, right+2, w.line+2, 0.25, 0)
		f.p.Write(f.box, right+2.3, w.line+1.1, wide+0.1, page.Left, symbolStyle, tail)
	}
	f.p.Draw(f.box, page.Shape{Name: "reference line", Points: []page.Point{{X: left, Y: w.line}, {X: right, Y: w.line}}, Line: 0.25, Fill: page.None})
	f.p.Arrow(f.box, page.Point{X: left, Y: w.line}, page.Point{X: r.X + 1, Y: r.Bottom() - 1}, 0.25, 2.2)
	if !w.aws && w.far != sameSign {
		f.p.Draw(f.box, page.Shape{Points: []page.Point{{X: left, Y: w.line + dashedBelow}, {X: right, Y: w.line + dashedBelow}}, Line: 0.2, Fill: page.None, Dash: 1.1})
	}
	if j.AllRound {
		f.p.Circle(f.box, page.Point{X: left, Y: w.line}, 1.2, 0.25, page.None)
	}
	if j.Where == joint.Site {
		f.p.Line(f.box, left, w.line, left, w.line-5, 0.25, 0)
		f.p.Draw(f.box, page.Shape{Points: []page.Point{{X: left, Y: w.line - 5}, {X: left + 2.6, Y: w.line - 4}, {X: left, Y: w.line - 3}}, Closed: true, Fill: 0})
	}
	w.end = right
	w.sides(f, pl)
}

// SignWidth is the width of what Sign draws.
const SignWidth = sign + 2

// Sign draws the sign of a plan's joint on a short line, with what stands on its other
// side: a welding symbol in small, for a table.
func (b Pen) Sign(p *page.Page, box page.BoxID, at page.Point, pl *plan.Plan) {
	f := &drawing{Pen: b, p: p, box: box}
	w := weldSymbol{p: p, box: box, aws: b.AWS, kind: KindOf(pl), far: farOf(pl), line: at.Y, x: at.X + 1}
	p.Line(box, at.X, at.Y, at.X+SignWidth, at.Y, 0.25, 0)
	up := -1.0
	if w.aws {
		up = 1
	}
	w.sign(up)
	if w.far == sameSign {
		w.sign(-up)
		return
	}
	if !w.aws {
		p.Draw(box, page.Shape{Points: []page.Point{{X: at.X, Y: at.Y + dashedBelow}, {X: at.X + SignWidth, Y: at.Y + dashedBelow}}, Line: 0.2, Fill: page.None, Dash: 0.8})
	}
	w.opposite(f)
}

// sides puts the sign, the size before it and the stitch behind it on the arrow
// side, and on the other where the weld is on both, else what stands there.
func (w *weldSymbol) sides(f *drawing, pl *plan.Plan) {
	arrow := -1.0 // above the line
	if w.aws {
		arrow = 1
	}
	for _, up := range []float64{arrow, -arrow} {
		w.sign(up)
		y := w.line - 1.1
		if up > 0 {
			y = w.line + 3.2
		}
		size := f.symbolSize(pl, w.aws)
		f.p.Write(f.box, w.x-0.6-symbolStyle.Width(page.Clean(size)), y, symbolStyle.Width(page.Clean(size))+0.1, page.Left, symbolStyle, size)
		w.stitch(f, pl, y, up == arrow)
		if w.far != sameSign {
			w.opposite(f)
			return
		}
		if w.aws && staggered(pl) {
			w.x += awsStagger
		}
	}
}

func isDouble(k joint.Kind) bool {
	switch k {
	case joint.DoubleV, joint.DoubleBevel, joint.DoubleU, joint.DoubleJ:
		return true
	}
	return false
}

// sign draws the elementary sign on one side of the line; up is -1 above it.
func (w *weldSymbol) sign(up float64) {
	at := func(x, y float64) page.Point { return page.Point{X: w.x + x*sign, Y: w.line + up*y*sign} }
	stroke := func(ps ...page.Point) {
		w.p.Draw(w.box, page.Shape{Name: "sign", Points: ps, Line: 0.3, Fill: page.None})
	}
	bow := func(cx, cy, r, from, to float64) {
		var ps []page.Point
		for i := range 9 {
			t := (from + (to-from)*float64(i)/8) * math.Pi / 180
			ps = append(ps, at(cx+r*math.Cos(t), cy+r*math.Sin(t)))
		}
		stroke(ps...)
	}
	switch w.kind {
	case joint.Fillet, joint.Lap, joint.Corner:
		stroke(at(0, 0), at(0, 1), at(1, 0))
	case joint.SquareButt:
		stroke(at(0.3, 0), at(0.3, 1))
		stroke(at(0.7, 0), at(0.7, 1))
	case joint.SingleV, joint.DoubleV:
		stroke(at(0, 1), at(0.5, 0), at(1, 1))
	case joint.SingleBevel, joint.DoubleBevel:
		stroke(at(0.3, 0), at(0.3, 1))
		stroke(at(0.3, 0), at(1, 1))
	case joint.SingleU, joint.DoubleU:
		stroke(at(0.5, 0), at(0.5, 0.4))
		bow(0.5, 0.9, 0.5, 180, 360)
	case joint.SingleJ, joint.DoubleJ:
		stroke(at(0.3, 0), at(0.3, 1))
		bow(0.3, 0.9, 0.5, 270, 360)
	case joint.FlareBevel:
		stroke(at(0.3, 0), at(0.3, 1))
		bow(1.3, 0, 0.9, 180, 90)
	case joint.FlareV:
		bow(-0.5, 0, 0.9, 0, 90)
		bow(1.5, 0, 0.9, 180, 90)
	case joint.Plug, joint.Slot:
		stroke(at(0, 0), at(0, 0.7), at(1, 0.7), at(1, 0))
	case joint.Edge:
		for _, x := range []float64{0.2, 0.5, 0.8} {
			stroke(at(x, 0), at(x, 1))
		}
	}
}

// symbolSize is what stands before the sign: the leg or throat of a fillet with
// its letter (AWS: the leg alone), the depth of a partial penetration.
func (f *drawing) symbolSize(pl *plan.Plan, aws bool) string {
	r, means := pl.Prep, pl.Joint.Size.Means
	switch {
	case r.LegA > 0 && aws && r.LegB > 0 && r.LegB != r.LegA:
		return f.Show.Size(r.LegA).Num + "×" + f.Show.Size(r.LegB).Num
	case r.LegA > 0 && aws:
		return f.Show.Size(r.LegA).Num
	case r.LegA > 0 && means == joint.Throat:
		return "a" + f.Show.Size(r.Throat).Num
	case r.LegA > 0 && r.LegB > 0 && r.LegB != r.LegA:
		return "z" + f.Show.Size(r.LegA).Num + "×" + f.Show.Size(r.LegB).Num
	case r.LegA > 0:
		return "z" + f.Show.Size(r.LegA).Num
	case means == joint.Penetration && aws:
		return "(" + f.Show.Size(pl.Joint.Size.A).Num + ")"
	case means == joint.Penetration:
		return "s" + f.Show.Size(pl.Joint.Size.A).Num
	}
	return ""
}

// symbolTail names the procedure, or the process: by its number, by AWS by its letters.
func (f *drawing) symbolTail(pl *plan.Plan) string {
	if pl.Joint.WPS != "" {
		return pl.Joint.WPS
	}
	if f.AWS && pl.ProcessAWS != "" {
		return pl.ProcessAWS
	}
	return pl.Process
}

// symbolCorner finds a corner of the picture that no part reaches into.
func (f *drawing) symbolCorner(parts []page.Rect, width float64) (page.Rect, bool) {
	in := f.frame.Inset(1.5, 1.5)
	low := in.Bottom() - symbolHeight - 3.5 // above the caption
	for _, at := range []page.Point{{X: in.X, Y: in.Y}, {X: in.Right() - width, Y: in.Y}, {X: in.Right() - width, Y: low}, {X: in.X, Y: low}} {
		r := page.Rect{X: at.X, Y: at.Y, W: width, H: symbolHeight}
		clear := true
		for _, p := range parts {
			if r.X < p.Right() && p.X < r.Right() && r.Y < p.Bottom() && p.Y < r.Bottom() {
				clear = false
			}
		}
		if clear {
			return r, true
		}
	}
	return page.Rect{}, false
}

// KindOf returns the kind of joint that a plan is for: as prepared, else as listed.
func KindOf(p *plan.Plan) joint.Kind {
	if p.Prep.Kind != joint.NoKind {
		return p.Prep.Kind
	}
	return p.Joint.Kind
}
