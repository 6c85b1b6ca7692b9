package traveller

import (
	"slices"
	"strings"

	"seamtally/batch/finding"
)

// office are the codes of checks whose remedy is for whoever keeps the list, the shop file
// or the stores: a welder at the joint can do nothing of it but ask.
var office = []string{
	"wire-metal", "filler-never", "wish-position", "wish-not-met", "machine-none", "no-price", "material-blank", "material-unknown", "thickness-blank",
	"size-blank", "size-bad", "length-blank", "no-area", "kind-outside", "position-unknown", "word-unknown", "nothing-fits", "wire-to-buy", "wire-softer", "mark-twice", "preheat-narrow",
	"figure-unlikely", "gas-not-needed", "braze-uncoated", "not-in-stock", "unit-thickness", "unit-length", "unit-part", "procedure-unmet", "procedure-unknown",
	"part-thickness", "part-grade", "part-missing", "part-quantity", "part-unused", "part-ambiguous", "part-too-long", "part-seam", "part-refused",
	"part-small", "part-alone", "part-thin", "leg-unlikely", "travel-fast", "flare-low",
	"leg-min", "throat-min", "stitch-short", "stitch-gap", "short-arc-aws",
}

// untilThen are the codes of checks by which somebody may find that no preheat is needed:
// until then the parts are warmed.
var untilThen = []string{"preheat-certificate", "preheat-methods"}

// toDo says on the sheet what to do about a check: the welder's own remedy, or, where
// somebody else must settle it first, whom to ask.
func (f *flow) toDo(t told) string {
	switch c := t.check; {
	case c.Do == "":
		return ""
	case slices.Contains(untilThen, c.Code):
		return f.say("ask.preheat")
	case f.words.Has("floor." + c.Code): // what of it can be done at the joint
		return f.inUnits(f.say("floor." + c.Code))
	case !slices.Contains(office, c.Code):
		return f.remedy(c)
	case t.stops():
		return f.say("ask.stop")
	}
	return f.say("ask.check")
}

// reason is what a check found. Of a word that was not understood the planner's English
// goes on to what the list may say instead, which is no help at the joint.
func (f *flow) reason(c finding.Check) string {
	text := f.checkText(c)
	if c.Code == "word-unknown" {
		text, _, _ = strings.Cut(text, "; ")
		text, _, _ = strings.Cut(text, ": this tool")
	}
	return text
}
