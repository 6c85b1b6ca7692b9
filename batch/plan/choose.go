package plan

import (
	"math"

	"seamtally/batch/rates"
)

// candidate is one feasible way for one joint, with what it costs there.
type candidate struct {
	way     *way
	cost    float64
	kg      float64  // wire bought
	litres  float64  // gas
	machine *machine // the lightest that bears it; nil: none
	most    float64  // largest current of its passes, A
}

// candidate sums an outcome up for the choice.
func (o *outcome) candidate() candidate {
	c := candidate{way: o.way, cost: float64(o.cost.Total), kg: o.wireKg, litres: o.gas, machine: o.machine}
	for i := range o.groups[:o.count] {
		c.most = max(c.most, o.groups[i].current)
	}
	return c
}

// offer is what one joint can be welded with: for each set-up its best way.
type offer struct {
	list   []candidate
	forced bool // the user's own choice that the rules would not have made
}

// offers tries every way that the joint allows and keeps the best of each set-up.
// A better demerit beats any saving, so only the least demerit is offered.
func (c *catalog) offers(t *task) offer {
	if t.noSettings != "" {
		return offer{}
	}
	best := math.MaxInt
	var list []candidate
	for _, n := range c.waysOf(t) {
		if !c.mayTry(n, t) {
			continue
		}
		o := c.try(n, t)
		if o.stands != 0 || o.demerit > best || c.outside(&o, t) {
			continue
		}
		if o.demerit < best {
			best, list = o.demerit, list[:0]
		}
		list = keep(list, o.candidate())
	}
	if len(list) == 0 && t.wish.named {
		return c.obey(t)
	}
	return offer{list: list}
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
	var best *outcome
	for _, n := range c.waysOf(t) {
		if !c.mayTry(n, t) {
			continue
		}
		o := c.try(n, t)
		if o.stands >= noMachine || c.outside(&o, t) {
			continue
		}
		if best == nil || o.stands < best.stands || o.stands == best.stands && o.cost.Total < best.cost.Total {
			best = &o
		}
	}
	if best == nil {
		return offer{}
	}
	return offer{forced: true, list: []candidate{best.candidate()}}
}

// choose picks a way for each joint. Under "joint" each takes its own cheapest;
// under "list" another wire or gas comes in only where it saves more than its
// change-overs and its opened spool or cylinder.
func (c *catalog) choose(all []offer) []*way {
	chosen := make([]*way, len(all))
	var open *selection
	if c.shop.Choose != "joint" && len(all) > 1 {
		open = c.newSelection(all)
		open.search()
	}
	for i := range all {
		if k := cheapest(all[i].list, open); k >= 0 {
			chosen[i] = all[i].list[k].way
		}
	}
	return chosen
}

// cheapest returns the cheapest candidate among the open set-ups; nil opens all.
func cheapest(list []candidate, open *selection) int {
	best := -1
	for k := range list {
		if open != nil && !open.in[list[k].way.setup] {
			continue
		}
		if best < 0 || list[k].cost < list[best].cost {
			best = k
		}
	}
	return best
}

// selection is a set of open set-ups and what the whole list costs with it.
type selection struct {
	c        *catalog
	offers   []offer
	universe []int // set-ups that any joint can use, in order
	in       []bool
	cost     float64
	kg       []float64 // by set-up, scratch
	litres   []float64
	used     []bool
}

func (c *catalog) newSelection(all []offer) *selection {
	n := len(c.setups)
	s := &selection{c: c, offers: all, in: make([]bool, n), kg: make([]float64, n), litres: make([]float64, n), used: make([]bool, n)}
	for _, o := range all {
		for _, k := range o.list {
			s.in[k.way.setup] = true
		}
	}
	for k, in := range s.in {
		if in {
			s.universe = append(s.universe, k)
		}
	}
	return s
}

// search closes, swaps and opens set-ups as long as the list gets cheaper.
func (s *selection) search() {
	s.cost = s.total()
	for range 4 * len(s.universe) {
		if !s.improve() {
			return
		}
	}
}

