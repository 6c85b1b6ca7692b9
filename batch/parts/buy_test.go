package parts

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/list"
)

// worked2 is worked for property tests, without joints.
func worked2(t *rapid.T, text string) (*Book, *List, int) {
	src, _, err := list.Read("cut.csv", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	set, shop := builtIn()
	l, err := NewReader(set).Understand(src, Options{})
	if err != nil {
		t.Fatal(err)
	}
	b, problems := Work(l, nil, set, shop)
	return b, l, len(problems)
}

type fataler interface{ Fatalf(string, ...any) }

// nothingLost checks that every piece of the list stands in exactly one bar, a
// plate, or among the pieces that no bar holds, and that bars hold what they can.
func nothingLost(t fataler, b *Book) {
	cut := make([]int, len(b.List.Parts))
	for at, bar := range b.Bars {
		g := &b.Groups[bar.Group]
		used := g.EndLoss - g.Kerf
		sum := bar.Waste
		for _, piece := range bar.Pieces {
			p := &b.List.Parts[piece.Part]
			if p.Length != piece.Length || sectionName(&p.Section) != g.Section {
				t.Fatalf("bar %d of %s holds a piece of %s, %v mm", at, g.Section, p.Section.Designation, piece.Length)
			}
			cut[piece.Part]++
			used += piece.Length + g.Kerf
			sum += piece.Length
		}
		if used > bar.Stock+0.01 {
			t.Fatalf("bar %d is %v mm long and %v are cut from it", at, bar.Stock, used)
		}
		if math.Abs(float64(sum-bar.Stock)) > 0.01 {
			t.Fatalf("bar %d: pieces and waste make %v of %v", at, sum, bar.Stock)
		}
	}
	for _, g := range b.Groups {
		for _, i := range g.TooLong {
			cut[i] += b.List.Parts[i].Qty
		}
		if g.Bars < g.LowerBound || g.Bought < g.LeastBought-0.01 {
			t.Fatalf("%s: %d bars, %d proven least", g.Section, g.Bars, g.LowerBound)
		}
	}
	for _, pl := range b.Plates {
		for _, i := range pl.Parts {
			cut[i] += b.List.Parts[i].Qty
		}
	}
	for i, n := range cut {
		if n != b.List.Parts[i].Qty {
			t.Fatalf("%s is in the list %d times and cut %d times", b.List.Parts[i].Name(), b.List.Parts[i].Qty, n)
		}
	}
}

// By hand: SHS 60x60x4 in bars of 6 m with 20 mm lost and 2.5 mm a cut. Pieces of
// 2000: 2 x 2000 + 2.5 and 1 x 1950 = 5952.5 of 5980, so 3 x 1950 or 2 + 1; of 4
// pieces of 2000 and 2 of 1950 two bars hold all. 2 x 6 m x 6.71 kg/m at 1.30.
func TestBars(t *testing.T) {
	b, _, _ := worked(t, "part,section,material,length,qty\nA,SHS 60x60x4,S235,2000,4\nB,SHS 60 x 60 x 4,S235,1950,2\n")
	g := &b.Groups[0]
	if len(b.Groups) != 1 || g.Bars != 2 || g.LowerBound != 2 || g.Bought != 12000 || g.Waste != 100 {
		t.Fatalf("%+v", g)
	}
	if got, want := float64(g.Cost), 2*6*6.71*1.3; math.Abs(got/want-1) > 0.005 {
		t.Errorf("%v money, by hand %v", got, want)
	}
	if !reflect.DeepEqual(b.Results[0].Bars, []int{0, 1}) {
		t.Errorf("A is in the bars %v", b.Results[0].Bars)
	}
	nothingLost(t, b)
}

// Plates by hand: 4 of 200x200 and 2 of 300x100, 10 mm: 0.22 m², 17.27 kg, with 20 %
// waste 20.724 kg, at 1.30 26.94.
func TestPlates(t *testing.T) {
	b, _, _ := worked(t, "part,section,material,length,qty\nA,PL 10x200,S235,200,4\nB,PL 10x100,S235,300,2\nC,PL 10x100,304L,300,2\n")
	if len(b.Plates) != 2 || len(b.Bars) != 0 {
		t.Fatalf("%+v", b.Plates)
	}
	pl := &b.Plates[0]
	if !near(pl.Area, 0.22) || !near(float64(pl.Mass), 17.27) || !near(float64(pl.BoughtKg), 20.724) || !near(float64(pl.Cost), 26.9412) {
		t.Errorf("%+v", pl)
	}
	if !near(float64(b.Totals.Cost), float64(b.Plates[0].Cost+b.Plates[1].Cost)) {
		t.Errorf("%+v", b.Totals)
	}
	nothingLost(t, b)
}

// Hot finished and cold formed, and two grades, are bought apart.
func TestGroupsApart(t *testing.T) {
	b, _, _ := worked(t, "part,section,material,length,qty\nA,SHS 60x60x4 HF,S355,2000,1\nB,SHS 60x60x4 CF,S355,2000,1\nC,SHS 60x60x4 CF,S235,2000,1\nD,SHS 60x60x4 CF,s355,1000,1\n")
	if len(b.Groups) != 3 {
		t.Fatalf("%+v", b.Groups)
	}
	nothingLost(t, b)
}

// More pieces of one section than are planned at once are lots whose bars add up;
// the bound holds for all of them.
func TestManyPiecesAreLots(t *testing.T) {
	b, _, _ := worked(t, "part,section,material,length,qty\nA,SHS 60x60x4,S235,1187,20000\nB,SHS 60x60x4,S235,823,5003\n")
	g := &b.Groups[0]
	nothingLost(t, b)
	if over := float64(g.Bars)/float64(g.LowerBound) - 1; over > 0.02 {
		t.Errorf("%d bars, proven least %d", g.Bars, g.LowerBound)
	}
}

func TestPieceTooLong(t *testing.T) {
	b, _, problems := worked(t, "part,section,material,length,qty\nA,SHS 60x60x4,S235,7000,2\nB,SHS 60x60x4,S235,5980,1\n")
	if g := &b.Groups[0]; !reflect.DeepEqual(g.TooLong, []int{0}) || g.Bars != 1 {
		t.Fatalf("%+v", g)
	}
	if len(problems) != 1 || problems[0].Code != "part-too-long" || problems[0].Place.Row != 2 || problems[0].Place.Col != 4 {
		t.Errorf("%+v", problems)
	}
	if !near(float64(b.Results[0].Mass), 6.7119*14) {
		t.Errorf("its mass counts: %v", b.Results[0].Mass)
	}
}

// Ten seconds would be long for 5,000 rows; it takes one or two.
func BenchmarkWork5000(bench *testing.B) {
	set, shop := world(bench)
	text := "part,section,material,length,qty\n"
	for i := range 5000 {
		text += "P" + exact(float64(i)) + "," + []string{"IPE 200", "SHS 60x60x4", "L 50x50x5", "PL 10x200", "FL 80x8"}[i%5] + ",S235," + exact(float64(200+(i*7919)%5000)) + "," + exact(float64(1+i%3)) + "\n"
	}
	for bench.Loop() {
		l := understood(bench, set, text, Options{})
		b, _ := Work(l, nil, set, shop)
		if len(b.Results) != 5000 {
			bench.Fatal(len(b.Results))
		}
	}
}
