package tables

import (
	"strconv"
	"strings"

	"seamtally/batch/units"
)

// Machine is a class of power source with its feeder, of our own naming.
type Machine struct {
	Name        string     `csv:"name"`
	Phases      int        `csv:"phases"`
	ModeList    string     `csv:"modes"` // transfer modes joined by ";"
	Pulse       string     `csv:"pulse"` // yes or no
	CurrentLow  units.Amp  `csv:"current_low_a"`
	CurrentHigh units.Amp  `csv:"current_high_a"`
	FeedLow     units.MMin `csv:"feed_low_m_min"`
	FeedHigh    units.MMin `csv:"feed_high_m_min"`
	Duty1Pct    float64    `csv:"duty1_pct"`
	Duty1       units.Amp  `csv:"duty1_a"`
	Duty2Pct    float64    `csv:"duty2_pct"`
	Duty2       units.Amp  `csv:"duty2_a"`
	Duty3Pct    float64    `csv:"duty3_pct"`
	Duty3       units.Amp  `csv:"duty3_a"`
	WireList    string     `csv:"wires_mm"`  // diameters joined by blanks
	SpoolList   string     `csv:"spools_kg"` // spools it takes, joined by blanks
	GunList     string     `csv:"guns"`      // guns it can be had with, joined by ";": plain, push-pull, spool gun
	Mains       string     `csv:"mains"`
	PowerFactor float64    `csv:"power_factor"`
	Efficiency  float64    `csv:"efficiency"` // mains to arc, 0..1
	IdleW       float64    `csv:"idle_w"`
	Note        string     `csv:"note"`
	Origin
}

// DutyPoint is a rated current at a duty of 0..1.
type DutyPoint struct {
	Current units.Amp
	Duty    float64
}

// DutyPoints returns the machine's rated points from the highest current down.
func (m Machine) DutyPoints() []DutyPoint {
	var out []DutyPoint
	for _, p := range []DutyPoint{{m.Duty1, m.Duty1Pct / 100}, {m.Duty2, m.Duty2Pct / 100}, {m.Duty3, m.Duty3Pct / 100}} {
		if p.Current > 0 && p.Duty > 0 {
			out = append(out, p)
		}
	}
	return out
}

// Does tells whether the machine does a transfer mode.
func (m Machine) Does(transfer string) bool {
	for mode := range strings.SplitSeq(m.ModeList, ";") {
		if mode == transfer {
			return true
		}
	}
	return false
}

// Feeds tells whether the feeder takes a wire of the diameter.
func (m Machine) Feeds(dia units.MM) bool {
	for word := range strings.FieldsSeq(m.WireList) {
		if d, err := strconv.ParseFloat(word, 64); err == nil && sameDia(units.MM(d), dia) {
			return true
		}
	}
	return false
}

// LargestSpool returns the heaviest spool that the feeder takes; 0 where the table
// does not say.
func (m Machine) LargestSpool() units.Kg {
	most := 0.0
	for word := range strings.FieldsSeq(m.SpoolList) {
		if kg, err := strconv.ParseFloat(word, 64); err == nil {
			most = max(most, kg)
		}
	}
	return units.Kg(most)
}

// Guns returns the guns that the machine can be had with.
func (m Machine) Guns() []string { return strings.Split(m.GunList, ";") }

// Machine returns the machine of a name.
func (f *Facts) Machine(name string) (Machine, bool) {
	for _, m := range f.Machines {
		if squeeze(m.Name) == squeeze(name) {
			return m, true
		}
	}
	return Machine{}, false
}
