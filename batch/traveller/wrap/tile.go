package wrap

import (
	"math"

	"seamtally/batch/traveller/page"
)

// The paper of a template, in its own millimetres: x round the tube from the heel,
// y up from the base line.
const (
	flap    = 8.0  // glued under the start of the paper
	side    = 2.0  // white left and right of the lines
	above   = 6.0  // white for a line of words beyond the tube's end
	below   = 5.5  // and below the base line
	overlap = 16.0 // that two sheets have in common
)

// Size returns the width and height of the whole paper.
func (t *Template) Size() (w, h float64) {
	return t.Round() + flap + 2*side, float64(t.Base) + above + below
}

// Window is a part of the paper and where it stands on a page, in true size.
type Window struct {
	Paper      page.Rect
	X, Y       float64 // of the template, at the lower left corner
	Col, Row   int     // of the sheet, from the left and from the top
	Cols, Rows int
}

// Windows spreads the paper over areas of the size given, all alike, each sharing a
// strip with its neighbours. They come row by row from the top left.
func (t *Template) Windows(area page.Rect) []Window {
	w, h := t.Size()
	cols, stepX := spread(w, area.W)
	rows, stepY := spread(h, area.H)
	width, height := min(w, area.W), min(h, area.H)
	if cols > 1 {
		width = stepX + overlap
	}
	if rows > 1 {
		height = stepY + overlap
	}
	paper := page.Rect{X: area.X + (area.W-width)/2, Y: area.Y + (area.H-height)/2, W: width, H: height}
	var out []Window
	for r := range rows {
		for c := range cols {
			out = append(out, Window{
				Paper: paper, X: -side + float64(c)*stepX, Y: -below + float64(rows-1-r)*stepY,
				Col: c, Row: r, Cols: cols, Rows: rows,
			})
		}
	}
	return out
}

// spread returns how many pieces of at most room a length is cut into, and by how
// much each begins after the one before.
func spread(length, room float64) (n int, step float64) {
	if length <= room+1e-9 {
		return 1, 0
	}
	n = int(math.Ceil((length-overlap)/(room-overlap) - 1e-9))
	return n, (length - overlap) / float64(n)
}

// at returns where a point of the template lies on the page.
func (w Window) at(x, y float64) page.Point {
	return page.Point{X: w.Paper.X + x - w.X, Y: w.Paper.Bottom() - (y - w.Y)}
}

// joins returns the x and the y of the template at which this sheet meets its
// neighbours: the middle of the strip they share.
func (w Window) joins() (xs, ys []float64) {
	if w.Col > 0 {
		xs = append(xs, w.X+overlap/2)
	}
	if w.Col < w.Cols-1 {
		xs = append(xs, w.X+w.Paper.W-overlap/2)
	}
	if w.Row > 0 {
		ys = append(ys, w.Y+w.Paper.H-overlap/2)
	}
	if w.Row < w.Rows-1 {
		ys = append(ys, w.Y+overlap/2)
	}
	return xs, ys
}

// clip returns the parts of an open line that lie in a rectangle.
func clip(r page.Rect, line []page.Point) [][]page.Point {
	var out [][]page.Point
	var run []page.Point
	for i := 1; i < len(line); i++ {
		a, b, ok := clipSegment(r, line[i-1], line[i])
		if !ok {
			continue
		}
		if len(run) > 0 && run[len(run)-1] == a {
			run = append(run, b)
			continue
		}
		if len(run) > 1 {
			out = append(out, run)
		}
		run = []page.Point{a, b}
	}
	if len(run) > 1 {
		out = append(out, run)
	}
	return out
}

// clipSegment returns the part of a segment inside a rectangle: of the ways along
// it at which it crosses the four sides, the last entry and the first exit.
func clipSegment(r page.Rect, a, b page.Point) (page.Point, page.Point, bool) {
	in, out := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, s := range [4][2]float64{{-dx, a.X - r.X}, {dx, r.Right() - a.X}, {-dy, a.Y - r.Y}, {dy, r.Bottom() - a.Y}} {
		switch d, room := s[0], s[1]; {
		case d == 0 && room < 0:
			return a, b, false
		case d < 0:
			in = max(in, room/d)
		case d > 0:
			out = min(out, room/d)
		}
	}
	if in > out {
		return a, b, false
	}
	from, to := a, b
	if in > 0 {
		from = page.Point{X: a.X + in*dx, Y: a.Y + in*dy}
	}
	if out < 1 {
		to = page.Point{X: a.X + out*dx, Y: a.Y + out*dy}
	}
	return from, to, true
}
