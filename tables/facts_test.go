package tables

import (
	"os"
	"strings"
	"testing"
)

func load(t *testing.T) *Set {
	t.Helper()
	files, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := Load(files)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func TestMaterialIsUnderstoodFromAPersonsWords(t *testing.T) {
	set := load(t)
	for words, grade := range map[string]string{
		"S355J2+N": "S355", "s235jr": "S235", "S355MC": "S315MC", "A36": "A36", "ASTM A 36": "A36",
		"304": "304", "AISI 304L": "304L", "1.4301": "304", "SS 316L": "316L", "EN AW-6082 T6": "6082",
		"AlMg3": "5754", "Нержавейка": "stainless", "сталь": "carbon steel", "mild steel": "carbon steel",
		"Stainless Steel": "stainless", "hot-dip galvanised": "galvanised", "DX51D+Z275": "DX51D",
		"Alu": "aluminium", "aluminum": "aluminium", "Edelstahl 1.4571": "316L", "S355 J2": "S355", "Ст3сп5": "S235",
		"S690QL": "S690", "7075-T6": "7075",
	} {
		got, ok := set.Material(words)
		if !ok || got.Grade != grade {
			t.Errorf("%q is taken as %q (%v), want %q", words, got.Grade, ok, grade)
		}
	}
	for _, words := range []string{"", "xyz", "13040", "wood", "3040 mm", "salt"} {
		if got, ok := set.Material(words); ok {
			t.Errorf("%q is taken as %q, want nothing", words, got.Grade)
		}
	}
}

func TestACoatingBesideTheGradeStays(t *testing.T) {
	set := load(t)
	for words, want := range map[string]string{"S235JR galvanised": "zinc", "S355 feuerverzinkt": "zinc", "galvanised": "zinc", "S235JR": "", "DX51D+Z275": "zinc"} {
		if got, ok := set.Material(words); !ok || got.Coated != want {
			t.Errorf("%q: coating %q (%v), want %q", words, got.Coated, ok, want)
		}
	}
	if got, _ := set.Material("S235JR galvanised"); got.Grade != "S235" {
		t.Errorf("the grade is taken as %q", got.Grade)
	}
}

func TestGasIsUnderstoodFromAPersonsWords(t *testing.T) {
	set := load(t)
	for words, want := range map[string]string{
		"M21": "M21", "82/18": "M21", "80/20": "M21", "Ar + 18 % CO2": "M21", "80Ar-20CO2": "M21", "CO2": "C1",
		"argon": "I1", "Ar": "I1", "98Ar-2O2": "M13", "ISO 14175 - M12": "M12", "75Ar-25CO2": "M21", "Ar 97.5 CO2 2.5": "M12", "92/8": "M20",
	} {
		if got, ok := set.FindGas(words); !ok || got.Gas != want {
			t.Errorf("%q is taken as %q (%v), want %q", words, got.Gas, ok, want)
		}
	}
	if got, ok := set.FindGas("nitrogen"); ok {
		t.Errorf("nitrogen is taken as %q", got.Gas)
	}
}

func TestWireIsUnderstoodFromAPersonsWords(t *testing.T) {
	set := load(t)
	for words, want := range map[string]struct {
		filler string
		count  int
	}{
		"G3Si1": {"G3Si1", 7}, "G3Si1 1.0": {"G3Si1", 1}, "ER70S-6 1,2 mm": {"G3Si1", 1}, "E71T-1": {"T 46 2 P", 5},
		"E71T-1M 1.2": {"T 46 2 P", 1}, "ER308L": {"G 19 9 L Si", 5}, "308LSi": {"G 19 9 L Si", 5}, "S Al 5356": {"S Al 5356", 5}, "ER5356 1.2": {"S Al 5356", 1},
	} {
		got := set.FindWires(words)
		if len(got) != want.count || want.count > 0 && got[0].Filler != want.filler {
			t.Errorf("%q finds %d wires %v, want %d of %q", words, len(got), got, want.count, want.filler)
		}
	}
	if got := set.FindWires("1.0"); len(got) == 0 {
		t.Error("a diameter alone finds no wire")
	}
}

func TestEveryWireHasItsMeltingEfficiencyAndDensity(t *testing.T) {
	set := load(t)
	for _, w := range set.Wires {
		if _, ok := set.Melting(w); !ok {
			t.Errorf("%s %.1f has no melting row", w.Filler, w.Dia)
		}
		if _, ok := set.Density(w.Metal, WeldMetal); !ok {
			t.Errorf("%s has no density of weld metal", w.Metal)
		}
		for _, g := range w.Gases() {
			gas, ok := set.Gas(g)
			if !ok {
				t.Errorf("%s names the gas %s, which is not in gases.csv", w.Filler, g)
			}
			if w.Process(gas) == "" {
				t.Errorf("%s %.1f has no process number under %s", w.Filler, w.Dia, g)
			}
			if _, ok := set.HeatK(w.Process(gas)); !ok {
				t.Errorf("process %s has no k", w.Process(gas))
			}
		}
	}
}

// The traveller prints its own wording of each caution, so that it can be
// translated: every key of the table needs one.
func TestEveryCautionHasItsWording(t *testing.T) {
	text, err := os.ReadFile("../templates/wording_en.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range load(t).Cautions {
		if !strings.Contains(string(text), "\ncaution."+c.Key+",") {
			t.Errorf("caution %q has no wording", c.Key)
		}
	}
}
