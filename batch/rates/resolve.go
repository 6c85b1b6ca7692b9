package rates

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/finding"
)

// resolve returns the key an entry means, spelled as the tool spells it.
func (s *Shop) resolve(e entry) (key string, problem *finding.Problem) {
	written := strings.TrimSpace(e.key)
	plain := strings.ToLower(strings.ReplaceAll(written, " ", "_"))
	if _, ok := fieldOf(plain); ok || isWord(plain) {
		return plain, nil
	}
	if fam, name, ok := familyOf(written); ok {
		return s.resolveFamily(e, fam, name)
	}
	hint := "correct the name; `seamtally starter` writes a shop file with every name in it"
	if e.keyCol > 0 {
		hint = "correct the name or delete the row; `seamtally starter` writes a shop file with every name in it"
	}
	switch near := finding.Nearest(plain, s.keys()); {
	case isFamily(plain):
		hint = fmt.Sprintf("say behind a point what it is of: %s.NAME, such as %s", plain, s.oneOf(plain))
	case near != "":
		hint = fmt.Sprintf("write %s if that is meant", near)
	}
	return "", &finding.Problem{Place: e.keyPlace(), Level: finding.Error, Code: "shop-key",
		Text: fmt.Sprintf("there is no shop value %q", written), Read: written, Want: "a name from the first column (key) of the shop file", Hint: hint}
}

func (s *Shop) resolveFamily(e entry, fam family, name string) (string, *finding.Problem) {
	var known []string
	switch fam.of {
	case "wire":
		if filler, dia, ok := s.names.wire(name); ok {
			if dia == 0 {
				return fam.name + "." + filler, nil
			}
			return fam.name + "." + filler + "." + diaText(dia), nil
		}
		known = s.names.all.fillers
	case "gas":
		if gas, ok := s.names.gases[fold(name)]; ok {
			return fam.name + "." + gas, nil
		}
		known = s.names.all.gases
	case "transfer":
		if mode, ok := s.transferName(name); ok {
			return fam.name + "." + mode, nil
		}
		known = transfers
	case "steel":
		if s.names.steel(name) {
			return fam.name + "." + name, nil
		}
		known = s.names.all.steels
	case "metal":
		if metal := strings.ToLower(strings.ReplaceAll(name, " ", "_")); slices.Contains(metals, metal) {
			return fam.name + "." + metal, nil
		}
		known = metals
	case "machine":
		if machine, ok := s.names.machines[fold(name)]; ok {
			return fam.name + "." + machine, nil
		}
		known = s.names.all.machines
	}
	return "", unknownName(e.keyPlace(), fam.of, name, known)
}

// transferName accepts "short_arc", "short arc" and "short_arc.C1".
func (s *Shop) transferName(name string) (string, bool) {
	mode, gas, withGas := strings.Cut(name, ".")
	mode = strings.ToLower(strings.ReplaceAll(strings.TrimSpace(mode), " ", "_"))
	if !slices.Contains(transfers, mode) {
		return "", false
	}
	if !withGas {
		return mode, true
	}
	gas, ok := s.names.gases[fold(gas)]
	return mode + "." + gas, ok
}

func unknownName(place finding.Place, what, name string, known []string) *finding.Problem {
	hint := "write one of these: " + strings.Join(known, ", ")
	if len(known) == 0 {
		hint = "the table of them is empty: put them in"
	}
	if near := finding.Nearest(name, known); near != "" {
		hint = fmt.Sprintf("write %s if that is meant", near)
	}
	return &finding.Problem{Place: place, Level: finding.Error, Code: "shop-name",
		Text: fmt.Sprintf("the tables have no %s %q", what, name), Read: name, Want: "a " + what + " of the tables", Hint: hint}
}

// bounds returns the range and unit of a number's key.
func (s *Shop) bounds(key string) (low, high float64, unit string) {
	if f, ok := fieldOf(key); ok {
		if v, ok := s.Value(key); ok {
			unit = v.Unit
		}
		return f.min, f.max, unit
	}
	f, _, _ := familyOf(key)
	return f.min, f.max, f.unit
}

// keys returns every key in use, for suggestions.
func (s *Shop) keys() []string {
	var keys []string
	for _, f := range fields {
		keys = append(keys, f.key)
	}
	keys = append(keys, words...)
	for _, v := range s.Values {
		if strings.Contains(v.Key, ".") {
			keys = append(keys, v.Key)
		}
	}
	return keys
}

// oneOf returns a key of a family that is stated: "wire_price.G3Si1"; the family's own
// name where none is.
func (s *Shop) oneOf(family string) string {
	for _, key := range s.keys() {
		if strings.HasPrefix(key, family+".") {
			return key
		}
	}
	return family
}

// Value returns the shop value of a key.
func (s *Shop) Value(key string) (Value, bool) {
	if v := s.find(key); v != nil {
		return *v, true
	}
	return Value{}, false
}

func (s *Shop) find(key string) *Value {
	for i := range s.Values {
		if s.Values[i].Key == key {
			return &s.Values[i]
		}
	}
	return nil
}
