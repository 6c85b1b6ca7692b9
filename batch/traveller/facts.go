package traveller

import (
	"slices"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// fact is one of the smaller settings.
type fact struct {
	name  string
	lines []string
}

// factStyle is how the facts are written.
var factStyle = body.At(8.5)

// factNames are the keys of the names of the facts.
var factNames = []string{"fact.travel", "fact.amps", "fact.heat", "fact.trigger", "fact.inductance", "fact.clean"}

// factName is the width of the names of the facts, before their words.
func (f *flow) factName() float64 {
	w := 17.0
	for _, key := range factNames {
		w = max(w, label.At(8.5).Width(page.Clean(f.say(key)))+2)
	}
	return min(w, 27)
}

// facts are the smaller settings of a plan, those that are known.
func (f *flow) facts(p *plan.Plan, width float64) []fact {
	travel, current, heat := "", "", ""
	if len(p.Runs) < 2 { // the table of passes has them for each
		travel, current, heat = f.travelWords(p), f.ampsWords(p), f.heatWords(p)
	}
	clean := ""
	if p.CleanWidth > 0 {
		clean = f.say("fact.clean.value", f.show.AtLeast(p.CleanWidth).String())
	}
	inductance := f.phrase(p.Inductance)
	if f.squeeze >= squeezed && !shortArc(p) { // it only says that the knob does nothing
		inductance = ""
	}
	var out []fact
	for _, e := range [][2]string{
		{"fact.travel", travel}, {"fact.amps", current}, {"fact.heat", heat}, {"fact.trigger", f.phrase(p.Trigger)},
		{"fact.inductance", inductance}, {"fact.clean", clean},
	} {
		if lines := page.Wrap(factStyle, e[1], width-f.factName(), 2); len(lines) > 0 {
			out = append(out, fact{f.say(e[0]), lines})
		}
	}
	return out
}

// shortArc tells whether any pass is welded with a short arc.
func shortArc(p *plan.Plan) bool {
	return p.Transfer == plan.ShortArc || slices.ContainsFunc(p.Runs, func(r plan.Run) bool { return r.Transfer == plan.ShortArc })
}

func (f *flow) travelWords(p *plan.Plan) string {
	speed := units.MMMin(p.Travel.Start)
	if seconds, per := f.show.Pace(speed); seconds != "" {
		return f.say("fact.travel.value", f.show.Travel(speed).String(), seconds, per.String())
	}
	return ""
}

func (f *flow) ampsWords(p *plan.Plan) string {
	switch amps := f.show.Amps(p.Current); {
	case amps.Low != "":
		return f.say("fact.amps.value", amps.Start, amps.Low, amps.High)
	case amps.Start != "":
		return amps.Start + " A"
	}
	return ""
}

// heatWords is the heat input and what it must not pass; without such a limit nobody
// needs it at the joint.
func (f *flow) heatWords(p *plan.Plan) string {
	limits := f.heatLimits(p)
	if p.HeatMax <= 0 || limits == "" {
		return ""
	}
	return f.show.List(f.show.Heat(p.HeatMax).Num, limits)
}

// heatLimits are the heat inputs between which steel and procedure want every pass.
func (f *flow) heatLimits(p *plan.Plan) string {
	text := ""
	if low := p.HeatRange[0]; low > 0 {
		text = "≥ " + f.show.Heat(low).String()
	}
	if high := p.HeatRange[1]; high > 0 {
		text = joinWords(text, "≤ "+f.show.Heat(high).String())
	}
	return text
}

const factRow = 4.3

func (t fact) height() float64 { return factRow + factStyle.Leading()*float64(len(t.lines)-1) }

func factsHeight(facts []fact) float64 {
	h := 0.0
	for _, t := range facts {
		h += t.height()
	}
	return h
}

// writeFacts writes some of the smaller settings, made for the width given.
func (f *flow) writeFacts(r page.Rect, facts []fact) {
	box := f.p.Box("facts", r)
	y, name := r.Y+3.4, f.factName()
	for _, t := range facts {
		f.p.Write(box, r.X, y, name-1, page.Left, label.At(8.5), t.name)
		f.p.Lines(box, r.X+name, y, r.W-name, factStyle, t.lines)
		y += t.height()
	}
}
