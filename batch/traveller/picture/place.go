package picture

import (
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
)

// scales are the scales a picture may have: paper over part.
var scales = []struct {
	factor float64
	text   string
}{
	{10, "10 : 1"}, {8, "8 : 1"}, {7, "7 : 1"}, {6, "6 : 1"}, {5, "5 : 1"}, {4.5, "4.5 : 1"}, {4, "4 : 1"}, {3.5, "3.5 : 1"},
	{3, "3 : 1"}, {2.75, "2.75 : 1"}, {2.5, "2.5 : 1"}, {2.25, "2.25 : 1"}, {2, "2 : 1"}, {1.75, "1.75 : 1"},
	{1.5, "1.5 : 1"}, {1.25, "1.25 : 1"}, {1, "1 : 1"}, {0.75, "3 : 4"}, {2.0 / 3, "2 : 3"}, {0.6, "3 : 5"}, {0.5, "1 : 2"},
	{0.4, "2 : 5"}, {1.0 / 3, "1 : 3"}, {0.25, "1 : 4"}, {0.2, "1 : 5"}, {0.1, "1 : 10"}, {0.05, "1 : 20"}, {0.02, "1 : 50"}, {0.01, "1 : 100"},
}

// Margins of a picture inside its frame, for dimensions.
const (
	figureSide = 14
	figureTop  = 5
	figureFoot = 8
	figureDim  = 8   // more where dimensions or an angle stand above or below
	lowDim     = 5.8 // the same in a low frame
	lowFrame   = 46  // height up to which a frame is low
)

// symbolSpot is where a symbol stands, and its tail.
type symbolSpot struct {
	page.Rect
	tail string
}

// mostSteps is by how many scales a sketch is made smaller to give its symbol room, and
// asides are by what part of the free width it moves out of the middle before that.
const mostSteps = 5

var asides = []float64{0, 0.35, -0.35, 0.6, -0.6}

// placeWithSymbol places the sketch at the largest scale that leaves a corner free
// for the welding symbol, at best with its tail; where none does, the sketch stands
// at the largest scale without a symbol.
func (b Pen) placeWithSymbol(p *page.Page, box page.BoxID, frame page.Rect, s sketch.Sketch, pl *plan.Plan) (*drawing, symbolSpot) {
	for step := range mostSteps {
		for _, aside := range asides {
			f := b.place(p, box, frame, s, step, aside)
			tails := []string{f.symbolTail(pl), ""}
			if step < 2 { // first a little smaller, only then without the tail
				tails = tails[:1]
			}
			for _, tail := range tails {
				if r, ok := f.symbolCorner(f.parts(s), f.symbolWidth(pl, tail)); ok {
					return f, symbolSpot{r, tail}
				}
			}
		}
	}
	return b.place(p, box, frame, s, 0, 0), symbolSpot{}
}

// place chooses the largest scale at which the sketch fits, or one that is some
// steps smaller, and sets the sketch into the middle or a part of the free width aside.
func (b Pen) place(p *page.Page, box page.BoxID, frame page.Rect, s sketch.Sketch, smaller int, aside float64) *drawing {
	low, high := s.Bounds()
	top, foot := margins(s, frame.H)
	w, h := frame.W-2*figureSide, frame.H-top-foot
	f := &drawing{Pen: b, p: p, box: box, frame: frame, scale: min(w/(high.X-low.X), h/(high.Y-low.Y))}
	f.text = b.Words.Say("picture.fit")
	for i := range scales {
		sc := scales[min(i+smaller, len(scales)-1)]
		if (high.X-low.X)*scales[i].factor <= w && (high.Y-low.Y)*scales[i].factor <= h {
			f.scale, f.text = sc.factor, b.Show.Scale(sc.text)
			break
		}
	}
	f.origin = page.Point{
		X: frame.X + figureSide + w/2 - (low.X+high.X)/2*f.scale + aside*(w-(high.X-low.X)*f.scale)/2,
		Y: frame.Y + top + h/2 + (low.Y+high.Y)/2*f.scale,
	}
	return f
}

// margins returns the white above and below a sketch in a frame: dimensions need room.
func margins(s sketch.Sketch, frame float64) (top, foot float64) {
	top, foot = figureTop, figureFoot
	more := float64(figureDim)
	if frame < lowFrame {
		more = lowDim
	}
	low, high := s.Bounds()
	for _, d := range s.Dims {
		if d.Away.Y > 0.5 && !d.Inside {
			top = figureTop + more
		}
		if d.Away.Y < -0.5 && d.From.Y-low.Y < (high.Y-low.Y)*0.3 {
			foot = figureFoot + more
		}
	}
	for _, c := range s.Corners {
		if c.At.Y < 0 {
			top = figureTop + more
		}
	}
	return top, foot
}

// at returns the paper place of a point of the sketch.
func (f *drawing) at(q sketch.Point) page.Point {
	return page.Point{X: f.origin.X + q.X*f.scale, Y: f.origin.Y - q.Y*f.scale}
}

func (f *drawing) outline(g []sketch.Point) []page.Point {
	out := make([]page.Point, len(g))
	for i, q := range g {
		out[i] = f.at(q)
	}
	return out
}
