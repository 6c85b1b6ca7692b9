package tables

import (
	"slices"
	"strings"
)

// Anchor is one point of the target current over thickness, by metal, wire and
// joint family ("butt" or "fillet"); between points the current is interpolated. Up
// to their thickest point the rows that name a gas stand in for those that name none.
type Anchor struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	DiaFrom      float64 `csv:"dia_from_mm"`
	DiaTo        float64 `csv:"dia_to_mm"`
	Family       string  `csv:"family"`
	GasList      string  `csv:"gases"` // ISO 14175 designations; blank for every gas
	Thickness    float64 `csv:"thickness_mm"`
	Current      float64 `csv:"current_a"`
	Origin
	Note string `csv:"note"`
}

// In tells whether the row names the gas.
func (a *Anchor) In(gas string) bool { return slices.Contains(strings.Fields(a.GasList), gas) }
