package plan

import (
	"math/bits"
	"slices"

	"seamtally/batch/rates"
	"seamtally/tables"
)

// selection is a choice of one candidate for each joint of a list, and what the
// list costs with it. Sums are kept up to date as single joints change.
type selection struct {
	c      *catalog
	offers []offer
	pick   []int // candidate of each joint; -1: none
	// order holds the candidates of each joint from the cheapest up.
	order [][]int
	onto  [][]uint64 // machines that may weld each candidate, a bit each

	universe []int // set-ups that any joint can use, in order
	wireOf   []int // of each set-up: its wire among wires
	gasOf    []int
	wires    []*tables.Wire
	gases    []*tables.Gas

	spools, cylinders []pack // of wires and gases

	sum    float64   // of the joints
	kg     []float64 // by wire
	litres []float64 // by gas
	teams  []team    // by set-up
	known  map[[fewCounted]uint16]int
}

// team is what the joints on one set-up ask of a machine.
type team struct {
	joints int
	most   int                // the heaviest machine that any joint needs; -1: none
	own    [maxMachines]int32 // joints whose lightest machine this is
	shut   [maxMachines]int32 // joints that this machine cannot weld
}

// maxMachines is how many machines of a shop the choice for a list tells apart; it
// leaves the others to the joints.
const maxMachines = 32

// fewCounted is up to how many set-ups the changes between them are counted as the
// price counts them; a search passes through states with more, where a lower bound
// does.
const fewCounted = 6

func (c *catalog) newSelection(all []offer) *selection {
	n := len(c.setups)
	s := &selection{c: c, offers: all, pick: make([]int, len(all)), order: make([][]int, len(all)), onto: make([][]uint64, len(all)),
		wireOf: make([]int, n), gasOf: make([]int, n), teams: make([]team, n), known: map[[fewCounted]uint16]int{}}
	in, total := make([]bool, n), 0
	for _, o := range all {
		total += len(o.list)
	}
	order, onto := make([]int, total), make([]uint64, total)
	for i, o := range all {
		s.pick[i] = -1
		s.order[i], order = sorted(o.list, order)
		s.onto[i], onto = onto[:len(o.list):len(o.list)], onto[len(o.list):]
		for k := range o.list {
			in[o.list[k].way.setup] = true
			s.onto[i][k] = c.machinesOnto(&o.list[k])
		}
	}
	for k := range in {
		if in[k] {
			s.universe = append(s.universe, k)
			s.wireOf[k], s.wires = indexOf(s.wires, c.setups[k].wire)
			s.gasOf[k], s.gases = indexOf(s.gases, c.setups[k].gas)
		}
	}
	s.kg, s.litres = make([]float64, len(s.wires)), make([]float64, len(s.gases))
	for _, w := range s.wires {
		s.spools = append(s.spools, c.wirePack(w))
	}
	for _, g := range s.gases {
		s.cylinders = append(s.cylinders, c.gasPack(g))
	}
	return s
}

// indexOf returns where a thing stands in a list, which grows by it if need be.
func indexOf[T comparable](list []T, thing T) (int, []T) {
	if k := slices.Index(list, thing); k >= 0 {
		return k, list
	}
	return len(list), append(list, thing)
}

