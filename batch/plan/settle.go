package plan

import "slices"

// settleMachines lets joints that follow each other stay on one machine. Each
// joint's own is the lightest that bears it; a heavier one that the list needs
// anyway welds it as well, and the change between them is saved. A wire with its
// gas is moved only as a whole: half of its joints elsewhere would save nothing.
// It returns what each joint keeps to, nil where that is its own; nothing is
// planned here.
func (c *catalog) settleMachines(offers []offer, chosen []*way) []*machine {
	kept := make([]*machine, len(offers))
	if c.shop.Choose == "joint" || len(offers) < 2 {
		return kept
	}
	own := make([]*candidate, len(offers))
	groups := map[int][]int{} // set-up -> joints
	var order []int
	var top *machine
	for i, n := range chosen {
		if n == nil {
			continue
		}
		if own[i] = offers[i].of(n); own[i] == nil || own[i].machine == nil {
			continue
		}
		top = heavier(top, own[i].machine)
		if groups[n.setup] == nil {
			order = append(order, n.setup)
		}
		groups[n.setup] = append(groups[n.setup], i)
	}
	for _, setup := range order {
		var most *machine
		for _, i := range groups[setup] {
			most = heavier(most, own[i].machine)
		}
		if !keepOn(groups[setup], top, own, kept) {
			keepOn(groups[setup], most, own, kept)
		}
	}
	return kept
}

func heavier(a, b *machine) *machine {
	if a == nil || b.at > a.at {
		return b
	}
	return a
}

// of returns the candidate of a way; nil where the way is not offered.
func (o *offer) of(n *way) *candidate {
	for k := range o.list {
		if o.list[k].way == n {
			return &o.list[k]
		}
	}
	return nil
}

// keepOn puts joints on one machine; false, and nothing changed, where it does not
// bear them all as long as their own, or the list asks for another.
func keepOn(members []int, m *machine, own []*candidate, kept []*machine) bool {
	for _, i := range members {
		if k := own[i]; k.machine != m && (k.named || !m.replaces(k)) {
			return false
		}
	}
	for _, i := range members {
		if own[i].machine != m {
			kept[i] = m
		}
	}
	return true
}

// replaces tells whether the machine bears what a candidate's own bears, as long.
func (m *machine) replaces(k *candidate) bool {
	return slices.Contains(k.way.machines, m) && m.bears(k.way, k.most) && m.duty(k.most) >= k.machine.duty(k.most)
}
