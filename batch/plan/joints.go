package plan

import (
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// Options are what the user asked for about planning.
type Options struct {
	Codes string // iso or aws; empty is iso
	US    bool   // sizes are told in inches: a hint goes to the next sixteenth

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
	return newCatalog(set, shop, opt.wanting(joints)).joints(joints)
}

// WithHints plans a whole list as Joints does and adds the hints, as Hints does,
// from tables that are compiled once.
func WithHints(joints []joint.Joint, set *tables.Set, shop *rates.Shop, opt Options) []Plan {
	c := newCatalog(set, shop, opt.wanting(joints))
	plans := c.joints(joints)
	c.hints(plans)
	return plans
}

func (c *catalog) joints(joints []joint.Joint) []Plan {
	plans := c.ready(joints).plans()
	sayOnce(plans)
	return plans
}

// Explain plans the list as Joints does and returns the plan of one joint with
// its working and the options that were considered.
func Explain(joints []joint.Joint, index int, set *tables.Set, shop *rates.Shop, opt Options) Plan {
	c := newCatalog(set, shop, opt.wanting(joints))
	r := c.ready(joints)
	t, chosen := r.task(index), r.chosen[index]
	var p Plan
	c.plan(&p, t, &r.offers[index], chosen)
	c.trace(&p, t, &r.offers[index], chosen)
	return p
}

// readied is a list of which every joint was read and tried, with the way chosen
// for each.
type readied struct {
	c      *catalog
	joints []joint.Joint
	tasks  []*task // nil: read again from its form, which is quicker than it is large
	offers []offer
	chosen []*way
	kept   []*machine  // that the list keeps at the place; nil: the joint's own
	twins  map[int]int // joint -> row of another with the same mark
}

// ready reads every joint, tries the ways open to it and chooses.
func (c *catalog) ready(joints []joint.Joint) *readied {
	r := &readied{c: c, joints: joints, tasks: make([]*task, len(joints)), offers: make([]offer, len(joints)), twins: twins(joints)}
	for i := range joints {
		t := c.newTask(&joints[i])
		r.offers[i] = c.offers(t)
		if t.form == nil || t.form.task == t {
			r.tasks[i] = t
		}
	}
	r.chosen = c.choose(r.offers)
	r.kept = c.settleMachines(r.offers, r.chosen)
	return r
}

// task returns the task of a joint.
func (r *readied) task(i int) *task {
	t := r.tasks[i]
	if t == nil {
		t = r.c.newTask(&r.joints[i])
	}
	t.kept, t.twin = r.kept[i], r.twins[i]
	return t
}

// plans writes out the plan of every joint. What a joint was offered is let go
// with it: a long list need not keep both.
func (r *readied) plans() []Plan {
	plans := make([]Plan, len(r.joints))
	for i := range plans {
		r.c.plan(&plans[i], r.task(i), &r.offers[i], r.chosen[i])
		r.tasks[i], r.offers[i] = nil, offer{}
	}
	return plans
}
