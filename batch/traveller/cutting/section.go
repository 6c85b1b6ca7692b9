// Package cutting makes the pages by which bars are sawn: which pieces come from
// which bar, drawn to scale. It takes the cutting plan as it is and changes
// nothing of it but the order of the pieces in a bar.
//
// The order to read: section.go (what is cut), pattern.go (bars that are cut
// alike), draw.go (a bar on paper), book.go (from the worked cut list).
package cutting

import (
	"cmp"
	"slices"

	"seamtally/batch/parts"
	"seamtally/batch/units"
)

// EndKind is how an end of a piece is cut.
type EndKind string

// The ends.
const (
	Square EndKind = "square"
	Mitre  EndKind = "mitre"  // by a plane, at Angle to square
	Saddle EndKind = "saddle" // to sit on a round tube
	Other  EndKind = "other"  // as the drawing has it
)

// End is one end of a piece.
type End struct {
	Kind  EndKind
	Angle units.Degree // of a mitre away from square; of a saddle between the two tubes
	On    units.MM     // of a saddle: the diameter it sits on
	// Template is the number of the paper that marks the cut; 0: none.
	Template int
}

// Piece is one piece.
type Piece struct {
	Mark   string
	Length units.MM // from longest point to longest point
	Ends   [2]End
}

// Bar is one bar and what is cut from it.
type Bar struct {
	Stock  units.MM
	Pieces []int // indices into the section's pieces
}

// Row is a row of the table of pieces: a row of the cut list.
type Row struct {
	Mark, Assembly, Note string
	Width, Length        units.MM // Width of a plate alone
	Count                int
	Ends                 [2]End
	Shrink               *[2]units.MM // what the welds shorten the piece by; nil: nothing
	Edges                []parts.Edge // to be bevelled
	Each                 units.Kg     // mass of one piece; 0: not known
}

// Section is all pieces of one section and material and the bars they come from.
type Section struct {
	Name, Material string
	Kerf, EndLoss  units.MM
	Pieces         []Piece
	Bars           []Bar
	Rows           []Row // of the pieces that bars hold
	TooLong        []Row // of those that no bar holds
	LeastBars      int   // proven: no plan needs fewer; 0: not known
	BoughtKg       units.Kg
}

// Plate is all pieces of one thickness and material.
type Plate struct {
	Thickness      units.MM
	Material       string
	Rows           []Row
	Pieces         int
	Area           float64 // m²
	Mass, BoughtKg units.Kg
}

// Bought is the area that weighs what is bought; see parts.Plate.
func (p *Plate) Bought() (area, waste float64, ok bool) {
	whole := parts.Plate{Area: p.Area, Mass: p.Mass, BoughtKg: p.BoughtKg}
	return whole.Bought()
}

// Sums are the figures of a section.
type Sums struct {
	Bars, Pieces  int
	Bought, Waste units.MM
}

// Sums adds the bars up.
func (s *Section) Sums() Sums {
	sums := Sums{Bars: len(s.Bars), Pieces: len(s.Pieces)}
	for _, b := range s.Bars {
		sums.Bought += b.Stock
		sums.Waste += b.Stock
		for _, k := range b.Pieces {
			sums.Waste -= s.Pieces[k].Length
		}
	}
	return sums
}

// Stocks are the bars to buy of each length, longest first.
func (s *Section) Stocks() []Stock {
	var out []Stock
	for _, b := range s.Bars {
		k := slices.IndexFunc(out, func(x Stock) bool { return x.Length == b.Stock })
		if k < 0 {
			k = len(out)
			out = append(out, Stock{Length: b.Stock})
		}
		out[k].Count++
	}
	slices.SortFunc(out, func(a, b Stock) int { return cmp.Compare(b.Length, a.Length) })
	return out
}

// Stock is bars of one length.
type Stock struct {
	Length units.MM
	Count  int
}

// Longest returns the longest bar: the scale of all of them.
func (s *Section) Longest() units.MM {
	longest := units.MM(0)
	for _, b := range s.Bars {
		longest = max(longest, b.Stock)
	}
	return longest
}
