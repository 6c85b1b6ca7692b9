package rates

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/units"
)

// settle fills the shop's fields from its values and says what is missing.
func (s *Shop) settle() []finding.Problem {
	s.Hydrogen, s.MachinePrice, s.MaterialPrice = map[string]float64{}, map[string]units.Money{}, map[string]units.Money{}
	s.SpatterMinM, s.CET, s.CEV = map[string]float64{}, map[string]float64{}, map[string]float64{}
	for _, v := range s.Values {
		if f, ok := fieldOf(v.Key); ok {
			f.put(s, v.Num)
		}
		if f, name, ok := familyOf(v.Key); ok {
			switch f.name {
			case "spatter_min_m":
				s.SpatterMinM[strings.Replace(name, "_", " ", 1)] = v.Num
			case "cet":
				s.CET[name] = v.Num
			case "cev":
				s.CEV[name] = v.Num
			case "hydrogen":
				s.Hydrogen[name] = v.Num
			case "machine_price":
				s.MachinePrice[name] = units.Money(v.Num)
			case "material_price":
				s.MaterialPrice[name] = units.Money(v.Num)
			}
		}
	}
	s.dropSpatter()
	s.settleBars()
	s.Currency, s.SizeMeans = s.word("currency"), s.word("size_means")
	s.MissingSize, s.Choose = s.word("missing_size"), s.word("choose")
	s.PreheatMethod = s.word("preheat_method")
	if s.DefaultMaterial = s.word("default_material"); s.DefaultMaterial == "ask" {
		s.DefaultMaterial = ""
	}
	s.Machines = splitStock(s.word("machines"))
	problems := s.settleWires()
	return append(problems, s.settleGases()...)
}

// dropSpatter lets the shop's own minutes for a transfer mode beat the built-in
// ones for that mode under one gas.
func (s *Shop) dropSpatter() {
	for _, v := range s.Values {
		f, name, ok := familyOf(v.Key)
		if !ok || f.of != "transfer" {
			continue
		}
		if mode, _, withGas := strings.Cut(name, "."); withGas && !v.Own() && s.own(f.name+"."+mode) {
			delete(s.SpatterMinM, strings.Replace(name, "_", " ", 1))
		}
	}
}

func (s *Shop) word(key string) string {
	v, _ := s.Value(key)
	return v.Text
}

func (s *Shop) own(key string) bool {
	v, ok := s.Value(key)
	return ok && v.Own()
}

func (s *Shop) settleWires() (problems []finding.Problem) {
	s.Wires = nil
	for _, item := range splitStock(s.word("stock_wires")) {
		filler, dia, ok := s.names.wire(item)
		if !ok {
			continue
		}
		w, ok := s.Wire(filler, dia)
		if !ok {
			problems = append(problems, s.unpriced("stock_wires", WireName(filler, dia), "wire_price."+filler, "spool_kg."+filler))
			continue
		}
		s.Wires = append(s.Wires, w)
	}
	return problems
}

func (s *Shop) settleGases() (problems []finding.Problem) {
	s.Gases = nil
	for _, name := range splitStock(s.word("stock_gases")) {
		g, ok := s.Gas(name)
		if !ok {
			problems = append(problems, s.unpriced("stock_gases", name, "cylinder_price."+name, "cylinder_l."+name))
			continue
		}
		s.Gases = append(s.Gases, g)
	}
	return problems
}

func (s *Shop) unpriced(stock, name, price, pack string) finding.Problem {
	v, _ := s.Value(stock)
	return finding.Problem{Place: v.place, Level: finding.Error, Code: "shop-no-price", Read: name,
		Text: fmt.Sprintf("%s names %s, which has no price or no pack size", stock, name),
		Want: price + " and " + pack, Hint: "state " + price + " and " + pack}
}

// Wire returns price and packing of a wire, in stock or not. A figure for the
// diameter beats one for the class, unless it is built in and the other is the
// shop's own.
func (s *Shop) Wire(filler string, dia units.MM) (WirePrice, bool) {
	price, ok := s.ofWire("wire_price", filler, dia)
	spool, has := s.ofWire("spool_kg", filler, dia)
	if !ok || !has {
		return WirePrice{}, false
	}
	onHand, _ := s.Value("on_hand_kg." + filler + "." + diaText(dia))
	return WirePrice{Filler: filler, Dia: dia, PerKg: units.Money(price.Num), SpoolKg: units.Kg(spool.Num),
		OnHandKg: units.Kg(onHand.Num), From: price.From}, true
}

func (s *Shop) ofWire(fam, filler string, dia units.MM) (Value, bool) {
	class, hasClass := s.Value(fam + "." + filler)
	one, hasOne := s.Value(fam + "." + filler + "." + diaText(dia))
	if hasOne && (one.Own() || !hasClass || !class.Own()) {
		return one, true
	}
	return class, hasClass
}

// Gas returns price and filling of a gas, in stock or not.
func (s *Shop) Gas(name string) (GasPrice, bool) {
	price, ok := s.Value("cylinder_price." + name)
	litres, has := s.Value("cylinder_l." + name)
	if !ok || !has {
		return GasPrice{}, false
	}
	onHand, _ := s.Value("on_hand_l." + name)
	return GasPrice{Gas: name, PerCylinder: units.Money(price.Num), Cylinder: units.Litre(litres.Num),
		OnHand: units.Litre(onHand.Num), From: price.From}, true
}

// PerLitre returns the price of one litre of gas.
func (g GasPrice) PerLitre() units.Money {
	if g.Cylinder <= 0 {
		return 0
	}
	return units.Money(float64(g.PerCylinder) / float64(g.Cylinder))
}

// Own tells whether the shop stated the value itself.
func (v Value) Own() bool { return v.Basis == OwnBasis }

// NotYours returns the built-in values that move money: what the shop has not
// stated itself. The tool's price is no better than these.
func (s *Shop) NotYours() []Value {
	var out []Value
	for _, v := range s.Values {
		if v.Money && !v.Own() && v.Text != "" {
			out = append(out, v)
		}
	}
	return out
}

// NotYoursFor returns those of NotYours that a job with the given set-ups and
// transfer modes was priced with: no wire, gas or mode that it does not use, and
// of a wire the one figure that applied.
func (s *Shop) NotYoursFor(setups []Setup, modes map[string]bool) []Value {
	used, known := map[string]bool{}, map[Setup]bool{}
	for _, u := range setups {
		u.Machine = ""
		if known[u] {
			continue
		}
		known[u] = true
		for _, fam := range []string{"wire_price", "spool_kg"} {
			v, _ := s.ofWire(fam, u.Filler, u.Dia)
			used[v.Key] = true
		}
		used["cylinder_price."+u.Gas], used["cylinder_l."+u.Gas] = true, true
		for mode := range modes {
			used["spatter_min_m."+strings.ReplaceAll(mode, " ", "_")+"."+u.Gas] = true
		}
	}
	for mode := range modes {
		used["spatter_min_m."+strings.ReplaceAll(mode, " ", "_")] = true
	}
	var out []Value
	for _, v := range s.NotYours() {
		if _, _, isFamily := familyOf(v.Key); !isFamily || used[v.Key] {
			out = append(out, v)
		}
	}
	return out
}

// WithMachine returns the shop with one machine more.
func (s *Shop) WithMachine(name string) Shop {
	c := *s
	c.Machines = append(slices.Clone(s.Machines), name)
	return c
}

// Clone returns a copy that shares nothing that can change.
func (s *Shop) Clone() Shop {
	c := *s
	c.Values = slices.Clone(s.Values)
	c.settle()
	return c
}
