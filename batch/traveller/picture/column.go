package picture

import (
	"math"
	"slices"

	"seamtally/batch/traveller/page"
)

// spot is where a number of a column stands and the line to it.
type spot struct {
	at   page.Point
	line stroke
	cost float64
	over bool // it lies over an edge, which gives way to it
}

var leadStyle = page.Style{Face: page.Bold, Size: page.MinSize}

const (
	slotStep  = 0.5 // mm between the places tried
	slotReach = 14  // mm above the first pass and below the last
	overEdge  = 4   // what it costs a number to lie over an edge, in mm of slope
	farther   = 0.4 // what a millimetre away from the weld costs
)

// column is where the numbers of one side may stand, at one distance from the weld: for each
// number the places from the top down.
type column struct {
	away  float64
	spots [][]spot
}

// columns returns the columns nearer and farther from the weld.
func (f *drawing) columns(leads []lead, edge, way float64) []column {
	slots := f.slots(leads)
	var out []column
	for _, away := range []float64{3, 5, 7, 9, 12, 16} {
		c := column{away: away}
		for _, l := range leads {
			row := make([]spot, len(slots))
			for j, y := range slots {
				row[j] = f.spotFor(l, page.Point{X: edge + way*(away+leadStyle.Width(l.text)/2), Y: y}, way)
			}
			c.spots = append(c.spots, row)
		}
		out = append(out, c)
	}
	return out
}

// bestColumn returns places for some of the numbers of one side, from the top down in the
// order of their passes, so that no line crosses another or runs through a text: in the
// column with the gentlest lines. None: nil.
func (f *drawing) bestColumn(all []column, some []int) []spot {
	var best []spot
	least := math.Inf(1)
	for _, c := range all {
		spots, cost := f.fill(c, some)
		if cost += farther * c.away * float64(len(some)); spots != nil && cost < least && !cross(spots) {
			best, least = spots, cost
		}
	}
	return best
}

// fill returns the places of some numbers in a column with the least slope in all.
func (f *drawing) fill(c column, some []int) ([]spot, float64) {
	apart := int(math.Ceil(f.labelArea(leadStyle, "0", page.Point{}).H / slotStep))
	n := len(c.spots[0])
	costs, from := make([][]float64, len(some)), make([][]int, len(some))
	for i, lead := range some {
		costs[i], from[i] = make([]float64, n), make([]int, n)
		for j, at := range c.spots[lead] {
			if costs[i][j] = at.cost; i == 0 || math.IsInf(at.cost, 1) {
				continue
			}
			costs[i][j] = math.Inf(1)
			for k := 0; k <= j-apart; k++ {
				if sum := costs[i-1][k] + at.cost; sum < costs[i][j] && !crossing(c.spots[some[i-1]][k].line, at.line) {
					costs[i][j], from[i][j] = sum, k
				}
			}
		}
	}
	last, end := len(some)-1, 0
	for j, cost := range costs[last] {
		if cost < costs[last][end] {
			end = j
		}
	}
	least := math.Inf(1)
	if n > 0 {
		least = costs[last][end]
	}
	if math.IsInf(least, 1) {
		return nil, least
	}
	out := make([]spot, len(some))
	for i, j := last, end; i >= 0; i, j = i-1, from[i][j] {
		out[i] = c.spots[some[i]][j]
	}
	return out, least
}

// slots are the heights at which a number of a side may stand.
func (f *drawing) slots(leads []lead) []float64 {
	top, bottom := math.Inf(1), math.Inf(-1)
	for _, l := range leads {
		for _, d := range l.dots {
			top, bottom = min(top, d.Y), max(bottom, d.Y)
		}
	}
	var out []float64
	for y := max(top-slotReach, f.frame.Y); y <= min(bottom+slotReach, f.frame.Bottom()); y += slotStep {
		out = append(out, y)
	}
	return out
}

// spotFor returns a place for a number with the gentlest line to it that runs through no
// text; its cost is infinite where there is none or the place is not free.
func (f *drawing) spotFor(l lead, at page.Point, way float64) spot {
	out := spot{at: at, cost: math.Inf(1)}
	area := f.labelArea(leadStyle, l.text, at)
	if !f.free(area) || crossed(area, f.lines) {
		return out
	}
	out.over = crossed(area, f.edges)
	end := page.Point{X: at.X - way*(leadStyle.Width(l.text)/2+0.6), Y: at.Y}
	for n, d := range l.dots {
		line := stroke{d, end}
		rise := math.Abs(end.Y - d.Y)
		cost := rise + rise*rise/20 + float64(n)*0.3
		if out.over {
			cost += overEdge
		}
		if (end.X-d.X)*way <= 1 || cost >= out.cost || f.overLabel(line) || slices.ContainsFunc(f.leaders, func(o stroke) bool { return crossing(o, line) }) {
			continue
		}
		out.line, out.cost = line, cost
	}
	return out
}

// drawLeads draws lines and numbers.
func (f *drawing) drawLeads(all []numbered) {
	for _, n := range all {
		if n.over {
			f.p.Frame(f.box, f.labelArea(leadStyle, n.text, n.at).Inset(0.2, 0.2), 0, 1)
		}
		f.write(leadStyle, n.text, n.at)
	}
	for _, n := range all {
		f.p.Line(f.box, n.line.a.X, n.line.a.Y, n.line.b.X, n.line.b.Y, 0.12, 0)
		f.p.Circle(f.box, n.line.a, 0.35, 0, 0)
		f.lines, f.leaders = append(f.lines, n.line), append(f.leaders, n.line)
	}
}

// cross tells whether any two lines of a column cross.
func cross(spots []spot) bool {
	for i, a := range spots {
		for _, b := range spots[:i] {
			if crossing(a.line, b.line) {
				return true
			}
		}
	}
	return false
}

// overLabel tells whether a line would run through a label that is already set.
func (f *drawing) overLabel(l stroke) bool {
	return slices.ContainsFunc(f.taken, func(r page.Rect) bool { return through(r, l) })
}

// crossing tells whether two lines cross.
func crossing(l, o stroke) bool {
	return l.side(o.a)*l.side(o.b) < 0 && o.side(l.a)*o.side(l.b) < 0
}

// side is above, below or at zero as a point lies on one side of a line, on the other or on it.
func (l stroke) side(q page.Point) float64 {
	return (l.b.X-l.a.X)*(q.Y-l.a.Y) - (l.b.Y-l.a.Y)*(q.X-l.a.X)
}
