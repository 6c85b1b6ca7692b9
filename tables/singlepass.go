package tables

// SinglePass says how small and how large one pass may be by wire, mode and
// position, judged on the drawn size. A blank metal fits every metal; rows with
// a metal stand first.
type SinglePass struct {
	Metal        string  `csv:"metal"`
	Construction string  `csv:"construction"`
	Transfer     string  `csv:"transfer"`
	Positions    string  `csv:"positions"`
	DiaFrom      float64 `csv:"dia_from_mm"`
	DiaTo        float64 `csv:"dia_to_mm"`
	MinLeg       float64 `csv:"min_leg_mm"` // smallest fillet worth trying
	MaxLeg       float64 `csv:"max_leg_mm"` // largest fillet in one pass
	Root         float64 `csv:"root_mm2"`   // largest root pass of a groove
	Fill         float64 `csv:"fill_mm2"`   // largest pass of anything in several passes
	Width        float64 `csv:"width_mm"`   // widest layer laid as one bead
	MinT         float64 `csv:"min_t_mm"`   // thinnest plate the wire is meant for
	Origin
	Note string `csv:"note"`
}
