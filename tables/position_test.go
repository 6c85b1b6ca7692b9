package tables

import "testing"

// The names are those of the American standard for welding positions: a digit for the
// position, F for fillets and G for grooves; a vertical weld needs its direction said.
func TestAWSName(t *testing.T) {
	files, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := Load(files)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ iso, fillet, groove string }{
		{"PA", "1F", "1G"}, {"PB", "2F", ""}, {"PC", "", "2G"}, {"PD", "4F", ""}, {"PE", "", "4G"},
		{"PF", "3F up", "3G up"}, {"PG", "3F down", "3G down"},
		{"PH", "5F up", "5G up"}, {"PJ", "5F down", "5G down"},
		{"H-L045", "6F up", "6G up"}, {"J-L045", "6F down", "6G down"},
		{"PK", "", ""}, {"", "", ""}, {"XX", "", ""},
	} {
		if got := set.AWSName(c.iso, false); got != c.fillet {
			t.Errorf("fillet in %q: got %q, want %q", c.iso, got, c.fillet)
		}
		if got := set.AWSName(c.iso, true); got != c.groove {
			t.Errorf("groove in %q: got %q, want %q", c.iso, got, c.groove)
		}
	}
}
