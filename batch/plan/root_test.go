package plan

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// A root that is welded through from one side with nothing behind it is laid with a
// wire without slag in short arc, in every position and every groove; a wide gap lets
// the wire through whatever the root face. With something behind it nothing changes,
// and who names a cored wire gets it with a warning.
func TestRootWithNothingBehindIt(t *testing.T) {
	set, shop := world(t)
	for name, c := range map[string]struct {
		kind     joint.Kind
		thick    units.MM
		position string
		change   func(*joint.Joint)
		slag     bool // is allowed and cheapest
		warned   bool
	}{
		"V flat":                  {joint.SingleV, 12, "PA", nil, false, false},
		"V upwards":               {joint.SingleV, 12, "PF", nil, false, false},
		"V overhead":              {joint.SingleV, 12, "PE", nil, false, false},
		"bevel horizontal":        {joint.SingleBevel, 12, "PC", nil, false, false},
		"U flat, face 3, gap 2":   {joint.SingleU, 20, "PA", nil, false, false},
		"U upwards":               {joint.SingleU, 20, "PF", nil, false, false},
		"square butt, open":       {joint.SquareButt, 6, "PA", func(j *joint.Joint) { j.Gap, j.GapGiven = 2, true }, false, false},
		"V on a strip":            {joint.SingleV, 12, "PF", func(j *joint.Joint) { j.Backing = "ceramic" }, true, false},
		"V gouged and rewelded":   {joint.SingleV, 12, "PF", func(j *joint.Joint) { j.Backing = "gouge" }, true, false},
		"V, from both sides":      {joint.SingleV, 12, "PF", func(j *joint.Joint) { j.Sides = 2 }, true, false},
		"V of 8 in 20":            {joint.SingleV, 20, "PF", func(j *joint.Joint) { j.Size = joint.Size{Means: joint.Penetration, A: 8} }, true, false},
		"V, cored wire asked for": {joint.SingleV, 12, "PF", func(j *joint.Joint) { j.Wire = "T 46 2 P 1.2" }, true, true},
		"V, thick wire in pulse":  {joint.SingleV, 8, "PA", func(j *joint.Joint) { j.Wire, j.Gas, j.Process = "G3Si1 1.6", "M21", "pulse" }, false, true},
		"V, thick wire asked for": {joint.SingleV, 20, "PA", func(j *joint.Joint) { j.Wire, j.Gas, j.Process = "G3Si1 1.6", "M21", "spray" }, false, true},
	} {
		j := buttJoint(c.kind, float64(c.thick), c.position)
		if c.change != nil {
			j = changed(j, c.change)
		}
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if !p.Settings {
			t.Errorf("%s: %s", name, p.NoSettings)
			continue
		}
		_, warned := checkOf(&p, "root-open")
		if p.Slag != c.slag || warned != c.warned {
			t.Errorf("%s: %s in %s, warned %v", name, p.Filler, p.Runs[0].Transfer, warned)
		}
		if !c.slag && !c.warned && p.Runs[0].Transfer != ShortArc {
			t.Errorf("%s: the root runs in %s", name, p.Runs[0].Transfer)
		}
	}
}
