package tables

// VoltLine is the arc voltage of a process, gas and transfer mode: volts at two
// currents with a straight line between and a little beyond.
type VoltLine struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	Gas          string  `csv:"gas"`
	Transfer     string  `csv:"transfer"`
	DiaFrom      float64 `csv:"dia_from_mm"`
	DiaTo        float64 `csv:"dia_to_mm"`
	Amp1         float64 `csv:"amp1"`
	Volt1        float64 `csv:"volt1"`
	Amp2         float64 `csv:"amp2"`
	Volt2        float64 `csv:"volt2"`
	Band         float64 `csv:"band_v"` // working band either side
	Origin
	Note string `csv:"note"`
}
