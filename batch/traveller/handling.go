package traveller

import (
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/units"
)

const (
	torchWidth  = 76.0
	torchWords  = 42.0 // beside the drawing of the torch
	knobsHeight = 36.0
	passHead    = 11
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
	if f.squeeze.tight() && len(p.Runs) < 2 {
		f.torch(left, p)
		f.factsBeside(right, p)
		return
	}
	head := f.torchHead(p)
	f.torch(page.Rect{X: left.X, Y: left.Y, W: left.W, H: head}, p)
	below := page.Rect{X: left.X, Y: left.Y + head, W: left.W, H: left.H - head}
	f.writeFacts(f.p.Box("facts", below), below, p)
	if len(p.Runs) > 1 {
		used := f.passTable(right, merge(p.Runs)) + 2
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
	if f.squeeze.tight() && len(p.Runs) < 2 {
		return max(f.torchHead(p), f.factsHeight(p, f.width-torchWidth-4)+2) + 3
	}
	left := f.torchHead(p) + f.factsHeight(p, torchWidth) + 2
	right := knobsHeight
	if len(p.Runs) > 1 {
		right = passHead + f.squeeze.passRow()*float64(min(len(merge(p.Runs)), mostPasses))
	}
	return max(left, right) + 3
}

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

// fact is one of the smaller settings.
type fact struct {
	name  string
	lines []string
	style page.Style
}

// factNames are the keys of the names of the facts.
var factNames = []string{"fact.preheat", "fact.travel", "fact.amps", "fact.trigger", "fact.inductance", "fact.between", "fact.clean"}

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
	speed := units.MMMin(p.Travel.Start)
	travel := ""
	if seconds, per := f.show.Pace(speed); seconds != "" {
		travel = f.say("fact.travel.value", f.show.Travel(speed).String(), seconds, per.String())
	}
	amps := f.show.Amps(p.Current)
	current := ""
	switch {
	case amps.Low != "":
		current = f.say("fact.amps.value", amps.Start, amps.Low, amps.High)
	case amps.Start != "":
		current = amps.Start + " A"
	}
	if len(p.Runs) > 1 { // the table of passes has both for each
		travel, current = "", ""
	}
	clean, between := "", ""
	if p.Interpass != nil && p.Preheat == nil && len(p.Runs) > 1 {
		between = f.say("fact.between.value", f.show.Temp(*p.Interpass).String())
	}
	if p.CleanWidth > 0 {
		clean = f.say("fact.clean.value", f.show.AtLeast(p.CleanWidth).String())
	}
	var out []fact
	if text := f.coldWords(p); text != "" {
		out = append(out, fact{f.say("fact.preheat"), []string{text}, strong})
	}
	plainStyle := body.At(8.5)
	for _, e := range [][2]string{
		{"fact.travel", travel}, {"fact.amps", current}, {"fact.trigger", f.phrase(p.Trigger)},
		{"fact.inductance", f.phrase(p.Inductance)}, {"fact.between", between}, {"fact.clean", clean},
	} {
		if lines := page.Wrap(plainStyle, e[1], width-f.factName(), 2); len(lines) > 0 {
			out = append(out, fact{f.say(e[0]), lines, plainStyle})
		}
	}
	return out
}

// coldWords says in words that a joint is welded without preheat, or that nobody
// worked it out: a sheet that only leaves the preheat out would leave it open.
func (f *flow) coldWords(p *plan.Plan) string {
	switch {
	case p.Preheat != nil:
		return ""
	case p.PreheatWords == "", strings.HasPrefix(p.PreheatWords, "none"):
		return f.say("fact.preheat.none")
	}
	return f.say("fact.preheat.open")
}

const factRow = 4.3

func (t fact) height() float64 { return factRow + body.At(8.5).Leading()*float64(len(t.lines)-1) }

func (f *flow) factsHeight(p *plan.Plan, width float64) float64 {
	h := 0.0
	for _, t := range f.facts(p, width) {
		h += t.height()
	}
	return h
}

func (f *flow) writeFacts(box page.BoxID, r page.Rect, p *plan.Plan) {
	y, name := r.Y+3.4, f.factName()
	for _, t := range f.facts(p, r.W) {
		f.p.Write(box, r.X, y, name-1, page.Left, label.At(8.5), t.name)
		f.p.Lines(box, r.X+name, y, r.W-name, t.style, t.lines)
		y += t.height()
	}
}

// passes is a row of the pass table: one pass, or several with the same settings.
type passes struct {
	first, last int
	run         plan.Run
}

// merge puts neighbouring passes that are welded alike into one row.
func merge(runs []plan.Run) []passes {
	var out []passes
	for _, r := range runs {
		if n := len(out); n > 0 && alike(out[n-1].run, r) && out[n-1].last+1 == r.Number {
			out[n-1].last = r.Number
			continue
		}
		out = append(out, passes{r.Number, r.Number, r})
	}
	return out
}

