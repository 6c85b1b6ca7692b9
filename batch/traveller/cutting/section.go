// Package cutting makes the pages by which bars are sawn: which pieces come from
// which bar, drawn to scale. It takes the cutting plan as it is and changes
// nothing of it but the order of the pieces in a bar.
//
// The order to read: section.go (what is cut), pattern.go (bars that are cut
// alike), draw.go (a bar on paper), book.go (from the worked cut list).
package cutting

import "seamtally/batch/units"

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

// Section is all pieces of one section and material and the bars they come from.
type Section struct {
	Name, Material string
	Kerf, EndLoss  units.MM
	Pieces         []Piece
	Bars           []Bar
	TooLong        []int // pieces that no bar holds
	LeastBars      int   // proven: no plan needs fewer; 0: not known
	Shrink         bool  // the welds shorten some piece, and the lengths do not allow for it
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

// Longest returns the longest bar: the scale of all of them.
func (s *Section) Longest() units.MM {
	longest := units.MM(0)
	for _, b := range s.Bars {
		longest = max(longest, b.Stock)
	}
	return longest
}
