package plan

import (
	"fmt"
	"math"

	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// addGouge adds the metal that replaces what is gouged from the back: a groove
// with a round bottom, down through the root face to sound metal. Metal of the
// front that is gouged away has been laid once and is laid again.
func (c *catalog) addGouge(t *task) {
	r := c.rules.gougeRadius
	depth := float64(t.prep.RootFace) + c.rules.gougeBelow
	area, mouth := gouged(r, depth)
	back := &t.sides[1]
	if g, ok := t.shape.section.(weld.Groove); ok && g.Back.Depth == 0 {
		// The gouge alone makes the back's mouth: all that was drawn belongs to the front.
		high := float64(c.shop.CapOn(t.thinner()))
		wider := 2.0 / 3 * high * max(0, mouth-float64(g.Gap))
		cover := 2.0/3*high*(float64(g.Gap)+2) + wider
		t.made += wider
		t.sides[0].drawn, t.sides[0].made = t.drawn, t.made-cover
		*back = side{made: cover, depth: depth}
	}
	t.prep.Gouge = Gouge{units.MM(depth), units.MM(mouth)}
	t.made += area
	back.made += area
	back.drawn += area
	filled := fmt.Sprintf("with a bottom of radius %.0f mm and filled again; gouging itself is not in the hours", r)
	t.assumeKin("gouge", fmt.Sprintf("%.0f mm²", area), fmt.Sprintf("gouged %.1f mm deep ", depth)+filled, "common-practice", "gouged "+filled)
}

// gouged returns area and mouth of a groove with straight walls and a round bottom
// of a radius: less than the radius deep it is a segment of the circle.
func gouged(r, depth float64) (area, mouth float64) {
	if depth >= r {
		return math.Pi*r*r/2 + 2*r*(depth-r), 2 * r
	}
	half := math.Sqrt(2*r*depth - depth*depth)
	return r*r*math.Acos((r-depth)/r) - (r-depth)*half, 2 * half
}
