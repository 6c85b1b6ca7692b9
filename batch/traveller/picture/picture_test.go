package picture

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
)

// A pictogram stays near its square: a nozzle or the ground may stand out a little.
func TestPicturesStayInTheirSquare(t *testing.T) {
	for _, code := range []string{"PA", "PB", "PC", "PD", "PE", "PF", "PG", "PH", "PJ", "PK", "", "?"} {
		for _, kind := range []joint.Kind{joint.NoKind, joint.Fillet, joint.Lap, joint.Corner, joint.Edge, joint.Plug, joint.SingleV} {
			p := (&page.Document{}).Add(210, 297)
			box := p.Box("icon", page.Rect{X: 49, Y: 49, W: 22, H: 22})
			Icon{p, box, page.Point{X: 50, Y: 50}, 20}.Position(code, kind)
			if faults := p.Faults(); len(faults) > 0 {
				t.Errorf("%q %s: %v", code, kind, faults)
			}
			if len(p.Shapes) < 3 {
				t.Errorf("%q %s: only %d strokes", code, kind, len(p.Shapes))
			}
		}
	}
}

func shapes(code string, kind joint.Kind) []page.Shape {
	p := (&page.Document{}).Add(210, 297)
	Icon{p, 0, page.Point{X: 50, Y: 50}, 20}.Position(code, kind)
	return p.Shapes
}

// No two plate positions look the same.
func TestPositionsDiffer(t *testing.T) {
	codes := []string{"PA", "PB", "PC", "PD", "PE", "PF", "PG"}
	for i, a := range codes {
		for _, b := range codes[i+1:] {
			if same(shapes(a, joint.NoKind), shapes(b, joint.NoKind)) {
				t.Errorf("%s and %s look the same", a, b)
			}
		}
	}
}

// What is welded lying flat or on a ledge is drawn as the joint that it is.
func TestPositionShowsTheJoint(t *testing.T) {
	for code, kinds := range map[string][]joint.Kind{
		"PA": {joint.SingleV, joint.Fillet, joint.Corner, joint.Edge, joint.Plug}, "PB": {joint.Fillet, joint.Lap, joint.Corner},
	} {
		for i, a := range kinds {
			for _, b := range kinds[i+1:] {
				if same(shapes(code, a), shapes(code, b)) {
					t.Errorf("%s: %s and %s look the same", code, a, b)
				}
			}
		}
	}
}

func same(a, b []page.Shape) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if len(a[i].Points) != len(b[i].Points) {
			return false
		}
		for k := range a[i].Points {
			if a[i].Points[k] != b[i].Points[k] {
				return false
			}
		}
	}
	return true
}

// The torch leans by the angle stated: towards the weld already laid when it is
// pushed, away from it when it is dragged. The seam is welded to the right.
func TestTorchLeansAsSaid(t *testing.T) {
	for _, c := range []struct {
		lean Lean
		want float64 // degrees of the wire from the upright, positive to the left
	}{{Square, 0}, {Push, 15}, {Drag, -15}} {
		p := (&page.Document{}).Add(210, 297)
		Icon{p, 0, page.Point{X: 50, Y: 50}, 20}.Torch(c.lean, 15)
		wire := p.Shapes[2].Points
		got := math.Atan2(wire[0].X-wire[1].X, wire[0].Y-wire[1].Y) * 180 / math.Pi
		if math.Abs(got-c.want) > 0.1 {
			t.Errorf("lean %d: %.1f°, want %.1f°", c.lean, got, c.want)
		}
	}
}
