package plan

import (
	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// Branch is a round tube that is cut to sit on what it stands on: a round chord,
// or a flat face where Chord is zero.
type Branch struct {
	Tube, On           string // designations as their standards spell them
	Dia, Wall, Chord   units.MM
	Angle              units.Degree // between the axes, or between the tube and the face; 90 at most
	AngleGiven, Bevels bool         // the list states the angle; the edge is bevelled besides
	Mitre              units.Degree // both tubes are cut so, off square, to meet at a corner; 0: no mitre
}

// branchOf returns how the first part is cut for a seam all round it; nil where the
// list does not say so for certain: a wrong line costs a tube. A butt joint of two
// tubes is end to end, and the angle of a groove is not that of the tube.
func branchOf(first, second known, j *joint.Joint) *Branch {
	if j.Mitre > 0 {
		return mitredTube(first, second, j)
	}
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

// mitredTube returns how each of two alike round tubes is cut that meet at a corner;
// nil where the list does not say so for certain.
func mitredTube(first, second known, j *joint.Joint) *Branch {
	if first.err != nil || second.err != nil || first.Shape != section.Round || !alikeTubes(&first.Section, &second.Section) {
		return nil
	}
	return &Branch{Tube: first.Designation, On: second.Designation, Dia: first.H, Wall: first.Web, Angle: 90 - j.Mitre, AngleGiven: true,
		Bevels: j.Kind != joint.Fillet && j.Kind != joint.SquareButt && j.Kind != joint.NoKind, Mitre: j.Mitre}
}

// Wrap returns the line of the cut round the tube. The error is that of the formula,
// which refuses such as a tube that leans below its range.
func (b *Branch) Wrap() (weld.Wrap, error) {
	switch {
	case b.Mitre > 0:
		return weld.MitreWrap(b.Dia, 2*b.Angle)
	case b.Chord > 0:
		return weld.SaddleWrap(b.Dia, b.Chord, b.Angle)
	}
	return weld.FaceWrap(b.Dia, b.Angle)
}

// Templates numbers the papers that mark the cuts of the branches, in the order in
// which the list needs them: for each plan the number of its template, 0 where it has
// none. Tubes that are cut alike share one.
func Templates(plans []Plan) []int {
	numbers, known, count := make([]int, len(plans)), map[Branch]int{}, 0
	for i := range plans {
		if plans[i].Branch == nil {
			continue
		}
		key := *plans[i].Branch
		key.On, key.AngleGiven = "", false
		n, seen := known[key]
		if !seen {
			if _, err := key.Wrap(); err == nil {
				count++
				n = count
			}
			known[key] = n
		}
		numbers[i] = n
	}
	return numbers
}
