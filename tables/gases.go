package tables

import "strings"

// Gas is one shielding gas.
type Gas struct {
	Gas    string  `csv:"gas"`    // ISO 14175 designation
	Mix    string  `csv:"mix"`    // in words: "Ar + 18 % CO2"
	USMix  string  `csv:"us_mix"` // "82 Ar / 18 CO2"
	Ar     float64 `csv:"ar_pct"`
	CO2    float64 `csv:"co2_pct"`
	O2     float64 `csv:"o2_pct"`
	He     float64 `csv:"he_pct"`
	Kind   string  `csv:"kind"`   // inert or active
	Metals string  `csv:"metals"` // metal groups that a solid wire of it may be welded with, joined by ";"
	Note   string  `csv:"note"`
	Origin
}

// Suits tells whether a solid wire of the metal group may be welded with the gas.
func (g Gas) Suits(metal string) bool {
	for m := range strings.SplitSeq(g.Metals, ";") {
		if m == metal {
			return true
		}
	}
	return false
}

// noGasWords are a person's words for no gas from outside, squeezed.
var noGasWords = map[string]bool{"none": true, "no": true, "nogas": true, "gasless": true, "selfshielded": true, "without": true, "ohne": true, "keine": true, "sansgaz": true, "sin": true, "singas": true, "безгаза": true, "bezgazu": true}

// Gas returns the gas of an ISO 14175 designation.
func (f *Facts) Gas(designation string) (Gas, bool) {
	for _, g := range f.Gases {
		if g.Gas == designation {
			return g, true
		}
	}
	return Gas{}, false
}

// FindGas returns the gas that a person's words mean: a designation with or
// without the standard's name ("ISO 14175 - M21"), a mix as the table writes it,
// or a mix in figures such as "82/18", "Ar 80 CO2 20" or "CO2". A word for no gas
// at all gives [NoGas].
func (f *Facts) FindGas(text string) (Gas, bool) {
	key := strings.TrimPrefix(squeeze(text), "iso14175")
	if noGasWords[key] {
		return NoGas, true
	}
	for _, g := range f.Gases {
		if key == squeeze(g.Gas) || key == squeeze(g.Mix) || key == squeeze(g.USMix) {
			return g, true
		}
	}
	if mix, ok := parseMix(text); ok {
		return f.gasOfMix(mix)
	}
	return Gas{}, false
}

// gasOfMix returns the row whose designation covers the mix.
func (f *Facts) gasOfMix(m mix) (Gas, bool) { return f.Gas(f.designation(m)) }
