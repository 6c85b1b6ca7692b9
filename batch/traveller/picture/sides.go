package picture

import (
	"math"
	"slices"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
)

// sides names the two sides of a weld that has passes on both, so that the table of
// passes and the sign-off can speak of them.
func (f *drawing) sides(s sketch.Sketch, pl *plan.Plan) {
	if slices.ContainsFunc(s.Beads, func(b sketch.Bead) bool { return b.Mirror }) {
		f.twins(s)
		return
	}
	if !slices.ContainsFunc(pl.Runs, func(r plan.Run) bool { return r.Side == 2 }) {
		return
	}
	low, high := math.Inf(1), math.Inf(-1) // the plates, left to right
	deep := 0.0
	for _, p := range s.Plates {
		for _, q := range p.Outline {
			low, high, deep = min(low, q.X), max(high, q.X), min(deep, q.Y)
		}
	}
	for k, key := range []string{"run.side1", "run.side2"} {
		text := f.Words.Say(key)
		half := words.Width(page.Clean(text)) / 2
		y := [2]float64{f.at(sketch.Point{}).Y - 2.6, f.at(sketch.Point{Y: deep}).Y + 2.9}[k]
		left, right := f.at(sketch.Point{X: low}).X, f.at(sketch.Point{X: high}).X
		var places []page.Point
		away := [2]float64{-1, 1}[k]
		for _, more := range [3]float64{0, 3.2, -3.2} { // by the plate's surface, away from it, beside the plate
			if more >= 0 {
				places = append(places, page.Point{X: right - half, Y: y + away*more}, page.Point{X: left + half, Y: y + away*more})
			}
			for _, out := range [3]float64{1, 12, 24} {
				places = append(places, page.Point{X: right + half + out, Y: y + away*more}, page.Point{X: left - half - out, Y: y + away*more})
			}
		}
		f.label(words, text, places)
	}
}

// twins names the two sides of a weld that is the same on both: the side with the
// dimensions is the first.
func (f *drawing) twins(s sketch.Sketch) {
	for k, key := range []string{"run.side1", "run.side2"} {
		text := f.Words.Say(key)
		half := words.Width(page.Clean(text)) / 2
		var places []page.Point
		for _, b := range s.Beads {
			if b.Mirror != (k == 1) {
				continue
			}
			low, high := page.Point{X: math.Inf(1), Y: math.Inf(1)}, page.Point{X: math.Inf(-1), Y: math.Inf(-1)}
			for _, q := range f.outline(b.Outline) {
				low, high = page.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}, page.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
			}
			middle, outer, inner := (low.X+high.X)/2, high.X+half, low.X-half
			if b.Mirror {
				outer, inner = low.X-half, high.X+half
			}
			away := math.Copysign(1, outer-middle)
			var between []page.Point // the two welds, where one may take it for the other's name
			for _, dy := range []float64{2.9, 4.5, 6.5, 9, 12} {
				places = append(places, page.Point{X: middle, Y: high.Y + dy}, page.Point{X: outer, Y: high.Y + dy})
				between = append(between, page.Point{X: inner, Y: high.Y + dy})
			}
			places = append(places, page.Point{X: outer + away, Y: low.Y}, page.Point{X: middle, Y: low.Y - 3})
			places = append(append(places, between...), page.Point{X: inner - away, Y: low.Y})
		}
		f.label(words, text, places)
	}
}
