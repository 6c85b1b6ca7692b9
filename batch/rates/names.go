package rates

import (
	"strconv"
	"strings"

	"seamtally/batch/units"
	"seamtally/tables"
)

// names knows how wires, gases and machines may be called and what the tables
// call them.
type names struct {
	fillers  map[string]string // folded spelling to filler
	dias     map[string][]units.MM
	gases    map[string]string
	machines map[string]string
	steel    func(words string) bool                             // tells whether words name a steel of the tables
	metal    func(words string) bool                             // tells whether words name any metal of the tables
	all      struct{ fillers, gases, machines, steels []string } // in table order
}

// fold makes spellings comparable: no spaces, no case.
func fold(name string) string {
	return strings.ToLower(strings.Join(strings.Fields(name), ""))
}

func newNames(set *tables.Set) *names {
	n := &names{fillers: map[string]string{}, dias: map[string][]units.MM{}, gases: map[string]string{}, machines: map[string]string{}}
	for _, w := range set.Wires {
		if len(n.dias[w.Filler]) == 0 {
			n.all.fillers = append(n.all.fillers, w.Filler)
		}
		n.dias[w.Filler] = append(n.dias[w.Filler], w.Dia)
		n.fillers[fold(w.Filler)] = w.Filler
		if _, taken := n.fillers[fold(w.AWS)]; !taken && w.AWS != "" {
			n.fillers[fold(w.AWS)] = w.Filler
		}
	}
	for _, g := range set.Gases {
		n.gases[fold(g.Gas)] = g.Gas
		n.all.gases = append(n.all.gases, g.Gas)
	}
	for _, m := range set.Machines {
		n.machines[fold(m.Name)] = m.Name
		n.all.machines = append(n.all.machines, m.Name)
	}
	for _, m := range set.Materials {
		if m.Group == carbonSteel {
			n.all.steels = append(n.all.steels, m.Grade)
		}
	}
	n.metal = func(words string) bool {
		_, ok := set.Material(words)
		return ok
	}
	n.steel = func(words string) bool {
		m, ok := set.Material(words)
		return ok && m.Group == carbonSteel
	}
	return n
}

// carbonSteel is the group of the materials whose carbon equivalent matters.
const carbonSteel = "carbon steel"

// wire splits "G3Si1 1.0", "G3Si1.1.0" or "ER70S-6 1,0 mm" into the table's filler
// and a diameter; the diameter is zero where the text names the class alone.
func (n *names) wire(text string) (filler string, dia units.MM, ok bool) {
	text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "mm"))
	if filler, ok = n.fillers[fold(text)]; ok {
		return filler, 0, true
	}
	head, tail := lastNumber(text)
	value, err := strconv.ParseFloat(strings.Replace(tail, ",", ".", 1), 64)
	if err != nil {
		return "", 0, false
	}
	filler, ok = n.fillers[fold(strings.TrimRight(head, ". x"))]
	return filler, units.MM(value), ok
}

// lastNumber cuts the number at the end off a text.
func lastNumber(text string) (head, tail string) {
	at, marks := len(text), 0
	for at > 0 {
		c := text[at-1]
		if c == '.' || c == ',' {
			if marks++; marks > 1 {
				break
			}
		} else if c < '0' || c > '9' {
			break
		}
		at--
	}
	return text[:at], strings.Trim(text[at:], ".,")
}

// has tells whether the tables have the wire in that diameter.
func (n *names) has(filler string, dia units.MM) bool {
	for _, d := range n.dias[filler] {
		if sameDia(d, dia) {
			return true
		}
	}
	return false
}

func sameDia(a, b units.MM) bool { return a-b < 0.005 && b-a < 0.005 }

// WireName returns the name of a wire as people read it: "G3Si1 1.0".
func WireName(filler string, dia units.MM) string {
	if dia == 0 {
		return filler
	}
	return filler + " " + diaText(dia)
}

// diaText writes a diameter with at least one decimal.
func diaText(dia units.MM) string {
	text := strconv.FormatFloat(float64(dia), 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	return text
}
