package rates

import "seamtally/batch/units"

// CapOn returns how high a cap stands on a thickness: the shop's height, but on
// sheet no more than its share of the thinner part. A face welded from both sides
// has a cap on each by the whole thickness, as each is laid on the whole part; a
// weld of part of the thickness too, for it is the part that bears the heat, not the
// depth that is filled. Where no thickness is known (0) the height holds alone.
func (s *Shop) CapOn(thickness units.MM) units.MM {
	return atMost(s.CapHeight, s.CapShare, thickness)
}

// RootUnder returns how far an open root stands out below a thickness, limited as
// [Shop.CapOn].
func (s *Shop) RootUnder(thickness units.MM) units.MM {
	return atMost(s.RootHeight, s.RootShare, thickness)
}

func atMost(height units.MM, share float64, thickness units.MM) units.MM {
	if thickness <= 0 {
		return height
	}
	return min(height, units.MM(share)*thickness)
}
