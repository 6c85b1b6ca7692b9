package procedure

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
	"seamtally/tables"
)

// span reads a range from its one column or its two; zero: an open end.
func (r *reader) span(key string) (low, high float64) {
	one, from, to := r.cell(key), r.cell(key+"_low"), r.cell(key+"_high")
	low, high = r.end(key+"_low", from), r.end(key+"_high", to)
	at := key + "_low"
	if one.Kind != list.Blank {
		if from.Kind != list.Blank || to.Kind != list.Blank {
			r.say(finding.Error, key, "procedure-range-twice", one.Text, "the range stands in one column and again in two", "one of them", "clear one of them")
			return 0, 0
		}
		low, high = r.both(key, one)
		at = key
	}
	if low > 0 && high > 0 && low > high*(1+1e-9) {
		r.say(finding.Error, at, "procedure-range", "", fmt.Sprintf("the range of %s runs from %s to %s", nameOf(key), short(low), short(high)), "the smaller figure first", "swap the two, or correct one of them")
	}
	return low, high
}

// both reads a cell that holds a whole range.
func (r *reader) both(key string, c list.Cell) (low, high float64) {
	if !r.readable(key, c) {
		return 0, 0
	}
	text := c.Text
	if c.Kind == list.Number {
		text = short(c.Value)
	}
	s, bad := spanOf(text, r.style)
	if bad != nil {
		r.say(finding.Error, key, "procedure-figure", c.Text, "the range of "+nameOf(key)+" cannot be read: "+bad.Text, "a range in "+unitsOf(key), bothEnds(bad.Hint, key))
		return 0, 0
	}
	swapped := s.low.there && s.high.there && s.low.unit == s.high.unit && s.low.value > s.high.value
	if swapped {
		r.say(finding.Error, key, "procedure-range", c.Text, fmt.Sprintf("the range of %s runs from %s to %s", nameOf(key), short(s.low.value), short(s.high.value)), "the smaller figure first", "swap the two, or correct one of them")
	}
	before := len(r.problems)
	if low = r.value(key, c.Text, s.low); len(r.problems) > before {
		return 0, 0 // the other end would say the same again
	}
	if high = r.value(key, c.Text, s.high); swapped {
		return 0, 0 // told already
	}
	return low, high
}

// end reads a cell that holds one end.
func (r *reader) end(key string, c list.Cell) float64 {
	if c.Kind == list.Blank || !r.readable(key, c) {
		return 0
	}
	if c.Kind == list.Number {
		return r.value(key, c.Text, figure{value: c.Value, there: true})
	}
	text := strings.TrimSpace(c.Text)
	if open[strings.ToLower(text)] {
		return 0
	}
	text = strings.ToLower(measure.Plain(text))
	if base(key) == "preheat" || strings.HasSuffix(key, "_low") { // min. 80 is the least, which the column is anyway
		if m := reFrom.FindStringSubmatch(text); m != nil {
			text = m[1]
		}
	} else if m := reUpTo.FindStringSubmatch(text); m != nil && strings.HasSuffix(key, "_high") {
		text = m[1]
	}
	f, bad := figureOf(text, r.style)
	if bad != nil {
		r.say(finding.Error, key, "procedure-figure", c.Text, nameOf(key)+" cannot be read: "+bad.Text, "one number in "+unitsOf(key), orElse(bad.Hint, "write digits, such as "+oneOf(key)))
		return 0
	}
	return r.value(key, c.Text, f)
}

// single reads a column that holds one figure.
func (r *reader) single(key string) float64 { return r.end(key, r.cell(key)) }

// readable refuses cells that a spreadsheet made something else of.
func (r *reader) readable(key string, c list.Cell) bool {
	switch {
	case c.Kind == list.Date || c.Kind == list.Text && measure.IsDate(c.Text):
		r.say(finding.Error, key, "procedure-figure", c.Text, "the spreadsheet took the figures for a date", "a range in "+unitsOf(key), "format the cell as text and write the range again, such as 8 to 12")
	case c.Kind == list.CellError, c.Kind == list.Bool, c.Kind == list.NoValue:
		r.say(finding.Error, key, "procedure-figure", c.Text, "the cell holds no figure", "figures in "+unitsOf(key), "write the figures themselves")
	case c.Percent:
		r.say(finding.Error, key, "procedure-figure", c.Text, "the cell shows a percentage", "figures in "+unitsOf(key), "write the figures themselves")
	default:
		return true
	}
	return false
}

