package rates

import (
	"fmt"

	"seamtally/tables"
)

// Default returns the shop that states nothing: every value is the built-in one.
// A shop table that cannot stand, such as the user's own with a price missing, is
// an error that names the key.
func Default(set *tables.Set) (Shop, error) {
	s := Shop{names: newNames(set)}
	for i, row := range set.Shop {
		if row.Key == "" || row.Value == "" && !isWord(row.Key) {
			return Shop{}, fmt.Errorf("table shop.csv: %s", halfRow(i+2, row))
		}
		v := Value{Key: row.Key, Text: row.Value, Unit: row.Unit, Low: row.Low, High: row.High,
			Basis: row.Basis, Source: row.Source, Note: row.Note, From: BuiltIn, Money: row.Money == "yes"}
		if !isWord(row.Key) {
			num, _, err := readNumber(row.Value, false)
			if err != nil {
				return Shop{}, fmt.Errorf("table shop.csv: the value %q in the row of %q %w; correct it, or compare the table with that of `seamtally tables shop`", row.Value, row.Key, err)
			}
			v.Num, v.IsNum = num, true
		}
		s.Values = append(s.Values, v)
	}
	return s, s.sound()
}

// sound checks the built-in values as a shop file's are checked: by reading
// each again and settling the stock.
func (s *Shop) sound() error {
	s.Currency = s.word("currency")
	for _, f := range fields {
		if s.find(f.key) == nil {
			return fmt.Errorf("table shop.csv: the row of %s is missing; put it in, or compare the table with that of `seamtally tables shop`", f.key)
		}
	}
	for _, w := range words {
		if s.find(w) == nil {
			return fmt.Errorf("table shop.csv: the row of %s is missing; put it in, or compare the table with that of `seamtally tables shop`", w)
		}
	}
	trial := *s
	trial.Values = append([]Value(nil), s.Values...)
	for _, v := range s.Values {
		for _, p := range trial.take(entry{key: v.Key, text: v.Text, unit: v.Unit, basis: v.Basis}) {
			return fmt.Errorf("table shop.csv, row of %s: %s; %s", v.Key, p.Text, tableHint(v.Key, p))
		}
	}
	for _, p := range s.settle() {
		return fmt.Errorf("table shop.csv: %s; %s", p.Text, p.Hint)
	}
	return nil
}
