package plan

import "seamtally/batch/joint"

// awsPosition names the position of a joint as the American code does. Fillets, laps
// and corners count as fillet welds; prepared, square and flare joints as groove welds.
// Edges, plugs and slots have no name of their own there and stay as they are: "".
func (c *catalog) awsPosition(j *joint.Joint) string {
	switch j.Kind {
	case joint.Fillet, joint.Lap, joint.Corner:
		return c.american[j.Position][fillet]
	case joint.Edge, joint.Plug, joint.Slot, joint.NoKind:
		return ""
	}
	return c.american[j.Position][butt]
}

// readPositions looks up the American names of all positions.
func (c *catalog) readPositions() {
	c.american = make(map[string][2]string, len(c.set.Positions))
	for i := range c.set.Positions {
		iso := c.set.Positions[i].ISO
		c.american[iso] = [2]string{butt: c.set.AWSName(iso, true), fillet: c.set.AWSName(iso, false)}
	}
}
