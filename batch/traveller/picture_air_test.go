package traveller

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
	"seamtally/templates"
)

// The name of a gap stands clear of the root bead that hangs over it: its tall letters
// touched the bead where a thin butt is drawn large.
func TestTheGapIsNamedClearOfTheRootBead(t *testing.T) {
	const air = 0.4 // mm between the ink of the letters and the middle of the line
	seen := 0
	for _, lang := range templates.Languages() {
		words, err := templates.Wording(lang)
		must(t, err)
		for _, thick := range []units.MM{1.5, 2, 3, 4} {
			for _, gap := range []units.MM{0.8, 1.1, 1.5, 2} {
				look := metric
				look.Lang = lang
				j := butt("V", joint.SquareButt, thick, 600, "PA")
				j.Gap, j.GapGiven = gap, true
				for _, p := range faultless(t, jobOf(t, []joint.Joint{j}, look)).Pages {
					for _, text := range p.Texts {
						if p.Boxes[text.Box].Name != "picture" || len(text.S) < len(words.Say("dim.gap")) || text.S[:len(words.Say("dim.gap"))] != words.Say("dim.gap") {
							continue
						}
						seen++
						area := page.Rect{X: text.X, Y: text.Y - text.Ascent(), W: text.W, H: text.Ascent() + text.Descent()}.Inset(-air, -air)
						for _, s := range p.Shapes {
							if s.Name == "pass 1" && touches(area, s.Points) {
								t.Errorf("%s, %g mm, gap %g: the root bead touches %q", lang, float64(thick), float64(gap), text.S)
							}
						}
					}
				}
			}
		}
	}
	if seen < 50 {
		t.Errorf("only %d gaps were looked at", seen)
	}
}

// touches tells whether a closed outline comes into an area.
func touches(area page.Rect, outline []page.Point) bool {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		for k := range 21 {
			x, y := a.X+(b.X-a.X)*float64(k)/20, a.Y+(b.Y-a.Y)*float64(k)/20
			if x > area.X && x < area.Right() && y > area.Y && y < area.Bottom() {
				return true
			}
		}
	}
	return false
}
