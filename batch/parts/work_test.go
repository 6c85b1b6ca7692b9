package parts

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// near compares to a relative half per mille, or absolutely below one.
func near(a, b float64) bool { return math.Abs(a-b) <= 5e-4*math.Max(1, math.Abs(b)) }

// Masses per metre as printed in the tables of the standards (figures sections-*):
// IPE 200 22.4 kg/m, SHS 60x60x4 6.71 kg/m (EN 10219-2), L 50x50x5 3.77 kg/m; a
// plate of 10 mm weighs 78.5 kg/m². Within 0.5 %.
func TestMassAndPaint(t *testing.T) {
	for _, c := range []struct {
		row         string
		mass, paint float64
	}{
		{"A,IPE 200,S235,2500,4", 22.4 * 2.5 * 4, 0.768 * 2.5 * 4},
		{"A,SHS 60x60x4,S235,1200,3", 6.71 * 1.2 * 3, 0.226 * 1.2 * 3},
		{"A,L 50x50x5,S235,1000,1", 3.77, 0.194},
		{"A,PL 10x300,S235,500,6", 78.5 * 0.3 * 0.5 * 6, (2*0.3*0.5 + 2*0.01*0.8) * 6},
		{"A,FL 100x10,S235,1000,1", 7.85, 0.22},
		{"A,FL 100x10,304L,1000,1", 7.9, 0.22},
		{"A,FL 100x10,6082,1000,1", 2.7, 0.22},
	} {
		b, _, _ := worked(t, "part,section,material,length,qty\n"+c.row+"\n")
		r := &b.Results[0]
		if math.Abs(float64(r.Mass)/c.mass-1) > 0.005 || math.Abs(r.Paint/c.paint-1) > 0.005 {
			t.Errorf("%s: %v kg, %v m²; printed %v, %v", c.row, r.Mass, r.Paint, c.mass, c.paint)
		}
		if b.Totals.Mass != r.Mass || b.Totals.Paint != r.Paint {
			t.Errorf("%s: totals %+v", c.row, b.Totals)
		}
	}
}

// A plate without a width weighs nobody knows what: empty, and told.
func TestUnknownStaysUnknown(t *testing.T) {
	b, _, _ := worked(t, "part,section,material,length,qty\nA,PL 10,S235,500,2\nB,FL 60x8,unobtainium,500,2\n")
	if r := b.Results[0]; r.Mass != 0 || r.Paint != 0 || r.KgM != 0 {
		t.Errorf("%+v", r)
	}
	if b.Groups[0].Cost != 0 || len(b.Totals.Unpriced) != 1 {
		t.Errorf("%+v %+v", b.Groups, b.Totals)
	}
}

const frame = `part,section,material,length,qty,assembly
C1,SHS 100x100x5,S355,2400,4,Frame
B1,IPE 200,S355,3000,2,Frame
P1,PL 10x200,S355,200,4,Frame
P2,PL 12x150,S355,300,2,Base
D1,CHS 60.3x4,S355,1500,2,Base
D2,CHS 114.3x5,S355,2000,1,Base
`

// A seam between two parts counts on both, and once in the totals.
func TestSeamsOnParts(t *testing.T) {
	b, plans, _ := worked(t, frame, fillet("W1", "P1", "C1", 4, 800), fillet("W2", "P2", "B1", 2, 300))
	for mark, want := range map[string]float64{"P1": 3.2, "C1": 3.2, "P2": 0.6, "B1": 0.6, "D1": 0} {
		if r := result(t, b, mark); !near(float64(r.Seam), want) {
			t.Errorf("%s has %v m of seam, want %v", mark, r.Seam, want)
		}
	}
	if got, want := b.Totals.WeldMetal, plans[0].WeldMetal+plans[1].WeldMetal; !near(float64(got), float64(want)) {
		t.Errorf("weld metal %v, want %v", got, want)
	}
	if got := result(t, b, "P1").WeldMetal; !near(float64(got), float64(plans[0].WeldMetal)) {
		t.Errorf("weld metal on P1 %v, want %v", got, plans[0].WeldMetal)
	}
	mass := float64(b.Totals.Mass)
	if want := 1000 * float64(b.Totals.WeldMetal) / mass; !near(b.Totals.WeldPerTonne, want) {
		t.Errorf("%v kg per tonne, want %v", b.Totals.WeldPerTonne, want)
	}
}

