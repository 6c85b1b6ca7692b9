package samples

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/rates"
	"seamtally/tables"
	"seamtally/templates"
)

func allTables(t *testing.T) *tables.Set {
	t.Helper()
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func readSource(t *testing.T, name string, data []byte) *list.Source {
	t.Helper()
	src, problems, err := list.Read(name, data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	for _, p := range problems {
		t.Errorf("%s: row %d: %s: %s", name, p.Place.Row, p.Code, p.Text)
	}
	return src
}

// TestStarterListReadsBack: the starter list as written gives its example joints
// in their own units, and not a word of complaint.
func TestStarterListReadsBack(t *testing.T) {
	set := allTables(t)
	for _, us := range []bool{false, true} {
		data, err := templates.JointList(us, "2026-11-25")
		if err != nil {
			t.Fatal(err)
		}
		l := understand(t, set, "joints.xlsx", data)
		for _, p := range l.Problems {
			t.Errorf("us=%v: %s", us, p.Line())
		}
		for _, c := range l.Columns {
			if c.Key == "" {
				t.Errorf("us=%v: the column %q is not known", us, c.Header)
			}
		}
		var lengths, sizes []float64
		for _, p := range planned(t, set, l) {
			round := func(v float64) float64 { return math.Round(v*1e6) / 1e6 } // an inch fraction times 25.4 ends in a rounding
			lengths, sizes = append(lengths, round(float64(p.Joint.Length))), append(sizes, round(float64(p.Joint.Size.A)))
			if !p.Settings {
				t.Errorf("us=%v: %s: %s", us, p.Joint.Mark, p.NoSettings)
			}
		}
		wantLengths, wantSizes := []float64{160, 850, 150}, []float64{6, 4, 0}
		if us { // 6, 32 and 6 in; 1/4 and 3/16 in
			wantLengths, wantSizes = []float64{152.4, 812.8, 152.4}, []float64{6.35, 4.7625, 0}
		}
		if !slices.Equal(lengths, wantLengths) || !slices.Equal(sizes, wantSizes) {
			t.Errorf("us=%v: lengths %v and sizes %v, want %v and %v", us, lengths, sizes, wantLengths, wantSizes)
		}
	}
}

// TestStarterShopFileStatesNothing: the file as written reads without a problem,
// and every value stays the tool's own, so that an untouched file is never taken
// for a shop's statement.
func TestStarterShopFileStatesNothing(t *testing.T) {
	set := allTables(t)
	for _, us := range []bool{false, true} {
		data, err := templates.ShopFile(set, us)
		if err != nil {
			t.Fatal(err)
		}
		shop, err := rates.Default(set)
		if err != nil {
			t.Fatal(err)
		}
		before := len(shop.NotYours())
		for _, p := range shop.ReadFile(readSource(t, "shop.csv", data), "") {
			t.Errorf("us=%v: row %d: %s %s: %s", us, p.Place.Row, p.Level, p.Code, p.Text)
		}
		for _, v := range shop.Values {
			if v.Basis == rates.OwnBasis {
				t.Errorf("us=%v: %s is taken for the shop's own", us, v.Key)
			}
		}
		if after := len(shop.NotYours()); after != before {
			t.Errorf("us=%v: %d values are listed as not the shop's own, %d before reading", us, after, before)
		}
	}
}

// TestStarterShopFileHasEveryKey: nothing that a shop may state is left out.
func TestStarterShopFileHasEveryKey(t *testing.T) {
	set := allTables(t)
	data, err := templates.ShopFile(set, true)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range set.Shop {
		if !strings.Contains(string(data), "\n"+v.Key+",") {
			t.Errorf("%s is missing", v.Key)
		}
	}
	if !strings.Contains(string(data), "0.9") {
		t.Error("the inch sizes of wire are missing")
	}
}

// TestSampleShop: the invented shop is read whole, and beats the built-in values.
func TestSampleShop(t *testing.T) {
	set := allTables(t)
	shop, err := rates.Default(set)
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile("shop.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range shop.ReadFile(readSource(t, "shop.csv", data), "") {
		if p.Level != finding.Note {
			t.Errorf("row %d: %s: %s", p.Place.Row, p.Code, p.Text)
		}
	}
	if shop.LabourRate != 27.50 || shop.OperatingFactor != 0.26 || len(shop.Wires) != 8 {
		t.Errorf("labour rate %g, operating factor %g, %d wires; the file says 27.50, 0.26 and 8", shop.LabourRate, shop.OperatingFactor, len(shop.Wires))
	}
}
