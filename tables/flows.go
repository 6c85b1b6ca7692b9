package tables

// Flow is the shielding gas flow: the start value and its band. Blank metal, gas
// or transfer fits all; the first row that fits counts.
type Flow struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	Gas          string  `csv:"gas"`
	Transfer     string  `csv:"transfer"`
	DiaFrom      float64 `csv:"dia_from_mm"`
	DiaTo        float64 `csv:"dia_to_mm"`
	Low          float64 `csv:"low_l_min"`
	Start        float64 `csv:"start_l_min"`
	High         float64 `csv:"high_l_min"`
	Origin
	Note string `csv:"note"`
}
