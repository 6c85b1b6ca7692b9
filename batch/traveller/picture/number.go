package picture

import (
	"math"
	"strconv"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
)

// numbers writes the number of each pass where it lies, or, where the passes are
// too thin for that, beside the weld with a line to the pass.
func (f *drawing) numbers(s sketch.Sketch) {
	var later []sketch.Bead
	for _, b := range s.Beads {
		if b.Number == 0 {
			continue
		}
		size := 8.0
		if math.Sqrt(b.Outline.Area())*f.scale > 9 {
			size = 11
		}
		if !f.roomy(b) {
			later = append(later, b)
			continue
		}
		if _, ok := f.label(page.Style{Face: page.Bold, Size: size}, strconv.Itoa(b.Number), []page.Point{f.at(b.Outline.Centre())}); !ok {
			later = append(later, b)
		}
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, b := range s.Beads {
		for _, q := range f.outline(b.Outline) {
			left, right = min(left, q.X), max(right, q.X)
		}
	}
	for _, b := range later {
		f.numberBeside(b, left, right)
	}
}

// roomy tells whether a number of the smallest type stands inside a pass.
func (f *drawing) roomy(b sketch.Bead) bool {
	lowX, highX, lowY, highY := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, q := range b.Outline {
		lowX, highX = min(lowX, q.X), max(highX, q.X)
		lowY, highY = min(lowY, q.Y), max(highY, q.Y)
	}
	return (highX-lowX)*f.scale > 2 && (highY-lowY)*f.scale > 2.6
}

// numberBeside writes a pass number to the left or right of the weld, odd numbers
// on one side and even ones on the other, with a line to the pass.
func (f *drawing) numberBeside(b sketch.Bead, left, right float64) {
	c := f.at(b.Outline.Centre())
	edges := [2]float64{right, left}
	if b.Number%2 == 0 {
		edges = [2]float64{left, right}
	}
	var places []page.Point
	for _, edge := range edges {
		way := math.Copysign(1, edge-c.X)
		for _, dx := range []float64{3, 5, 7, 9, 12, 16} {
			for _, dy := range []float64{0, -2, 2, -4, 4, -6, 6} {
				places = append(places, page.Point{X: edge + way*dx, Y: c.Y + dy})
			}
		}
	}
	at, ok := f.label(page.Style{Face: page.Bold, Size: page.MinSize}, strconv.Itoa(b.Number), places)
	if !ok {
		return
	}
	end := 1.6
	if at.X > c.X {
		end = -1.6
	}
	f.p.Line(f.box, c.X, c.Y, at.X+end, at.Y, 0.12, 0)
	f.p.Circle(f.box, c, 0.35, 0, 0)
}
