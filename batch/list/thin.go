package list

import (
	"encoding/binary"
	"math"
)

// Thin lets go of the cells that nobody asks for again once a list is understood:
// those outside the columns to keep, and how numbers were spelled. Most rows of a
// long list differ in few of the rest, the columns of their own; what they have in
// the others is kept once for all rows that have the same there. Only At finds
// every cell then.
func (s *Sheet) Thin(keep, own map[int]bool) {
	t := thinner{same: map[string][]Cell{}}
	for i := range s.Rows {
		row := &s.Rows[i]
		t.mine, t.others = t.mine[:0], t.others[:0]
		for _, c := range row.Cells {
			if c.Kind == Number {
				c.Text = ""
			}
			switch {
			case own[c.Col]:
				t.mine = append(t.mine, c)
			case keep[c.Col]:
				t.others = append(t.others, c)
			}
		}
		row.Cells, row.same = t.slab.copy(t.mine), t.share()
	}
	s.Thinned = true
}

type thinner struct {
	mine, others []Cell
	slab         slab
	same         map[string][]Cell
	key          []byte
}

// mostSame is how many sets of cells are kept for other rows.
const mostSame = 4096

// slab is room for the cells of many rows: what is handed out in pieces is quicker
// to make and to look through than as many pieces.
type slab []Cell

const slabCells = 1024

// copy returns a copy of cells.
func (s *slab) copy(cells []Cell) []Cell {
	n := len(cells)
	if n > len(*s) {
		*s = make([]Cell, max(n, slabCells))
	}
	out := (*s)[:n:n]
	copy(out, cells)
	*s = (*s)[n:]
	return out
}

// share returns the other cells as they are kept for all rows that have them.
func (t *thinner) share() []Cell {
	t.key = t.key[:0]
	for _, c := range t.others {
		t.key = binary.AppendUvarint(append(t.key, byte(c.Kind), flag(c.Formula), flag(c.Percent)), uint64(c.Col))
		t.key = binary.LittleEndian.AppendUint64(t.key, math.Float64bits(c.Value))
		t.key = append(binary.AppendUvarint(t.key, uint64(len(c.Text))), c.Text...)
	}
	known, ok := t.same[string(t.key)]
	if !ok {
		known = t.slab.copy(t.others)
		if len(t.same) < mostSame {
			t.same[string(t.key)] = known
		}
	}
	return known
}

func flag(set bool) byte {
	if set {
		return 1
	}
	return 0
}
