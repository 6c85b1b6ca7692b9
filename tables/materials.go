package tables

import (
	"strings"
	"unicode"
)

// Material is a grade or a word for a metal, with what welding needs to know of
// it. A figure of zero is not known.
type Material struct {
	Grade      string  `csv:"grade"`
	Spellings  string  `csv:"spellings"` // joined by ";"
	Group      string  `csv:"group"`     // "carbon steel", "stainless", "aluminium", "other"
	Family     string  `csv:"family"`    // key of filler_choice.csv
	CEVTypical float64 `csv:"cev_typical"`
	CEVMax     float64 `csv:"cev_max"`
	CETTypical float64 `csv:"cet_typical"`
	CETMax     float64 `csv:"cet_max"`
	Category   string  `csv:"preheat_category"` // AWS D1.1 category A, B or C
	Weldable   string  `csv:"weldable"`         // yes, care or no (metal and metres only)
	Coated     string  `csv:"coated"`           // "zinc" or empty
	Note       string  `csv:"note"`
	Origin
}

// FillerChoice says which filler a pair of material families takes; rank 1 first.
type FillerChoice struct {
	Family1 string `csv:"family1"`
	Family2 string `csv:"family2"`
	Filler  string `csv:"filler"`
	Rank    int    `csv:"rank"`
	Reason  string `csv:"reason"`
	Origin
}

// Material returns the material that a person's words mean. A spelling that
// equals the words wins; else the longest spelling that stands in them as a word
// of its own, so that "S355J2+N plate" and "EN AW-6082 T6" are understood. A
// grade beats a word: "Edelstahl 1.4571" is 1.4571. A coating named beside the
// grade stays: "S235JR galvanised" is S235, coated with zinc.
func (f *Facts) Material(text string) (Material, bool) {
	key := wordKey(text)
	if key == "" {
		return Material{}, false
	}
	spelt := f.spelt
	if len(spelt) != len(f.Materials) { // rows that were not loaded together
		spelt = spellings(f.Materials)
	}
	best, length, coat, squeezed := -1, 0, "", squeeze(key)
	for i := range spelt {
		m := &f.Materials[i]
		for _, s := range spelt[i] {
			if s.key == key || s.squeezed == squeezed {
				return *m, true
			}
			if !standsIn(key, s.key) {
				continue
			}
			if s.weight > length {
				best, length = i, s.weight
			}
			if m.Coated != "" {
				coat = m.Coated
			}
		}
	}
	if best < 0 {
		return Material{}, false
	}
	found := f.Materials[best]
	if found.Coated == "" {
		found.Coated = coat
	}
	return found, true
}

// spelling is one way of writing a material, ready to be compared.
type spelling struct {
	key, squeezed string
	weight        int
}

// spellings returns the ways of writing each material.
func spellings(materials []Material) [][]spelling {
	out := make([][]spelling, len(materials))
	for i := range materials {
		for s := range strings.SplitSeq(materials[i].Spellings, ";") {
			k := wordKey(s)
			out[i] = append(out[i], spelling{k, squeeze(k), weight(k)})
		}
	}
	return out
}

// weight ranks spellings found in the same words: grades, which have figures,
// before plain words; then the longer before the shorter.
func weight(spelling string) int {
	if strings.ContainsFunc(spelling, unicode.IsDigit) {
		return 1000 + len(spelling)
	}
	return len(spelling)
}

// wordKey lower-cases the words and turns every other sign into one blank; a dot
// or comma between digits stays a dot.
func wordKey(s string) string {
	runes := []rune(strings.ToLower(strings.ReplaceAll(s, "ё", "е")))
	var b strings.Builder
	for i, r := range runes {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case (r == '.' || r == ',') && i > 0 && i+1 < len(runes) && unicode.IsDigit(runes[i-1]) && unicode.IsDigit(runes[i+1]):
			b.WriteRune('.')
		default:
			b.WriteRune(' ')
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// standsIn tells whether the spelling stands in the words with no letter or digit
// of its own kind directly beside it: "s355" stands in "s355mc" but "304" does
// not stand in "1304" or "3040", and "al" not in "alt".
func standsIn(words, spelling string) bool {
	if len([]rune(spelling)) < 3 {
		return false
	}
	for at := 0; ; {
		i := strings.Index(words[at:], spelling)
		if i < 0 {
			return false
		}
		start, end := at+i, at+i+len(spelling)
		if edge(words[:start], spelling, true) && edge(words[end:], spelling, false) {
			return true
		}
		at = start + 1
		for at < len(words) && words[at]&0xC0 == 0x80 {
			at++
		}
	}
}

// edge tells whether the text beside a spelling may stand there.
func edge(beside, spelling string, before bool) bool {
	if beside == "" {
		return true
	}
	var near, own rune
	b, s := []rune(beside), []rune(spelling)
	if before {
		near, own = b[len(b)-1], s[0]
	} else {
		near, own = b[0], s[len(s)-1]
	}
	if near == ' ' {
		return true
	}
	if near == '.' || before {
		return false
	}
	return unicode.IsDigit(own) && unicode.IsLetter(near)
}

// Fillers returns the filler choices of a pair of material families, best first.
func (f *Facts) Fillers(family1, family2 string) []FillerChoice {
	var out []FillerChoice
	for rank := 1; rank <= 3; rank++ {
		for _, c := range f.FillerChoices {
			same := c.Family1 == family1 && c.Family2 == family2 || c.Family1 == family2 && c.Family2 == family1
			if same && c.Rank == rank {
				out = append(out, c)
			}
		}
	}
	return out
}
