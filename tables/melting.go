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
type Melting struct {
	Family      string    `csv:"melting"`
	Dia         units.MM  `csv:"dia_mm"`
	A           float64   `csv:"a"` // mm/(s A)
	B           float64   `csv:"b"` // 1/(s A²)
	CurrentLow  units.Amp `csv:"current_low_a"`
	CurrentHigh units.Amp `csv:"current_high_a"`
	Extension   units.MM  `csv:"extension_mm"` // mean of the points behind it
	How         string    `csv:"how"`          // fit, or from which rows it was worked out
	Points      int       `csv:"points"`
	ResidualRMS float64   `csv:"residual_rms_pct"`
	ResidualMax float64   `csv:"residual_max_pct"`
	Uncertainty float64   `csv:"uncertainty_pct"` // what a user should expect, our judgement
	Note        string    `csv:"note"`
	Origin
}

// MeltingPoint is one published or recalled pair of current and wire feed that a
// fit in melting.csv rests on. PrintedDia is the diameter that the source means;
// the feed is brought to Dia by the ratio of the sections.
type MeltingPoint struct {
	Family     string     `csv:"melting"`
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

// Melting returns the melting constants of a wire.
func (f *Facts) Melting(w Wire) (Melting, bool) {
	for _, m := range f.Meltings {
		if m.Family == w.Melting && sameDia(m.Dia, w.Dia) {
			return m, true
		}
	}
	return Melting{}, false
}
