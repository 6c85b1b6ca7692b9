package plan

import (
	"fmt"
	"math"
	"strings"

	"seamtally/tables"
)

// bindingText says what the procedure binds, for the note on the joint.
func bindingText(p *tables.Procedure) string {
	text := "planned inside its ranges"
	for _, r := range rangesOf(p) {
		if limit := limits(r.low, r.high, r.unit); limit != "" {
			text += ", " + limit
		}
	}
	return text
}

// limitRange is one range of a procedure.
type limitRange struct {
	what      string
	low, high float64
	unit      string
}

// rangesOf are the ranges that the arc must keep to.
func rangesOf(p *tables.Procedure) []limitRange {
	return []limitRange{
		{"current", float64(p.CurrentLow), float64(p.CurrentHigh), "A"}, {"voltage", float64(p.VoltageLow), float64(p.VoltageHigh), "V"},
		{"travel", float64(p.TravelLow), float64(p.TravelHigh), "mm/min"}, {"heat", float64(p.HeatLow), float64(p.HeatHigh), "kJ/mm"},
	}
}

// limits words a range; an open end is no figure. Empty: open at both ends.
func limits(low, high float64, unit string) string {
	switch {
	case low > 0 && plainly(low) == plainly(high):
		return plainly(low) + " " + unit
	case low > 0 && high > 0:
		return fmt.Sprintf("%s to %s %s", plainly(low), plainly(high), unit)
	case high > 0:
		return fmt.Sprintf("up to %s %s", plainly(high), unit)
	case low > 0:
		return fmt.Sprintf("from %s %s", plainly(low), unit)
	}
	return ""
}

// plainly writes a figure of a procedure without needless digits.
func plainly(v float64) string { return fmt.Sprintf("%g", math.Round(v*1000)/1000) }

// ProcedureText words a procedure on one line.
func ProcedureText(p *tables.Procedure) string {
	wire := p.Filler
	if p.Dia > 0 {
		wire = strings.TrimSpace(wire + " " + mmText(float64(p.Dia)))
	}
	text := ""
	add := func(s string) {
		if s != "" && text != "" {
			text += ", "
		}
		text += s
	}
	add(p.Process)
	add(wire)
	add(p.Gas)
	add(p.Positions)
	add(limits(float64(p.TLow), float64(p.THigh), "mm"))
	for _, r := range rangesOf(p) {
		add(limits(r.low, r.high, r.unit))
	}
	if p.Preheat > 0 {
		add(fmt.Sprintf("preheat %g °C", float64(p.Preheat)))
	}
	return text
}

// allowed words what a range allows, its open ends as such.
func (r limitRange) allowed() string {
	text := limits(r.low, r.high, r.unit)
	switch {
	case r.low > 0 && r.high > 0:
		return text
	case r.high > 0:
		return text + ", no limit below"
	case r.low > 0:
		return text + " up, no limit above"
	}
	return "no limit"
}
