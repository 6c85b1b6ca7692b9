package tables

// Technique is a sentence for the welder: torch, polarity, trigger, inductance
// or manner. Blank columns fit all; the first row of an item that fits counts.
type Technique struct {
	Item         string `csv:"item"`
	Metal        string `csv:"metal"`
	Construction string `csv:"construction"`
	Transfer     string `csv:"transfer"`
	Positions    string `csv:"positions"`
	When         string `csv:"when"` // short, long, thin, weave, stringer
	Text         string `csv:"text"`
	Origin
}
