package rates

import (
	"slices"
	"strings"
	"testing"

	"seamtally/tables"
)

// A row of the shop's own table that lacks its name or value is named by its number, and
// a name that another table lacks sends the reader to that table.
func TestFaultsOfTheShopTable(t *testing.T) {
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	for want, spoil := range map[string]func(*tables.Set){
		"row 7: neither a name nor a value":            func(s *tables.Set) { s.Shop[5].Key, s.Shop[5].Value = "", "" },
		"row 7: the value \"9\" stands without a name": func(s *tables.Set) { s.Shop[5].Key, s.Shop[5].Value = "", "9" },
		"if gases.csv is a table of your own, correct the name there": func(s *tables.Set) {
			s.Gases = slices.DeleteFunc(s.Gases, func(g tables.Gas) bool { return g.Gas == "M21" })
		},
	} {
		set, err := tables.Load(files)
		if err != nil {
			t.Fatal(err)
		}
		spoil(set)
		if _, err := Default(set); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

// A unit that does not fit says what to do with its cell, and the label's own unit fits.
func TestHintOfAUnit(t *testing.T) {
	for key, want := range map[string]string{"site_factor": "clear the unit cell", "rework_pct": "or write % in it", "hydrogen.G3Si1": "or write ml/100 g in it"} {
		s := defaultShop(t)
		if p := s.take(entry{key: key, text: "5", unit: "kg"}); len(p) != 1 || !strings.Contains(p[0].Hint, want) {
			t.Errorf("%s: %v", key, p)
		}
	}
	s := defaultShop(t)
	for _, unit := range []string{"ml/100 g", "ml/100g", ""} {
		if p := s.take(entry{key: "hydrogen.G3Si1", text: "5", unit: unit}); len(p) > 0 {
			t.Errorf("%q: %v", unit, p)
		}
	}
}
