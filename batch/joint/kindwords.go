package joint

import (
	"slices"
	"strings"
)

// kindSaid is what a cell of kinds says: the kind, and what people write beside it.
type kindSaid struct {
	kind  Kind
	sides int  // 1 or 2; 0: nothing of them
	round bool // the weld goes all round
	part  bool // a groove of partial penetration, whose depth must be given
	bar   bool // a backing bar stays behind it
}

// kindOf reads the kind of joint alone.
func (s *spellings) kindOf(text string) (string, bool) {
	said, ok := s.kindSays(text)
	return string(said.kind), ok
}

// kindSays reads a cell of kinds. Beside the kind may stand words for the sides, for a
// weld in general or for going all round: "T both sides", "fillet welds", "Kehlnaht
// umlaufend". What contradicts itself is not read.
func (s *spellings) kindSays(text string) (kindSaid, bool) {
	said, ok := s.kindParts(text)
	if !ok {
		return kindSaid{}, false
	}
	if said.kind == Fillet || said.kind == Lap {
		if saysBoth(text) {
			said, ok = said.withSides(2)
		}
		return said, ok
	}
	words := strings.Fields(fold(text))
	switch {
	case said.kind == Plug || said.kind == Slot:
		said.round = false // that of the hole
	case said.sides == 1 && isDouble(said.kind):
		return kindSaid{}, false
	case said.sides == 2 && isDouble(said.kind):
		said.sides = 0 // both is what it says anyway
	case said.sides == 2 && len(without(words, doublers)) < len(words):
		return kindSaid{}, false // "V double" is as likely a double V
	}
	return said, true
}

// kindParts takes the words for sides and for all round off, until a kind is left.
func (s *spellings) kindParts(text string) (kindSaid, bool) {
	if v, ok := s.word("kind", text); ok {
		return kindSaid{kind: Kind(v)}, true
	}
	if said, ok := s.penetrates(text); ok {
		return said, true
	}
	if front, _, ok := s.cutTail("allround", text); ok {
		said, ok := s.kindParts(front)
		said.round = true
		return said, ok
	}
	if front, v, ok := s.cutTail("sides", text); ok {
		said, ok := s.kindParts(front)
		if !ok {
			return said, false
		}
		return said.withSides(int(v[0] - '0'))
	}
	if rest, ok := s.cutHead("allround", text); ok {
		said, ok := s.kindParts(rest)
		said.round = true
		return said, ok
	}
	v, ok := s.kindAmong(strings.Fields(fold(text)))
	return kindSaid{kind: Kind(v)}, ok
}

// The words for how deep a groove goes, in front of it, and for a bar that stays behind.
var (
	fullWords    = foldAll("CJP", "full pen", "full penetration", "complete penetration", "complete joint penetration")
	partialWords = foldAll("PJP", "partial pen", "partial penetration", "partial joint penetration")
	barWords     = foldAll("with backing bar", "w backing bar", "with backing strip", "w backing strip", "with backing", "on backing bar", "backing bar")
)

// penetrates reads a groove beside words for its penetration and its backing bar: "CJP
// single V", "PJP bevel", "single V with backing bar". Full is what a groove is by itself.
func (s *spellings) penetrates(text string) (kindSaid, bool) {
	words, said, found := strings.Fields(fold(text)), kindSaid{}, false
	cut := func(phrases []string, into *bool) {
		for _, p := range phrases {
			n := phraseAt(words, p)
			if n == 0 || n == len(words) {
				continue
			}
			words, found = words[n:], true
			if into != nil {
				*into = true
			}
			return
		}
	}
	cut(fullWords, nil)
	cut(partialWords, &said.part)
	for _, p := range barWords {
		joined := strings.Join(words, " ")
		if front, ok := strings.CutSuffix(joined, " "+p); ok {
			words, found, said.bar = strings.Fields(front), true, true
			break
		}
	}
	if !found {
		return kindSaid{}, false
	}
	kind, ok := s.kindAmong(words)
	said.kind = Kind(kind)
	if !ok || !said.kind.IsButt() || kind == "butt" && said.part {
		return kindSaid{}, false
	}
	return said, true
}

// withSides adds what was said of the sides, unless it was said otherwise before.
func (k kindSaid) withSides(n int) (kindSaid, bool) {
	if k.sides != 0 && k.sides != n {
		return kindSaid{}, false
	}
	k.sides = n
	return k, true
}

// kindAmong finds a kind among words for a weld in general. Of a butt the shape of its
// edges is enough: "bout à bout chanfrein V".
func (s *spellings) kindAmong(words []string) (string, bool) {
	for _, drop := range []map[string]bool{nil, weldWords, kindLinks} {
		words = without(words, drop)
		if v, ok := s.word("kind", strings.Join(words, " ")); ok {
			return v, true
		}
	}
	butt := without(words, buttWords)
	if v, ok := s.word("kind", strings.Join(butt, " ")); ok && len(butt) < len(words) && Kind(v).IsButt() {
		return v, true
	}
	return "", false
}

// longestTail is how many words at the end of a kind say one thing: "sur tout le
// pourtour".
const longestTail = 4

// cutTail takes words of a use off the end of a kind.
func (s *spellings) cutTail(use, text string) (front, value string, ok bool) {
	fields := strings.Fields(text)
	for n := min(longestTail, len(fields)-1); n >= 1; n-- {
		front, tail := fields[:len(fields)-n], strings.Join(fields[len(fields)-n:], " ")
		if v, ok := s.beside(use, tail); ok {
			return strings.TrimRight(strings.Join(front, " "), " ,;:-–/+"), v, true
		}
	}
	return text, "", false
}

// cutHead does so at the beginning.
func (s *spellings) cutHead(use, text string) (rest string, ok bool) {
	fields := strings.Fields(text)
	for n := min(longestTail, len(fields)-1); n >= 1; n-- {
		if _, ok := s.beside(use, strings.Join(fields[:n], " ")); ok {
			return strings.Join(fields[n:], " "), true
		}
	}
	return text, false
}

// beside looks up what stands beside a kind. A letter alone says nothing there, a
// bracket is read whole, and "full" may mean a size or a penetration.
func (s *spellings) beside(use, text string) (string, bool) {
	folded := fold(text)
	switch {
	case len([]rune(folded)) < 2 && folded != "○", strings.LastIndexByte(text, '(') > 0, folded == "full":
		return "", false
	}
	return s.word(use, strings.Trim(text, "()[],;:"))
}

// doublers say of a butt that it is double, or that there are two of it, as likely as
// that it is welded from both sides.
var doublers = wordSet("double doble doppelt doppio x2 all две дві")

func isDouble(k Kind) bool { return slices.Contains([]Kind{DoubleV, DoubleBevel, DoubleU, DoubleJ}, k) }

// saysBoth tells whether the words for a fillet say that both sides are welded:
// "Doppelkehlnaht".
func saysBoth(text string) bool {
	t := " " + fold(text) + " "
	for _, w := range []string{" double fillet", "doppelkehl", " dkn ", " both sides", "beidseit", "obustron", "dwustron", " ambos lados", "двуcтоpон", "двоcтоpон", "dbyctopoh", "dboctopoh", " bs ", " d s "} {
		if strings.Contains(t, w) {
			return true
		}
	}
	return false
}
