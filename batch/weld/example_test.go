package weld_test

import (
	"fmt"

	"seamtally/batch/weld"
)

// A 6 mm fillet as drawn, and as a shop makes it: half a millimetre over on each
// leg and a cap of a twentieth of the face.
func ExampleFillet() {
	f := weld.Fillet{LegA: 6, LegB: 6, Angle: 90}
	drawn, _ := f.Drawn()
	made, _ := f.Made(weld.Allowances{Overweld: 0.5, Convexity: 0.05})
	fmt.Printf("%.1f mm² drawn, %.1f mm² made\n", drawn, made)
	// Output: 18.0 mm² drawn, 23.9 mm² made
}

// A V of 60° in 10 mm plate, gap 2, no root face: printed as 77.5 cm³ per metre in
// a covered-electrode handbook.
func ExampleGroove() {
	area, _ := weld.SingleV(10, 2, 0, 60).Drawn()
	fmt.Printf("%.1f mm²\n", area)
	// Output: 77.7 mm²
}

// Seven stitches of 50 with 100 between fit a metre.
func ExampleStitch() {
	s, _ := weld.Stitch(1000, 50, 150, 0)
	fmt.Printf("%d stitches, %.2f m\n", s.Count, s.Welded)
	// Output: 7 stitches, 0.35 m
}

// A size that cannot be is refused by name.
func ExampleErrRange() {
	_, err := weld.Fillet{LegA: -6, LegB: 6, Angle: 90}.Drawn()
	fmt.Println(err)
	// Output: leg of -6 mm must be more than 0 and at most 200 mm
}
