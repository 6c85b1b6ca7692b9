package tables

// Stickout is the distance from contact tip to work with its band, and the arc
// length that is part of it. Blank metal or transfer fits all; the first row
// that fits counts.
type Stickout struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	Transfer     string  `csv:"transfer"`
	DiaFrom      float64 `csv:"dia_from_mm"`
	DiaTo        float64 `csv:"dia_to_mm"`
	Low          float64 `csv:"low_mm"`
	Start        float64 `csv:"start_mm"`
	High         float64 `csv:"high_mm"`
	Arc          float64 `csv:"arc_mm"`
	Origin
	Note string `csv:"note"`
}
