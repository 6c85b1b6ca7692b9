package plan

import (
	"math"
	"math/rand"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// listCost reckons what a list costs with one candidate and one machine for each
// joint, from nothing but the candidates, the shop's packs and the price's own
// count of change-overs.
func listCost(c *catalog, picked []candidate, on []*machine) float64 {
	sum := 0.0
	kg, litres := map[*tables.Wire]float64{}, map[*tables.Gas]float64{}
	var setups []rates.Setup
	for i, k := range picked {
		sum += k.cost
		kg[k.way.wire] += k.kg
		litres[k.way.gas] += k.litres
		s := rates.Setup{Filler: k.way.wire.Filler, Dia: k.way.wire.Dia, Gas: k.way.gas.Gas}
		if on[i] != nil {
			s.Machine = on[i].row.Name
		}
		setups = append(setups, s)
	}
	for w, v := range kg {
		sum += c.wirePack(w).left(v)
	}
	for g, v := range litres {
		sum += c.gasPack(g).left(v)
	}
	shop := c.shop
	return sum + float64(rates.ChangeOvers(setups))*float64(shop.ChangeMin)/60*float64(shop.LabourCostPerHour())
}

// machinesOf lists the machines that may weld a candidate.
func (c *catalog) mayWeld(k *candidate) []*machine {
	if k.machine == nil {
		return []*machine{nil}
	}
	var out []*machine
	for _, m := range c.machines {
		if m == k.machine || !k.named && m.replaces(k) {
			out = append(out, m)
		}
	}
	return out
}

// bestOf tries every candidate and every machine of every joint.
func bestOf(c *catalog, offers []offer) float64 {
	best := math.Inf(1)
	picked, on := make([]candidate, len(offers)), make([]*machine, len(offers))
	var next func(i int)
	next = func(i int) {
		if i == len(offers) {
			best = min(best, listCost(c, picked, on))
			return
		}
		for k := range offers[i].list {
			picked[i] = offers[i].list[k]
			for _, m := range c.mayWeld(&picked[i]) {
				on[i] = m
				next(i + 1)
			}
		}
	}
	next(0)
	return best
}

// chosenCost plans the list and reckons it with the machines that were settled.
func chosenCost(c *catalog, list []joint.Joint) (cost float64, offers []offer, picked []candidate, on []*machine) {
	r := c.ready(list)
	offers = r.offers
	for i, n := range r.chosen {
		k := offers[i].of(n)
		if k == nil {
			return 0, offers, nil, nil
		}
		m := k.machine
		if r.kept[i] != nil {
			m = r.kept[i]
		}
		picked, on = append(picked, *k), append(on, m)
	}
	return listCost(c, picked, on), offers, picked, on
}

// choiceList draws a list and the prices that make its choice hard.
func choiceList(rt *rapid.T, low, high int, shop *rates.Shop) []joint.Joint {
	shop.ChangeMin = units.Minute(rapid.Float64Range(0, 30).Draw(rt, "change"))
	for i := range shop.Wires {
		shop.Wires[i].SpoolKg = units.Kg(rapid.SampledFrom([]float64{0.2, 1, 5, 15}).Draw(rt, "spool"))
	}
	list := make([]joint.Joint, rapid.IntRange(low, high).Draw(rt, "joints"))
	for i := range list {
		list[i] = filletJoint(rapid.Float64Range(3, 10).Draw(rt, "leg"), rapid.Float64Range(1.5, 20).Draw(rt, "t"), rapid.SampledFrom([]string{"PA", "PB", "PF"}).Draw(rt, "position"))
		list[i].Length = units.MM(rapid.Float64Range(100, 20000).Draw(rt, "length"))
		list[i].Material = rapid.SampledFrom([]string{"S235", "S355", "S235", "304L", "5083"}).Draw(rt, "material")
	}
	return list
}

// TestChoiceIsTheCheapest tries every wire, gas and machine of every joint of small
// lists: nothing is cheaper than what was chosen.
func TestChoiceIsTheCheapest(t *testing.T) {
	set, base := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		shop := base.Clone()
		list := choiceList(rt, 2, 4, &shop)
		c := newCatalog(set, &shop, Options{}.wanting(list))
		got, offers, picked, on := chosenCost(c, list)
		ways := 1.0
		for _, o := range offers {
			if len(o.list) == 0 {
				rt.Skip("a joint without settings")
			}
			n := 0
			for k := range o.list {
				n += len(c.mayWeld(&o.list[k]))
			}
			ways *= float64(n)
		}
		if ways > 50_000 {
			rt.Skip("too many ways to try")
		}
		if want := bestOf(c, offers); got > want*(1+1e-9)+1e-9 {
			for i := range picked {
				rt.Logf("%s %v on %v, of %d", picked[i].way.wire.Filler, picked[i].way.dia, on[i], len(offers[i].list))
			}
			rt.Fatalf("chosen for %.6f, the cheapest is %.6f (%.3f %%)", got, want, 100*(got/want-1))
		}
	})
}

// TestNoSingleMoveSaves goes through larger lists joint by joint: no joint on
// another of its wires makes the list cheaper, with the machines settled anew.
func TestNoSingleMoveSaves(t *testing.T) {
	set, base := world(t)
	for seed := range 12 {
		r := rand.New(rand.NewSource(int64(seed)))
		shop := base.Clone()
		list := manyJoints(20 + r.Intn(60))
		for i := range list {
			if list[i].Kind != joint.Fillet {
				list[i] = filletJoint(3+6*r.Float64(), 2+15*r.Float64(), "PB")
			}
		}
		c := newCatalog(set, &shop, Options{}.wanting(list))
		ready := c.ready(list)
		offers, chosen := ready.offers, ready.chosen
		now := settledCost(c, offers, chosen)
		for i := range chosen {
			was := chosen[i]
			for k := range offers[i].list {
				chosen[i] = offers[i].list[k].way
				if v := settledCost(c, offers, chosen); v < now-1e-6 {
					t.Errorf("seed %d: joint %d on %s %v saves %.4f of %.2f", seed, i, chosen[i].wire.Filler, chosen[i].dia, now-v, now)
				}
			}
			chosen[i] = was
		}
	}
}

// settledCost reckons a choice with the machines that would be settled for it.
func settledCost(c *catalog, offers []offer, chosen []*way) float64 {
	kept := c.settleMachines(offers, chosen)
	var picked []candidate
	var on []*machine
	for i, n := range chosen {
		k := offers[i].of(n)
		if k == nil {
			continue
		}
		m := k.machine
		if kept[i] != nil {
			m = kept[i]
		}
		picked, on = append(picked, *k), append(on, m)
	}
	return listCost(c, picked, on)
}