// improve makes the one change that saves most; false if none saves anything.
func (s *selection) improve() bool {
	bestCost, flips := s.cost-1e-9, [2]int{-1, -1}
	try := func(a, b int) {
		s.flip(a, b)
		if cost := s.total(); cost < bestCost {
			bestCost, flips = cost, [2]int{a, b}
		}
		s.flip(a, b)
	}
	for i, a := range s.universe {
		try(a, -1)
		for _, b := range s.universe[:i] {
			if s.in[a] != s.in[b] {
				try(a, b)
			}
		}
	}
	if flips[0] < 0 {
		return false
	}
	s.flip(flips[0], flips[1])
	s.cost = bestCost
	return true
}

func (s *selection) flip(a, b int) {
	s.in[a] = !s.in[a]
	if b >= 0 {
		s.in[b] = !s.in[b]
	}
}

// total returns what the list costs with the open set-ups: every joint's cheapest
// way, what is left of opened spools and cylinders, and the change-overs. A joint
// that no open set-up can weld makes it infinite.
func (s *selection) total() float64 {
	for _, k := range s.universe {
		s.kg[k], s.litres[k], s.used[k] = 0, 0, false
	}
	sum := 0.0
	for i := range s.offers {
		list := s.offers[i].list
		if len(list) == 0 {
			continue
		}
		k := cheapest(list, s)
		if k < 0 {
			return math.Inf(1)
		}
		sum += list[k].cost
		n := list[k].way.setup
		s.kg[n] += list[k].kg
		s.litres[n] += list[k].litres
		s.used[n] = true
	}
	return sum + s.leftovers() + s.changeOvers()
}

// leftovers returns the money in what stays on opened spools and in opened cylinders.
func (s *selection) leftovers() float64 {
	sum := 0.0
	for i, a := range s.universe {
		if !s.used[a] {
			continue
		}
		wire, gas := s.c.setups[a].wire, s.c.setups[a].gas
		kg, litres, firstWire, firstGas := 0.0, 0.0, true, true
		for k, b := range s.universe {
			other := s.c.setups[b]
			if s.used[b] && other.wire == wire {
				kg += s.kg[b]
				firstWire = firstWire && k >= i
			}
			if s.used[b] && other.gas == gas {
				litres += s.litres[b]
				firstGas = firstGas && k >= i
			}
		}
		if firstWire {
			sum += s.c.wireLeft(wire, kg)
		}
		if firstGas {
			sum += s.c.gasLeft(gas, litres)
		}
	}
	return sum
}

// fewCounted is up to how many set-ups the changes between them are counted as the
// price counts them; a search passes through states with more, where a lower bound
// does.
const fewCounted = 6

// changeOvers returns the labour of going through the wires and gases in use. The
// machine is settled afterwards: see settleMachines.
func (s *selection) changeOvers() float64 {
	var in []rates.Setup
	for _, a := range s.universe {
		if s.used[a] {
			w := s.c.setups[a].wire
			in = append(in, rates.Setup{Filler: w.Filler, Dia: w.Dia, Gas: s.c.setups[a].gas.Gas})
		}
	}
	changes := 0
	if len(in) <= fewCounted {
		changes = rates.ChangeOvers(in)
	} else {
		changes = atLeast(in)
	}
	shop := s.c.shop
	return float64(changes) * float64(shop.ChangeMin) / 60 * float64(shop.LabourCostPerHour())
}

// atLeast returns the changes that no order of the set-ups can save: each wire and
// each gas but the first must be put on once.
func atLeast(in []rates.Setup) int {
	wires, gases := map[rates.Setup]bool{}, map[string]bool{}
	for _, s := range in {
		wires[rates.Setup{Filler: s.Filler, Dia: s.Dia}], gases[s.Gas] = true, true
	}
	return len(wires) - 1 + len(gases) - 1
}
