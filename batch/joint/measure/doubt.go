package measure

import (
	"regexp"
	"strings"
)

// doubt is a sign in a text and what it says of the figure.
type doubt struct {
	re         *regexp.Regexp
	text, hint string
}

var (
	limits = doubt{regexp.MustCompile(`^(?i)(?:[<>≤≥]=?|min|max|at least|up to)`), "it is a limit, not a figure", "write the figure to work with"}
	rough  = doubt{regexp.MustCompile(`^(?i)(?:[~≈]|ca\b|abt\b|about|approx)`), "it is a rough figure", "write the figure to work with"}
)

// Vague says why a text is no figure to work with, where it begins with a word for a limit
// or for a rough figure; nil where it does not.
func Vague(s string) *Fault {
	for _, d := range []doubt{limits, rough} {
		if d.re.MatchString(Plain(s)) {
			return fault(d.text, d.hint)
		}
	}
	return nil
}

// doubts are what people write beside a number and what that asks of them: the
// commonest reasons why a text is no single figure.
var doubts = []doubt{
	{regexp.MustCompile(`^[øØ⌀]`), "it is a diameter", "write the length itself; round a tube it is 3.14 times the diameter"},
	limits,
	rough,
	{regexp.MustCompile(`^[^±]*\d.*(?:±|\+ ?/ ?-)`), "it carries a tolerance", "write the nominal figure alone"},
	{regexp.MustCompile(`\d ?(?:[-÷…]|\.\.+) ?\d`), "it is a range, not a figure", "write the figure to work with"},
	{regexp.MustCompile(`(?i)\d ?(?:ga|ga\.|gauge|swg|gge)$`), "gauge numbers are not read: they differ from metal to metal", `write the thickness, such as 1.5 mm or 0.060"`},
	{regexp.MustCompile(`\d ?[/x*] ?[a-z]{0,2}\d`), "it looks like more than one figure", "write one figure in the cell"},
	{regexp.MustCompile(`^(?i)(?:true|false|yes|no|wahr|falsch|vrai|faux|ja|nein|tak|nie|si|да|нет|так|ні)$`), "it is a yes or no, not a figure", "write the figure"},
}

// doubtOf says why a text is no figure; otherwise where no reason is known.
func doubtOf(s, otherwise, hint string) *Fault {
	low := strings.ToLower(Plain(s))
	for _, d := range doubts {
		if d.re.MatchString(low) {
			return fault(d.text, d.hint)
		}
	}
	return fault(otherwise, hint)
}
