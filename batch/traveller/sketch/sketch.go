package sketch

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// Plate is one part of the joint. An edge from point i to the next is cut where
// Cut[i] holds: the part goes on beyond the picture.
type Plate struct {
	Name    string // "t1", "t2", "backing"
	Outline Polygon
	Cut     []bool
}

// Bead is what one pass fills.
type Bead struct {
	Number  int
	Layer   int // of its side; 0: not known
	Side    int
	Outline Polygon
	Mirror  bool // the same pass of the second seam
}

// Dim is a dimension: a distance between two points, drawn at Away from them.
type Dim struct {
	Name     string // "z", "a", "t1", "t2", "g", "c", "h", "s", "r", "u" of a gouge
	From, To Point
	Away     Point // direction from the measured points to the dimension line
	Value    float64
	Inside   bool // drawn between the points themselves, not beside them
}

// Corner is an angle between two directions at a point.
type Corner struct {
	At       Point
	From, To float64 // radians, anticlockwise from the x axis
	Degrees  float64
}

// Note is a size written inside a part that is cut short.
type Note struct {
	At    Point
	Value float64
}

// Sketch is the cross-section of a joint.
type Sketch struct {
	Plates  []Plate
	Beads   []Bead
	Dims    []Dim
	Corners []Corner
	Notes   []Note
}

// weld is the metal of one seam: where it lies and how passes build it up.
type weld struct {
	region Polygon
	up     Point // from the root to the face
	along  Point // across the face, in the order of the beads of a layer
	twoWay bool  // side 2 is built up the other way, from the root
	// gouged is what side 2 fills where the root is gouged out for it: it lies over
	// metal of side 1. Empty where side 2 shares the region with side 1.
	gouged Polygon
}

// Build returns the cross-section of a planned joint; false where the plan
// knows too little to draw it.
func Build(p *plan.Plan) (Sketch, bool) {
	var s Sketch
	var w weld
	switch p.Prep.Kind {
	case joint.Fillet:
		w = s.fillet(p)
	case joint.Lap:
		w = s.lap(p)
	case joint.Corner:
		w = s.corner(p)
	case joint.Edge:
		w = s.edge(p)
	case joint.FlareBevel, joint.FlareV:
		w = s.flare(p)
	case joint.Plug, joint.Slot:
		w = s.plug(p)
	case joint.SquareButt, joint.SingleV, joint.SingleBevel, joint.DoubleV, joint.DoubleBevel,
		joint.SingleU, joint.SingleJ, joint.DoubleU, joint.DoubleJ:
		w = s.groove(p)
	default:
		return s, false
	}
	if len(w.region) < 3 || w.region.Area() < 1e-6 {
		return s, len(s.Plates) > 0 && s.finite()
	}
	s.Beads = append(w.beads(p.Runs), s.Beads...)
	s.secondSeam(p)
	return s, s.finite()
}

// beads cuts the weld into its passes.
func (w weld) beads(runs []plan.Run) []Bead {
	if len(runs) == 0 {
		return []Bead{{Outline: w.region}}
	}
	var one, two []plan.Run
	for _, r := range runs {
		if w.twoWay && r.Side == 2 {
			two = append(two, r)
		} else {
			one = append(one, r)
		}
	}
	if len(two) == 0 {
		return layers(w.region, w.up, w.along, one)
	}
	if len(one) == 0 {
		return layers(w.region, w.up.Times(-1), w.along, two)
	}
	if len(w.gouged) > 0 {
		return append(layers(w.region, w.up, w.along, one), layers(w.gouged, w.up.Times(-1), w.along, two)...)
	}
	parts := w.region.shares(w.up, []float64{sum(two), sum(one)})
	if parts == nil {
		return nil
	}
	return append(layers(parts[1], w.up, w.along, one), layers(parts[0], w.up.Times(-1), w.along, two)...)
}

func sum(runs []plan.Run) float64 {
	total := 0.0
	for _, r := range runs {
		total += float64(r.Area)
	}
	return total
}

// layers cuts a region into layers from the root up, and each layer into beads.
func layers(region Polygon, up, along Point, runs []plan.Run) []Bead {
	var groups [][]plan.Run
	for i, r := range runs {
		if i > 0 && r.Layer == runs[i-1].Layer && r.Layer != 0 {
			groups[len(groups)-1] = append(groups[len(groups)-1], r)
			continue
		}
		groups = append(groups, []plan.Run{r})
	}
	parts := make([]float64, len(groups))
	for i, g := range groups {
		parts[i] = sum(g)
	}
	var out []Bead
	for i, layer := range region.shares(up, parts) {
		areas := make([]float64, len(groups[i]))
		for j, r := range groups[i] {
			areas[j] = float64(r.Area)
		}
		for j, bead := range layer.shares(along, areas) {
			run := groups[i][j]
			out = append(out, Bead{Number: run.Number, Layer: run.Layer, Side: run.Side, Outline: bead})
		}
	}
	return out
}

// Seam returns the area of all beads of one seam, mm².
func (s Sketch) Seam() float64 {
	total := 0.0
	for _, b := range s.Beads {
		if !b.Mirror {
			total += b.Outline.Area()
		}
	}
	return total
}

// Bounds returns the corners of everything in the sketch.
func (s Sketch) Bounds() (low, high Point) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	each := func(g Polygon) {
		for _, p := range g {
			low = Point{min(low.X, p.X), min(low.Y, p.Y)}
			high = Point{max(high.X, p.X), max(high.Y, p.Y)}
		}
	}
	for _, p := range s.Plates {
		each(p.Outline)
	}
	for _, b := range s.Beads {
		each(b.Outline)
	}
	return low, high
}

func (s Sketch) finite() bool {
	low, high := s.Bounds()
	size := high.Sub(low).Len()
	return !math.IsNaN(size) && !math.IsInf(size, 0) && size > 0 && size < 1e5
}

func (s *Sketch) plate(name string, cut []int, outline ...Point) {
	flags := make([]bool, len(outline))
	for _, i := range cut {
		flags[i] = true
	}
	s.Plates = append(s.Plates, Plate{name, outline, flags})
}

func (s *Sketch) dim(name string, value float64, from, to, away Point) {
	if value > 0 {
		s.Dims = append(s.Dims, Dim{Name: name, From: from, To: to, Away: away.Unit(), Value: value})
	}
}