func result(t *testing.T, b *Book, mark string) *Result {
	t.Helper()
	for i := range b.List.Parts {
		if b.List.Parts[i].Mark == mark {
			return &b.Results[i]
		}
	}
	t.Fatalf("no part %s", mark)
	return nil
}

// By hand: a V of 60° is 30° on each edge, on both parts; a bevel of 45° is on the
// first alone; from both sides it is one edge with two faces.
func TestEdges(t *testing.T) {
	for _, c := range []struct {
		kind          joint.Kind
		angle         units.Degree
		first, second float64 // degrees on each part; 0: no edge
		both          bool
	}{
		{joint.SingleV, 60, 30, 30, false},
		{joint.DoubleV, 60, 30, 30, true},
		{joint.SingleBevel, 45, 45, 0, false},
		{joint.DoubleBevel, 50, 50, 0, true},
		{joint.SquareButt, 0, 0, 0, false},
		{joint.Fillet, 0, 0, 0, false},
	} {
		j := butt(c.kind, "P1", "P2", 4, 200)
		if c.kind == joint.Fillet {
			j = fillet("B", "P1", "P2", 4, 200)
		}
		j.Angle, j.RootFace, j.RootFaceGiven = c.angle, 2, c.angle > 0
		b, _, _ := worked(t, frame, j)
		for mark, want := range map[string]float64{"P1": c.first, "P2": c.second} {
			r := result(t, b, mark)
			if want == 0 {
				if len(r.Edges) != 0 || r.Bevel != 0 {
					t.Errorf("%s: %s has edges %+v", c.kind, mark, r.Edges)
				}
				continue
			}
			if len(r.Edges) != 1 || float64(r.Edges[0].Angle) != want || r.Edges[0].Both != c.both || r.Edges[0].RootFace != 2 || !near(float64(r.Bevel), 0.8) {
				t.Errorf("%s: %s has %v m of edges %+v, want 0.8 m of %v°", c.kind, mark, r.Bevel, r.Edges, want)
			}
		}
	}
}

// A splice of a part with its own kind has a bevel on either side of the seam, and
// the seam once.
func TestSpliceOfOnePart(t *testing.T) {
	j := butt(joint.SingleV, "P1", "P1", 2, 200)
	j.Angle = 60
	b, _, _ := worked(t, frame, j)
	if r := result(t, b, "P1"); len(r.Edges) != 2 || !near(float64(r.Bevel), 0.8) || !near(float64(r.Seam), 0.4) {
		t.Errorf("%v m of seam, %v m of bevel, %+v", r.Seam, r.Bevel, r.Edges)
	}
}

func TestEnds(t *testing.T) {
	round := fillet("S", "D1", "D2", 4, 0)
	round.AllRound, round.Angle = true, 60
	flat := fillet("F", "D1", "P2", 2, 0)
	flat.AllRound, flat.Angle = true, 45
	box := fillet("M", "C1", "P2", 4, 420)
	box.AllRound, box.Angle = true, 120
	square := fillet("Q", "D1", "P2", 2, 0)
	square.AllRound = true
	b, _, _ := worked(t, frame, round, flat, box, square)
	ends := result(t, b, "D1").Ends
	if len(ends) != 2 || !ends[0].Copes || ends[0].On != 114.3 || ends[0].Angle != 60 || ends[0].Count != 4 || ends[0].Wall != 4 {
		t.Errorf("D1: %+v", ends)
	} else if ends[1].Copes || ends[1].Angle != 45 || ends[1].Count != 2 {
		t.Errorf("D1: %+v", ends)
	}
	if e := result(t, b, "C1").Ends; len(e) != 1 || e[0].Copes || e[0].Angle != 60 {
		t.Errorf("C1: %+v", e)
	}
	if e := append(result(t, b, "D2").Ends, result(t, b, "P2").Ends...); len(e) != 0 {
		t.Errorf("what they stand on is cut: %+v", e)
	}
}

