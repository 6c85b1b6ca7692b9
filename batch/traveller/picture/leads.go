package picture

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/sketch"
)

// lead is a line from a pass, or from a layer of them, to its number beside the weld.
type lead struct {
	text   string
	beads  []int // of the sketch, side by side
	centre page.Point
	left   bool
	dots   []page.Point // where its line may begin, the best first
}

// mostLeads is up to how many passes have a line of their own: of more each layer has one.
const mostLeads = 12

// numbersBeside writes the numbers of passes that are too thin for them to the left and to
// the right of the weld, in two columns. Where they have not all room there, some are left
// out: the passes are numbered in order.
func (f *drawing) numbersBeside(s sketch.Sketch, later []int) {
	if len(later) == 0 {
		return
	}
	leads := f.leadsTo(s, later)
	f.shareLeads(s, leads)
	f.drawLeads(f.bothSides(s, leads))
}

// numbered is a lead and where its number stands.
type numbered struct {
	lead
	spot
}

// bothSides places the numbers of the right side, and of the left clear of them: as many as
// have room, evenly taken.
func (f *drawing) bothSides(s sketch.Sketch, leads []lead) []numbered {
	left, right := math.Inf(1), math.Inf(-1)
	for _, b := range s.Beads {
		for _, q := range f.outline(b.Outline) {
			left, right = min(left, q.X), max(right, q.X)
		}
	}
	var out []numbered
	for _, side := range []struct {
		left      bool
		edge, way float64
	}{{false, right, 1}, {true, left, -1}} {
		own := slices.DeleteFunc(slices.Clone(leads), func(l lead) bool { return l.left != side.left })
		slices.SortStableFunc(own, func(a, b lead) int { return cmp.Compare(a.centre.Y, b.centre.Y) })
		for i := range own {
			own[i].dots = f.dots(s, own[i])
		}
		if len(own) == 0 {
			continue
		}
		columns := f.columns(own, side.edge, side.way)
		for n := len(own); n > 0; n-- {
			some := spread(len(own), n)
			if spots := f.bestColumn(columns, some); spots != nil {
				for i, at := range spots {
					out = append(out, numbered{own[some[i]], at})
					f.taken, f.leaders = append(f.taken, f.labelArea(leadStyle, own[some[i]].text, at.at)), append(f.leaders, at.line)
				}
				break
			}
		}
	}
	return out
}

// spread takes some of many, evenly, the first and the last among them.
func spread(many, some int) []int {
	out := make([]int, some)
	for i := range out {
		out[i] = i * (many - 1) / max(some-1, 1)
	}
	return out
}

// leadsTo returns a lead for each pass, or, of very many, for each stretch of a layer.
func (f *drawing) leadsTo(s sketch.Sketch, later []int) []lead {
	var out []lead
	for k, i := range later {
		b := s.Beads[i]
		if n := len(out) - 1; len(later) > mostLeads && k > 0 && later[k-1] == i-1 {
			if a := s.Beads[i-1]; a.Layer == b.Layer && a.Side == b.Side && a.Mirror == b.Mirror && b.Layer > 0 {
				out[n].beads = append(out[n].beads, i)
				out[n].text = strconv.Itoa(s.Beads[out[n].beads[0]].Number) + "–" + strconv.Itoa(b.Number)
				continue
			}
		}
		out = append(out, lead{text: strconv.Itoa(b.Number), beads: []int{i}})
	}
	for i := range out {
		for _, k := range out[i].beads {
			q := f.at(s.Beads[k].Outline.Centre())
			out[i].centre.X += q.X / float64(len(out[i].beads))
			out[i].centre.Y += q.Y / float64(len(out[i].beads))
		}
	}
	return out
}

// shareLeads shares the numbers out to the two sides: the passes of a layer to the side
// that they lie on, those alone in it in turn. Of two seams each keeps its own side.
func (f *drawing) shareLeads(s sketch.Sketch, all []lead) {
	twins := slices.ContainsFunc(s.Beads, func(b sketch.Bead) bool { return b.Mirror })
	order := make([]*lead, len(all))
	for i := range all {
		order[i] = &all[i]
	}
	slices.SortStableFunc(order, func(a, b *lead) int { return cmp.Compare(a.centre.Y, b.centre.Y) })
	left := false
	for _, l := range order {
		b := s.Beads[l.beads[0]]
		switch middle, many := f.layerMiddle(s, b); {
		case twins:
			l.left = b.Mirror
		case many && len(l.beads) == 1 && math.Abs(l.centre.X-middle) > 0.3:
			l.left = l.centre.X < middle
		default:
			l.left, left = left, !left
		}
	}
}

// layerMiddle is the middle of the layer of a pass from left to right, and whether there
// are others in it.
func (f *drawing) layerMiddle(s sketch.Sketch, of sketch.Bead) (middle float64, many bool) {
	low, high, n := math.Inf(1), math.Inf(-1), 0
	for _, b := range s.Beads {
		if b.Layer == of.Layer && b.Side == of.Side && b.Mirror == of.Mirror {
			x := f.at(b.Outline.Centre()).X
			low, high, n = min(low, x), max(high, x), n+1
		}
	}
	return (low + high) / 2, n > 1 && of.Layer > 0
}

// dots are the places on a pass at which its line may begin, the best first: below the
// others, so that the lines run side by side, in its middle, where else it is seen.
func (f *drawing) dots(s sketch.Sketch, l lead) []page.Point {
	i := l.beads[len(l.beads)-1]
	if l.left {
		i = l.beads[0]
	}
	pts, middle := f.outline(s.Beads[i].Outline), f.at(s.Beads[i].Outline.Centre())
	seen := func(c page.Point) bool {
		return around(pts, c) && !f.covered(s, i, page.Rect{X: c.X - 0.4, Y: c.Y - 0.4, W: 0.8, H: 0.8})
	}
	var out []page.Point
	if _, many := f.layerMiddle(s, s.Beads[i]); !many {
		if below := (page.Point{X: f.at(s.Beads[0].Outline.Centre()).X, Y: middle.Y}); seen(below) {
			out = append(out, below)
		}
	}
	for _, c := range f.inner(pts, middle) {
		if len(out) < mostDots && seen(c) {
			out = append(out, c)
		}
	}
	if len(out) == 0 {
		out = append(out, middle)
	}
	return out
}

// mostDots is how many places on a pass are tried.
const mostDots = 8
