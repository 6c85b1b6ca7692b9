package plan

import (
	"math"
	"slices"
)

// candidate is one feasible way for one joint, with what it costs there.
type candidate struct {
	*laid
	cost   float64
	kg     float64 // wire bought
	litres float64 // gas
}

// laid is what all joints of a form have in common in one way.
type laid struct {
	way     *way
	machine *machine // the lightest that bears it; nil: none
	most    float64  // largest current of its passes, A
	named   bool     // the list names the machine
}

// candidate sums an outcome up for the choice; room is where what it shares with no
// other joint may stand.
func (o *outcome) candidate(t *task, room *laid) candidate {
	c := candidate{laid: o.laid, cost: float64(o.cost.Total), kg: o.wireKg, litres: o.gas}
	if c.laid == nil {
		*room = o.layout(t)
		c.laid = room
	}
	return c
}

// layout is what of an outcome does not follow from the length.
func (o *outcome) layout(t *task) laid {
	l := laid{way: o.way, machine: o.machine, named: t.wish.machine != ""}
	for i := range o.groups[:o.count] {
		l.most = max(l.most, o.groups[i].current)
	}
	return l
}

// offer is what one joint can be welded with: for each set-up its best way.
type offer struct {
	list   []candidate
	forced bool // the user's own choice that the rules would not have made
}

// offers tries every way that the joint allows and keeps the best of each set-up.
func (c *catalog) offers(t *task) offer {
	if t.noSettings != "" {
		return offer{}
	}
	open := c.openWays(t)
	list, room := make([]candidate, 0, len(open)), make([]laid, len(open))
	for i := range open {
		o := open[i]
		c.quantities(&o, t)
		list = keep(list, o.candidate(t, &room[i]))
	}
	if len(list) == 0 && t.wish.named {
		return c.obey(t)
	}
	return offer{list: list}
}

// openWays returns the ways that the joint may be welded in, laid and with their
// machines, for all joints of its form. A better demerit beats any saving, so only
// the least demerit is open. The list holds until the next joint is tried.
func (c *catalog) openWays(t *task) []outcome {
	if t.form != nil && t.form.tried {
		return t.form.open
	}
	best, open := math.MaxInt, c.room[:0]
	for _, n := range c.waysOf(t) {
		if !c.mayTry(n, t) {
			continue
		}
		filled := c.filledBy(n, t)
		o := c.before(n, filled)
		if o.stands != 0 || o.demerit > best {
			continue // whatever its passes
		}
		c.layOut(&o, filled)
		if o.stands != 0 || o.demerit > best || c.outside(&o, t) {
			continue
		}
		if o.demerit < best {
			best, open = o.demerit, open[:0]
		}
		open = append(open, o)
	}
	c.room = open
	if t.form.repeats() {
		open = slices.Clone(open)
		room := make([]laid, len(open))
		for i := range open {
			room[i] = open[i].layout(t)
			open[i].laid = &room[i]
		}
		t.form.open, t.form.tried = open, true
	}
	return open
}

// mayTry tells whether a way is open to the joint at all: what the user asks for,
// or what the pair of materials takes and the shop has.
func (c *catalog) mayTry(n *way, t *task) bool {
	if !t.wish.grants(n) {
		return false
	}
	if len(t.wish.wires) == 0 && (n.askedOnly || !t.suits(n)) {
		return false
	}
	return (n.wireStock || len(t.wish.wires) > 0) && (n.gasStock || t.wish.gas != "")
}

// keep holds the cheaper way of a set-up.
func keep(list []candidate, new candidate) []candidate {
	for i := range list {
		if list[i].way.setup == new.way.setup {
			if new.cost < list[i].cost {
				list[i] = new
			}
			return list
		}
	}
	return append(list, new)
}

// obey finds the way that does least harm where the user asks for what the rules
// would not choose. What no machine or no geometry allows is not obeyed.
func (c *catalog) obey(t *task) offer {
	var best outcome
	for _, n := range c.waysOf(t) {
		if !c.mayTry(n, t) {
			continue
		}
		o := c.try(n, t)
		if o.stands >= noMachine || c.outside(&o, t) {
			continue
		}
		if best.way == nil || o.milder(&best) {
			best = o
		}
	}
	if best.way == nil {
		return offer{}
	}
	return offer{forced: true, list: []candidate{best.candidate(t, new(laid))}}
}

// milder tells whether a way does less harm than another: of two that are too hot for the
// parts the cooler, else of equal ones the cheaper.
func (o *outcome) milder(than *outcome) bool {
	switch {
	case o.stands != than.stands:
		return o.stands < than.stands
	case o.stands&tooHot != 0 && o.way.start != than.way.start:
		return o.way.start < than.way.start
	}
	return o.cost.Total < than.cost.Total
}

// choose picks a way for each joint. Under "joint" each takes its own cheapest;
// under "list" another wire or gas comes in only where it saves more than its
// change-overs and its opened spool or cylinder.
func (c *catalog) choose(all []offer) []*way {
	chosen := make([]*way, len(all))
	var s *selection
	if c.shop.Choose != "joint" && len(all) > 1 {
		s = c.newSelection(all)
		s.search()
	}
	for i := range all {
		switch list := all[i].list; {
		case len(list) == 0:
		case s != nil:
			chosen[i] = list[s.pick[i]].way
		default:
			chosen[i] = list[cheapest(list)].way
		}
	}
	return chosen
}

// cheapest returns the cheapest candidate, the first of equals.
func cheapest(list []candidate) int {
	best := 0
	for k := range list {
		if list[k].cost < list[best].cost {
			best = k
		}
	}
	return best
}
