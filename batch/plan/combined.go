package plan

import (
	"fmt"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/tables"
)

// combined is what the standard's other method says: up to which combined
// thickness a joint needs no preheat.
type combined struct {
	holds        bool // the table covers this steel, heat and hydrogen
	thick, limit units.MM
	cev          float64
	row          tables.CombinedRow
}

// findCombined looks the joint up in the table of combined thickness.
func (c *catalog) findCombined(t *task, f *preheat) combined {
	out := combined{thick: combinedThickness(t), cev: f.steel.cev}
	if f.hydrogen.HD <= 0 {
		return out
	}
	out.limit, out.row, out.holds = c.set.CombinedThickness(out.cev, f.hydrogen.HD, units.KJMM(f.coolest))
	return out
}

// combinedThickness adds up the ways that the heat may leave by: two in a butt or
// at a corner, three where a plate runs through under a fillet.
func combinedThickness(t *task) units.MM {
	t1, t2 := cmpOr(t.prep.T1, t.prep.T2), cmpOr(t.prep.T2, t.prep.T1)
	switch t.prep.Kind {
	case joint.Fillet, joint.Lap:
		return t1 + 2*t2
	}
	return t1 + t2
}

// none tells whether the method covers the joint and asks for no preheat.
func (m *combined) none() bool { return m.holds && m.thick <= m.limit }

func (m *combined) words() string {
	return fmt.Sprintf("none: combined thickness %s of %s that EN 1011-2 Table C.1 allows without, at a CEV of %s %%", mmText(float64(m.thick)), mmText(float64(m.limit)), number(m.cev, 3))
}

// contrast says that the two methods of one standard disagree.
func (m *combined) contrast() string {
	return fmt.Sprintf("By EN 1011-2 Table C.1 none is needed: combined thickness %s of %s at a CEV of %s %%; the welding coordinator chooses the method (preheat_method combined)", mmText(float64(m.thick)), mmText(float64(m.limit)), number(m.cev, 3))
}
