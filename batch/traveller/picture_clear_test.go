package traveller

import (
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// The numbers of the passes and the sizes of a groove stand clear of the dashed legs of its
// angle: the leg of a single bevel runs through the passes, that of a V below the root
// through where the gap is named.
func TestNothingStandsOnTheLegsOfAnAngle(t *testing.T) {
	bevel := butt("B-1", joint.SingleBevel, 10, 160, "PF")
	bevel.Gap, bevel.Angle, bevel.Backing = 4, 50, "bar"
	wide := butt("B-2", joint.SingleV, 9.5, 64, "PA")
	wide.Gap, wide.Angle, wide.Backing, wide.Material = 6.4, 60, "bar", "6061"
	for _, j := range []joint.Joint{bevel, wide} {
		j.GapGiven, j.RootFaceGiven = true, true
		for name, look := range looks() {
			p := faultless(t, jobOf(t, []joint.Joint{j}, look)).Pages
			last := p[len(p)-1]
			var legs [][]page.Point
			for _, s := range last.Shapes {
				if last.Boxes[s.Box].Name == "picture" && s.Dash == 0.8 && len(s.Points) == 2 {
					legs = append(legs, s.Points)
				}
			}
			if len(legs) == 0 {
				t.Errorf("%s, %s: no angle is drawn", j.Mark, name)
			}
			for _, text := range throughTexts(last, legs) {
				t.Errorf("%s, %s: the leg of the angle runs through %q", j.Mark, name, text)
			}
		}
	}
}

// The name of the second side never stands under the web towards the first: there it may
// be taken for the name of the part, or of the other weld.
func TestTheSecondSideIsNamedOnItsOwnSide(t *testing.T) {
	for _, paper := range []string{"a4", "letter"} {
		for _, thick := range []units.MM{4, 5.6, 7, 8, 9, 10} {
			j := leg("B-1", 5, thick, 10.7, 50, "PB")
			j.Sides, j.Qty, j.Quality, j.NDT, j.Wire, j.Material = 2, 24, "C", "VT", "T 46 2 P", "S355J2"
			look := metric
			look.Lang, look.Paper = "de", paper
			for _, p := range faultless(t, jobOf(t, []joint.Joint{j}, look)).Pages {
				web, second := 0.0, 0.0 // the middle of the web, which its size stands over, and the end of the name
				for _, text := range p.Texts {
					switch {
					case p.Boxes[text.Box].Name != "picture":
					case text.S == strings.Replace(fmt.Sprint(float64(thick)), ".", ",", 1):
						web = text.X + text.W/2
					case text.S == "Seite 2":
						second = text.X + text.W
					}
				}
				if web > 0 && second > web {
					t.Errorf("%s, %v mm: the name of side 2 ends at %.1f, the web's middle is at %.1f", paper, thick, second, web)
				}
			}
		}
	}
}

// Nobody can look at a root before it is welded over where its only pass is the last.
func TestTheRootIsWitnessedWhereItIsWeldedOver(t *testing.T) {
	for thick, want := range map[units.MM]bool{2: false, 12: true} {
		kind := joint.SquareButt
		if want {
			kind = joint.SingleV
		}
		j := butt("B-1", kind, thick, 300, "PA")
		doc := faultless(t, jobOf(t, []joint.Joint{j}, metric))
		if got := strings.Contains(said(doc.Pages[0], "hold row"), "is covered"); got != want {
			t.Errorf("%v mm: the root is held: %v, want %v, in %q", thick, got, want, said(doc.Pages[0], "hold row"))
		}
	}
}
