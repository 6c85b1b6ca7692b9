package plan

import (
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// Options are what the user asked for about planning.
type Options struct {
	Codes string // iso or aws; empty is iso
}

// Joints plans a whole list: every joint is tried in every way that tables and
// shop allow, wire and gas are chosen for the list, and the chosen way becomes
// the joint's plan. The result has one plan for each joint, in the same order.
func Joints(joints []joint.Joint, set *tables.Set, shop *rates.Shop, opt Options) []Plan {
	c := newCatalog(set, shop, opt)
	tasks, offers := c.ready(joints)
	chosen := c.choose(offers)
	plans := make([]Plan, len(joints))
	for i := range plans {
		plans[i] = c.plan(tasks[i], &offers[i], chosen[i])
	}
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
	c := newCatalog(set, shop, opt)
	tasks, offers := c.ready(joints)
	chosen := c.choose(offers)
	p := c.plan(tasks[index], &offers[index], chosen[index])
	c.trace(&p, tasks[index], &offers[index], chosen[index])
	return p
}
