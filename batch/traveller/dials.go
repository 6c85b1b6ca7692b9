package traveller

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
)

const stationHeight = 13

// station is what must be loaded before anything is set: wire, gas, process, machine.
func (f *flow) station(p *plan.Plan) {
	r, box := f.take("station", stationHeight)
	wire := f.names.Filler(p.Filler)
	if p.FillerAWS != "" && wire == p.Filler && p.FillerAWS != wire {
		wire += " / " + p.FillerAWS
	}
	gas := p.Gas
	if p.GasMix != "" {
		gas += "  " + f.show.Written(p.GasMix)
	}
	if gas == "" {
		gas = f.say("gas.none")
	}
	entries := [][2]string{
		{"station.wire", joinParts([]string{f.show.Dia(p.Dia, p.Filler), wire})},
		{"station.gas", gas},
		{"station.process", joinParts([]string{f.names.Process(p), f.transfers(p)})},
		{"station.machine", f.phrase(p.Machine)},
	}
	for i, c := range r.Columns(3, 58, 46, 43, 36) {
		f.p.Write(box, c.X, c.Y+3.5, c.W, page.Left, label.At(9), f.say(entries[i][0]))
		f.stationValue(box, c, dash(entries[i][1]))
	}
}

// stationValue writes what must be loaded in one line, or in two smaller ones.
func (f *flow) stationValue(box page.BoxID, c page.Rect, text string) {
	s := page.Style{Face: page.Bold, Size: 12}
	if got, _ := page.Fit(s, text, c.W); got.Size >= 9.5 {
		f.p.Write(box, c.X, c.Y+9, c.W, page.Left, s, text)
		return
	}
	s.Size = 9
	f.p.Lines(box, c.X, c.Y+7.4, c.W, s, page.Wrap(s, text, c.W, 2))
}

