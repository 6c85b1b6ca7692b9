package plan

import "math"

// layPasses cuts the seam into passes and settles the current of each group:
// a single pass where the drawn size and the travel allow it, else equal beads
// for fillets, and a root with equal fills for grooves and for corners whose root
// hangs free, side by side.
func (c *catalog) layPasses(o *outcome, t *task) {
	if t.holeDepth > 0 {
		c.layHole(o, t)
		return
	}
	for s := range t.sides {
		side := &t.sides[s]
		if side.made <= 0 {
			continue
		}
		if t.leg > 0 && !t.openRoot {
			c.layFillet(o, t, side, s+1)
		} else {
			c.layGroove(o, t, side, s+1)
		}
	}
	if o.count == 1 && o.groups[0].n == 1 {
		o.groups[0].kind = Single
	}
}

// side is the weld metal of one side of a seam, mm².
type side struct {
	drawn, made float64
	depth       float64 // of the preparation, mm
}

// layFillet lays a fillet in one pass up to the largest single leg of the way,
// else in equal beads.
func (c *catalog) layFillet(o *outcome, t *task, s *side, number int) {
	n := 1
	if t.leg > o.way.pass.MaxLeg+1e-9 {
		n = max(2, ceil(s.drawn/o.way.pass.Fill))
	}
	n = max(n, ceil(s.made/o.way.largestPass(o.wanted, t.density)))
	c.add(o, t, group{n: n, side: number, kind: Fill, way: o.way, area: s.made / float64(n)}, o.wanted)
}

// layGroove lays a root and, where it does not fill the groove, equal passes on
// it. The allowances are spread over the passes in proportion.
func (c *catalog) layGroove(o *outcome, t *task, s *side, number int) {
	ratio := s.made / max(s.drawn, 1e-9)
	if s.drawn <= 0 { // only a cap: a closed square edge
		c.add(o, t, group{n: 1, side: number, kind: rootKind(number), way: o.way, area: s.made}, o.wanted)
		return
	}
	rootWay, rootWanted := o.way, o.wanted
	first := o.way.pass.Root
	switch {
	case t.openRoot && number == 1:
		rootWay = o.way.rootWay
		rootWanted = min(o.wanted, c.upward(t)*target(rootWay.targets.family[butt].points, min(c.rules.rootT, c.rules.rootShare*t.thin)))
		first = rootWay.pass.Root
	case t.prep.Backing == "ceramic" && number == 1:
		rootWanted = min(o.wanted, target(o.way.targets.family[butt].points, c.rules.ceramicT))
		if rootWanted < o.way.start { // the strip does not bear this mode
			rootWay = o.way.rootWay
		}
	}
	limit := min(first, rootWay.largestPass(rootWanted, t.density)/ratio)
	if s.drawn <= limit*1.001 {
		c.add(o, t, group{n: 1, side: number, kind: rootKind(number), way: rootWay, area: s.made}, rootWanted)
		return
	}
	largest := o.way.largestPass(o.wanted, t.density)
	root, n := split(s.drawn, limit, min(o.way.pass.Fill, largest/ratio))
	full := c.fullIn(o, t)
	c.add(o, t, group{n: 1, side: number, kind: rootKind(number), way: rootWay, area: root * ratio, full: ofBack(number, full)}, rootWanted)
	c.add(o, t, group{n: n, side: number, kind: Fill, way: o.way, area: (s.drawn - root) * ratio / float64(n), full: full}, o.wanted)
}

// fullIn is the area in mm² of the largest pass over a root of the joint; 0 where no
// walls carry the pool, as on the edges of an open corner: there a bead's own area counts.
func (c *catalog) fullIn(o *outcome, t *task) float64 {
	if t.leg > 0 {
		return 0
	}
	return min(o.way.full, o.way.largestPass(o.wanted, t.density))
}

// ofBack is the full bead of a back run that others follow: the dials stay for its side. A
// root on the first side takes what melting through needs.
func ofBack(side int, full float64) float64 {
	if side == 2 {
		return full
	}
	return 0
}

