package joint

import "strings"

// qualityOf reads a quality level: B, C or D of ISO 5817 and ISO 10042.
func qualityOf(text string) string {
	t := fold(text)
	for _, w := range []string{"level", "quality", "iso 5817", "iso 10042", "class", "bg", "klasse", "poziom", "urovehb", "en"} {
		t = strings.TrimSpace(strings.ReplaceAll(t, w, ""))
	}
	switch strings.Trim(t, " -") {
	case "b", "c", "d":
		return strings.ToUpper(strings.Trim(t, " -"))
	}
	return ""
}

// positionOf reads a welding position, ISO or AWS, or a word of the trade; the
// words that mean one thing on a fillet and another on a butt need the kind.
func (s *spellings) positionOf(text string, butt bool) (position, why string, ok bool) {
	v, ok := s.word("position", text)
	if !ok {
		return "", "", false
	}
	switch v {
	case "horizontal":
		return pick(butt, "PC", "PB"), `"` + text + `": PC on a butt, PB on a fillet`, true
	case "overhead":
		return pick(butt, "PE", "PD"), `"` + text + `": PE on a butt, PD on a fillet`, true
	case "lower":
		return pick(butt, "PA", "PB"), `"` + text + `": PA on a butt, PB on a fillet`, true
	case "H-L045":
		return "PH", "inclined pipe welded upward, planned as PF", true
	case "J-L045":
		return "PJ", "inclined pipe welded downward, planned as PG", true
	}
	return v, "", true
}

func pick(first bool, a, b string) string {
	if first {
		return a
	}
	return b
}

// IsButt tells whether a kind is a butt joint, planned flat where the list is silent.
func (k Kind) IsButt() bool {
	switch k {
	case SquareButt, SingleV, SingleBevel, DoubleV, DoubleBevel, SingleU, SingleJ, DoubleU, DoubleJ:
		return true
	}
	return false
}
