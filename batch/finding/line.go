package finding

import (
	"strconv"
	"strings"
	"unicode"
)

// String returns the place as a person finds it: "frame.xlsx, sheet Joints, cell C14 (Leg)".
func (p Place) String() string {
	var parts []string
	if p.File != "" {
		parts = append(parts, p.File)
	}
	if p.Sheet != "" {
		parts = append(parts, "sheet "+p.Sheet)
	}
	switch {
	case p.Cell() != "":
		parts = append(parts, "cell "+p.Cell())
	case p.Row > 0:
		parts = append(parts, "row "+strconv.Itoa(p.Row))
	case p.Col > 0:
		parts = append(parts, "column "+ColumnName(p.Col))
	}
	text := strings.Join(parts, ", ")
	if p.Header != "" {
		text += " (" + p.Header + ")"
	}
	return oneLine(text)
}

// Line words the problem on one line: where, what is wrong, what was read, what
// was expected, what to do.
func (p Problem) Line() string {
	text := p.Text
	if p.Read != "" && !says(text, p.Read) {
		text += " (read " + quoted(p.Read) + ")"
	}
	if p.Want != "" {
		text += "; expected: " + p.Want
	}
	if p.Hint != "" {
		text += "; " + p.Hint
	}
	if where := p.Place.String(); where != "" {
		text = where + ": " + text
	}
	return oneLine(text)
}

// says tells whether a sentence quotes what was read, or has its figure: "a" is not
// said by "it is not a number".
func says(text, read string) bool {
	if strings.ContainsAny(read, "0123456789") {
		return strings.Contains(text, read)
	}
	return strings.Contains(text, quoted(read)) || strings.Contains(text, strconv.Quote(read))
}

// quoted puts a text between quotation marks as it stands: a backslash before an inch mark
// is no reader's business. What no cell shows, such as an escape, is written out.
func quoted(text string) string {
	if strings.IndexFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }) >= 0 {
		return strconv.Quote(text)
	}
	return `"` + text + `"`
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
