package plan

// whyNothing says what stands in the way of every option.
func (c *catalog) whyNothing(t *task) string { return "no wire and gas of the shop can weld it" }

func (c *catalog) checkBare(p *Plan, t *task)                    {}
func (c *catalog) check(p *Plan, t *task, o *outcome, of *offer) {}
func (c *catalog) trace(p *Plan, t *task, of *offer, n *way)     {}
