package cutting

import (
	"cmp"
	"slices"
	"strings"

	"seamtally/batch/units"
)

// Run is neighbours in a bar that are alike.
type Run struct {
	Piece
	Count int
}

// Pattern is bars that are cut alike.
type Pattern struct {
	Stock units.MM
	Count int
	Runs  []Run
	Rest  units.MM // behind the last cut; the saw's loss at the ends is in it
}

// Patterns puts bars that are cut alike together, in the order in which the plan
// first has them. Pieces of a bar stand longest first.
func (s *Section) Patterns() []Pattern {
	var out []Pattern
	known := map[string]int{}
	for _, b := range s.Bars {
		p := s.pattern(b)
		key := p.key()
		k, ok := known[key]
		if !ok {
			k = len(out)
			known[key] = k
			out = append(out, p)
		}
		out[k].Count++
	}
	return out
}

func (s *Section) pattern(b Bar) Pattern {
	pieces := make([]Piece, len(b.Pieces))
	p := Pattern{Stock: b.Stock, Rest: b.Stock}
	for i, k := range b.Pieces {
		pieces[i] = s.Pieces[k]
		p.Rest -= pieces[i].Length + s.Kerf
	}
	p.Rest = max(0, p.Rest)
	slices.SortStableFunc(pieces, before)
	p.Runs = runs(pieces)
	return p
}

// before orders pieces: the longer first, then by mark and ends.
func before(a, b Piece) int {
	return cmp.Or(cmp.Compare(b.Length, a.Length), strings.Compare(a.Mark, b.Mark), compareEnd(a.Ends[0], b.Ends[0]), compareEnd(a.Ends[1], b.Ends[1]))
}

func compareEnd(a, b End) int {
	return cmp.Or(strings.Compare(string(a.Kind), string(b.Kind)), cmp.Compare(a.Angle, b.Angle), cmp.Compare(a.On, b.On), cmp.Compare(a.Template, b.Template))
}

func runs(pieces []Piece) []Run {
	var out []Run
	for _, p := range pieces {
		if n := len(out); n > 0 && out[n-1].Piece == p {
			out[n-1].Count++
		} else {
			out = append(out, Run{p, 1})
		}
	}
	return out
}

// key is equal for bars that are cut alike.
func (p *Pattern) key() string {
	var b strings.Builder
	write := func(v units.MM) { b.WriteString(number(float64(v))); b.WriteByte(';') }
	write(p.Stock)
	for _, r := range p.Runs {
		b.WriteString(r.Mark)
		b.WriteByte(0)
		write(units.MM(r.Count))
		write(r.Length)
		for _, e := range r.Ends {
			b.WriteString(string(e.Kind))
			write(units.MM(e.Angle))
			write(e.On)
		}
	}
	return b.String()
}
