package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
)

// needsBlock says what the list asks of a machine, for who buys or hires one.
func (o *output) needsBlock(g *look.Grid, at int) {
	n := o.l.job.Totals.Needs
	if n == nil {
		return
	}
	g.Section(at, lastCol, "What to look for in a machine")
	var wires []string
	for _, d := range n.Wires {
		wires = append(wires, strconv.FormatFloat(float64(d), 'f', 1, 64))
	}
	us := o.l.us
	for _, l := range []struct {
		name, format string
		v            float64
		unit, how    string
	}{
		{"Current", "0", float64(n.Current), "A", "largest of any pass, joint " + n.Mark},
		{"with the arc on", "0%", n.Share, "of ten min", "the operating factor of the sheet of rates; the duty cycle at that current must be as long"},
		{"Longest run without a stop", "0", n.LongestS, "s", "a stitch, or a seam between two of the starts that the sheet of rates counts"},
		{"Voltage", "0.0", float64(n.Volts), "V", "under load"},
		{"Wire feed", "0.0", feed.show(float64(n.Feed), us), feed.name(us), ""},
		{"Supply", "0.0", n.Supply, "kW", "voltage x current / efficiency of the machine (SUPPLY-1)"},
		{"which is", "0.0", n.KVA, "kVA", fmt.Sprintf("supply / power factor of the machine (SUPPLY-2); %s, as a socket of 230 V and 16 A bears 3.7 kVA", phases(n.Phases))},
		{"Spool", "0.#", kilo.show(float64(n.Spool), us), kilo.name(us), "the largest that the shop buys of these wires; the feeder must take it"},
	} {
		at++
		g.Text(at, 1, look.Plain, l.name)
		g.Number(at, 2, look.Calc, l.format, "", l.v)
		g.Text(at, 3, look.Plain, l.unit)
		g.Text(at, 5, look.Sub, l.how)
	}
	at++
	g.Text(at, 1, look.Plain, "Wires and modes")
	g.Text(at, 2, look.Plain, fmt.Sprintf("%s mm; %s", strings.Join(wires, ", "), strings.Join(n.Modes, ", ")))
	at++
	g.Text(at, 1, look.Plain, "Gun")
	g.Text(at, 2, look.Plain, n.Gun)
	o.payBackLines(g, at+1)
}

// phases says how many the mains must have.
func phases(n int) string {
	if n == 1 {
		return "one phase will do"
	}
	return "three phases"
}

// payBackLines say what each machine that the shop has not would save.
func (o *output) payBackLines(g *look.Grid, at int) {
	list := o.l.job.Totals.PayBack
	if len(list) == 0 {
		return
	}
	at++
	g.Section(at, lastCol, "What another machine would save on this list, and how many such jobs pay it back")
	var useful []price.PayBack
	var idle []string
	for _, p := range list {
		if p.Opens == 0 && p.Saves == 0 {
			idle = append(idle, p.Machine)
		} else {
			useful = append(useful, p)
		}
	}
	if len(useful) > 0 {
		at++
		g.Line(at, look.Head, "Machine")
		for c, s := range []string{"Saves " + o.l.job.Shop.Currency, "Hours", "Price", "Jobs"} {
			g.Text(at, c+2, look.HeadNum, s)
		}
	}
	for _, p := range useful {
		at++
		payBackLine(g, at, p)
	}
	if len(idle) > 0 {
		g.Over(at+1, 1, lastCol, look.Wrap, "Saves nothing on this list: "+strings.Join(idle, ", ")+".")
	}
}

// payBackLine says what one machine would save.
func payBackLine(g *look.Grid, at int, p price.PayBack) {
	g.Text(at, 1, look.Plain, p.Machine)
	if p.Opens > 0 {
		g.Text(at, 6, look.Sub, "welds "+plural(p.Opens, "joint")+" that the shop's machines do not; nothing to compare with")
		return
	}
	g.Number(at, 2, look.Calc, money, "", float64(p.Saves))
	g.Number(at, 3, look.Calc, "0.0", "", p.Hours)
	if p.Price > 0 {
		g.Number(at, 4, look.Calc, money, "", float64(p.Price))
		g.Number(at, 5, look.Calc, "0", "", math.Ceil(p.Jobs))
	} else {
		g.Text(at, 6, look.Sub, "state machine_price."+p.Machine+" in the shop file for the number of jobs")
	}
}
