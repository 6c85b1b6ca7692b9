package traveller

import (
	"regexp"
	"slices"
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

// torchWay is a way to hold the torch, and the passes that are welded so.
type torchWay struct {
	text string
	runs []plan.Run
}

// torchWays are the ways to hold the torch in the passes of a plan, in the order in which
// they first come.
func torchWays(p *plan.Plan) []torchWay {
	var out []torchWay
	for _, r := range p.Runs {
		k := slices.IndexFunc(out, func(w torchWay) bool { return w.text == r.Torch })
		if k < 0 {
			k, out = len(out), append(out, torchWay{text: r.Torch})
		}
		out[k].runs = append(out[k].runs, r)
	}
	if len(out) == 0 {
		return []torchWay{{text: p.Torch}}
	}
	return out
}

// torch draws the torch and says how it is held; where the root is laid in another manner
// than the passes on it, of each.
func (f *flow) torch(r page.Rect, p *plan.Plan) {
	box := f.p.Box("torch", r)
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	ways := torchWays(p)
	if len(ways) == 1 || f.squeeze < pressed {
		f.p.Write(box, r.X, r.Y+4.2, torchWords, page.Left, strong, f.say("torch"))
	}
	if len(ways) == 1 {
		lean, degrees := leanOf(ways[0].text)
		f.p.Write(box, r.X, r.Y+11, torchWords, page.Left, page.Style{Face: page.Bold, Size: 15}, f.leanWord(lean))
		picture.Icon{P: f.p, Box: box, At: page.Point{X: r.X + 43.5, Y: r.Y + 1}, Size: 17}.Torch(lean, degrees)
		f.p.Lines(box, r.X, r.Y+15, torchWords, torchStyle, f.torchLines(ways[0], torchWords))
		return
	}
	y := r.Y + f.waysTop()
	for _, w := range ways {
		f.torchOf(box, page.Rect{X: r.X, Y: y, W: r.W, H: f.torchRow(w)}, w)
		y += f.torchRow(w)
	}
}

// waysTop is the height above the first of several ways: a pressed sheet leaves out the
// heading over them.
func (f *flow) waysTop() float64 {
	if f.squeeze >= pressed {
		return 1
	}
	return 5.2
}

// torchOf draws one of several ways to hold the torch, with the passes that it is for.
func (f *flow) torchOf(box page.BoxID, r page.Rect, w torchWay) {
	lean, degrees := leanOf(w.text)
	y, kinds, word := r.Y+4, f.kindNames(w.runs), f.leanWord(lean)
	f.p.Write(box, r.X, y, waysWords, page.Left, body, kinds)
	if x := r.X + body.Width(page.Clean(kinds)) + 2; f.kindsBeside(w) {
		f.p.Write(box, x, y, r.X+waysWords-x, page.Left, title, word)
	} else {
		y += body.Leading()
		f.p.Write(box, r.X, y, waysWords, page.Left, title, word)
	}
	f.p.Lines(box, r.X, y+3.6, waysWords, torchStyle, f.torchLines(w, waysWords))
	picture.Icon{P: f.p, Box: box, At: page.Point{X: r.X + waysWords + 2, Y: r.Y}, Size: 11}.Torch(lean, degrees)
}

// kindsBeside tells whether the names of the passes and the way to hold the torch in them
// have room in one line.
func (f *flow) kindsBeside(w torchWay) bool {
	lean, _ := leanOf(w.text)
	return body.Width(page.Clean(f.kindNames(w.runs)))+2+title.At(9).Width(page.Clean(f.leanWord(lean))) <= waysWords
}

var torchStyle = small.At(8.5)

// waysWords is the width of the words of one of several ways, beside its drawing.
const waysWords = 52.0

func (f *flow) leanWord(l picture.Lean) string {
	return f.say([...]string{"torch.square", "torch.push", "torch.drag"}[l])
}

// torchLines are the words beside the drawing of the torch.
func (f *flow) torchLines(w torchWay, width float64) []string {
	return page.Wrap(torchStyle, f.phrase(w.text), width, 3)
}

// torchRow is the height of one of several ways to hold the torch.
func (f *flow) torchRow(w torchWay) float64 {
	h := 5.4 + torchStyle.Leading()*float64(len(f.torchLines(w, waysWords)))
	if !f.kindsBeside(w) {
		h += body.Leading()
	}
	return max(10.6, h)
}

// torchHead is the height of the torch and its words, above the facts.
func (f *flow) torchHead(p *plan.Plan) float64 {
	ways := torchWays(p)
	if len(ways) == 1 {
		return 12.3 + torchStyle.Leading()*float64(max(2, len(f.torchLines(ways[0], torchWords))))
	}
	h := f.waysTop()
	for _, w := range ways {
		h += f.torchRow(w)
	}
	return h
}