// Shrinkage by hand. Across: a fillet of leg 5 on a plate 12 mm thick draws it by
// 1.02 x 5/12 / 2 = 0.21 mm (SHRINK-2, one of two fillets) to 0.8 mm (SHRINK-6), where
// it crosses the whole plate; 100 mm of a plate 150 mm wide by two thirds of that.
// Along: 3 m of it on an IPE 200 of 2850 mm², 12.5 mm² with its allowances 16.4 and
// a gap of 0: between 25 x A/Ap and 1/3 mm a metre.
func TestShrink(t *testing.T) {
	across := fillet("W", "P1", "P2", 2, 100)
	b, plans, _ := worked(t, frame, across)
	s := result(t, b, "P2").Shrink
	if s == nil || !near(float64(s[1]), 0.53) || s[0] <= 0 || float64(s[0]) > 0.22 {
		t.Errorf("P2 %v, plan %v", s, plans[0].Shrink)
	}
	if s := result(t, b, "P1").Shrink; s != nil && float64(s[1]) > 0.1 {
		t.Errorf("a part that stands on another is shortened by %v", s)
	}
	along := fillet("W", "P1", "B1", 2, 3000)
	b, plans, _ = worked(t, frame, along)
	byArea := 25 * float64(plans[0].Area) / 2850 * 3
	lo, hi := math.Min(byArea, 1), math.Max(byArea, 1)
	if s := result(t, b, "B1").Shrink; s == nil || math.Abs(float64(s[0])-lo) > 0.02 || math.Abs(float64(s[1])-hi) > 0.02 {
		t.Errorf("B1 %v, want %v to %v", s, lo, hi)
	}
	if result(t, b, "B1").ShrinkWords == "" || result(t, b, "C1").Shrink != nil {
		t.Error("the formula is missing, or a part without seams is shortened")
	}
}

// TestShrinkOfStiffeners: a fillet on the web of a long beam crosses a third of its
// section and draws it by no more than that share; a seam all round a foot runs along
// and across; ten of them add up.
func TestShrinkOfStiffeners(t *testing.T) {
	const cut = "part,section,material,length,qty\nB,IPE 300,S235,11600,1\nS,FL 70x8,S235,250,10\nT,SHS 60x60x4,S235,500,10\n"
	across := fillet("W", "S", "B", 10, 250)
	across.Sides = 2
	b, plans, _ := worked(t, cut, across)
	s, web := result(t, b, "B").Shrink, 250*float64(plans[0].Prep.T2)/5381
	if s == nil || math.Abs(float64(s[1])-10*1.6*web) > 0.02 || web > 0.55 {
		t.Errorf("ten stiffeners: %v, want at most %.2f", s, 10*1.6*web)
	}
	foot := fillet("W", "T", "B", 10, 0)
	foot.AllRound = true
	b, plans, _ = worked(t, cut, foot)
	l, area := float64(plans[0].Joint.Length), float64(plans[0].Area)
	most := l/2000*math.Max(1.0/3, 25*area/5381) + 2*0.8*l/4*float64(plans[0].Prep.T2)/5381
	if s := result(t, b, "B").Shrink; s == nil || math.Abs(float64(s[1])-10*most) > 0.02 {
		t.Errorf("ten feet: %v, want at most %.2f", s, 10*most)
	}
}

func TestStrip(t *testing.T) {
	text := "part,section,material,length,qty\nA,FL 60x5,galvanised,500,1\nB,FL 60x5,S235,500,1\n"
	j := fillet("W", "A", "B", 1, 60)
	j.Material = ""
	b, _, _ := worked(t, text, j)
	if got := result(t, b, "A").Strip; got != "zinc off, 100 mm each side of the seam" {
		t.Errorf("A: %q", got)
	}
	if got := result(t, b, "B").Strip; got != "" {
		t.Errorf("B: %q", got)
	}
}

