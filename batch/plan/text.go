package plan

import (
	"bytes"
	"math"
	"strconv"
)

// number writes a figure with at most the given decimals, no trailing zeros, and
// never a negative zero.
func number(v float64, decimals int) string { return numberWith(v, decimals, "") }

// numberWith is number with something behind it.
func numberWith(v float64, decimals int, behind string) string {
	room := make([]byte, 0, 32)
	return string(append(appendNumber(room, v, decimals), behind...))
}

// appendNumber writes a number, as number does, behind a text.
func appendNumber(text []byte, v float64, decimals int) []byte {
	from := len(text)
	text = strconv.AppendFloat(text, round(v, decimals), 'f', decimals, 64)
	if bytes.IndexByte(text[from:], '.') >= 0 {
		text = bytes.TrimRight(bytes.TrimRight(text, "0"), ".")
	}
	return text
}

// line is a sentence in the making. One that is written for every joint of a long list
// takes no more memory than its text.
type line []byte

// usualLine is how many bytes most sentences take at most.
const usualLine = 448

// say adds words.
func (l line) say(words ...string) line {
	for _, w := range words {
		l = append(l, w...)
	}
	return l
}

// num adds a number with at most the given decimals.
func (l line) num(v float64, decimals int) line { return appendNumber(l, v, decimals) }

// short adds a number with as many digits as it has.
func (l line) short(v float64) line { return strconv.AppendFloat(l, v, 'g', -1, 64) }

// whole adds a number rounded to a whole one.
func (l line) whole(v float64) line { return strconv.AppendFloat(l, v, 'f', 0, 64) }

// round rounds to a number of decimals and turns a negative zero into zero.
func round(v float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(v*p)/p + 0
}
