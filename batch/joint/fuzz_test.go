package joint

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

func styleOf(mark rune) measure.Style { return measure.Style{Mark: mark} }

// Whatever stands in the cells, every row that is not blank is a joint or has a fate.
func TestNoRowIsLost(t *testing.T) {
	set := loadTables(t)
	cells := []string{"", "W1", "w1", "007", "500", "z6", "a4", "6/8", "Total", "Subtotal A", "Mark", "Length", "Leg", "mm", "-", "fillet", "single V", "2x300", "1/4", "PB", "3F", "5x50(100)", "Signature", "Page 1 of 2", "Frame A", "#REF!", "№", "1-Apr", "−5", "∑"}
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		b.WriteString("Mark;Length;Leg;t1;Kind;Position;Stitch;Qty\n")
		for range rapid.IntRange(1, 12).Draw(t, "rows") {
			row := rapid.SliceOfN(rapid.SampledFrom(cells), 8, 8).Draw(t, "row")
			b.WriteString(strings.Join(row, ";") + "\n")
		}
		l, err := understandText(set, b.String(), Options{})
		if err != nil {
			return
		}
		if len(l.Joints)+len(l.Others) != l.RowsRead {
			t.Fatalf("%d joints + %d others are not %d rows\n%s", len(l.Joints), len(l.Others), l.RowsRead, b.String())
		}
		for _, j := range l.Joints {
			if j.Mark == "" || j.Qty < 1 || j.Length <= 0 && !j.AllRound || j.Position == "" || j.Sides < 1 {
				t.Fatalf("an unfinished joint: %+v\n%s", j, b.String())
			}
		}
	})
}

func FuzzSize(f *testing.F) {
	for _, s := range []string{"z6", "a4", "6x8", "1/4\"", "(8)", "PJP 8", "△6", "6/8", "КK6", "zz", "x", "ax"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		size, _, bad := sizeOf(s, "either", measure.None, measure.Style{})
		if bad == nil && (math.IsNaN(float64(size.A)) || math.IsInf(float64(size.A), 0)) {
			t.Errorf("%q gave %+v", s, size)
		}
		_, _ = lengthOf(s, measure.None, measure.Style{})
	})
}

func FuzzHeader(f *testing.F) {
	words := newSpellings(loadTables(f))
	for _, s := range []string{"Mark;Length (mm);Leg;t", "№ шва;Длина;Катет;Толщина", "Länge [mm]", "a,b", "Weld size;;(mm)"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		src, _, err := list.Read("list.csv", []byte(s+"\nW1;500;5;6\n"))
		if err != nil {
			return
		}
		l, err := words.understand(src, Options{})
		if err == nil && len(l.Joints)+len(l.Others) != l.RowsRead {
			t.Errorf("%q: rows do not add up", s)
		}
	})
}

// A kind that is read says one thing of its sides, and what is denied behind it is not
// read as said.
func FuzzKind(f *testing.F) {
	words := newSpellings(loadTables(f))
	for _, s := range []string{"fillet", "fillet 2 sides", "Kehlnaht umlaufend", "V (both sides)", "double V", "all round fillet (2S)", "угловой шов с 2-х сторон", "fillet (", "T ○", "cordon d'angle des 2 côtés"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		said, ok := words.kindSays(s)
		if ok != (said.kind != NoKind) || said.sides < 0 || said.sides > 2 || !ok && (said.sides != 0 || said.round) {
			t.Errorf("%q says %+v, %v", s, said, ok)
		}
		for _, denied := range []string{" not all round", " (not both sides)", " nicht umlaufend", " no 2 sides"} {
			if said, ok := words.kindSays(s + denied); ok {
				t.Errorf("%q says %+v", s+denied, said)
			}
		}
	})
}

func TestFoldIsTheSameForPlainText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOfN(rapid.RuneFrom(nil, &unicode.RangeTable{R16: []unicode.Range16{{Lo: 1, Hi: 126, Stride: 1}}}), 0, 20, -1).Draw(t, "text")
		long := fold(s + " é")
		if got := strings.TrimSpace(strings.TrimSuffix(long, "e")); got != strings.TrimSpace(fold(s)) {
			t.Fatalf("%q folds to %q alone and to %q beside an accent", s, fold(s), long)
		}
	})
}
