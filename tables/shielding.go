package tables

import "seamtally/batch/units"

// NoGas is what shields a wire that needs no gas from outside: nothing.
var NoGas = Gas{Kind: "none", Origin: Origin{Basis: "derived", Source: "the wire's own core shields it"}}

// Gasless tells whether the gas is none at all.
func (g *Gas) Gasless() bool { return g.Gas == "" }

// Nozzle is the bore of the gas nozzle usual for a wire and the most gas that it
// bears before the stream breaks up. Blank metal or gas fits all; the first row
// that fits counts.
type Nozzle struct {
	Metal   string   `csv:"metal"`
	Gas     string   `csv:"gas"`
	DiaFrom float64  `csv:"dia_from_mm"`
	DiaTo   float64  `csv:"dia_to_mm"`
	Bore    units.MM `csv:"bore_mm"`
	Most    float64  `csv:"most_l_min"`
	Origin
	Note string `csv:"note"`
}

// Nozzle returns the nozzle usual for a wire under a gas; false for no gas.
func (f *Facts) Nozzle(w *Wire, g *Gas) (Nozzle, bool) {
	if g.Gasless() {
		return Nozzle{}, false
	}
	for _, n := range f.Nozzles {
		if blankOr(n.Metal, w.Metal) && blankOr(n.Gas, g.Gas) && float64(w.Dia) > n.DiaFrom-0.005 && float64(w.Dia) < n.DiaTo+0.005 {
			return n, true
		}
	}
	return Nozzle{}, false
}

// GasReason says in a sentence why a gas is taken for a wire. A blank transfer
// fits every mode; the first row that fits counts.
type GasReason struct {
	Metal        string `csv:"metal"`
	Construction string `csv:"construction"`
	Gas          string `csv:"gas"`
	Transfer     string `csv:"transfer"`
	Reason       string `csv:"reason"`
	Origin
}

// GasReason returns the reason for a gas with a wire in a transfer mode.
func (f *Facts) GasReason(w *Wire, gas, transfer string) (GasReason, bool) {
	for _, r := range f.GasReasons {
		if r.Metal == w.Metal && r.Construction == w.Construction && r.Gas == gas && blankOr(r.Transfer, transfer) {
			return r, true
		}
	}
	return GasReason{}, false
}

func blankOr(cell, value string) bool { return cell == "" || cell == value }