// sorted returns the order of candidates from the cheapest up, equals as they stand,
// in the front of the room given, and the rest of the room.
func sorted(list []candidate, room []int) (out, rest []int) {
	out, rest = room[:len(list):len(list)], room[len(list):]
	for k := range out {
		out[k] = k
	}
	slices.SortStableFunc(out, func(a, b int) int {
		switch x, y := list[a].cost, list[b].cost; {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	return out, rest
}

// machinesOnto returns the machines that may weld a candidate, a bit each: its
// own, and where the list names none those that bear it as long.
func (c *catalog) machinesOnto(k *candidate) uint64 {
	var out uint64
	for at, m := range c.machines {
		if at < maxMachines && k.machine != nil && (m == k.machine || !k.named && m.replaces(k)) {
			out |= 1 << at
		}
	}
	return out
}

// put takes a joint's candidate into the sums; with a sign of -1 out of them.
func (s *selection) put(i, k int, sign int32) {
	o := &s.offers[i].list[k]
	n := o.way.setup
	s.sum += float64(sign) * o.cost
	s.kg[s.wireOf[n]] += float64(sign) * o.kg
	s.litres[s.gasOf[n]] += float64(sign) * o.litres
	t := &s.teams[n]
	t.joints += int(sign)
	if o.machine == nil {
		return
	}
	if at := o.machine.at; at < maxMachines {
		t.own[at] += sign
		for t.most = max(t.most, at); t.most >= 0 && t.own[t.most] == 0; {
			t.most--
		}
	}
	for at := range min(len(s.c.machines), maxMachines) {
		if s.onto[i][k]&(1<<at) == 0 {
			t.shut[at] += sign
		}
	}
}

// clear empties the sums.
func (s *selection) clear() {
	s.sum = 0
	clear(s.kg)
	clear(s.litres)
	for _, n := range s.universe {
		s.teams[n] = team{most: -1}
	}
}

// cost returns what the list costs: the joints, what is left of opened spools and
// cylinders, and the change-overs of wire, gas and machine.
func (s *selection) cost() float64 {
	sum := s.sum
	for w, kg := range s.kg {
		if kg > 1e-12 {
			sum += s.spools[w].left(kg)
		}
	}
	for g, litres := range s.litres {
		if litres > 1e-12 {
			sum += s.cylinders[g].left(litres)
		}
	}
	shop := s.c.shop
	return sum + float64(s.changes())*float64(shop.ChangeMin)/60*float64(shop.LabourCostPerHour())
}

// changes returns the changes of wire, gas and machine between the set-ups in
// use, each on the machines that settleMachines will give it.
func (s *selection) changes() int {
	top := -1
	for _, n := range s.universe {
		top = max(top, s.teams[n].most)
	}
	var key [fewCounted]uint16
	count := 0
	for _, n := range s.universe {
		if s.teams[n].joints == 0 {
			continue
		}
		for on := s.teams[n].machines(top); on != 0; on &= on - 1 {
			if count < fewCounted {
				key[count] = uint16(n+1)<<6 | uint16(bits.TrailingZeros64(on))
			}
			count++
		}
	}
	if count > fewCounted {
		return s.atLeast()
	}
	changes, known := s.known[key]
	if !known {
		changes = rates.ChangeOvers(s.spell(key[:count]))
		s.known[key] = changes
	}
	return changes
}

// noMachineBit stands for a set-up that no machine of the table welds.
const noMachineBit = 63

// machines returns the machines that the team is welded on, a bit each: the
// list's heaviest or the team's heaviest where it bears them all, else each
// joint's own.
func (t *team) machines(top int) uint64 {
	most := t.most
	switch {
	case most < 0:
		return 1 << noMachineBit
	case t.shut[top] == 0:
		return 1 << top
	case t.shut[most] == 0:
		return 1 << most
	}
	var out uint64
	for at, n := range t.own {
		if n > 0 {
			out |= 1 << at
		}
	}
	return out
}

// spell writes set-ups and machines out as the price counts them.
func (s *selection) spell(keys []uint16) []rates.Setup {
	out := make([]rates.Setup, len(keys))
	for i, key := range keys {
		setup := s.c.setups[key>>6-1]
		out[i] = rates.Setup{Filler: setup.wire.Filler, Dia: setup.wire.Dia, Gas: setup.gas.Gas}
		if at := key & 63; at != noMachineBit {
			out[i].Machine = s.c.machines[at].row.Name
		}
	}
	return out
}

// atLeast returns the changes that no order of the set-ups can save: each wire and
// each gas but the first must be put on once.
func (s *selection) atLeast() int {
	var wires, gases uint64
	for _, n := range s.universe {
		if s.teams[n].joints > 0 {
			wires |= 1 << (s.wireOf[n] & 63)
			gases |= 1 << (s.gasOf[n] & 63)
		}
	}
	return bits.OnesCount64(wires) - 1 + bits.OnesCount64(gases) - 1
}
