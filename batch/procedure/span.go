package procedure

import (
	"regexp"
	"strings"

	"seamtally/batch/joint/measure"
)

// figure is one number of a cell and the unit that stood with it.
type figure struct {
	value float64
	unit  string // folded; empty: none
	there bool
}

// span is a range as a cell has it; an end that is not there is open.
type span struct{ low, high figure }

var (
	reUpTo  = regexp.MustCompile(`^(?:<=|<|≤|up to|max\.?|at most|not over|to|bis|do|jusqu'à)\s*(.+)$`)
	reFrom  = regexp.MustCompile(`^(?:>=|>|≥|from|min\.?|at least|over|ab|od|von)\s*([^-]+?)(?: and more| and over)?$`)
	reAbout = regexp.MustCompile(`^(.+?)\s*(?:±|\+/-|\+-)\s*(.+)$`)
	reTwo   = regexp.MustCompile(`^(?:from |von |od |between )?(.+?)(?:\s*(?:-|…|\.\.\.?|~)\s*|\s+(?:to|bis|do|and)\s+)(.+)$`)
	reOne   = regexp.MustCompile(`^([+-]?[\d.,]+(?: \d{1,3}/\d{1,2}|/\d{1,2})?)\s*(\D.*)?$`)
)

// open are the words for a range without limits.
var open = map[string]bool{"-": true, "--": true, "any": true, "all": true, "no limit": true, "unlimited": true, "n/a": true, "na": true, "none": true}

// spanOf reads a range: "200-230 A", "200 to 230", "up to 1.8", "min 20", "220 ± 10 %".
func spanOf(text string, style measure.Style) (span, *measure.Fault) {
	text = strings.ToLower(measure.Plain(text))
	if open[text] {
		return span{}, nil
	}
	if m := reAbout.FindStringSubmatch(text); m != nil {
		return aboutOf(m[1], m[2], style)
	}
	if m := reUpTo.FindStringSubmatch(text); m != nil {
		f, bad := figureOf(m[1], style)
		return span{high: f}, bad
	}
	if m := reFrom.FindStringSubmatch(text); m != nil && !strings.Contains(m[1], " to ") {
		f, bad := figureOf(m[1], style)
		return span{low: f}, bad
	}
	if m := reTwo.FindStringSubmatch(text); m != nil {
		low, bad := figureOf(m[1], style)
		if bad != nil {
			return span{}, bad
		}
		high, bad := figureOf(m[2], style)
		if low.unit == "" {
			low.unit = high.unit
		}
		return span{low, high}, bad
	}
	if _, bad := figureOf(text, style); bad != nil {
		return span{}, bad
	}
	return span{}, &measure.Fault{Text: "it is one figure and no range", Hint: oneFigure}
}

// aboutOf reads a figure with its spread: 220 ± 10, 220 A ± 10 %.
func aboutOf(mid, off string, style measure.Style) (span, *measure.Fault) {
	m, bad := figureOf(mid, style)
	if bad != nil {
		return span{}, bad
	}
	share := strings.HasSuffix(off, "%")
	d, bad := figureOf(strings.TrimSpace(strings.TrimSuffix(off, "%")), style)
	if bad != nil {
		return span{}, bad
	}
	if share {
		d.value *= m.value / 100
	}
	if m.unit == "" {
		m.unit = d.unit
	}
	if d.value < 0 || d.value >= m.value {
		return span{}, &measure.Fault{Text: "its spread is larger than the figure", Hint: "write both ends such as 200-240"}
	}
	low, high := m, m
	low.value, high.value = m.value-d.value, m.value+d.value
	return span{low, high}, nil
}

// figureOf reads one number with or without a unit behind it.
func figureOf(text string, style measure.Style) (figure, *measure.Fault) {
	text = strings.TrimSpace(text)
	m := reOne.FindStringSubmatch(text)
	if m == nil {
		return figure{}, &measure.Fault{Text: "it is not a number"}
	}
	unit := foldUnit(m[2])
	if strings.TrimSpace(m[2]) != "" && unit == "" {
		return figure{}, &measure.Fault{Text: "it is not a number"}
	}
	if strings.Contains(m[1], "/") {
		q, bad := measure.Parse(m[1], style)
		return figure{q.Num, orInch(unit), bad == nil}, bad
	}
	v, bad := measure.Number(m[1], style)
	return figure{v, unit, bad == nil}, bad
}

// orInch: a fraction without a unit is one of an inch.
func orInch(unit string) string {
	if unit == "" {
		return "in"
	}
	return unit
}
