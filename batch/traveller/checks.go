package traveller

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"seamtally/batch/finding"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/units"
	"seamtally/templates"
)

// told is one check with the marks it holds for; all marks alike: none.
type told struct {
	check finding.Check
	marks []string
}

// tellings collects the errors and warnings of a set-up. One that holds for all
// its joints names no marks.
func tellings(s setup.Setup) []told {
	var out []told
	for _, p := range s.Plans {
		for _, c := range p.Checks {
			said := !p.Settings && c.Text == p.NoSettings || // stands in the place of the dials
				c.Code == "preheat" && c.Level == finding.Warning && p.Settings && p.Preheat != nil // stands large above the test bead
			if c.Level != finding.Error && c.Level != finding.Warning && !slices.Contains(toldToo, c.Code) || said {
				continue
			}
			out = tell(out, c, p.Joint.Mark)
		}
	}
	for i := range out { // one that holds for all names none
		if len(out[i].marks) == len(s.Plans) {
			out[i].marks = nil
		}
		out[i].marks = once(out[i].marks)
	}
	slices.SortStableFunc(out, func(a, b told) int { return a.grade() - b.grade() })
	return out
}

// toldToo are the codes of notes that whoever welds has to know.
var toldToo = []string{"backing-purge"}

// waits are the codes of warnings after which nobody welds before somebody has settled
// something: a coordinator, an engineer, a permit, or whoever drew the size.
var waits = []string{"weld-care", "braze", "quality-gap", "preheat-unknown", "confined", "leg-unlikely"}

// grade is 0 of an error, 1 of a warning after which the work waits, 2 of others.
func (t told) grade() int {
	switch {
	case t.check.Level == finding.Error:
		return 0
	case slices.Contains(waits, t.check.Code):
		return 1
	}
	return 2
}

// stops tells whether the work waits for what a check says.
func (t told) stops() bool { return t.grade() < 2 }

