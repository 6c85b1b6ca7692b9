package show

import (
	"regexp"
	"strings"
)

// measured is a number with decimals and what makes it one: a unit behind it, at once or
// behind a further number, as in "1.2 to 1.6 kJ/mm". A designation such as 1.4301 or
// AlMg4.5Mn has none.
var measured = regexp.MustCompile(`(^|[^\pL\d.,_-]|\d-)(\d+)\.(\d+(?: ?(?:bis|to|do|до|a|y|i|und|та|–|-|×|x|:) ?\d+(?:[.,]\d+)?)* ?` +
	`(?:mm²|mm/min|mm|m/min|m²|m|in|kg|g|ml|A|V|kJ/mm|kJ|l/min|l|°C|°|%|s|min|h)(?:[^\pL\d]|$))`)

// alone is a text that is one number with decimals and nothing else.
var alone = regexp.MustCompile(`^\d+\.\d{1,3}$`)

// List joins what has numbers in it: with a decimal comma a comma would not part them.
func (s Figures) List(parts ...string) string {
	if s.Comma {
		return strings.Join(parts, "; ")
	}
	return strings.Join(parts, ", ")
}

// Scale writes a scale, "1.5 : 1".
func (s Figures) Scale(text string) string { return s.signed(text) }

// Written gives the measures in a sentence of ours the sign before their decimals.
func (s Figures) Written(text string) string {
	if !s.Comma || !strings.Contains(text, ".") {
		return text
	}
	if alone.MatchString(text) {
		return strings.Replace(text, ".", ",", 1)
	}
	for {
		next := measured.ReplaceAllString(text, "$1$2,$3")
		if next == text {
			return text
		}
		text = next
	}
}
