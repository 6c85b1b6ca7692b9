package plan

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// 5 of 50 with 100 clear in 1000 mm: (1000 + 100) / 150 = 7.3, so 7 would fit.
// 7 of them staggered: 6 x 150 + 50 + 75 = 1025 mm, 25 too many.
func TestWhatFitsIsTold(t *testing.T) {
	set, shop := world(t)
	stitched := func(count int, staggered bool, length float64) Plan {
		j := filletJoint(5, 8, "PB")
		j.Sides, j.Length = 2, units.MM(length)
		j.Stitch = &joint.Stitch{Count: count, Segment: 50, Gap: 100, Pitch: 150, Staggered: staggered, Text: "note"}
		return Joints([]joint.Joint{j}, set, shop, Options{})[0]
	}
	says := func(p Plan, code, text string) bool {
		for _, c := range p.Checks {
			if c.Code == code && strings.Contains(c.Text, text) {
				return true
			}
		}
		return false
	}
	if p := stitched(5, false, 1000); !says(p, "stitch-count", "7 would fit") || !near(float64(p.Seam), 0.5, 1e-9) {
		t.Errorf("five of seven: %v m, %v", p.Seam, p.Checks)
	}
	if p := stitched(0, false, 1000); says(p, "stitch-count", "") || !near(float64(p.Seam), 0.7, 1e-9) {
		t.Errorf("as many as fit: %v m, %v", p.Seam, p.Checks)
	}
	if p := stitched(0, true, 1000); !says(p, "stitch-stagger", "1025 mm") {
		t.Errorf("staggered in 1000: %v", p.Checks)
	}
	if p := stitched(0, true, 1030); says(p, "stitch-stagger", "") {
		t.Errorf("staggered in 1030: %v", p.Checks)
	}
}
