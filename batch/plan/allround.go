package plan

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

// tube is a hollow section as its designation gives it.
type tube struct {
	h, b, wall units.MM // b is zero where it is round
}

var reTube = regexp.MustCompile(`^(CHS|SHS|RHS|Ø|D)? ?(\d+(?:[.,]\d+)?)(?: ?MM)? ?[X*] ?(\d+(?:[.,]\d+)?)(?: ?MM)?(?: ?[X*] ?(\d+(?:[.,]\d+)?)(?: ?MM)?)?$`)

// tubeOf reads the designation of a round, square or rectangular hollow section:
// CHS 60.3x4, SHS 60x60x4, RHS 100x50x5. Two bare numbers are a tube only where the
// first has a decimal, as the diameters of tubes have: 60x6 is a flat.
func tubeOf(text string) (tube, bool) {
	t := strings.ToUpper(strings.ReplaceAll(strings.TrimSpace(text), "×", "x"))
	m := reTube.FindStringSubmatch(t)
	if m == nil {
		return tube{}, false
	}
	mm := func(s string) units.MM {
		v, _ := strconv.ParseFloat(strings.ReplaceAll(s, ",", "."), 64)
		return units.MM(v)
	}
	first, second, third := mm(m[2]), mm(m[3]), mm(m[4])
	switch box := m[1] == "SHS" || m[1] == "RHS"; {
	case box && third > 0:
		return sound(tube{first, second, third})
	case m[1] == "SHS":
		return sound(tube{first, first, second})
	case box || third > 0, m[1] == "" && !strings.ContainsAny(m[2], ".,"):
		return tube{}, false
	}
	return sound(tube{h: first, wall: second})
}

// sound refuses a wall that leaves nothing hollow.
func sound(s tube) (tube, bool) {
	small := s.h
	if s.b > 0 {
		small = min(s.h, s.b)
	}
	return s, s.wall > 0 && 2*s.wall < small
}

// takeSection takes from the designation of the first part what the row leaves
// blank: the seam that goes all round it, and its wall. The joint of the list is
// not changed; the plan's is a copy.
func (c *catalog) takeSection(t *task) {
	first, ok := tubeOf(t.j.Part1)
	if !ok {
		return
	}
	j := *t.j
	if j.T1 == 0 {
		j.T1 = first.wall
		t.assume("t1", mm(first.wall), "blank: the wall of "+j.Part1, "derived")
	}
	if j.AllRound && j.Length <= 0 {
		length, how, err := c.roundOf(first, &j)
		if err != nil {
			t.noRound = fmt.Sprintf("the seam all round %s is not worked out: %v", j.Part1, err)
		} else {
			j.Length = length
			t.assume("length", mm(length), how, "derived")
		}
	}
	t.j = &j
}

// roundOf returns the seam all round a section that stands on the second part:
// on a round tube the curve in which the two meet, on anything else a flat face.
func (c *catalog) roundOf(first tube, j *joint.Joint) (length units.MM, how string, err error) {
	angle := units.Degree(90)
	if j.Angle > 0 {
		angle = min(j.Angle, 180-j.Angle)
	}
	lean := ""
	if angle != 90 {
		lean = fmt.Sprintf(" at %s°", n2(angle))
	}
	chord, onTube := tubeOf(j.Part2)
	switch {
	case first.b == 0 && onTube && chord.b == 0:
		length, err = weld.SaddleLength(first.h, chord.h, angle)
		return length, "all round " + j.Part1 + " on " + j.Part2 + lean + ": where the two tubes meet", err
	case first.b == 0:
		length, err = weld.FaceLength(first.h, angle)
		return length, "all round " + j.Part1 + " on a flat face" + lean, err
	case angle != 90:
		return 0, "", fmt.Errorf("a square or rectangular section that leans needs its length in the list")
	}
	row, _ := c.set.Prep(string(joint.FlareBevel), "", "", first.wall)
	radius := min(units.MM(row.RadiusT)*first.wall, min(first.h, first.b)/2)
	length, err = weld.BoxPerimeter(first.h, first.b, radius)
	return length, fmt.Sprintf("all round %s with corners of radius %s (%g times the wall, cold formed)", j.Part1, mm(radius), row.RadiusT), err
}
