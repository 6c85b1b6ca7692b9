package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
	"seamtally/batch/traveller/sketch"
	"seamtally/batch/units"
)

// Every dimension of every picture has its figure, in every look: a dimension line
// without one says nothing.
func TestEveryDimensionHasItsFigure(t *testing.T) {
	for name, opts := range looks() {
		joints := everyKind()
		for _, k := range []joint.Kind{joint.SingleV, joint.SingleBevel, joint.DoubleV, joint.SingleU, joint.DoubleBevel} {
			j := butt("G-"+string(k), k, 25, 500, "PA")
			j.Backing = "gouge"
			joints = append(joints, j)
		}
		job := jobOf(t, joints, opts)
		doc := faultless(t, job)
		figures := show.Figures{US: opts.US}
		for i := range job.Plans {
			p := &job.Plans[i]
			pg := sheetOf(doc, p.Joint.Mark)
			s, ok := sketch.Build(p)
			if pg == nil || !ok {
				continue
			}
			texts := map[string]int{}
			for _, text := range pg.Texts {
				if pg.Boxes[text.Box].Name == "picture" && text.Face == page.Bold {
					texts[text.S[strings.LastIndexByte(text.S, ' ')+1:]]++
				}
			}
			for _, d := range s.Dims {
				figure := figures.Size(units.MM(d.Value)).Num
				figure = figure[strings.LastIndexByte(figure, ' ')+1:]
				if texts[figure]--; texts[figure] < 0 {
					t.Errorf("%s, %s: the dimension %s %s has no figure", name, p.Joint.Mark, d.Name, figure)
				}
			}
		}
	}
}
