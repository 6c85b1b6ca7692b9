package tables

import (
	"slices"

	"seamtally/batch/units"
)

// Shade is the filter shade for a range of current. Minimum is the legal minimum
// of its source, Recommended is what a welder is told.
type Shade struct {
	Processes   string    `csv:"processes"` // ISO 4063 numbers joined by blanks
	Over        units.Amp `csv:"over_a"`
	To          units.Amp `csv:"to_a"`
	Minimum     int       `csv:"minimum"`
	Recommended int       `csv:"recommended"`
	Note        string    `csv:"note"`
	Origin
}

// Caution is a short warning to the welder and when it applies: "always",
// "metal:GROUP", "coated:KIND", "where:PLACE" or "construction:WIRE".
type Caution struct {
	Key  string `csv:"key"`
	When string `csv:"when"`
	Text string `csv:"text"`
	Origin
}

// Cleaning is how wide each side of a joint is cleaned when a condition is met;
// the conditions are those of [Caution].
type Cleaning struct {
	When  string   `csv:"when"`
	Width units.MM `csv:"width_mm"`
	What  string   `csv:"what"`
	Origin
}

// Position is a welding position in both codes.
type Position struct {
	ISO       string `csv:"iso"`
	AWSFillet string `csv:"aws_fillet"`
	AWSGroove string `csv:"aws_groove"`
	Name      string `csv:"name"`
	Origin
}

// Plausible is the range outside which a result is looked at twice.
type Plausible struct {
	Key  string  `csv:"key"` // result key
	Low  float64 `csv:"low"`
	High float64 `csv:"high"`
	Unit string  `csv:"unit"`
	Note string  `csv:"note"`
	Origin
}

// Shade returns the filter shade of a process at a current.
func (f *Facts) Shade(process string, current units.Amp) (Shade, bool) {
	for _, s := range f.Shades {
		if hasWord(s.Processes, process) && inside(current, s.Over, s.To) {
			return s, true
		}
	}
	return Shade{}, false
}

// CautionsFor returns the cautions whose condition is among the given ones, in
// the order of the table. "always" need not be given.
func (f *Facts) CautionsFor(conditions ...string) []Caution {
	met := map[string]bool{"always": true}
	for _, c := range conditions {
		met[c] = true
	}
	var out []Caution
	for _, c := range f.Cautions {
		if met[c.When] {
			out = append(out, c)
		}
	}
	return out
}

// CleanWidth returns the widest cleaning whose condition is among the given ones.
func (f *Facts) CleanWidth(conditions ...string) units.MM {
	widest := units.MM(0)
	for _, c := range f.Cleanings {
		if c.When == "always" || slices.Contains(conditions, c.When) {
			widest = max(widest, c.Width)
		}
	}
	return widest
}

// Position returns the position of an ISO 6947 symbol.
func (f *Facts) Position(iso string) (Position, bool) {
	for _, p := range f.Positions {
		if p.ISO == iso {
			return p, true
		}
	}
	return Position{}, false
}

// PlausibleRange returns the range of a result key.
func (f *Facts) PlausibleRange(key string) (Plausible, bool) {
	for _, p := range f.Plausibles {
		if p.Key == key {
			return p, true
		}
	}
	return Plausible{}, false
}
