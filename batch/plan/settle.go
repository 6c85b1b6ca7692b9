package plan

// settleMachines lets joints that follow each other stay on one machine. Each
// joint's own is the lightest that bears it; a heavier one that the list needs
// anyway welds it as well, and the change between them is saved. A wire with its
// gas is moved only as a whole: half of its joints elsewhere would save nothing.
// It returns the plans with the machines settled.
func (c *catalog) settleMachines(tasks []*task, offers []offer, chosen []*way, plans []Plan) {
	if c.shop.Choose == "joint" || len(plans) < 2 {
		return
	}
	groups := map[int][]int{} // set-up -> joints
	var order []int
	var top *machine
	for i, n := range chosen {
		m := c.machineNamed(plans[i].Machine)
		if n == nil || m == nil {
			continue
		}
		if top == nil || m.row.CurrentHigh > top.row.CurrentHigh {
			top = m
		}
		if groups[n.setup] == nil {
			order = append(order, n.setup)
		}
		groups[n.setup] = append(groups[n.setup], i)
	}
	for _, setup := range order {
		members := groups[setup]
		if !c.moveAll(members, top, tasks, offers, chosen, plans) {
			c.moveAll(members, heaviest(c, members, plans), tasks, offers, chosen, plans)
		}
	}
}

// moveAll plans joints on one machine; false, and nothing changed, where it does
// not bear them all or the list asks for another.
func (c *catalog) moveAll(members []int, m *machine, tasks []*task, offers []offer, chosen []*way, plans []Plan) bool {
	moved := map[int]Plan{}
	for _, i := range members {
		if plans[i].Machine == m.row.Name {
			continue
		}
		t := tasks[i]
		if t.wish.machine != "" {
			return false
		}
		t.kept = m
		p := c.plan(t, &offers[i], chosen[i])
		t.kept = nil
		if p.Machine != m.row.Name {
			return false
		}
		moved[i] = p
	}
	for i, p := range moved {
		tasks[i].kept, plans[i] = m, p
	}
	return true
}

func heaviest(c *catalog, members []int, plans []Plan) *machine {
	var top *machine
	for _, i := range members {
		if m := c.machineNamed(plans[i].Machine); top == nil || m.row.CurrentHigh > top.row.CurrentHigh {
			top = m
		}
	}
	return top
}

func (c *catalog) machineNamed(name string) *machine {
	for _, m := range c.machines {
		if m.row.Name == name {
			return m
		}
	}
	return nil
}
