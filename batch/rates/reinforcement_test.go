package rates

import (
	"testing"

	"seamtally/batch/units"
)

// TestSheetBearsLowerCaps: from 1 mm of thickness on the shop's heights hold, on
// sheet its shares of the thickness, and where no thickness is known the heights.
func TestSheetBearsLowerCaps(t *testing.T) {
	s := defaultShop(t)
	for _, c := range []struct{ thick, high, below units.MM }{
		{0.6, 0.9, 0.6}, {0.8, 1.2, 0.8}, {1, 1.5, 1}, {3, 1.5, 1}, {40, 1.5, 1}, {0, 1.5, 1},
	} {
		near(t, "cap", float64(s.CapOn(c.thick)), float64(c.high), 1e-12)
		near(t, "root", float64(s.RootUnder(c.thick)), float64(c.below), 1e-12)
	}
	s.CapShare, s.RootShare = 0.5, 1.0/3 // a shop that grinds its sheet
	near(t, "cap", float64(s.CapOn(0.8)), 0.4, 1e-12)
	near(t, "cap", float64(s.CapOn(3)), 1.5, 1e-12)
	near(t, "root", float64(s.RootUnder(2.4)), 0.8, 1e-12)
}
