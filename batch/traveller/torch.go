package traveller

import (
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
)

var leanDegrees = regexp.MustCompile(`(\d+)(?:\s*[-–]\s*(\d+))?\s*°`)

// leanOf reads which way the torch leans from the plan's words. The word that
// comes first counts: "push 10-15° (never drag)" is a push.
func leanOf(text string) (picture.Lean, float64) {
	low := strings.ToLower(text)
	way, at := picture.Square, len(low)
	for l, word := range map[picture.Lean]string{picture.Push: "push", picture.Drag: "drag"} {
		if i := strings.Index(low, word); i >= 0 && i < at {
			way, at = l, i
		}
	}
	degrees := 10.0
	if m := leanDegrees.FindStringSubmatch(text); m != nil {
		a, _ := strconv.ParseFloat(m[1], 64)
		b := a
		if m[2] != "" {
			b, _ = strconv.ParseFloat(m[2], 64)
		}
		degrees = min((a+b)/2, 45)
	}
	return way, degrees
}

// torch draws the torch and lists what the hands must know.
func (f *flow) torch(r page.Rect, p *plan.Plan) {
	box := f.p.Box("torch", r)
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	way, degrees := leanOf(p.Torch)
	f.p.Write(box, r.X, r.Y+4.2, torchWords, page.Left, strong, f.say("torch"))
	word := [...]string{"torch.square", "torch.push", "torch.drag"}[way]
	f.p.Write(box, r.X, r.Y+11, torchWords, page.Left, page.Style{Face: page.Bold, Size: 15}, f.say(word))
	picture.Icon{P: f.p, Box: box, At: page.Point{X: r.X + 43.5, Y: r.Y + 1}, Size: 17}.Torch(way, degrees)
	f.p.Lines(box, r.X, r.Y+15, torchWords, small.At(8.5), f.torchLines(p))
}

// torchLines are the words beside the drawing of the torch.
func (f *flow) torchLines(p *plan.Plan) []string {
	return page.Wrap(small.At(8.5), f.phrase(p.Torch), torchWords, 3)
}

// torchHead is the height of the torch and its words, above the facts.
func (f *flow) torchHead(p *plan.Plan) float64 {
	return 12.3 + small.At(8.5).Leading()*float64(max(2, len(f.torchLines(p))))
}
