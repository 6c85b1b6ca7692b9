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

// Word is one spelling of a value that a cell of a joint list may hold.
type Word struct {
	Use      string `csv:"use"`   // kind, position, sides, where, total, cutsheet...
	Value    string `csv:"value"` // what it is taken as
	Spelling string `csv:"spelling"`
	Language string `csv:"language"`
	Basis    string `csv:"basis"`
}
