package plan

import (
	"fmt"
	"math"
	"strings"

	"seamtally/tables"
)

// passes shows how each side of a seam was cut into passes.
func (w *working) passes(o *outcome) {
	t, r := w.t, o.way.pass
	if t.holeDepth > 0 {
		return
	}
	for s := range t.sides {
		side := &t.sides[s]
		if side.made <= 0 {
			continue
		}
		if t.leg > 0 && !t.openRoot {
			w.step("PASS-1", w.sideName(s)+"passes", "one up to the largest single leg and the largest pass that the slowest travel allows, else n = ⌈A_drawn / A_fill⌉, at least 2",
				fmt.Sprintf("leg %s mm of %s mm, %s mm² of %s mm²; A_fill %s mm²", number(t.leg, 2), number(r.MaxLeg, 2),
					number(side.made, 2), number(o.way.largestPass(o.wanted, t.density), 1), number(r.Fill, 1)),
				count(o, s+1), r.Source, r.Basis)
			continue
		}
		w.step("PASS-2", w.sideName(s)+"passes", "root = least of its limit, 2/3 A and 1.15 A/(n + 1); n = ⌈(A − root) / A_fill⌉ over it; then x A_made/A_drawn",
			fmt.Sprintf("A %s mm² drawn, %s made; root at most %s, A_fill %s mm²", number(side.drawn, 2), number(side.made, 2), number(r.Root, 1), number(r.Fill, 1)),
			count(o, s+1), r.Source, r.Basis)
	}
}

// sideName opens a step where both sides of a seam are welded.
func (w *working) sideName(s int) string {
	if w.t.sides[0].made > 0 && w.t.sides[1].made > 0 {
		return fmt.Sprintf("side %d: ", s+1)
	}
	return ""
}

// count returns the passes of a side in words: "1 of 22.01 mm², 2 of 38.97 mm²".
func count(o *outcome, side int) string {
	var parts []string
	for i := range o.groups[:o.count] {
		if g := &o.groups[i]; g.side == side {
			parts = append(parts, fmt.Sprintf("%d of %s mm²", g.n, number(g.area, 2)))
		}
	}
	return strings.Join(parts, ", ")
}

// amperes shows which of the limits set the current of a kind of pass.
func (w *working) amperes(g *group, what string) {
	n := g.way
	bead := "no limit from the bead"
	if !math.IsInf(g.borne, 1) {
		size, name := g.area, "a bead"
		switch {
		case g.full > 0 && g.full < n.full:
			size, name = g.full, "the largest bead that the slowest travel leaves"
		case g.full > 0:
			size, name = g.full, "the largest bead over a root, a fillet of "+number(n.pass.Fill, 1)+" mm² with the shop's allowances,"
		}
		bead = fmt.Sprintf("%s of %s mm² (leg %s mm) bears %s A", name, number(size, 2), number(math.Sqrt(2*size), 2), number(g.borne, 0))
	}
	fastest := "" // a hole filled on the spot has no travel
	if r := g.hand(); r != nil && g.travel > 0 && w.t.holeDepth == 0 {
		fastest = fmt.Sprintf("; travel of %s mm/min (%s) takes %s A", number(r.High, 0), r.Technique, number(n.currentAt(n.feedFor(depositFor(r.High, g.area, w.t.density))), 0))
	}
	w.step("AMPERES-1", what+"current", "least of what the parts call for, what the bead bears, the window and the fastest travel; never below the window",
		fmt.Sprintf("%s A called for; %s; window %s to %s A%s", number(g.wanted, 0), bead, number(n.start, 0), number(n.top, 0), fastest),
		number(g.current, 1)+" A", "the smallest limit holds", "derived")
}

// hand returns the row of the travel table that the group is laid by; nil if it
// has none.
func (g *group) hand() *tables.Travel {
	for _, r := range g.way.travel {
		if r.Technique == g.technique {
			return r
		}
	}
	return nil
}