// transfers names the modes of the passes in the order in which they come.
func (f *flow) transfers(p *plan.Plan) string {
	var out []string
	for _, r := range p.Runs {
		if t := f.transfer(r.Transfer); t != "" && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	if len(out) == 0 {
		return f.transfer(p.Transfer)
	}
	return strings.Join(out, ", ")
}

func (f *flow) transfer(t plan.Transfer) string {
	if t == "" {
		return ""
	}
	return f.say("transfer." + string(t))
}

// setting is what several passes are welded with.
type setting struct {
	runs                        []plan.Run
	feed, volts, stickout, flow plan.Window
}

// settings collects the passes of a plan that are welded with the same dials, in the order
// in which they first come. The governing pass leads those that are like it and brings the
// plan's own windows; of others the first leads.
func settings(p *plan.Plan) []setting {
	var out []setting
	var leads []plan.Run
	for _, r := range p.Runs {
		lead := r
		if governs := p.Runs[p.Governing]; sameDials(r, governs) {
			lead = governs
		} else if k := slices.IndexFunc(leads, func(a plan.Run) bool { return sameDials(a, r) }); k >= 0 {
			lead = leads[k]
		}
		if k := slices.IndexFunc(leads, func(a plan.Run) bool { return a.Number == lead.Number }); k >= 0 {
			out[k].runs = append(out[k].runs, r)
			continue
		}
		leads = append(leads, lead)
		out = append(out, settingOf(p, lead, r))
	}
	if len(out) == 0 {
		out = []setting{{feed: p.WireFeed, volts: p.Voltage, stickout: p.Stickout, flow: p.GasFlow}}
	}
	return out
}

// settingOf is the dials of a pass, and the first pass that is welded with them.
func settingOf(p *plan.Plan, lead, first plan.Run) setting {
	if lead.Number == p.Runs[p.Governing].Number {
		return setting{runs: []plan.Run{first}, feed: p.WireFeed, volts: p.Voltage, stickout: p.Stickout, flow: p.GasFlow}
	}
	s := setting{runs: []plan.Run{first}, feed: lead.Feed, volts: lead.Volts, stickout: lead.Stickout, flow: lead.GasFlow}
	if s.feed.Start == 0 {
		s.feed.Start = float64(lead.WireFeed)
	}
	if s.volts.Start == 0 {
		s.volts.Start = float64(lead.Voltage)
	}
	return s
}

// How far two passes may lie apart that share their dials. The band printed beside a wire
// feed is that of 8 % of the current or more, and 4 % is half of it; the least band printed
// beside volts is 1 V, and 1.5 % of 33 V is half of that. It is more than a dial shows: of
// 8.0 and 8.3 m/min one is set for both. Each must lie within the band of the other too,
// because a band may end nearer, where the window of the wire or a procedure does.
const sameFeed, sameVolts = 0.04, 0.015

// sameDials tells whether two passes are welded with one set of dials.
func sameDials(a, b plan.Run) bool {
	near := func(a, b, share float64) bool { return math.Abs(a-b) <= share*max(math.Abs(a), math.Abs(b))+1e-9 }
	in := func(v float64, w plan.Window) bool {
		return w.High <= w.Low || v >= w.Low-1e-9 && v <= w.High+1e-9 // no band is no limit
	}
	return a.Transfer == b.Transfer &&
		near(float64(a.WireFeed), float64(b.WireFeed), sameFeed) && in(float64(a.WireFeed), b.Feed) && in(float64(b.WireFeed), a.Feed) &&
		near(float64(a.Voltage), float64(b.Voltage), sameVolts) && in(float64(a.Voltage), b.Volts) && in(float64(b.Voltage), a.Volts)
}

// kindsOf names what passes of the same dials are, each kind once; nothing where the
// room does not hold all of them: the table of passes names each.
func (f *flow) kindsOf(runs []plan.Run, room float64) string {
	text := f.kindNames(runs)
	if body.At(page.MinSize).Width(page.Clean(text)) > room {
		return ""
	}
	return text
}

// kindNames names what passes are, each kind once.
func (f *flow) kindNames(runs []plan.Run) string {
	var kinds []string
	for _, r := range runs {
		if word := f.say("run." + string(r.Kind)); !slices.Contains(kinds, word) {
			kinds = append(kinds, word)
		}
	}
	return strings.Join(kinds, ", ")
}

// mostDials is how many sets of dials a sheet shows large; the pass table has all.
const mostDials = 3

// dials are the five settings that the welder turns or holds, large: one start
// value each and the narrow band around it. Passes with other dials have a row
// of their own, so that nobody lays the root with the settings of the cap.
func (f *flow) dials(p *plan.Plan) {
	rows := settings(p)
	rows = rows[:min(len(rows), mostDials)]
	high, lead := f.dialRowHeight(len(rows)), 0.0
	if len(rows) > 1 {
		lead = dialLead
	}
	r, box := f.take("dials", 6+high*float64(len(rows))+3)
	in := page.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H - 3}
	f.p.Frame(box, in, 0.7, page.None)
	cells := page.Rect{X: r.X + lead, Y: r.Y, W: r.W - lead, H: 6}.Columns(0, dialParts(lead)...)
	for i, key := range []string{"dial.feed", "dial.volts", "dial.stickout", "dial.flow", "dial.polarity"} {
		f.p.Write(box, cells[i].X+2, r.Y+4.8, cells[i].W-3, page.Left, strong.At(10), f.say(key))
		if i > 0 || lead > 0 {
			f.p.Line(box, cells[i].X, in.Y, cells[i].X, in.Bottom(), 0.25, 0)
		}
	}
	for i, s := range rows {
		at := page.Rect{X: r.X, Y: r.Y + 6 + high*float64(i), W: r.W, H: high}
		if i > 0 {
			f.p.Line(box, at.X, at.Y, at.Right(), at.Y, 0.25, 0)
		}
		f.dialRow(box, at, lead, s, p)
	}
}

// dialLead is the width of the names of the passes before their dials.
const dialLead = 28

// dialParts are the shares of the five dials in the width. Where names of passes stand
// before them room is short: volts are brief in every language, the heading of the
// stick-out and the words of the polarity are not.
func dialParts(lead float64) []float64 {
	if lead == 0 {
		return []float64{1, 1, 1, 1, 1}
	}
	return []float64{1.04, 0.9, 1.05, 0.96, 1.05}
}

// dialRowHeight is the height of one of n sets of dials.
func (f *flow) dialRowHeight(n int) float64 {
	switch {
	case f.squeeze >= pressed && n > 2, f.squeeze >= flat && n > 1:
		return 12.6
	case n < 2 && f.squeeze >= squeezed:
		return 18.5
	case n < 2:
		return 21
	case n < 3 && f.squeeze < squeezed:
		return 17.5
	}
	return 15
}

