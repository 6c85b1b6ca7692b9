package tables

// Travel is the range of travel speeds of a steady hand by wire, mode, position
// and technique. A blank metal fits every metal; rows with a metal stand first.
type Travel struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	Transfer     string  `csv:"transfer"`
	Positions    string  `csv:"positions"`
	Technique    string  `csv:"technique"`   // stringer or weave
	DiaFrom      float64 `csv:"dia_from_mm"` // wires it is for, mm
	DiaTo        float64 `csv:"dia_to_mm"`
	Low          float64 `csv:"low_mm_min"`
	High         float64 `csv:"high_mm_min"`
	Origin
	Note string `csv:"note"`
}
