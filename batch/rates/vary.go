package rates

import (
	"maps"
	"strings"

	"seamtally/batch/units"
)

// Vary is a shop whose single numbers may be moved for a trial; the shop it was
// made from stays as it is.
type Vary struct{ Shop }

// NewVary returns a copy to try values on.
func NewVary(s *Shop) *Vary {
	v := &Vary{*s}
	v.SpatterMinM = maps.Clone(s.SpatterMinM)
	return v
}

// Setter returns what sets a single number, or the spatter minutes of a transfer
// mode in use, without judging it; nil where the key is neither.
func (v *Vary) Setter(key string) func(num float64) {
	if f, ok := fieldOf(key); ok {
		return func(num float64) { f.put(&v.Shop, num) }
	}
	f, name, ok := familyOf(key)
	if !ok || f.of != "transfer" {
		return nil
	}
	name = strings.Replace(name, "_", " ", 1)
	if _, inUse := v.SpatterMinM[name]; !inUse {
		return nil
	}
	return func(num float64) { v.SpatterMinM[name] = num }
}

// WireSpread returns the price of a wire per kilogram with its stated spread;
// low and high are the price itself where none is stated.
func (s *Shop) WireSpread(filler string, dia units.MM) (num, low, high float64) {
	v, _ := s.ofWire("wire_price", filler, dia)
	return v.spread()
}

// GasSpread returns the price of a litre of gas with its stated spread.
func (s *Shop) GasSpread(name string) (num, low, high float64) {
	v, _ := s.Value("cylinder_price." + name)
	g, ok := s.Gas(name)
	if !ok || g.Cylinder <= 0 {
		return 0, 0, 0
	}
	num, low, high = v.spread()
	litres := float64(g.Cylinder)
	return num / litres, low / litres, high / litres
}

func (v Value) spread() (num, low, high float64) {
	if v.Low < v.High && v.Low <= v.Num && v.Num <= v.High {
		return v.Num, v.Low, v.High
	}
	return v.Num, v.Num, v.Num
}
