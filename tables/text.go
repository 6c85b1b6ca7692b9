package tables

import (
	"strconv"
	"strings"
	"unicode"

	"seamtally/batch/units"
)

// squeeze lower-cases a name and keeps letters and digits only, so that
// "ER 70S-6" and "er70s6" are the same.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}

// splitDia takes a wire diameter off a person's words: "G3Si1 1,0 mm" gives
// "g3si1" and 1.0. Only a last word between 0.5 and 2.5 with a decimal sign counts.
func splitDia(text string) (key string, dia units.MM) {
	text = strings.ToLower(strings.TrimSpace(text))
	text = strings.TrimSpace(strings.TrimSuffix(text, "mm"))
	words := strings.Fields(strings.NewReplacer("ø", " ", "⌀", " ", "×", " ").Replace(text))
	if len(words) == 0 {
		return "", 0
	}
	last := strings.Replace(words[len(words)-1], ",", ".", 1)
	d, err := strconv.ParseFloat(last, 64)
	if err != nil || !strings.Contains(last, ".") || d < 0.5 || d > 2.5 {
		return squeeze(text), 0
	}
	return squeeze(strings.Join(words[:len(words)-1], " ")), units.MM(d)
}
