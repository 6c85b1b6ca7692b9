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

// What was read stands as the cell shows it: a backslash before an inch mark is none of
// the reader's business, but no escape goes to the screen.
func TestReadAsTheCellShowsIt(t *testing.T) {
	for read, want := range map[string]string{`4'-16"`: `(read "4'-16"")`, "a\x1b[2J": `(read "a\x1b[2J")`} {
		if line := (Problem{Text: "it is not a number", Read: read}).Line(); !strings.Contains(line, want) {
			t.Errorf("%q: %s, want %s", read, line, want)
		}
	}
}
