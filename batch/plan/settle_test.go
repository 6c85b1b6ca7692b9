package plan

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// machinesOf returns the machines of plans in order.
func machinesOf(plans []Plan) []string {
	var out []string
	for i := range plans {
		out = append(out, plans[i].Machine)
	}
	return out
}

// TestMachinesAreKept: a small fillet that the light machine bears is welded on the
// heavy one where the list needs that anyway; asked for by the list it is obeyed,
// and joint by joint each takes the lightest.
func TestMachinesAreKept(t *testing.T) {
	set, shop := world(t)
	small, large := filletJoint(3, 4, "PB"), filletJoint(8, 20, "PB")
	small.Wire, large.Wire = "G3Si1 1.2", "G3Si1 1.2"
	list := []joint.Joint{small, large, small}
	shop.Choose = "joint"
	alone := machinesOf(Joints(list, set, shop, Options{}))
	if alone[0] == alone[1] {
		t.Fatalf("the joints of this test must need different machines: %v", alone)
	}
	shop.Choose = "list"
	kept := Joints(list, set, shop, Options{})
	if m := machinesOf(kept); m[0] != alone[1] || m[1] != alone[1] || m[2] != alone[1] {
		t.Errorf("on one machine the list saves two changes: %v", m)
	}
	list[0].Machine = alone[0]
	if m := machinesOf(Joints(list, set, shop, Options{})); m[0] != alone[0] {
		t.Errorf("the list asks for %s, got %v", alone[0], m)
	}
}

// TestKeepingMachinesNeverCosts compares a mixed list with the same list where each
// joint keeps its lightest machine: not dearer, and fewer changes or as many.
func TestKeepingMachinesNeverCosts(t *testing.T) {
	set, shop := world(t)
	var list []joint.Joint
	for i := range 40 {
		list = append(list, filletJoint(3+float64(i%7), 4+float64(i%5)*4, []string{"PB", "PF", "PA"}[i%3]))
	}
	c := newCatalog(set, shop, Options{})
	r := c.ready(list)
	clear(r.kept)
	before := r.plans()
	after := Joints(list, set, shop, Options{})
	cost := func(plans []Plan) (money units.Money, changes int) {
		var setups []rates.Setup
		for i := range plans {
			money += plans[i].Cost.Total
			if plans[i].Settings {
				setups = append(setups, rates.Setup{Filler: plans[i].Filler, Dia: plans[i].Dia, Gas: plans[i].Gas, Machine: plans[i].Machine})
			}
		}
		return money, rates.ChangeOvers(setups)
	}
	m0, n0 := cost(before)
	m1, n1 := cost(after)
	if m1 > m0*(1+1e-12) || n1 > n0 {
		t.Errorf("kept: %g with %d changes; lightest: %g with %d", m1, n1, m0, n0)
	}
	if n1 == n0 {
		t.Errorf("this list is meant to save a change: %d", n0)
	}
}
