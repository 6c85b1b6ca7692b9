package tables

import (
	"regexp"
	"strconv"
	"strings"
)

// mix is a gas mixture in per cent by volume; what is not named is argon.
type mix struct{ co2, o2, he float64 }

var (
	mixPart  = regexp.MustCompile(`(?:(\d+(?:[.,]\d+)?)\s*%?\s*(argon|ar|co2|o2|he|helium|oxygen))|(?:(argon|ar|co2|o2|helium|he|oxygen)\s*(\d+(?:[.,]\d+)?)?)`)
	mixSlash = regexp.MustCompile(`^\s*(\d+(?:[.,]\d+)?)\s*/\s*(\d+(?:[.,]\d+)?)\s*$`)
)

// parseMix reads "82/18" (argon and carbon dioxide), "Ar + 18 % CO2", "98Ar-2O2",
// "Ar 80 CO2 20", "argon", "CO2".
func parseMix(text string) (mix, bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	if m := mixSlash.FindStringSubmatch(text); m != nil {
		a, b := figure(m[1]), figure(m[2])
		if a+b < 99 || a+b > 101 {
			return mix{}, false
		}
		return mix{co2: min(a, b)}, true
	}
	parts := mixPart.FindAllStringSubmatch(text, -1)
	if len(parts) == 0 {
		return mix{}, false
	}
	var out mix
	for _, p := range parts {
		out.add(p[2]+p[3], p[1]+p[4], len(parts) == 1)
	}
	return out, true
}

// add takes up one component; alone and without a figure it is the whole gas.
func (m *mix) add(name, amount string, alone bool) {
	v := figure(amount)
	if amount == "" && alone {
		v = 100
	}
	switch name {
	case "co2":
		m.co2 = v
	case "o2", "oxygen":
		m.o2 = v
	case "he", "helium":
		m.he = v
	}
}

func figure(s string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64)
	return v
}

// GasGroup is one designation of ISO 14175 by its limits in per cent by volume,
// over the lower and up to the upper. A component with an upper limit of zero
// must be absent.
type GasGroup struct {
	Gas     string  `csv:"gas"`
	CO2Over float64 `csv:"co2_over"`
	CO2To   float64 `csv:"co2_to"`
	O2Over  float64 `csv:"o2_over"`
	O2To    float64 `csv:"o2_to"`
	HeOver  float64 `csv:"he_over"`
	HeTo    float64 `csv:"he_to"`
	Note    string  `csv:"note"`
	Origin
}

// covers tells whether the mixture belongs to the group.
func (g GasGroup) covers(m mix) bool {
	part := func(v, over, to float64) bool { return to == 0 && v == 0 || v > over && v <= to }
	return part(m.co2, g.CO2Over, g.CO2To) && part(m.o2, g.O2Over, g.O2To) && part(m.he, g.HeOver, g.HeTo)
}

// designation returns the ISO 14175 designation of a mixture; empty for one that
// the table does not hold.
func (f *Facts) designation(m mix) string {
	for _, g := range f.GasGroups {
		if g.covers(m) {
			return g.Gas
		}
	}
	return ""
}
