package templates

import (
	"bytes"
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"maps"
	"sort"
	"strings"
)

//go:embed wording_*.csv american.csv
var wordings embed.FS

// Words is the wording of the printed sheets in one language. A word that the
// language lacks is taken from English.
type Words struct {
	Lang    string
	own     map[string]string
	english map[string]string
}

// Languages returns the codes of the languages there is wording for, sorted.
func Languages() []string {
	names, _ := fs.Glob(wordings, "wording_*.csv")
	out := make([]string, 0, len(names))
	for _, n := range names {
		out = append(out, strings.TrimSuffix(strings.TrimPrefix(n, "wording_"), ".csv"))
	}
	sort.Strings(out)
	return out
}

// Wording returns the words of a language; a blank code means English.
func Wording(lang string) (Words, error) {
	if lang == "" {
		lang = "en"
	}
	english, err := readWords("en")
	if err != nil {
		return Words{}, err
	}
	own, err := readWords(lang)
	if err != nil {
		return Words{}, fmt.Errorf("there is no wording for language %q; there is: %s", lang, strings.Join(Languages(), ", "))
	}
	return Words{Lang: lang, own: own, english: english}, nil
}

// American returns English words as American shops say them: those that differ stand in a
// table of their own. Other languages stay as they are.
func (w Words) American() (Words, error) {
	if w.Lang != "en" {
		return w, nil
	}
	other, err := readTable("american.csv")
	if err != nil {
		return Words{}, err
	}
	own := maps.Clone(w.own)
	maps.Copy(own, other)
	return Words{Lang: w.Lang, own: own, english: w.english}, nil
}

func readWords(lang string) (map[string]string, error) { return readTable("wording_" + lang + ".csv") }

func readTable(name string) (map[string]string, error) {
	text, err := wordings.ReadFile(name)
	if err != nil {
		return nil, err
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	out := make(map[string]string, len(rows))
	for _, r := range rows[1:] {
		out[r[0]] = r[1]
	}
	return out, nil
}

// Has tells whether there is a word for the key.
func (w Words) Has(key string) bool {
	_, own := w.own[key]
	_, english := w.english[key]
	return own || english
}

// Say returns the words for a key, with %s and %d in them filled by the
// arguments in turn. A key without words is printed as it is, so that it shows.
func (w Words) Say(key string, args ...any) string {
	text, ok := w.own[key]
	if !ok {
		text, ok = w.english[key]
	}
	if !ok {
		return key
	}
	if len(args) > 0 {
		return fmt.Sprintf(text, args...)
	}
	return text
}

// Missing returns the keys that English has and the language lacks, sorted.
func (w Words) Missing() []string {
	var out []string
	for key := range w.english {
		if _, ok := w.own[key]; !ok {
			out = append(out, key)
		}
	}
	sort.Strings(out)
	return out
}

// Keys returns the keys of the language itself that begin with a prefix, sorted.
func (w Words) Keys(prefix string) []string {
	var out []string
	for key := range w.own {
		if strings.HasPrefix(key, prefix) {
			out = append(out, key)
		}
	}
	sort.Strings(out)
	return out
}

// All returns every text of the language itself, in the order of the keys.
func (w Words) All() []string {
	keys := make([]string, 0, len(w.own))
	for key := range w.own {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	out := make([]string, len(keys))
	for i, key := range keys {
		out[i] = w.own[key]
	}
	return out
}
