package look

import (
	"strings"
	"unicode"
)

// HeadWidth is the least width of a column, not below the one given, in which a header
// takes no more than two lines: many lists give their header room for two and no more.
func HeadWidth(text string, width float64) float64 {
	const bold = 1.08
	for linesOf(text, (width-1)/bold) > 2 {
		width++
	}
	return width
}

// linesOf is how many lines a text takes that is wrapped between its words, in a
// column as wide as so many digits; a word longer than a line is cut.
func linesOf(text string, room float64) int {
	lines, used := 1, 0.0
	for word := range strings.FieldsSeq(text) {
		n := widthOf(word)
		if used > 0 && used+space+n > room {
			lines, used = lines+1, 0
		}
		if used > 0 {
			used += space
		}
		used += n
		for used > room {
			lines, used = lines+1, used-room
		}
	}
	return lines
}

// Widths of letters in digits, as the usual fonts without serifs have them, rounded up.
const (
	space  = 0.5
	thin   = 0.55
	slim   = 0.8
	broad  = 1.6
	upper  = 1.25
	square = 2 // of scripts whose letters fill a square
)

// widthOf is the width of a word in digits.
func widthOf(word string) float64 {
	sum := 0.0
	for _, r := range word {
		if r < rune(len(plainWidths)) {
			sum += plainWidths[r]
		} else {
			sum += letterWidth(r)
		}
	}
	return sum
}

// plainWidths are those of the letters that nearly all words have.
var plainWidths = func() (widths [128]float64) {
	for r := range widths {
		widths[r] = letterWidth(rune(r))
	}
	return widths
}()

func letterWidth(r rune) float64 {
	switch {
	case strings.ContainsRune("ijlI.,;:'|!()[]", r):
		return thin
	case strings.ContainsRune("tfrsz-/\"°", r):
		return slim
	case strings.ContainsRune("mwMW%@—…", r):
		return broad
	case unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul):
		return square
	case unicode.IsUpper(r):
		return upper
	}
	return 1
}
