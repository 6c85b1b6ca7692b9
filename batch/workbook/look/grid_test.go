package look

import "testing"

// A long sheet joins only its first runs of cells, and keeps every text.
func TestJoinedCellsAreBounded(t *testing.T) {
	g := NewGrid(NewBook("", ""), "Long")
	for row := 1; row <= 2*mostJoined; row++ {
		g.Over(row, 1, 5, Wrap, "a sentence")
	}
	if got := len(g.Merged()); got != mostJoined {
		t.Errorf("%d runs are joined, want %d", got, mostJoined)
	}
	if got := len(g.TextsOf("A", 1, 2*mostJoined)); got != 2*mostJoined {
		t.Errorf("%d texts, want %d", got, 2*mostJoined)
	}
}
