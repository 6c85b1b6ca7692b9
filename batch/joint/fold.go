package joint

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"seamtally/batch/joint/measure"
)

// alike maps Cyrillic letters that look Latin to the Latin ones, so that a code
// typed on the other keyboard is the same code.
var alike = strings.NewReplacer(
	"а", "a", "в", "b", "е", "e", "к", "k", "м", "m", "н", "h", "о", "o", "р", "p", "с", "c", "т", "t", "у", "y", "х", "x", "і", "i", "ј", "j", "ѕ", "s",
	"ß", "ss", "ł", "l", "ø", "o", "đ", "d", "æ", "ae", "œ", "oe", "ı", "i",
)

// fold brings a header or a word to the form in which spellings are compared:
// lower case, no accents, look-alikes Latin, punctuation as single spaces.
func fold(s string) string {
	if folded(s) {
		return s
	}
	if plain, ok := foldASCII(s); ok {
		return plain
	}
	s = strings.ToLower(norm.NFKD.String(s))
	var b strings.Builder
	gap := false
	for _, r := range s {
		switch {
		case unicode.In(r, unicode.Mn, unicode.Cf) || r == '\'' || r == '’' || r == 'ʼ': // Cf: signs that nobody sees
		case unicode.IsLetter(r) || unicode.IsDigit(r) || symbolic(r):
			if gap && b.Len() > 0 {
				b.WriteByte(' ')
			}
			gap = false
			b.WriteRune(r)
		default:
			gap = true
		}
	}
	return alike.Replace(b.String())
}

// folded tells whether a text is in that form already, as most words of a list are.
func folded(s string) bool {
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9':
		case c == ' ' && i > 0 && i < len(s)-1 && s[i+1] != ' ':
		default:
			return false
		}
	}
	return true
}

// foldASCII folds a text of plain letters, digits and signs: most cells are that.
func foldASCII(s string) (string, bool) {
	out := make([]byte, 0, len(s))
	gap := false
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case c >= 0x80:
			return "", false
		case c == '\'':
			continue
		case c >= 'A' && c <= 'Z':
			c += 'a' - 'A'
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9', c == '=', c == '+', c == '<', c == '>', c == '%':
		default:
			gap = true
			continue
		}
		if gap && len(out) > 0 {
			out = append(out, ' ')
		}
		gap = false
		out = append(out, c)
	}
	return string(out), true
}

// symbolic tells whether a sign carries meaning of its own in a weld list.
func symbolic(r rune) bool {
	return strings.ContainsRune("△◺⊿∟⟂⊥◯○Ø½∥=+<>%°", r)
}

// splitUnit takes the unit out of a header: "Length (mm)", "Leg [in]", "t, mm", "L mm".
func splitUnit(header string) (text string, unit measure.Unit) {
	s := measure.Plain(header)
	for _, pair := range []string{"()", "[]", "{}"} {
		open := strings.LastIndexByte(s, pair[0])
		if open < 0 {
			continue
		}
		end := strings.IndexByte(s[open:], pair[1])
		if end < 0 {
			continue
		}
		if u, ok := measure.UnitOf(s[open+1 : open+end]); ok {
			return strings.TrimSpace(s[:open] + " " + s[open+end+1:]), u
		}
	}
	for _, mark := range []string{",", "/", " in ", " ", "_"} {
		if i := strings.LastIndex(s, mark); i > 0 {
			if u, ok := measure.UnitOf(s[i+len(mark):]); ok {
				return strings.TrimRight(strings.TrimSpace(s[:i]), ",/ _"), u
			}
		}
	}
	return s, measure.None
}
