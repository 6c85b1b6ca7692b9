// Package finding holds what the tool has to say about a list: where it stands
// (Place), what is wrong with the input (Problem) and what is worth knowing
// about a joint's plan (Check). It imports nothing of the project.
package finding

import "strconv"

// Level says how serious a finding is.
type Level string

// The three levels. An error keeps a row from being worked or a plan from being
// used; a warning needs a person's decision; a note is for information.
const (
	Error   Level = "error"
	Warning Level = "warning"
	Note    Level = "note"
)

// Place is a spot in an input file as the spreadsheet shows it. Row and Col are
// 1-based; zero means unknown or not applicable.
type Place struct {
	File   string
	Sheet  string
	Row    int
	Col    int
	Header string // the column's own header text, as the user wrote it
}

// Cell returns the spreadsheet address such as "C14"; empty without row or column.
func (p Place) Cell() string {
	if p.Row <= 0 || p.Col <= 0 {
		return ""
	}
	return ColumnName(p.Col) + strconv.Itoa(p.Row)
}

// ColumnName returns the letters of a 1-based column: 1 is A, 27 is AA.
func ColumnName(col int) string {
	name := ""
	for col > 0 {
		col--
		name = string(rune('A'+col%26)) + name
		col /= 26
	}
	return name
}

// Problem is one thing wrong with, or assumed about, the input.
type Problem struct {
	Place Place
	Level Level
	Code  string // short, stable, lower-case with dashes: "bad-number"
	Text  string // what is wrong, one sentence
	Read  string // what was read, verbatim; may be empty
	Want  string // what was expected; may be empty
	Hint  string // what to do
}

// Check is one judgement about a planned joint. It never approves anything.
type Check struct {
	Code   string
	Level  Level
	Text   string // what was found, with figures
	More   string // what stands behind it, for who wants to know; may be empty
	Rule   string // the rule in words
	Source string // document, clause or "shop rule"
	Basis  string // published, common-practice, derived or memory
	Do     string // what to do about it
	Key    string // the sentence before its figures were filled in; empty: Text has no such sentence
	Args   string // the figures, see Figures
}
