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

// Procedure returns the procedure of a number.
func (f *Facts) Procedure(number string) (*Procedure, bool) {
	if len(f.Procedures) == 0 {
		return nil, false
	}
	key := ProcedureKey(number)
	for i := range f.Procedures {
		if p := &f.Procedures[i]; key != "" && ProcedureKey(p.Number) == key {
			return p, true
		}
	}
	return nil, false
}

// ProcedureValue begins the key of a shop value that shows one of the shop's
// procedures; its number follows.
const ProcedureValue = "procedure."

// ProcedureKey is the form in which numbers of procedures are the same: blanks, case
// and kinds of dash do not count, any other sign does. SP-1.1 is not SP-11.
func ProcedureKey(number string) string {
	return strings.Join(strings.Fields(dashes.Replace(strings.ToLower(number))), "")
}

var dashes = strings.NewReplacer("‐", "-", "‑", "-", "–", "-", "—", "-", "−", "-", "\u00a0", " ")
