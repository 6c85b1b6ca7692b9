package tables

// ProcedureHeader is one spelling of a column header of a sheet of procedures.
// The keys low and high are words that make a range's column one of its ends.
type ProcedureHeader struct {
	Key      string `csv:"key"`
	Spelling string `csv:"spelling"`
	Origin
}

// ProcedureLimit is what a figure of a procedure may plausibly be; what lies
// outside was most likely meant in another unit. A figure without any unit below
// BareLow or above BareHigh is not taken: it could be in another unit as well.
type ProcedureLimit struct {
	Key      string  `csv:"key"`
	Unit     string  `csv:"unit"`
	Low      float64 `csv:"low"`
	High     float64 `csv:"high"`
	BareLow  float64 `csv:"bare_low"`
	BareHigh float64 `csv:"bare_high"`
	Origin
}
