package picture

import (
	"math"
	"testing"

	"seamtally/batch/traveller/page"
)

// A pictogram stays near its square: a nozzle or the ground may stand out a little.
func TestPicturesStayInTheirSquare(t *testing.T) {
	for _, code := range []string{"PA", "PB", "PC", "PD", "PE", "PF", "PG", "PH", "PJ", "PK", "", "?"} {
		p := (&page.Document{}).Add(210, 297)
		box := p.Box("icon", page.Rect{X: 49, Y: 49, W: 22, H: 22})
		Icon{p, box, page.Point{X: 50, Y: 50}, 20}.Position(code)
		if faults := p.Faults(); len(faults) > 0 {
			t.Errorf("%q: %v", code, faults)
		}
		if len(p.Shapes) < 3 {
			t.Errorf("%q: only %d strokes", code, len(p.Shapes))
		}
	}
}

func shapes(code string) []page.Shape {
	p := (&page.Document{}).Add(210, 297)
	Icon{p, 0, page.Point{X: 50, Y: 50}, 20}.Position(code)
	return p.Shapes
}

// No two plate positions look the same.
func TestPositionsDiffer(t *testing.T) {
	codes := []string{"PA", "PB", "PC", "PD", "PE", "PF", "PG"}
	for i, a := range codes {
		for _, b := range codes[i+1:] {
			if same(shapes(a), shapes(b)) {
				t.Errorf("%s and %s look the same", a, b)
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
