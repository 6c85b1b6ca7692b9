package tables

// Header is one spelling of a column header.
type Header struct {
	Key      string `csv:"key"`      // input key: "mark", "length", "size"
	Spelling string `csv:"spelling"` // as people write it
	Language string `csv:"language"`
	// Means is, for sizes, what a bare number under this header is: leg, throat or
	// penetration; "either" where people use the word for both. Empty for others.
	Means string `csv:"means"`
	Basis string `csv:"basis"`
}

// HeaderWord is a word of a header and the idea that it stands for: "Dicke" is
// thick, "Blech" is part. With a stroke at its end the word takes endings.
type HeaderWord struct {
	Idea     string `csv:"idea"` // link for words that change nothing: "of", "del"
	Word     string `csv:"word"`
	Language string `csv:"language"`
	Basis    string `csv:"basis"`
}

// HeaderRule says which ideas together make a header: one idea of each of Needs, and
// besides them none but those of May.
type HeaderRule struct {
	Key   string `csv:"key"`
	Means string `csv:"means"` // as of Header
	Needs string `csv:"needs"` // groups between semicolons, ideas of a group between strokes
	May   string `csv:"may"`   // ideas between blanks
	Basis string `csv:"basis"`
}

// Word is one spelling of a value that a cell of a joint list may hold.
type Word struct {
	Use      string `csv:"use"`   // kind, position, sides, where, total, cutsheet...
	Value    string `csv:"value"` // what it is taken as
	Spelling string `csv:"spelling"`
	Language string `csv:"language"`
	Basis    string `csv:"basis"`
}