func alike(a, b plan.Run) bool {
	return a.Kind == b.Kind && a.Side == b.Side && a.Technique == b.Technique && a.Current == b.Current &&
		a.Voltage == b.Voltage && a.WireFeed == b.WireFeed && a.Travel == b.Travel
}

var passColumns = []column{
	{"pass.no", 10, page.Left}, {"pass.kind", 30, page.Left}, {"pass.feed", 11, page.Right}, {"pass.volts", 9, page.Right},
	{"pass.amps", 9, page.Right}, {"pass.travel", 12, page.Right}, {"pass.pace", 14, page.Right}, {"pass.heat", 11, page.Right},
}

// passTable lists the passes and returns its height.
func (f *flow) passTable(r page.Rect, rows []passes) float64 {
	shown := rows
	if len(rows) > mostPasses { // the last row says how many are left out
		shown = rows[:mostPasses-1]
	}
	h := passHead + f.squeeze.passRow()*float64(min(len(rows), mostPasses))
	box := f.p.Box("passes", page.Rect{X: r.X, Y: r.Y, W: r.W, H: h})
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	f.p.Write(box, r.X, r.Y+4.2, r.W, page.Left, strong, f.say("pass.title"))
	parts := make([]float64, len(passColumns))
	for i, c := range passColumns {
		parts[i] = c.part
	}
	cells := page.Rect{X: r.X, Y: r.Y + 4.8, W: r.W, H: 5}.Columns(0, parts...)
	units := f.passUnits()
	for i, c := range passColumns {
		text := f.say(c.key)
		if units[i] != "" {
			text = units[i]
		}
		f.p.Write(box, cells[i].X+0.4, r.Y+9, cells[i].W-0.8, c.align, label, text)
	}
	f.p.Line(box, r.X, r.Y+10.2, r.Right(), r.Y+10.2, 0.25, 0)
	for k, row := range shown {
		y := r.Y + passHead + f.squeeze.passRow()*float64(k+1) - 1.7
		for i, text := range f.passCells(row) {
			f.p.Write(box, cells[i].X+0.4, y, cells[i].W-0.8, passColumns[i].align, body, text)
		}
		f.p.Line(box, r.X, y+1.5, r.Right(), y+1.5, 0.12, 0.5)
	}
	if len(shown) < len(rows) {
		left := rows[len(rows)-1].last - shown[len(shown)-1].last
		y := r.Y + passHead + f.squeeze.passRow()*float64(len(rows[:mostPasses])) - 1.7
		f.p.Write(box, cells[0].X+0.4, y, r.W-0.8, page.Left, body, f.say("pass.more", strconv.Itoa(left)))
	}
	return h
}

func (f *flow) passUnits() []string {
	_, per := f.show.Pace(1)
	return []string{"", "", f.show.Feed(plan.Window{}).Unit, "V", "A", f.show.Travel(1).Unit, f.say("pass.pace", per.String()), f.show.Heat(1).Unit}
}

func (f *flow) passCells(row passes) []string {
	r := row.run
	no := strconv.Itoa(row.first)
	if row.last > row.first {
		no += "–" + strconv.Itoa(row.last)
	}
	kind := f.say("run." + string(r.Kind))
	if r.Side == 2 {
		kind += ", " + f.say("run.side2")
	}
	seconds, _ := f.show.Pace(r.Travel)
	one := func(v float64) plan.Window { return plan.Window{Start: v} }
	travel, heat := "", "" // of a hole filled on the spot there is neither
	if r.Travel > 0 {
		travel, heat = f.show.Travel(r.Travel).Num, f.show.Heat(r.Heat).Num
	}
	return []string{
		no, kind, f.show.Feed(one(float64(r.WireFeed))).Start, f.show.Volts(one(float64(r.Voltage))).Start,
		f.show.Amps(one(float64(r.Current))).Start, travel, seconds, heat,
	}
}

// symptoms are the faults that a knob cures, in the order they show.
var symptoms = []string{"stub", "spatter", "pores", "undercut", "cold", "burn"}

// knobs says which knob cures what, as many as there is room for.
func (f *flow) knobs(r page.Rect) {
	box := f.p.Box("knobs", r)
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	f.p.Write(box, r.X, r.Y+4.2, r.W, page.Left, strong, f.say("knobs"))
	y := r.Y + 9
	for _, s := range symptoms {
		if y+1 > r.Bottom() {
			return
		}
		f.p.Write(box, r.X, y, 33, page.Left, strong.At(8.5), f.say("knob."+s))
		f.p.Write(box, r.X+34, y, r.W-34, page.Left, small.At(8.5), f.say("cure."+s))
		y += 4.8
	}
}
