package traveller

import (
	"strconv"
	"strings"

	"seamtally/batch/parts"
	"seamtally/batch/traveller/cutting"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// pieces is the table of pieces, with a column to tick off.
func (f *flow) pieces(heading, text string, rows []cutting.Row) {
	t := table{name: "pieces", height: 8.5, columns: []column{
		{"saw.mark", 30, page.Left}, {"saw.length", 25, page.Right}, {"saw.qty", 11, page.Right}, {"saw.ends", 58.5, page.Left},
		{"saw.each", 19, page.Right}, {"index.assembly", 28, page.Left}, {"saw.cut", 12.5, page.Left}, {"col.checked", 14, page.Left},
	}}
	shrink := ""
	for _, r := range rows {
		if r.Shrink != nil {
			shrink = f.say("saw.shrink")
		}
	}
	f.tableOf(t, heading, []string{text, shrink}, f.pieceRows(rows, t.width(f.width, todoCell)-1.6))
}

// tableOf writes a table under its heading and sentences.
func (f *flow) tableOf(t table, heading string, texts []string, rows [][]cell) {
	var lines []string
	s := small.At(8.5)
	for _, text := range texts {
		lines = append(lines, page.Wrap(s, text, f.width, 3)...)
	}
	h := float64(len(lines)) * s.Leading()
	f.section(heading, tableHead+t.height+h+2)
	if len(lines) > 0 {
		r, box := f.take("words", h+1.5)
		f.p.Lines(box, r.X, r.Y+2.6, r.W, s, lines)
	}
	f.rows(t, rows)
	f.gap(3)
}

func (f *flow) pieceRows(rows []cutting.Row, width float64) [][]cell {
	var out [][]cell
	for _, r := range rows {
		length := cell{text: f.show.Size(r.Length).String(), bold: true}
		if r.Shrink != nil {
			length.under = "+ " + f.between(r.Shrink)
		}
		todo := append(f.ends(r.Ends), f.prep(r)...)
		out = append(out, withLines(fitting(todo, width), []cell{
			{text: r.Mark, bold: true}, length, {text: strconv.Itoa(r.Count), bold: true}, {}, {text: f.each(r)}, {text: r.Assembly},
		})...)
	}
	return out
}

// todoCell is the cell that tells what is done to a piece.
const todoCell = 3

// withLines puts two lines into a row, and the others into rows below it that belong to it.
func withLines(lines []string, row []cell) [][]cell {
	var out [][]cell
	for i := 0; i == 0 || i < len(lines); i += 2 {
		if i > 0 {
			row[0].goesOn = true
			row = make([]cell, todoCell+1)
		}
		if i < len(lines) {
			row[todoCell].text = lines[i]
		}
		if i+1 < len(lines) {
			row[todoCell].under = lines[i+1]
		}
		out = append(out, row)
	}
	return out
}

// fitting breaks the texts that are too wide for a column even in small type.
func fitting(texts []string, width float64) []string {
	var out []string
	for _, text := range texts {
		if small.Width(page.Clean(text)) <= width {
			out = append(out, text)
			continue
		}
		out = append(out, page.Wrap(small, text, width, 3)...)
	}
	return out
}

// between prints an allowance from its lowest to its highest.
func (f *flow) between(r *[2]units.MM) string {
	decimals, unit, low, high := 1, "mm", float64(r[0]), float64(r[1])
	if f.show.US {
		decimals, unit, low, high = 3, "in", r[0].Inch(), r[1].Inch()
	}
	a, b := f.show.Fixed(low, decimals), f.show.Fixed(high, decimals)
	if a == b {
		return a + " " + unit
	}
	return a + "–" + b + " " + unit
}

func (f *flow) each(r cutting.Row) string {
	if r.Each <= 0 {
		return ""
	}
	return f.show.Mass(r.Each).String()
}

// ends says how both ends are cut, each on a line of its own where it names a template.
func (f *flow) ends(e [2]cutting.End) []string {
	a, b := f.end(e[0]), f.end(e[1])
	switch {
	case a != b && e[0].Template+e[1].Template > 0:
		return []string{a, b}
	case a != b:
		return []string{f.show.List(a, b)}
	case e[0].Kind == cutting.Square || e[0].Kind == cutting.Other:
		return []string{a}
	}
	return []string{f.say("saw.both", a)}
}

func (f *flow) end(e cutting.End) string {
	text := f.cut(e)
	if e.Template > 0 {
		text += ", " + f.say("saw.template", strconv.Itoa(e.Template))
	}
	return text
}

// cut says how an end is cut.
func (f *flow) cut(e cutting.End) string {
	switch e.Kind {
	case cutting.Mitre:
		return f.say("saw.end.mitre", f.show.Num(float64(e.Angle), 1))
	case cutting.Saddle:
		text := f.say("saw.end.saddle", "Ø"+f.show.Size(e.On).Num)
		if e.Angle > 0 && e.Angle != 90 {
			text = f.show.List(text, f.show.Num(float64(e.Angle), 1)+"°")
		}
		return text
	case cutting.Other:
		return f.say("saw.end.other")
	}
	return f.say("saw.end.square")
}

// prep tells the edges to be bevelled, and what the list notes.
func (f *flow) prep(r cutting.Row) []string {
	var out []string
	for _, e := range r.Edges {
		out = append(out, f.bevel(e))
	}
	if r.Note != "" {
		out = append(out, r.Note)
	}
	return out
}

// bevel tells one preparation: its angle, root face or depth, and metres of it.
func (f *flow) bevel(e parts.Edge) string {
	name := f.say("saw.bevel")
	if strings.HasSuffix(e.Groove, "U") || strings.HasSuffix(e.Groove, "J") {
		name = f.say("kind." + e.Groove)
	}
	how := f.say("saw.rootface", f.show.Size(e.RootFace).String())
	if e.Depth > 0 {
		how = f.say("saw.deep", f.show.Size(e.Depth).String())
	}
	if e.Both && name == f.say("saw.bevel") {
		how += ", " + f.say("saw.bothfaces")
	}
	return name + " " + f.show.Num(float64(e.Angle), 1) + "°, " + how + ": " + f.show.Seam(e.Metres).String()
}

func (f *flow) plate(p *cutting.Plate) {
	t := table{name: "plates", height: 8.5, columns: []column{
		{"saw.mark", 27, page.Left}, {"saw.size", 37, page.Left}, {"saw.qty", 11, page.Right}, {"saw.prep", 60.5, page.Left},
		{"saw.each", 18, page.Right}, {"index.assembly", 23, page.Left}, {"saw.cut", 12.5, page.Left}, {"col.checked", 14, page.Left},
	}}
	var rows [][]cell
	for _, r := range p.Rows {
		size := cell{text: "– × " + f.show.Size(r.Length).String(), bold: true}
		if r.Width > 0 {
			size.text = f.show.Size(r.Width).Num + " × " + f.show.Size(r.Length).String()
		}
		if r.Shrink != nil {
			size.under = "+ " + f.between(r.Shrink)
		}
		rows = append(rows, withLines(fitting(f.prep(r), t.width(f.width, todoCell)-1.6), []cell{
			{text: r.Mark, bold: true}, size, {text: strconv.Itoa(r.Count), bold: true}, {}, {text: f.each(r)}, {text: r.Assembly},
		})...)
	}
	sum := f.say("saw.platesum", strconv.Itoa(p.Pieces), f.show.Surface(p.Area).String(), f.load(p.Mass), f.load(p.BoughtKg))
	f.tableOf(t, f.say("saw.plate", f.show.Size(p.Thickness).String())+"  "+p.Material, []string{sum}, rows)
}
