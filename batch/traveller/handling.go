package traveller

import (
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

const (
	torchWidth  = 76.0
	torchWords  = 42.0 // beside the drawing of the torch
	knobsHeight = 36.0
	passHead    = 12.4
	mostPasses  = 10 // rows of the pass table on a sheet
)

// handling puts how the torch is held beside what each pass is welded with, or,
// for a single pass, beside which knob cures what. On a tight sheet the smaller
// settings stand beside the torch, and the cures are left out.
func (f *flow) handling(p *plan.Plan) {
	h := f.handlingHeight(p)
	r, _ := f.take("handling", h)
	left := page.Rect{X: r.X, Y: r.Y, W: torchWidth, H: h - 2}
	right := page.Rect{X: r.X + torchWidth + 4, Y: r.Y, W: r.W - torchWidth - 4, H: h - 2}
	if f.squeeze >= tight && len(p.Runs) < 2 {
		f.torch(left, p)
		f.factsBeside(right, p)
		return
	}
	head := f.torchHead(p)
	f.torch(page.Rect{X: left.X, Y: left.Y, W: left.W, H: head}, p)
	below := page.Rect{X: left.X, Y: left.Y + head, W: left.W, H: left.H - head}
	f.writeFacts(f.p.Box("facts", below), below, p)
	if len(p.Runs) > 1 {
		used := f.passTable(right, p) + 2
		right.Y, right.H = right.Y+used, right.H-used
	}
	if right.H >= 5+4*4.6 {
		f.knobs(right)
	}
}

func (f *flow) factsBeside(r page.Rect, p *plan.Plan) {
	box := f.p.Box("facts", r)
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	f.writeFacts(box, page.Rect{X: r.X, Y: r.Y + 1, W: r.W, H: r.H - 1}, p)
}

func (f *flow) handlingHeight(p *plan.Plan) float64 {
	if f.squeeze >= tight && len(p.Runs) < 2 {
		return max(f.torchHead(p), f.factsHeight(p, f.passWidth())+2) + 3
	}
	left := f.torchHead(p) + f.factsHeight(p, torchWidth) + 2
	right := knobsHeight
	if len(p.Runs) > 1 {
		right = f.passTableHeight(p)
	}
	return max(left, right) + 3
}
