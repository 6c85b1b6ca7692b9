package picture

import (
	"math"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
)

// Icon draws small pictures in a square of side 1, x right and y down, laid on
// the page at a place and size.
type Icon struct {
	P    *page.Page
	Box  page.BoxID
	At   page.Point
	Size float64
}

func (i Icon) pt(x, y float64) page.Point {
	return page.Point{X: i.At.X + x*i.Size, Y: i.At.Y + y*i.Size}
}

func (i Icon) poly(fill, line float64, xy ...float64) {
	var pts []page.Point
	for k := 0; k+1 < len(xy); k += 2 {
		pts = append(pts, i.pt(xy[k], xy[k+1]))
	}
	i.P.Draw(i.Box, page.Shape{Points: pts, Closed: true, Fill: fill, Line: line})
}

// nozzle draws a torch whose tip is at x,y and whose body lies in direction t
// (radians, anticlockwise from the right).
func (i Icon) nozzle(x, y, t, length float64) {
	c, s := math.Cos(t), -math.Sin(t)
	side := func(along, across float64) page.Point {
		return i.pt(x+c*along-s*across, y+s*along+c*across)
	}
	wire := []page.Point{side(0.02, 0), side(0.14, 0)}
	i.P.Draw(i.Box, page.Shape{Points: wire, Line: 0.5, Fill: page.None})
	i.P.Draw(i.Box, page.Shape{Points: []page.Point{
		side(0.12, 0.055), side(length*0.55, 0.085), side(length, 0.085),
		side(length, -0.085), side(length*0.55, -0.085), side(0.12, -0.055),
	}, Closed: true, Fill: 0.15, Line: 0.2})
}

// floor draws the ground: down is there.
func (i Icon) floor() {
	a, b := i.pt(0.04, 0.97), i.pt(0.96, 0.97)
	i.P.Line(i.Box, a.X, a.Y, b.X, b.Y, 0.5, 0)
	for k := range 8 {
		x := 0.08 + float64(k)*0.115
		a, b := i.pt(x+0.05, 0.97), i.pt(x, 1.02)
		i.P.Line(i.Box, a.X, a.Y, b.X, b.Y, 0.15, 0)
	}
}

// grey is the fill of a plate.
const grey = 0.8

// Position draws how a joint of a kind lies and where the torch comes from. The codes
// are those of ISO 6947; a pipe position is drawn as its plate counterpart. A kind that
// has no drawing of its own in a position is drawn as a butt or a T.
func (i Icon) Position(code string, kind joint.Kind) {
	i.floor()
	if (code == "PA" || code == "PB") && i.ownDrawing(code, kind) {
		return
	}
	switch code {
	case "PA":
		i.poly(grey, 0.3, 0.08, 0.62, 0.47, 0.62, 0.53, 0.74, 0.08, 0.74)
		i.poly(grey, 0.3, 0.92, 0.62, 0.53, 0.62, 0.53, 0.74, 0.92, 0.74)
		i.nozzle(0.5, 0.6, math.Pi/2, 0.5)
	case "PB":
		i.poly(grey, 0.3, 0.08, 0.74, 0.92, 0.74, 0.92, 0.86, 0.08, 0.86)
		i.poly(grey, 0.3, 0.28, 0.18, 0.4, 0.18, 0.4, 0.74, 0.28, 0.74)
		i.poly(1, 0.3, 0.4, 0.74, 0.4, 0.6, 0.54, 0.74)
		i.nozzle(0.48, 0.66, math.Pi/4, 0.52)
	case "PC":
		i.poly(grey, 0.3, 0.3, 0.06, 0.42, 0.06, 0.42, 0.44, 0.3, 0.48)
		i.poly(grey, 0.3, 0.3, 0.5, 0.42, 0.5, 0.42, 0.9, 0.3, 0.9)
		i.nozzle(0.44, 0.47, 0.1, 0.5)
	case "PD":
		i.poly(grey, 0.3, 0.08, 0.12, 0.92, 0.12, 0.92, 0.24, 0.08, 0.24)
		i.poly(grey, 0.3, 0.28, 0.24, 0.4, 0.24, 0.4, 0.78, 0.28, 0.78)
		i.poly(1, 0.3, 0.4, 0.24, 0.54, 0.24, 0.4, 0.38)
		i.nozzle(0.48, 0.32, -math.Pi/4, 0.52)
	case "PE":
		i.poly(grey, 0.3, 0.08, 0.2, 0.47, 0.2, 0.53, 0.32, 0.08, 0.32)
		i.poly(grey, 0.3, 0.92, 0.2, 0.53, 0.2, 0.53, 0.32, 0.92, 0.32)
		i.nozzle(0.5, 0.34, -math.Pi/2, 0.5)
	case "PF", "PH":
		i.upright(1)
	case "PG", "PJ":
		i.upright(-1)
	default:
		i.nozzle(0.5, 0.75, math.Pi/2, 0.5)
	}
}

