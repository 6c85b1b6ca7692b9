package cutting

import (
	"testing"

	"seamtally/batch/parts"
	"seamtally/batch/units"
)

// TestEnds deals the ends of a part out to its pieces; where the numbers do not say
// which piece has them, the drawing must.
func TestEnds(t *testing.T) {
	saddle := func(n int) parts.End { return parts.End{Copes: true, On: 114.3, Angle: 60, Count: n} }
	mitre := func(n int) parts.End { return parts.End{Angle: 45, Count: n} }
	for name, c := range map[string]struct {
		qty  int
		ends []parts.End
		want [2]EndKind
	}{
		"none":                   {4, nil, [2]EndKind{Square, Square}},
		"one end of each":        {4, []parts.End{saddle(4)}, [2]EndKind{Saddle, Square}},
		"both ends of each":      {4, []parts.End{saddle(8)}, [2]EndKind{Saddle, Saddle}},
		"two joints":             {4, []parts.End{saddle(4), mitre(4)}, [2]EndKind{Saddle, Mitre}},
		"some pieces only":       {4, []parts.End{saddle(3)}, [2]EndKind{Other, Other}},
		"three ends":             {4, []parts.End{saddle(8), mitre(4)}, [2]EndKind{Other, Other}},
		"far too many":           {2, []parts.End{saddle(2000000)}, [2]EndKind{Other, Other}},
		"square on a face":       {2, []parts.End{{Angle: 90, Count: 4}}, [2]EndKind{Square, Square}},
		"square and a saddle":    {2, []parts.End{{Angle: 90, Count: 2}, saddle(2)}, [2]EndKind{Saddle, Square}},
		"an angle nobody stated": {2, []parts.End{{Count: 2}}, [2]EndKind{Other, Square}},
	} {
		got := endsOf(c.qty, c.ends)
		if len(got) != c.qty {
			t.Fatalf("%s: ends of %d pieces, want %d", name, len(got), c.qty)
		}
		for _, e := range got {
			if e[0].Kind != c.want[0] || e[1].Kind != c.want[1] {
				t.Errorf("%s: %s and %s, want %s", name, e[0].Kind, e[1].Kind, c.want)
			}
		}
	}
	if e := endsOf(1, []parts.End{{Angle: 60, Count: 1}}); e[0][0].Angle != 30 {
		t.Errorf("a tube that stands at 60 degrees on a face is cut at %g from square, want 30", float64(e[0][0].Angle))
	}
}

// TestPatterns: bars cut alike become one pattern whatever the order of the pieces;
// a mark, a length or an end that differs makes another.
func TestPatterns(t *testing.T) {
	square := [2]End{{Kind: Square}, {Kind: Square}}
	s := Section{Kerf: 3, Pieces: []Piece{{"A", 1000, square}, {"B", 2000, square}, {"B", 2000, square}, {"A", 1000, square}, {"C", 1000, square}, {"B", 2000, [2]End{{Kind: Mitre, Angle: 45}, {Kind: Square}}}, {"A", 1000, square}}}
	s.Bars = []Bar{{6000, []int{0, 1}}, {6000, []int{2, 3}}, {6000, []int{4, 1}}, {6000, []int{5, 6}}, {7000, []int{0, 1}}}
	got := s.Patterns()
	if len(got) != 4 || got[0].Count != 2 {
		t.Fatalf("%d patterns, the first %d times; want 4, the first twice", len(got), got[0].Count)
	}
	if got[0].Rest != 6000-1000-2000-6 || got[0].Runs[0].Mark != "B" {
		t.Errorf("the first pattern: %+v", got[0])
	}
	full := Section{Kerf: 3, Pieces: []Piece{{"A", 6000, square}}, Bars: []Bar{{6000, []int{0}}}}
	if p := full.Patterns(); p[0].Rest != 0 {
		t.Errorf("a bar that is one piece leaves %g", float64(p[0].Rest))
	}
	var sum units.MM
	for _, p := range got {
		for _, r := range p.Runs {
			sum += r.Length * units.MM(r.Count*p.Count)
		}
	}
	if sum != 15000 {
		t.Errorf("the patterns hold %g mm of pieces, want 15000", float64(sum))
	}
}
