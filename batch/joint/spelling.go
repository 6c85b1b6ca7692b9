package joint

import (
	"regexp"
	"sort"
	"strings"
	"sync"

	"seamtally/batch/joint/measure"
	"seamtally/tables"
)

// meaning is one thing that a header can mean.
type meaning struct {
	key   string
	means string // of a size: leg, throat, penetration or either
}

// spellings are the tables of header and cell words, folded for look-up.
type spellings struct {
	dialect dialect
	headers map[string][]meaning
	words   map[string]map[string]string // use -> folded spelling -> value
	exact   map[string]map[string]string // use -> spelling in lower case -> value: Cyrillic Н is not Latin H
	loose   map[string]map[string]string // use -> folded spelling without the words between its words -> value
	long    []string                     // folded header spellings of five letters and more
	phrases map[string][]string          // use -> folded spellings of several letters, longest first
	ideas   func() *ideas                // read headers that the table does not have; made where one is met
}

func newSpellings(set *tables.Set) *spellings { return spellingsOf(jointDialect(set), set) }

func spellingsOf(d dialect, set *tables.Set) *spellings {
	s := &spellings{dialect: d, headers: map[string][]meaning{}, words: map[string]map[string]string{}, exact: map[string]map[string]string{}, loose: map[string]map[string]string{}, phrases: map[string][]string{}}
	if d.welds {
		s.ideas = sync.OnceValue(func() *ideas { return newIdeas(set) })
	}
	for _, h := range d.headers {
		s.addHeader(fold(h.Spelling), meaning{h.Key, h.Means})
		if text, unit := splitUnit(h.Spelling); unit != "" && text != "" {
			s.addHeader(fold(text), meaning{h.Key, h.Means})
		}
	}
	for folded := range s.headers {
		if len([]rune(folded)) >= 5 && !strings.ContainsAny(folded, "0123456789") {
			s.long = append(s.long, folded)
		}
	}
	sort.Strings(s.long)
	for _, w := range set.Words {
		if s.words[w.Use] == nil {
			s.words[w.Use], s.exact[w.Use], s.loose[w.Use] = map[string]string{}, map[string]string{}, map[string]string{}
		}
		s.addLoose(w.Use, fold(w.Spelling), w.Value)
		folded := fold(w.Spelling)
		s.addExact(w.Use, strings.ToLower(w.Spelling), w.Value)
		if have, ok := s.words[w.Use][folded]; ok && have != w.Value {
			s.words[w.Use][folded] = twoValues
		} else if !ok {
			s.words[w.Use][folded] = w.Value
			if len([]rune(folded)) > 3 {
				s.phrases[w.Use] = append(s.phrases[w.Use], folded)
			}
		}
	}
	for _, list := range s.phrases {
		sort.Slice(list, func(i, j int) bool {
			if len(list[i]) != len(list[j]) {
				return len(list[i]) > len(list[j])
			}
			return list[i] < list[j]
		})
	}
	return s
}

func (s *spellings) addHeader(folded string, m meaning) {
	for _, have := range s.headers[folded] {
		if have == m {
			return
		}
	}
	s.headers[folded] = append(s.headers[folded], m)
}

// reNumberOf is a single letter with the sign for a number.
var reNumberOf = regexp.MustCompile(`^\s*(?:\p{L}\s*[#№]|[#№]\s*\p{L})\s*$`)

// longestHeader is how many bytes a header may have. Taking a word apart costs its square: a
// cell of forty thousand letters would take minutes, and heads no column.
const longestHeader = 400

// header returns what a header text can mean.
func (s *spellings) header(text string) []meaning {
	if len(text) > longestHeader {
		return nil
	}
	if reNumberOf.MatchString(text) { // W# counts welds; it is no size under the letter W
		return nil
	}
	if m := s.headers[fold(text)]; m != nil {
		return m
	}
	bare, unit := splitUnit(text)
	if unit != "" {
		if m := s.headers[fold(bare)]; m != nil {
			return s.measured(m, bare, unit)
		}
	}
	// A second text in brackets explains the first: "Stk. (qty)", "t1 (web)".
	front := bare
	if i := strings.IndexAny(bare, "(["); i > 0 {
		front = bare[:i]
		if m := s.headers[fold(front)]; m != nil {
			return s.explained(m, bare[i:])
		}
	}
	if !s.dialect.welds {
		return nil
	}
	if m := s.composed(front); m != nil {
		return s.explained(m, bare[len(front):])
	}
	if m := s.headers[fold(s.ideas().plain(bare))]; m != nil {
		return m
	}
	if m := s.ideas().read(bare); m != nil {
		return m
	}
	return s.ideas().read(front)
}

