package picture

import (
	"strconv"
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// Measures of a staggered stitch: by ISO 2553 a large Z through the line between length
// and gap, by AWS A2.4 the sign of the other side further along.
const (
	zWidth, zHeight = 3.0, 3.4 // zHeight above the line and below it
	awsStagger      = 2.4
)

// Stitch is a stitch as the symbol of the joint has it, with its unit: 8×40 (160) mm by
// ISO, 2-7 in by AWS; nothing for a continuous seam.
func (b Pen) Stitch(pl *plan.Plan) string {
	f := drawing{Pen: b}
	lengths, gap := f.symbolStitch(pl)
	if lengths == "" {
		return ""
	}
	text := joined(lengths, gap) + " " + b.Show.Size(pl.Joint.Stitch.Segment).Unit
	if staggered(pl) {
		text += " " + b.Words.Say("staggered")
	}
	return text
}

// staggered tells whether the stitches of the two sides lie between one another.
func staggered(pl *plan.Plan) bool {
	s := pl.Joint.Stitch
	return s != nil && s.Staggered && farOf(pl) == sameSign
}

// symbolStitch is what stands behind the sign: number x length and (gap) by ISO,
// length-pitch by AWS.
func (f *drawing) symbolStitch(pl *plan.Plan) (lengths, gap string) {
	s := pl.Joint.Stitch
	if s == nil {
		return "", ""
	}
	num := func(v units.MM) string { return page.Clean(f.Show.Size(v).Num) }
	if f.AWS {
		a, b := num(s.Segment), num(s.Pitch)
		if strings.Contains(a+b, ".") && strings.Contains(a+b, "/") { // 1.575-7 7/8 would be read wrong
			a, b = f.Show.Decimals(s.Segment), f.Show.Decimals(s.Pitch)
		}
		return a + "-" + b, ""
	}
	lengths = num(s.Segment)
	if pl.Segments > 0 {
		lengths = strconv.Itoa(pl.Segments) + "×" + lengths
	}
	return lengths, "(" + num(s.Gap) + ")"
}

// stitchWidth is the width that the stitch takes behind the sign.
func (f *drawing) stitchWidth(pl *plan.Plan) float64 {
	lengths, gap := f.symbolStitch(pl)
	switch {
	case lengths == "":
		return 0
	case staggered(pl) && f.AWS:
		return symbolStyle.Width(lengths) + awsStagger
	case staggered(pl):
		return symbolStyle.Width(lengths) + zWidth + 1.6 + symbolStyle.Width(gap)
	}
	return symbolStyle.Width(joined(lengths, gap))
}

func joined(a, b string) string {
	if b == "" {
		return a
	}
	return a + " " + b
}

// stitch writes the stitch behind the sign on a baseline, and with the first of the
// sides the Z of a staggered one.
func (w *weldSymbol) stitch(f *drawing, pl *plan.Plan, y float64, first bool) {
	lengths, gap := f.symbolStitch(pl)
	x := w.x + sign + 0.6
	if lengths == "" {
		return
	}
	if w.aws || !staggered(pl) {
		f.p.Write(f.box, x, y, w.end-x, page.Left, symbolStyle, joined(lengths, gap))
		return
	}
	f.p.Write(f.box, x, y, symbolStyle.Width(lengths)+0.1, page.Left, symbolStyle, lengths)
	x += symbolStyle.Width(lengths) + 0.8
	if first {
		f.p.Draw(f.box, page.Shape{Name: "staggered", Points: []page.Point{
			{X: x, Y: w.line - zHeight}, {X: x + zWidth, Y: w.line - zHeight}, {X: x, Y: w.line + zHeight}, {X: x + zWidth, Y: w.line + zHeight},
		}, Line: 0.25, Fill: page.None})
	}
	x += zWidth + 0.8
	f.p.Write(f.box, x, y, symbolStyle.Width(gap)+0.1, page.Left, symbolStyle, gap)
}
