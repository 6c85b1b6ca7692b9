package procedure

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/units"
	"seamtally/tables"
)

// reader reads the rows of one sheet.
type reader struct {
	src      *list.Source
	set      *tables.Set
	terms    func() *joint.Terms
	headers  *headers
	sheet    *list.Sheet
	opt      Options
	cols     map[string]col
	style    measure.Style
	row      list.Row // the one being read
	bad      bool     // it has a mistake
	problems []finding.Problem
}

// say tells something about a cell of the row being read.
func (r *reader) say(level finding.Level, key, code, read, text, want, hint string) {
	c := r.cols[key]
	r.bad = r.bad || level == finding.Error
	r.problems = append(r.problems, finding.Problem{
		Place: finding.Place{File: r.src.File, Sheet: r.sheet.Name, Row: r.row.Number, Col: c.at, Header: c.header},
		Level: level, Code: code, Text: text, Read: read, Want: want, Hint: hint})
}

// readHeader tells of columns that two headers claim.
func (r *reader) readHeader(at *spot) {
	for _, c := range at.twice {
		r.problems = append(r.problems, finding.Problem{
			Place: finding.Place{File: r.src.File, Sheet: r.sheet.Name, Row: r.sheet.Rows[at.last].Number, Col: c.at, Header: c.header},
			Level: finding.Error, Code: "procedure-column-twice", Text: "another column gives the same already", Hint: "take one of the two out, or change its header"})
	}
}

// read takes the rows below the header.
func (r *reader) read(rows []list.Row) []Row {
	r.style = measure.Habit(func(yield func(string) bool) {
		for _, row := range rows {
			for _, c := range row.Cells {
				if c.Kind == list.Text && !yield(c.Text) {
					return
				}
			}
		}
	})
	if r.src.DecimalComma {
		r.style.Mark = ','
	}
	if len(rows) > 0 && r.unitsRow(rows[0]) {
		rows = rows[1:]
	}
	var out []Row
	for _, row := range rows {
		if r.row, r.bad = row, false; r.remark() {
			continue
		}
		p, at := r.procedure(), r.cols["number"]
		out = append(out, Row{p, finding.Place{File: r.src.File, Sheet: r.sheet.Name, Row: row.Number, Col: at.at, Header: at.header}, r.bad})
	}
	return out
}

// unitsRow reads a row that only names units, and gives them to the columns that
// have none in their header.
func (r *reader) unitsRow(row list.Row) bool {
	found := map[int]string{}
	for _, c := range row.Cells {
		unit, ok := anyUnit(strings.Trim(c.Text, "()[] "))
		if c.Kind != list.Text || !ok {
			return false
		}
		if unit != "" {
			found[c.Col] = unit
		}
	}
	r.row = row
	for _, key := range r.keys() {
		c := r.cols[key]
		switch unit := found[c.at]; {
		case unit == "":
		case !isUnit(key, unit):
			r.say(finding.Error, key, "procedure-unit", row.At(c.at).Text, "the unit does not fit the column", unitsOf(key), "clear the unit, or write one of "+unitsOf(key))
		case c.unit == "":
			c.unit = unit
			r.cols[key] = c
		}
	}
	return len(found) > 0
}

// keys are the keys that have a column, in a fixed order.
func (r *reader) keys() []string {
	var out []string
	for key := range r.cols {
		out = append(out, key)
	}
	slices.Sort(out)
	return out
}

// remark tells whether a row is nothing to read: a comment, or cells under columns
// that are not read.
func (r *reader) remark() bool {
	if len(r.row.Cells) > 0 && strings.HasPrefix(strings.TrimSpace(r.row.Cells[0].Text), "#") || strings.HasPrefix(r.text("number"), "#") {
		return true
	}
	filled, first := 0, ""
	for _, key := range r.keys() {
		if c := r.cell(key); c.Kind != list.Blank {
			filled++
			first = key
		}
	}
	return filled == 0 || filled == 1 && first == "note" || filled == 1 && first == "number" && len(r.row.Cells) == 1 && strings.Contains(r.text("number"), " ")
}

func (r *reader) cell(key string) list.Cell {
	c, ok := r.cols[key]
	if !ok {
		return list.Cell{}
	}
	return r.row.At(c.at)
}

func (r *reader) text(key string) string { return strings.TrimSpace(r.cell(key).Text) }

