package tables

// Bead is one point of the current that a bead of a size calls for, by position:
// a small bead is laid with less current than its plate would bear, or the hand
// would have to run. Between points the current is interpolated over the leg of
// a fillet of the same area. A blank metal fits every metal; rows with a metal
// stand first.
type Bead struct {
	Metal     string  `csv:"metal"`
	Positions string  `csv:"positions"`
	DiaTo     float64 `csv:"dia_to_mm"` // thicker wire has no such limit
	Leg       float64 `csv:"leg_mm"`    // of a flat-faced fillet with the pass's area
	Current   float64 `csv:"current_a"`
	Origin
	Note string `csv:"note"`
}