func TestEarliestAndAssemblies(t *testing.T) {
	first, second := fillet("W1", "P2", "C1", 2, 100), fillet("W2", "P1", "C1", 4, 100)
	first.Assembly, second.Assembly = "Base", "frame"
	b, plans, _ := worked(t, frame, first, second)
	if got := result(t, b, "C1").Earliest; got != "Base" {
		t.Errorf("C1 is needed first in %q", got)
	}
	if len(b.Assemblies) != 2 || b.Assemblies[0].Name != "Frame" || !near(float64(b.Assemblies[0].WeldMetal), float64(plans[1].WeldMetal)) {
		t.Errorf("%+v", b.Assemblies)
	}
	var mass units.Kg
	for _, a := range b.Assemblies {
		mass += a.Mass
		if want := 1000 * float64(a.WeldMetal) / float64(a.Mass); !near(a.PerTonne, want) {
			t.Errorf("%s: %v kg per tonne, want %v", a.Name, a.PerTonne, want)
		}
	}
	if !near(float64(mass), float64(b.Totals.Mass)) {
		t.Errorf("assemblies weigh %v, all %v", mass, b.Totals.Mass)
	}
}

// Two rows of one mark share what stands on it by their pieces.
func TestRowsOfOneMarkShare(t *testing.T) {
	text := "part,section,material,length,qty\nA,FL 60x5,S235,500,3\nB,FL 80x8,S235,500,4\nA,FL 60x5,S235,500,1\n"
	b, _, _ := worked(t, text, fillet("W", "A", "B", 4, 100))
	if b.Results[0].Seam != 0.3 || b.Results[2].Seam != 0.1 || b.Results[1].Seam != 0.4 {
		t.Errorf("%v %v %v", b.Results[0].Seam, b.Results[2].Seam, b.Results[1].Seam)
	}
}

// Without joints nothing is said about joints.
func TestPartsAlone(t *testing.T) {
	b, _, problems := worked(t, frame)
	for _, p := range problems {
		t.Errorf("%s", p.Line())
	}
	if b.Totals.WeldPerTonne != 0 || b.Totals.Pieces != 15 || b.Totals.Cost <= 0 {
		t.Errorf("%+v", b.Totals)
	}
}

// Twice the quantity is twice the mass and the surface; in inches it is the same
// structure.
func TestMassProperties(t *testing.T) {
	sections := []string{"IPE 200", "SHS 60x60x4", "L 50x50x5", "PL 10x200", "FL 80x8", "CHS 48.3x3.2", "UPN 100"}
	rapid.Check(t, func(t *rapid.T) {
		text, double, inch := "part,section,material,length,qty\n", "part,section,material,length,qty\n", "part,section,material,length,qty\n"
		for i := range rapid.IntRange(1, 6).Draw(t, "rows") {
			s := rapid.SampledFrom(sections).Draw(t, "section")
			l, n := float64(rapid.IntRange(120, 59000).Draw(t, "length"))/10, rapid.IntRange(1, 40).Draw(t, "qty")
			row := fmt.Sprintf("P%d,%s,S235,", i, s)
			text += fmt.Sprintf("%s%.1f mm,%d\n", row, l, n)
			double += fmt.Sprintf("%s%.1f mm,%d\n", row, l, 2*n)
			inch += fmt.Sprintf("%s%.6f in,%d\n", row, l/25.4, n)
		}
		a, _, _ := worked2(t, text)
		d, _, _ := worked2(t, double)
		in, _, _ := worked2(t, inch)
		rows := float64(len(a.Results))
		if math.Abs(float64(d.Totals.Mass-2*a.Totals.Mass)) > 0.002*rows || math.Abs(d.Totals.Paint-2*a.Totals.Paint) > 2e-4*rows {
			t.Fatalf("twice the pieces: %v against %v kg", d.Totals.Mass, a.Totals.Mass)
		}
		if math.Abs(float64(in.Totals.Mass-a.Totals.Mass)) > 0.002*rows {
			t.Fatalf("in inches: %v against %v kg", in.Totals.Mass, a.Totals.Mass)
		}
		nothingLost(t, a)
	})
}
