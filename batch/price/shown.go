package price

import "seamtally/batch/plan"

// Names are the names by which people read fillers and positions in the codes that
// were asked for. Results keep the standard names whatever the codes.
type Names struct {
	aws     bool
	fillers map[string]string // standard class -> American class
}

// Names returns the names for the codes of the job. A filler whose American class
// belongs to another filler of the job too keeps its standard name, because totals and
// the buy list add up by name.
func (j *Job) Names() Names {
	n := Names{aws: j.Opts.Codes == "aws", fillers: map[string]string{}}
	owner := map[string]string{} // name -> the filler that has it; "" for several
	claim := func(name, filler string) {
		if have, taken := owner[name]; taken && have != filler {
			filler = ""
		}
		owner[name] = filler
	}
	for i := range j.Plans {
		if p := &j.Plans[i]; n.aws && p.FillerAWS != "" {
			n.fillers[p.Filler] = p.FillerAWS
			claim(p.FillerAWS, p.Filler)
		}
		claim(j.Plans[i].Filler, j.Plans[i].Filler)
	}
	for filler, name := range n.fillers {
		if owner[name] != filler {
			delete(n.fillers, filler)
		}
	}
	return n
}

// Filler returns the name of a filler: the American class where the codes ask for it
// and the table of wires has one, else the standard class.
func (n Names) Filler(class string) string {
	if name := n.fillers[class]; name != "" {
		return name
	}
	return class
}

// Process returns the name of the process of a joint: with American codes its letters and
// behind them the ISO number by which workbook and results know it.
func (n Names) Process(p *plan.Plan) string {
	if n.aws && p.ProcessAWS != "" {
		return p.ProcessAWS + " (" + p.Process + ")"
	}
	return p.Process
}

// Position returns the name of the position of a joint: 2F with American codes, where
// the table of positions has a name for its kind, else PB.
func (n Names) Position(p *plan.Plan) string {
	if n.aws && p.PositionAWS != "" {
		return p.PositionAWS
	}
	return p.Joint.Position
}

// ByShownPosition adds the joints up by the names of their positions in the codes that
// were asked for: what ISO calls PA is 1F for a fillet and 1G for a groove.
func (j *Job) ByShownPosition() []Sum {
	names := j.Names()
	return group(j.Plans, func(p *plan.Plan) string {
		if name := names.Position(p); name != "" {
			return name
		}
		return NoPosition
	}, true)
}
