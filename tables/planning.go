package tables

// Planning is one rule of the planner that is a number.
type Planning struct {
	Key   string  `csv:"key"`
	Value float64 `csv:"value"`
	Unit  string  `csv:"unit"`
	What  string  `csv:"what"`
	Origin
}