// once drops the marks that stand before already: rows may share one.
func once(marks []string) []string {
	var out []string
	for _, m := range marks {
		if !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	return out
}

func tell(list []told, c finding.Check, mark string) []told {
	for i := range list {
		if list[i].check.Code == c.Code && list[i].check.Text == c.Text {
			list[i].marks = append(list[i].marks, mark)
			return list
		}
	}
	return append(list, told{c, []string{mark}})
}

func (f *flow) checkLines(t told) []string {
	text := sentence(f.reason(t.check))
	if do := f.toDo(t); do != "" {
		text += " " + sentence(do)
	}
	text = f.show.Written(text)
	if len(t.marks) > 0 {
		text = markList(t.marks, 6) + ": " + text
	}
	return page.Wrap(body.At(9), text, f.width-f.checkLead()-1, 4)
}

// leadWord is the word before a check: that of an error before all for which work waits.
func (f *flow) leadWord(t told) string {
	if t.stops() {
		return f.say("level." + string(finding.Error))
	}
	return f.say("level." + string(finding.Warning))
}

// checkLead is the width that the words for the levels take before their checks.
func (f *flow) checkLead() float64 {
	w := 16.0
	for _, level := range []finding.Level{finding.Error, finding.Warning} {
		w = max(w, strong.At(9).Width(page.Clean(f.say("level."+string(level))))+6)
	}
	return w
}

// checkText words a check in the language of the sheet: its own sentence with its
// figures; where that was put together of parts, the rule behind it; and where the
// language has neither, the planner's English.
func (f *flow) checkText(c finding.Check) string {
	if key := "check." + c.Key; c.Key != "" && f.words.Has(key) {
		text := fill(f.say(key), f.figuresIn(c.Figures()))
		if f.show.US {
			return units.ImperialAs(text, c.Metric())
		}
		return text
	}
	if key := "rule." + c.Code; c.Key == "" && f.words.Has(key) {
		return f.inUnits(f.say(key))
	}
	return c.Text
}

// figuresIn words the metals, the machines of the table, and the modes of the arc that stand
// at the end of a figure, as in a wire's name with its mode.
func (f *flow) figuresIn(figures []string) []string {
	out := slices.Clone(figures)
	for i, text := range out {
		if out[i] = f.phrase(f.takenText(text)); out[i] != text {
			continue
		}
		for _, t := range []plan.Transfer{plan.ShortArc, plan.Globular, plan.Spray, plan.Pulse} {
			if before, ok := strings.CutSuffix(text, string(t)); ok && (before == "" || strings.HasSuffix(before, " ")) {
				out[i] = before + f.transfer(t)
			}
		}
	}
	return out
}

// remedy says what to do about a check.
func (f *flow) remedy(c finding.Check) string {
	key := "do." + c.Do
	if was := f.remedies[c.Do]; was != "" {
		key = was
	}
	switch {
	case !f.words.Has(key):
		return c.Do
	case f.show.US:
		return units.ImperialAs(f.say(key), strings.TrimPrefix(key, "do."))
	}
	return f.say(key)
}

// imperialRemedies are the keys of the remedies by what the planner says in inches: the
// wording knows them by their metric sentence.
func imperialRemedies(words templates.Words) map[string]string {
	out := map[string]string{}
	for _, key := range words.Keys("do.") {
		out[units.Imperial(strings.TrimPrefix(key, "do."))] = key
	}
	return out
}

func (b *builder) inUnits(text string) string {
	if b.show.US {
		return units.Imperial(text)
	}
	return text
}

// fill puts the figures of a check into its sentence: the first for {1} and so on, in
// the order that the language wants.
func fill(text string, figures []string) string {
	for i, figure := range figures {
		text = strings.ReplaceAll(text, "{"+strconv.Itoa(i+1)+"}", figure)
	}
	return text
}

// sentence gives a text a capital letter and a full stop.
func sentence(s string) string {
	s = strings.TrimRight(strings.TrimSpace(page.Clean(s)), ".")
	if s == "" {
		return ""
	}
	first, n := utf8.DecodeRuneInString(s)
	if next, _ := utf8.DecodeRuneInString(s[n:]); next == '-' || unicode.IsDigit(next) {
		return s + "." // a symbol, as in a-Maß and t8/5
	}
	return string(unicode.ToUpper(first)) + s[n:] + "."
}

func (f *flow) checksHeight(s setup.Setup, stops bool) float64 {
	h := 0.0
	for _, t := range tellings(s) {
		if t.stops() == stops {
			h += f.checkHeight(t)
		}
	}
	return h
}

func (f *flow) checkHeight(t told) float64 {
	return float64(len(f.checkLines(t)))*body.At(9).Leading() + 2
}

// checks prints what must be looked at before welding, in plain words: what the work waits
// for stands above all settings, what is to be checked below them.
func (f *flow) checks(s setup.Setup, stops bool) {
	for _, t := range tellings(s) {
		if t.stops() != stops {
			continue
		}
		r, box := f.take("check", f.checkHeight(t))
		f.p.Line(box, r.X+0.5, r.Y+0.6, r.X+0.5, r.Bottom()-1, 1, 0)
		lead := f.checkLead()
		f.p.Write(box, r.X+2.5, r.Y+4, lead-3, page.Left, strong.At(9), f.leadWord(t))
		f.p.Lines(box, r.X+lead, r.Y+4, r.W-lead, body.At(9), f.checkLines(t))
	}
}

// mostCautions is how many cautions a sheet carries: more are not read.
const mostCautions = 5

func (f *flow) cautionLines(p *plan.Plan) [][]string {
	var out [][]string
	for _, key := range p.Cautions[:min(len(p.Cautions), mostCautions)] {
		if key == "draught" && slices.ContainsFunc(p.Checks, func(c finding.Check) bool { return strings.HasPrefix(c.Code, "site-wind") }) {
			continue // the check says the same
		}
		text := key
		if f.words.Has("caution." + key) {
			text = f.say("caution." + key)
		}
		out = append(out, page.Wrap(small.At(8.5), f.show.Written(f.inUnits(text)), f.width-5, 2))
	}
	return out
}

func (f *flow) cautionsHeight(p *plan.Plan) float64 {
	h := 0.0
	for _, lines := range f.cautionLines(p) {
		h += float64(len(lines))*small.At(8.5).Leading() + 0.8
	}
	if h > 0 {
		h += 2
	}
	return h
}

// cautions prints the short cautions that apply, once.
func (f *flow) cautions(p *plan.Plan) {
	h := f.cautionsHeight(p)
	if h == 0 {
		return
	}
	r, box := f.take("cautions", h)
	y := r.Y + 3.6
	for _, lines := range f.cautionLines(p) {
		picture.Warning(f.p, box, r.X, y, 2.9)
		y = f.p.Lines(box, r.X+4.5, y, r.W-4.5, small.At(8.5), lines) + 0.8
	}
}
