package plan

import (
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// Options are what the user asked for about planning.
type Options struct {
	Codes string // iso or aws; empty is iso

	stockOnly bool // no joint asks for a wire, a gas or a process: nothing but the stock can be chosen
}

// wanting returns the options for a list: a list without wishes of its own is
// planned from the shop's stock, and the rest of the tables need not be compiled.
func (o Options) wanting(joints []joint.Joint) Options {
	o.stockOnly = true
	for i := range joints {
		if j := &joints[i]; j.Wire != "" || j.Gas != "" || j.Process != "" {
			o.stockOnly = false
		}
	}
	return o
}

// Joints plans a whole list: every joint is tried in every way that tables and
// shop allow, wire and gas are chosen for the list, and the chosen way becomes
// the joint's plan. The result has one plan for each joint, in the same order.
func Joints(joints []joint.Joint, set *tables.Set, shop *rates.Shop, opt Options) []Plan {
	c := newCatalog(set, shop, opt.wanting(joints))
	tasks, offers := c.ready(joints)
	chosen := c.choose(offers)
	c.settleMachines(tasks, offers, chosen)
	plans := make([]Plan, len(joints))
	for i := range plans {
		plans[i] = c.plan(tasks[i], &offers[i], chosen[i])
		tasks[i], offers[i] = nil, offer{} // a long list need not keep both
	}
	sayOnce(plans)
	return plans
}

// ready reads every joint and tries the ways open to it.
func (c *catalog) ready(joints []joint.Joint) ([]*task, []offer) {
	tasks, offers := make([]*task, len(joints)), make([]offer, len(joints))
	for i := range joints {
		tasks[i] = c.newTask(&joints[i])
		offers[i] = c.offers(tasks[i])
	}
	markTwins(tasks)
	return tasks, offers
}

// Explain plans the list as Joints does and returns the plan of one joint with
// its working and the options that were considered.
func Explain(joints []joint.Joint, index int, set *tables.Set, shop *rates.Shop, opt Options) Plan {
	c := newCatalog(set, shop, opt.wanting(joints))
	tasks, offers := c.ready(joints)
	chosen := c.choose(offers)
	c.settleMachines(tasks, offers, chosen)
	p := c.plan(tasks[index], &offers[index], chosen[index])
	c.trace(&p, tasks[index], &offers[index], chosen[index])
	return p
}
