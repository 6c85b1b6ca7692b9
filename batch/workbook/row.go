package workbook

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
)

// row is one worked row of the list with everything a cell may ask for.
type row struct {
	l   *layout
	j   *joint.Joint
	p   *plan.Plan
	src *list.Row // the user's cells; nil if they are not at hand

	words   []word // see inWords
	worded  bool
	pattern fitPattern
}

func (r *row) shop() *rates.Shop { return &r.l.job.Shop }

// run returns the governing pass; a zero pass where there is none.
func (r *row) run() plan.Run {
	if r.p.Governing >= 0 && r.p.Governing < len(r.p.Runs) {
		return r.p.Runs[r.p.Governing]
	}
	return plan.Run{}
}

// cell returns the number in the user's own cell of an input, if it is one.
func (r *row) cell(key string) (float64, joint.Column, bool) {
	if r.src == nil {
		return 0, joint.Column{}, false
	}
	for _, c := range r.l.inputs[key] {
		if cell := r.src.At(c.Col); cell.Kind != list.Blank {
			v, ok := r.l.number(r.src.Number, cell)
			return v, c, ok
		}
	}
	return 0, joint.Column{}, false
}

// factors are the lengths that a bare number may stand for, in millimetres.
var factors = []float64{1, 25.4, 1000, 10, 304.8}

// link returns the formula that reads an input from the user's own cell, where
// that cell is a number which in some unit is the value that was understood.
func (r *row) link(key string, value float64) string {
	got, col, ok := r.cell(key)
	if !ok || got == 0 {
		return ""
	}
	for _, f := range factors {
		if !agree(got*f, value) {
			continue
		}
		ref := r.l.userCell(col.Col)
		if f == 1 {
			return ref
		}
		return ref + "*" + exact(f)
	}
	return ""
}

// count links a bare number, such as a quantity.
func (r *row) count(key string, value float64) string {
	got, col, ok := r.cell(key)
	if !ok || got != value {
		return ""
	}
	return r.l.userCell(col.Col)
}

// agree tells whether two figures are the same but for rounding.
func agree(a, b float64) bool {
	return math.Abs(a-b) <= 1e-10*math.Max(math.Abs(a), math.Abs(b))
}

// planKeys are the inputs that decide a plan: where one of them is a word, the
// plan fits only as long as the word stands.
var planKeys = []string{"kind", "size", "leg", "throat", "t1", "t2", "stitch", "material", "material2",
	"position", "where", "process", "wire", "gas", "machine", "wps", "angle", "gap", "root_face",
	"depth", "radius", "backing", "length", "qty", "sides", "part1", "part2"}

// status says in words what became of the row; its checks say why.
func (r *row) status() string {
	errors, warnings := 0, 0
	for i := range r.p.Checks {
		switch r.p.Checks[i].Level {
		case finding.Error:
			errors++
		case finding.Warning:
			warnings++
		}
	}
	said := "worked"
	if !r.p.Settings {
		said = "metal only"
		if r.p.WeldMetal == 0 {
			said = "not worked"
		}
	}
	if errors > 0 {
		said += ", " + plural(errors, "error")
	}
	if warnings > 0 {
		said += ", " + plural(warnings, "warning")
	}
	return said
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return strconv.Itoa(n) + " " + word + "s"
}

// worst returns the gravest level among the row's checks.
func (r *row) worst() finding.Level {
	worst := finding.Note
	for i := range r.p.Checks {
		switch r.p.Checks[i].Level {
		case finding.Error:
			return finding.Error
		case finding.Warning:
			worst = finding.Warning
		}
	}
	return worst
}

// checkText returns the row's checks, gravest first, in one line; before them why
// there are no settings, where no check says so.
func (r *row) checkText() string {
	if len(r.p.Checks) == 0 || r.p.NoSettings != "" {
		return r.wordChecks()
	}
	key := checkList{&r.p.Checks[0], len(r.p.Checks)} // joints of one form share their checks
	text, known := r.l.checkTexts[key]
	if !known {
		text = r.wordChecks()
		if len(r.l.checkTexts) < mostKept {
			r.l.checkTexts[key] = text
		}
	}
	return text
}

// checkList names a list of checks.
type checkList struct {
	first *finding.Check
	n     int
}

// wordChecks puts that line together.
func (r *row) wordChecks() string {
	var parts []string
	why := strings.TrimPrefix(r.p.NoSettings, "no settings: ")
	if why != "" && !slices.ContainsFunc(r.p.Checks, func(c finding.Check) bool { return strings.Contains(c.Text, why) }) {
		parts = append(parts, why)
	}
	for _, level := range []finding.Level{finding.Error, finding.Warning, finding.Note} {
		for _, c := range r.p.Checks {
			if c.Level == level {
				parts = append(parts, string(level)+": "+c.Text)
			}
		}
	}
	return strings.Join(parts, "; ")
}

// assumed returns what the list did not say and how it was filled in.
func (r *row) assumed() string {
	var parts []string
	for _, group := range [][]joint.Assumption{r.j.Assumed, r.p.Assumed} {
		for _, a := range group {
			parts = append(parts, a.Key+" "+a.Value)
		}
	}
	return strings.Join(parts, "; ")
}
