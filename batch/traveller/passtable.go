package traveller

import (
	"strconv"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

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

var passColumns = []struct {
	column
	named bool // the name stands over the unit
}{
	{column{"pass.no", 10, page.Left}, false}, {column{"pass.kind", 30, page.Left}, false}, {column{"pass.feed", 11, page.Right}, true}, {column{"pass.volts", 9, page.Right}, false},
	{column{"pass.amps", 9, page.Right}, false}, {column{"pass.travel", 12, page.Right}, true}, {column{"pass.pace", 14, page.Right}, false}, {column{"pass.heat", 11, page.Right}, false},
}

// passLine is a line of the pass table: passes, or words across it.
type passLine struct {
	passes
	words []string
}

// passLines are the lines of the table: the passes in order, and before the first of
// the second side what must be done to the root. What is left out is told in a line.
func (f *flow) passLines(p *plan.Plan, width float64) []passLine {
	var out []passLine
	rows := merge(p.Runs)
	shown := rows
	if len(rows) > mostPasses { // the last row says how many are left out
		shown = rows[:mostPasses-1]
	}
	for i, row := range shown {
		if row.run.Side == 2 && (i == 0 || shown[i-1].run.Side != 2) {
			out = append(out, passLine{words: page.Wrap(strong, f.turnWords(p), width-1, 2)})
		}
		out = append(out, passLine{passes: row})
	}
	if len(shown) < len(rows) {
		left := rows[len(rows)-1].last - shown[len(shown)-1].last
		out = append(out, passLine{words: page.Wrap(body, f.say("pass.more", strconv.Itoa(left)), width-1, 2)})
	}
	return out
}

// turnWords say what is done between the two sides of a butt weld.
func (f *flow) turnWords(p *plan.Plan) string {
	first := "turn.side"
	if p.Joint.Position == "PA" {
		first = "turn.over"
	}
	what := f.say("turn.clean")
	if u := p.Prep.Gouge; u.Depth > 0 {
		what = f.say("turn.gouge", f.show.Size(u.Depth).String(), f.show.AtLeast(u.Width).String())
	}
	return f.say(first) + ": " + what
}

func (f *flow) passLineHeight(l passLine) float64 {
	return f.squeeze.passRow() + strong.Leading()*float64(max(len(l.words), 1)-1)
}

func (f *flow) passTableHeight(p *plan.Plan) float64 {
	h := float64(passHead)
	for _, l := range f.passLines(p, f.passWidth()) {
		h += f.passLineHeight(l)
	}
	return h
}

// passWidth is the width of the table of passes, beside the torch.
func (f *flow) passWidth() float64 { return f.width - torchWidth - 4 }

// passTable lists the passes and returns its height.
func (f *flow) passTable(r page.Rect, p *plan.Plan) float64 {
	h := f.passTableHeight(p)
	box := f.p.Box("passes", page.Rect{X: r.X, Y: r.Y, W: r.W, H: h})
	cells := f.passTop(box, r, p)
	y := r.Y + passHead
	for _, l := range f.passLines(p, r.W) {
		y += f.passLineHeight(l)
		if l.words != nil {
			f.p.Lines(box, r.X+0.4, y-1.7-strong.Leading()*float64(len(l.words)-1), r.W-0.8, strong, l.words)
		} else {
			for i, text := range f.passCells(l.passes) {
				f.p.Write(box, cells[i].X+0.4, y-1.7, cells[i].W-0.8, passColumns[i].align, body, text)
			}
		}
		f.p.Line(box, r.X, y-0.2, r.Right(), y-0.2, 0.12, 0.5)
	}
	return h
}

// passTop writes the headings of the table, with the heat input that every pass must
// keep to, and returns its columns.
func (f *flow) passTop(box page.BoxID, r page.Rect, p *plan.Plan) []page.Rect {
	f.p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.25, 0)
	f.p.Write(box, r.X, r.Y+4.2, r.W*0.45, page.Left, strong, f.say("pass.title"))
	if limits := f.heatLimits(p); limits != "" {
		f.p.Write(box, r.X+r.W*0.45, r.Y+4.2, r.W*0.55, page.Right, strong.At(9), f.say("fact.heat")+" "+limits)
	}
	parts := make([]float64, len(passColumns))
	for i, c := range passColumns {
		parts[i] = c.part
	}
	cells := page.Rect{X: r.X, Y: r.Y + 4.8, W: r.W, H: 8}.Columns(0, parts...)
	units := f.passUnits()
	for i, c := range passColumns {
		text := units[i]
		switch {
		case text == "":
			text = f.say(c.key)
		case c.named: // two speeds may stand in one unit
			f.p.Write(box, cells[i].X+0.4, r.Y+7.8, cells[i].W-0.8, c.align, label, f.say(c.key))
		}
		f.p.Write(box, cells[i].X+0.4, r.Y+10.5, cells[i].W-0.8, c.align, label, text)
	}
	f.p.Line(box, r.X, r.Y+11.6, r.Right(), r.Y+11.6, 0.25, 0)
	return cells
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
