package traveller

import (
	"seamtally/batch/traveller/page"
)

// symptoms are the faults that a knob cures, in the order they show.
var symptoms = []string{"stub", "spatter", "pores", "undercut", "cold", "burn"}

// knobsToo adds the cures to a page that ends with room for them: the sheets of a set-up
// with many copies leave them out.
func (f *flow) knobsToo() {
	if f.room() < knobsHeight+4 {
		return
	}
	f.gap(4)
	r, _ := f.take("cures", knobsHeight)
	f.knobs(r)
}

// knobs says which knob cures what, as many as there is room for.
func (f *flow) knobs(r page.Rect) {
	box := f.p.Box("knobs", r)
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	f.p.Write(box, r.X, r.Y+4.2, r.W, page.Left, strong, f.say("knobs"))
	lead := 20.0
	for _, s := range symptoms {
		lead = max(lead, min(strong.At(8.5).Width(page.Clean(f.say("knob."+s)))+2, 42))
	}
	y := r.Y + 9
	for _, s := range symptoms {
		if y+1 > r.Bottom() {
			return
		}
		f.p.Write(box, r.X, y, lead-1, page.Left, strong.At(8.5), f.say("knob."+s))
		f.p.Write(box, r.X+lead, y, r.W-lead, page.Left, small.At(8.5), f.say("cure."+s))
		y += 4.8
	}
}
