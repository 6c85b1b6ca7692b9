package tables

// CheckRule is the rule behind a check: what it says, where it comes from and what
// to do. Over and To bound what the rule speaks of; a To of zero has no limit.
type CheckRule struct {
	Code  string  `csv:"code"`
	Codes string  `csv:"codes"` // iso, aws or both
	Over  float64 `csv:"over"`
	To    float64 `csv:"to"`
	Value float64 `csv:"value"`
	Unit  string  `csv:"unit"`
	Rule  string  `csv:"rule"`
	Do    string  `csv:"do"`
	Origin
}
