package page

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Unknown is drawn for a rune that the fonts cannot show: a visible box.
const Unknown = '□'

// Longest bounds a single text: no line of a page can hold more.
const Longest = 600

// Clean makes any text safe to print. Letters are composed, spaces and breaks
// become single spaces, control and invisible formatting characters go, and
// what the fonts lack becomes a visible box. A text that is too long for any
// page ends in an ellipsis. Clean never fails.
func Clean(s string) string {
	if tidy(s) {
		return s
	}
	var b strings.Builder
	n, space := 0, false
	for _, r := range norm.NFC.String(strings.ToValidUTF8(cut(s), string(Unknown))) {
		switch {
		case unicode.IsSpace(r):
			space = n > 0
			continue
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Variation_Selector, r):
			continue
		case !printable(r):
			r = Unknown
		}
		room := Longest - n
		if space {
			room--
		}
		if room <= 0 {
			b.WriteRune('…')
			break
		}
		if space {
			b.WriteByte(' ')
			n++
			space = false
		}
		b.WriteRune(r)
		n++
	}
	return b.String()
}

// tidy tells whether a text is plain ASCII words with single spaces, as most are.
func tidy(s string) bool {
	space := true // none may lead
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == ' ' && space {
			return false
		}
		space = s[i] == ' '
	}
	return len(s) <= Longest && (!space || s == "")
}

// cut shortens an endless text before the costly steps, at a rune border.
func cut(s string) string {
	const most = Longest * 8
	if len(s) <= most {
		return s
	}
	return strings.ToValidUTF8(s[:most], "")
}

func printable(r rune) bool {
	return Regular.Has(r) && Bold.Has(r) && Mono.Has(r)
}
