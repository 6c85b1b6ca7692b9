package plan

import (
	"fmt"

	"seamtally/batch/joint"
	"seamtally/batch/weld"
)

// skewShape is a leaning plate welded on both sides: the second side lies in the
// corner that is left to 180 degrees. The same legs hold the same metal but for
// the cap; the same throat asks for longer legs where the corner is wide.
func (t *task) skewShape(front weld.Fillet) (shape, coded) {
	back := front
	back.Angle = 180 - front.Angle
	if size := t.j.Size; size.Means != joint.Leg {
		leg, err := weld.LegOfThroat(size.A, back.Angle)
		if err != nil {
			return shape{}, coded{"size-bad", "the throat cannot be turned into a leg: " + err.Error()}
		}
		back.LegA, back.LegB = leg, leg
	}
	pair := weld.SkewPair{Acute: front, Obtuse: back}
	if front.Angle > 90 {
		pair = weld.SkewPair{Acute: back, Obtuse: front}
	}
	if _, err := pair.Drawn(); err != nil {
		return shape{}, coded{"size-bad", err.Error()}
	}
	t.assume("angle", fmt.Sprintf("%s° and %s°", n2(front.Angle), n2(back.Angle)),
		fmt.Sprintf("both sides of a leaning part: legs %s and %s; the area is the mean of the two", mm(front.LegA), mm(back.LegA)), "derived")
	leg := max(front.LegA, front.LegB, back.LegA, back.LegB)
	return shape{section: pair, family: fillet, leg: float64(leg), shares: [2]float64{1, 0}}, coded{}
}

// skewAreas shows the areas of such a joint; false where it is none.
func (w *working) skewAreas(drawn string) bool {
	pair, ok := w.t.shape.section.(weld.SkewPair)
	if !ok {
		return false
	}
	side := func(f weld.Fillet) string {
		return fmt.Sprintf("%s x %s x sin %s° / 2", n2(f.LegA), n2(f.LegB), n2(f.Angle))
	}
	w.step("AREA-16", "area of one seam as drawn, mean of both sides", "A = (A1 + A2) / 2", fmt.Sprintf("(%s + %s) / 2", side(pair.Acute), side(pair.Obtuse)), drawn, geometry, "derived")
	w.step("AREA-17", "area of one seam as it will be made, mean of both sides", "A = (A1 + A2) / 2, each with its cap by AREA-6",
		fmt.Sprintf("overweld %s + gap %s; c = %s", n2(w.c.shop.Overweld), number(w.t.fitGap, 2), number(w.c.shop.Convexity, 3)), number(w.t.made, 2)+" mm²", "geometry; allowances: shop values", "derived")
	return true
}