// dialRow writes one set of dials; lead is the width of the pass numbers before it.
func (f *flow) dialRow(box page.BoxID, r page.Rect, lead float64, s setting, p *plan.Plan) {
	size := 32.0
	if lead > 0 {
		size = 27
		switch {
		case r.H < 14:
			size = 20
		case r.H < 17:
			size = 22
		}
		y, named := r.Y+r.H/2, page.Style{Face: page.Bold, Size: 14}
		if r.H < 14 { // clear of the line above
			y, named.Size = y-0.8, 12
		}
		f.p.Write(box, r.X+2, y-1.2, lead-3, page.Left, named, f.passNames(s.runs, lead-3))
		kind, mode := f.kindsOf(s.runs, lead-3), f.transfer(s.runs[0].Transfer)
		f.p.Write(box, r.X+2, y+2.7, lead-3, page.Left, body.At(8.5), kind)
		f.p.Write(box, r.X+2, y+6, lead-3, page.Left, body.At(8.5), mode)
	}
	cells := page.Rect{X: r.X + lead, Y: r.Y, W: r.W - lead, H: r.H}.Columns(0, dialParts(lead)...)
	flow := f.show.Flow(s.flow)
	if flow.Start == "" && p.Gas == "" { // a dash would leave it open
		flow = show.Spread{Start: f.say("dial.flow.none")}
	}
	for i, v := range []show.Spread{f.show.Feed(s.feed), f.show.Volts(s.volts), f.show.Stickout(s.stickout), flow} {
		f.dial(box, cells[i], size, v)
	}
	f.polarity(box, cells[4], size, f.phrase(p.Polarity))
}

// passNames says which passes a set of dials is for: the word and the numbers, or the
// numbers alone where there are so many that both would be too small to read.
func (f *flow) passNames(runs []plan.Run, room float64) string {
	named := f.say("dial.pass", numbers(runs))
	if (page.Style{Face: page.Bold, Size: 10}).Width(page.Clean(named)) > room {
		return numbers(runs)
	}
	return named
}

// numbers lists pass numbers, with a dash for a stretch: 1, 3–5.
func numbers(runs []plan.Run) string {
	var parts []string
	for i := 0; i < len(runs); {
		j := i
		for j+1 < len(runs) && runs[j+1].Number == runs[j].Number+1 {
			j++
		}
		text := strconv.Itoa(runs[i].Number)
		if j > i {
			text += "–" + strconv.Itoa(runs[j].Number)
		}
		parts = append(parts, text)
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

// dialLines are the baselines of a dial's figure and of the band under it, and the size
// of the band: they stand closer in a lower cell.
func dialLines(c page.Rect) (base, under, band float64) {
	switch {
	case c.H < 14:
		return c.Y + 7.1, c.Bottom() - 1.3, 9
	case c.H < 17:
		return c.Y + c.H*0.5 + 0.8, c.Bottom() - 2.1, 10
	}
	return c.Y + c.H*0.5 + 0.8, c.Bottom() - 2.6, 11
}

func (f *flow) dial(box page.BoxID, c page.Rect, size float64, v show.Spread) {
	x, w := c.X+2, c.W-3
	big := page.Style{Face: page.Bold, Size: size}
	unit := page.Style{Face: page.Regular, Size: 10.5}
	base, under, high := dialLines(c)
	band := page.Style{Face: page.Regular, Size: high}
	if v.Start == "" {
		f.p.Write(box, x, base, w, page.Left, big, "–")
		return
	}
	room := w - unit.Width(v.Unit) - 1
	got := f.p.Write(box, x, base, room, page.Left, big, v.Start)
	f.p.Write(box, x+min(got.Width(v.Start), room)+1, base, unit.Width(v.Unit)+0.5, page.Left, unit, v.Unit)
	if v.Low != "" {
		f.p.Write(box, x, under, w, page.Left, band, f.say("band", v.Low, v.High))
	}
}

// polarity shows the short form large and the long one under it: the words may
// come as "electrode positive (DC+)".
func (f *flow) polarity(box page.BoxID, c page.Rect, size float64, text string) {
	short, long := text, ""
	if i, j := strings.IndexByte(text, '('), strings.IndexByte(text, ')'); i >= 0 && j > i {
		short, long = text[i+1:j], strings.TrimSpace(text[:i]+text[j+1:])
	}
	x, w := c.X+2, c.W-3
	base, under, high := dialLines(c)
	words := page.Style{Face: page.Regular, Size: high}
	f.p.Write(box, x, base, w, page.Left, page.Style{Face: page.Bold, Size: size - 4}, dash(short))
	f.p.Write(box, x, under, w-1, page.Left, words, long)
}
