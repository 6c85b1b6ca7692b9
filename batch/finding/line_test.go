package finding

import (
	"strings"
	"testing"
)

// TestWhatWasReadIsSaid: a letter that stands in the sentence by chance is not what the
// sentence says of the cell.
func TestWhatWasReadIsSaid(t *testing.T) {
	for _, c := range []struct {
		text, read string
		behind     bool
	}{
		{"it is not a number", "a", true},
		{"it is not a number", "t", true},
		{"it is not a number", "big", true},
		{`there is no shop value "wage"`, "wage", false},
		{"6/8 is no inch fraction", "6/8", false},
		{"it is not a number", "", false},
	} {
		line := Problem{Text: c.text, Read: c.read}.Line()
		if strings.Contains(line, "(read ") != c.behind {
			t.Errorf("%q of %q: %s", c.read, c.text, line)
		}
	}
}
