package traveller

import (
	"slices"

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

// cures tells whether one of the pages says which knob cures what.
func cures(pages []*page.Page) bool {
	return slices.ContainsFunc(pages, func(p *page.Page) bool {
		return slices.ContainsFunc(p.Boxes, func(b page.Box) bool { return b.Name == "knobs" })
	})
}

// lacksCures tells whether a sheet of an assembly has no room for which knob cures what,
// and its cover has none either.
func lacksCures(cover, sheets []*page.Page) bool {
	if cures(cover) {
		return false
	}
	has := true
	for _, p := range sheets {
		if slices.ContainsFunc(p.Boxes, func(b page.Box) bool { return b.Name == "title" }) { // a sheet begins
			if !has {
				return true
			}
			has = false
		}
		has = has || cures([]*page.Page{p}) || slices.ContainsFunc(p.Boxes, func(b page.Box) bool { return b.Name == "no settings" })
	}
	return !has
}

var (
	symptomStyle = page.Style{Face: page.Bold, Size: 17}
	cureStyle    = page.Style{Face: page.Regular, Size: 15}
)

// knobsPage says in large letters which knob cures what: a page to hang up at the machine,
// for the sheets that have no room for it.
func (b *builder) knobsPage() {
	f := b.flow(head{sheet: b.say("head.knobs")})
	f.p.Mark(0, b.say("knobs"))
	r, box := f.take("knobs title", 15)
	f.p.Write(box, r.X, r.Y+9, r.W, page.Left, page.Style{Face: page.Bold, Size: 22}, b.say("knobs"))
	const lead = 66.0
	for _, s := range symptoms {
		name, cure := page.Wrap(symptomStyle, b.say("knob."+s), lead-4, 2), page.Wrap(cureStyle, b.say("cure."+s), r.W-lead, 3)
		h := max(float64(len(name))*symptomStyle.Leading(), float64(len(cure))*cureStyle.Leading()) + 9
		row, box := f.take("knobs", h)
		f.p.Line(box, row.X, row.Y, row.Right(), row.Y, 0.25, 0)
		f.p.Lines(box, row.X, row.Y+7.6, lead-4, symptomStyle, name)
		f.p.Lines(box, row.X+lead, row.Y+7.4, row.W-lead, cureStyle, cure)
	}
}