// value brings a figure to the quantity's unit and judges whether it can be meant.
func (r *reader) value(key, read string, f figure) float64 {
	if !f.there {
		return 0
	}
	unit, bare := f.unit, false
	if unit == "" {
		unit = r.cols[key].unit
	}
	if unit == "" {
		unit, bare = r.bareUnit(key), true
	}
	if !isUnit(key, unit) {
		r.say(finding.Error, key, "procedure-unit", read, fmt.Sprintf("the unit %q does not fit %s", f.unit, nameOf(key)), unitsOf(key), "write the figures in "+unitsOf(key))
		return 0
	}
	if f.value == 0 && (r.opt.Table || strings.HasSuffix(key, "_low")) && base(key) != "preheat" {
		return 0
	}
	v := convert(key, f.value, unit)
	limit := r.limit(key)
	low, high := limit.Low, limit.High
	if bare && !r.opt.Inches {
		low, high = limit.BareLow, limit.BareHigh
	}
	if math.IsNaN(v) || v < low*(1-1e-9) || v > high*(1+1e-9) {
		r.say(finding.Error, key, "procedure-figure", read, fmt.Sprintf("a %s of %s %s is not usual", nameOf(key), short(v), limit.Unit),
			fmt.Sprintf("%s to %s %s", short(low), short(high), limit.Unit), "correct the figure, or write the unit it is meant in; a blank cell is an open end")
		return 0
	}
	return v
}

// bareUnit is the unit of a figure that has none anywhere.
func (r *reader) bareUnit(key string) string {
	switch base(key) {
	case "current":
		return "a"
	case "voltage":
		return "v"
	case "travel":
		return "mm min"
	case "heat", "energy":
		return "kj mm"
	case "preheat":
		return "°c"
	}
	if r.opt.Inches && !r.opt.Table {
		return "in"
	}
	return "mm"
}

// limit is the row of plausible figures of a key.
func (r *reader) limit(key string) tables.ProcedureLimit {
	for _, l := range r.set.ProcedureLimits {
		if l.Key == base(key) {
			return l
		}
	}
	return tables.ProcedureLimit{Low: math.Inf(-1), High: math.Inf(1), BareLow: math.Inf(-1), BareHigh: math.Inf(1)}
}

// nameOf is the quantity in words.
func nameOf(key string) string {
	switch base(key) {
	case "dia":
		return "wire diameter"
	case "energy":
		return "arc energy"
	case "heat":
		return "heat input"
	case "travel":
		return "travel speed"
	}
	return base(key)
}

// unitsOf names the units that a column takes.
func unitsOf(key string) string {
	return map[string]string{
		"thickness": "mm or in", "dia": "mm or in", "current": "A", "voltage": "V", "travel": "mm/min, cm/min or in/min",
		"heat": "kJ/mm, kJ/cm or kJ/in", "energy": "kJ/mm, kJ/cm or kJ/in", "preheat": "°C or °F",
	}[base(key)]
}

// exampleOf returns a range such as people write for a figure.
func exampleOf(key string) string {
	example := map[string]string{
		"thickness": "3-12", "dia": "1.0-1.2", "current": "200-240", "voltage": "24-27", "travel": "250-400",
		"heat": "0.8-1.5", "energy": "0.8-1.5", "preheat": "80-150",
	}[base(key)]
	if example == "" {
		return "200-240"
	}
	return example
}

// oneFigure stands for the hint where one figure was written in place of a range.
const oneFigure = "one figure"

// bothEnds says how a range is written, in figures of the column.
func bothEnds(hint, key string) string {
	low, high, _ := strings.Cut(exampleOf(key), "-")
	if hint == oneFigure {
		return "write both ends, such as " + low + "-" + high + ", or one of them, such as up to " + high + " or from " + low + "; the same figure twice where only that one is meant"
	}
	if hint != "" { // it is of one number, and a range is wanted here
		return "write both ends of the range, such as " + low + "-" + high + ", with one decimal sign and none between thousands"
	}
	return "write digits, such as " + low + "-" + high
}

// oneOf is an example of a single figure: the first of the range.
func oneOf(key string) string {
	first, _, _ := strings.Cut(exampleOf(key), "-")
	return first
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// short writes a figure without needless digits.
func short(v float64) string {
	return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
}
