package plan

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
)

// What the list, the shop or a procedure is called stays as it was written, under any
// codes: only our own words are put into American ones.
func TestAmericanLeavesTheListsOwnWords(t *testing.T) {
	set, shop := world(t)
	named := func(j *joint.Joint) { j.Mark, j.WPS, j.Part1, j.T1 = "PA-2", "WPS PF 12/G3Si1", "SHS 60x60x4", 8 }
	list := []joint.Joint{
		changed(filletJoint(8, 10, "PD"), named),
		changed(filletJoint(8, 10, "PD"), named),
		changed(filletJoint(8, 10, "PD"), func(j *joint.Joint) { j.Mark, j.Machine = "PB", "Halle PC 3" }),
		changed(filletJoint(8, 10, "PD"), func(j *joint.Joint) { j.Mark = "PB" }),
		changed(filletJoint(8, 10, "PD"), func(j *joint.Joint) { j.Mark, j.Wire = "PB", "Draht PA G3Si1x" }),
		changed(filletJoint(8, 10, "PD"), func(j *joint.Joint) { j.Mark, j.Material = "N", "St PD" }),
		changed(filletJoint(8, 10, "PH"), func(j *joint.Joint) { j.Mark = "PH-1" }),
	}
	for i := range list {
		list[i].Place.Row = i + 2
	}
	plans := Joints(list, set, shop, Options{Codes: "aws"})
	own := []string{"PA-2", "WPS PF 12/G3Si1", "Halle PC 3", "Draht PA G3Si1x", "St PD"}
	var before [][]string
	texts := func(p *Plan) []string {
		out := []string{p.NoSettings}
		for _, c := range p.Checks {
			out = append(out, c.Text, c.More, c.Args)
		}
		return out
	}
	for i := range plans {
		before = append(before, texts(&plans[i]))
	}
	American(plans, set)
	seen := map[string]bool{}
	for i := range plans {
		for k, now := range texts(&plans[i]) {
			was := before[i][k]
			for _, name := range own {
				seen[name] = seen[name] || strings.Contains(was, name)
				if strings.Count(was, name) != strings.Count(now, name) {
					t.Errorf("%q became %q", was, now)
				}
			}
			if strings.Contains(was, "the mark PB ") != strings.Contains(now, "the mark PB ") {
				t.Errorf("%q became %q", was, now)
			}
		}
	}
	for _, name := range own {
		if !seen[name] {
			t.Errorf("no sentence has %q: nothing was tested", name)
		}
	}
	pipe := strings.Join(texts(&plans[6]), "\n")
	if !strings.Contains(pipe, "with the settings of 3F") || strings.Contains(pipe, "settings of PF") {
		t.Errorf("our own position is not American: %s", pipe)
	}
}

// A procedure or a mark that is called like a wire, and is nothing else, hides no wire of
// ours: the checks name it as the American codes do.
func TestAmericanNamesWiresBesideOnesLikeThem(t *testing.T) {
	set, shop := world(t)
	for _, name := range []string{"G3Si1", "G3Si1 1.0", "G3Si1 1", "P1"} {
		list := []joint.Joint{changed(filletJoint(8, 10, "PB"), func(j *joint.Joint) { j.WPS, j.Wire, j.Size.A = name, "G3Si1 1.0", 12 })}
		plans := Joints(list, set, shop, Options{Codes: "aws"})
		wires := 0
		for _, c := range plans[0].Checks {
			if c.Code == "several-passes" && strings.Contains(c.Text, plans[0].Filler) {
				wires++
			}
		}
		filler := plans[0].Filler
		American(plans, set)
		for _, c := range plans[0].Checks {
			if c.Code == "several-passes" && strings.Contains(c.Text, filler) {
				t.Errorf("procedure %q: %q", name, c.Text)
			}
		}
		if wires == 0 {
			t.Errorf("procedure %q: no check names a wire: nothing was tested", name)
		}
	}
}
