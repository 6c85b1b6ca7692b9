package rates

import (
	"testing"

	"seamtally/tables"
)

func defaultShop(t testing.TB) Shop {
	t.Helper()
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	shop, err := Default(set)
	if err != nil {
		t.Fatal(err)
	}
	return shop
}

// TestDefaultShop compares the built-in values with those the contract states.
func TestDefaultShop(t *testing.T) {
	s := defaultShop(t)
	for key, want := range map[string]float64{
		"overweld_mm": 0.5, "convexity": 0.05, "cap_height_mm": 1.5, "root_height_mm": 1, "gap_mm": 0,
		"waste_pct": 3, "preflow_s": 0.3, "postflow_s": 1, "seam_starts_per_m": 2, "operating_factor": 0.30,
	} {
		if v, ok := s.Value(key); !ok || v.Num != want || v.From != BuiltIn || v.Basis == "" {
			t.Errorf("%s: got %+v, want %v", key, v, want)
		}
	}
	if s.SizeMeans != "leg" || s.MissingSize != "ask" || s.Choose != "list" || s.Currency != "EUR" {
		t.Errorf("words: %q %q %q %q", s.SizeMeans, s.MissingSize, s.Choose, s.Currency)
	}
	if s.OperatingFactor != 0.30 || s.SpatterMinM["short arc"] == 0 || s.SpatterMinM["short arc.C1"] == 0 {
		t.Errorf("fields are not filled: %+v", s)
	}
}

// TestEveryWireAndGasHasAPrice: what the tables know, a user may ask for.
func TestEveryWireAndGasHasAPrice(t *testing.T) {
	s := defaultShop(t)
	files, _ := tables.Open("")
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range set.Wires {
		if got, ok := s.Wire(w.Filler, w.Dia); !ok || got.PerKg <= 0 || got.SpoolKg <= 0 {
			t.Errorf("no price for %s", WireName(w.Filler, w.Dia))
		}
	}
	for _, g := range set.Gases {
		if got, ok := s.Gas(g.Gas); !ok || got.PerLitre() <= 0 {
			t.Errorf("no price for %s", g.Gas)
		}
	}
	metals := map[string]bool{}
	for _, w := range set.Wires {
		for _, have := range s.Wires {
			if have.Filler == w.Filler {
				metals[w.Metal] = true
			}
		}
	}
	for _, metal := range []string{"carbon steel", "stainless", "aluminium"} {
		if !metals[metal] {
			t.Errorf("the built-in stock has no wire for %s", metal)
		}
	}
	if len(s.Machines) == 0 || len(s.Gases) == 0 {
		t.Errorf("stock: machines %v gases %v", s.Machines, s.Gases)
	}
}

// TestBuiltInTextsAreCanonical: reading a built-in value again changes nothing.
func TestBuiltInTextsAreCanonical(t *testing.T) {
	s := defaultShop(t)
	before := append([]Value(nil), s.Values...)
	for _, v := range before {
		if problems := s.take(entry{key: v.Key, text: v.Text, unit: v.Unit, basis: v.Basis}); len(problems) > 0 {
			t.Errorf("%s: %+v", v.Key, problems)
		}
		if got, _ := s.Value(v.Key); got.Text != v.Text || got.Own() {
			t.Errorf("%s: %q became %q, own %v", v.Key, v.Text, got.Text, got.Own())
		}
	}
	if len(s.Values) != len(before) {
		t.Errorf("%d values became %d", len(before), len(s.Values))
	}
	for _, v := range before {
		if v.IsNum && (v.Low > v.Num || v.High < v.Num) && v.Low != v.High {
			t.Errorf("%s: %v lies outside its own spread %v to %v", v.Key, v.Num, v.Low, v.High)
		}
		if v.Basis != "common-practice" && v.Source == "" {
			t.Errorf("%s: basis %s without a source", v.Key, v.Basis)
		}
	}
}