// procedure reads one row.
func (r *reader) procedure() tables.Procedure {
	p := tables.Procedure{Number: r.text("number"), Note: r.text("note")}
	if p.Number == "" {
		r.say(finding.Error, "number", "procedure-number", "", "the procedure has no number", "the number that joints name under WPS", "give it one, or begin the row with # to keep it as a remark")
	}
	r.wire(&p)
	p.Process = r.process(&p)
	p.Gas = r.gas(&p)
	r.together(&p)
	p.Positions = r.positions()
	p.TLow, p.THigh = ends[units.MM](r.span("thickness"))
	p.CurrentLow, p.CurrentHigh = ends[units.Amp](r.span("current"))
	p.VoltageLow, p.VoltageHigh = ends[units.Volt](r.span("voltage"))
	p.TravelLow, p.TravelHigh = ends[units.MMMin](r.span("travel"))
	p.HeatLow, p.HeatHigh = ends[units.KJMM](r.heat(&p))
	p.Preheat = units.Celsius(r.single("preheat"))
	p.Basis, p.Source = r.text("basis"), r.text("source")
	if p.Basis == "" || p.Basis == "shop" {
		p.Basis = "shop"
		if p.Source == "" {
			p.Source = r.opt.From + r.onSheet()
		}
	}
	return p
}

func (r *reader) onSheet() string {
	if r.sheet.Name == "" {
		return fmt.Sprintf(", line %d", r.row.Number)
	}
	return fmt.Sprintf(", sheet %s, row %d", r.sheet.Name, r.row.Number)
}

func ends[T ~float64](low, high float64) (T, T) { return T(low), T(high) }

// withoutK tells whether heat input is without the thermal efficiency. The table of
// the tables folder says by its own definition that it is with it.
func (r *reader) withoutK() bool { return r.opt.ArcEnergy && !r.opt.Table }

// heat reads the range of heat input, with k, or of arc energy, which k is put to.
func (r *reader) heat(p *tables.Procedure) (low, high float64) {
	low, high = r.span("heat")
	if r.withoutK() {
		low, high = low*r.k(p), high*r.k(p)
	}
	eLow, eHigh := r.span("energy")
	if eLow == 0 && eHigh == 0 {
		return low, high
	}
	if low > 0 || high > 0 {
		key := "energy"
		for _, k := range []string{"energy_low", "energy_high"} {
			if _, ok := r.cols[k]; ok {
				key = k
			}
		}
		r.say(finding.Error, key, "procedure-range-twice", "", "both heat input and arc energy are limited", "one of them", "clear one of them")
	}
	return eLow * r.k(p), eHigh * r.k(p)
}

// k is the thermal efficiency of the procedure's process, or of its wire's; that of
// solid wire where it names neither.
func (r *reader) k(p *tables.Procedure) float64 {
	process, _ := r.set.FindProcess(p.Process)
	numbers := strings.Fields(process.Processes)
	if wires := plan.KnownWires(r.set, p.Filler); len(numbers) == 0 && p.Filler != "" && len(wires) > 0 {
		numbers = strings.Fields(wires[0].ProcessActive + " " + wires[0].ProcessInert)
	}
	for _, number := range append(numbers, "135") {
		if row, ok := r.set.HeatK(number); ok {
			return row.K
		}
	}
	return 1
}

// tellHeat says how the figures of heat are taken where they are not with k.
func (r *reader) tellHeat(at *spot, rows []Row) {
	if !slices.ContainsFunc(rows, func(row Row) bool { return row.HeatLow > 0 || row.HeatHigh > 0 }) {
		return
	}
	r.row = r.sheet.Rows[at.last]
	for _, key := range r.keys() {
		if base(key) == "energy" || base(key) == "heat" && r.withoutK() {
			r.say(finding.Note, key, "procedure-arc-energy", "", "the figures are taken as arc energy, without the thermal efficiency; limits are shown multiplied by it, as heat input with k", "", "head the column Arc energy where that is meant, and Heat input with --codes iso where k is in the figures")
			break
		}
	}
}

// tellUnknown names the columns that are not understood although figures stand in
// them: what looks like a limit must not silently bind nothing.
func (r *reader) tellUnknown(at *spot, rows []list.Row) {
	for _, c := range at.unknown {
		figures := 0
		for _, row := range rows {
			if cell := row.At(c.at); cell.Kind == list.Number || strings.ContainsAny(cell.Text, "0123456789") {
				figures++
			}
		}
		if figures == 0 {
			continue
		}
		p := finding.Problem{Place: finding.Place{File: r.src.File, Sheet: r.sheet.Name, Row: r.sheet.Rows[at.last].Number, Col: c.at, Header: c.header},
			Level: finding.Note, Code: "procedure-column", Text: "the column is not understood and binds nothing",
			Hint: "if it is a limit, use a heading of the sheet that `seamtally starter` writes"}
		if r.limiting(c.header) {
			p.Level = finding.Warning
		}
		r.problems = append(r.problems, p)
	}
}

// limiting tells whether a header looks like that of a limit: it names an end of a
// range or a unit.
func (r *reader) limiting(header string) bool {
	for _, w := range strings.Fields(joint.Fold(header)) {
		if r.headers.ends[w] != "" || isUnit("travel", w) || isUnit("current", w) || isUnit("voltage", w) || isUnit("preheat", w) || isUnit("thickness", w) {
			return true
		}
	}
	return strings.Contains(joint.Fold(header), "range")
}
