package joint

import (
	"slices"
	"strings"
	"unicode"

	"seamtally/batch/list"
)

// couldName are the columns that people also head so where they name the joints:
// "Poz.", "Marque".
var couldName = []string{"position", "kind", "assembly"}

// nameless looks, in a list whose joints have no name, for the one column that can
// only hold their names: every value stands once and has letter and figure in it, and
// none is what the header says. Where there is none, the first column of the list will
// do, whatever its header: it is told, and the list would else be refused.
func (s *spellings) nameless(cols []column, body []list.Row) {
	if !s.dialect.welds || hasKey(cols, s.dialect.name) {
		return
	}
	found := -1
	for i := range cols {
		if !slices.Contains(couldName, cols[i].Key) || !s.names(cols[i].Key, values(body, cols[i].Col)) {
			continue
		}
		if found >= 0 {
			return
		}
		found = i
	}
	if found < 0 && len(cols) > 0 && cols[0].Key == "" && !cols[0].torn && cols[0].rival == "" && s.names("", values(body, cols[0].Col)) {
		found = 0
	}
	if found >= 0 {
		c := &cols[found]
		c.Key, c.means, c.named, c.Why = s.dialect.name, "", true, "its values are names, and no other column names the joints"
	}
}

func (s *spellings) names(key string, texts []string) bool {
	if len(texts) < 2 {
		return false
	}
	if key != "" && key != "assembly" && s.fits(key, texts) > 0 {
		return false
	}
	seen := map[string]bool{}
	for _, text := range texts {
		if seen[text] || !strings.ContainsAny(text, "0123456789") || !strings.ContainsFunc(text, unicode.IsLetter) {
			return false
		}
		seen[text] = true
	}
	return true
}
