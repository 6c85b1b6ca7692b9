package plan

import (
	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// Branch is a round tube that is cut to sit on what it stands on: a round chord,
// or a flat face where Chord is zero.
type Branch struct {
	Tube, On           string // designations as their standards spell them
	Dia, Wall, Chord   units.MM
	Angle              units.Degree // between the axes, or between the tube and the face; 90 at most
	AngleGiven, Bevels bool         // the list states the angle; the edge is bevelled besides
}

// branchOf returns how the first part is cut for a seam all round it; nil where the
// list does not say so for certain: a wrong line costs a tube. A butt joint of two
// tubes is end to end, and the angle of a groove is not that of the tube.
func branchOf(first, second known, j *joint.Joint) *Branch {
	if !j.AllRound || first.err != nil || second.err != nil || first.Shape != section.Round {
		return nil
	}
	b := Branch{Tube: first.Designation, On: second.Designation, Dia: first.H, Wall: first.Web, Angle: 90}
	switch j.Kind {
	case joint.Fillet, joint.NoKind:
		b.AngleGiven = j.Angle > 0
		if b.AngleGiven {
			b.Angle = min(j.Angle, 180-j.Angle)
		}
	case joint.SingleBevel, joint.SingleJ, joint.FlareBevel:
		if j.Angle > 0 {
			return nil
		}
		b.Bevels = true
	default:
		return nil
	}
	if second.Shape == section.Round {
		b.Chord = second.H
	}
	if b.Chord == 0 && b.Angle == 90 || b.Chord > 0 && b.Chord < b.Dia {
		return nil // cut square, or too wide to sit on its chord
	}
	return &b
}
