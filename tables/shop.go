package tables

// ShopValue is one built-in shop value: what a shop that states nothing is
// taken to pay, need or have. Value is text because some values are words.
type ShopValue struct {
	Key   string  `csv:"key"`
	Value string  `csv:"value"`
	Unit  string  `csv:"unit"` // "money" stands for the shop's currency
	Low   float64 `csv:"low"`  // spread of the value in practice, same unit; both zero: none stated
	High  float64 `csv:"high"`
	Money string  `csv:"money"` // "yes": a wrong value here moves money
	Origin
	Note string `csv:"note"`
}
