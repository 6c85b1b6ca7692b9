package tables

import (
	"strings"

	"seamtally/batch/units"
)

// Procedure is one of the shop's own welding procedures: what its joints must be
// welded with and inside which ranges. A blank, or a zero, binds nothing. The
// built-in table is empty: procedures are the shop's.
type Procedure struct {
	Number      string        `csv:"number"`
	Process     string        `csv:"process"` // ISO 4063
	Filler      string        `csv:"filler"`
	Dia         units.MM      `csv:"dia_mm"`
	Gas         string        `csv:"gas"`
	Positions   string        `csv:"positions"` // ISO 6947, joined by blanks
	TLow        units.MM      `csv:"t_low_mm"`  // of the thinner part
	THigh       units.MM      `csv:"t_high_mm"`
	CurrentLow  units.Amp     `csv:"current_low_a"`
	CurrentHigh units.Amp     `csv:"current_high_a"`
	VoltageLow  units.Volt    `csv:"voltage_low_v"`
	VoltageHigh units.Volt    `csv:"voltage_high_v"`
	TravelLow   units.MMMin   `csv:"travel_low_mm_min"`
	TravelHigh  units.MMMin   `csv:"travel_high_mm_min"`
	HeatLow     units.KJMM    `csv:"heat_low_kj_mm"` // with the factor k
	HeatHigh    units.KJMM    `csv:"heat_high_kj_mm"`
	Preheat     units.Celsius `csv:"preheat_c"`
	Note        string        `csv:"note"`
	Origin
}

// Procedure returns the procedure of a number; blanks and case do not count.
func (f *Facts) Procedure(number string) (*Procedure, bool) {
	for i := range f.Procedures {
		if p := &f.Procedures[i]; squeeze(p.Number) == squeeze(number) && strings.TrimSpace(number) != "" {
			return p, true
		}
	}
	return nil, false
}
