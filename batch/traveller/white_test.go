package traveller

import (
	"testing"

	"seamtally/batch/joint"
)

// Where what follows the picture goes on to another page, the picture takes what is left
// of its own: a third of a sheet that stays white is not given away.
func TestPictureTakesWhatAPageLeaves(t *testing.T) {
	look := metric
	look.Paper, look.Lang = "letter", "de"
	spilt := 0
	for _, wps := range []string{"", "WPS-12"} {
		for _, position := range []string{"PA", "PF", "PE"} {
			j := butt("V32", joint.DoubleV, 32, 600, position)
			j.Assembly, j.Drawing, j.Rev, j.Material = "", "", "", "S690"
			j.WPS, j.Position, j.Note = wps, position, "Stoß im Untergurt neben der Steife, siehe Zeichnung 4, Schnitt B, und die Bemerkung des Prüfers dazu auf dem Deckblatt"
			doc := faultless(t, jobOf(t, []joint.Joint{j}, look))
			for i, p := range doc.Pages {
				low, after := 0.0, false
				for _, b := range p.Boxes {
					if b.Name == "picture" {
						low = b.Bottom()
					}
					after = after || b.Name == "handling" || b.Name == "passes"
				}
				if low == 0 || after {
					continue
				}
				spilt++
				if white := p.H - marginEdge - footHeight - low; white > 25 {
					t.Errorf("%q in %s, page %d: %.0f mm stay white below the picture", wps, position, i+1, white)
				}
			}
		}
	}
	if spilt == 0 {
		t.Error("no sheet goes on to another page: nothing was tested")
	}
}
