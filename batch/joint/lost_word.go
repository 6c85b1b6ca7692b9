package joint

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

// plainWords are words of the built-in table of words that the sentences about unknown
// words expect. Whoever writes one of them and is refused has no slip of the pen in the
// list: the table in use has lost it, or a letter only looks like it.
var plainWords = map[string]struct {
	use   string
	words *regexp.Regexp
}{
	"unknown-kind":     {"kind", regexp.MustCompile(`^(fillet|lap|corner|edge|square butt|(single|double) (v|bevel|u|j)|flare (bevel|v)|plug|slot)$`)},
	"unknown-where":    {"where", regexp.MustCompile(`^(shop|site)$`)},
	"unknown-position": {"position", regexp.MustCompile(`^(p[a-k]|[1-4]f|[1-6]g|flat|vertical up)$`)},
}

// lost is what is said of a word that ought to be known.
type lost struct{ text, want, hint string }

// lostWord tells why a word that the sentence would expect is not known all the same.
func (w *row) lostWord(code, read string) (lost, bool) {
	known, ok := plainWords[code]
	if !ok {
		return lost{}, false
	}
	if r, strange := strangeLetter(read); strange {
		return lost{fmt.Sprintf("it holds the sign U+%04X, which cannot be seen or only looks like a Latin letter", r),
			"the word in plain letters", "delete what is in the cell and type the word again"}, known.words.MatchString(fold(plainLetters(read)))
	}
	if !known.words.MatchString(fold(read)) {
		return lost{}, false
	}
	return lost{fmt.Sprintf("the table of words in use does not hold this word under %q", known.use),
		"a row of words.csv with " + known.use + " under use and this word under spelling", "the words.csv in the folder of --tables lacks that row, or one of its cells is spoilt: put the row back as `seamtally tables words` prints it"}, true
}

// greek are the Greek letters that look Latin.
var greek = strings.NewReplacer("α", "a", "ε", "e", "ι", "i", "κ", "k", "ν", "v", "ο", "o", "ρ", "p", "τ", "t", "υ", "u", "χ", "x", "η", "n")

func plainLetters(text string) string {
	return greek.Replace(strings.ToLower(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return -1
		}
		return r
	}, text)))
}

// strangeLetter returns the first control sign or Greek letter of a text; fold reads other
// unseen signs, and Cyrillic letters, as what they look like.
func strangeLetter(text string) (rune, bool) {
	for _, r := range text {
		if unicode.In(r, unicode.Cc, unicode.Greek) {
			return r, true
		}
	}
	return 0, false
}
