package tables

import "testing"

// The classes: figures spools-and-fillers.
func TestWiresAreUnderstoodAsPeopleWriteThem(t *testing.T) {
	set := load(t)
	for words, want := range map[string]struct {
		filler string
		count  int
	}{
		"E71T-11": {"T 42 Z W N", 3}, "e71t11 0.9": {"T 42 Z W N", 1}, "71T-11": {"T 42 Z W N", 3}, "gasless 0.8": {"T 42 Z W N", 1},
		"71T-1": {"T 46 2 P", 5}, "E71T-1C": {"T 46 2 P", 5}, "E71T-8": {"T 42 3 Y N", 2}, "71T-GS": {"T 3T Z V N", 2},
		"metal cored 1.2": {"T 46 4 M", 1}, "E70C-6M": {"T 46 4 M", 4}, "Metal-Cored": {"T 46 4 M", 4},
		"T 46 4 M M 1 H5": {"T 46 4 M", 4}, "E71T-5 1.6": {"T 42 4 B", 1}, "E70T-5": {"T 42 4 B", 3},
		"flux core 1.2": {"T 46 2 P", 1}, "flux core 0.9": {"T 42 Z W N", 1}, "E71T-1 0.9": {"T 46 2 P", 1}, "flux core 1.0": {"T 46 2 P", 1}, "Fülldraht 1,2": {"T 46 2 P", 1},
		"CuSi3Mn1": {"S Cu 6560", 4}, "ERCuSi-A 1.0": {"S Cu 6560", 1}, "silicon bronze 0.8": {"S Cu 6560", 1},
		"308L": {"G 19 9 L Si", 5}, "316LSi 1.0": {"G 19 12 3 L Si", 1}, "309L": {"G 23 12 L Si", 5},
		"SG2 0.8": {"G3Si1", 1}, "70S-6": {"G3Si1", 7}, "5356 1.2": {"S Al 5356", 1}, "4043": {"S Al 4043", 5},
		"E71T-99": {"", 0}, "flux core 2.4": {"", 0}, "unobtainium": {"", 0},
	} {
		got := set.FindWires(words)
		if len(got) != want.count || want.count > 0 && got[0].Filler != want.filler {
			t.Errorf("%q finds %d wires, first %v; want %d of %q", words, len(got), first(got), want.count, want.filler)
		}
	}
}

func first(w []Wire) string {
	if len(w) == 0 {
		return "nothing"
	}
	return w[0].Filler
}

// Every filler class that a word names is in the table of wires.
func TestWireWordsNameWires(t *testing.T) {
	set := load(t)
	for _, w := range set.WireWords {
		if len(set.wiresOfWord(squeeze(firstWord(w.Words)), 0)) == 0 {
			t.Errorf("%q names no wire", w.Words)
		}
	}
	for _, words := range []string{"none", "No gas", "gasless"} {
		if g, ok := set.FindGas(words); !ok || !g.Gasless() {
			t.Errorf("%q is taken as %q", words, g.Gas)
		}
	}
}

func firstWord(list string) string {
	for i, r := range list {
		if r == ';' {
			return list[:i]
		}
	}
	return list
}

// Linear mass of metal-cored wire against what a data sheet prints: 7.5 g/m at
// 1.1 mm (0.045 in), 13.7 g/m at 1.6 mm; silicon bronze: 2040 in/lb at 0.045 in
// (MIG Welding Handbook ch.7 p.10), that is 8.77 g/m.
func TestLinearMassOfTheNewWires(t *testing.T) {
	set := load(t)
	for _, k := range []struct {
		filler          string
		dia, printedDia float64
		printed, within float64
	}{{"T 46 4 M", 1.2, 1.143, 7.5, 0.01}, {"T 46 4 M", 1.6, 1.6, 13.7, 0.001}, {"S Cu 6560", 1.2, 1.143, 8.755, 0.005}, {"S Cu 6560", 0.8, 0.762, 3.894, 0.005}} {
		for _, w := range set.Wires {
			if w.Filler != k.filler || float64(w.Dia) != k.dia {
				continue
			}
			got := float64(w.LinearMass) * k.printedDia * k.printedDia / k.dia / k.dia
			if got < k.printed*(1-k.within) || got > k.printed*(1+k.within) {
				t.Errorf("%s %.1f: %.3f g/m at %.3f mm, printed %.3f", k.filler, k.dia, got, k.printedDia, k.printed)
			}
		}
	}
}
