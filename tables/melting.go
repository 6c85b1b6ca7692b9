package tables

import "seamtally/batch/units"

// Efficiency is the share of the wire's mass that becomes weld metal.
type Efficiency struct {
	Construction string  `csv:"construction"`
	Metal        string  `csv:"metal"`
	Gas          string  `csv:"gas"`
	Transfer     string  `csv:"transfer"`
	Value        float64 `csv:"efficiency"` // 0..1
	Low          float64 `csv:"low"`
	High         float64 `csv:"high"`
	Note         string  `csv:"note"`
	Origin
}

// Melting holds the two constants of one wire: w = a I + b l I², w in mm/s, l the
// wire extension in mm. They hold between CurrentLow and CurrentHigh only.
//
// A wire may have one row for an arc that burns all the time (mode empty) and
// another for short arc, where the arc is out during each short and so melts less
// for every ampere of the mean. Pulse is taken as the open arc at its mean current:
// no published pair was found that would show how much more it melts.
//
// A fit rests on all diameters of a family at once, a falling with the section
// (d⁻²) and b with its square (d⁻⁴), so that a gap between two diameters, or an
// odd source for one of them, does not bend the curve of that wire. Points,
// residuals and LeftOut are those of the whole fit.
type Melting struct {
	Family      string    `csv:"melting"`
	Dia         units.MM  `csv:"dia_mm"`
	Mode        string    `csv:"mode"` // transfer mode; empty for all without a row of their own
	A           float64   `csv:"a"`    // mm/(s A)
	B           float64   `csv:"b"`    // 1/(s A²)
	CurrentLow  units.Amp `csv:"current_low_a"`
	CurrentHigh units.Amp `csv:"current_high_a"`
	Extension   units.MM  `csv:"extension_mm"` // mean of the points behind it
	How         string    `csv:"how"`          // fit, or from which rows it was worked out
	Points      int       `csv:"points"`
	ResidualRMS float64   `csv:"residual_rms_pct"`
	ResidualMax float64   `csv:"residual_max_pct"`
	LeftOut     float64   `csv:"left_out_rms_pct"` // each source judged by a fit without it; zero where there is but one
	Uncertainty float64   `csv:"uncertainty_pct"`  // what a user should expect, our judgement
	Note        string    `csv:"note"`
	Origin
}

// MeltingPoint is one published or recalled pair of current and wire feed that a
// fit in melting.csv rests on. Dia is the size that shops call the wire;
// PrintedDia is the diameter that the source means and the fit uses: a wire of
// 0.030 in is sold as 0.8 mm and has a tenth less section.
type MeltingPoint struct {
	Family     string     `csv:"melting"`
	Mode       string     `csv:"mode"`
	Dia        units.MM   `csv:"dia_mm"`
	PrintedDia units.MM   `csv:"printed_dia_mm"`
	Current    units.Amp  `csv:"current_a"`
	Feed       units.MMin `csv:"wfs_m_min"`
	Extension  units.MM   `csv:"extension_mm"`
	Note       string     `csv:"note"`
	Origin
}

// Efficiency returns the deposition efficiency of a wire under a gas in a
// transfer mode ("short arc", "globular", "spray", "pulse").
func (f *Facts) Efficiency(w Wire, gas, transfer string) (Efficiency, bool) {
	for _, e := range f.Efficiencies {
		if e.Construction == w.Construction && e.Metal == w.Metal && e.Gas == gas && e.Transfer == transfer {
			return e, true
		}
	}
	return Efficiency{}, false
}

// Melting returns the melting constants of a wire for an arc that burns all the time.
func (f *Facts) Melting(w Wire) (Melting, bool) { return f.MeltingIn(w, "") }

// MeltingIn returns the melting constants of a wire in a transfer mode: those of
// the mode where the wire has a row for it, else those for all modes.
func (f *Facts) MeltingIn(w Wire, transfer string) (Melting, bool) {
	found, ok := Melting{}, false
	for _, m := range f.Meltings {
		if m.Family != w.Melting || !sameDia(m.Dia, w.Dia) {
			continue
		}
		if m.Mode == transfer {
			return m, true
		}
		if m.Mode == "" {
			found, ok = m, true
		}
	}
	return found, ok
}
