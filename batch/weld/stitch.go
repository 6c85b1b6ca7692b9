package weld

import (
	"math"

	"seamtally/batch/units"
)

// Stitches is what an intermittent weld comes to on one side of one joint.
type Stitches struct {
	Count    int         // segments
	Welded   units.Metre // of all segments
	Occupied units.MM    // from the start of the first to the end of the last
	Gap      units.MM    // clear distance between segments
	Fits     bool        // the stated number of segments fits the length; true where the length is not known
}

// Stitch returns the segments of an intermittent weld and the metres they give.
//
//	n = ⌊(L − l)/p⌋ + 1 with p = l + e;  welded = n l;  occupied = (n − 1) p + l        (STITCH-1)
//
// Symbols: L length of the joint [mm], zero where it is not known; l length of a
// segment [mm]; p pitch, centre to centre [mm]; e clear distance between segments
// [mm], which is not the pitch; n number of segments.
// Valid: 0 < l <= p, p <= 100000 mm, 0 <= L <= 10⁶ mm; count 0 (as many as fit) or the stated number.
// Assumes: the first segment starts at the start of the joint. A stated number
// stands even where the length would hold another.
// Source: ISO 2553, n x l (e); AWS A2.4, length-pitch: second-hand.
// Basis: derived.
// Accuracy: exact.
// Errors: [ErrRange] for a pitch shorter than the segment, a joint shorter than
// one segment, or neither a length nor a number.
func Stitch(length, segment, pitch units.MM, count int) (Stitches, error) {
	err := first(
		over("segment", segment, 1e5, "mm"),
		within("pitch", pitch, float64(segment), 1e5, "mm"),
		within("length", length, 0, 1e6, "mm"),
		within("number of segments", float64(count), 0, 1e5, ""),
	)
	if err != nil {
		return Stitches{}, err
	}
	most := int(math.Floor(float64(length-segment)/float64(pitch)+1e-9)) + 1
	n := count
	if n == 0 {
		if err := within("length of a stitched joint", length, float64(segment), 1e6, "mm"); err != nil {
			return Stitches{}, err
		}
		n = most
	}
	s := Stitches{Count: n, Gap: pitch - segment, Fits: length == 0 || length >= segment && n <= most}
	s.Welded = units.MM(float64(n) * float64(segment)).Metres()
	s.Occupied = units.MM(float64(n-1))*pitch + segment
	return s, nil
}
