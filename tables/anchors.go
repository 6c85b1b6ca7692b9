package tables

// Anchor is one point of the target current over thickness, by metal, wire and
// joint family ("butt" or "fillet"); between points the current is interpolated.
type Anchor struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	DiaFrom      float64 `csv:"dia_from_mm"`
	DiaTo        float64 `csv:"dia_to_mm"`
	Family       string  `csv:"family"`
	Thickness    float64 `csv:"thickness_mm"`
	Current      float64 `csv:"current_a"`
	Origin
	Note string `csv:"note"`
}
