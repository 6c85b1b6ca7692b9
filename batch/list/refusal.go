package list

import (
	"fmt"
	"strings"
	"unicode"
)

// Refusal says in plain words why a file is not read at all, and what to do.
type Refusal struct {
	File  string
	Text  string // what is wrong, one sentence without its full stop
	Hint  string // what to do
	Empty bool   // there was nothing to read
}

// Error returns the refusal on one line.
func (r *Refusal) Error() string {
	line := oneLine(r.Text)
	if r.File != "" {
		line = r.File + ": " + line
	}
	if r.Hint != "" {
		line += "; " + oneLine(r.Hint)
	}
	return line
}

// oneLine takes line ends and control characters out of a sentence: it may quote
// headers and sheet names of the list.
func oneLine(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return '\u25a1'
		}
		return r
	}, text)
}

func refuse(hint, format string, args ...any) *Refusal {
	return &Refusal{Text: fmt.Sprintf(format, args...), Hint: hint}
}

// damaged is a refusal because the inside of a workbook is not as it must be.
func damaged(format string, args ...any) *Refusal {
	return &Refusal{
		Text: "the workbook is damaged: " + fmt.Sprintf(format, args...),
		Hint: "open it in your spreadsheet program, save it again as .xlsx and try that copy",
	}
}

const saveAsXLSX = "open it in your spreadsheet program and save it as .xlsx or as CSV"

// nothing refuses what has no content.
func nothing() *Refusal {
	r := refuse("save it again where it was made, or give another file", "the file is empty")
	r.Empty = true
	return r
}
