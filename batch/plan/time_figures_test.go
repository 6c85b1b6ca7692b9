package plan

import (
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/joint"
)

// offMinutes are the legs whose arc minutes lie outside the band of time-standards.csv,
// with the reason. The band is worked out there for 2.5 to 3.5 kg/h, whatever the leg.
var offMinutes = map[float64]string{
	3:  "0.8 min/m would be 1250 mm/min: above what a hand travels",
	8:  "a wire of 1.2 mm at 300 A deposits more than the 3.5 kg/h of the band: 4.5",
	10: "likewise 4.3 kg/h",
	12: "likewise 4.3 kg/h",
}

// time-standards.csv holds shop hours of many kinds. The arc minutes of a metre of fillet
// by its leg follow from a seam alone and are compared; hours of pipe supports, stick
// electrodes, handling and shifts are other work.
func TestArcMinutesOfFilletsLieInTheBand(t *testing.T) {
	set, shop := world(t)
	seen := 0
	for _, r := range readFigures(t, "time-standards.csv") {
		var leg float64
		if n, _ := fmt.Sscanf(r["item"], "fillet leg %f mm, arc time one side", &leg); n != 1 || !strings.Contains(r["item"], "arc time") {
			continue
		}
		seen++
		j := filletJoint(leg, leg/0.75, "PB")
		j.Process = "135"
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		low, high := mustSpan(t, r["low"]).low, mustSpan(t, r["high"]).high
		got := float64(p.Arc) / float64(p.Seam)
		if in := got >= low && got <= high; in == (offMinutes[leg] != "") {
			t.Errorf("leg %g: %.2f min/m at %.2f kg/h, printed %g to %g; named as outside: %q", leg, got, float64(p.Deposit), low, high, offMinutes[leg])
		}
	}
	if seen != 7 {
		t.Errorf("%d legs compared, want 7", seen)
	}
}

func mustSpan(t *testing.T, text string) span {
	t.Helper()
	s, ok := readSpan(text)
	if !ok {
		t.Fatalf("%q is no figure", text)
	}
	return s
}
