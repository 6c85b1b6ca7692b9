package joint

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"seamtally/tables"
)

// ideas read a header by the ideas of its words, whatever their order and language:
// "Dicke des Blechs 1" and "plate 1 thk." are both thick, part and one. Every word has
// to be known, and a rule has to allow them all together: a header with one word that
// nobody knows is left alone.
type ideas struct {
	words  map[string][]string // without punctuation and blanks -> ideas
	stems  []stem              // longest first
	german map[string][]string // words of which compounds are made
	starts map[string][]string // first letters of a word -> ideas of all words that begin so
	rules  []rule
}

// stem is the beginning of a word that takes endings.
type stem struct{ text, idea string }

type rule struct {
	meaning
	needs [][]string
	may   []string
}

// link is the idea of words that change nothing.
const link = "link"

// longEnding is how many letters an ending has at most.
const longEnding = 4

func newIdeas(set *tables.Set) *ideas {
	in := &ideas{words: map[string][]string{}, german: map[string][]string{}, starts: map[string][]string{}}
	for _, w := range set.HeaderWords {
		bare, isStem := strings.CutSuffix(w.Word, "-")
		text := joined(bare)
		if isStem {
			in.stems = append(in.stems, stem{text, w.Idea})
		} else {
			add(in.words, text, w.Idea)
		}
		if w.Language == "de" {
			add(in.german, text, w.Idea)
			add(in.german, joined(spelledOut.Replace(strings.ToLower(bare))), w.Idea)
		}
		add(in.words, joined(spelledOut.Replace(strings.ToLower(bare))), w.Idea)
		letters := []rune(text)
		for n := shortAbbreviation; n < len(letters); n++ {
			add(in.starts, string(letters[:n]), w.Idea)
		}
	}
	slices.SortStableFunc(in.stems, func(a, b stem) int { return len(b.text) - len(a.text) })
	for _, r := range set.HeaderRules {
		one := rule{meaning: meaning{r.Key, r.Means}, may: strings.Fields(r.May)}
		for group := range strings.SplitSeq(r.Needs, ";") {
			one.needs = append(one.needs, strings.Split(group, "|"))
		}
		in.rules = append(in.rules, one)
	}
	return in
}

// spelledOut writes German letters as those write them who have no such keys.
var spelledOut = strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue")

// shortAbbreviation is how many letters an abbreviation has at least: two letters
// begin too many words.
const shortAbbreviation = 3

func add(to map[string][]string, text, idea string) {
	if text != "" && !slices.Contains(to[text], idea) {
		to[text] = append(to[text], idea)
	}
}

// joined folds a word and closes its gaps: "fit-up", "Q.tà", "кол-во" are one word.
func joined(word string) string { return strings.ReplaceAll(fold(word), " ", "") }

// reStandard finds the number of a standard: it says where a word comes from.
var reStandard = regexp.MustCompile(`(?i)\b(?:iso|en|din|aws|asme|uni|nf|pn|une|bs|гост|дсту)(?:[ -]*(?:en|iso|[a-z])\b)*[ -]*\d[\d.:-]*`)

// plain drops from a header that names a standard the standard, and the words that
// change nothing; empty where it names none.
func (in *ideas) plain(header string) string {
	rest := reStandard.ReplaceAllString(header, " ")
	if rest == header {
		return ""
	}
	var words []string
	for _, word := range strings.FieldsFunc(rest, between) {
		if all := in.words[joined(word)]; len(all) != 1 || all[0] != link {
			words = append(words, word)
		}
	}
	return strings.Join(words, " ")
}

// read returns what a header can mean; nil where a word is not known or no rule has
// just these ideas.
func (in *ideas) read(header string) []meaning {
	var tokens [][]string
	for _, word := range strings.FieldsFunc(reStandard.ReplaceAllString(header, " "), between) {
		more, ok := in.tokens(word)
		if !ok {
			return nil
		}
		tokens = append(tokens, more...)
	}
	var out []meaning
	for _, r := range in.rules {
		if len(tokens) > 0 && r.holds(tokens) && !slices.Contains(out, r.meaning) {
			out = append(out, r.meaning)
		}
	}
	return out
}

func between(r rune) bool {
	return unicode.IsSpace(r) || strings.ContainsRune("()[]{},;:/|\"=+&_?!*", r)
}

