package plan

import (
	"sort"

	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// machine is a row of the machine table with its rated points read out.
type machine struct {
	row    *tables.Machine
	points []tables.DutyPoint // from the highest current down
	at     int                // its place among the machines, lightest first
	guns   []string           // it can be had with
	spool  float64            // the largest that it takes, kg; 0: not stated
}

// shopMachines returns the machines that the shop names, lightest first, or the
// whole table where it names none.
func shopMachines(set *tables.Set, shop *rates.Shop) (out []*machine, named bool) {
	for i := range set.Machines {
		row := &set.Machines[i]
		if len(shop.Machines) == 0 || contains(shop.Machines, row.Name) {
			out = append(out, &machine{row: row, points: row.DutyPoints(), guns: row.Guns(), spool: float64(row.LargestSpool())})
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].row.CurrentHigh < out[j].row.CurrentHigh })
	for at, m := range out {
		m.at = at
	}
	return out, len(shop.Machines) > 0
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// machinesFor keeps the machines that do the mode and take the wire, and cuts
// the way's inner window to the largest current any of them gives.
func (c *catalog) machinesFor(n *way) {
	top := 0.0
	for _, m := range c.machines {
		if !m.row.Does(string(n.mode)) || !m.row.Feeds(n.wire.Dia) {
			continue
		}
		n.machines = append(n.machines, m)
		top = max(top, m.most(n))
	}
	if len(n.machines) > 0 {
		n.top = min(n.top, top)
	}
	n.pulseUnstated = n.mode == Pulse && !c.machinesNamed
}

// most is the largest current that the machine gives with the wire: its own
// limit, or the one that its feeder keeps up with.
func (m *machine) most(n *way) float64 {
	return min(float64(m.row.CurrentHigh), n.currentAt(float64(m.row.FeedHigh)))
}

// bears tells whether the machine gives a current and its wire feed.
func (m *machine) bears(n *way, current float64) bool {
	feed := units.MMin(n.feed(current))
	return units.Amp(current) <= m.row.CurrentHigh && units.Amp(current) >= m.row.CurrentLow &&
		feed <= m.row.FeedHigh && feed >= m.row.FeedLow
}

// pick returns the lightest machine that bears the current for the shop's share
// of arc time, else the one that bears it longest; nil if none bears it.
func (n *way) pick(current, share float64, only string) (best *machine, duty float64) {
	for _, m := range n.machines {
		if only != "" && m.row.Name != only || !m.bears(n, current) {
			continue
		}
		d := m.duty(current)
		if best == nil || d > duty+1e-9 {
			best, duty = m, d
		}
		if duty >= share {
			return best, duty
		}
	}
	return best, duty
}

// duty returns the share of ten minutes that the machine bears a current, 0..1:
// the square law from the rated points on either side, the smaller of the two.
//
//	d = dr (Ir / I)², which is DUTY-2
func (m *machine) duty(current float64) float64 {
	best := 1.0
	for _, p := range m.points {
		d := p.Duty * float64(p.Current) * float64(p.Current) / (current * current)
		best = min(best, d)
		if float64(p.Current) <= current {
			break
		}
	}
	if last := len(m.points) - 1; last >= 0 && current <= float64(m.points[last].Current) {
		return max(best, min(1, m.points[last].Duty))
	}
	return best
}
