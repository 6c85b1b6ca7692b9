package tables

import (
	"slices"
	"strings"

	"seamtally/batch/units"
)

// SteelLimit is what a product standard allows a steel at most over a range of
// thickness. Zero is not limited; a To of zero is without upper limit.
type SteelLimit struct {
	Materials string   `csv:"materials"` // rows of materials.csv, joined by ";"
	Steel     string   `csv:"steel"`     // spellings of the grade and quality, joined by ";"
	Standard  string   `csv:"standard"`
	Over      units.MM `csv:"over_mm"`
	To        units.MM `csv:"to_mm"`
	CEV       float64  `csv:"cev_max"`
	C         float64  `csv:"c_max"`
	Cu        float64  `csv:"cu_max"`
	Mn        float64  `csv:"mn_max"`
	Mo        float64  `csv:"mo_max"`
	Ni        float64  `csv:"ni_max"`
	Cr        float64  `csv:"cr_max"`
	Origin
}

// Name returns the first spelling, which is the grade's own name.
func (l SteelLimit) Name() string { return strings.Split(l.Steel, ";")[0] }

// At tells whether the limit holds at a thickness; a thickness of zero is not
// known and may be any.
func (l SteelLimit) At(t units.MM) bool { return t == 0 || inside(t, l.Over, l.To) }

// SteelLimits returns the limits that a material named in a person's words may
// have: those of the quality that the words name ("S355J2+N" is S355J2), else
// those of every quality of the material, because a bare "S355" may be any.
func (f *Facts) SteelLimits(material, words string) []SteelLimit {
	var named, all []SteelLimit
	length := 0
	for _, l := range f.Limits {
		if !slices.Contains(strings.Split(l.Materials, ";"), material) {
			continue
		}
		all = append(all, l)
		switch n := longestIn(words, l.Steel); {
		case n > length:
			named, length = []SteelLimit{l}, n
		case n > 0 && n == length:
			named = append(named, l)
		}
	}
	if length > 0 {
		return named
	}
	return all
}

// Says tells whether a spelling stands in a person's words as a word of its own.
func Says(words, spelling string) bool {
	w, s := wordKey(words), wordKey(spelling)
	return w == s || standsIn(w, s)
}

// longestIn returns the length of the longest spelling that stands in the words;
// 0 if none does.
func longestIn(words, spellings string) int {
	longest := 0
	for s := range strings.SplitSeq(spellings, ";") {
		if Says(words, s) {
			longest = max(longest, len(wordKey(s)))
		}
	}
	return longest
}

// Hollow tells whether the row is of a standard of hollow sections only.
func (l SteelLimit) Hollow() bool {
	return strings.Contains(l.Standard, "EN 10210") || strings.Contains(l.Standard, "EN 10219")
}

// Named tells whether a person's words name the row's own quality, not the grade alone.
func (l SteelLimit) Named(words string) bool { return longestIn(words, l.Steel) > 0 }