// upward is the share of a flat butt's current that melts a butt through in the joint's
// position: the pool that would run out asks for less.
func (c *catalog) upward(t *task) float64 {
	if hasWord("PD PE PF", positions[t.pos]) {
		return c.rules.upShare
	}
	return 1
}

// split returns the drawn area of the root pass, at most root, and the number of
// passes over it, of at most fill. A root much larger than the passes on it would leave
// them thin and hurried, so it gives some of its metal away.
func split(drawn, root, fill float64) (float64, int) {
	root = min(root, drawn*2/3)
	n := max(1, ceil((drawn-root)/fill))
	return min(root, 1.15*drawn/float64(n+1)), n
}

func rootKind(side int) RunKind {
	if side == 2 {
		return Back
	}
	return Root
}

func ceil(x float64) int { return int(math.Ceil(x - 1e-6)) }

// add settles a group and takes it into the outcome.
func (c *catalog) add(o *outcome, t *task, g group, wanted float64) {
	o.stands |= g.lay(wanted, t.density)
	o.groups[o.count] = g
	o.count++
}

// runs writes the groups of an outcome out as passes with layers and beads; share is
// what a current may be off.
func (o *outcome) runs(t *task, share float64) []Run {
	out := make([]Run, 0, o.passes)
	for i := range o.groups[:o.count] {
		g := &o.groups[i]
		layer := 0
		if i > 0 && o.groups[i-1].side == g.side {
			layer = 1 // the root lies below
		}
		beads := o.layers(g, t, layer)
		for _, in := range beads {
			layer++
			for bead := 1; bead <= in; bead++ {
				out = append(out, g.run(len(out)+1, layer, bead, t.density, share))
			}
		}
		if top := len(out) - 1; g.kind == Fill && len(beads) > 0 {
			for k := 0; k < beads[len(beads)-1]; k++ {
				out[top-k].Kind = Cap
			}
		}
	}
	if (t.leg > 0 || t.holeDepth > 0) && len(out) > 1 {
		out[0].Kind = Root
	}
	return out
}

// layers returns the number of beads in each layer of a group, bottom first.
func (o *outcome) layers(g *group, t *task, below int) []int {
	if t.holeDepth > 0 {
		return holeLayers(g.n)
	}
	if t.leg > 0 {
		return filletLayers(g.n)
	}
	if g.n == 1 {
		return []int{1}
	}
	return grooveLayers(g, t, below)
}

// filletLayers spreads beads over the layers of a growing triangle: the share of
// the area up to layer k of l is (k/l)².
func filletLayers(n int) []int {
	if n == 1 {
		return []int{1}
	}
	l := max(2, ceil(math.Sqrt(float64(n))))
	out := make([]int, 0, l)
	laid := 0
	for k := 1; k <= l; k++ {
		upTo := int(math.Round(float64(n) * float64(k*k) / float64(l*l)))
		if in := upTo - laid; in > 0 {
			out = append(out, in)
			laid = upTo
		}
	}
	return out
}

// grooveLayers fills a groove from the root: each layer has as many beads as its
// width needs at the widest bead of the way.
func grooveLayers(g *group, t *task, below int) []int {
	var out []int
	left := g.n
	side := &t.sides[g.side-1]
	done := 0.0
	if below > 0 {
		done = side.made - float64(g.n)*g.area
	}
	for left > 0 {
		width := t.widthAt(side, done/side.made)
		in := min(left, max(1, int(math.Round(width/g.width))))
		out = append(out, in)
		left -= in
		done += float64(in) * g.area
	}
	return out
}

// widthAt returns about how wide the groove is once a share of its area is full:
// the width grows from the gap to the mouth with the root of the area.
func (t *task) widthAt(s *side, share float64) float64 {
	if s.depth <= 0 {
		return 0
	}
	gap := float64(t.prep.Gap)
	mean := s.drawn / s.depth
	mouth := max(gap, 2*mean-gap)
	return math.Sqrt(gap*gap + min(share, 1)*(mouth*mouth-gap*gap))
}
