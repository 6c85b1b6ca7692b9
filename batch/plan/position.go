package plan

import "seamtally/batch/joint"

// awsPosition names the position of a joint as the American code does. Fillets, laps
// and corners count as fillet welds; prepared, square and flare joints as groove welds.
// Edges, plugs and slots have no name of their own there and stay as they are: "".
func (c *catalog) awsPosition(j *joint.Joint) string {
	switch j.Kind {
	case joint.Fillet, joint.Lap, joint.Corner:
		return c.set.AWSName(j.Position, false)
	case joint.Edge, joint.Plug, joint.Slot, joint.NoKind:
		return ""
	}
	return c.set.AWSName(j.Position, true)
}