// ownDrawing draws the kinds that lie otherwise than a butt in PA and a T in PB; it
// tells whether this is one of them.
func (i Icon) ownDrawing(code string, kind joint.Kind) bool {
	switch {
	case code == "PA" && (kind == joint.Fillet || kind == joint.Lap): // in the trough
		i.poly(grey, 0.3, 0.5, 0.84, 0.146, 0.486, 0.054, 0.578, 0.408, 0.932)
		i.poly(grey, 0.3, 0.5, 0.84, 0.854, 0.486, 0.946, 0.578, 0.592, 0.932)
		i.poly(1, 0.3, 0.5, 0.84, 0.38, 0.72, 0.62, 0.72)
		i.nozzle(0.5, 0.7, math.Pi/2, 0.5)
	case code == "PA" && kind == joint.Corner: // on the ridge
		i.poly(grey, 0.3, 0.5, 0.56, 0.217, 0.843, 0.125, 0.751, 0.408, 0.468)
		i.poly(grey, 0.3, 0.5, 0.56, 0.783, 0.843, 0.875, 0.751, 0.592, 0.468)
		i.poly(1, 0.3, 0.5, 0.56, 0.408, 0.468, 0.592, 0.468)
		i.nozzle(0.5, 0.45, math.Pi/2, 0.42)
	case code == "PA" && kind == joint.Edge:
		i.poly(grey, 0.3, 0.36, 0.55, 0.5, 0.55, 0.5, 0.93, 0.36, 0.93)
		i.poly(grey, 0.3, 0.5, 0.55, 0.64, 0.55, 0.64, 0.93, 0.5, 0.93)
		i.poly(1, 0.3, 0.36, 0.55, 0.41, 0.49, 0.59, 0.49, 0.64, 0.55)
		i.nozzle(0.5, 0.47, math.Pi/2, 0.44)
	case code == "PA" && (kind == joint.Plug || kind == joint.Slot):
		i.poly(grey, 0.3, 0.08, 0.76, 0.92, 0.76, 0.92, 0.88, 0.08, 0.88)
		i.poly(grey, 0.3, 0.08, 0.64, 0.38, 0.64, 0.38, 0.76, 0.08, 0.76)
		i.poly(grey, 0.3, 0.62, 0.64, 0.92, 0.64, 0.92, 0.76, 0.62, 0.76)
		i.poly(1, 0.3, 0.38, 0.64, 0.62, 0.64, 0.62, 0.76, 0.38, 0.76)
		i.nozzle(0.5, 0.62, math.Pi/2, 0.5)
	case code == "PB" && kind == joint.Lap:
		i.poly(grey, 0.3, 0.08, 0.76, 0.92, 0.76, 0.92, 0.88, 0.08, 0.88)
		i.poly(grey, 0.3, 0.08, 0.62, 0.46, 0.62, 0.46, 0.76, 0.08, 0.76)
		i.poly(1, 0.3, 0.46, 0.76, 0.46, 0.62, 0.6, 0.76)
		i.nozzle(0.54, 0.67, math.Pi/4, 0.5)
	case code == "PB" && kind == joint.Corner:
		i.poly(grey, 0.3, 0.08, 0.36, 0.44, 0.36, 0.44, 0.5, 0.08, 0.5)
		i.poly(grey, 0.3, 0.44, 0.5, 0.58, 0.5, 0.58, 0.93, 0.44, 0.93)
		i.poly(1, 0.3, 0.44, 0.5, 0.44, 0.36, 0.58, 0.5)
		i.nozzle(0.52, 0.42, math.Pi/4, 0.5)
	default:
		return false
	}
	return true
}

// upright draws a standing seam seen from the side, welded up or down.
func (i Icon) upright(up float64) {
	i.poly(0.8, 0.3, 0.22, 0.06, 0.36, 0.06, 0.36, 0.92, 0.22, 0.92)
	if up > 0 {
		i.poly(1, 0.3, 0.36, 0.52, 0.44, 0.58, 0.44, 0.92, 0.36, 0.92)
	} else {
		i.poly(1, 0.3, 0.36, 0.06, 0.44, 0.06, 0.44, 0.42, 0.36, 0.48)
	}
	// The torch points a little upward in both directions, to hold the pool.
	i.nozzle(0.4, 0.5, -0.15, 0.45)
	i.P.Arrow(i.Box, i.pt(0.62, 0.5-0.14*up), i.pt(0.62, 0.5-0.44*up), 0.6, 2.6)
}

// Lean is how the torch leans along the seam.
type Lean int

// The leans.
const (
	Square Lean = iota
	Push        // the torch points the way it goes
	Drag        // the torch points back at the weld
)

// Torch draws the torch from the side: the plate, the weld already laid, the way
// it goes and the lean, drawn at the angle stated.
func (i Icon) Torch(l Lean, degrees float64) {
	i.poly(0.8, 0.3, 0, 0.8, 1.9, 0.8, 1.9, 0.92, 0, 0.92)
	i.poly(1, 0.3, 0.05, 0.8, 0.1, 0.72, 0.95, 0.72, 1.02, 0.8)
	t := math.Pi / 2
	switch l {
	case Push:
		t += degrees * math.Pi / 180
	case Drag:
		t -= degrees * math.Pi / 180
	}
	i.nozzle(1, 0.78, t, 0.62)
	if l != Square {
		i.P.Draw(i.Box, page.Shape{Points: []page.Point{i.pt(1, 0.78), i.pt(1, 0.05)}, Line: 0.15, Fill: page.None, Dash: 0.8})
	}
	i.P.Arrow(i.Box, i.pt(1.3, 0.6), i.pt(1.85, 0.6), 0.6, 2.4)
}

// Warning draws a small triangle with a bar, the height of a line of text.
func Warning(p *page.Page, box page.BoxID, x, y, h float64) {
	p.Draw(box, page.Shape{Points: []page.Point{{X: x, Y: y}, {X: x + h/2, Y: y - h}, {X: x + h, Y: y}}, Closed: true, Fill: page.None, Line: 0.3})
	p.Line(box, x+h/2, y-h*0.62, x+h/2, y-h*0.34, 0.35, 0)
	p.Line(box, x+h/2, y-h*0.16, x+h/2, y-h*0.15, 0.4, 0)
}

// Tick draws an empty box to be ticked.
func Tick(p *page.Page, box page.BoxID, x, y, side float64) {
	p.Frame(box, page.Rect{X: x, Y: y - side, W: side, H: side}, 0.3, page.None)
}
