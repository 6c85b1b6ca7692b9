package tables

// Window is the range of currents that one wire takes in one gas, transfer mode
// and set of positions. A wire without a window for a position is not used in it.
type Window struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	Dia          float64 `csv:"dia_mm"`
	Gas          string  `csv:"gas"` // designations, separated by spaces
	Transfer     string  `csv:"transfer"`
	Positions    string  `csv:"positions"` // separated by spaces
	Low          float64 `csv:"low_a"`
	High         float64 `csv:"high_a"`
	Origin
	Note string `csv:"note"`
}
