package rates

import (
	"strings"
	"testing"

	"seamtally/tables"
)

// A certificate's carbon equivalent is stated under the words that the list uses
// for the steel; what is no steel of the tables is refused with its name.
func TestCertificatesAndPreheatMethod(t *testing.T) {
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	s, err := Default(set)
	if err != nil {
		t.Fatal(err)
	}
	if s.PreheatMethod != "codes" || len(s.CET) != 0 || len(s.CEV) != 0 || len(s.Hydrogen) != 0 {
		t.Errorf("a shop that states nothing: %q %v %v %v", s.PreheatMethod, s.CET, s.CEV, s.Hydrogen)
	}
	if p := s.Set([]string{"cet.S355J2+N=0,33", "cev.S235=0.31", "hydrogen.T 46 2 P=5", "preheat_method=Combined"}); len(p) > 0 {
		t.Fatalf("%+v", p)
	}
	if s.CET["S355J2+N"] != 0.33 || s.CEV["S235"] != 0.31 || s.Hydrogen["T 46 2 P"] != 5 || s.PreheatMethod != "combined" {
		t.Errorf("%v %v %v %q", s.CET, s.CEV, s.Hydrogen, s.PreheatMethod)
	}
	for text, want := range map[string]string{
		"cet.mahogany=0.3": "steel", "cet.304L=0.1": "steel", "cet.S355=33": "cet.S355", "preheat_method=guess": "preheat_method", "hydrogen.T 46 2 P=200": "hydrogen.T 46 2 P",
	} {
		p := s.Set([]string{text})
		if len(p) != 1 || !strings.Contains(p[0].Text, want) || p[0].Hint == "" {
			t.Errorf("%s: %+v", text, p)
		}
	}
}
