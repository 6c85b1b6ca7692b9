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
	head, here := f.torchHead(p), f.factsLeft(p)
	f.torch(page.Rect{X: left.X, Y: left.Y, W: left.W, H: head}, p)
	f.writeFacts(page.Rect{X: left.X, Y: left.Y + head, W: left.W, H: left.H - head}, f.facts(p, left.W)[:here])
	if len(p.Runs) > 1 {
		used := f.passTable(right, p) + 2
		right.Y, right.H = right.Y+used, right.H-used
	}
	if rest := f.facts(p, right.W)[here:]; len(rest) > 0 {
		f.writeFacts(right, rest)
		return
	}
	if right.H >= 5+4*4.6 {
		f.knobs(right)
	}
}

func (f *flow) factsBeside(r page.Rect, p *plan.Plan) {
	f.p.Line(f.p.Box("facts", r), r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	f.writeFacts(page.Rect{X: r.X, Y: r.Y + 1, W: r.W, H: r.H - 1}, f.facts(p, r.W))
}

func (f *flow) handlingHeight(p *plan.Plan) float64 {
	if f.squeeze >= tight && len(p.Runs) < 2 {
		return max(f.torchHead(p), factsHeight(f.facts(p, f.passWidth()))+2) + 3
	}
	return f.handlingWith(p, f.factsLeft(p)) + 3
}

// handlingWith is the height with so many of the smaller settings below the torch.
func (f *flow) handlingWith(p *plan.Plan, here int) float64 {
	left := f.torchHead(p) + factsHeight(f.facts(p, torchWidth)[:here]) + 2
	if len(p.Runs) < 2 {
		return max(left, knobsHeight)
	}
	right := f.passTableHeight(p)
	if rest := f.facts(p, f.passWidth())[here:]; len(rest) > 0 {
		right += factsHeight(rest) + 4
	}
	return max(left, right)
}

// factsLeft is how many of the smaller settings stand below the torch. On a close sheet the
// last of them stand below a short table of passes, as far as that makes both lower.
func (f *flow) factsLeft(p *plan.Plan) int {
	all := len(f.facts(p, torchWidth))
	best := all
	if !f.squeeze.close() || len(p.Runs) < 2 {
		return best
	}
	for here := all - 1; here >= 0; here-- {
		if f.handlingWith(p, here) < f.handlingWith(p, best)-0.1 {
			best = here
		}
	}
	return best
}