// measured takes, of what a header with a unit can mean, what has a unit: under "Seam
// (m)" stand no marks.
func (s *spellings) measured(all []meaning, bare string, unit measure.Unit) []meaning {
	if !s.dialect.welds {
		return all
	}
	if m := only(all, haveUnits); m != nil {
		return m
	}
	if unit != measure.Deg && len(without(strings.Fields(fold(bare)), weldWords)) == 0 {
		return []meaning{{key: "length"}}
	}
	return all
}

const haveUnits = "length size t1 t2 gap root_face depth radius angle wire stitch"

// byUnitAlone tells whether a header is taken for a length by its unit alone: it names
// the weld and says "length" nowhere.
func (s *spellings) byUnitAlone(header string) bool {
	bare, unit := splitUnit(header)
	return s.dialect.welds && unit != "" && unit != measure.Deg && s.headers[fold(header)] == nil &&
		only(s.headers[fold(bare)], haveUnits) == nil && len(without(strings.Fields(fold(bare)), weldWords)) == 0
}

// explained reads a header with what stands in brackets behind it; none where the two
// contradict each other.
func (s *spellings) explained(all []meaning, bracket string) []meaning {
	if contradicts(all, s.headers[fold(bracket)]) {
		return nil
	}
	return s.closer(all, bracket)
}

// torn tells whether a header is not read because its brackets contradict it.
func (s *spellings) torn(header string) bool {
	bare, _ := splitUnit(header)
	i := strings.IndexAny(bare, "([")
	if i <= 0 || s.headers[fold(bare)] != nil {
		return false
	}
	front := s.headers[fold(bare[:i])]
	if front == nil && s.dialect.welds {
		front = s.composed(bare[:i])
	}
	return contradicts(front, s.headers[fold(bare[i:])])
}

// closer takes what stands in brackets behind a size for the kind of size: "Weld size
// (leg)", "Nahtdicke (a)".
func (s *spellings) closer(all []meaning, bracket string) []meaning {
	if len(all) != 1 || all[0].means != "either" {
		return all
	}
	for _, m := range s.headers[fold(bracket)] {
		if m.key == "size" && m.means != "" {
			return []meaning{m}
		}
	}
	return all
}

// near returns the header spelling that is one slip of the pen from a text:
// "Lenght" is length. Short words and words with digits have too many neighbours.
func (s *spellings) near(text string) string {
	bare, _ := splitUnit(text)
	folded := fold(bare)
	if len([]rune(folded)) < 6 || strings.ContainsAny(folded, "0123456789") {
		return ""
	}
	found := ""
	for _, known := range s.long {
		if d := len(known) - len(folded); d > 2 || d < -2 || !oneSlip([]rune(folded), []rune(known)) {
			continue
		}
		if found != "" && s.headers[found][0].key != s.headers[known][0].key {
			return ""
		}
		if found == "" {
			found = known
		}
	}
	return found
}

// oneSlip tells whether two texts differ by one letter more, less or other, or by
// two neighbours swapped.
func oneSlip(a, b []rune) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	switch len(b) - len(a) {
	case 0:
		if i == len(a) || string(a[i+1:]) == string(b[i+1:]) {
			return i < len(a)
		}
		return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && string(a[i+2:]) == string(b[i+2:])
	case 1:
		return string(a[i:]) == string(b[i+1:])
	}
	return false
}

// word looks a whole cell text up among the words of one use.
// A spelling that the languages use for two different values is known for neither.
func (s *spellings) word(use, text string) (string, bool) {
	v, ok := s.exact[use][strings.ToLower(strings.TrimSpace(text))]
	if !ok {
		v, ok = s.words[use][fold(text)]
	}
	if !ok && loosely[use] {
		v, ok = s.loosely(use, text)
	}
	if v == twoValues {
		return "", false
	}
	return v, ok
}

func (s *spellings) addLoose(use, folded, value string) {
	bare := bareOf(folded)
	if have, ok := s.loose[use][bare]; ok && have != value {
		value = twoValues
	}
	if bare != "" {
		s.loose[use][bare] = value
	}
}

func bareOf(folded string) string {
	return strings.Join(without(strings.Fields(folded), looseWords), " ")
}

// twoValues marks a spelling with two values.
const twoValues = "\x00"

func (s *spellings) addExact(use, spelling, value string) {
	if have, ok := s.exact[use][spelling]; ok && have != value {
		value = twoValues
	}
	s.exact[use][spelling] = value
}

// begins tells whether a text is, or begins or ends with, a word of a use.
func (s *spellings) begins(use, text string) bool {
	folded := fold(text)
	if _, ok := s.words[use][folded]; ok {
		return true
	}
	if !strings.Contains(folded, " ") {
		return false
	}
	for _, p := range s.phrases[use] {
		if strings.HasPrefix(folded, p+" ") || strings.HasSuffix(folded, " "+p) {
			return true
		}
	}
	return false
}
