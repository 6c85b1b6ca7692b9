package tables

import (
	"strings"

	"seamtally/batch/units"
)

// Wire is one filler wire of one diameter.
type Wire struct {
	Filler       string      `csv:"filler"` // short ISO class, the name used everywhere: "G3Si1"
	ISO          string      `csv:"iso"`    // full designation
	AWS          string      `csv:"aws"`    // AWS class: "ER70S-6"
	Metal        string      `csv:"metal"`  // metal group
	Construction string      `csv:"construction"`
	Dia          units.MM    `csv:"dia_mm"`
	LinearMass   units.GramM `csv:"g_m"`
	// ProcessActive and ProcessInert are ISO 4063 numbers with an active gas, or
	// none, and with an inert gas; empty where the wire is not welded so.
	ProcessActive string  `csv:"process_active"`
	ProcessInert  string  `csv:"process_inert"`
	Polarity      string  `csv:"polarity"`
	GasList       string  `csv:"gases"`   // ISO 14175 designations the wire may be welded with
	Melting       string  `csv:"melting"` // family in melting.csv
	RmMPa         float64 `csv:"rm_mpa"`  // tensile strength of the weld metal, about
	Note          string  `csv:"note"`
	Origin
}

// Gases returns the gases that the wire may be welded with; none for a wire that
// shields itself.
func (w Wire) Gases() []string { return strings.Fields(w.GasList) }

// Slag tells whether the wire leaves a slag on every run: rutile, basic and
// self-shielded cored wires do, solid and metal-cored ones do not.
func (w Wire) Slag() bool {
	return strings.HasSuffix(w.Construction, "cored") && w.Construction != "metal cored"
}

// Soft tells whether the wire is an aluminium-silicon alloy, which bends most
// easily: the 4xxx series of ISO 18273.
func (w Wire) Soft() bool { return strings.HasPrefix(w.Filler, "S Al 4") }

// Gasless tells whether the wire shields itself.
func (w Wire) Gasless() bool { return w.GasList == "" }

// Process returns the ISO 4063 number of the wire under the gas; empty where the
// wire is not welded with a gas of that kind.
func (w Wire) Process(g Gas) string {
	if g.Kind == "inert" {
		return w.ProcessInert
	}
	return w.ProcessActive
}

// Density is the density of a metal, as base and weld metal or as wire.
type Density struct {
	Metal string     `csv:"metal"`
	Use   string     `csv:"use"`
	Value units.KgM3 `csv:"kg_m3"`
	Note  string     `csv:"note"`
	Origin
}

// Uses of a density.
const (
	WeldMetal = "base and weld metal"
	WireMetal = "wire"
)

// Wire returns the wire of a filler class and diameter.
func (f *Facts) Wire(filler string, dia units.MM) (Wire, bool) {
	for _, w := range f.Wires {
		if w.Filler == filler && sameDia(w.Dia, dia) {
			return w, true
		}
	}
	return Wire{}, false
}

// Density returns the density of a metal for a use.
func (f *Facts) Density(metal, use string) (Density, bool) {
	for _, d := range f.Densities {
		if d.Metal == metal && d.Use == use {
			return d, true
		}
	}
	return Density{}, false
}

// sameDia tells whether two wire diameters are the same nominal size.
func sameDia(a, b units.MM) bool { return a-b < 0.01 && b-a < 0.01 }

// FindWires returns the wires that a person's own words may mean: a filler class,
// a designation or an AWS class, with or without a diameter ("G3Si1 1.0",
// "ER70S-6", "1.2"), or a trade's word ("metal cored 1.2", "71T-1"). Without a
// diameter in the words every diameter is returned.
func (f *Facts) FindWires(text string) []Wire {
	key, dia := splitDia(text)
	if out := f.wiresOfWord(key, dia); len(out) > 0 {
		return out
	}
	var out []Wire
	for _, w := range f.Wires {
		if dia > 0 && !sameDia(w.Dia, dia) {
			continue
		}
		if key == "" || matchesWire(w, key) {
			out = append(out, w)
		}
	}
	if key == "" && dia == 0 {
		return nil
	}
	return out
}

// matchesWire compares squeezed names. The AWS class of a cored wire is known
// without its gas letters too: E71T-1 for E71T-1M/-1C.
func matchesWire(w Wire, key string) bool {
	for _, name := range append(strings.Split(w.AWS, "/"), w.Filler, w.ISO, w.AWS) {
		s := squeeze(name)
		if s == key || strings.TrimRight(s, "mc") == key || strings.TrimSuffix(s, "si") == key {
			return true
		}
	}
	iso := squeeze(w.ISO)
	return len(key) >= 4 && strings.Contains(iso, key)
}
