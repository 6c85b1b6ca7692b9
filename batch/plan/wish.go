package plan

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/tables"
)

// wish is what the list itself asks for: process, wire, gas and machine, read
// from the user's own words. Empty fields ask for nothing.
type wish struct {
	named     bool   // anything but the machine
	asked     string // the words of the list, quoted
	processes string
	mode      Transfer
	wires     []*tables.Wire
	gas       string
	machine   string
	gasLeft   string // a gas asked for with a wire that needs none
	problem   string // what could not be understood or met, with what to do
	code      string
}

// readWish understands the user's words. The first thing it cannot understand
// becomes the problem.
func (c *catalog) readWish(j *joint.Joint) wish {
	var w wish
	if j.Process == "" && j.Wire == "" && j.Gas == "" && j.Machine == "" {
		return w
	}
	w.asked = quoted(j.Process, j.Wire, j.Gas, j.Machine)
	c.wishProcess(&w, j.Process)
	c.wishWire(&w, j.Wire)
	c.wishGas(&w, j.Gas)
	c.wishMachine(&w, j.Machine)
	return w
}

func (w *wish) refuse(code, text string) {
	if w.problem == "" {
		w.code, w.problem = code, text
	}
}

func (c *catalog) wishProcess(w *wish, text string) {
	if text == "" {
		return
	}
	w.named = true
	row, ok := c.set.FindProcess(text)
	switch {
	case !ok:
		w.refuse("process-unknown", fmt.Sprintf("the process %q is not understood; write an ISO 4063 number such as 135 or 136, or MAG, MIG, FCAW", text))
	case row.Wire != "yes":
		w.refuse("process-outside", fmt.Sprintf("the process %s is no wire process: this tool plans MIG/MAG and flux-cored welding only, so plan the joint by hand if it must be that", withNumber(text, row.Processes)))
	default:
		w.processes, w.mode = row.Processes, Transfer(row.Transfer)
	}
}

// quoted lists the words of the list that say something.
func quoted(texts ...string) string {
	var out []string
	for _, text := range texts {
		if text != "" {
			out = append(out, fmt.Sprintf("%q", text))
		}
	}
	return strings.Join(out, ", ")
}

// withNumber quotes a process as the list writes it, with its number where that says more.
func withNumber(text, number string) string {
	if text == number {
		return fmt.Sprintf("%q", text)
	}
	return fmt.Sprintf("%q (%s)", text, number)
}

func (c *catalog) wishWire(w *wish, text string) {
	if text == "" {
		return
	}
	w.named = true
	found := c.findWires(text)
	if len(found) == 0 {
		w.refuse("wire-unknown", fmt.Sprintf("the wire %q is not in the table of wires; write a class and a diameter such as G3Si1 1.0", text))
		return
	}
	for _, f := range found {
		for i := range c.set.Wires {
			if r := &c.set.Wires[i]; r.Filler == f.Filler && r.Dia == f.Dia {
				w.wires = append(w.wires, r)
			}
		}
	}
}

// inchWire finds a diameter in inches at the end of a person's words: .035,
// 0.045", 1/16; inchFirst finds one before the class.
var inchWire = regexp.MustCompile(`^(.*?)\s*[ø⌀]?\s*(?:0?\.(0\d{1,2})|(\d)/(16|32|64))\s*(?:"|in|inch|″|'')?\s*$`)

var inchFirst = regexp.MustCompile(`^\s*[ø⌀]?\s*(?:0?\.(0\d{1,2})|(\d)/(16|32|64))\s*(?:"|in|inch|″|'')?\s+(.*\S)\s*$`)

// bareDia is a diameter in millimetres that stands before the class.
var bareDia = regexp.MustCompile(`^\s*[ø⌀]?\s*(\d[.,]\d)\s*(?:mm)?\s+(.*\S)\s*$`)

// KnownWires returns the wires of the table that a person's words may mean.
func KnownWires(set *tables.Set, text string) []tables.Wire {
	return (&catalog{set: set}).findWires(text)
}

func (c *catalog) findWires(text string) []tables.Wire {
	if m := inchWire.FindStringSubmatch(text); m != nil {
		if dia := nominal(c.set.Wires, inches(m)); dia > 0 {
			return c.set.FindWires(strings.TrimSpace(m[1] + " " + strconv.FormatFloat(dia, 'f', 1, 64)))
		}
	}
	if m := inchFirst.FindStringSubmatch(text); m != nil {
		return c.findWires(m[4] + " " + strings.TrimSpace(strings.TrimSuffix(text, m[4])))
	}
	if m := bareDia.FindStringSubmatch(text); m != nil {
		return c.set.FindWires(m[2] + " " + m[1])
	}
	return c.set.FindWires(text)
}

// inches returns the millimetres of the diameter that inchWire has found.
func inches(m []string) float64 {
	if m[2] != "" {
		v, _ := strconv.ParseFloat("0."+m[2], 64)
		return v * units.MMPerInch
	}
	a, _ := strconv.ParseFloat(m[3], 64)
	b, _ := strconv.ParseFloat(m[4], 64)
	return a / b * units.MMPerInch
}

// nominal returns the metric diameter that a diameter in inches is sold as: the
// nearest of the table within 7 %; 0 if none is.
func nominal(wires []tables.Wire, dia float64) float64 {
	best := 0.0
	for _, w := range wires {
		d := float64(w.Dia)
		if math.Abs(d-dia) < 0.07*dia && (best == 0 || math.Abs(d-dia) < math.Abs(best-dia)-1e-9) {
			best = d
		}
	}
	return best
}

func (c *catalog) wishGas(w *wish, text string) {
	if text == "" {
		return
	}
	w.named = true
	gas, ok := c.set.FindGas(text)
	if !ok {
		w.refuse("gas-unknown", fmt.Sprintf("the gas %q is not in the table of gases; write an ISO 14175 designation such as M21, or a mix such as 82/18", text))
		return
	}
	w.gas = gasName(&gas)
}

// noGas is the word of a wish for no gas from outside.
const noGas = "none"

// gasName is the designation of a gas in a wish; a blank wish asks for nothing.
func gasName(g *tables.Gas) string {
	if g.Gasless() {
		return noGas
	}
	return g.Gas
}

func (c *catalog) wishMachine(w *wish, text string) {
	if text == "" {
		return
	}
	m, ok := c.set.Machine(text)
	if !ok {
		w.refuse("machine-unknown", fmt.Sprintf("the machine %q is not in the table of machines", text))
		return
	}
	w.machine = m.Name
}

// grants tells whether a way of welding is what the user asks for.
func (w *wish) grants(n *way) bool {
	if w.processes != "" && !hasWord(w.processes, n.process) {
		return false
	}
	if w.mode != "" && w.mode != n.mode || w.gas != "" && w.gas != gasName(n.gas) {
		return false
	}
	if len(w.wires) == 0 {
		return true
	}
	for _, wire := range w.wires {
		if wire == n.wire {
			return true
		}
	}
	return false
}