// tokens returns the ideas of a word, of each of its parts where it is a compound;
// none where the word changes nothing.
func (in *ideas) tokens(word string) (tokens [][]string, ok bool) {
	if all := in.lookUp(word); all != nil {
		if len(all) == 1 && all[0] == link {
			return nil, true
		}
		return [][]string{all}, true
	}
	if parts := strings.FieldsFunc(word, func(r rune) bool { return strings.ContainsRune("-–—", r) }); len(parts) != 1 {
		for _, part := range parts {
			more, ok := in.tokens(part)
			if !ok {
				return nil, false
			}
			tokens = append(tokens, more...)
		}
		return tokens, true
	}
	if m := reElided.FindStringSubmatch(word); m != nil {
		return in.tokens(m[1])
	}
	text := joined(word)
	if tokens = in.compound(text); tokens == nil {
		tokens = in.near(text)
	}
	return tokens, tokens != nil || text == ""
}

var (
	reElided   = regexp.MustCompile(`(?i)^(?:d|l|dell|all|sull|nell)['’](.+)$`)
	reNumbered = regexp.MustCompile(`(?i)^(?:n[°ºro]*\.?|#|№)([12])$`) // n°2
)

// lookUp finds a word as it stands, with an ending, or cut short with a point.
func (in *ideas) lookUp(word string) []string {
	if m := reNumbered.FindStringSubmatch(word); m != nil {
		word = m[1]
	}
	text := joined(word)
	if all := in.words[text]; all != nil {
		return all
	}
	for _, s := range in.stems {
		if rest, ok := strings.CutPrefix(text, s.text); ok && len([]rune(rest)) <= longEnding {
			return []string{s.idea}
		}
	}
	if all := in.starts[text]; strings.HasSuffix(word, ".") && len(all) == 1 {
		return all
	}
	return nil
}

// longEnough is how many letters a word has at least in which a slip is seen.
const longEnough = 6

// near finds a word with a letter too many or too few, or two swapped, where only one
// idea is that near. Another letter would make another word: a welder is not welded.
func (in *ideas) near(text string) [][]string {
	letters := []rune(text)
	if len(letters) < longEnough {
		return nil
	}
	var found []string
	for known, all := range in.words {
		if len(known) < longEnough || !oneSlip(letters, []rune(known)) || len([]rune(known)) == len(letters) && !sameLetters(text, known) {
			continue
		}
		for _, idea := range all {
			if !slices.Contains(found, idea) {
				found = append(found, idea)
			}
		}
	}
	if len(found) != 1 || found[0] == link {
		return nil
	}
	return [][]string{found}
}

func sameLetters(a, b string) bool {
	x, y := []rune(a), []rune(b)
	slices.Sort(x)
	slices.Sort(y)
	return slices.Equal(x, y)
}

// compound takes a German word apart: "Blechdicke" is part and thick.
func (in *ideas) compound(text string) [][]string {
	letters := []rune(text)
	for n := len(letters) - shortAbbreviation; n >= shortAbbreviation; n-- {
		first := in.german[string(letters[:n])]
		if first == nil {
			continue
		}
		rest := string(letters[n:])
		for _, seam := range []string{"", "s", "n", "en", "es"} {
			tail, ok := strings.CutPrefix(rest, seam)
			if !ok {
				continue
			}
			if last := in.german[tail]; last != nil {
				return [][]string{first, last}
			}
			if more := in.compound(tail); more != nil {
				return append([][]string{first}, more...)
			}
		}
	}
	return nil
}

// holds tells whether every word has an idea that the rule needs or allows, and every
// need has a word of its own.
func (r rule) holds(tokens [][]string) bool {
	for _, all := range tokens {
		if !slices.Contains(all, link) && !slices.ContainsFunc(all, r.allows) {
			return false
		}
	}
	return covered(r.needs, tokens, make([]bool, len(tokens)))
}

func (r rule) allows(idea string) bool {
	return slices.Contains(r.may, idea) || slices.ContainsFunc(r.needs, func(group []string) bool { return slices.Contains(group, idea) })
}

func covered(needs, tokens [][]string, taken []bool) bool {
	if len(needs) == 0 {
		return true
	}
	for i, all := range tokens {
		if taken[i] || !slices.ContainsFunc(all, func(idea string) bool { return slices.Contains(needs[0], idea) }) {
			continue
		}
		taken[i] = true
		if covered(needs[1:], tokens, taken) {
			return true
		}
		taken[i] = false
	}
	return false
}
