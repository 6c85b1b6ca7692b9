package workbook

import (
	"seamtally/batch/plan"
	"seamtally/batch/workbook/pack"
)

// kept holds the cells of the steady columns for each manner that several joints
// are welded in, as they were drawn first: half of a long list's cells are copies.
type kept struct {
	columns int
	manners map[*plan.Manner][]keptCell // nil: seen once
}

// mostKept is how many manners are kept: about as many as the planner shares.
const mostKept = 2048

// keptCell is one cell of a manner; with an empty text nothing is drawn.
type keptCell struct {
	text  string
	known bool
}

func newKept(columns int) *kept {
	return &kept{columns: columns, manners: map[*plan.Manner][]keptCell{}}
}

// of returns the cells of a manner; nil for one that was not seen before, which may
// be welded in once only.
func (k *kept) of(m *plan.Manner) []keptCell {
	cells, seen := k.manners[m]
	if cells == nil && len(k.manners) < mostKept {
		if seen {
			cells = make([]keptCell, k.columns)
		}
		k.manners[m] = cells
	}
	return cells
}

func (c *keptCell) draw(p *pack.Pen, col string) {
	if c.text != "" {
		p.Again(col, c.text)
	}
}

// keep takes the cell that was drawn last, if one was since before.
func (c *keptCell) keep(p *pack.Pen, before int) {
	if p.Written() == before {
		c.known = true
		return
	}
	c.text, c.known = p.Last()
}
