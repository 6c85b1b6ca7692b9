package joint

import "strings"

// denials turn round what stands beside them: a text with one is read as a whole or not
// at all.
var denials = wordSet("no not non none never without except nicht kein keine keinen ohne außer nie bez brak sin excepto salvo sans pas sauf senza tranne sem não exceto нет не ні без кроме крім")

func denies(text string) bool {
	words := strings.Fields(fold(text))
	return len(without(words, denials)) < len(words)
}

// loosely are the uses whose words people wrap into a phrase: "z obu stron", "sur tout
// le contour", "Vertical-up (3F)". Kinds are read with more care: see kindSays.
var loosely = wordSet("position sides where allround")

// loosely looks a text up without the words that change nothing, and without what
// stands in brackets behind it, or by that alone.
func (s *spellings) loosely(use, text string) (string, bool) {
	if denies(text) {
		return "", false
	}
	if front, bracket, ok := strings.Cut(text, "("); ok && strings.TrimSpace(front) != "" {
		bracket = strings.TrimRight(bracket, ") ")
		v, known := s.word(use, front)
		b, also := s.word(use, bracket)
		switch {
		case known && also:
			return agreed(v, front, b, bracket)
		case known:
			return v, true
		}
		return b, also
	}
	bare := bareOf(fold(text))
	v, ok := s.loose[use][bare]
	return v, ok && len([]rune(bare)) > 1 // A letter left over says nothing.
}

// agreed returns what two texts say together: the closer of the two where the other
// leaves it open, nothing where they contradict each other.
func agreed(v, text, w, other string) (string, bool) {
	switch {
	case v == w, leavesOpen(w, other, v):
		return v, true
	case leavesOpen(v, text, w):
		return w, true
	}
	return "", false
}

// upOrDown are the words for a vertical position that do not say which way; they are
// taken as upward where nothing else is said.
var upOrDown = foldAll("vertical", "vert", "V", "senkrecht", "pionowa", "вертикальное", "вертикаль", "вертикальне", "verticale", "3F", "3G", "5F", "5G", "6G", "6GR")

// leavesOpen tells whether a text, which has a value, can mean the other value too.
func leavesOpen(value, text, other string) bool {
	switch value {
	case "horizontal":
		return other == "PB" || other == "PC"
	case "overhead":
		return other == "PD" || other == "PE"
	case "lower":
		return other == "PA" || other == "PB"
	case "PF":
		return other == "PG" && oneOf(text, upOrDown)
	case "PH":
		return other == "PF" || (other == "PG" || other == "PJ") && oneOf(text, upOrDown)
	case "H-L045":
		return other == "PF" || (other == "PG" || other == "J-L045") && oneOf(text, upOrDown)
	}
	return false
}

func oneOf(text string, words []string) bool {
	folded := bareOf(fold(text))
	for _, w := range words {
		if folded == w {
			return true
		}
	}
	return false
}

// contradicts tells whether what stands in brackets behind a header names another
// column of figures than the words before it, or another kind of size: "Gap (angle)",
// "Leg (throat)".
func contradicts(all, bracket []meaning) bool {
	if len(all) == 0 || len(bracket) == 0 {
		return false
	}
	for _, m := range all {
		for _, b := range bracket {
			if !figures[m.key] || !figures[b.key] {
				return false
			}
			open := m.means == "" || b.means == "" || m.means == "either" || b.means == "either"
			if m.key == b.key && (open || m.means == b.means) || m.key == "t1" && b.key == "t2" && len(all) > 1 {
				return false
			}
		}
	}
	return true
}

// figures are the columns whose figures go into metal and money.
var figures = wordSet("qty length sides stitch size t1 t2 gap root_face depth radius angle")
