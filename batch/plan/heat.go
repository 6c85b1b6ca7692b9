package plan

// heat judges preheat and cooling.
func (k *checker) heat(t *task, p *Plan) {}

// cautions returns the keys of the cautions that the conditions call for.
func (c *catalog) cautions(t *task, p *Plan) []string { return nil }
