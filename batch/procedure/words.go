package procedure

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/units"
	"seamtally/tables"
)

// wire reads class and diameter, from one column or from two.
func (r *reader) wire(p *tables.Procedure) {
	p.Filler = r.text("filler")
	dia := r.single("dia")
	if c := r.cell("dia"); dia == 0 && c.Kind != list.Blank && r.bad {
		return
	}
	p.Dia = units.MM(dia)
	if p.Filler == "" {
		return
	}
	wires := plan.KnownWires(r.set, p.Filler)
	if len(wires) == 0 {
		r.say(finding.Error, "filler", "procedure-wire", p.Filler, fmt.Sprintf("the wire %q is not in the table of wires", p.Filler), "a class with or without a diameter, such as G3Si1 1.2 or ER70S-6 0.045", "correct it; a stick electrode or a rod is no wire: take such a row out")
		return
	}
	if dia > 0 {
		fits := slices.DeleteFunc(slices.Clone(wires), func(w tables.Wire) bool { return math.Abs(float64(w.Dia)-dia) > 0.07*dia })
		if len(fits) == 0 {
			r.say(finding.Error, "dia", "procedure-wire", r.text("dia"), fmt.Sprintf("the wire %s is not in the table with %s mm", p.Filler, short(dia)), "one of "+diasOf(wires)+" mm", "correct the diameter, or add the wire to the tables")
			return
		}
		wires = nearest(fits, dia)
	}
	if filler := wires[0].Filler; !slices.ContainsFunc(wires, func(w tables.Wire) bool { return w.Filler != filler }) {
		p.Filler = filler
	}
	p.Dia = 0
	if d := wires[0].Dia; !slices.ContainsFunc(wires, func(w tables.Wire) bool { return w.Dia != d }) {
		p.Dia = d
	}
}

// nearest keeps the wires whose diameter is nearest: 0.045 in is sold as 1.2 mm.
func nearest(wires []tables.Wire, dia float64) []tables.Wire {
	off := func(w tables.Wire) float64 { return math.Abs(float64(w.Dia) - dia) }
	least := math.Inf(1)
	for _, w := range wires {
		least = min(least, off(w))
	}
	return slices.DeleteFunc(wires, func(w tables.Wire) bool { return off(w) > least+1e-9 })
}

func diasOf(wires []tables.Wire) string {
	var out []string
	for _, w := range wires {
		if d := short(float64(w.Dia)); !slices.Contains(out, d) {
			out = append(out, d)
		}
	}
	return strings.Join(out, ", ")
}

// process reads the process; the words are kept, as the planner reads them too.
func (r *reader) process(p *tables.Procedure) string {
	text := r.text("process")
	if text == "" {
		return ""
	}
	switch row, ok := r.set.FindProcess(text); {
	case !ok:
		r.say(finding.Error, "process", "procedure-process", text, fmt.Sprintf("the process %q is not understood", text), "an ISO 4063 number such as 135 or 136, or MAG, MIG, FCAW", "correct it")
	case row.Wire != "yes":
		r.say(finding.Error, "process", "procedure-process", text, fmt.Sprintf("the process %q is not a wire process that this tool plans", text), "MIG, MAG or flux-cored welding, such as 135 or 136", "correct it, or begin the row with # to keep it as a remark")
	}
	return text
}

// gas reads the gas by its designation or its mix.
func (r *reader) gas(p *tables.Procedure) string {
	text := r.text("gas")
	if text == "" || text == "-" {
		return ""
	}
	gas, ok := r.set.FindGas(text)
	if !ok {
		r.say(finding.Error, "gas", "procedure-gas", text, fmt.Sprintf("the gas %q is not in the table of gases", text), "an ISO 14175 designation such as M21, or a mix such as 82/18", "correct it, or leave it blank for any gas")
		return ""
	}
	if gas.Gasless() {
		return text
	}
	return gas.Gas
}

// together tells of a wire that is not welded under the procedure's gas, or not by
// its process: nothing could ever be planned inside it.
func (r *reader) together(p *tables.Procedure) {
	wires := plan.KnownWires(r.set, strings.TrimSpace(p.Filler))
	if p.Filler == "" || len(wires) == 0 || r.bad {
		return
	}
	gas, _ := r.set.FindGas(p.Gas)
	process, _ := r.set.FindProcess(p.Process)
	under, by := p.Gas == "", p.Process == ""
	for _, w := range wires {
		if p.Dia > 0 && w.Dia != p.Dia {
			continue
		}
		under = under || gas.Gasless() && w.Gasless() || slices.Contains(w.Gases(), gas.Gas)
		for _, number := range strings.Fields(process.Processes) {
			by = by || number == w.ProcessActive && (p.Gas == "" || gas.Kind != "inert") || number == w.ProcessInert && (p.Gas == "" || gas.Kind == "inert")
		}
	}
	switch {
	case !under:
		r.say(finding.Error, "gas", "procedure-gas", r.text("gas"), fmt.Sprintf("the wire %s is not welded under %s by the table of wires", p.Filler, p.Gas), "one of "+orNone(wires[0].GasList), "correct the gas or the wire")
	case !by:
		r.say(finding.Error, "process", "procedure-process", p.Process, fmt.Sprintf("the wire %s under this gas is not process %s", p.Filler, p.Process), "process "+processOf(wires[0], gas), "correct the process, the gas or the wire")
	}
}

func orNone(gases string) string {
	if gases == "" {
		return "no gas: it shields itself"
	}
	return gases
}

func processOf(w tables.Wire, g tables.Gas) string {
	if p := w.Process(g); p != "" {
		return p
	}
	return strings.TrimSpace(w.ProcessActive + " " + w.ProcessInert)
}

var (
	reBreak = regexp.MustCompile(`[,;/&+|\n]+`)
	reAll   = regexp.MustCompile(`^(?:all|any|every|alle|wszystkie|toutes|todas)(?: positions?)?$`)
	reBut   = regexp.MustCompile(`^(?:all|any|alle)(?: positions?)?,? (?:except|but|but not|without|ausser|außer|ohne|oprócz)(?: for)? (.+)$`)
)

// positions reads one position, a list of them, "all", or all but some, as ISO
// 6947 positions joined by blanks; blank binds nothing.
func (r *reader) positions() string {
	text := r.text("positions")
	low := strings.ToLower(text)
	if text == "" || text == "-" || reAll.MatchString(low) {
		return ""
	}
	if m := reBut.FindStringSubmatch(low); m != nil {
		not := r.positionList(m[1])
		return strings.Join(slices.DeleteFunc(r.terms().Known(), func(p string) bool { return slices.Contains(not, p) }), " ")
	}
	return strings.Join(r.positionList(text), " ")
}

func (r *reader) positionList(text string) []string {
	if whole := r.terms().Positions(text); whole != nil {
		return whole
	}
	var out, unknown []string
	add := func(found []string) {
		for _, p := range found {
			if !slices.Contains(out, p) {
				out = append(out, p)
			}
		}
	}
	for _, part := range reBreak.Split(strings.ReplaceAll(text, " and ", ","), -1) {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		if found := r.terms().Positions(part); found != nil {
			add(found)
			continue
		}
		for _, word := range strings.Fields(part) {
			if found := r.terms().Positions(word); found != nil {
				add(found)
			} else {
				unknown = append(unknown, word)
			}
		}
	}
	if len(unknown) > 0 || len(out) == 0 {
		r.say(finding.Error, "positions", "procedure-position", text, fmt.Sprintf("the position %q is not known", strings.Join(unknown, " ")), "PA to PK or 1F to 6G, several with commas between, all, or all except PG", "correct it")
	}
	return out
}
