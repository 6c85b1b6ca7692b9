package traveller

import (
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

// station is what must be loaded before anything is set: wire, gas, process, machine.
func (f *flow) station(p *plan.Plan) {
	r, box := f.take("station", 13)
	wire := p.Filler
	if p.FillerAWS != "" && p.FillerAWS != p.Filler {
		wire += " / " + p.FillerAWS
	}
	gas := p.Gas
	if p.GasMix != "" {
		gas += "  " + p.GasMix
	}
	if gas == "" {
		gas = f.say("gas.none")
	}
	entries := [][2]string{
		{"station.wire", joinParts([]string{f.show.dia(p.Dia), wire})},
		{"station.gas", gas},
		{"station.process", joinParts([]string{p.Process, f.transfer(p.Transfer)})},
		{"station.machine", p.Machine},
	}
	for i, c := range r.Columns(3, 60, 47, 38, 38) {
		f.p.Write(box, c.X, c.Y+3.5, c.W, page.Left, label.At(9), f.say(entries[i][0]))
		f.p.Write(box, c.X, c.Y+9, c.W, page.Left, page.Style{Face: page.Bold, Size: 12}, dash(entries[i][1]))
	}
}

func (f *flow) transfer(t plan.Transfer) string {
	if t == "" {
		return ""
	}
	return f.say("transfer." + string(t))
}

// dials are the five settings that the welder turns or holds, large: one start
// value each and the narrow band around it.
func (f *flow) dials(p *plan.Plan) {
	r, box := f.take("dials", 30)
	in := page.Rect{X: r.X, Y: r.Y, W: r.W, H: 27}
	cells := in.Columns(0, 1, 1, 1, 1, 1)
	f.p.Frame(box, in, 0.7, page.None)
	for i, d := range []struct {
		key string
		v   spread
	}{
		{"dial.feed", f.show.feed(p.WireFeed)},
		{"dial.volts", f.show.volts(p.Voltage)},
		{"dial.stickout", f.show.stickout(p.Stickout)},
		{"dial.flow", f.show.flow(p.GasFlow)},
	} {
		f.dial(box, cells[i], d.key, d.v)
	}
	f.polarity(box, cells[4], p.Polarity)
	for _, c := range cells[1:] {
		f.p.Line(box, c.X, c.Y, c.X, c.Bottom(), 0.25, 0)
	}
}

func (f *flow) dial(box page.BoxID, c page.Rect, key string, v spread) {
	x, w := c.X+2, c.W-3
	f.p.Write(box, x, c.Y+4.8, w, page.Left, strong.At(10), f.say(key))
	big := page.Style{Face: page.Bold, Size: 32}
	unit := page.Style{Face: page.Regular, Size: 10.5}
	if v.start == "" {
		f.p.Write(box, x, c.Y+17, w, page.Left, big, "–")
		return
	}
	room := w - unit.Width(v.unit) - 1
	got := f.p.Write(box, x, c.Y+17.5, room, page.Left, big, v.start)
	f.p.Write(box, x+min(got.Width(v.start), room)+1, c.Y+17.5, unit.Width(v.unit)+0.5, page.Left, unit, v.unit)
	if v.low != "" {
		f.p.Write(box, x, c.Y+24.2, w, page.Left, page.Style{Face: page.Regular, Size: 11}, f.say("band", v.low, v.high))
	}
}

// polarity shows the short form large and the long one under it: the words may
// come as "electrode positive (DC+)".
func (f *flow) polarity(box page.BoxID, c page.Rect, text string) {
	short, long := text, ""
	if i, j := strings.IndexByte(text, '('), strings.IndexByte(text, ')'); i >= 0 && j > i {
		short, long = text[i+1:j], strings.TrimSpace(text[:i]+text[j+1:])
	}
	x, w := c.X+2, c.W-3
	f.p.Write(box, x, c.Y+4.8, w, page.Left, strong.At(10), f.say("dial.polarity"))
	f.p.Write(box, x, c.Y+17.5, w, page.Left, page.Style{Face: page.Bold, Size: 28}, dash(short))
	f.p.Write(box, x, c.Y+24.2, w, page.Left, page.Style{Face: page.Regular, Size: 11}, long)
}

// preheat is shown only where it is needed, and then large.
func (f *flow) preheat(p *plan.Plan) {
	if p.Preheat == nil && p.Interpass == nil {
		return
	}
	r, box := f.take("preheat", 15)
	in := page.Rect{X: r.X, Y: r.Y, W: r.W, H: 12.5}
	f.p.Frame(box, in, 1.1, page.None)
	cols := in.Inset(3, 0).Columns(4, 60, 66, 50)
	big := page.Style{Face: page.Bold, Size: 18}
	if p.Preheat != nil {
		f.p.Write(box, cols[0].X, in.Y+8.6, cols[0].W, page.Left, big, f.say("preheat", f.show.temp(*p.Preheat).String()))
	}
	if p.Interpass != nil {
		f.p.Write(box, cols[1].X, in.Y+8.6, cols[1].W, page.Left, big, f.say("interpass", f.show.temp(*p.Interpass).String()))
	}
	lines := page.Wrap(small.At(8.5), f.say("preheat.where"), cols[2].W, 2)
	f.p.Lines(box, cols[2].X, in.Y+5.2, cols[2].W, small.At(8.5), lines)
}
