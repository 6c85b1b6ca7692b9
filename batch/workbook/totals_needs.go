package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"seamtally/batch/workbook/look"
)

// needsBlock says what the list asks of a machine, for who buys or hires one.
func (o *output) needsBlock(g *look.Grid, at int) {
	n := o.l.job.Totals.Needs
	if n == nil {
		return
	}
	g.Section(at, 12, "What to look for in a machine")
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
		{"Supply", "0.0", n.Supply, "kW", "voltage x current / efficiency of the source (SUPPLY-1); a socket of 230 V and 16 A gives 3.7 kW"},
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
}
