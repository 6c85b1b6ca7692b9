// Package measure reads quantities as people write them: numbers with a decimal
// point or comma, inch fractions, feet and inches, with or without a unit. What
// can be read in two ways is refused, never guessed. It knows nothing of welds.
package measure

import (
	"regexp"
	"strings"
)

// plainer maps the look-alikes of digits, signs and spaces to plain ones.
var plainer = strings.NewReplacer(
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2007", " ", "\u2002", " ", "\u2003", " ", "\u3000", " ",
	"\u200b", "", "\u200c", "", "\u200d", "", "\u2060", "", "\ufeff", "", "\u00ad", "", "\u200e", "", "\u200f", "",
	"−", "-", "‐", "-", "‑", "-", "‒", "-", "–", "-", "—", "-", "﹣", "-", "－", "-",
	"＋", "+", "．", ".", "，", ",", "／", "/", "⁄", "/", "∕", "/", "（", "(", "）", ")", "＝", "=",
	"×", "x", "✕", "x", "✖", "x", "⨯", "x", "х", "x", "Х", "x", "·", "*", "⋅", "*", "∙", "*",
	"′", "'", "’", "'", "‘", "'", "ʼ", "'", "`", "'", "´", "'", "″", `"`, "”", `"`, "“", `"`, "„", `"`, "''", `"`,
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅓", " 1/3", "⅔", " 2/3",
	"０", "0", "１", "1", "２", "2", "３", "3", "４", "4", "５", "5", "６", "6", "７", "7", "８", "8", "９", "9",
	"٠", "0", "١", "1", "٢", "2", "٣", "3", "٤", "4", "٥", "5", "٦", "6", "٧", "7", "٨", "8", "٩", "9", "٫", ",",
	"㎜", " mm", "㎝", " cm", "ⅹ", "x", "⌀", "ø", "∅", "ø", "Ø", "ø",
)

// reSmall finds a fraction of small digits, ⁵⁄₁₆; small digits alone are powers and
// footnotes.
var reSmall = regexp.MustCompile(`[⁰¹²³⁴⁵⁶⁷⁸⁹]+[⁄/][₀₁₂₃₄₅₆₇₈₉]+`)

var small = strings.NewReplacer("⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9",
	"₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7", "₈", "8", "₉", "9")

// Plain returns the text with plain digits, signs, quotes and single spaces.
func Plain(s string) string {
	if isPlain(s) {
		return s
	}
	s = reSmall.ReplaceAllStringFunc(s, func(fraction string) string { return " " + small.Replace(fraction) })
	s = strings.Join(strings.Fields(plainer.Replace(s)), " ")
	// An apostrophe before a number is how people and CSV files say: a text.
	if len(s) > 1 && s[0] == '\'' && s[1] >= '0' && s[1] <= '9' {
		return s[1:]
	}
	return s
}

func isPlain(s string) bool {
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c >= 0x80 || c == '\'' || c == '`' || c < ' ' || c == ' ' && (i == 0 || i == len(s)-1 || s[i-1] == ' ') {
			return false
		}
	}
	return true
}
